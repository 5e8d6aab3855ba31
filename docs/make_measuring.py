"""Writes docs/measuring.md from the table and the tasks themselves: ``python docs/make_measuring.py``."""

from pathlib import Path

from stickwright.catalogue import say
from stickwright.measure.events import EVENTS, PHASES
from stickwright.measure.task import TABLE
from stickwright.measure.tasks import TASKS, guided_task

PAGE = Path(__file__).with_name("measuring.md")

HEAD = """# Measuring live

*Made by docs/make_measuring.py; change the table or the tasks, not this page.*

## The tasks

Settings as they are when nobody changes them. Every task can be stopped at once; everything recorded until then is kept.

| task | takes about | what the player hears | what it is for | what to watch |
|---|---|---|---|---|
"""

STATES = """
## What can happen, and what then

A table for every state, a row for every event. **Bold** is the state that follows; several where it depends on what is left to ask.
What is not possible changes nothing and is said in the words given. Time alone ends rests and steps, so a tick or a
sample can lead from asking to resting, from resting to asking, and to done.
"""


def measuring_page() -> str:
    """The page as it should stand in docs/measuring.md."""
    lines = [HEAD.rstrip("\n")]
    for name in TASKS:
        task = guided_task(name, seed=1)
        words = task.for_practitioner
        lines.append(
            f"| {say(task.title)} | {task.expected_s:.0f} s | {say(task.for_player)} | {say(words.purpose)} | {say(words.watch)} |"
        )
    lines.append(STATES)
    for phase in PHASES:
        lines += [f"### {phase}", "", "| event | what happens | then |", "|---|---|---|"]
        for event in EVENTS:
            rule = TABLE[phase, event]
            then = ", ".join(f"**{each}**" for each in rule.to)
            lines.append(f"| {event.__name__.lower()} | {say(rule.does)} | {then} |")
        lines.append("")
    return "\n".join(lines).rstrip("\n") + "\n"


if __name__ == "__main__":
    PAGE.write_text(measuring_page(), encoding="utf-8")
