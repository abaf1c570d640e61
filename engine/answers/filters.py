"""Filter threads brought up to one filter: which step-up rings, how many, and what they cost."""

from __future__ import annotations

from collections import deque
from collections.abc import Sequence

from engine.answers.answer import Line, Quantity, Told
from engine.answers.knowledge import Knowledge
from engine.answers.said import focals, mentions, numbers
from engine.answers.wording import listed, money, trimmed
from engine.base.interval import Interval
from engine.facts.records import Adapter
from grammar.questions import Question

STEP = "step-ring"
USUAL_FILTER_MM = 52.0  # the smallest size that filters are bought in for several lenses
HEAD = "filter-"
FILTER_SIZES = (15.0, 130.0)  # mm, what filters are made in


def filter_threads(question: Question) -> tuple[float, ...]:
    """The filter threads told, where filters or step rings are wanted; mm."""
    if not mentions(question, "nd", "filter", "step", "hood") or not mentions(question, "thread", "filter", "step"):
        return ()
    low, high = FILTER_SIZES
    rows = numbers(question, "numbers", "filter_thread", "thread")
    if len(rows) < 2 and mentions(question, "thread"):
        rows += focals(question)  # widths that were taken for focal lengths
    return tuple(sorted(value for value in dict.fromkeys(rows) if low <= value <= high))


def filter_rings(threads: Sequence[float], knowledge: Knowledge, largest: float | None = None) -> Told:
    """The step-up rings from each thread (mm) to one filter size that all reach."""
    target = largest or max(*threads, USUAL_FILTER_MM if len(threads) == 1 else 0.0, 0.0)
    steps = [row for row in knowledge.catalogue.adapters.values() if row.kind == STEP]
    bands = [row.price_usd for row in steps if row.price_usd]
    lines: list[str] = []
    low = high = 0.0
    count = 0
    for thread in dict.fromkeys(threads):
        if thread == target:
            continue
        path = _path(thread, target, steps)
        names = [f"{_size(ring.rear)}-{_size(ring.front)}" for ring in path] or [f"{thread:g}-{target:g}"]
        count += len(names)
        lines.append(" + ".join(names))
        prices = [ring.price_usd for ring in path if ring.price_usd] or bands[:1]
        low, high = low + sum(band[0] for band in prices), high + sum(band[1] for band in prices)
    if not count:
        return Told()
    noun = "ring" if count == 1 else "rings"
    text = (
        f"Step up to one {trimmed(target, 1)} mm filter: {listed(lines)}, {count} {noun}, {money((low, high))}. Never"
        " step down: a smaller rim shades the corners. A tall stack may shade a wide lens too; hoods then sit outside."
    )
    rows = (
        Quantity("adapter_count", Interval.exact(float(count)), "step-up rings"),
        Quantity("price", Interval.between(low, high), "step-up rings"),
    )
    return Told((Line("text", text),), rows)


def _size(mount: str) -> str:
    return mount.removeprefix(HEAD)


def _path(thread: float, target: float, steps: Sequence[Adapter]) -> list[Adapter]:
    """The fewest rings from one thread up to another; nothing where the facts hold none."""
    start, goal = f"{HEAD}{thread:g}", f"{HEAD}{target:g}"
    came: dict[str, Adapter | None] = {start: None}
    queue = deque([start])
    while queue:
        at = queue.popleft()
        if at == goal:
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
