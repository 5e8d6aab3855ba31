"""What is wished of a plan besides the case itself: what-if, without editing a file."""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["Keep", "Wishes"]


@dataclass(frozen=True)
class Keep:
    """A choice that is to stay: an action at a site, on a device or left to somebody; or a device at a site.

    Parameters
    ----------
    what : str
        An action or a site.
    where : str
        A site, a device, "option", "helper" or "dropped".
    """

    what: str
    where: str


@dataclass(frozen=True)
class Wishes:
    """Wishes for one plan.

    Parameters
    ----------
    without : tuple of str
        Things of the kit, sites, hubs or sockets that are not to be used, by name; "helper" or "option" for none of these.
    only_kit : bool
        Only what is in stock.
    budget : float, optional
        Most that may be spent on what is not in stock.
    most_parts : int, optional
        Most devices the player has to have around.
    keep : tuple of Keep
        Choices that are to stay.
    alternatives : int, default 5
        How many other plans are wanted.
    """

    without: tuple[str, ...] = ()
    only_kit: bool = False
    budget: float | None = None
    most_parts: int | None = None
    keep: tuple[Keep, ...] = ()
    alternatives: int = 5

    @property
    def what_if(self) -> bool:
        """Whether anything is wished that the case itself does not say."""
        limits = self.budget is not None or self.most_parts is not None
        return bool(self.without or self.keep or self.only_kit or limits)
