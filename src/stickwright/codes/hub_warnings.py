"""What is doubtful of a hub: sockets, what they feed, which of them cannot be used together."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Name, Text, Topic

__all__ = ["HubWarnings"]


class HubWarnings(Topic):
    """Questions are sentences, told behind their place in the file; found and expected have no full stop."""

    @abstractmethod
    def no_socket(self, *, table: Text) -> str:
        """A hub without sockets; what to add."""

    @abstractmethod
    def no_hub(self) -> str:
        """A file that describes no hub: nothing is wired."""

    @abstractmethod
    def no_role(self) -> str:
        """Found: a socket of which nobody said what it feeds."""

    @abstractmethod
    def a_role(self) -> str:
        """Expected: that it is assignable, or what it feeds."""

    @abstractmethod
    def look_up_role(self) -> str:
        """Remedy: look in the hub's settings, or try the socket."""

    @abstractmethod
    def roles_unused(self, *, role: Name) -> str:
        """A list of roles counts only for an assignable socket; this one feeds `role`."""

    @abstractmethod
    def stick_on_mono_jack(self, *, typed: Text) -> str:
        """A stick on a jack that carries one switch."""

    @abstractmethod
    def button_on_stick_jack(self, *, typed: Text) -> str:
        """A button on a jack that carries a stick."""

    @abstractmethod
    def excludes_itself(self, *, socket: Name) -> str:
        """Found: a socket that cannot be used together with itself."""

    @abstractmethod
    def another_socket(self) -> str:
        """Expected: another socket."""

    @abstractmethod
    def socket_of_this_hub(self) -> str:
        """Expected: the name of a socket of the same hub."""
