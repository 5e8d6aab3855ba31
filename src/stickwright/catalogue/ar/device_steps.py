"""How a device is set, held and switched to the right mode, in Arabic: what the family's pages say."""

from __future__ import annotations

from stickwright.catalogue.ar import Arabic
from stickwright.codes.device_steps import TurnedBy
from stickwright.codes.message import Name, Text, Topic

__all__ = ["Texts"]

_TURNED_BY: dict[TurnedBy, str] = {
    "itself": "في إعدادات العصا",
    "hub": "في إعدادات الموزع",
    "game": "في إعدادات اللعبة",
}
_CROSSWISE = "ضع القاعدة بالعرض ومقدمتها إلى اليسار. أدر خرجها ربع دورة عكس عقارب الساعة"


class Texts(Topic):
    """Said as in English."""

    w: Arabic

    def set_to(self, *, device: Name, setting: Name, how: Name | None) -> str:
        return f"اضبط {self.w.name(device)} على «{self.w.name(setting)}»{f': {self.w.typed(how)}' if how else ''}."

    def crosswise(self, *, turned_by: TurnedBy | None) -> str:
        if turned_by is None:
            return f"{_CROSSWISE}. انظر في الدليل أين."
        return f"{_CROSSWISE}: {_TURNED_BY[turned_by]}."

    def crosswise_told(self, *, told: Name) -> str:
        return f"{_CROSSWISE}: {self.w.typed(told)}."

    def hold_in_one_hand(self, *, device: Name, sites: tuple[Name, ...]) -> str:
        return f"أمسك {self.w.name(device)} بيد واحدة: {self.w.names(sites)}."

    def hold_in_two_hands(self, *, device: Name) -> str:
        return f"أمسك {self.w.name(device)} بكلتا اليدين."

    def rest_it(self, *, device: Name, why: Text | None) -> str:
        reason = f": {self.clause(why)}" if why is not None else ""
        return f"ضع {self.w.name(device)} على حامل أو صينية لا في اليد{reason}."

    def fix_to_grip(self, *, stick: Name, controller: Name) -> str:
        return f"ثبّت {self.w.name(stick)} على مقبض {self.w.name(controller)}. اليد نفسها تشغّل الاثنين."

    def check_mode(self, *, device: Name, mode: Name, sign: Name | None) -> str:
        seen = f": {self.w.typed(sign)}" if sign else ""
        return f"تأكد أن {self.w.name(device)} في الوضع «{self.w.name(mode)}»{seen}."

    def other_mode(self, *, device: Name) -> str:
        return f"هل {self.w.name(device)} في وضع آخر؟"

    def mode_back(self, *, mode: Name, back: Name | None) -> str:
        if not back:
            return f"المطلوب «{self.w.name(mode)}». الدليل يبيّن كيف."
        return f"{self.w.typed(back)}. المطلوب «{self.w.name(mode)}»."
