"""Page one of the sheet, in Arabic."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.ar import Arabic
from stickwright.codes.family import Cause, Family, Heading
from stickwright.codes.message import Name, Text

__all__ = ["Texts"]

_CAUSES: dict[Cause, str] = {
    "unplugged": "هل هو موصول؟",
    "socket": "هل هو في المقبس الصحيح؟",
    "standby": "هل الجهاز في وضع الاستعداد؟",
    "touched": "هل لمس أحد العصا عند التشغيل؟",
    "moved": "هل تحركت القاعدة؟",
}
_REMEDIES: dict[Cause, str] = {
    "unplugged": "أدخل القابس حتى النهاية من الطرفين.",
    "socket": "قارن كل سلك بالخطوات في الصفحة 1.",
    "standby": "أيقظ جهاز الألعاب أو الحاسوب. ثم انتظر.",
    "touched": "افصلها. ارفع يديك عن العصا. صلها من جديد.",
    "moved": "أعدها كما في الصورة.",
}
_HEADINGS: dict[Heading, str] = {
    "steps": "ركّبها بهذا الترتيب",
    "trouble": "إذا لم تعمل",
    "found": "ما وُجد",
    "nearest": "الأقرب",
    "help": "ما يساعد أكثر",
    "next": "الخطوة التالية",
    "stop": "السلامة: متى تتوقف",
    "safety": "السلامة",
    "socket": "المقبس:",
    "contact": "للاتصال:",
    "date": "التاريخ:",
}


class Texts(Family):
    """Said as in English."""

    w: Arabic

    def title(self, *, player: Name) -> str:
        return f"التركيب للاعب {self.w.name(player)}"

    def lead(self, *, games: tuple[Name, ...], sticks: int, coarse: Name | None) -> str:
        told = [f"للعب: {self.w.names(games)}."] if games else []
        told += ["ليس في هذا التركيب عصا."] if not sticks else []
        if coarse:
            told += [
                f"لا توجد عصا مناسبة تمامًا بعد. الأقرب: {self.w.name(coarse)}. لكنها تخالف قاعدة من قواعد العمل. قد تكون خشنة "
                "أو متعبة. جرّبها "
                "أولًا مع الأخصائي."
            ]
        return " ".join(told)

    def none_fits_title(self, *, player: Name) -> str:
        return f"لا توجد عصا مناسبة بعد: اللاعب {self.w.name(player)}"

    def no_plan_title(self, *, player: Name) -> str:
        return f"لا توجد خطة بعد: اللاعب {self.w.name(player)}"

    def not_instructions(self, *, measured: bool) -> str:
        told = "ما وُجد وما قد يساعد" if measured else "ما يجب قياسه بعد"
        return f"لا تركّب شيئًا من هذه الصفحة. هي تبيّن {told}."

    def seat(self, *, support: Name | None) -> str:
        return f"أجلس اللاعب في وضعية اللعب.{f' المسند: {self.w.typed(support)}.' if support else ''}"

    def place_switches(self, *, controllers: bool) -> str:
        what = "كل مفتاح وكل ذراع تحكم" if controllers else "كل مفتاح"
        return f"ضع {what} حيث يظهر رقمه في الصورة."

    def set_arms(self) -> str:
        return "اضبط كل حامل كما تبيّن صفحته."

    def hands_off(self) -> str:
        return "لا تلمس العصي أثناء التوصيل."

    def plug_in_stick(self, *, stick: Name) -> str:
        return f"صِل: {self.w.name(stick)}."

    def plug_in_others(self) -> str:
        return "صِل كل مفتاح."

    def plug_cables(self, *, hubs: tuple[Name, ...]) -> str:
        return f"صِل كل سلك بمقبسه. الموزع: {self.w.names(hubs)}. الأسلاك:"

    def cable(self, *, tag: Name, device: Name, socket: Text, hub: Name | None) -> str:
        on = f"، {self.w.name(hub)}" if hub else ""
        where = self.w.name(socket) if isinstance(socket, str) else self.say(socket)
        return f"{self.w.name(tag)} ({self.w.name(device)}): {where}{on}"

    def switch_on(self, *, device: Name) -> str:
        return f"شغّل: {self.w.name(device)}."

    def start_game(self) -> str:
        return "ابدأ اللعبة."

    def try_sticks(self, *, sticks: int) -> str:
        which = self.w.plural(sticks, one="العصا", other="كل عصا")
        return f"جرّب {which} إلى الأمام واليمين والخلف واليسار."

    def fit_parts(self, *, stick: Name, extension: Name | None, topper: Name | None) -> str:
        parts = [f"الوصلة {self.w.name(extension)}"] if extension else []
        parts += [f"الغطاء {self.w.name(topper)}"] if topper else []
        if not parts:
            return f"خذ العصا {self.w.name(stick)}."
        return f"ركّب {self.w.all_of(tuple(parts))} على العصا {self.w.name(stick)}."

    def raise_edge(self, *, edge: Literal["far", "near"], angle_rad: float) -> str:
        which = {"far": "البعيدة", "near": "القريبة"}[edge]
        return f"ارفع حافة القاعدة {which} بمقدار {self.w.amount(angle_rad, 'deg')}."

    def place_stick(self, *, site: Name, number: Name | None, touch: bool) -> str:
        where = f"حيث يظهر الرقم {self.w.name(number)} في الصورة" if number else "كما في الصورة"
        how = "يلمس وسط السطح" if touch else "يستقر فوقها ولا يدفعها"
        return f"ضعها {where}. تأكد أن {self.w.name(site)} {how}."

    def turn_base(self, *, turn_rad: float) -> str:
        return f"أدر قاعدتها {self.w.turn(turn_rad)} عن الأمام، كما تُرى من أعلى."

    def try_switches(self) -> str:
        return "اضغط كل مفتاح مرة."

    def plug(self, *, plug: Name | None) -> str:
        return f"القابس: {self.w.name(plug)}." if plug else "القابس: انظر السلك."

    def socket(self, *, socket: Text, hub: Name, tag: Name) -> str:
        return f"{self.say(socket)}، {self.w.name(hub)} (السلك {self.w.name(tag)})."

    def plug_into(self, *, plug: Text, socket: Text) -> str:
        return f"{self.say(plug)} المقبس: {self.say(socket)}"

    def stick_box(self, *, number: Name, stick: Name, site: Name) -> str:
        return f"إعدادات {self.w.name(number)}: {self.w.name(stick)} ({self.w.name(site)})"

    def no_settings(self) -> str:
        return "اترك الإعدادات في اللعبة كما هي."

    def cause(self, *, cause: Cause) -> str:
        return _CAUSES[cause]

    def remedy(self, *, cause: Cause, turned: bool, wired: bool) -> str:
        if cause == "moved" and turned:
            return "أعدها كما في الصورة. أدرها كما تقول خطوتها."
        if cause == "socket" and not wired:
            return "قارنه بالعلامات على الأسلاك."
        return _REMEDIES[cause]

    def none_fits(self, *, setups: int, site: Name) -> str:
        return f"عدد التركيبات التي جُرّبت: {self.w.whole(setups)}. لا يناسب أي منها بعد. الموضع: {self.w.name(site)}."

    def comes_nearest(self, *, setup: Text, why: Text) -> str:
        return f"{self.clause(setup)}. {self.say(why)}"

    def other_site(self, *, site: Name, told: Text) -> str:
        return f"{self.w.name(site)}: {self.say(told)}"

    def nothing_tried(self) -> str:
        return "لم يمكن تجريب أي تركيب."

    def nothing_helps(self) -> str:
        return "لا يساعد أي تغيير واحد في العصا أو الغطاء أو الوصلة أو الميل."

    def heading(self, *, part: Heading) -> str:
        return _HEADINGS[part]

    def undated(self) -> str:
        return "بلا تاريخ"
