"""The bytes of the measuring page: what is let in, and how the rest is refused."""

import struct

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from stickwright.errors import BadInput
from stickwright.measure.batches import HEAD_BYTES, MOST_BYTES, MOST_ROWS, Batch, decode, encode

# Laid down by hand from the table in the module's docstring, not by the packer it uses.
BY_HAND = (
    b"swcb" + bytes([1, 1, 3, 1]) + (7).to_bytes(4, "little") + (500).to_bytes(4, "little") + (2).to_bytes(2, "little")
    + bytes([2, 17]) + (0).to_bytes(4, "little") + (99).to_bytes(8, "little")
    + struct.pack("<dd", 1000.5, 1.7e12)
    + struct.pack("<dddd", 999.0, 0.0, 0.25, -1.0) + struct.pack("<dddd", 1000.0, 65536.0, 0.5, 1.0)
)  # fmt: skip


def sampled(sequence: int = 0, rows: int = 3, first: int = 0, **changed: object) -> Batch:
    table = np.column_stack([np.arange(rows) + 10.0, np.zeros(rows), np.full(rows, 0.5), np.full(rows, -0.25)])
    given_ = {"axes": 2, "buttons": 4, "first": first, "rows": table} | changed
    return Batch("samples", 0, sequence, 1e6, 1.7e12, **given_)  # type: ignore[arg-type]


def test_the_table_by_hand() -> None:
    """Bytes laid down by hand from the published table are read as what they mean."""
    batch = decode(BY_HAND)
    assert (batch.kind, batch.slot, batch.sequence, batch.first, batch.page) == ("samples", 3, 7, 500, 99)
    assert (batch.lost_before, batch.axes, batch.buttons) == (True, 2, 17)
    assert (batch.sent_ms, batch.wall_ms) == (1000.5, 1.7e12)
    assert batch.rows.tolist() == [[999.0, 0.0, 0.25, -1.0], [1000.0, 65536.0, 0.5, 1.0]]


def test_written_as_by_hand() -> None:
    """The same batch is written as the same bytes."""
    assert encode(decode(BY_HAND)) == BY_HAND


def test_a_name_is_kept() -> None:
    """A device's name arrives whole, and signs that nobody can print become spaces."""
    said = Batch("appeared", 2, 0, 1.0, 1.0, axes=4, buttons=17, text="Stick é\x07 two", standard=True)
    heard = decode(encode(said))
    assert (heard.text, heard.standard, heard.slot) == ("Stick é  two", True, 2)


shares = st.floats(-1.0, 1.0, allow_subnormal=False)


@given(
    rows=st.lists(st.tuples(st.floats(0.0, 1e6), st.integers(0, 2**17 - 1), shares, shares), min_size=1, max_size=20),
    sequence=st.integers(0, 2**32 - 1),
    page=st.integers(0, 2**64 - 1),
)
def test_there_and_back(rows: list[tuple[float, int, float, float]], sequence: int, page: int) -> None:
    """Whatever is sent arrives bit for bit."""
    sent = Batch("samples", 1, sequence, 1e6, 1.7e12, 5, np.array(rows), 2, 17, page=page)
    came = decode(encode(sent))
    assert came.rows.tobytes() == sent.rows.tobytes()
    assert (came.sequence, came.page, came.first) == (sequence, page, 5)


@given(st.binary(max_size=400))
def test_any_bytes_end_in_a_sentence(message: bytes) -> None:
    """Any bytes at all are a batch or a refusal in words, never another exception."""
    _decoded_or_refused(message)


@given(st.data())
def test_any_damage_ends_in_a_sentence(data: st.DataObject) -> None:
    """A good message with any bytes changed, cut or added is a batch or a refusal in words."""
    message = bytearray(BY_HAND)
    for place, value in data.draw(
        st.lists(st.tuples(st.integers(0, len(message) - 1), st.integers(0, 255)), max_size=6)
    ):
        message[place] = value
    cut = data.draw(st.integers(0, len(message)))
    _decoded_or_refused(bytes(message[:cut]) + data.draw(st.binary(max_size=9)))


def _decoded_or_refused(message: bytes) -> None:
    batch, refusal = None, ""
    try:
        batch = decode(message)
    except BadInput as error:
        refusal = str(error)
    if batch is None:
        assert refusal.startswith("message from the page: found ")
        return
    assert np.isfinite(batch.rows).all()
    assert encode(batch)[:7] == message[:7]


@pytest.mark.parametrize(
    "place, value, part",
    [
        (0, b"x", "do not begin with swcb"),
        (4, b"\x02", "version 2"),
        (5, b"\x09", "kind 9"),
        (6, b"\x10", "slot 16"),
        (7, b"\x02", "flags 2"),
        (16, b"\x00\x00", "rows 0"),
        (16, b"\xff\xff", "rows 65535"),
        (18, b"\x11", "axes 17"),
        (18, b"\x03", "bytes after the head"),
        (19, b"\x35", "buttons 53"),
        (19, b"\x10", "buttons that the device does not have"),
        (20, b"\x01", "text 1"),
        (32, struct.pack("<d", np.nan), "sent_ms nan"),
        (32, struct.pack("<d", 998.0), "later than it was sent"),
        (40, struct.pack("<d", -1.0), "wall_ms -1"),
        (48, struct.pack("<d", np.inf), "a sample without a time"),
        (56, struct.pack("<d", 0.5), "buttons that the device does not have"),
        (64, struct.pack("<d", np.nan), "an axis that is not a number"),
        (64, struct.pack("<d", 11.0), "far out"),
    ],
)
def test_what_is_refused(place: int, value: bytes, part: str) -> None:
    """Every field outside its range is refused by its name."""
    message = BY_HAND[:place] + value + BY_HAND[place + len(value) :]
    with pytest.raises(BadInput, match=part):
        decode(message)


@pytest.mark.parametrize("length", [0, HEAD_BYTES - 1, MOST_BYTES + 1])
def test_length_is_bounded(length: int) -> None:
    """Too short or too long is refused before anything of it is read."""
    with pytest.raises(BadInput, match=f"found {length} bytes"):
        decode(BY_HAND[:HEAD_BYTES].ljust(length, b"\0")[:length])


def test_names_in_no_alphabet() -> None:
    """A name that is not UTF-8 is refused."""
    message = encode(Batch("appeared", 0, 0, 1.0, 1.0, text="ab"))
    with pytest.raises(BadInput, match="not text"):
        decode(message[:-2] + b"\xff\xfe")


def test_writing_refuses_what_reading_would() -> None:
    """No batch can be written that would be refused on arrival."""
    with pytest.raises(BadInput, match="rows 2049"):
        encode(sampled(rows=MOST_ROWS + 1))
    with pytest.raises(BadInput, match="too large for its place"):
        encode(sampled(sequence=-1))
