"""What holds for every test."""

from hypothesis import settings

# A law that is slow on a busy machine is no less true.
settings.register_profile("untimed", deadline=None)
settings.load_profile("untimed")
