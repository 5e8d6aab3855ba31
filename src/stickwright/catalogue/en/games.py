"""Several games of one player, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.clashes import Limb
from stickwright.codes.games import Games
from stickwright.codes.message import Name, Text

__all__ = ["Texts"]


class Texts(Games):
    """One set of devices for all, and what changes between the games."""

    w: English

    def _all(self, texts: tuple[Text, ...]) -> str:
        return self.w.all_of(tuple(self.clause(one) for one in texts))

    def replug(
        self, *, device: Name, site: Name, socket: Name, old_socket: Name | None, instead_of: Name | None, first: tuple[Text, ...],
        why: Text | None,
    ) -> str:  # fmt: skip
        out = [f"Unplug {self.w.name(instead_of)} from {self.w.name(socket)}."] if instead_of else []
        out += [f"First unplug {self._all(first)}."] if first else []
        moved = f" from {self.w.name(old_socket)}" if old_socket else ""
        out.append(f"Plug {self.w.name(device)} ({self.w.name(site)}){moved} into {self.w.name(socket)}.")
        out += [self.say(why)] if why is not None else []
        return " ".join(out)

    def unplugged(self, *, device: Name, socket: Name) -> str:
        return f"{self.w.name(device)} from {self.w.name(socket)}"

    def refit(self, *, site: Name, after: Text, before: Text) -> str:
        return f"At the {self.w.name(site)}: {self.clause(after)} instead of {self.clause(before)}."

    def hours_of(self, *, games: tuple[Name, ...]) -> str:
        return f"Hours of {self.w.names(games)}"

    def hours_usual(self, *, each_week_s: float | None) -> str:
        if each_week_s is None:
            return "the same for all games"
        return f"{self.w.trimmed(each_week_s / 3600)} a week each, as the others on average"

    def hours_untold(self) -> str:
        return "no hours are entered for the game"

    def hours_confirm(self) -> str:
        return "the hours a week, entered for the game"

    def otherwise(self, *, change: Text, lost_points: float | None) -> str:
        if lost_points is None:
            return self.clause(change)
        how = f"{self.w.score(abs(lost_points))} {'lower' if lost_points > 0 else 'higher'}"
        return f"{self.clause(change)} (scores {how})"

    def swap(self, *, game: Name, refits: tuple[Text, ...]) -> str:
        return f"For {self.w.name(game)}: {' '.join(self.say(one) for one in refits)}"

    def not_common(self, *, found_none: bool, swaps: tuple[Text, ...]) -> str:
        why = (
            "no single set of devices lets all of them be played"
            if found_none
            else "no common set of devices was found within the time limit"
        )
        told = f"The games do not share their devices: {why}. Each game has its own, and the devices are changed between games."
        return " ".join((told, *(self.say(one) for one in swaps)))

    def loses(
        self,
        *,
        game: Name,
        score_points: float,
        alone_points: float,
        more: tuple[Text, ...],
        to_order_price: float | None,
    ) -> str:
        told = (
            f"{self.w.name(game)} scores {self.w.score(score_points)} with the common devices, and {self.w.score(alone_points)} with "
            "devices of its own."
        )
        if not more:
            return told
        price = "price not known" if to_order_price is None else f"to order: {self.w.trimmed(to_order_price)}"
        price = "all in stock" if to_order_price == 0 else price
        return f"{told} That would also need {self._all(more)} ({price}), changed each time."

    def device_at(self, *, device: Name, place: Text) -> str:
        return f"{self.w.name(device)} at the {self.say(place)}"

    def limb(self, *, limb: Limb) -> str:
        return limb

    def separate(self, *, games: int) -> str:
        return f"{games} {self.w.plural(games, one='game', other='games')}, each with devices of its own."

    def _common(self, games: int, score_points: float) -> str:
        many = f"{games} {self.w.plural(games, one='game', other='games')}"
        return f"{many} with one set of devices: score {self.w.score(score_points)} on average by hours"

    def common_free(self, *, games: int, score_points: float) -> str:
        return f"{self._common(games, score_points)}; no game scores lower for it."

    def common(self, *, games: int, score_points: float, alone_points: float, bound_points: float | None) -> str:
        bound = (
            "proven: no common set scores higher"
            if bound_points is None
            else f"no common set can score higher than {self.w.score(bound_points)}"
        )
        return f"{self._common(games, score_points)}; {self.w.score(alone_points)} with devices of its own for each game ({bound})."
