"""Filter threads brought up to one filter: which step-up rings, how many, and what they cost."""

from __future__ import annotations

import re
from collections import deque
from collections.abc import Mapping, Sequence
from typing import Final

from engine.answers.parts.answer import ANSWERED, Answer, Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.owned import own_lens
from engine.answers.parts.said import mentions, number, numbers
from engine.answers.parts.wording import listed, money, trimmed
from engine.answers.picture.coupled_fronts import are_coupled, coupling_told
from engine.answers.picture.filter_effects import clipped, is_behind
from engine.answers.picture.step_down import stepped_down, stepped_down_to
from engine.base.interval import Interval, is_known
from engine.facts.catalogue import Catalogue
from engine.facts.records import Adapter
from grammar.kinds import COVERAGE
from grammar.questions import Question, Thing

STEP: Final = "step-ring"
THREADS: Final = "filter_thread"  # key of the front threads that were told as such
FILTER_SIZE: Final = "filter_size"  # and that of the one of them that is a filter's
FILTER: Final = "filter"  # the kind of mount that a filter screws into


def for_filters(question: Question, facts: Catalogue) -> bool:
    """Whether what is named as a body, or beside the lens, is a filter thread and step rings are what is asked for."""
    things = (*question.lenses, *question.bodies)
    stepped = question.intent != COVERAGE and any(thing.piece == STEP and thing.steps for thing in question.adapters)
    told = len(numbers(question, THREADS)) > 1 or number(question, FILTER_SIZE) is not None
    if (stepped or told) and not any(thing.ids for thing in things):
        return True
    if any("reversed" in (*thing.traits, thing.lens_kind or "") for thing in things):
        return False
    threads = [_is_filter(thing, facts) for thing in things]
    bodies = all(_is_filter(thing, facts) for thing in question.bodies if thing.kind == "mount")
    return any(threads) and bodies and mentions(question, "front-filter")


def _is_filter(thing: Thing, facts: Catalogue) -> bool:
    mount = facts.mounts.get(thing.id or "") if thing.kind == "mount" else None
    return mount is not None and mount.kind == FILTER


def filter_answer(question: Question, knowledge: Knowledge) -> Answer:
    """The step rings, and whether the stack clips the view, whatever kind of question it was read as."""
    told = front_filters(question, knowledge)
    if not told.lines:
        told = Told((Line("ask", "From which front thread, to which filter? The caps and filters carry the number."),))
    return Answer(question.text, question.intent, ANSWERED, told.lines, question=question, quantities=told.quantities)


def front_filters(question: Question, knowledge: Knowledge) -> Told:
    """Step rings from the threads told, or from the lens's own, and whether the stack clips the view."""
    threads = filter_threads(question, knowledge)
    if not threads or is_behind(question):
        return Told()
    if are_coupled(question):
        return coupling_told(numbers(question, THREADS) or threads, knowledge.catalogue, path_of_steps)
    down = stepped_down_to(question)
    if down is not None:
        return stepped_down(question, down, knowledge)
    told, height, width = filter_rings(threads, knowledge, _wanted(question, knowledge))
    return told + clipped(question, width, height, knowledge)


def rings_of_fronts(question: Question, threads: Sequence[float], knowledge: Knowledge) -> Told:
    """The step rings to one filter; what joins two fronts where lenses are coupled."""
    if are_coupled(question):
        return coupling_told(numbers(question, THREADS) or threads, knowledge.catalogue, path_of_steps)
    return filter_rings(threads, knowledge)[0]


def filter_threads(question: Question, knowledge: Knowledge) -> tuple[float, ...]:
    """The filter threads told, and those of one's own lenses, where filters or step rings are wanted; mm."""
    told = len(numbers(question, THREADS)) > 1 or number(question, FILTER_SIZE) is not None
    if not told and not (mentions(question, "front-filter") and mentions(question, "filter-thread")):
        return ()
    facts = knowledge.catalogue
    sizes = sizes_mm(facts)
    least, greatest = min(sizes.values()), max(sizes.values())
    rows = numbers(question, THREADS) if told else numbers(question, "numbers", THREADS, "thread")
    for thing in question.adapters:
        rows += thing.steps or ()
    named = [thing.id for thing in (*question.lenses, *question.bodies)]
    rows += tuple(sizes[id_] for id_ in named if id_ in sizes)
    own = [lens.front_thread for thing in question.lenses if (lens := own_lens(thing, facts)) is not None]
    rows += tuple(facts.threads[name].major_mm.nominal for name in own if name is not None)
    rows += _own_filters(question, facts)
    if mentions(question, "thread"):
        # widths that were taken for focal lengths
        rows += tuple(lens.focal_length_mm for lens in question.lenses if lens.kind != "lens" and lens.focal_length_mm)
    if mentions(question, "step"):
        # widths that were read as nothing else; only those that filters are made in
        typed = (float(text) for text in re.findall(r"\d+(?:\.\d+)?", question.text))
        rows += tuple(value for value in typed if value in sizes.values())
    return tuple(sorted(value for value in dict.fromkeys(rows) if least <= value <= greatest))


