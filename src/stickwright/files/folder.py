"""A case: one folder with player.toml, kit.toml, game.toml, hub.toml, room.toml, readings and recordings, on disk or in memory.

Reading and checking are the same walk: everything that is wrong is gathered before anything is
refused. Nothing is written while reading or checking.
"""

from __future__ import annotations

import datetime
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path, PurePosixPath, PureWindowsPath
from typing import Any

from stickwright.codes.case_files import CaseFiles
from stickwright.codes.expected import Contents, Expected
from stickwright.codes.file_places import FilePlaces
from stickwright.codes.file_tables import FileTables
from stickwright.codes.found import Found
from stickwright.codes.message import Message, Name, message
from stickwright.codes.problems import Problems
from stickwright.codes.remedies import Remedies
from stickwright.errors import BadInput, Problem, nearest
from stickwright.files.archetypes import ARCHETYPES, archetype, archetype_named, usual_prices
from stickwright.files.case_writing import write_case
from stickwright.files.game_files import FURTHER_GAMES
from stickwright.files.game_warnings import game_warnings
from stickwright.files.gauge import GaugeReadings, read_gauge
from stickwright.files.held import FilePlace, HeldFile, HeldPlace
from stickwright.files.hub_warnings import hub_warnings
from stickwright.files.kit_warnings import kit_warnings
from stickwright.files.player_warnings import Names, game_for_even_use, player_warnings, site_tables
from stickwright.files.retired_keys import retired_key_notes
from stickwright.files.room_warnings import room_warnings
from stickwright.files.starting import new_case
from stickwright.files.toml_lines import FieldPath, TomlFile, read_toml
from stickwright.files.typed_tables import Noticed, names_in, stick_names
from stickwright.files.typed_values import as_typed
from stickwright.files.validation_errors import validated
from stickwright.model.case import Case
from stickwright.model.game import Game
from stickwright.model.hub import Hub, Hubs
from stickwright.model.kit import Kit
from stickwright.model.player import Player, Site
from stickwright.model.recorded import Finding
from stickwright.model.recording import Recording
from stickwright.model.room import Room

__all__ = ["case_and_queries", "check_case", "new_case", "read_case", "write_case"]

_LINES = tuple(message(text, number=1).code for text in (FilePlaces.line, FilePlaces.row))
_NOT_READ = ("game-1.toml", "game-10.toml", "game2.toml", "game_2.toml")


def read_case(folder: Path | str | Mapping[str, HeldFile], made_on: str = "") -> Case:
    """Read a case folder.

    Parameters
    ----------
    folder : Path or str, or mapping of str to bytes
        The case folder; or its files in memory, each under its name from the folder on, as bytes or as what it says.
    made_on : str
        Date to print, YYYY-MM-DD.

    Returns
    -------
    Case
        Gauge readings are among the player's readings, recordings are read. A missing game.toml
        gives a game in which every direction counts alike; one that names an archetype and no action
        gets the actions usual for it. Without hub.toml there are no hubs, without room.toml no room.

    Raises
    ------
    BadInput
        All problems at once, each with file, line, field, what was found and what was expected.
    """
    return case_and_queries(folder, made_on)[0]


def case_and_queries(
    folder: Path | str | Mapping[str, HeldFile], made_on: str = "", name: str = ""
) -> tuple[Case, tuple[Finding, ...]]:
    """Read a case folder, and what was noticed on the way.

    Parameters
    ----------
    folder : Path or str, or mapping of str to bytes
        The case folder; or its files in memory, each under its name from the folder on, as bytes or as what it says.
    made_on : str
        Date to print, YYYY-MM-DD.
    name : str
        Name of the case; that of the folder, or the player's code when it lies in memory, when not said.

    Returns
    -------
    case : Case
        As `read_case` gives it.
    queries : tuple of Finding
        As `check_case` gives them.

    Raises
    ------
    BadInput
        All problems at once.
    """
    look = _look(_place(folder), made_on)
    if look.problems or look.player is None or look.kit is None or look.game is None:
        raise BadInput(look.problems)
    name = name or (look.player.code if isinstance(look.folder, HeldPlace) else look.folder.resolve().name)
    case = Case(
        name=name,
        player=look.player,
        kit=look.kit,
        game=look.game,
        recordings=tuple(look.recordings),
        made_on=made_on,
        hubs=look.hubs,
        room=look.room,
        usual_prices=usual_prices(look.game),
        doubts=tuple(look.queries),
        further_games=tuple(look.further_games),
        further_usual_prices=tuple(usual_prices(game) for game in look.further_games),
    )
    return case, tuple(look.queries)


