"""Wrong passphrases: after the third each one makes the next wait longer, up to a minute. Nobody is shut out for good."""

from __future__ import annotations

import math
from dataclasses import dataclass
from datetime import datetime, timedelta

from stickwright.codes.message import message
from stickwright.codes.passphrases import Passphrases
from stickwright.codes.start_page import StartPage
from stickwright.errors import BadInput, Problem

__all__ = ["FREE", "LONGEST_S", "Tries"]

FREE = 3
LONGEST_S = 60


@dataclass
class Tries:
    """How often it was wrong in a row, and when last."""

    wrong: int = 0
    last: datetime | None = None

    def wait_s(self, now: datetime) -> int:
        """Seconds to wait before the next try."""
        if self.wrong < FREE or self.last is None:
            return 0
        pause_s = min(2.0 ** (self.wrong - FREE + 1), LONGEST_S)
        left_s = (self.last + timedelta(seconds=pause_s) - now).total_seconds()
        return math.ceil(min(max(left_s, 0.0), pause_s))  # a clock that was put back must not shut anybody out

    def check(self, now: datetime) -> None:
        """Refuse a try that comes too soon."""
        wait_s = self.wait_s(now)
        if wait_s:
            too_soon = message(Passphrases.too_soon, seconds=wait_s)
            raise BadInput(Problem(message(StartPage.passphrase), "", "", too_soon))

    def failed(self, now: datetime) -> None:
        """It was wrong."""
        self.wrong, self.last = self.wrong + 1, now

    def succeeded(self) -> None:
        """It was right."""
        self.wrong, self.last = 0, None
