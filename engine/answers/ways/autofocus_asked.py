"""Whether the body can focus the lens by itself, first of all where that is asked."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Answer, Line, ListedChain
from engine.answers.parts.said import mentions
from engine.base.compact import replace
from grammar.questions import Question

_WITHOUT: Final = "Autofocus: no. {title}: neither power nor commands pass, so it is focused by hand."
_WITH: Final = (
    "Autofocus: perhaps. {title}: power and commands pass; whether it focuses hangs on the lens and on the firmware of"
    " ring and body, which is not in the facts."
)
_BARE: Final = "Autofocus: not known. Nothing stands between, so it hangs on the contacts of lens and body."


def with_autofocus_first(answer: Answer, question: Question) -> Answer:
    """The chain behind whether autofocus can work through its rings, and which other would pass what it needs."""
    if not answer.chains or not mentions(question, "autofocus-asked"):
        return answer
    first, rest = answer.chains[0], answer.chains[1:]
    passes = _passes(first)
    said = _BARE if passes is None else (_WITH if passes else _WITHOUT).format(title=first.title)
    other = next((one for one in rest if _passes(one)), None) if passes is False else None
    said += f" Chain {other.number}, {other.title}, passes them; no more than that is known." if other else ""
    return replace(answer, lines=(Line("head", said), *answer.lines))


def _passes(chain: ListedChain) -> bool | None:
    """Whether every ring of it passes power and commands; None where there is none."""
    rings = chain.listed.judged.chain.adapters
    return all(ring.electronics for ring in rings) if rings else None
