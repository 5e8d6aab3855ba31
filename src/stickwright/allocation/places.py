"""Every way to do every action, from what each part can do and what is in the kit; and for what cannot be, why not."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import product

from stickwright.allocation import utility
from stickwright.allocation.concurrency import limb_of
from stickwright.allocation.in_hand import ControllerGrip, holds_of
from stickwright.allocation.pressing import (
    HELD_KINDS,
    PRESSED_KINDS,
    Pressed,
    can_press,
    press_fit,
    spasms_per_s,
)
from stickwright.allocation.problem import Way, rounded
from stickwright.codes.choices import Choices
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.presses import Presses
from stickwright.codes.scores import Scores
from stickwright.codes.stand_ins import StandIns
from stickwright.mechanics.states import played
from stickwright.model.case import Case
from stickwright.model.fit import Assumption, Fit
from stickwright.model.game import Action, Game
from stickwright.model.hub import BUTTON_ROLES, STICK_ROLES
from stickwright.model.kit import Controller, Switch
from stickwright.model.parts import HAND_PARTS
from stickwright.model.player import Site
from stickwright.model.sharing import PressFit, Term

__all__ = ["STICK_KINDS", "PossibleWays", "Refused", "place_of", "places", "pressed_name", "roles_wanted"]

STICK_KINDS = ("two-axis", "one-axis")
"""Kinds of action that need a stick."""
_NEAREST = 3
"""Sticks that break a rule offered at a site, nearest first, at the price of a rule broken: for where none keeps them
all, or those that do are not to be had."""
_NOT_THERE = message(Choices.none_in_stock)


@dataclass(frozen=True)
class Refused:
    """An action that cannot be done at a site with some device, and why.

    Parameters
    ----------
    action, site : str
    device : str
        Empty when no device comes into question.
    why : Text
        A clause.
    shortfalls : int
        How many rules are broken: the fewest come nearest.
    control : str
        Button of a controller; empty for anything else.
    """

    action: str
    site: str
    device: str
    why: Text
    shortfalls: int = 1
    control: str = ""

    @property
    def named(self) -> Message | Name | None:
        """The device, with its control; None when no device comes into question."""
        if not self.device:
            return None
        return pressed_name(self.device, self.control)


def pressed_name(device: str, control: str | None) -> Message | Name:
    """A device, and which of its buttons where it is a controller.

    Parameters
    ----------
    device : str
    control : str or None
        In the words of the standard mapping; none for a device that is no controller.
    """
    role = next((one for one in BUTTON_ROLES if one == control), None)
    return Name(device) if role is None else message(Presses.button, controller=Name(device), role=role)


@dataclass(frozen=True)
class PossibleWays:
    """All that is possible, and what is not.

    Parameters
    ----------
    ways : tuple of Way
        In the order of actions, sites and kit: a tie goes to the first.
    refused : tuple of Refused
    assumptions : tuple of Assumption
    """

    ways: tuple[Way, ...]
    refused: tuple[Refused, ...]
    assumptions: tuple[Assumption, ...]


def roles_wanted(game: Game) -> tuple[dict[str, str | None], tuple[Assumption, ...]]:
    """What a socket must feed for each action.

    Returns
    -------
    roles : dict
        By action, in the words of the standard mapping; None where any button, or any stick, will do.
    assumptions : tuple of Assumption
        Where the game file does not say which stick it listens to: the first stick action is taken to be the left
        stick, the second the right one.
    """
    out: dict[str, str | None] = {}
    assumed = []
    taken = {action.input for action in game.action if action.input is not None}
    free = [role for role in STICK_ROLES if role not in taken]
    for action in game.action:
        if action.kind in STICK_KINDS:
            role: str | None = action.input
            if role is None and free:
                role = free.pop(0)
                assumed.append(
                    Assumption(
                        message(StandIns.action_stick, action=Name(action.name)),
                        message(StandIns.role, role=role),
                        message(StandIns.input_not_set),
                        message(StandIns.game_controls),
                    )
                )
            out[action.name] = role
        else:
            out[action.name] = None if game.remaps else action.input
    return out, tuple(assumed)


def place_of(site: Site) -> str:
    """Where a controller is held or fixed for a part: the two hands hold one in common."""
    limb = limb_of(site)
    return "hands" if limb.endswith("arm") else limb


def places(
    case: Case, offers: Mapping[tuple[str, str], Sequence[Fit]], *, usable: Sequence[str] | None = None
) -> PossibleWays:
    """Every way to do every action of the game.

    Parameters
    ----------
    case : Case
    offers : mapping
        For a site and a stick action, the set-ups of the sticks there, best first.
    usable : sequence of str, optional
        Names of the sites that may be used; all when not given.
    """
    ways: list[Way] = []
    refused: list[Refused] = []
    roles, assumptions = roles_wanted(case.game)
    wired = bool(case.hubs)
    sites = [site for site in case.player.site if usable is None or site.name in usable]
    for action in case.game.action:
        for site in sites:
            if action.kind in STICK_KINDS:
                found, against = _on_sticks(case, site, action, offers.get((site.name, action.name), ()), roles, wired)
            elif action.kind in PRESSED_KINDS:
                found, against = _pressed(case, site, action, roles, wired)
            else:
                continue
            ways += found
            refused += against
        refused += [
            Refused(action.name, site.name, "", message(Choices.team_refused), 99)
            for site in case.player.site
            if site not in sites and site.cleared == "no"
        ]
        ways += _left_to_others(case, action)
    return PossibleWays(tuple(ways), tuple(refused), assumptions)


def _way(action: Action, terms: Sequence[Term], **rest: object) -> Way:
    points = rounded(sum(term.points for term in terms))
    return Way(action.name, "site", points, terms=tuple(terms), **rest)  # type: ignore[arg-type]


def _held(hold: ControllerGrip) -> dict[str, object]:
    return {
        "holding": hold.how, "holding_why": hold.why, "held_in": hold.place, "holding_limbs": hold.limbs,
    }  # fmt: skip


def _on_sticks(
    case: Case, site: Site, action: Action, fits: Sequence[Fit], roles: Mapping[str, str | None], wired: bool
) -> tuple[list[Way], list[Refused]]:
    keeping = [fit for fit in fits if fit.verdict != "does not fit"]
    breaking = [fit for fit in fits if fit.verdict == "does not fit" and not fit.impossible]
    offered = [*keeping, *breaking[:_NEAREST]]
    on_grips = [fit for fit in offered if fit.fixed_to and site.part not in HAND_PARTS]
    offered = [fit for fit in offered if fit not in on_grips]
    refused = [
        Refused(action.name, site.name, fit.stick, message(Choices.on_grip, controller=Name(fit.fixed_to)))
        for fit in on_grips
    ]
    refused += [
        Refused(action.name, site.name, fit.stick, fit.fails[0] if fit.fails else fit.limit, len(fit.fails))
        for fit in fits
        if fit not in offered and fit not in on_grips
    ]
    if not fits:
        refused.append(Refused(action.name, site.name, "", _no_stick(site, action), 99))
    controllers = {controller.name: controller for controller in case.kit.controller}
    sticks = {stick.name: stick for stick in case.kit.stick}
    ways: list[Way] = []
    before: tuple[str, float] | None = None
    for fit in offered:
        controller = controllers.get(fit.stick)
        setup_s = None if controller is not None else sticks[fit.stick].setup_s
        terms = list(utility.stick_terms(fit, action, setup_s=setup_s))
        if controller is not None:
            terms = [term for term in terms if term.what != "part"]  # counted once for the whole controller
        points = sum(term.points for term in terms)
        # the site's own ranking has the last word between its sticks: ties there are settled by what is simpler
        if before is not None and points > before[1] - 0.01:
            terms.append(Term("ranked", before[1] - 0.01 - points, message(Scores.ranked, stick=Name(before[0]))))
            points = before[1] - 0.01
        before = (fit.stick, points)
        role = roles[action.name]
        if controller is None:
            ways.append(
                _way(action, terms, site=site.name, device=fit.stick, kind="stick", role=role,
                     detail=fit, fixed_to=fit.fixed_to)
            )  # fmt: skip
            continue
        for control, paired in _stick_controls(controller, role, case.game, wired):
            for hold in holds_of(case.player, site, controller, case.kit.on_grip(controller.name)):
                ways.append(
                    _way(action, (*terms, *hold.terms), site=site.name, device=fit.stick, kind="controller",
                         control=control, paired=paired, role=role, detail=fit, **_held(hold))
                )  # fmt: skip
    return ways, refused


def _no_stick(site: Site, action: Action) -> Message:
    name = Name(site.name)
    if site.action is not None and site.action != action.name:
        return message(Choices.kept_for, site=name, action=Name(site.action))
    return message(Choices.no_force_read, site=name)


def _stick_controls(controller: Controller, role: str | None, game: Game, wired: bool) -> list[tuple[str, bool]]:
    """Sticks of a controller that can do an action, and whether paired."""
    if not wired:
        control = role if role in controller.sticks else next(iter(controller.sticks), None)
        return [] if control is None else [(control, False)]
    out: list[tuple[str, bool]] = []
    if controller.usb_stick is not None and controller.usb_stick in controller.sticks:
        out.append((controller.usb_stick, False))
    if controller.pairs:
        out += [(stick, True) for stick in controller.sticks if role in (None, stick) or game.swaps_sticks]
    return out


def _pressed(
    case: Case, site: Site, action: Action, roles: Mapping[str, str | None], wired: bool
) -> tuple[list[Way], list[Refused]]:
    ways: list[Way] = []
    refused: list[Refused] = []
    role = roles[action.name]
    spasms = spasms_per_s(case.player)
    if can_press(site):
        for switch in case.kit.switch:
            fits = _held_and_toggled(site, Pressed.of_switch(switch), action, spasms)
            refused += _all_fail(action, site, switch.name, fits)
            for toggle, fit in fits.items():
                if fit.fails:
                    continue
                if switch.in_stock == 0 and switch.price is None:
                    refused.append(Refused(action.name, site.name, switch.name, _NOT_THERE))
                    continue
                terms = (
                    *utility.press_terms(fit, action, toggle=toggle),
                    *utility.device_terms(switch.setup_s),
                    *utility.sound_terms(switch, quiet=case.player.quiet),
                )
                ways.append(
                    _way(action, terms, site=site.name, device=switch.name, kind="switch", role=role, toggle=toggle,
                         detail=fit, **_seconds(site, switch, action, fit, toggle, spasms))
                )  # fmt: skip
    for controller in case.kit.controller:
        for control in controller.buttons:
            if control not in site.reaches or role not in (None, control):
                continue
            fits = _held_and_toggled(site, Pressed.of_button(controller, control), action, spasms)
            refused += _all_fail(action, site, controller.name, fits, control)
            for toggle, fit in fits.items():
                if fit.fails:
                    continue
                if controller.in_stock == 0 and controller.price is None:
                    refused.append(Refused(action.name, site.name, controller.name, _NOT_THERE, control=control))
                    continue
                terms = utility.press_terms(fit, action, toggle=toggle)
                connections = _button_connections(controller, wired)
                for paired, hold in product(
                    connections, holds_of(case.player, site, controller, case.kit.on_grip(controller.name))
                ):
                    ways.append(
                        _way(action, (*terms, *hold.terms), site=site.name, device=controller.name, kind="controller",
                             control=control, paired=paired, role=control, toggle=toggle,
                             detail=fit,
                             busy_s=rounded(_sure_s(fit)), near_s=rounded(_sure_s(fit)), **_held(hold))
                    )  # fmt: skip
    if not ways and not any(one.device for one in refused):
        refused.append(Refused(action.name, site.name, "", _no_press(case, site), 99))
    return ways, refused


def _held_and_toggled(site: Site, pressed: Pressed, action: Action, spasms: float | None) -> dict[bool, PressFit]:
    """A press as it is, and where the game lets it stand for a hold, once to start and once to stop."""
    plain = action.model_copy(update={"toggle": None})  # what it says of a hold does not point to the other
    out = {False: _press_where_worst(site, pressed, plain, toggle=False, spasms=spasms)}
    if action.toggle and action.kind in HELD_KINDS:
        out[True] = _press_where_worst(site, pressed, action, toggle=True, spasms=spasms)
    return out


def _press_where_worst(site: Site, pressed: Pressed, action: Action, *, toggle: bool, spasms: float | None) -> PressFit:
    """A press in the state of the player, of those that they will play in, where it does worst."""
    fits = [
        (state, press_fit(state.site, pressed, action, toggle=toggle, player_spasms_per_s=spasms))
        for state in played(site)
    ]
    state, worst = max(fits, key=lambda pair: (len(pair[1].fails), pair[1].effort, -pair[1].hit_share))
    if len(fits) == 1 or not state.name:
        return worst
    name = Name(state.name)
    return replace(worst, fails=tuple(message(Presses.in_state, state=name, why=why) for why in worst.fails))


def _all_fail(
    action: Action, site: Site, device: str, fits: Mapping[bool, PressFit], control: str = ""
) -> list[Refused]:
    if not all(fit.fails for fit in fits.values()):
        return []
    held, toggled = fits[False].fails, fits[True].fails if True in fits else ()
    why = held[0]
    if toggled and toggled[0] != held[0]:
        why = message(Choices.either_way, held=held[0], toggled=toggled[0])
    return [Refused(action.name, site.name, device, why, min(len(fit.fails) for fit in fits.values()), control)]


def _no_press(case: Case, site: Site) -> Message:
    if can_press(site) and not case.kit.switch:
        return message(Choices.no_switch)
    return message(Choices.no_press_tried, site=Name(site.name))


def _button_connections(controller: Controller, wired: bool) -> list[bool]:
    if not wired:
        return [False]
    return [paired for paired, can in ((False, controller.usb_buttons), (True, controller.pairs)) if can]


def _seconds(
    site: Site, switch: Switch, action: Action, fit: PressFit, toggle: bool, spasms: float | None
) -> dict[str, object]:
    """What the presses take of the busy minute, alone and with a second switch near."""
    kept = action.kind in HELD_KINDS and not toggle and "duty_share" in action.model_fields_set
    near = _sure_s(fit) + fit.presses_per_min * fit.move_s
    alone = False
    if action.reaction_s is not None and fit.move_s > 0:
        waiting = press_fit(
            site, Pressed.of_switch(switch), action, toggle=toggle, wait_s=fit.move_s, player_spasms_per_s=spasms
        )
        alone = bool(waiting.fails)
    return {
        "busy_s": rounded(_sure_s(fit)),
        "near_s": rounded(max(near, 60 * action.duty_share) if kept else near),
        "alone": alone,
    }


def _sure_s(fit: PressFit) -> float:
    """Seconds of the busy minute that its presses take as far as they were read: a usual cycle refuses nothing."""
    return fit.presses_per_min * (fit.cycle_s if fit.sure_cycle_s is None else fit.sure_cycle_s)


def _left_to_others(case: Case, action: Action) -> list[Way]:
    out = []
    if action.kind == "chord":
        terms = (utility.importance_term(action),)
        out.append(Way(action.name, "chord", rounded(action.importance), terms=terms, together=tuple(action.of)))
    if action.option:
        price = utility.OPTION_POINTS if action.option_price is None else action.option_price
        words = message(Scores.own_words, words=Name(action.option_words or action.option))
        out.append(_left(action, "option", price, words, action.option))
    if action.helper:
        own = case.player.independence
        usual = utility.HELPER_POINTS if own is None else own
        price = usual if action.helper_price is None else action.helper_price
        for helper in case.player.helper:
            words = (
                message(Scores.own_words, words=Name(action.helper_words))
                if action.helper_words
                else message(Scores.helper_does_it, helper=Name(helper.name))
            )
            out.append(_left(action, "helper", price, words, helper.name))
    if action.drop_price is not None:
        gone = action.drop_words
        words = message(Scores.own_words, words=Name(gone)) if gone else message(Scores.goes_without)
        out.append(_left(action, "dropped", action.drop_price, words, ""))
    return out


def _left(action: Action, how: utility.Left, price: float, words: Message, label: str) -> Way:
    terms = utility.left_terms(action, how, price=price, words=words)
    points = rounded(sum(term.points for term in terms))
    return Way(action.name, how, points, terms=terms, label=label)