def check_case(
    folder: Path | str | Mapping[str, HeldFile], made_on: str = ""
) -> tuple[tuple[Problem, ...], tuple[Finding, ...]]:
    """What is wrong with a case folder, and what looks odd. Nothing is written.

    Parameters
    ----------
    folder : Path or str, or mapping of str to bytes
        The case folder; or its files in memory, each under its name from the folder on, as bytes or as what it says.
    made_on : str
        Today, YYYY-MM-DD, to ask about visits in the future.

    Returns
    -------
    problems : tuple of Problem
        They stop a plan.
    queries : tuple of Finding
        Level 'query' asks the practitioner to look; level 'note' says what was done without.
    """
    look = _look(_place(folder), made_on)
    return tuple(look.problems), tuple(look.queries)


def _place(folder: Path | str | Mapping[str, HeldFile]) -> Path | HeldPlace:
    return HeldPlace(folder) if isinstance(folder, Mapping) else Path(folder)


@dataclass
class _Look:
    """What has been found so far."""

    folder: Path | HeldPlace
    problems: list[Problem] = field(default_factory=list)
    queries: list[Finding] = field(default_factory=list)
    player: Player | None = None
    kit: Kit | None = None
    game: Game | None = None
    further_games: list[Game] = field(default_factory=list)
    sticks: tuple[str, ...] | None = None
    hubs: tuple[Hub, ...] = ()
    room: Room | None = None
    recordings: list[Recording] = field(default_factory=list)

    def take(self, noticed: Sequence[Noticed]) -> None:
        for one in noticed:
            if isinstance(one, Problem):
                self.problems.append(one)
            else:
                self.queries.append(one)

    def toml(self, name: str, contents: Contents) -> TomlFile | None:
        try:
            return read_toml(self.folder / name, name, contents)
        except BadInput as error:
            self.problems += error.problems
            return None


def _look(folder: Path | HeldPlace, made_on: str) -> _Look:
    look = _Look(folder)
    _refuse_date(made_on, look)
    if not _is_folder(folder, look):
        return look
    player_file = look.toml("player.toml", "player")
    kit_file = look.toml("kit.toml", "kit")
    game_file = look.toml("game.toml", "game") if _exists(folder / "game.toml") else None
    more_files = [
        file for name in FURTHER_GAMES if _exists(folder / name) and (file := look.toml(name, "further-game"))
    ]
    hub_file = look.toml("hub.toml", "hub") if _exists(folder / "hub.toml") else None
    room_file = look.toml("room.toml", "room") if _exists(folder / "room.toml") else None
    names = Names(
        stick_names(kit_file), names_in(kit_file, "topper"), names_in(kit_file, "extension"),
        _action_names(game_file, more_files), names_in(kit_file, "controller"),
    )  # fmt: skip
    look.sticks = names.sticks
    if player_file is not None:
        _look_at_player(look, player_file, names, made_on)
    if kit_file is not None:
        _look_at_kit(look, kit_file, has_hub=hub_file is not None)
    _look_at_game(look, game_file, player_file)
    _look_at_further_games(look, game_file, more_files)
    _look_at_hub(look, hub_file)
    _look_at_room(look, room_file, player_file)
    look.problems = _in_order_of_the_files(look.problems)
    return look


def _in_order_of_the_files(problems: list[Problem]) -> list[Problem]:
    """File by file as first met, then by line or row, as one would go through them with an editor."""
    files = [problem.where[0] if problem.where else "" for problem in problems]
    order = sorted(range(len(problems)), key=lambda at: (files.index(files[at]), _line_of(problems[at])))
    return [problems[at] for at in order]


def _line_of(problem: Problem) -> int:
    """Its line or row; past all others when it is about the whole file."""
    told = (step for step in problem.where if isinstance(step, Message) and step.code in _LINES)
    return next((int(step.param("number")) for step in told), 10**9)


def _refuse_date(made_on: str, look: _Look) -> None:
    try:
        made_on == "" or datetime.date.fromisoformat(made_on)
    except ValueError:
        where, remedy = message(CaseFiles.date_of_plan), message(Remedies.example_date)
        look.problems.append(Problem(where, as_typed(made_on), message(Expected.date), remedy))


def _exists(path: FilePlace) -> bool:
    try:
        return path.exists()
    except (OSError, ValueError):  # a name that no file can have
        return False


def _is_folder(folder: Path | HeldPlace, look: _Look) -> bool:
    if isinstance(folder, HeldPlace):
        return True
    if not _exists(folder):
        found, remedy = message(Found.no_folder), message(Remedies.new_case)
        look.problems.append(Problem((str(folder),), found, message(Expected.case_folder), remedy))
        return False
    if not folder.is_dir():
        remedy = message(Remedies.name_folder if folder.suffix == ".toml" else Remedies.new_case)
        look.problems.append(Problem((str(folder),), message(Found.file), message(Expected.case_folder), remedy))
        return False
    return True


