"""What answers call a quantity, and which fact would settle it: read off the word list, so a new one needs no code."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from engine.answers.parts.wording import money, quantity_text, show_of, trimmed
from engine.base.compact import compact
from engine.base.interval import Interval, Unknown, is_known
from engine.base.span import Span
from engine.facts.catalogue import Catalogue
from engine.physics.quantities import QUANTITIES
from engine.physics.trace import Trace, Value


@compact
class OwnWords:
    """`labels`: quantity -> its name, in the order of a comparison; `tells`: given quantity -> the fact to tell.

    `brief`: those that many things are compared by; `aside`: those that nothing is compared by.
    """

    labels: Mapping[str, str]
    tells: Mapping[str, str]
    bests: Mapping[str, tuple[bool, str]]  # quantity -> whether the least is best, and the word for it
    brief: frozenset[str] = frozenset()
    aside: frozenset[str] = frozenset()

    @staticmethod
    def of(catalogue: Catalogue) -> OwnWords:
        labels: dict[str, str] = {}
        tells: dict[str, str] = {}
        ways: dict[str, str] = {}
        marked: dict[str, set[str]] = {"brief": set(), "aside": set()}
        firsts: dict[tuple[str, str], str] = {}
        for word in catalogue.words.values():
            parts = word.means.split()
            if parts[:1] != ["sift"]:
                continue
            if parts[1] == "tell":
                tells[parts[2]] = word.says[0]
            elif parts[1] == "by":
                names = parts[2].split("|")
                labels[names[0]] = word.says[0]
                ways[names[0]] = parts[3]
                for mark in parts[4:]:
                    marked[mark].add(names[0])
            elif parts[1] == "first":
                firsts.setdefault((parts[2].split("|")[0], parts[3]), word.says[0].removesuffix(" first"))
        bests = {name: (way == "least", firsts[name, way]) for name, way in ways.items() if (name, way) in firsts}
        return OwnWords(labels, tells, bests, frozenset(marked["brief"]), frozenset(marked["aside"]))

    def label(self, quantity: str) -> str:
        """What answers call it; where the word list has no name, what the table of quantities says it is."""
        row = QUANTITIES.get(quantity)
        return self.labels.get(quantity) or (row.says if row else quantity.removesuffix("_mm").replace("_", " "))

    def asks(self, quantity: str, trace: Trace, lens: str) -> str:
        """The facts that would settle a quantity: those it hangs on that are not known, else those only assumed."""
        roots = [name for name in dict.fromkeys(roots_of(quantity)) if name in trace.given]
        tellable = [name for name in roots if name in self.tells]
        open_ = [name for name in tellable if _is_unknown(trace.given[name].value)]
        open_ = open_ or [name for name in tellable if trace.given[name].assumed]
        told = list(dict.fromkeys(self.tells[name] for name in open_))
        return " and ".join(told[:2]).replace("{lens}", lens)


def _is_unknown(value: Value) -> bool:
    if isinstance(value, Span):
        return isinstance(value.shortest, Unknown) or isinstance(value.longest, Unknown)
    return isinstance(value, Unknown)


def roots_of(quantity: str) -> Iterator[str]:
    """The given quantities that a quantity is worked out from, the nearest first."""
    row = QUANTITIES.get(quantity)
    if row is None:
        yield quantity
        return
    for need in row.needs:
        yield from roots_of(need)


def told_value(quantity: str, value: Value, feet: bool = False) -> str:
    """A quantity's value as it is said."""
    if isinstance(value, Unknown):
        return "not known"
    if value is None:
        return "not worked out"
    if quantity == "equivalent_focal_mm" and isinstance(value, Interval):
        return told_number(quantity, value.nominal)
    if quantity in ("price_usd", "price_paid") and isinstance(value, Interval):
        if value.greatest == 0:
            return "nothing to buy" if quantity == "price_usd" else "nothing"
        return money((value.least, value.greatest)) if quantity == "price_usd" else f"{value.nominal:g}"
    if quantity == "seat_mm" and isinstance(value, Span) and value.is_fixed and is_known(value.shortest):
        inside = value.shortest.nominal < 0
        return f"{quantity_text(quantity, abs(value.shortest))}{' inside the body flange' if inside else ''}"
    text = quantity_text(quantity, value, feet)
    return f"f/{text}" if quantity.endswith("f_number") and is_known(value) else text


def told_number(quantity: str, number: float, feet: bool = False) -> str:
    """One number of a quantity, as a bound or as what is missing."""
    if quantity == "price_usd":
        return money((number, number))
    if quantity == "equivalent_focal_mm":
        return f"{trimmed(number, 0 if number >= 20 else 1)} mm"
    return show_of(quantity, feet)(number)
