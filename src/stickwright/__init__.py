"""stickwright: from measured movement to a working, explained stick set-up.

The main job is `stickwright.planning.plan`. Nothing heavy is imported here, so that the
command line answers at once.
"""

__version__ = "0.1.0"
