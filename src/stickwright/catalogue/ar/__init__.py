"""Arabic, for the family's pages. Translated by the program's authors; no practitioner who speaks it has checked it."""

from __future__ import annotations

from stickwright.catalogue.family_writer import FamilyWriter

__all__ = ["Arabic", "writer"]


class Arabic(FamilyWriter):
    """Numbers, plurals and lists of Arabic, with the digits that are printed on the devices."""

    tag = "ar-MA"
    unknown = "غير معروف"
    up_to = "–"
    assumed = "مفترض"
    english = "بالإنجليزية"
    translated = "ترجمها مؤلفو البرنامج. يُرجى أن يراجعها شخص يتحدث العربية."
    eight = (
        "اليمين",
        "الأمام واليمين",
        "الأمام",
        "الأمام واليسار",
        "اليسار",
        "الخلف واليسار",
        "الخلف",
        "الخلف واليمين",
    )
    turns = ("عكس اتجاه عقارب الساعة", "في اتجاه عقارب الساعة")
    sticks = ("العصا اليسرى", "العصا اليمنى")
    buttons = (
        "زر الوجه السفلي", "زر الوجه الأيمن", "زر الوجه الأيسر", "زر الوجه العلوي", "زر الكتف الأيسر", "زر الكتف الأيمن",
        "الزناد الأيسر", "الزناد الأيمن", "زر العرض", "زر القائمة", "ضغط العصا اليسرى", "ضغط العصا اليمنى", "لوحة الاتجاهات: أعلى",
        "لوحة الاتجاهات: أسفل", "لوحة الاتجاهات: يسار", "لوحة الاتجاهات: يمين", "الزر الأوسط",
    )  # fmt: skip

    def plural(
        self, count: float, *, one: str, other: str, zero: str = "", two: str = "", few: str = "", many: str = ""
    ) -> str:
        """The form that goes with a count.

        Parameters
        ----------
        count : float
        one, other : str
        zero, two, few, many : str, optional
            Where they differ from `other`.
        """
        forms = {"zero": zero, "one": one, "two": two, "few": few, "many": many}
        return forms.get(self.form(count)) or other


writer = Arabic()
