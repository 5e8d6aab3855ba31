"""All that one recording can tell, put together."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from made_recordings import about, pushes, slow_noise, thumbstick

from said import said
from stickwright.errors import BadInput
from stickwright.files.recordings import ColumnChoice, read_recording, write_recording
from stickwright.model.recording import Recording
from stickwright.report.words import trace_words
from stickwright.trace import report as reporting
from stickwright.trace.report import trace_report


def visit() -> Recording:
    """Rest, edge, pushes, a hold and a target to follow, one after the other, 100 Hz."""
    rng = np.random.default_rng(6)
    cued = pushes(rng)
    assert cued.cue is not None
    assert cued.cue_xy is not None
    n = 2000
    t = np.arange(n) / 100
    none = np.full((n, 2), np.nan)
    turn = 2 * np.pi * t / 4
    edge = 0.8 * np.column_stack((np.cos(turn), np.sin(turn))) * np.minimum(t, 1)[:, None]
    target = 0.5 * np.column_stack((np.sin(1.3 * t), np.cos(0.9 * t)))
    parts = [
        ("rest", slow_noise(rng, n, 0.004), none),
        ("rim", edge + slow_noise(rng, n, 0.01), none),
        ("hold", [0.5, 0.0] * np.minimum(2 * t, 1)[:, None] + slow_noise(rng, n, 0.01), np.full((n, 2), [0.5, 0.0])),
        ("follow", np.roll(target, 12, axis=0) + slow_noise(rng, n, 0.02), target),
    ]
    xy = np.concatenate([cued.xy, *(np.asarray(values) for _, values, _ in parts)])
    cue = np.concatenate([cued.cue, *(np.full(n, word) for word, _, _ in parts)])
    cue_xy = np.concatenate([cued.cue_xy, *(asked for _, _, asked in parts)])
    return Recording("visit.csv", np.arange(len(xy)) / 100, xy, cue=cue, cue_xy=cue_xy, site="chin", stick="birch")


def test_a_whole_visit_is_told():
    """Each part of a visit gives its part of the report, and what was not asked is None."""
    report = trace_report(visit(), np.random.default_rng(1))
    assert (report.site, report.stick, report.unit) == ("chin", "birch", "share")
    assert report.task == "rest, rim, push, hold, follow"
    assert report.rate_hz == pytest.approx(100.0, rel=1e-6)
    assert report.rest is not None
    assert report.reach is not None
    assert len(report.reach.reach) == 8
    assert report.bias is not None
    assert not report.bias.mirrored
    assert report.bursts is not None
    assert len(report.holds) == 1
    assert report.tremor is not None
    assert not report.tremor.stands_out
    assert report.tracking is not None
    assert report.tracking.lag_s.value == pytest.approx(0.12, abs=0.02)
    assert report.smoothness is not None
    assert report.pointing is None


def test_the_same_report_twice():
    """Without a given source of chance a report can be repeated to the last digit."""
    assert trace_report(visit()) == trace_report(visit())


def test_rest_alone_tells_no_reach():
    """A rest recording has rest and bursts, and says why there is no reach."""
    times_s = np.arange(2000) / 100
    rest = Recording("rest.csv", times_s, slow_noise(np.random.default_rng(2), 2000, 0.004), task="rest")
    report = trace_report(rest)
    assert report.rest is not None
    assert report.reach is None
    assert about(report.findings, "no_reach")
    assert report.smoothness is None
    assert report.holds == ()


def test_play_of_a_real_thumbstick():
    """Free play of a real thumbstick: time at full throw and flicks are told, bursts are not; the share at full throw
    is counted here from the file."""
    recording = thumbstick("play-2-person-D-0-to-30-s.csv")
    report = trace_report(recording)
    full = float(np.mean(np.hypot(*recording.xy.T) >= 0.95))
    text = said(about(report.findings, "play")[0].text)
    assert f"at full travel {100 * full:.0f}% of the time" in text
    assert report.bursts is None
    assert about(report.findings, "bursts_not_told")
    assert report.rest is not None
    assert not report.rest.noise_rms.has_interval


def test_what_play_asked_for_is_counted():
    """By hand, from 100 s on: 60 s of play at 100 samples a second, at the rim once for 8 s and four times for 1 s, which is a fifth of the
    time; six flicks of 0.1 s and three slower pushes of 0.5 s between."""
    along = np.zeros(6001)
    along[500:1300] = 0.99
    for start in (1500, 1700, 1900, 2100):
        along[start : start + 100] = 0.97
    for start in (2500, 2600, 2700, 2800, 2900, 3000):
        along[start : start + 10] = 0.9
    for start in (4000, 4200, 4400):
        along[start : start + 50] = 0.9
    xy = np.column_stack([0.08 * np.sin(np.arange(6001) / 20), along])  # never still, so that nothing passes for rest
    report = trace_report(Recording("p", 100 + np.arange(6001) / 100, xy, cue=np.full(6001, "play")))
    assert report.duration_s == pytest.approx(60.0, abs=1e-9)
    text = said(about(report.findings, "play")[0].text)
    assert text == (
        "In 60 s of play, the stick was at full travel 20% of the time, for up to 8.0 s at a stretch. There were 6 flicks out and "
        "back within 0.2 s (6 a minute)."
    )


def test_spring_back_past_the_centre():
    """A stick that swings 0.1 past its centre after each quick release is said to, by about as much."""
    rows = []
    for _ in range(8):
        out = np.linspace(0, 1, 20)
        ring = np.array([0.7, 0.4, 0.1, -0.06, -0.1, -0.08, -0.04, 0.0])
        rows.append(np.concatenate((out, np.full(30, 1.0), ring, np.zeros(60))))
    x = np.concatenate(rows)
    xy = np.column_stack((x, 0.2 * x)) + np.random.default_rng(3).normal(0, 0.002, (len(x), 2))
    text = said(about(trace_report(Recording("p.csv", np.arange(len(x)) / 100, xy)).findings, "spring_back")[0].text)
    assert text.startswith("After 8 quick releases, the stick springs past its centre by 10%")


def test_aiming_without_targets_is_asked_for():
    """Aimed movements without target places or width: pointing is None and the finding says what is missing."""
    times_s = np.arange(1000) / 100
    xy = 0.4 * np.column_stack((np.sin(times_s), np.cos(times_s)))
    report = trace_report(Recording("aim.csv", times_s, xy, task="aim"))
    assert report.pointing is None
    assert "does not say where the targets were" in said(about(report.findings, "no_pointing")[0].text)
    with_places = Recording("aim.csv", times_s, xy, task="aim", cue_xy=xy)
    assert "how wide the targets were" in said(about(trace_report(with_places).findings, "no_pointing")[0].text)


def test_foreign_unit_has_no_centre():
    """In pixels without a rest there is no centre: no rest, no reach, each with its reason; following still works."""
    times_s = np.arange(2000) / 100
    target = 300 * np.column_stack((np.sin(times_s), np.cos(0.7 * times_s))) + 500
    pen = np.roll(target, 10, axis=0) + np.random.default_rng(1).normal(0, 2, target.shape)
    report = trace_report(Recording("pen.csv", times_s, pen, task="follow", cue_xy=target, unit="px"))
    assert report.rest is None
    assert report.reach is None
    assert about(report.findings, "no_rest")
    assert about(report.findings, "no_reach")
    assert report.tracking is not None


def test_long_recordings_are_looked_at_in_part(monkeypatch: pytest.MonkeyPatch):
    """Beyond the longest stretch only part is handed to the spectra, and the finding says which seconds."""
    monkeypatch.setattr(reporting, "LONGEST_S", 20.0)
    times_s = np.arange(6000) / 100
    still = Recording("still.csv", times_s, slow_noise(np.random.default_rng(2), 6000, 0.01), task="still")
    text = said(about(trace_report(still).findings, "tremor_from_a_part")[0].text)
    assert "from 0 to 20 s, the longest stretch" in text


def test_too_short_for_tremor_is_said():
    """Two seconds of recording: no tremor, and what to record is said."""
    times_s = np.arange(200) / 100
    short = Recording("s.csv", times_s, slow_noise(np.random.default_rng(2), 200, 0.01), task="still")
    report = trace_report(short)
    assert report.tremor is None
    assert "Record 20 s of keeping still" in said(about(report.findings, "no_tremor")[0].text)


def test_unusable_recording_is_refused():
    """What cannot be used at all is refused before anything is told."""
    with pytest.raises(BadInput, match="times that never go back"):
        trace_report(replace(visit(), times_s=visit().times_s[::-1].copy()))


def test_a_third_axis_is_told_from_and_read(tmp_path):
    """A tremor along z alone: not seen on x and y, found with z, also from a file with a column named z."""
    rng = np.random.default_rng(31)
    times_s = np.arange(3000) / 100
    xy = rng.normal(0, 0.004, (3000, 2))
    z = 0.03 * np.sin(2 * np.pi * 6.5 * times_s) + rng.normal(0, 0.004, 3000)
    without = trace_report(Recording("s.csv", times_s, xy, task="still"))
    assert without.tremor is not None
    assert not without.tremor.stands_out
    write_recording(Recording("s.csv", times_s, xy, task="still", z=z), tmp_path / "s.csv")
    own = trace_report(read_recording(tmp_path / "s.csv", task="still"))
    named = ColumnChoice(x="x", y="y", z="z", unit="m/s2")
    foreign = trace_report(read_recording(tmp_path / "s.csv", task="still", columns=named))
    for report in (own, foreign):
        assert report.tremor is not None
        assert report.tremor.frequency_hz.value == pytest.approx(6.5, abs=0.05)
        assert abs(report.tremor.axis[2]) > 0.99
        assert report.tremor.band_rms.value == pytest.approx(0.03 / np.sqrt(2), rel=0.05)
    said = trace_words(foreign)
    assert "m/s2" in said
    assert "3 to 12 Hz" in said
    assert said.count("where the centre lies is not known") == 1


def test_every_size_has_band_and_unit():
    """A tremor on a stick: size from 3 to 12 Hz and in the peak's band, in % of full output; what is usual stands beside it."""
    times_s = np.arange(3000) / 100
    xy = 0.04 * np.sin(2 * np.pi * 5 * times_s)[:, None] * [1.0, 0.5]
    xy += np.random.default_rng(3).normal(0, 0.004, (3000, 2))
    said = " ".join(trace_words(trace_report(Recording("s.csv", times_s, xy, task="still"))).split())
    for words in (
        "% of full output", "from 3 to 12 Hz", "from 4 to 6 Hz, the peak's band", "above the background", "rms (typical size)",
        "zero-crossing frequency", "usual for an unaffected adult",
    ):  # fmt: skip
        assert words in said
    assert "mean frequency" not in said