def _wanted(question: Question, knowledge: Knowledge) -> float | None:
    """The filter that all should reach, where one is named."""
    told = number(question, FILTER_SIZE)
    if told is not None:
        return told
    sizes = sizes_mm(knowledge.catalogue)
    named = [sizes[thing.id] for thing in (*question.bodies, *question.lenses) if thing.id in sizes and thing.id]
    own = any(own_lens(thing, knowledge.catalogue) for thing in question.lenses)
    # a thread told alone is that of the lens
    return max([*named, *_own_filters(question, knowledge.catalogue)], default=None) if own else None


def _own_filters(question: Question, facts: Catalogue) -> tuple[float, ...]:
    """The threads of filters of the gear file that are spoken of by their names, in mm."""
    text = question.text.casefold()
    spoken = [row for row in facts.filters.values() if re.search(rf"\b{re.escape(row.name.casefold())}\b", text)]
    threads = [facts.threads[row.thread].major_mm for row in spoken if row.thread is not None]
    return tuple(size.nominal for size in threads if is_known(size))


def filter_rings(
    threads: Sequence[float], knowledge: Knowledge, wanted: float | None = None
) -> tuple[Told, float, float]:
    """The step-up rings from each thread (mm) to one filter size that all reach.

    With the height of the tallest stack of them, and the size of the filter, in mm.
    """
    assumed = knowledge.catalogue.assumptions
    usual, widest = assumed["usual-filter-size"].value.nominal, assumed["widest-step"].value.nominal
    if len(threads) == 1 and wanted == threads[0]:
        text = f"A {trimmed(wanted, 1)} mm filter screws straight in, no ring."
        return Told((Line("text", text),)), 0.0, wanted
    target = max(*threads, usual) if len(threads) == 1 else max(threads)
    if wanted is not None and wanted < max(threads) and len(threads) > 1:
        text = (
            f"The {trimmed(wanted, 1)} mm filter is smaller than the {trimmed(max(threads), 1)} mm thread: a step "
            "down, whose rim shades the corners, wides first. Take a filter at least as large."
        )
        return Told((Line("caution", text),)), 0.0, wanted
    sizes = sizes_mm(knowledge.catalogue)
    target = target if wanted is not None else _reached_by_all(threads, target, knowledge.catalogue)
    paths = {thread: path_of_steps(thread, target, knowledge.catalogue) for thread in threads if thread != target}
    if not paths:
        return Told(), 0.0, target
    rings = [ring for path in paths.values() for ring in path]
    named = [" + ".join(_up(sizes[ring.rear], sizes[ring.front]) for ring in path) for path in paths.values() if path]
    unknown = [_up(thread, target) for thread, path in paths.items() if not path]
    text = f"Step up to one {trimmed(target, 1)} mm filter"
    rings = list({ring.id: ring for ring in rings}.values())  # one that several lead through serves them in turn
    counted, rows = _counted(rings)
    text += f": {listed(named)}, {counted}" if rings else ""
    wide = [thread for thread, path in paths.items() if len(path) > 1 and target <= thread * widest]
    if wide:
        text += f". Single rings so wide, {listed([_up(thread, target) for thread in wide])}, are mostly sold as well"
        rows.append(Quantity("adapter_count", Interval.exact(float(len(paths))), "single step-up rings"))
    if unknown:
        text += f". The facts hold no rings from {listed(unknown)}: their price is not known"
    text += (
        ". Never step down: a smaller rim shades the corners. A tall stack may shade a wide lens too; hoods then sit"
        " outside."
    )
    heights = [
        sum(ring.thickness_mm.shortest.nominal for ring in path if is_known(ring.thickness_mm.shortest))
        for path in paths.values()
    ]
    return Told((Line("text", text),), tuple(rows)), max(heights, default=0.0), target


def _counted(rings: Sequence[Adapter]) -> tuple[str, list[Quantity]]:
    """How many rings there are, and what they cost together in dollars where the price of each is known."""
    text = f"{len(rings)} {'ring' if len(rings) == 1 else 'rings'}"
    rows = [Quantity("adapter_count", Interval.exact(float(len(rings))), "step-up rings")] if rings else []
    prices = [ring.price_usd for ring in rings if ring.price_usd is not None]
    if rings and len(prices) == len(rings):
        band = sum(price[0] for price in prices), sum(price[1] for price in prices)
        text += f", {money(band)}"
        rows.append(Quantity("price", Interval.between(*band), "step-up rings"))
    return text, rows


def _reached_by_all(threads: Sequence[float], least: float, facts: Catalogue) -> float:
    """The smallest filter from `least` mm up that step rings lead to from every thread; `least` where none is."""
    for size in sorted(size for size in sizes_mm(facts).values() if size >= least):
        if all(thread == size or path_of_steps(thread, size, facts) for thread in threads):
            return size
    return least


def _up(thread: float, target: float) -> str:
    return f"{trimmed(thread, 1)} to {trimmed(target, 1)} mm"


def sizes_mm(facts: Catalogue) -> dict[str, float]:
    """The nominal thread diameter of every mount that takes a screwed filter."""
    threads = {row.id: facts.threads[row.thread] for row in facts.mounts.values() if row.kind == FILTER and row.thread}
    return {name: thread.major_mm.nominal for name, thread in threads.items() if is_known(thread.major_mm)}


def path_of_steps(thread: float, target: float, facts: Catalogue) -> list[Adapter]:
    """The fewest step-up rings from one thread (mm) to another; nothing where the facts hold none."""
    sizes = sizes_mm(facts)
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
