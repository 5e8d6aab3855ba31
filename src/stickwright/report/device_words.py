"""How a device is to be set and which mode it must be in; what to order where nothing of the kit does as well."""

from __future__ import annotations

from typing import get_args

from stickwright.catalogue import say
from stickwright.codes.device_steps import DeviceSteps, TurnedBy
from stickwright.codes.message import Message, Name, message
from stickwright.model.fit import Fit
from stickwright.model.plan import DeviceNote, Plan, ToOrder
from stickwright.report.tell import named, names, tell

__all__ = ["crosswise_step", "holding_steps", "mode_steps", "mode_trouble", "order_told", "order_words", "setting_step"]

_WEEK_S = 7 * 86400.0


def setting_step(fit: Fit) -> Message | None:
    """What to do to the stick so that it is set as the plan counts on; nothing where it can be set in one way only."""
    if not fit.setting:
        return None
    return message(DeviceSteps.set_to, device=Name(fit.stick), setting=Name(fit.setting), how=named(fit.how_to_set))


def crosswise_step(fit: Fit) -> Message | None:
    """How a base that fits only crosswise is stood, and where its output is turned to match; nothing for any other."""
    if not fit.crosswise:
        return None
    known: TurnedBy | None = next((one for one in get_args(TurnedBy) if one == fit.turns_output), None)
    told = named(fit.turns_output) if known is None else None
    return message(DeviceSteps.crosswise_told, told=told) if told else message(DeviceSteps.crosswise, turned_by=known)


def holding_steps(plan: Plan) -> list[Message]:
    """For each controller that is held in the hand or rests, and each stick on a grip: how it is to be had."""
    placements = plan.sharing.placements if plan.sharing is not None else ()
    out: list[Message] = []
    for one in placements:
        device = Name(one.device or "")
        if one.holding == "one hand":
            sites = dict.fromkeys(each.site for each in placements if each.device == one.device and each.site)
            out.append(message(DeviceSteps.hold_in_one_hand, device=device, sites=names(sites)))
        elif one.holding == "two hands":
            out.append(message(DeviceSteps.hold_in_two_hands, device=device))
        elif one.holding == "resting":
            out.append(message(DeviceSteps.rest_it, device=device, why=one.holding_why or None))
        if one.fit is not None and one.fit.fixed_to:
            grip = Name(one.fit.fixed_to)
            out.append(message(DeviceSteps.fix_to_grip, stick=Name(one.fit.stick), controller=grip))
    return list(dict.fromkeys(out))


def mode_steps(plan: Plan) -> list[Message]:
    """For each device in use that has modes: the one it must be in, and how to see it."""
    return [_mode(note) for note in plan.device_notes if note.mode]


def _mode(note: DeviceNote) -> Message:
    return message(DeviceSteps.check_mode, device=Name(note.device), mode=Name(note.mode), sign=named(note.mode_sign))


def mode_trouble(plan: Plan) -> list[list[str]]:
    """Rows for "if it does not work": a device that is in another mode, and how to get it back."""
    return [
        [
            tell(DeviceSteps.other_mode, device=Name(note.device)),
            tell(DeviceSteps.mode_back, mode=Name(note.mode), back=named(note.mode_back)),
        ]
        for note in plan.device_notes
        if note.mode
    ]


def order_words(order: ToOrder) -> str:
    """What to ask for, how long it takes, and what it would be worth."""
    return say(order_told(order))


def order_told(order: ToOrder) -> Message:
    """`order_words` as a message."""
    fit = order.fit
    return message(
        DeviceSteps.to_order, offer=Name(order.offer), start_force_n=fit.start_force_n, full_force_n=fit.full_force_n,
        travel_m=fit.travel_m, height_m=fit.contact_height_m, topper=named(fit.topper),
        delivery_s=None if order.weeks is None else order.weeks * _WEEK_S, order_price=order.price,
        better_bits=order.better_bits, weakest=fit.weakest_share, chance_share=order.chance_fits,
    )  # fmt: skip
