"""The usual cautions, each beside the number it belongs to; only those that are this player's.

Common practice unless a source is named. They never replace local rules, the seating clinic or the treating
team, and they are words for the practitioner, not a medical judgement.
"""

from __future__ import annotations

from collections.abc import Sequence

from stickwright.model.ages import age_group
from stickwright.model.parts import NEEDS_CLEARANCE
from stickwright.model.plan import Caution, Fit
from stickwright.model.player import Player, Site
from stickwright.units import spoken

__all__ = ["USUAL_PLAY", "cautions_of"]

USUAL_PLAY = "Start with 10 to 15 minutes; pause 5 to 10 minutes in every 30 to 45."
"""Blocks of play where no length is wished."""
_STOP = "Stop for pain, new numbness, colour change, breathlessness or distress."
_SORE = "Soreness should be gone next morning, otherwise halve the time."

_CHILD = (
    (
        "session",
        "A child: a second adult is present at a visit, and the local safeguarding rule holds.",
    ),
    ("kit", "A child: no button cells, loose toppers or screws within reach of hands or mouth."),
)

_BY_ALERT: dict[str, tuple[tuple[str, str], ...]] = {
    "neck": (
        ("site", "Neck: agree any chin, lip or head control with the treating team; neck ache ends the session."),
    ),
    "airway": (
        (
            "site",
            "Airway: no cable or mount across or near tubing; ventilation and its power are never shared or blocked.",
        ),
    ),
    "skin": (
        (
            "force",
            "Skin: spread the load (pressure is force over area: 2 N on 1 cm2 is 20 kPa). Look after 10, then 30 "
            "minutes; redness that has not faded in 20 to 30 minutes: stop and tell the team.",
        ),
    ),
    "spinal-t6": (
        (
            "session",
            "Autonomic dysreflexia: pounding headache, flushing or sweating above, pallor below, blocked nose, slow "
            "pulse. Stop, follow the person's own emergency plan, look for the cause (bladder, bowel, skin, a tight "
            "strap, our mount), call help.",
        ),
    ),
    "seizures": (
        (
            "session",
            "Seizures: ask for the person's plan; well-lit room, distance, breaks; hard edges and straps away.",
        ),
    ),
    "pain": (("effort", "Pain: comfortable effort only; ask before, in the middle and at the end."),),
    "startle": (
        (
            "force",
            "Strong involuntary movement: pads, no sharp clamp knobs, nothing heavy at head height; everything holds the "
            "strongest push or lets go on purpose.",
        ),
    ),
    "magnets": (
        (
            "kit",
            "Magnets in some sticks and couplings: keep their distance from implanted devices, shunt valves and hearing implants; "
            "ask the team.",
        ),
    ),
    "arthritis": (("effort", "Joints: no maximal pushes, no training by heavy sticks."),),
    "drives-chair": (
        (
            "site",
            "Chair: never on, through or against the chair's own control, brakes or power switch; drive locked while playing; "
            "stability and width: seating clinic.",
        ),
    ),
    "heart": (("effort", "Heart or blood pressure: no maximal pushes, no holding of breath while measuring."),),
}

_MOUTH = (
    "In or near the mouth: a part of this player's own that can be cleaned, nothing small that could come loose; ask about "
    "teeth and swallowing."
)

_FACE = (
    "Chin, lip, cheek, tongue and head: only with the treating team's word; soft parts, nothing rigid towards eye or throat; breakaway "
    "tried at every set-up; the player can get clear alone or somebody stays; never while travelling."
)


def cautions_of(
    player: Player, chosen: Sequence[tuple[Site, Fit | None]], play: str = USUAL_PLAY
) -> tuple[Caution, ...]:
    """Cautions for this player and these set-ups, most general first, none twice.

    Parameters
    ----------
    player : Player
    chosen : sequence of (Site, Fit or None)
        Each site and the set-up proposed for it.
    play : str
        In what blocks to play, in a sentence.
    """
    out = [Caution("session", None, f"{_STOP} {play} {_SORE}")]
    if age_group(player.age_band) == "child":
        out += [Caution(about, None, text) for about, text in _CHILD]
    for alert in player.alerts:
        out += [Caution(about, None, text) for about, text in _BY_ALERT[alert]]
    for site, fit in chosen:
        out += _site_cautions(site, fit, player)
    return tuple(dict.fromkeys(out))


def _site_cautions(site: Site, fit: Fit | None, player: Player) -> list[Caution]:
    out: list[Caution] = []
    if site.forbidden_grip:
        out.append(Caution("site", site.name, f"Not at the {site.name}: {site.forbidden_grip.strip().rstrip('.')}."))
    if site.force_ceiling_n is not None:
        why = f": {site.force_ceiling_why.strip().rstrip('.')}" if site.force_ceiling_why else ""
        out.append(
            Caution(
                "force", site.name,
                f"No more than {spoken(site.force_ceiling_n, 'n')} at the {site.name}{why}. Nothing is to ask for more.",
            )
        )  # fmt: skip
    if site.part in NEEDS_CLEARANCE:
        word = {
            "yes": "",
            "no": " The team has said no.",
            "ask": " The team is still to be asked.",
            None: " No word from the team is recorded.",
        }
        out.append(Caution("site", site.name, _FACE + word[site.cleared]))
        out.append(
            Caution(
                "hold",
                site.name,
                "No published endurance curve exists for the neck and face: only the player's own timed hold counts.",
            )
        )
    if site.part in ("lip", "tongue"):
        out.append(Caution("kit", site.name, _MOUTH))
    if site.spasm is not None and "startle" not in player.alerts:
        out += [Caution(about, site.name, text) for about, text in _BY_ALERT["startle"]]
    if fit is None:
        return out
    if fit.effort_share.value > 0.35:
        out.append(
            Caution(
                "effort", site.name,
                "Effort: over a third of the comfortable force at the usual level. Watch for tiring, offer rests, and measure "
                "again after play.",
            )
        )  # fmt: skip
    if fit.verdict != "does not fit" and fit.dead_zone_share >= 0.2:
        out.append(
            Caution(
                "dead zone", site.name,
                "Large dead zone: check that small wanted movements still count, and that the game adds no dead zone of its own.",
            )
        )  # fmt: skip
    if fit.single_player:
        out.append(
            Caution(
                "kit", site.name, "This topper touches face or mouth: one player only, cleaned as its surface allows."
            )
        )
    if player.course == "progressive":
        out.append(
            Caution(
                "effort",
                site.name,
                "Changing ability: borrow rather than buy, and measure again before it is needed; no training by heavy sticks.",
            )
        )
    return out
