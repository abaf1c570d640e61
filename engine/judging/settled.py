"""What comes out the same on every chain of a setup: looked at once, and no search goes on for a doubt that stays."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from engine.base.interval import UNKNOWN, Interval, Unknown
from engine.base.span import Span
from engine.chains.walk import CHAIN_NAMES
from engine.judging.applies import side
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


def is_settled(condition: Condition, known: Trace) -> bool:
    """Whether a condition comes out the same on every chain of the setup. `known`: its fully known trace."""
    if isinstance(condition, Both | Either):
        return all(is_settled(part, known) for part in condition.parts)
    if isinstance(condition, Not):
        return is_settled(condition.part, known)
    if isinstance(condition, Compare) and any(
        isinstance(side(one, known), Unknown) for one in (condition.left, condition.right)
    ):
        return all(_always_applies(name, known) for name in names_in(condition))
    return all(_same_on_all(name, known) for name in names_in(condition))


def _always_applies(name: str, known: Trace) -> bool:
    return known.value(name) is not None and not MAY_NOT_APPLY & _roots(name, known)


def _same_on_all(name: str, known: Trace) -> bool:
    """Whether a quantity is the same whatever the chain: it does not need it, or stays unknown with it."""
    return not CHAIN_NAMES & _roots(name, known) or _absent(known.value(name))


def _absent(value: Value) -> bool:
    if isinstance(value, Span):
        return isinstance(value.shortest, Unknown) and isinstance(value.longest, Unknown)
    return isinstance(value, Unknown)


def _roots(name: str, known: Trace) -> frozenset[str]:
    """The given quantities that a quantity is worked out from."""
    if name in known.given:
        return frozenset([name])
    return frozenset().union(*(_roots(need, known) for need in QUANTITIES[name].needs))
