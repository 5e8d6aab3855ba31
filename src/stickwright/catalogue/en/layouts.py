"""The control layout as a whole, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.inputs import Role
from stickwright.codes.layouts import Layouts
from stickwright.codes.message import Name, Text

__all__ = ["Texts"]

_UNTRIED = "not tried together: a 20 s test would tell"


class Texts(Layouts):
    """How good it is, who does how much, what is to be looked at."""

    w: English

    def not_found(self) -> str:
        return (
            "Within the time limit, neither a control layout nor a proof that there is none was found. Ask for less, or say "
            "what is to stay where it is."
        )

    def impossible(self) -> str:
        return "No control layout is possible, whatever is given up."

    def proven(self, *, score_points: float, clashed: bool) -> str:
        given = "Once the cheapest way out is taken, no" if clashed else "No"
        return f"{given} other layout scores higher (proven; score {self.w.score(score_points)})."

    def unproven(self, *, score_points: float, bound_points: float, gap_points: float) -> str:
        return (
            f"The best layout found within the time limit scores {self.w.score(score_points)}. It is not proven best: none can score "
            f"higher than {self.w.score(bound_points)}, which is {self.w.score(gap_points)} more."
        )

    def done_by(self, *, actions: int, player: int, game: int, others: int, left_out: int, clashed: bool) -> str:
        if not actions:
            told = "No action could be given a place."
        else:
            all_actions = f"{actions} {self.w.plural(actions, one='action', other='actions')}"
            told = f"The player does {player} of {all_actions}" if player else f"The player does none of {all_actions}"
            rest = [f"the game does {game}"] if game else []
            rest += [f"somebody else does {others}"] if others else []
            rest += [f"{left_out} {self.w.plural(left_out, one='is', other='are')} left out"] if left_out else []
            told = f"{told}; {self.w.all_of(tuple(rest))}." if rest else f"{told}."
        return f"{told} Some requests cannot be met." if clashed else told

    def nobody_can(self, *, number: int, action: Name, nearest: Text | None) -> str:
        why = f" ({self.clause(nearest)})" if nearest is not None else ""
        return (
            f"Action {number} of the game, {self.w.name(action)}: no control site of the player can do it with this kit{why}, and it is "
            "left neither to an option of the game nor to a helper. Add an option, a helper or the cost to the player of going "
            "without it, measure another control site, or add a device."
        )

    def same_stick(self, *, actions: tuple[Name, ...], role: Role) -> str:
        return f"{self.w.names(actions)} would both arrive as the {self.w.role(role)}: only one of them would work, without warning."

    def coarse(self, *, action: Name, site: Name, setup: Text, precision_bits: float) -> str:
        return (
            f"{self.w.name(action)} at the {self.w.name(site)} on {self.say(setup)}: {self.w.number(precision_bits)} bits of precision, "
            "so direction will be coarse. Rely on play with one button, options of the game and a helper."
        )

    def try_together(self, *, first: Name, second: Name, first_site: Name, second_site: Name, why: Text) -> str:
        return (
            f"{self.w.name(first)} and {self.w.name(second)} must be possible at the same time, at the {self.w.name(first_site)} and "
            f"the {self.w.name(second_site)}. To confirm: try both at once for 20 s (as assumed: {self.clause(why)})."
        )

    def busy_site(self, *, site: Name, confirm: Text, busy_share: float, most_share: float) -> str:
        return (
            f"{self.w.name(site)}: to confirm: measure {self.clause(confirm)} (as assumed: presses fill {self.w.share(busy_share)} of "
            f"the busiest minute, more than {self.w.share(most_share)})."
        )

    def _click(self, switches: tuple[Name, ...]) -> str:
        return f"{self.w.names(switches)} {self.w.plural(len(switches), one='clicks', other='click')} when pressed"

    def clicks_unwanted(self, *, switches: tuple[Name, ...]) -> str:
        return f"{self._click(switches)}, although quiet is wanted: nothing quieter does better here. Try it where it will be used."

    def clicks(self, *, switches: tuple[Name, ...]) -> str:
        return (
            f"{self._click(switches)}. If somebody sleeps nearby or a microphone is open, record that quiet is wanted."
        )

    def press_notes(self, *, site: Name, notes: tuple[Text, ...]) -> str:
        return f"{self.w.name(site)}: {'; '.join(self.clause(one) for one in notes)}."

    def cables(self) -> str:
        return (
            "Run cables along edges and cover them where people walk. Keep them off neck, chest and tubing, without loops. Unplug "
            "them before a transfer."
        )

    def two_controllers(self) -> str:
        return (
            "Two controllers act as one player: try what happens when both act at once. Agree on a word for stop and on who may "
            "pause."
        )

    def stays_on(self, *, action: Name) -> str:
        return f"{self.w.name(action)} stays on until it is pressed again: the player must always be able to tell whether it is on."

    def many_presses(self, *, action: Name, count_per_min: float) -> str:
        return (
            f"{self.w.name(action)}: {self.w.number(count_per_min)} presses in the busiest minute. Stop for pain or numbness. Pause for "
            "5 to 10 minutes in every 30 to 45."
        )

    def same_limb(self, *, slowed_share: float) -> str:
        return f"same limb, {_UNTRIED}; until then {self.w.share(slowed_share)} is assumed"

    def side_unsaid(self, *, sites: tuple[Name, ...]) -> str:
        return f"treated as different limbs, because the side of {self.w.names(sites)} is not recorded; {_UNTRIED}"

    def different_limbs(self) -> str:
        return f"different limbs, {_UNTRIED}"

    def slows_unknown(self, *, slowed_share: float) -> str:
        return f"said to slow; by how much was not counted, so {self.w.share(slowed_share)} is assumed"

    def load(self, *, why: Text, lost_share: float | None) -> str:
        lost = "" if lost_share is None else f"; it lost {self.w.share(lost_share)} of its force over the visit"
        return f"{self.clause(why)}{lost}"

    def load_unknown(self) -> str:
        return "no figure shows how soon it tires"

    def load_busy(self, *, busy_share: float) -> str:
        return f"presses fill {self.w.share(busy_share)} of the busiest minute"

    def load_press(self, *, action: Name, effort_share: float, count_per_min: float) -> str:
        return (
            f"{self.w.name(action)} needs {self.w.share(effort_share)} of its comfortable force, {self.w.whole(count_per_min)} times in "
            "the busiest minute"
        )

    def load_stick(self, *, effort_share: float, duty_share: float) -> str:
        return f"needs {self.w.share(effort_share)} of its comfortable force, {self.w.share(duty_share)} of the time"

    def load_hold(self, *, action: Name, held_s: float, limit_s: float) -> str:
        return f"{self.w.name(action)} needs holds of {self.w.amount(held_s, 's')}, and {self.w.amount(limit_s, 's')} is the limit"

    def busy_basis(self, *, parts: tuple[Text, ...], busy_s: float) -> str:
        return f"{'; '.join(self.clause(one) for one in parts)}: {self.w.whole(busy_s)} of 60 s"

    def busy_held(self, *, action: Name, duty_share: float) -> str:
        return f"{self.w.name(action)} held {self.w.share(duty_share)} of the time"

    def busy_pressed(self, *, action: Name, count_per_min: float, cycle_s: float, move_s: float | None) -> str:
        move = "" if move_s is None else f" + {self.w.amount(move_s, 's')} to get there"
        return f"{self.w.name(action)}: {self.w.number(count_per_min)} presses of {self.w.amount(cycle_s, 's')}{move}"

    def at_once(self, *, sites: tuple[Name, ...]) -> str:
        return f"{self.w.names(sites)} at the same time"

    def pair_says(self, *, says: Literal["yes", "slows", "no"]) -> str:
        return {"yes": "yes", "slows": "slowed", "no": "no"}[says]

    def pair_confirm(self) -> str:
        return "a 20 s test of both at once"
