"""What else a question may have asked, where its words leave that open: the likeliest in short, and all to pick.

Readings as whole questions, so that it is seen what each of them answers.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Final

from engine.answers.parts.answer import NO, Answer, Line, Quantity
from engine.base.compact import replace
from grammar.kinds import CHAIN, COMPARE, DEFINITION, FOCUS_VERDICT, GEAR_SETTING, HAZARD, LIST_FITS, WHY

ALIKE: Final = frozenset({CHAIN, FOCUS_VERDICT, LIST_FITS})  # kinds that are answered by the same chains
WORDED: Final = frozenset({WHY, DEFINITION, COMPARE, GEAR_SETTING, HAZARD})  # and those by what their words are about
MOST_LINES: Final = 4
TOLD: Final = ("head", "fact", "text", "chain", "danger", "caution")
IF_MEANT: Final = "if so meant"  # the case of a number that is that of another reading


def with_second(answer: Answer, instead: Sequence[str], answered: Callable[[str], Answer | None]) -> Answer:
    """The answer, then in short that to the likeliest other reading, then the readings to be picked by number."""
    lines = list(answer.lines)
    other = answered(instead[0])
    if other is not None and other.status == NO and other.intent in WORDED:
        other = None  # nothing is known of that
        if len(instead) == 1:
            return answer
    quantities = answer.quantities or ()
    if other is not None and not (other.intent in ALIKE and answer.intent in ALIKE):
        told = [line for line in other.lines if line.kind in TOLD and line not in lines][:MOST_LINES]
        if told:
            lines.append(Line("head", f"Or, if you meant: {instead[0]}"))
            lines += [replace(line, depth=line.depth + 1) for line in told]
            quantities = (*quantities, *(_second(row) for row in other.quantities or ()))
    lines.append(Line("ask", "If that is not what you asked, type a number:"))
    lines += [Line("text", f"{n}. {one}", 1) for n, one in enumerate(instead, start=1)]
    return replace(answer, lines=tuple(lines), quantities=quantities)


def _second(row: Quantity) -> Quantity:
    return replace(row, case=f"{row.case}, {IF_MEANT}" if row.case else IF_MEANT)
