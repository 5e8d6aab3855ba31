"""The whole set-up from above, in Arabic."""

from __future__ import annotations

from stickwright.catalogue.ar import Arabic
from stickwright.codes.message import Name, Text
from stickwright.codes.setup_pictures import SetupPictures

__all__ = ["Texts"]


class Texts(SetupPictures):
    """Said as in English."""

    w: Arabic

    def caption(self, *, measured: bool) -> str:
        scale = "المواضع بمقياس رسم." if measured else "لم يُقس أي موضع: الصورة تبيّن عضو الجسم."
        return f"المنظر من أعلى. الرقم 12 هو أمام اللاعب مباشرة. الطرف الأسود هو مقدمة قاعدة العصا. {scale}"

    def alt(self, *, items: tuple[Text, ...]) -> str:
        told = "؛ ".join(self.clause(one) for one in items)
        return f"اللاعب جالسًا من أعلى، مع رقم عند كل عصا ومفتاح. {told}."

    def item(self, *, numbers: tuple[Name, ...], what: Text, how: tuple[Text, ...]) -> str:
        told = " ".join(self.say(one) for one in how)
        return f"{self.w.names(numbers)} {self.clause(what)}{f': {told}' if told else ''}"

    def device(self, *, device: Text, pieces: int) -> str:
        return self.w.pieces(pieces, self.clause(device))

    def at_sites(self, *, sites: tuple[Name, ...]) -> str:
        return f"لأجل: {self.w.names(sites)}."

    def held_by(self, *, mount: Name, on: Name | None) -> str:
        return f"الحامل: {self.w.name(mount)}{f'، على: {self.w.name(on)}' if on else ''}."

    def stands_on(self, *, on: Name) -> str:
        return f"يقف على: {self.w.name(on)}."

    def turned(self, *, turn_rad: float) -> str:
        return f"القاعدة مدارة {self.w.turn(turn_rad)}."

    def tall(self, *, height_m: float) -> str:
        return f"قمتها نحو {self.w.amount(height_m, 'mm')} فوق قاعدتها."

    def unplaced(self) -> str:
        return "لم يُقس موضعه."

    def latching(self, *, actions: tuple[Name, ...]) -> str:
        return f"{self.w.names(actions)}: اضغط للتشغيل، اضغط للإيقاف."

    def hub(self, *, hub: Name) -> str:
        return f"الموزع: {self.w.name(hub)}"
