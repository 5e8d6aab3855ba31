"""The settings of a stick in each of several games: the same stick and hand, another dead zone inside the game, other numbers
that it lets one change, another limit to how late it may be."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from stickwright.codes.message import Name, message
from stickwright.codes.tunings import Tunings
from stickwright.model.game import DEAD_ZONE, SENSITIVITY, Game, SettingsBefore
from stickwright.model.layouts import GameSettings
from stickwright.model.response import SimpleSettings, Tuning
from stickwright.model.sharing import Sharing
from stickwright.tuning.curve import inner_jump
from stickwright.tuning.pipeline import response_of
from stickwright.tuning.simple import simple_settings

__all__ = ["set_before", "settings_in", "simple_in"]

_BOTH = (DEAD_ZONE, SENSITIVITY)


def set_before(game: Game, stick: str) -> SettingsBefore | None:
    """What was set in a game for a stick before anything was changed; None when nobody wrote it down.

    Parameters
    ----------
    game : Game
    stick : str
        By its name, with its setting where it has several: one told for the stick alone does for all of its settings.
    """
    plain = stick.partition(" (")[0]
    told = {one.stick: one for one in game.settings_before}
    return told.get(stick) or told.get(plain)


def simple_in(tuning: Tuning, game: Game) -> SimpleSettings:
    """The two numbers of a tuned stick in a game.

    Parameters
    ----------
    tuning : Tuning
        From recordings; made for this game or for another.
    game : Game

    Notes
    -----
    Nothing that the recordings tell depends on the game but what it offers to change: centre, range, dead zone and curve stay.
    """
    response = replace(response_of(tuning), inner_jump=inner_jump(game.own_dead_zone_share))
    return simple_settings(response, tuple(one.number for one in tuning.range_share), game.offers)


def settings_in(
    sharing: Sharing | None, tunings: Mapping[str, Sequence[Tuning]], game: Game
) -> tuple[GameSettings, ...]:
    """What to set in one game for each stick that it uses.

    Parameters
    ----------
    sharing : Sharing or None
        Who does what in this game.
    tunings : mapping
        Of each site.
    game : Game
    """
    out: dict[tuple[str, str], GameSettings] = {}
    for one in sharing.placements if sharing is not None else ():
        if one.kind == "stick" and one.fit is not None and one.site is not None:
            found = next((tuning for tuning in tunings.get(one.site, ()) if tuning.stick == one.fit.full_name), None)
            out[one.site, one.fit.full_name] = _settings(one.site, one.fit.full_name, found, game)
    return tuple(out.values())


def _settings(site: str, stick: str, tuning: Tuning | None, game: Game) -> GameSettings:
    own, before = game.own_dead_zone_share, set_before(game, stick)
    settable = tuple(one for one in _BOTH if one in game.offers) or _BOTH
    nothing = GameSettings(
        site=site,
        stick=stick,
        simple=None,
        why=None,
        own_dead_zone_share=own,
        settings_before=before,
        inner_jump=None,
        settable=settable,
        too_late_s=None,
    )
    if tuning is None:
        return replace(nothing, why=message(Tunings.not_recorded, stick=Name(stick)))
    if tuning.faults:
        return replace(nothing, why=message(Tunings.not_usable, stick=Name(stick)))
    lag = tuning.filter.chosen.lag_s.number if tuning.filter is not None else 0.0
    late = lag if lag > game.lag_budget_s else None
    return GameSettings(
        site=site,
        stick=stick,
        simple=simple_in(tuning, game),
        why=None,
        own_dead_zone_share=own,
        settings_before=before,
        inner_jump=inner_jump(own),
        settable=settable,
        too_late_s=late,
    )
