"""What is doubtful of a hub, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.hub_warnings import HubWarnings
from stickwright.codes.message import Name, Text

__all__ = ["Texts"]


class Texts(HubWarnings):
    """Questions behind their place in the file."""

    w: English

    def no_socket(self, *, table: Text) -> str:
        return (
            f"no socket, so nothing can be plugged in. Add {self.clause(table)} for each, with name, "
            'takes = "USB" and role.'
        )

    def no_hub(self) -> str:
        return "no hub is described, so no sockets are chosen and nothing is wired."

    def no_role(self) -> str:
        return "no role"

    def a_role(self) -> str:
        return 'role = "assignable", or what the socket feeds: "left stick", "bottom button in right cluster" and so on'

    def look_up_role(self) -> str:
        return "A socket without a role feeds nothing. Look in the hub's settings, or try the socket and see what happens in the game."

    def roles_unused(self, *, role: Name) -> str:
        return f'this list is used only with role = "assignable", and this socket feeds the {self.w.name(role)}. Which is right?'

    def stick_on_mono_jack(self, *, typed: Text) -> str:
        carries = "on a 3.5 mm mono jack (TS), which carries one switch, not a stick"
        return f"{self.clause(typed)} {carries}. Check takes and role at the socket."

    def button_on_stick_jack(self, *, typed: Text) -> str:
        return f"{self.clause(typed)} on a 3.5 mm four-pole jack (TRRS), which carries a stick. Check takes and role at the socket."

    def excludes_itself(self, *, socket: Name) -> str:
        return f'"{self.w.name(socket)}", the socket itself'

    def another_socket(self) -> str:
        return "another socket"

    def socket_of_this_hub(self) -> str:
        return "the name of a socket of the same hub"
