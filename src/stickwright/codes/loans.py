"""What is wrong with a loan of kit."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Message, Name, Topic

__all__ = ["Loans"]


class Loans(Topic):
    """Found and expected have no full stop; remedies are sentences."""

    @abstractmethod
    def lent_on(self) -> str:
        """Where: the day on which it was lent."""

    @abstractmethod
    def due(self) -> str:
        """Where: the day on which it is due."""

    @abstractmethod
    def back(self) -> str:
        """Where: the day on which it came back."""

    @abstractmethod
    def cleaned(self) -> str:
        """Where: the day on which it was cleaned."""

    @abstractmethod
    def type_due(self) -> str:
        """Remedy: enter the day on which it should be back."""

    @abstractmethod
    def still_with(self, *, code: Name) -> str:
        """Found: it is still with that player."""

    @abstractmethod
    def returned_item(self) -> str:
        """Expected: something that is back."""

    @abstractmethod
    def return_first(self) -> str:
        """Remedy: record its return first."""

    @abstractmethod
    def back_since(self, *, date: Name) -> str:
        """Found: it came back on that day, YYYY-MM-DD."""

    @abstractmethod
    def lent_item(self) -> str:
        """Expected: something that is lent."""

    @abstractmethod
    def lend_again(self) -> str:
        """Remedy: lend it again."""

    @abstractmethod
    def since_lent(self, *, date: Name) -> str:
        """Expected: a day from that one on, on which it was lent."""

    @abstractmethod
    def of_the_kit(self) -> str:
        """Expected: something of the kit."""

    @abstractmethod
    def none_left(self, *, owned: int, out: tuple[Message, ...]) -> str:
        """Found: none left of so many; with whom they are."""

    @abstractmethod
    def with_player(self, *, code: Name, due: Name) -> str:
        """With that player, until that day, YYYY-MM-DD."""

    @abstractmethod
    def none_for_another(self, *, codes: tuple[Name, ...]) -> str:
        """Found: none left for another player; who has or had them (may be empty)."""

    @abstractmethod
    def a_new_one(self) -> str:
        """Expected: a new one, as it touches face or mouth and stays with one player."""

    @abstractmethod
    def buy_one(self) -> str:
        """Remedy: buy one and raise the stock; the key is in_stock."""

    @abstractmethod
    def one_in_stock(self) -> str:
        """Expected: one in stock."""

    @abstractmethod
    def ask_back(self) -> str:
        """Remedy: ask for one back, or buy one."""

    @abstractmethod
    def a_loan(self) -> str:
        """Expected: a loan that is in the records."""
