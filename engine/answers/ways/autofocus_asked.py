"""Whether the body can focus the lens by itself, first of all where that is asked."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Answer, Line, ListedChain
from engine.answers.parts.resolve import AS_TOLD
from engine.answers.parts.said import mentions
from engine.base.compact import replace
from grammar.questions import Question

_WITHOUT: Final = "Autofocus: no. {title}: neither power nor commands pass, so it is focused by hand."
_WITH: Final = (
    "Autofocus: perhaps. {title}: power and commands pass; whether it focuses hangs on the lens and on the firmware of"
    " ring and body, which is not in the facts."
)
_DUMB: Final = "A ring without contacts"
_TOLD: Final = "Autofocus: not known. Of {title} only its length is told; without contacts it is focused by hand."
_BARE: Final = "Autofocus: not known. Nothing stands between, so it hangs on the contacts of lens and body."


def with_autofocus_first(answer: Answer, question: Question) -> Answer:
    """The chain behind whether autofocus can work through its rings, and which other would pass what it needs."""
    if not answer.chains or not mentions(question, "autofocus-asked"):
        return answer
    first, rest = answer.chains[0], answer.chains[1:]
    rings, passes = first.listed.judged.chain.adapters, _passes(first)
    known = _WITH if passes else _TOLD if any(ring.basis == AS_TOLD for ring in rings) else _WITHOUT
    said = (known if rings else _BARE).format(title=first.title)
    if passes and mentions(question, "no-contacts"):
        return replace(
            answer, lines=(Line("head", f"{_WITHOUT.format(title=_DUMB)} {first.title} passes both."), *answer.lines)
        )
    other = next((one for one in rest if _passes(one)), None) if passes is False else None
    said += f" Chain {other.number}, {other.title}, passes them; no more than that is known." if other else ""
    return replace(answer, lines=(Line("head", said), *answer.lines))


def _passes(chain: ListedChain) -> bool | None:
    """Whether every ring of it passes power and commands; None where there is none."""
    rings = chain.listed.judged.chain.adapters
    return all(ring.electronics for ring in rings) if rings else None
