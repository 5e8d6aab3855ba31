"""Whether something holds, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.message import Message, Name
from stickwright.codes.mount_checks import CheckName, MountChecks, Side, Thing

__all__ = ["Texts", "capital", "thing_words"]

_NAMES: dict[str, str] = {
    "joint": "joint", "neck_foot": "neck at its foot", "neck_bow": "neck where it bows out most", "clamp": "clamp",
    "sliding": "sliding", "tipping": "tipping", "fastener_shear": "fastener shear", "fastener_tension": "fastener tension",
    "fastener_peel": "fastener peel", "rating": "rated load", "release": "release", "tray": "tray", "lap_tray": "lap tray",
    "stability": "stability",
    "give": "flex", "level": "level", "edge": "room on the surface", "reach": "reach", "tilt": "tilt", "width": "width",
}  # fmt: skip
_THINGS = {"base": "the base", "tray": "the tray", "lap_tray": "the lap tray"}


def capital(text: str) -> str:
    """With a capital at its start."""
    return f"{text[:1].upper()}{text[1:]}"


def thing_words(w: English, thing: Thing) -> str:
    """The base, the tray, or its own name."""
    return _THINGS.get(thing) or f"the {w.name(thing)}"


class Texts(MountChecks):
    """One check each."""

    w: English

    def named(self, *, what: CheckName, number: int) -> str:
        return f"{_NAMES[what]} {self.w.whole(number)}" if number else _NAMES[what]

    def joint(
        self, *, what: CheckName, number: int, load_nm: float, push_n: float, held_nm: float, safety_factor: float | None,
        required_factor: float, lets_go: bool,
    ) -> str:  # fmt: skip
        loaded = (
            f"{self.w.amount(load_nm, 'nm')} from a push of {self.w.amount(push_n, 'n')} and the weight; "
            f"it holds {self.w.amount(held_nm, 'nm')}"
        )
        ending = (
            "it lets go on purpose, so test the release at every set-up"
            if lets_go
            else self._factor(safety_factor, required_factor)
        )
        return f"{capital(self.named(what=what, number=number))}: {loaded}: {ending}."

    def clamp(
        self, *, load_nm: float, held_nm: float, safety_factor: float | None, required_factor: float, lets_go: bool
    ) -> str:
        ending = "it lets go on purpose" if lets_go else self._factor(safety_factor, required_factor)
        return f"Clamp: {self.w.amount(load_nm, 'nm')} turn it on its tube, and it holds {self.w.amount(held_nm, 'nm')}: {ending}."

    def lacks_clamp(self) -> str:
        return "at what moment the clamp turns is not known: pull at the end with the force gauge until it does"

    def sliding(
        self, *, thing: Thing, load_n: float, grip_n: float, safety_factor: float | None, required_factor: float
    ) -> str:
        return (
            f"Sliding of {thing_words(self.w, thing)}: {self.w.amount(load_n, 'n')} against {self.w.amount(grip_n, 'n')} of "
            f"friction: {self._factor(safety_factor, required_factor)}."
        )

    def tipping(
        self, *, thing: Thing, push_n: float, height_m: float, load_nm: float, kept_nm: float, safety_factor: float | None,
        required_factor: float,
    ) -> str:  # fmt: skip
        return (
            f"Tipping of {thing_words(self.w, thing)}: {self.w.amount(push_n, 'n')} at {self.w.amount(height_m, 'mm')} make "
            f"{self.w.amount(load_nm, 'nm')} against {self.w.amount(kept_nm, 'nm')} of its weight: "
            f"{self._factor(safety_factor, required_factor)}."
        )

    def fastener(
        self, *, mode: Literal["fastener_shear", "fastener_tension"], fastener: Name, push_n: float, height_m: float, long_m: float,
        short_m: float, load_pa: float, strength_pa: float, safety_factor: float | None, required_factor: float,
        larger: Message | None,
    ) -> str:  # fmt: skip
        return (
            f"{capital(_NAMES[mode])}: {self._at(push_n, height_m, long_m, short_m)} make {self.w.amount(load_pa, 'kpa')}; "
            f"{self.w.name(fastener)} holds {self.w.amount(strength_pa, 'kpa')}: "
            f"{self._factor(safety_factor, required_factor)}.{self._more(larger)}"
        )

    def fastener_standing(
        self, *, fastener: Name, standing_n: float, long_m: float, short_m: float, load_pa: float, strength_pa: float,
        safety_factor: float | None, required_factor: float,
    ) -> str:  # fmt: skip
        return (
            f"Fastener shear: a constant {self.w.amount(standing_n, 'n')} on {self.w.sizes((long_m, short_m))} makes "
            f"{self.w.amount(load_pa, 'kpa')}; {self.w.name(fastener)} holds {self.w.amount(strength_pa, 'kpa')}, a tenth of its "
            f"strength, because it creeps: {self._factor(safety_factor, required_factor)}."
        )

    def peel(
        self, *, fastener: Name, push_n: float, height_m: float, long_m: float, short_m: float, load_n_per_m: float,
        strength_n_per_m: float, safety_factor: float | None, required_factor: float, larger: Message | None,
    ) -> str:  # fmt: skip
        return (
            f"Fastener peel: {self._at(push_n, height_m, long_m, short_m)} pull at the edge with "
            f"{self.w.amount(load_n_per_m, 'n_per_mm')}; {self.w.name(fastener)} holds "
            f"{self.w.amount(strength_n_per_m, 'n_per_mm')}: {self._factor(safety_factor, required_factor)}.{self._more(larger)}"
        )

    def larger_patch(
        self, *, long_m: float, short_m: float, base_long_m: float | None, base_short_m: float | None, fits: bool
    ) -> str:
        needed = f"A patch of {self.w.sizes((long_m, short_m))} is required"
        if base_long_m is None or base_short_m is None:
            return f"{needed}."
        base = self.w.sizes((base_long_m, base_short_m))
        return f"{needed}; the base is {base}, {'which has room for it' if fits else 'too small for it'}."

    def fastened(self, *, thing: Thing) -> str:
        return f"{capital(thing_words(self.w, thing))} is fastened: test it with the hardest push before play."

    def rating(self, *, thing: Thing, carried_kg: float, rated_kg: float) -> str:
        over = ": too much" if carried_kg > rated_kg else ""
        return (
            f"{capital(thing_words(self.w, thing))} carries {self.w.amount(carried_kg, 'kg')} and is rated for "
            f"{self.w.amount(rated_kg, 'kg')}{over}."
        )

    def lap_tray(self, *, limit_n: float, hardest_n: float) -> str:
        instead = ": use a table or the tray of the chair" if hardest_n > limit_n else ""
        return (
            f"A lap tray is for pushes up to {self.w.amount(limit_n, 'n')}; the hardest here is "
            f"{self.w.amount(hardest_n, 'n')}{instead}."
        )

    def unknown(
        self, *, what: CheckName, number: int, load_nm: float | None, load_n: float | None, load_pa: float | None, push_n: float,
        lacks: Message, light: bool,
    ) -> str:  # fmt: skip
        loads = ((load_nm, "nm"), (load_n, "n"), (load_pa, "kpa"))
        load = next((self.w.amount(value, unit) for value, unit in loads if value is not None), self.w.unknown)
        verdict = "good enough for so light a push" if light else "not relied on until it is known"
        return (
            f"{capital(self.named(what=what, number=number))}: {load} from a push of {self.w.amount(push_n, 'n')}; "
            f"{self.clause(lacks)}; {verdict}."
        )

    def lacks_friction(self) -> str:
        return "friction is not known: pull it with the force gauge"

    def lacks_mass(self, *, thing: Thing) -> str:
        return f"{thing_words(self.w, thing)} is loose and was not weighed: weigh it, or fasten it"

    def lacks_lap_mass(self) -> str:
        return "the lap tray was not weighed"

    def lacks_stand(self, *, mount: Name) -> str:
        return f"size and mass of {self.w.name(mount)} are not known: measure and weigh it"

    def lacks_strength(self, *, fastener: Name) -> str:
        return f"the strength of {self.w.name(fastener)} is not known: read its label or data sheet"

    def lacks_joint(self) -> str:
        return "what the joint holds is not known: read the mount's manual, or hang weights on it until it slips"

    def release_ask(self, *, low_nm: float) -> str:
        return (
            f"The release must carry at least {self.w.amount(low_nm, 'nm')}. Ask the clinic how hard it may be pushed before it "
            "lets go."
        )

    def release_none(self, *, low_nm: float, limit_n: float, high_nm: float) -> str:
        return (
            f"No release setting is possible: it must carry {self.w.amount(low_nm, 'nm')} in play, and the clinic's limit of "
            f"{self.w.amount(limit_n, 'n')} at the contact point makes only {self.w.amount(high_nm, 'nm')}."
        )

    def release_between(self, *, low_nm: float, high_nm: float, limit_n: float, against_n: float | None) -> str:
        beyond = (
            f" A push against the weight needs {self.w.amount(against_n, 'n')} even at the lowest setting."
            if against_n is not None
            else ""
        )
        return (
            f"Set the release between {self.w.amount(low_nm, 'nm')} and {self.w.amount(high_nm, 'nm')} (the clinic's limit is "
            f"{self.w.amount(limit_n, 'n')}).{beyond} Test it from every side with the force gauge at every set-up."
        )

    def release_too_weak(self, *, most_n: float, needed_n: float) -> str:
        return f"The coupling lets go at {self.w.amount(most_n, 'n')} at most, but must carry {self.w.amount(needed_n, 'n')}."

    def release_too_strong(self, *, least_n: float, allowed_n: float) -> str:
        return (
            f"The coupling lets go at {self.w.amount(least_n, 'n')} at the lowest setting, more than the "
            f"{self.w.amount(allowed_n, 'n')} allowed."
        )

    def stability(self, *, side: Side, added_nm: float, keeps_nm: float) -> str:
        return (
            f"{self.w.amount(added_nm, 'nm')} of the {self.w.amount(keeps_nm, 'nm')} that keep the chair from tipping {side} on "
            "level ground"
        )

    def _factor(self, safety_factor: float | None, required_factor: float) -> str:
        if safety_factor is None:
            return "nothing loads it"
        required, there = self.w.number(required_factor), self.w.number(safety_factor)
        if safety_factor >= 1:
            there = self.w.factor(safety_factor, required_factor)
        if safety_factor >= required_factor * (1 - 1e-12):
            return f"safety factor {there}, {required} required"
        return f"safety factor {there}, but {required} is required"

    def _at(self, push_n: float, height_m: float, long_m: float, short_m: float) -> str:
        return f"{self.w.amount(push_n, 'n')} at {self.w.amount(height_m, 'mm')} on {self.w.sizes((long_m, short_m))}"

    def _more(self, larger: Message | None) -> str:
        return f" {self.say(larger)}" if larger is not None else ""
