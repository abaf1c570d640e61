"""Whether a lens of one's own meets a condition: yes, no, or undecided, never guessed; and by how much it misses."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from math import inf
from typing import Final

from engine.answers.own.own_cases import VERDICT, Case, as_interval, asked_of, needs_body
from engine.answers.parts.own_words import OwnWords, roots_of, told_number, told_value
from engine.answers.parts.wording import listed
from engine.answers.seat.telling import CERTAINTY_WORDS, life_line, unknown_line
from engine.base.compact import compact, replace
from engine.base.interval import Interval, Unknown
from engine.facts.kinds import VERDICTS
from engine.judging.judge import Judged
from engine.physics.quantities import PARTLY_MOVED
from engine.physics.trace import Value
from grammar.questions import Demand

YES, NO, OPEN = "yes", "no", "open"
_OTHER: Final = {YES: NO, NO: YES, OPEN: OPEN}
_DECIDED: Final = frozenset({"certain", "likely"})


@compact
class Ruling:
    """`state`: yes, no or open. `says`: the number that decided, by how much it misses, or what is not known.

    `asks`: what would settle it. `miss`: how far off, as a share of the bound, for sorting.
    """

    state: str
    says: str
    asks: str = ""
    miss: float = 0.0


def ruled(
    demand: Demand, case: Case, words: OwnWords, feet: bool = False, than: Callable[[Demand], Value] | None = None
) -> Ruling:
    """One condition on one lens. `than`: gives the bound that is another lens's own value."""
    quantity = asked_of(demand.quantity, case.body is not None, case.setup.format is not None)
    if case.has_no_way and quantity == VERDICT:
        return Ruling(YES if demand.negated else NO, "no way found", miss=inf)
    if quantity == VERDICT:
        ruling = _verdict(demand, case, words, feet)
    elif demand.word:
        ruling = _word(demand, quantity, case, words)
    else:
        bound = than(demand) if than is not None and demand.than is not None else None
        ruling = _number(demand, quantity, case, words, feet, bound)
    return replace(ruling, state=_OTHER[ruling.state]) if demand.negated else ruling


def grouped(groups: Sequence[Sequence[Ruling]]) -> str:
    """The state of conditions in groups of which one must hold whole."""
    states = [_all([ruling.state for ruling in group]) for group in groups]
    return YES if not states or YES in states else OPEN if OPEN in states else NO


def _all(states: Sequence[str]) -> str:
    return NO if NO in states else OPEN if OPEN in states else YES


def compared(value: Interval, how: str, bound: Interval) -> str:
    """An interval against a bound: yes or no only where the whole of it lies on one side.

    Source: by definition; what is not known may be anywhere inside the interval.
    """
    if how in (">", ">="):
        mirrored = {">": "<", ">=": "<="}[how]
        return compared(-value, mirrored, -bound)
    if how == "<":
        return YES if value.greatest < bound.least else NO if value.least >= bound.greatest else OPEN
    if how == "<=":
        return YES if value.greatest <= bound.least else NO if value.least > bound.greatest else OPEN
    same = value.is_exact and bound.is_exact and value.nominal == bound.nominal
    apart = value.greatest < bound.least or value.least > bound.greatest
    state = YES if same else NO if apart else OPEN
    return _OTHER[state] if how == "isnt" else state


def _number(demand: Demand, quantity: str, case: Case, words: OwnWords, feet: bool, than: Value) -> Ruling:
    value, label = case.value(quantity), words.label(quantity)
    bound = as_interval(than) if demand.than is not None else Interval.exact(demand.number or 0.0)
    asks = words.asks(quantity, case.trace, case.lens.words)
    if bound is None:
        return Ruling(OPEN, f"the {label} of the lens to compare with is not known")
    number = as_interval(value)
    if value is None:
        return Ruling(OPEN, _why_absent(label, case))
    if number is None:
        return Ruling(OPEN, f"{label} not known", asks)
    told = f"{label} {told_value(quantity, value, feet)}"
    state = compared(number, demand.how, bound)
    if state == OPEN:
        return Ruling(OPEN, f"{told}: too near {told_number(quantity, bound.nominal, feet)} to call", asks)
    if (hangs := open_seat(quantity, case)) is not None:
        return Ruling(OPEN, f"{told}, provided {hangs[0]}", hangs[1])
    off = number.nominal - bound.nominal
    if state == NO and not demand.negated and demand.how in ("<", "<=", ">", ">="):
        over = demand.how in ("<", "<=")
        told += f": {told_number(quantity, abs(off), feet)} {'too much' if over else 'too little'}"
        if abs(off) < 1e-9:
            told = f"{label} {told_value(quantity, value, feet)}: just that, and no more"
    share = abs(off) / max(abs(bound.nominal), 1e-9)
    return Ruling(state, told, miss=share)