def _look_at_player(look: _Look, file: TomlFile, names: Names, made_on: str) -> None:
    gauges = _gauges(look, file)
    noticed = player_warnings(file, names, gauges, made_on)
    player, problems = validated(Player, file)
    look.take(retired_key_notes(Player, file))
    # Ten times the usual is told with the body part; the same place needs no second sentence.
    told = {one.where for one in noticed if isinstance(one, Problem)}
    look.problems += [problem for problem in problems if problem.where not in told]
    look.take(noticed)
    _look_at_recordings(look, file)
    if player is not None:
        sites = zip(player.site, site_tables(file), strict=True)
        merged = tuple(_with_gauge(site, gauges.get(path)) for site, (path, _) in sites)
        look.player = player.model_copy(update={"site": merged})


def _gauges(look: _Look, file: TomlFile) -> dict[FieldPath, GaugeReadings]:
    gauges = {}
    for path, site in site_tables(file):
        inside = _inside(look, file, (*path, "gauge_readings"), site.get("gauge_readings"))
        if inside is None:
            continue
        try:
            gauges[path] = read_gauge(inside, site["gauge_readings"])
        except BadInput as error:
            look.problems += _named_at(error, file, (*path, "gauge_readings"), inside)
    return gauges


def _with_gauge(site: Site, gauge: GaugeReadings | None) -> Site:
    if gauge is None:
        return site
    return site.model_copy(
        update={
            "reading": (*site.reading, *gauge.reading),
            "again_force_n": site.again_force_n or gauge.again_force_n,
        }
    )


def _look_at_recordings(look: _Look, file: TomlFile) -> None:
    # polars is slow to load, and most cases have no recordings
    from stickwright.files.recordings import checked_recording, read_recording

    for path, site in site_tables(file):
        listed = site.get("recording")
        for place, table in enumerate(listed if isinstance(listed, list) else []):
            if not isinstance(table, dict):
                continue
            where = (*path, "recording", place, "file")
            inside = _inside(look, file, where, table.get("file"))
            if inside is None:
                continue
            made: dict[str, Any] = {"task": "play", "stick": None, "topper": None, "extension": None}
            made |= {key: table[key] for key in made if isinstance(table.get(key), str)}
            name = site.get("name")
            on = name if isinstance(name, str) else None
            try:
                live = inside.says if isinstance(inside, HeldPlace) else None
                if isinstance(live, Recording):
                    read = replace(checked_recording(live, shown=table["file"]), site=on, **made)
                else:
                    read = read_recording(inside, site=on, shown=table["file"], **made)
                condition = table.get("condition")
                look.recordings.append(
                    replace(
                        read, simulated=table.get("simulated") is True, replayed=table.get("replayed") is True,
                        condition=condition if isinstance(condition, str) else "",
                    )
                )  # fmt: skip
            except BadInput as error:
                look.problems += _named_at(error, file, where, inside)


def _look_at_kit(look: _Look, file: TomlFile, *, has_hub: bool) -> None:
    look.kit, problems = validated(Kit, file)
    look.take(retired_key_notes(Kit, file))
    look.problems += problems
    look.take(kit_warnings(file, has_hub=has_hub))
    for place, stick in enumerate(file.data.get("stick", []) if isinstance(file.data.get("stick"), list) else []):
        path = ("stick", place, "bench_readings")
        inside = _inside(look, file, path, stick.get("bench_readings") if isinstance(stick, dict) else None)
        if inside is not None and not _exists(inside):
            told = message(CaseFiles.no_bench, typed=Name(as_typed(stick["bench_readings"])))
            text = message(FilePlaces.at, where=tuple(file.where(path)), told=told)
            look.queries.append(Finding("query", "bench_readings", text))


def _look_at_game(look: _Look, file: TomlFile | None, player_file: TomlFile | None) -> None:
    if file is not None:
        look.game = _game_of(look, file)
    elif not _exists(look.folder / "game.toml"):
        look.game = game_for_even_use(player_file)
        look.queries.append(Finding("note", "game", message(CaseFiles.no_game)))


def _game_of(look: _Look, file: TomlFile) -> Game | None:
    """One game as read, with the actions usual for its kind where it names none."""
    game, problems = validated(Game, file)
    look.take(retired_key_notes(Game, file))
    look.problems += problems
    look.take(game_warnings(file, look.sticks))
    return _with_actions(look, game, file) if game is not None and not game.action else game


