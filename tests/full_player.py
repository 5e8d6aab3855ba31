"""A player of whom something stands in every table of the records."""

import numpy as np
import sqlalchemy as sa

from stickwright.model.kit import Kit, Stick
from stickwright.store.cases import import_case
from stickwright.store.consents import give_consent
from stickwright.store.documents import save_document
from stickwright.store.loans import lend
from stickwright.store.plans import make_plan
from stickwright.store.recordings import append_samples, begin_recording, finish_recording
from stickwright.store.schema import act

WORD = "WALNUTWORD"
CODE = "WALNUTCODE"
PLAYER = f"""code = "{CODE}"
visit = "2026-03-14"
# {WORD}-comment
[[site]]
name = "right index"
part = "fingertip"
[[site.reading]]
direction_deg = 0
force_n = [0.5, 0.52]
reach_mm = 9
[[site.reading]]
direction_deg = 90
force_n = [0.6, 0.61]
reach_mm = 9
""".encode()
KIT = b"""[[stick]]
name = "ash"
start_force_n = 0.05
full_force_n = 0.20
travel_mm = 5
contact_height_mm = 18
in_stock = 9
"""
COLUMNS = ("time_s", "x", "y", "buttons")


def entry_of_earlier_version(store, what, detail, player_id=None):
    """An entry of the trail in words, as they were kept before there were codes."""
    with store.write("ot", "") as connection:
        row = {"at": store.at(), "who": "ot", "what": what, "player_id": player_id, "detail": detail}
        connection.execute(sa.insert(act).values(row))


def full(store, code=CODE):
    """A player of whom something stands in every table."""
    player = PLAYER.replace(CODE.encode(), code.encode())
    row = import_case(
        store, {"player.toml": player, "kit.toml": KIT, f"notes/{WORD}.txt": WORD.encode() * 50}, who="ot"
    )
    save_document(store, row.id, "notes.txt", WORD.encode(), who="ot", why=f"{WORD}-why")
    save_document(store, row.id, "notes.txt", b"other", who="ot")
    recording = begin_recording(
        store, row.id, site="right index", task="rest", columns=COLUMNS, source="browser", device=f"{WORD}-device",
        asked={"seed": 1}, who="ot",
    )  # fmt: skip
    rows = np.column_stack([np.arange(1200) / 60, np.full(1200, 0.01), np.zeros(1200), np.full(1200, np.nan)])
    append_samples(store, recording.id, rows, first=0)
    finish_recording(store, recording.id, "done", who="ot")
    running = begin_recording(
        store, row.id, site="right index", task="rim", columns=COLUMNS, source="browser", who="ot"
    )
    append_samples(store, running.id, rows[:10], first=0)
    give_consent(
        store, row.player_id, given_on="2026-03-14", until="2027-03-14", given_by="parent", scope=("measure", "keep"),
        explained=f"{WORD}-explained", who="ot",
    )  # fmt: skip
    kit = Kit(stick=(Stick(name="ash", start_force_n=0.05, full_force_n=0.2, travel_m=0.005, in_stock=9),))
    lend(store, row.player_id, "ash", kit=kit, on_date="2026-03-14", due="2026-04-14", who="ot", note=f"{WORD}-note")
    made = make_plan(store, row.id, who="ot", draws=10, made_on="2026-03-14")
    entry_of_earlier_version(store, "something", f"about {code}, without a number")
    return row, rows, recording, made
