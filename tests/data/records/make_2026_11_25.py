"""Made once with the program of 25 November 2026: two invented players, ten visits, plans, loans, consents, recordings.

PYTHONPATH=OLD/src:tests python make_2026_11_25.py records.db told.json
"""

import json
import lzma
import sys
from datetime import UTC, datetime, timedelta
from pathlib import Path

import numpy as np

from stickwright.model.kit import Kit, Stick
from stickwright.store.cases import import_case
from stickwright.store.consents import give_consent
from stickwright.store.documents import remove_document, save_document, undo_document
from stickwright.store.loans import extend, give_back, lend
from stickwright.store.opening import create_store
from stickwright.store.plans import make_plan
from stickwright.store.players import add_visit
from stickwright.store.recordings import (
    append_samples,
    begin_recording,
    finish_recording,
    set_aside,
)
from told_records import told_by


class Clock:
    def __init__(self):
        self.at = datetime(2026, 3, 1, 9, 0, tzinfo=UTC)

    def now(self):
        self.at += timedelta(seconds=7)
        return self.at


place = Path(sys.argv[1])
place.unlink(missing_ok=True)
store = create_store(place, passphrase=None, clock=Clock())
STICKS = "\n".join(
    f'''[[stick]]
name = "{name}"
start_force_gf = {start}
full_force_n = {full}
travel_mm = {travel}
contact_height_mm = 18
in_stock = {stock}
# measured on the bench, {name}
'''
    for name, start, full, travel, stock in (("ash", 5, 0.2, 5, 3), ("elm", 12, 0.6, 6, 1), ("yew", 25, 1.2, 8, 0))
)
KIT = (
    STICKS
    + """
[[topper]]
name = "dish"
form = "dish"
width_mm = 18
height_mm = 6
[[switch]]
name = "flat pad"
force_n = 0.8
face_mm = 60
in_stock = 2
"""
)
GAME = """name = "race"
archetype = "race"
"""


def player(code, day, force, part="fingertip", site="right index"):
    sites = "".join(
        f"""
[[site.reading]]
direction_deg = {d}
force_n = [{force * f:.2f}, {force * f * 1.05:.2f}]
reach_mm = 9
"""
        for d, f in ((0, 1), (90, 0.8), (180, 0.7), (270, 0.5))
    )
    return f'''code = "{code}"
visit = "{day}"
# written on the train: {code}
[[site]]
name = "{site}"
part = "{part}"
involuntary_force_gf = 2
{sites}'''.encode()


kit = Kit(
    stick=tuple(
        Stick(name=n, start_force_n=0.05, full_force_n=0.2, travel_m=0.005, in_stock=s)
        for n, s in (("ash", 3), ("elm", 1))
    )
)
rng = np.random.default_rng(7)
for code, part, site in (("K7", "fingertip", "right index"), ("Heron-2", "chin", "chin")):
    row = import_case(
        store,
        {
            "player.toml": player(code, "2026-03-02", 0.6, part, site),
            "kit.toml": KIT.encode(),
            "game.toml": GAME.encode(),
            "notes/talk.txt": "what the family said: “slowly”\n".encode(),
        },
        who="ot",
    )
    give_consent(
        store,
        row.player_id,
        given_on="2026-03-02",
        until="2027-03-02",
        given_by="parent",
        scope=("measure", "keep"),
        explained="in pictures",
        who="ot",
    )
    ids = [row.id]
    for number in range(1, 5):
        new = add_visit(store, row.player_id, f"2026-{3 + number:02d}-02", who="aide", like=ids[-1])
        ids.append(new.id)
        body = player(code, f"2026-{3 + number:02d}-02", 0.6 * (1 + 0.1 * number), part, site)
        save_document(store, new.id, "player.toml", body, who="ot", why="readings")
        if number == 2:
            save_document(store, new.id, "kit.toml", (KIT + "# yew is on order\n").encode(), who="aide")
            undo_document(store, new.id, "kit.toml", who="aide")
        if number == 3:
            save_document(store, new.id, "old.txt", b"to be dropped", who="ot")
            remove_document(store, new.id, "old.txt", who="ot", why="a mistake")
    for visit in ids[:3]:
        for task, n in (("rest", 600), ("push", 900)):
            rec = begin_recording(
                store,
                visit,
                site=site,
                stick="ash",
                task=task,
                columns=("time_s", "x", "y", "buttons"),
                source="browser",
                device="port 1",
                asked={"seed": 1},
                who="ot",
            )
            t = np.arange(n) / 60
            xy = rng.normal(0, 0.004, (n, 2)) + (np.column_stack([np.sin(t), np.cos(t)]) * 0.5 if task == "push" else 0)
            append_samples(store, rec.id, np.column_stack([t, xy.round(4), np.full(n, np.nan)]), first=0)
            finish_recording(store, rec.id, "done", who="ot")
        if visit == ids[1]:
            set_aside(store, rec.id, who="ot")
    for visit in ids[:2]:
        make_plan(store, visit, who="ot", draws=10, made_on="2026-05-01")
    lent = lend(
        store, row.player_id, "ash", kit=kit, on_date="2026-03-02", due="2026-04-14", who="ot", note="in the blue bag"
    )
    if code == "K7":
        give_back(store, lent.loan, on_date="2026-04-10", who="ot")
    else:
        extend(store, lent.loan, due="2026-06-01", who="ot", note="till the summer")
Path(sys.argv[2]).write_text(json.dumps(told_by(store), indent=0, ensure_ascii=False, sort_keys=True))
store.close()
raw = place.read_bytes()
packed = lzma.compress(raw, preset=9)
Path(str(place) + ".xz").write_bytes(packed)
print(len(raw), len(packed))
