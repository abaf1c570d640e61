"""A lens of which only the focal length is told, held too far out or too close on its own body, judged."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from engine.answers.parts.answer import ListedChain
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import AS_TOLD
from engine.base.compact import replace
from engine.base.interval import Interval
from engine.base.span import Span
from engine.chains.search import Found
from engine.chains.setup import Setup
from engine.chains.walk import ADDED_FOCUSING, Chain
from engine.facts.records import Adapter, Body, Format, Lens, Mount
from engine.judging.judge import Judged
from engine.judging.ranking import Listed

ANY: Final = "its-own-mount"
OWN_BODY: Final = "the lens is taken to be on a body of its own mount, whose register it has: the two cancel"
NOWHERE: Final = Found((), 0, 0, 0, False, 0, 0, True, True)
# the register of a lens on its own body cancels, so that any will do
_MOUNT: Final = Mount(ANY, "its own mount", "", AS_TOLD, register_mm=Interval.exact(0.0))


def judged_alone(
    focal_mm: float, stop: float | None, pieces: Sequence[tuple[str, float, float]], form: Format, knowledge: Knowledge
) -> Judged:
    """The lens on its own body with pieces between: (kind, shortest mm, longest mm)."""
    facts = replace(knowledge.catalogue, mounts={**knowledge.catalogue.mounts, ANY: _MOUNT})
    f_number = Interval.exact(stop) if stop is not None else Lens("", "", "", AS_TOLD).f_number
    lens = Lens("", f"a {focal_mm:g} mm lens", ANY, AS_TOLD, Interval.exact(focal_mm), f_number)
    body = Body("", "its own body", ANY, form.id, AS_TOLD, generic=True)
    setup = Setup(lens, _MOUNT, body, _MOUNT, form, form, False, False, stop)
    links = tuple(_piece(n, *piece) for n, piece in enumerate(pieces, start=1))
    return Knowledge(facts, knowledge.cases).judge_chain(Chain(links, {}), setup)


def as_listed(judged: Judged, title: str, number: int = 1) -> ListedChain:
    """A chain that no search has found, as the answer lists it."""
    return ListedChain(number, Listed(NOWHERE, judged, ()), title)


def _piece(n: int, kind: str, low: float, high: float) -> Adapter:
    kind = kind if kind in ADDED_FOCUSING else "extension-tube"
    span = Span.fixed(Interval.exact(low)) if low == high else Span(Interval.exact(low), Interval.exact(high))
    if low == high < 0:
        return Adapter(f"described-{n}", f"a ring {round(-low, 3):g} mm too thin", ANY, ANY, kind, AS_TOLD, span,
                       "measured", common="own", owned=1)  # fmt: skip
    low, high = round(low, 4), round(high, 4)
    name = f"{low:g} mm of {kind.replace('extension-', '')}" if low == high else f"{low:g} to {high:g} mm {kind}"
    return Adapter(f"described-{n}", name, ANY, ANY, kind, AS_TOLD, span, "measured", common="own", owned=1)
