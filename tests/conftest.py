"""For all tests: the same made-up examples on every run, and no test that depends on the machine's speed."""

from hypothesis import settings

settings.register_profile("steady", derandomize=True, deadline=None)
settings.load_profile("steady")
