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
            "Stop for pain, new numbness, a change of colour, loss of breath or distress. "
            f"{self.say(blocks)} Soreness should be gone by the next morning. If it is not, halve the time."
        )

    def usual_blocks(self) -> str:
        return "Start with 10 to 15 minutes. Rest for 5 to 10 minutes in every 30 to 45."

    def child_adult(self) -> str:
        return "A child: have a second adult present at every visit. Follow the local safeguarding policy."

    def child_small_parts(self) -> str:
        return "A child: keep button cells, loose toppers and screws away from hands and mouth."

    def neck(self) -> str:
        return "Neck: agree any chin, lip or head control with the treating team. Stop if the neck aches."

    def airway(self) -> str:
        return "Airway: keep every cable and mount clear of tubing. Never block the ventilator. Never share its power supply."

    def skin(self) -> str:
        return (
            "Skin: spread the load over a wide area (2 N on 1 cm² is 20 kPa). Check the skin after 10 minutes, then after 30. "
            "Redness should fade within 20 to 30 minutes. If it does not, stop and tell the treating team."
        )

    def dysreflexia(self) -> str:
        return (
            "Autonomic dysreflexia: watch for a pounding headache, or flushing or sweating above the injury. Watch for pale skin "
            "below it, a blocked nose or a slow pulse. If you see this, stop at once. Follow the person's own emergency plan. "
            "Look for the cause: bladder, bowel, skin, a tight strap, our mount. Call for help."
        )

    def seizures(self) -> str:
        return (
            "Seizures: ask for the person's plan. Play in a well-lit room, away from the screen. Take breaks. Keep hard edges and "
            "straps away."
        )

    def pain(self) -> str:
        return "Pain: comfortable effort only. Ask about pain before, halfway and at the end."

    def startle(self) -> str:
        return (
            "Strong involuntary movement: use pads. Use no sharp clamp knobs. Put nothing heavy at head height. Everything must "
            "either hold against the strongest push or be made to break away."
        )

    def magnets(self) -> str:
        return (
            "Magnets in some sticks and couplings: keep them away from implanted devices, shunt valves and hearing implants. Ask "
            "the treating team how far."
        )

    def arthritis(self) -> str:
        return "Joints: no pushes at full strength. Do not use stiff sticks as exercise."

    def powered_chair(self) -> str:
        return (
            "Powered chair: mount nothing on, through or against the chair's own control, brakes or power switch. Lock the drive "
            "while playing. Ask the wheelchair service about stability and width."
        )

    def heart(self) -> str:
        return "Heart or blood pressure: no pushes at full strength. No breath-holding while measuring."

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
            "Chin, lip, cheek, tongue and head: only if the treating team has agreed. Use soft parts only. Point nothing rigid "
            "towards eye or throat. Test the breakaway at every set-up. The player must be able to get clear alone, or somebody "
            f"stays with them. Never use it while travelling.{agreed[cleared]}"
        )

    def no_curve(self) -> str:
        return "No published endurance curve exists for the neck and face: only the player's own timed hold counts."

    def mouth(self) -> str:
        return (
            "In or near the mouth: use a part that is this player's own and can be cleaned. It must have nothing small that "
            "could come loose. Ask about teeth and swallowing."
        )

    def effort(self) -> str:
        return (
            "Effort: over a third of the comfortable force at the usual level. Watch for fatigue. Offer rests. Measure again "
            "after play."
        )

    def large_dead_zone(self) -> str:
        return (
            "Large dead zone: check that small intended movements still count, and that the game adds no dead zone of its "
            "own."
        )

    def one_player(self) -> str:
        return "This topper touches the face or mouth. It is for one player only. Clean it as its surface allows."

    def progressive(self) -> str:
        return "Changing ability: borrow rather than buy. Measure again before it is needed. Do not use stiff sticks as exercise."
