"""A case written as a folder: what `read_case` gives, it gives again."""

from __future__ import annotations

from pathlib import Path, PurePosixPath, PureWindowsPath

import numpy as np

from stickwright.codes.case_files import CaseFiles
from stickwright.codes.expected import Expected
from stickwright.codes.file_places import FilePlaces
from stickwright.codes.message import Name, Text, message
from stickwright.codes.remedies import Remedies
from stickwright.errors import BadInput, Problem
from stickwright.files.game_files import FURTHER_GAMES
from stickwright.files.gauge import gauge_of, gauge_text
from stickwright.files.nouns_text import file_text
from stickwright.files.writing import make_folder, take_away, write_whole
from stickwright.model.case import Case
from stickwright.model.hub import Hubs
from stickwright.model.player import Site
from stickwright.model.recording import Recording

__all__ = ["write_case"]


def write_case(case: Case, folder: Path | str) -> tuple[Path, ...]:
    """Write a case so that `read_case` gives the same player, kit, game, hubs, room and recordings again.

    Parameters
    ----------
    case : Case
        What to write.
    folder : Path or str
        Folder to make or to write into; files of the same names are replaced, and the room of another case is taken away.

    Returns
    -------
    tuple of Path
        The files written.

    Raises
    ------
    BadInput
        A recording that no site lists, or the other way round; a recording in a foreign unit; a
        place that cannot be written.

    Notes
    -----
    Gauge readings that came from a file go back into it when that reads back to the same numbers,
    else into player.toml. Bench readings are not part of a case and are not written.
    """
    folder = Path(folder)
    make_folder(folder)
    gauge_files: dict[str, str] = {}
    sites = tuple(_site_to_write(site, gauge_files) for site in case.player.site)
    files = _recording_files(case)
    player = case.player.model_copy(update={"site": sites})
    texts = {"player.toml": file_text(player), "kit.toml": file_text(case.kit), "game.toml": file_text(case.game)}
    texts |= {name: file_text(game) for name, game in zip(FURTHER_GAMES, case.further_games, strict=False)}
    for name in FURTHER_GAMES[len(case.further_games) :]:  # another case's games must not become this one's
        take_away(folder / name)
    if case.hubs:
        texts["hub.toml"] = file_text(Hubs(hub=case.hubs))
    elif (folder / "hub.toml").exists():  # another case's hub must not become this one's
        texts["hub.toml"] = "# hub\n"
    if case.room is not None:
        said = file_text(case.room)
        texts["room.toml"] = said if said.strip() else "# room\n"
    else:
        take_away(folder / "room.toml")  # another case's room must not become this one's
    written = []
    for name, text in (texts | gauge_files).items():
        path = folder / name
        make_folder(path.parent)
        write_whole(path, text)
        written.append(path)
    if files:
        from stickwright.files.recordings import write_recording  # polars is slow to load

        for name, recording in files:
            path = folder / name
            make_folder(path.parent)
            write_recording(recording, path)
            written.append(path)
    return tuple(written)


def _site_to_write(site: Site, gauge_files: dict[str, str]) -> Site:
    if site.gauge_readings is None:
        return site
    text = gauge_text(site.reading, site.again_force_n) if site.reading else ""
    if (
        text
        and _is_plain_csv(site.gauge_readings)
        and site.gauge_readings not in gauge_files
        and _reads_back(site, text)
    ):
        gauge_files[site.gauge_readings] = text
        return site.model_copy(update={"reading": (), "again_force_n": ()})
    return site.model_copy(update={"gauge_readings": None})


def _reads_back(site: Site, text: str) -> bool:
    """Whether a gauge file would give the same readings (one direction alone cannot be repeated last)."""
    try:
        gauge = gauge_of(text, "gauge.csv")
    except BadInput:  # more rows than such a file may have, or a direction without any value
        return False
    return (gauge.reading, gauge.again_force_n) == (site.reading, site.again_force_n)


def _is_plain_csv(name: str) -> bool:
    """A name that stays inside the folder and cannot be one of the case's own files."""
    steps = PureWindowsPath(name)
    plain = steps.suffix.lower() == ".csv" and name.isprintable() and not (set(name) & set('<>:"|?*\\'))
    return plain and not (steps.drive or steps.root or PurePosixPath(name).is_absolute()) and ".." not in steps.parts


def _recording_files(case: Case) -> list[tuple[str, Recording]]:
    """File name and recording, each as its site lists it."""
    files: dict[str, Recording] = {}
    problems = []
    for site in case.player.site:
        made = [recording for recording in case.recordings if recording.site == site.name]
        if len(made) != len(site.recording):
            found = message(CaseFiles.recordings, made=len(made), listed=len(site.recording))
            wanted = message(CaseFiles.one_each, table=Name("site.recording"))
            problems.append(Problem(_at(site), found, wanted, message(Remedies.list_recordings)))
            continue
        for listed, recording in zip(site.recording, made, strict=True):
            if not _is_plain_csv(listed.file):
                problems.append(Problem((*_at(site), "recording"), f'"{listed.file}"', message(Expected.file_inside)))
            elif not _are_same(files.setdefault(listed.file, recording), recording):
                twice = message(CaseFiles.twice, typed=Name(f'"{listed.file}"'))
                problems.append(Problem((*_at(site), "recording"), twice, message(CaseFiles.file_each)))
    known = {site.name for site in case.player.site}
    problems += [
        Problem(
            (recording.name,),
            message(CaseFiles.of_site, site=Name(recording.site) if recording.site is not None else None),
            message(CaseFiles.site_of_player, names=tuple(map(Name, sorted(known)))),
        )
        for recording in case.recordings
        if recording.site not in known
    ]
    if problems:
        raise BadInput(problems)
    return list(files.items())


def _at(site: Site) -> tuple[Text, ...]:
    return (message(FilePlaces.named, key=Name("site"), name=Name(site.name)),)


def _are_same(one: Recording, other: Recording) -> bool:
    return one is other or (
        np.array_equal(one.times_s, other.times_s) and np.array_equal(one.xy, other.xy, equal_nan=True)
    )
