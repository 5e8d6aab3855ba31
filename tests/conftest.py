"""What every test shares."""

import os

from hypothesis import settings

from browser import chromium, visit  # noqa: F401  (one browser for all that open pages)

# No clock decides over a test: machines are shared, and compiled code is slow the first time. Where a run decides
# whether work lands, the examples are the same every time; on a desk they differ, and find what nobody thought of.
settings.register_profile("calm", deadline=None, derandomize="CI" in os.environ)
settings.load_profile("calm")
