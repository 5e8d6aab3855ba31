"""All that records tell of players, as plain data: what an older program told is compared with what today's tells."""

from __future__ import annotations

import dataclasses
import hashlib
import json
from datetime import date
from typing import Any

import numpy as np

from stickwright.store.audit_log import trail
from stickwright.store.cases import tree_of
from stickwright.store.consents import consent_of
from stickwright.store.documents import documents, history
from stickwright.store.loans import loans
from stickwright.store.opening import Store
from stickwright.store.plans import plans
from stickwright.store.players import players, readings_through_time, visits
from stickwright.store.recordings import recordings, samples_of

TODAY = date(2026, 5, 20)


def told_by(store: Store) -> dict[str, Any]:
    """Players, consents, loans, readings, visits with every version of every file, recordings sample by sample, plans, trail."""
    acts = [_plain(act) for act in trail(store, per_page=1000).rows]
    return {"players": {row.code: _player(store, row.id) for row in players(store).rows}, "trail": acts}


def _player(store: Store, player_id: int) -> dict[str, Any]:
    return {
        "consent": _plain(consent_of(store, player_id, TODAY)),
        "loans": [_plain(one) for one in loans(store, player_id)],
        "readings": [_plain(one) for one in readings_through_time(store, player_id)],
        "visits": [{"visit": _plain(one)} | _visit(store, one.id) for one in visits(store, player_id)],
    }


def _visit(store: Store, visit_id: int) -> dict[str, Any]:
    files = tree_of(store, visit_id)
    return {
        "files": {name: hashlib.sha256(body).hexdigest() for name, body in files.items()},
        "typed": {name: body.decode() for name, body in files.items() if name.endswith((".toml", ".txt"))},
        "versions": {
            name: [_plain(one) for one in history(store, visit_id, name)] for name in documents(store, visit_id)
        },
        "recordings": [
            _plain(one) | {"samples": _samples(samples_of(store, one.id))} for one in recordings(store, visit_id)
        ],
        "plans": [_plain(one) for one in plans(store, visit_id)],
    }


def _samples(rows: Any) -> str:
    return f"{rows.shape} {hashlib.sha256(np.ascontiguousarray(rows, dtype='<f8').tobytes()).hexdigest()}"


def _plain(row: Any) -> dict[str, Any]:
    data = json.loads(json.dumps(dataclasses.asdict(row), default=_other))
    return {name: value for name, value in data.items() if value is not None}


def _other(value: Any) -> Any:
    return (
        value.decode("utf-8", "replace")
        if isinstance(value, bytes)
        else dict(value)
        if hasattr(value, "items")
        else str(value)
    )