def _look_at_further_games(look: _Look, first: TomlFile | None, files: Sequence[TomlFile]) -> None:
    """What else the player wants to play: each file as if it were the only one, and no two under the same name."""
    named = {_plain(first.data.get("name")): first.name} if first is not None else {}
    for file in files:
        game, name = _game_of(look, file), _plain(file.data.get("name"))
        if name and name in named:
            typed = Name(as_typed(file.data["name"]))
            found, wanted = message(Found.same_name, typed=typed, file=Name(named[name])), message(Expected.own_name)
            look.problems.append(Problem(file.where(("name",)), found, wanted, message(Remedies.game_columns)))
        named.setdefault(name, file.name)
        look.further_games += [game] if game is not None else []
    if files and not _exists(look.folder / "game.toml"):
        further = files[0].name
        remedy = message(Remedies.rename_to, file=Name(further), to=Name("game.toml"))
        found, wanted = message(CaseFiles.no_first_game), message(CaseFiles.first_game)
        look.problems.append(Problem((further,), found, wanted, remedy))
    for name in (one for one in _NOT_READ if _exists(look.folder / one)):
        first_name, last_name = Name(FURTHER_GAMES[0]), Name(FURTHER_GAMES[-1])
        text = message(CaseFiles.not_read, file=Name(name), first=first_name, last=last_name)
        look.queries.append(Finding("query", "game", text))


def _plain(name: object) -> str:
    return name.strip().casefold() if isinstance(name, str) else ""


def _usual_for(file: TomlFile) -> str | None:
    """The archetype that stands in for the actions of a game file, when it names one of the ten and no action."""
    kind = file.data.get("archetype")
    return archetype_named(kind) if isinstance(kind, str) and not file.data.get("action") else None


def _action_names(file: TomlFile | None, further: Sequence[TomlFile]) -> tuple[str, ...] | None:
    """Of all games, each once; None when there is no game."""
    if file is None and not further:
        return None
    names: dict[str, None] = {}
    for one in (*([] if file is None else [file]), *further):
        usual = _usual_for(one)
        named = names_in(one, "action") or () if usual is None else (action.name for action in archetype(usual).action)
        names.update(dict.fromkeys(named))
    return tuple(names)


def _with_actions(look: _Look, game: Game, file: TomlFile) -> Game:
    """The actions usual for the archetype, said aloud: nobody should take them for what the player told."""
    usual = _usual_for(file)
    if usual is not None:
        text = message(CaseFiles.usual_actions, file=Name(file.name), archetype=Name(usual))
        look.queries.append(Finding("note", "game", text))
        return game.model_copy(update={"action": archetype(usual).action})
    offer = nearest(game.archetype, ARCHETYPES) if game.archetype else None
    told = message(CaseFiles.no_actions, file=Name(file.name), table=message(FileTables.one, table="action"))
    text = message(Problems.sentences, parts=(told,) if offer is None else (told, offer))
    look.queries.append(Finding("query", "game", text))
    return game


def _look_at_hub(look: _Look, file: TomlFile | None) -> None:
    if file is not None:
        hubs, problems = validated(Hubs, file)
        look.take(retired_key_notes(Hubs, file))
        look.problems += problems
        look.take(hub_warnings(file))
        look.hubs = hubs.hub if hubs is not None else ()
    elif not _exists(look.folder / "hub.toml"):
        look.queries.append(Finding("note", "hub", message(CaseFiles.no_hub)))


def _look_at_room(look: _Look, file: TomlFile | None, player_file: TomlFile | None) -> None:
    if file is not None:
        look.room, problems = validated(Room, file)
        look.take(retired_key_notes(Room, file))
        look.problems += problems
        look.take(room_warnings(file, player_file))
    elif not _exists(look.folder / "room.toml"):
        look.queries.append(Finding("note", "room", message(CaseFiles.no_room)))


def _inside(look: _Look, file: TomlFile, where: FieldPath, name: Any) -> FilePlace | None:
    """The file that a key names, or None (with a problem) when it would lie outside the case folder."""
    if not isinstance(name, str):
        return None
    steps = PureWindowsPath(name)
    absolute = PurePosixPath(name).is_absolute() or bool(steps.drive or steps.root)
    try:
        outside = absolute or not (
            isinstance(look.folder, HeldPlace)  # where no link leads out
            or (look.folder / name).resolve().is_relative_to(look.folder.resolve())
        )
    except (OSError, ValueError, RuntimeError):  # a name that no file can have, or links in a ring
        outside = True
    if outside or ".." in steps.parts:
        inside, remedy = message(Expected.file_inside), message(Remedies.copy_inside)
        look.problems.append(Problem(file.where(where), as_typed(name), inside, remedy))
        return None
    return look.folder / name


def _named_at(error: BadInput, file: TomlFile, where: FieldPath, path: FilePlace) -> tuple[Problem, ...]:
    """A file that is not there is told at the line that names it; what is wrong inside it, inside it."""
    if path.is_file():
        return error.problems
    return tuple(
        Problem(
            file.where(where),
            message(Problems.about, name=Name(str(problem.field)), found=problem.found),
            problem.expected,
            problem.remedy,
        )
        for problem in error.problems
    )
