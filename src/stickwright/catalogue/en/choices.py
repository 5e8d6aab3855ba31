"""Why an action is done so and not otherwise, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.choices import Choices, Traded
from stickwright.codes.message import Name, Text

__all__ = ["Texts"]

_WORSE: dict[Traded, str] = {
    "importance": "less of what matters to the player",
    "precision": "less precise",
    "effort": "more effort",
    "misses": "more presses miss",
    "unintended": "more unintended activations",
    "toggle": "press on, press off",
    "setup": "more setting up",
    "busy": "more presses at an assumed rate",
    "suits": "less certain to suit the control site",
    "sound": "louder",
    "helper": "more done by somebody else",
    "option": "more done by the game",
    "dropped": "more left out",
    "rule_broken": "breaks a rule of practice",
    "ranked": "ranked lower at its site",
    "part": "more devices",
    "cost": "more to order",
    "slowed": "one site slows another",
    "mind": "more that the player dislikes",
    "clearance": "a site that needs the treating team's agreement",
    "held": "harder to hold or to set up",
    "exchanged": "others do what the player would rather do",
}
_BETTER: dict[Traded, str] = {
    "importance": "more of what matters to the player",
    "precision": "more precise",
    "effort": "less effort",
    "misses": "fewer presses miss",
    "unintended": "fewer unintended activations",
    "toggle": "no press on, press off",
    "setup": "less setting up",
    "busy": "fewer presses at an assumed rate",
    "suits": "more certain to suit the control site",
    "sound": "quieter",
    "helper": "less done by somebody else",
    "option": "less done by the game",
    "dropped": "less left out",
    "rule_broken": "keeps the rules of practice",
    "ranked": "ranked higher at its site",
    "part": "fewer devices",
    "cost": "less to order",
    "slowed": "no site slows another",
    "mind": "less that the player dislikes",
    "clearance": "no site that needs the treating team's agreement",
    "held": "easier to hold or to set up",
    "exchanged": "others do what the player minds less",
}


class Texts(Choices):
    """Reasons, second choices, other layouts."""

    w: English

    def _joined(self, texts: tuple[Text, ...], sign: str = "; ") -> str:
        return sign.join(self.clause(one) for one in texts)

    def _scores(self, loss_points: float | None, trade: Text) -> str:
        lower = "almost the same" if loss_points is None else f"{self.w.score(loss_points)} lower"
        return f"scores {lower} ({self.clause(trade)})"

    def at_site(self, *, site: Name, device: Text, toggle: bool) -> str:
        return f"{self.w.name(site)} on {self.say(device)}{', press on, press off' if toggle else ''}"

    def by_game(self, *, option: Name) -> str:
        return f"the game itself ({self.w.name(option)})"

    def by_helper(self, *, helper: Name | None) -> str:
        return self.w.name(helper) if helper else "a helper"

    def left_out(self) -> str:
        return "left out"

    def together(self, *, actions: tuple[Name, ...]) -> str:
        return f"{self.w.names(actions)} together"

    def trade(self, *, worse: tuple[Traded, ...], better: tuple[Traded, ...]) -> str:
        more, less = ", ".join(_WORSE[one] for one in worse), self.w.all_of(tuple(_BETTER[one] for one in better))
        if more and less:
            return f"{more}, but {less}"
        return more or less or "as good by these figures"

    def moves(self, *, action: Name, place: Text) -> str:
        return f"{self.w.name(action)} goes to {self.say(place)}"

    def moves_out(self, *, action: Name) -> str:
        return f"{self.w.name(action)} is left out"

    def instead(self, *, place: Text, then: tuple[Text, ...], more: int, loss_points: float | None, trade: Text) -> str:
        also = f"; then {self._joined(then, ' and ')}" if then else ""
        also += f" and {more} more" if more else ""
        return f"{self.clause(place)}{also}: {self._scores(loss_points, trade)}."

    def no_other(self, *, nearest: Text | None) -> str:
        closest = "" if nearest is None else f" The nearest fails: {self.clause(nearest)}."
        return f"There is no other way.{closest}"

    def alternative(self, *, changes: tuple[Text, ...], more: int, loss_points: float | None, trade: Text) -> str:
        also = f" and {more} more" if more else ""
        return f"{self._joined(changes)}{also}: {self._scores(loss_points, trade)}."

    def change(self, *, action: Name, new: Text, old: Text) -> str:
        return f"{self.w.name(action)}: {self.clause(new)} instead of {self.clause(old)}"

    def then_lost(self, *, actions: tuple[Name, ...], more: int) -> str:
        if not actions:
            return "possible by itself, but then the other requests cannot all be met"
        also = f" and {more} more" if more else ""
        return f"possible by itself, but then {self.w.names(actions)}{also} could not be done"

    def not_used(self) -> str:
        return "not used for an action of this kind"

    def refusal(self, *, site: Name | None, device: Text | None, why: Text) -> str:
        where = self.w.name(site) if site else ""
        on = self.say(device) if device is not None else ""
        told = f"{where} on {on}" if where and on else where or on
        return f"{told}: {self.clause(why)}" if told else self.clause(why)

    def several(self, *, told: tuple[Text, ...]) -> str:
        return self._joined(told)

    def reason(self, *, only: bool, told: tuple[Text, ...], broken: Text | None) -> str:
        parts = ["the only control site able to do this"] if only else []
        parts += [self.clause(one) for one in told]
        parts += [f"it breaks a rule of practice: {self.clause(broken)}"] if broken is not None else []
        return "; ".join(parts)

    def nobody(self, *, nearest: Text) -> str:
        return f"no control site of the player can do it: {self.clause(nearest)}"

    def cheaper(self, *, action: Name, cost_points: float) -> str:
        return (
            f"leaving {self.w.name(action)} to others costs the player {self.w.trimmed(cost_points)} of 10, which is less than any of "
            "their control sites would cost the whole layout"
        )

    def not_with_rest(self) -> str:
        return "cannot be done together with the rest"

    def nobody_with_kit(self, *, nearest: Text | None) -> str:
        return f"nobody can do it with this kit{f': {self.clause(nearest)}' if nearest is not None else ''}"

    def on_grip(self, *, controller: Name) -> str:
        return f"it is fixed to the grip of {self.w.name(controller)}, for a hand"

    def kept_for(self, *, site: Name, action: Name) -> str:
        return f"the {self.w.name(site)} is reserved for {self.w.name(action)}"

    def no_force_read(self, *, site: Name) -> str:
        return f"no stick force was measured at the {self.w.name(site)}"

    def no_press_tried(self, *, site: Name) -> str:
        return f"no press was tried at the {self.w.name(site)}"

    def none_in_stock(self) -> str:
        return "it would do, but none is in stock, and the kit has no price for it"

    def no_switch(self) -> str:
        return "the kit has no switch"

    def team_refused(self) -> str:
        return "left out, because the treating team has not agreed"

    def either_way(self, *, held: Text, toggled: Text) -> str:
        return f"{self.clause(held)}; with press on, press off: {self.clause(toggled)}"

    def not_common(self) -> str:
        return "it is not among the devices that are set up for all games"
