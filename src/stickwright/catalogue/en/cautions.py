"""The usual cautions, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.cautions import Cautions, Cleared
from stickwright.codes.message import Name, Text

__all__ = ["Texts"]


class Texts(Cautions):
    """Beside the number they belong to."""

    w: English

    def session(self, *, blocks: Text) -> str:
        return (
            f"Stop for pain, new numbness, colour change, breathlessness or distress. {self.say(blocks)} "
            "Soreness should be gone by the next morning; if it is not, halve the time."
        )

    def usual_blocks(self) -> str:
        return "Start with 10 to 15 minutes; pause for 5 to 10 minutes in every 30 to 45."

    def child_adult(self) -> str:
        return "A child: a second adult is present at every visit. Follow the local safeguarding policy."

    def child_small_parts(self) -> str:
        return "A child: keep button cells, loose toppers and screws out of reach of hands and mouth."

    def neck(self) -> str:
        return "Neck: agree any chin, lip or head control with the treating team. Stop the session if the neck aches."

    def airway(self) -> str:
        return (
            "Airway: keep every cable and mount clear of tubing. Never block the ventilator or share its power supply."
        )

    def skin(self) -> str:
        return (
            "Skin: spread the load (pressure is force over area: 2 N on 1 cm² is 20 kPa). Check after 10 minutes, then "
            "after 30. If redness has not faded within 20 to 30 minutes, stop and tell the treating team."
        )

    def dysreflexia(self) -> str:
        return (
            "Autonomic dysreflexia: pounding headache, flushing or sweating above the injury, pale skin below it, blocked "
            "nose, slow pulse. Stop, follow the person's own emergency plan, look for the cause (bladder, bowel, skin, a "
            "tight strap, our mount) and call for help."
        )

    def seizures(self) -> str:
        return (
            "Seizures: ask for the person's plan. Play in a well-lit room, away from the screen and with breaks; keep hard "
            "edges and straps away."
        )

    def pain(self) -> str:
        return "Pain: comfortable effort only. Ask about pain before, halfway and at the end."

    def startle(self) -> str:
        return (
            "Strong involuntary movement: use pads, no sharp clamp knobs and nothing heavy at head height. Everything "
            "either holds against the strongest push or is designed to break away."
        )

    def magnets(self) -> str:
        return (
            "Magnets in some sticks and couplings: keep them away from implanted devices, shunt valves and hearing "
            "implants. Ask the treating team how far."
        )

    def arthritis(self) -> str:
        return "Joints: no maximal pushes; do not use stiff sticks as exercise."

    def powered_chair(self) -> str:
        return (
            "Powered chair: mount nothing on, through or against the chair's own control, brakes or power switch. Lock the "
            "drive while playing. Ask the wheelchair service about stability and width."
        )

    def heart(self) -> str:
        return "Heart or blood pressure: no maximal pushes and no breath-holding while measuring."

    def forbidden_grip(self, *, site: Name, note: Name) -> str:
        return f"Not at the {self.w.name(site)}: {self.w.typed(note)}."

    def force_ceiling(self, *, site: Name, force_n: float, why: Name | None) -> str:
        reason = f" ({self.w.typed(why)})" if why else ""
        return f"No more than {self.w.amount(force_n, 'n')} at the {self.w.name(site)}{reason}. Nothing may need more force than that."

    def face(self, *, cleared: Cleared) -> str:
        agreed = {
            "yes": "",
            "no": " The team has not agreed.",
            "ask": " The team has not been asked yet.",
            "unrecorded": " No answer from the team is recorded.",
        }
        return (
            "Chin, lip, cheek, tongue and head: only if the treating team has agreed. Soft parts only, nothing rigid "
            "towards eye or throat. Test the breakaway at every set-up. The player can get clear alone, or somebody stays "
            f"with them. Never use it while travelling.{agreed[cleared]}"
        )

    def no_curve(self) -> str:
        return "No published endurance curve exists for the neck and face: only the player's own timed hold counts."

    def mouth(self) -> str:
        return (
            "In or near the mouth: use a part that is this player's own and can be cleaned, with nothing small that could "
            "come loose. Ask about teeth and swallowing."
        )

    def effort(self) -> str:
        return (
            "Effort: over a third of the comfortable force at the usual level. Watch for fatigue, offer rests, and measure "
            "again after play."
        )

    def large_dead_zone(self) -> str:
        return (
            "Large dead zone: check that small intended movements still count, and that the game adds no dead zone of its "
            "own."
        )

    def one_player(self) -> str:
        return "This topper touches the face or mouth: for one player only; clean it as its surface allows."

    def progressive(self) -> str:
        return (
            "Changing ability: borrow rather than buy, and measure again before it is needed; do not use stiff sticks as "
            "exercise."
        )
