"""Why a plan that was kept cannot be shown as it was."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Message, Name, Topic

__all__ = ["KeptPlans"]


class KeptPlans(Topic):
    """Said on the page of a kept plan, and where a file is read."""

    @abstractmethod
    def no_plan(self) -> str:
        """The text that was read is no plan at all."""

    @abstractmethod
    def other_format(self, *, kept: int, today: int) -> str:
        """It was written in another format than is read today; both are running numbers."""

    @abstractmethod
    def other_parts(self, *, place: Name) -> str:
        """A part of it is not as it is written today; `place` is where, in the keys of the JSON."""

    @abstractmethod
    def programs(self, *, first: Name, second: Name) -> str:
        """Two plans laid side by side were made by two versions of the program."""

    @abstractmethod
    def library(self, *, name: Name, first: Name, second: Name) -> str:
        """They were worked out with two versions of a library; `first` is empty where it was not told."""

    @abstractmethod
    def seeds(self, *, first: int, second: int) -> str:
        """They were worked out with two seeds of the random numbers."""

    @abstractmethod
    def draws(self, *, first: int, second: int) -> str:
        """They were worked out with two numbers of draws."""

    @abstractmethod
    def wishes(self) -> str:
        """They were asked with other wishes, which the page shows."""

    @abstractmethod
    def inputs(self, *, names: tuple[Name, ...]) -> str:
        """Files and recordings that have changed between them, or that one of them did not have."""

    @abstractmethod
    def beside(self) -> str:
        """What the records know beside the files of the visit has changed: kit lent out, other visits, the date."""

    @abstractmethod
    def nothing(self) -> str:
        """Nothing of all that differs."""

    @abstractmethod
    def made_again(self) -> str:
        """The plan was worked out again from what it was made from, and is the same to the last digit."""

    @abstractmethod
    def same_program(self) -> str:
        """Neither program nor libraries have changed, although the plan worked out again differs; what differs follows."""

    @abstractmethod
    def program_changed(self, *, parts: tuple[Message, ...]) -> str:
        """The program, or libraries that it uses, are no longer those that made a plan."""

    @abstractmethod
    def program_now(self, *, then: Name, now: Name) -> str:
        """The version of the program that made a plan, and the one now; one of several."""

    @abstractmethod
    def library_now(self, *, name: Name, then: Name, now: Name) -> str:
        """The version of a library then and now; one of several."""

    @abstractmethod
    def inputs_refused(self, *, problem: Message) -> str:
        """The program no longer accepts what a plan was made from."""

    @abstractmethod
    def other_choices(self, *, sites: tuple[Message, ...]) -> str:
        """Other devices are chosen at these sites."""

    @abstractmethod
    def choice(self, *, site: Name, then: Name | None, now: Name | None) -> str:
        """What is chosen at a site, before and now (None: nothing); one of several."""

    @abstractmethod
    def other_figures(self, *, count: int, place: Name, then: Name, now: Name) -> str:
        """The same devices are chosen, but so many figures differ; the first by its place in the file, before and now."""

    @abstractmethod
    def same(self) -> str:
        """What was kept of the two is the same to the last digit."""

    @abstractmethod
    def other_tremor(self) -> str:
        """Why a size of tremor is not known: the plan was kept when it was worked out in another way."""
