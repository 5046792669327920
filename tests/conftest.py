"""How do the tests run? One hypothesis profile for all: no deadline, so no test depends on time."""

from hypothesis import settings

settings.register_profile("pinjoint", deadline=None)
settings.load_profile("pinjoint")
