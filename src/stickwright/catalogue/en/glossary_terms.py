"""Terms of the glossary, in English."""

from __future__ import annotations

from stickwright.codes.glossary_terms import GlossaryTerms

__all__ = ["Texts"]


class Texts(GlossaryTerms):
    """In the order of the work: the player, the stick, its tuning, wiring, mounting, the choice."""

    def control_site(self) -> str:
        return "control site"

    def movement_range(self) -> str:
        return "movement range"

    def comfortable_force(self) -> str:
        return "comfortable force"

    def resting_force(self) -> str:
        return "resting force"

    def fatigue_order(self) -> str:
        return "fatigue order"

    def involuntary_movement(self) -> str:
        return "involuntary movement"

    def tremor(self) -> str:
        return "tremor"

    def stick(self) -> str:
        return "stick"

    def topper(self) -> str:
        return "topper"

    def shaft_extension(self) -> str:
        return "shaft extension"

    def travel(self) -> str:
        return "travel"

    def deflection(self) -> str:
        return "deflection"

    def actuation_force(self) -> str:
        return "actuation force"

    def force_at_full_travel(self) -> str:
        return "force at full travel"

    def activation_force(self) -> str:
        return "activation force"

    def self_centring(self) -> str:
        return "self-centring, centre error"

    def dead_zone(self) -> str:
        return "dead zone"

    def response_curve(self) -> str:
        return "response curve"

    def sensitivity(self) -> str:
        return "sensitivity (gain)"

    def rotation(self) -> str:
        return "rotation"

    def filter(self) -> str:
        return "filter"

    def unintended_activation(self) -> str:
        return "unintended activation"

    def switch(self) -> str:
        return "switch"

    def controller(self) -> str:
        return "controller"

    def hub(self) -> str:
        return "hub, socket"

    def mono_jack(self) -> str:
        return "3.5 mm mono jack (TS)"

    def four_pole_jack(self) -> str:
        return "3.5 mm four-pole jack (TRRS)"

    def mounting_arm(self) -> str:
        return "mounting arm, joint, clamp"

    def mounting_plate(self) -> str:
        return "mounting plate"

    def reclosable_fastener(self) -> str:
        return "reclosable fastener"

    def breakaway(self) -> str:
        return "breakaway, quick release"

    def flex(self) -> str:
        return "flex"

    def safety_factor(self) -> str:
        return "safety factor"

    def minimum_clearance(self) -> str:
        return "minimum clearance"

    def control_layout(self) -> str:
        return "control layout"

    def game_option(self) -> str:
        return "option of the game"

    def score(self) -> str:
        return "score"

    def cost_to_the_player(self) -> str:
        return "cost to the player"

    def effort(self) -> str:
        return "effort"

    def bits(self) -> str:
        return "bits"

    def interval(self) -> str:
        return "95% interval"

    def assumed(self) -> str:
        return "assumed"

    def simulation(self) -> str:
        return "simulation"

    def assessment(self) -> str:
        return "assessment, visit"

    def simulated_player(self) -> str:
        return "simulated player"

    def practice_records(self) -> str:
        return "practice records"
