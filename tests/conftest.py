"""What every test shares."""

from hypothesis import settings

# No clock decides over a test: machines are shared, and compiled code is slow the first time.
settings.register_profile("calm", deadline=None)
settings.load_profile("calm")
