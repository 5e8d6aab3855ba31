"""What to set for a stick in a game, in Arabic: what the family's pages say."""

from __future__ import annotations

from stickwright.catalogue.ar import Arabic
from stickwright.codes.message import Name, Text, Topic

__all__ = ["Texts"]


class Texts(Topic):
    """Said as in English."""

    w: Arabic

    def in_game(self, *, stick: Name, numbers: Text) -> str:
        return f"اضبط في اللعبة: {self.clause(numbers)}. العصا: {self.w.name(stick)}."

    def in_each_game(self, *, sticks: tuple[Name, ...], games: tuple[Name, ...], numbers: tuple[Text, ...]) -> str:
        told = "؛ ".join(f"{self.w.name(game)}: {self.clause(one)}" for game, one in zip(games, numbers, strict=False))
        return f"اضبط في كل لعبة ({self.w.names(sticks)}): {told}."

    def nothing_yet(self) -> str:
        return "لا تغيّر أي إعداد في اللعبة بعد. يجب قياسها أولًا."

    def change_nothing(self, *, why: Text) -> str:
        return f"لا تغيّر شيئًا بعد: {self.clause(why)}"

    def numbers(self, *, dead_zone_share: float, sensitivity_share: float) -> str:
        return f"المنطقة الميتة {self.w.share(dead_zone_share)}، الحساسية {self.w.share(sensitivity_share)}"

    def numbers_offered(self, *, dead_zone_share: float | None, sensitivity_share: float | None) -> str:
        zone = "لا تتيح منطقة ميتة" if dead_zone_share is None else f"المنطقة الميتة {self.w.share(dead_zone_share)}"
        gain = "لا تتيح الحساسية" if sensitivity_share is None else f"الحساسية {self.w.share(sensitivity_share)}"
        return f"{zone}، {gain}"

    def gains(self, *, stick: Name, directions_rad: tuple[float, ...], gains_factor: tuple[float, ...]) -> str:
        told = tuple(
            f"{self.w.direction(way)} {self.w.factor_of(gain)}"
            for way, gain in zip(directions_rad, gains_factor, strict=False)
        )
        return (
            f"اضبط الحساسية في الموزع أو اللعبة ({self.w.name(stick)}): {self.w.all_of(told)}. هذا مفترض من القياسات ولم "
            "يُسجَّل. للتأكيد يسجّل الأخصائي: السكون والحافة والدفعات."
        )

    def other_stick(self, *, tuned: Name, stick: Name) -> str:
        return f"ضُبطت على {self.w.name(tuned)} لا على {self.w.name(stick)}. سجّل واضبط من جديد."

    def other_setup(self, *, without: tuple[Text, ...], having: tuple[Text, ...]) -> str:
        told = [f"بدون {self.w.all_of(tuple(self.clause(one) for one in without))}"] if without else []
        told += [f"مع {self.w.all_of(tuple(self.clause(one) for one in having))}"] if having else []
        return f"ضُبطت {'، '.join(told)}. اضبط من جديد." if told else "اضبط من جديد."

    def extension(self, *, extension: Name) -> str:
        return f"الوصلة {self.w.name(extension)}"
