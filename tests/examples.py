"""How many random examples a test tries: a third in the daily run, all of them in the long one."""

from __future__ import annotations

from hypothesis import settings

DAILY, LONG = "daily", "long"  # profiles
SHARE = 3
USUAL = 100
FEWEST = 10

# what a test shows must not hang on how busy the machine is
settings.register_profile(DAILY, deadline=None, max_examples=USUAL // SHARE)
settings.register_profile(LONG, deadline=None, max_examples=USUAL)


def examples(most: int) -> int:
    """The examples of a test that tries so many in the long run."""
    return most if settings.default.max_examples == USUAL else max(most // SHARE, min(most, FEWEST))
