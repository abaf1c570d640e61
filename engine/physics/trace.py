"""Works a named quantity out from what is given, and keeps how."""

from __future__ import annotations

from collections.abc import Mapping

from engine.base.compact import compact
from engine.physics.given import GIVEN_NAMES
from engine.physics.quantities import QUANTITIES
from engine.physics.quantities import Value as Value


@compact
class Given:
    """A quantity that comes from a fact. `value` None: it does not apply; `assumed`: no fact about this very thing;
    `at_least`: the least that it may be, and how much more it is is not known.
    """

    value: Value
    says: str
    sources: tuple[str, ...] = ()
    confidence: str = ""
    assumed: bool = False
    at_least: bool = False


@compact
class Step:
    """How a quantity came about: from `inputs` by what `says` and `source` tell, or from a fact (`given`)."""

    name: str
    value: Value
    unit: str
    says: str
    source: str
    inputs: tuple[Step, ...]
    given: Given | None


class Trace:
    """Quantities of one chain on one setup. What is given stands before what could be worked out."""

    def __init__(self, given: Mapping[str, Given]) -> None:
        self.given = given
        self._values: dict[str, Value] = {}
        self._steps: dict[str, Step] = {}

    def value(self, name: str) -> Value:
        """The quantity's value, worked out once. KeyError for a name neither given nor in the table."""
        if name in self._values:
            return self._values[name]
        given = self.given.get(name)
        if given is not None:
            value = given.value
        else:
            quantity = QUANTITIES[name]
            value = quantity.formula(*[self.value(need) for need in quantity.needs])
        self._values[name] = value
        return value

    def step(self, name: str) -> Step:
        """The quantity with everything it was worked out from. KeyError as for `value`."""
        known = self._steps.get(name)
        if known is None:
            known = self._steps[name] = self._given(name) if name in self.given else self._worked_out(name)
        return known

    def _given(self, name: str) -> Step:
        given = self.given[name]
        unit, says = self._heading(name)
        return Step(name, given.value, unit, given.says or says, "", (), given)

    def _worked_out(self, name: str) -> Step:
        quantity = QUANTITIES[name]
        inputs = tuple(self.step(need) for need in quantity.needs)
        return Step(name, self.value(name), quantity.unit, quantity.says, quantity.source, inputs, None)

    @staticmethod
    def _heading(name: str) -> tuple[str, str]:
        if name in GIVEN_NAMES:
            return GIVEN_NAMES[name]
        quantity = QUANTITIES.get(name)
        return (quantity.unit, quantity.says) if quantity else ("", name)
