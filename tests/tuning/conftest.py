"""Laws are judged by what they say, not by how long a busy machine takes to try them."""

from hypothesis import settings

settings.register_profile("no wall clock", deadline=None)
settings.load_profile("no wall clock")
