"""Filter threads brought up to one filter: which step-up rings, how many, and what they cost."""

from __future__ import annotations

from collections import deque
from collections.abc import Mapping, Sequence
from typing import Final

from engine.answers.answer import Line, Quantity, Told
from engine.answers.knowledge import Knowledge
from engine.answers.said import focals, mentions, numbers
from engine.answers.wording import listed, money, trimmed
from engine.base.interval import Interval, is_known
from engine.facts.catalogue import Catalogue
from engine.facts.records import Adapter
from grammar.questions import Question

STEP: Final = "step-ring"
FILTER: Final = "filter"  # the kind of mount that a filter screws into


def filter_threads(question: Question, knowledge: Knowledge) -> tuple[float, ...]:
    """The filter threads told, where filters or step rings are wanted; mm."""
    if not mentions(question, "nd", "filter", "step", "hood") or not mentions(question, "thread", "filter", "step"):
        return ()
    sizes = _sizes_mm(knowledge.catalogue)
    least, greatest = min(sizes.values()), max(sizes.values())
    rows = numbers(question, "numbers", "filter_thread", "thread")
    named = [thing.id for thing in (*question.lenses, *question.bodies)]
    rows += tuple(sizes[id_] for id_ in named if id_ in sizes)
    if mentions(question, "thread"):
        rows += focals(question)  # widths that were taken for focal lengths
    return tuple(sorted(value for value in dict.fromkeys(rows) if least <= value <= greatest))


def filter_rings(threads: Sequence[float], knowledge: Knowledge) -> Told:
    """The step-up rings from each thread (mm) to one filter size that all reach."""
    usual = knowledge.catalogue.assumptions["usual-filter-size"].value.nominal
    target = max(*threads, usual) if len(threads) == 1 else max(threads)
    sizes = _sizes_mm(knowledge.catalogue)
    paths = {thread: _path(thread, target, knowledge.catalogue) for thread in threads if thread != target}
    if not paths:
        return Told()
    rings = [ring for path in paths.values() for ring in path]
    named = [" + ".join(_up(sizes[ring.rear], sizes[ring.front]) for ring in path) for path in paths.values() if path]
    unknown = [_up(thread, target) for thread, path in paths.items() if not path]
    text = f"Step up to one {trimmed(target, 1)} mm filter"
    rows: list[Quantity] = []
    if rings:
        text += f": {listed(named)}, {len(rings)} {'ring' if len(rings) == 1 else 'rings'}"
        rows.append(Quantity("adapter_count", Interval.exact(float(len(rings))), "step-up rings"))
        prices = [ring.price_usd for ring in rings if ring.price_usd is not None]
        if len(prices) == len(rings):
            band = sum(price[0] for price in prices), sum(price[1] for price in prices)
            text += f", {money(band)}"
            rows.append(Quantity("price", Interval.between(*band), "step-up rings"))
    if unknown:
        text += f". The facts hold no rings from {listed(unknown)}: their price is not known"
    text += (
        ". Never step down: a smaller rim shades the corners. A tall stack may shade a wide lens too; hoods then sit"
        " outside."
    )
    return Told((Line("text", text),), tuple(rows))


def _up(thread: float, target: float) -> str:
    return f"{trimmed(thread, 1)} to {trimmed(target, 1)} mm"


def _sizes_mm(facts: Catalogue) -> dict[str, float]:
    """The nominal thread diameter of every mount that takes a screwed filter."""
    threads = {row.id: facts.threads[row.thread] for row in facts.mounts.values() if row.kind == FILTER and row.thread}
    return {name: thread.major_mm.nominal for name, thread in threads.items() if is_known(thread.major_mm)}


def _path(thread: float, target: float, facts: Catalogue) -> list[Adapter]:
    """The fewest step-up rings from one thread (mm) to another; nothing where the facts hold none."""
    sizes = _sizes_mm(facts)
    starts = [name for name, size in sizes.items() if size == thread]
    steps = [row for row in facts.adapters.values() if row.kind == STEP and _is_up(row, sizes)]
    came: dict[str, Adapter | None] = dict.fromkeys(starts)
    queue = deque(starts)
    while queue:
        at = queue.popleft()
        if sizes[at] == target:
            path: list[Adapter] = []
            while (ring := came[at]) is not None:
                path.append(ring)
                at = ring.rear
            return path[::-1]
        for ring in steps:
            # `rear` goes on the lens, `front` takes the filter
            if ring.rear == at and ring.front not in came:
                came[ring.front] = ring
                queue.append(ring.front)
    return []


def _is_up(ring: Adapter, sizes: Mapping[str, float]) -> bool:
    return ring.rear in sizes and ring.front in sizes and sizes[ring.front] > sizes[ring.rear]
