"""How a device is to be set and which mode it must be in; what to order where nothing of the kit does as well."""

from __future__ import annotations

from stickwright.model.plan import DeviceNote, Fit, Plan, ToOrder
from stickwright.sheet.printed import clause, listed, percent, plain, sentence, share
from stickwright.units import figures

__all__ = ["crosswise_step", "holding_steps", "mode_steps", "mode_trouble", "order_words", "setting_step"]


def setting_step(fit: Fit) -> str:
    """What to do to the stick so that it is set as the plan counts on; nothing where it can be set in one way only.

    Parameters
    ----------
    fit : Fit
    """
    if not fit.setting:
        return ""
    how = f": {clause(fit.how_to_set)}" if fit.how_to_set else ""
    return f"Set {fit.stick} to “{fit.setting}”{how}."


_TURNED_BY = {
    "itself": "in the stick's own settings",
    "hub": "in the hub's settings",
    "game": "in the game's settings",
    "": "look in the manuals of stick, hub and game for where",
}
"""Where the output of a stick is turned, by `Stick.turns_output`."""


def crosswise_step(fit: Fit) -> str:
    """How a base that fits only crosswise is stood, and where its output is turned to match; nothing for any other.

    Parameters
    ----------
    fit : Fit
    """
    if not fit.crosswise:
        return ""
    where = _TURNED_BY.get(fit.turns_output, clause(fit.turns_output))
    between = " " if fit.turns_output in ("itself", "hub", "game") else ": "
    return (
        "Stand the base crosswise, its front to the left, and turn its output a quarter turn "
        f"anticlockwise{between}{where}."
    )


def holding_steps(plan: Plan) -> list[str]:
    """For each controller that is held in the hand or rests, and each stick on a grip: how it is to be had.

    Parameters
    ----------
    plan : Plan
    """
    placements = plan.sharing.placements if plan.sharing is not None else ()
    out = []
    for one in placements:
        works = listed(tuple(dict.fromkeys(str(each.site) for each in placements if each.device == one.device)))
        if one.holding == "one hand":
            out.append(f"Hold {one.device} in one hand, the one of the {works}.")
        elif one.holding == "two hands":
            out.append(f"Hold {one.device} in both hands.")
        elif one.holding == "resting":
            out.append(
                f"Rest {one.device} on a mount or tray, not in the hand{f': {clause(one.holding_why)}' if one.holding_why else ''}."
            )
        if one.fit is not None and one.fit.fixed_to:
            out.append(f"Fix {one.fit.stick} to the grip of {one.fit.fixed_to}; the same hand works both.")
    return list(dict.fromkeys(out))


def mode_steps(plan: Plan) -> list[str]:
    """For each device in use that has modes: the one it must be in, and how to see it.

    Parameters
    ----------
    plan : Plan
    """
    return [_mode(note) for note in plan.device_notes if note.mode]


def _mode(note: DeviceNote) -> str:
    sign = f": {clause(note.mode_sign)}" if note.mode_sign else ""
    return f"Check that {note.device} is in mode “{note.mode}”{sign}."


def mode_trouble(plan: Plan) -> list[list[str]]:
    """Rows for "if it does not work": a device that is in another mode, and how to get it back.

    Parameters
    ----------
    plan : Plan
    """
    return [
        [f"Is {note.device} in another mode?", f"{sentence(note.mode_back)} It must be in “{note.mode}”."]
        if note.mode_back
        else [f"Is {note.device} in another mode?", f"It must be in “{note.mode}”. Its manual says how."]
        for note in plan.device_notes
        if note.mode
    ]


def order_words(order: ToOrder) -> str:
    """What to ask for, how long it takes, and what it would be worth.

    Parameters
    ----------
    order : ToOrder
    """
    fit = order.fit
    on_it = f", to be used with {fit.topper}" if fit.topper else ""
    terms = [f"about {order.weeks:g} weeks" if order.weeks is not None else "", _price(order.price)]
    ends = "; ".join(term for term in terms if term)
    gain = (
        "No stick of this kit fits."
        if order.better_bits is None
        else f"About {figures(order.better_bits)} bits better than the best stick of this kit."
    )
    return (
        f"Made to order ({order.offer}): ask for {plain(fit.start_force_n, 'n')} to leave the centre, "
        f"{plain(fit.full_force_n, 'n')} at full travel, {plain(fit.travel_m, 'mm')} travel and the contact point "
        f"{plain(fit.contact_height_m, 'mm')} above the pivot{on_it}{f' ({ends})' if ends else ''}. {gain} "
        f"It would reach {percent(fit.weakest_share)} of its travel in the weakest direction; it keeps every rule in "
        f"{share(order.chance_fits)} of the simulations."
    )


def _price(price: float | None) -> str:
    return "" if price is None else f"{price:.2f} in the currency of the kit's prices"
