"""What was typed and could not be used, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.message import Name
from stickwright.codes.unused import Figure, HoldLacks, Unused

__all__ = ["Texts"]

_FIGURES = {
    "start_force": "actuation force",
    "full_force": "force at full travel",
    "travel": "travel",
    "contact_height": "contact height",
}
_LACKS = {
    "time": "how long it was kept up is not recorded. Time it.",
    "effort_and_force": (
        "neither its effort nor its force is recorded. Note the force that was held, or its share of comfortable force."
    ),
    "no_force": "its force is 0. Note the force that was held.",
    "comfortable_force": "no comfortable force was measured here to compare it with. Measure the comfortable force.",
}


class Texts(Unused):
    """What lacks, and what to do."""

    w: English

    def controller_sticks(self, *, controller: Name, missing: tuple[Figure, ...]) -> str:
        figures = self.w.all_of(tuple(_FIGURES[one] for one in missing))
        are = self.w.plural(len(missing), one="is", other="are")
        them = self.w.plural(len(missing), one="it", other="them")
        return (
            f"{self.w.name(controller)}: its sticks are not offered to any control site, because {figures} {are} not given. "
            f"Measure {them} if the player may use these sticks."
        )

    def hold(self, *, site: Name, held_s: tuple[float, ...], lacks: HoldLacks) -> str:
        what = f"the hold of {self.w.all_of(tuple(self.w.amount(one, 's') for one in held_s))}" if held_s else "a hold"
        return f"{self.w.name(site)}: {what} is not used, because {_LACKS[lacks]}"

    def tried(self, *, site: Name, stick: Name) -> str:
        return (
            f"{self.w.name(site)}: {self.w.name(stick)} is recorded as tried, but neither how far the player got nor the tremor "
            "is, so it is not used. Note one of them."
        )

    def slope(self, *, sites: tuple[Name, ...], slopes: int) -> str:
        return (
            f"{self.w.names(sites)}: the slope of the movement was not measured, so only the most level of {slopes} slopes "
            "that can be built under a base was tried. Measure the slope to try the others."
        )
