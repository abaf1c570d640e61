"""What comes out the same on every chain of a setup: looked at once, and no search goes on for a doubt that stays."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from typing import Final

from engine.base.interval import UNKNOWN, Interval, Unknown
from engine.base.span import Span
from engine.chains.walk import CHAIN_NAMES
from engine.judging.applies import is_unknown, side
from engine.physics.quantities import QUANTITIES
from engine.physics.trace import Given, Trace, Value
from grammar.conditions import Both, Compare, Condition, Either, Not, names_in

# without these two no chain's register error is known: on which side of glass it counts makes no difference
REGISTERS: Final = ("lens_register_mm", "body_register_mm")
# a chain without a cup has none of these: a comparison with them is then false, not undecided
MAY_NOT_APPLY: Final = frozenset({"cup_bore_mm", "cup_depth_mm"})


def fully_known(given: Mapping[str, Given]) -> Trace:
    """A trace of this setup on a chain of which everything is known: what is unknown on it, no chain can tell."""
    some = Interval.exact(0.0)
    right: Value = Span.fixed(some)
    chain: dict[str, Value] = {
        "seat_mm": right, "error_before_glass_mm": right, "error_behind_glass_mm": right,
        "glass_factor": Interval.exact(1.0), "glass_focal_mm": None, "image_shift_mm": some, "adapter_iris": (),
        "pieces": some, "glass": False, "electronics": False, "adapter_kinds": (), "thread_steps": (),
        "narrowest_mm": some, "cup_bore_mm": some, "cup_depth_mm": some, "price_usd": some,
    }  # fmt: skip
    if any(isinstance(given[name].value, Unknown) for name in REGISTERS):
        chain["error_before_glass_mm"] = Span.fixed(UNKNOWN)
    return Trace({**given, **{name: Given(value, "") for name, value in chain.items()}})


class Settled:
    """Which conditions come out the same on every chain of a setup. `given`: what the setup brings."""

    def __init__(self, given: Mapping[str, Given]) -> None:
        self.known = fully_known(given)
        # what is given although the table could work it out has no needs
        self._over = frozenset(name for name in given if name in QUANTITIES)

    def covers(self, condition: Condition) -> bool:
        """Whether the condition comes out the same on every chain of the setup."""
        if isinstance(condition, Both | Either):
            return all(self.covers(part) for part in condition.parts)
        if isinstance(condition, Not):
            return self.covers(condition.part)
        if isinstance(condition, Compare) and any(
            isinstance(side(one, self.known), Unknown) for one in (condition.left, condition.right)
        ):
            return all(self._always_applies(name) for name in names_in(condition))
        return all(self._same_on_all(name) for name in names_in(condition))

    def _always_applies(self, name: str) -> bool:
        return self.known.value(name) is not None and not MAY_NOT_APPLY & _roots(name, self._over)

    def _same_on_all(self, name: str) -> bool:
        """Whether a quantity is the same whatever the chain: it does not need it, or stays unknown with it."""
        return not CHAIN_NAMES & _roots(name, self._over) or is_unknown(self.known.value(name))


@cache
def _roots(name: str, over: frozenset[str]) -> frozenset[str]:
    """The given quantities that a quantity is worked out from; those in `over` are given themselves."""
    if name in over or name not in QUANTITIES:
        return frozenset([name])
    return frozenset().union(*(_roots(need, over) for need in QUANTITIES[name].needs))