def open_seat(quantity: str, case: Case) -> tuple[str, str] | None:
    """On what its distances hang, and what to measure, where a fact that decides where the lens rests is missing."""
    judged = case.judged
    if judged is None or judged.certainty != "unknown" or judged.best == judged.worst:
        return None
    if not needs_body(quantity) or "error_before_glass_mm" not in set(roots_of(quantity)):
        return None
    rules = [row.rule for row in judged.findings if not row.decided and row.rule.provided]
    clauses = listed(list(dict.fromkeys(rule.provided for rule in rules)))
    return clauses or "the facts that are missing allow it", "; ".join(
        dict.fromkeys(rule.measure for rule in rules if rule.measure)
    )


def _why_absent(label: str, case: Case) -> str:
    focusing = case.trace.value("focusing")
    if isinstance(focusing, str) and focusing in PARTLY_MOVED:
        how = "a zoom" if focusing == "zoom" else f"a lens with {focusing} focusing"
        return f"{label}: not worked out for {how}; measure it"
    return f"{label}: does not apply"


def _word(demand: Demand, quantity: str, case: Case, words: OwnWords) -> Ruling:
    value = case.value(quantity)
    if case.has_no_way and quantity in ("glass", "pieces"):
        return Ruling(OPEN, "no way found")
    if isinstance(value, Unknown) or value == "unknown" or value is None:
        asks = words.asks(quantity, case.trace, case.lens.words) or words.tells.get(quantity, "")
        return Ruling(OPEN, f"{words.label(quantity)} not known", asks.replace("{lens}", case.lens.words))
    said = ("yes" if value else "no") if isinstance(value, bool) else str(value)
    same = said == demand.word
    return Ruling(YES if same == (demand.how == "is") else NO, f"{words.label(quantity)}: {said}")


def _verdict(demand: Demand, case: Case, words: OwnWords, feet: bool) -> Ruling:
    judged = case.judged
    if judged is None:
        return Ruling(OPEN, "how far it focuses is not of a ring alone", "name the lens and the body")
    asked = [(name == demand.word) == (demand.how == "is") for name in _possible(judged)]
    if any(asked) and not all(asked):
        measures = [row.rule.measure for row in judged.findings if not row.decided and row.limits and row.rule.measure]
        says = unknown_line(judged) if judged.certainty == "unknown" else f"{life_line(judged, feet)} (borderline)"
        return Ruling(OPEN, says, "; ".join(dict.fromkeys(measures)) or _register(case, words))
    same = asked[0]
    if judged.certainty == "unknown":
        return Ruling(YES if same else NO, unknown_line(judged), miss=_off(case))
    life = life_line(judged, feet)
    if demand.how == "is":
        life = life.split(", and ")[0]  # how near it comes was not asked
    says = f"{life} ({CERTAINTY_WORDS[judged.certainty]})"
    return Ruling(YES if same else NO, says, miss=_off(case))


def _possible(judged: Judged) -> tuple[str, ...]:
    """The verdicts that may be true: the one told where it is sure enough, else all from the best to the worst."""
    if judged.certainty in _DECIDED:
        return (judged.verdict,)
    return VERDICTS[VERDICTS.index(judged.best) : VERDICTS.index(judged.worst) + 1]


def _register(case: Case, words: OwnWords) -> str:
    return words.asks("register_error_mm", case.trace, case.lens.words)


def _off(case: Case) -> float:
    miss = as_interval(case.value("infinity_miss_mm"))
    return abs(miss.nominal) if miss is not None else inf
