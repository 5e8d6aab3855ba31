"""The usual cautions, each beside the number it belongs to; only those that are this player's.

Common practice unless a source is named. They never replace local rules, the seating clinic or the treating
team, and they are words for the practitioner, not a medical judgement.
"""

from __future__ import annotations

from collections.abc import Sequence

from stickwright.codes.cautions import Cautions
from stickwright.codes.message import Message, Name, Text, message
from stickwright.model.ages import age_group
from stickwright.model.fit import Caution, Fit
from stickwright.model.parts import NEEDS_CLEARANCE
from stickwright.model.player import Player, Site

__all__ = ["cautions_of"]

WATCH_EFFORT_SHARE = 0.35
"""Of the comfortable force: above that, watch for fatigue. Common practice, no source."""
LARGE_DEAD_ZONE_SHARE = 0.2
"""Of the travel: from there small intended movements may be lost. Common practice, no source."""

_BY_ALERT: dict[str, tuple[tuple[str, Message], ...]] = {
    "neck": (("site", message(Cautions.neck)),),
    "airway": (("site", message(Cautions.airway)),),
    "skin": (("force", message(Cautions.skin)),),
    "spinal-t6": (("session", message(Cautions.dysreflexia)),),
    "seizures": (("session", message(Cautions.seizures)),),
    "pain": (("effort", message(Cautions.pain)),),
    "startle": (("force", message(Cautions.startle)),),
    "magnets": (("kit", message(Cautions.magnets)),),
    "arthritis": (("effort", message(Cautions.arthritis)),),
    "drives-chair": (("site", message(Cautions.powered_chair)),),
    "heart": (("effort", message(Cautions.heart)),),
}


def cautions_of(player: Player, chosen: Sequence[tuple[Site, Fit | None]], play: Text) -> tuple[Caution, ...]:
    """Cautions for this player and these set-ups, most general first, none twice.

    Parameters
    ----------
    player : Player
    chosen : sequence of (Site, Fit or None)
        Each site and the set-up proposed for it.
    play : Message
        In what blocks to play.
    """
    out = [Caution("session", None, message(Cautions.session, blocks=play))]
    if age_group(player.age_band) == "child":
        out += [
            Caution("session", None, message(Cautions.child_adult)),
            Caution("kit", None, message(Cautions.child_small_parts)),
        ]
    for alert in player.alerts:
        out += [Caution(about, None, text) for about, text in _BY_ALERT[alert]]
    for site, fit in chosen:
        out += _site_cautions(site, fit, player)
    return tuple(dict.fromkeys(out))


def _site_cautions(site: Site, fit: Fit | None, player: Player) -> list[Caution]:
    name, out = Name(site.name), list[Caution]()

    def add(about: str, text: Message) -> None:
        out.append(Caution(about, site.name, text))

    if site.forbidden_grip:
        add("site", message(Cautions.forbidden_grip, site=name, note=Name(site.forbidden_grip)))
    if site.force_ceiling_n is not None:
        why = Name(site.force_ceiling_why) if site.force_ceiling_why else None
        add("force", message(Cautions.force_ceiling, site=name, force_n=site.force_ceiling_n, why=why))
    if site.part in NEEDS_CLEARANCE:
        add("site", message(Cautions.face, cleared=site.cleared or "unrecorded"))
        add("hold", message(Cautions.no_curve))
    if site.part in ("lip", "tongue"):
        add("kit", message(Cautions.mouth))
    if site.spasm is not None and "startle" not in player.alerts:
        add("force", message(Cautions.startle))
    if fit is None:
        return out
    if fit.effort_share.number > WATCH_EFFORT_SHARE:
        add("effort", message(Cautions.effort))
    if fit.verdict != "does not fit" and fit.dead_zone_share >= LARGE_DEAD_ZONE_SHARE:
        add("dead zone", message(Cautions.large_dead_zone))
    if fit.single_player:
        add("kit", message(Cautions.one_player))
    if player.course == "progressive":
        add("effort", message(Cautions.progressive))
    return out
