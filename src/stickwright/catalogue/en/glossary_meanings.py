"""Meanings of the glossary's terms, in English."""

from __future__ import annotations

from stickwright.codes.glossary_meanings import GlossaryMeanings

__all__ = ["Texts"]


class Texts(GlossaryMeanings):
    """In the order of the work: the player, the stick, its tuning, wiring, mounting, the choice."""

    def control_site(self) -> str:
        return "The part of the body that works a stick or a switch: a fingertip, the chin, a foot."

    def movement_range(self) -> str:
        return "How far the player comfortably moves the control site in one direction."

    def comfortable_force(self) -> str:
        return "The force that the player can push and repeat without strain."

    def resting_force(self) -> str:
        return "The weight or the muscle tone of the limb that lies on a stick or switch at rest."

    def fatigue_order(self) -> str:
        return "Which control site tires first, second and so on in an ordinary session."

    def involuntary_movement(self) -> str:
        return "Movement that the player does not intend: a sway, a jerk, a spasm."

    def tremor(self) -> str:
        return "Rhythmic involuntary movement, told by its frequency in hertz and its size (rms, the typical size)."

    def stick(self) -> str:
        return "An analogue joystick: its output grows with how far it is moved."

    def topper(self) -> str:
        return "What sits on top of the shaft and is touched: a ball, a dish, a cup, a bar."

    def shaft_extension(self) -> str:
        return "A piece that makes the shaft longer: less force, more travel."

    def travel(self) -> str:
        return "How far a stick's contact point moves from the centre to the end stop; of a switch, how far it moves until it activates."

    def deflection(self) -> str:
        return "Where the stick is between the centre (0%) and the end stop (100%)."

    def actuation_force(self) -> str:
        return "The force at which a stick leaves its centre."

    def force_at_full_travel(self) -> str:
        return "The force that holds a stick at its end stop."

    def activation_force(self) -> str:
        return "The force at which a switch activates."

    def self_centring(self) -> str:
        return "A stick returns to its centre when let go; the centre error is by how much it misses."

    def dead_zone(self) -> str:
        return "A part around the centre in which the game ignores the stick; the outer dead zone is the same before the end stop."

    def response_curve(self) -> str:
        return "How the game's output grows with the deflection: evenly, or gently at first."

    def sensitivity(self) -> str:
        return "By how much the game multiplies the deflection: 2 means that half of the travel gives full output."

    def rotation(self) -> str:
        return "By how much the output is turned so that forward in the game is forward for the player."

    def filter(self) -> str:
        return "Smoothing of the output against tremor; it adds a delay."

    def unintended_activation(self) -> str:
        return "An input that the player did not mean."

    def switch(self) -> str:
        return "A large button. Momentary: active as long as it is pressed. Latching: on with one press, off with the next."

    def controller(self) -> str:
        return "A complete gamepad. A second controller is a helper's, or one for some of the inputs."

    def hub(self) -> str:
        return "The box that sticks and switches are plugged into, each into one of its sockets; the game sees them as one controller."

    def mono_jack(self) -> str:
        return "The usual plug of a switch: one tip and one sleeve."

    def four_pole_jack(self) -> str:
        return "The plug of many sticks: both axes, supply and ground."

    def mounting_arm(self) -> str:
        return "What carries a stick or switch, what lets the arm bend, and what holds it to a tube, a table or a tray."

    def mounting_plate(self) -> str:
        return "The plate between the arm and the device."

    def reclosable_fastener(self) -> str:
        return "Two faces that hold on to each other and can be pulled apart: hook-and-loop and the like."

    def breakaway(self) -> str:
        return (
            "A breakaway comes off by itself when it is pushed too hard; a quick release is opened by hand in a moment."
        )

    def flex(self) -> str:
        return "How far a mount bends under the force on the stick."

    def safety_factor(self) -> str:
        return "How many times more a mount holds than it is asked to hold. Passed when it is at least the factor required."

    def minimum_clearance(self) -> str:
        return "The least distance to what must stay free: the face, the way of the chair."

    def control_layout(self) -> str:
        return "Who or what does each action of the game: a site on a stick or switch, an option of the game, a helper."

    def game_option(self) -> str:
        return "Something that the game can do by itself, such as braking."

    def score(self) -> str:
        return "What the layout is chosen by: the higher, the better for the player."

    def cost_to_the_player(self) -> str:
        return "What the player gives up when an action is left to the game or to a helper, on a scale from 0 to 10."

    def effort(self) -> str:
        return "The force needed as a share of the comfortable force."

    def bits(self) -> str:
        return "How much a stick can tell in a second or a movement: 2 bits are 4 steps that can be told apart."

    def interval(self) -> str:
        return "The range in which the true figure lies in 95 of 100 such measurements."

    def assumed(self) -> str:
        return "Nobody measured it: a usual figure stands in for it, with what to measure to confirm it."

    def simulation(self) -> str:
        return "One of many runs with figures drawn from their intervals; a chance is the share of runs in which something holds."

    def assessment(self) -> str:
        return "A session with a player, with all that was measured in it."

    def simulated_player(self) -> str:
        return "An invented player who makes recordings for training; they count for no real player."

    def practice_records(self) -> str:
        return "Unencrypted records for trying the program; nothing of a real player belongs in them."
