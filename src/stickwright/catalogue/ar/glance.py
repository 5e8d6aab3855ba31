"""Controls at a glance, in Arabic."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.ar import Arabic
from stickwright.codes.glance import Glance, Heading, Press, When
from stickwright.codes.message import Name, Text

__all__ = ["Texts"]

_PRESSES: dict[Press, str] = {"plain": "", "held": ": استمر في الضغط", "latching": ": اضغط للتشغيل، اضغط للإيقاف"}
_WHEN: dict[When, str] = {"day 1": "اليوم الأول", "week 2": "من الأسبوع الثاني", "later": "لاحقًا"}
_HEADINGS: dict[Heading, str] = {
    "clash": "لا يمكن تلبية كل الطلبات.",
    "order": "عرّف اللاعب بها بهذا الترتيب",
    "safety": "السلامة",
    "changes": "من لعبة إلى لعبة",
    "settings": "الإعدادات في كل لعبة",
    "action": "الفعل",
    "control": "وسيلة التحكم",
    "device": "الجهاز",
    "who_does_what": "وسائل التحكم في لمحة",
}


class Texts(Glance):
    """Said as in English."""

    w: Arabic

    def title(self, *, player: Name) -> str:
        return f"وسائل التحكم في لمحة: اللاعب {self.w.name(player)}"

    def lead(self, *, games: tuple[Name, ...]) -> str:
        return f"للعب: {self.w.names(games)}."

    def heading(self, *, part: Heading) -> str:
        return _HEADINGS[part]

    def at_site(self, *, site: Name | None, device: Text, press: Press) -> str:
        told = f"{self.say(device)}{_PRESSES[press]}"
        return f"{self.w.name(site)}، {told}" if site else told

    def pressed(self, *, device: Text, press: Press) -> str:
        return f"{self.say(device)}{_PRESSES[press]}"

    def held(self) -> str:
        return "استمر في الضغط"

    def latching(self) -> str:
        return "اضغط للتشغيل، اضغط للإيقاف"

    def together(self, *, actions: tuple[Name, ...]) -> str:
        return f"تُضغط معًا: {self.w.names(actions)}"

    def by_game(self, *, option: Name | None, words: Name | None) -> str:
        named = f": {self.w.typed(option)}" if option else ""
        quoted = f" («{self.w.typed(words)}»)" if words else ""
        return f"اللعبة تفعله{named}{quoted}"

    def by_helper(self, *, helper: Name | None, words: Name | None) -> str:
        quoted = f"؛ اللاعب: «{self.w.typed(words)}»" if words else ""
        return f"{self.w.name(helper) if helper else 'مساعد'}، على ذراع التحكم الثانية{quoted}"

    def left_out(self, *, words: Name | None) -> str:
        return f"متروك: «{self.w.typed(words)}»" if words else "متروك"

    def second_controller(self, *, words: Name | None) -> str:
        return f"ذراع التحكم الثانية؛ اللاعب: «{self.w.typed(words)}»" if words else "ذراع التحكم الثانية"

    def option(self, *, option: Name | None, words: Name | None) -> str:
        parts = [self.w.typed(option)] if option else []
        parts += [f"اللاعب: «{self.w.typed(words)}»"] if words else []
        return "؛ ".join(parts) or "تلقائيًا"

    def own_words(self, *, words: Name) -> str:
        return f"اللاعب: «{self.w.typed(words)}»"

    def place(self, *, how: Literal["option", "helper", "dropped", "chord"]) -> str:
        return {"option": "اللعبة", "helper": "مساعد", "dropped": "متروك", "chord": "معًا"}[how]

    def introduced(self, *, when: When, actions: tuple[Name, ...]) -> str:
        return f"{_WHEN[when]}: {self.w.names(actions)}."

    def given_up(self, *, parts: tuple[Text, ...]) -> str:
        return f"تُرك كي ينجح الباقي: {self.w.all_of(tuple(self.clause(one) for one in parts))}."

    def not_all(self, *, requests: tuple[Text, ...]) -> str:
        return f"لا يمكن تلبيتها كلها: {'؛ '.join(self.clause(one) for one in requests)}."

    def agree(self, *, helpers: tuple[Name, ...]) -> str:
        who = f" مع: {self.w.names(helpers)}." if helpers else ""
        return (
            "ذراعا التحكم تعملان كلاعب واحد. يمكن لكليكما الضغط معًا. اتفقوا على من يوقف اللعبة مؤقتًا. اتفقوا على كلمة "
            f"للتوقف.{who}"
        )

    def devices(self, *, devices: tuple[Text, ...]) -> str:
        return "؛ ".join(self.say(one) for one in devices)
