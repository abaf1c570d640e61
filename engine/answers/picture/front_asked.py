"""Which filter a lens takes: its own front where the gear file tells it, else where to read it and how wide it is."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import ANSWERED, Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.owned import own_lens
from engine.answers.parts.said import number, numbers, stop
from engine.answers.parts.wording import article, f_number, listed, trimmed
from engine.answers.picture.filters import FILTER_SIZE, THREADS, sizes_mm
from engine.base.interval import Interval, is_known
from grammar.questions import Question, Thing

WHERE: Final = (
    "Neither mount nor focal length tells the filter size: lenses that share both have different fronts. It stands "
    "behind a ø on the front rim, inside the front cap or on an old filter. Else measure the thread inside the rim "
    "with calipers: the filter is the next size up, by some 0.5 to 1 mm. Most enlarger and rangefinder lenses take "
    "40.5 mm, cine and video lenses often 27 or 35.5 mm, small ones 25.5 mm."
)
_SETTINGS: Final = ("shutter", "iso", "light", "frame_rate", "factor", "stops")  # who tells them asks for density
_TURNED: Final = "reversed"  # trait of a lens that is put on the front of another
_SHOWN: Final = 6
FILTER: Final = "filter"  # kind of the mounts that filters have


def with_front_told(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """In place of the answer, where one lens is named and no size is told of a filter or a front."""
    lens = question.lens
    sizes = sizes_mm(knowledge.catalogue)
    told = number(question, FILTER_SIZE) is not None or bool(numbers(question, THREADS))
    told = told or any(thing.id in sizes for thing in (*question.lenses, *question.bodies))
    told = told or any(question.said(key) is not None for key in _SETTINGS)
    of_filter = knowledge.catalogue.mounts.get(lens.id or "") if lens is not None else None
    told = told or (of_filter is not None and of_filter.kind == FILTER)  # 'how wide is a Series VI filter'
    told = told or any(_TURNED in thing.traits for thing in question.lenses)  # the thread is what it is turned onto
    stepped = any(thing.steps for thing in question.adapters)
    if lens is None or told or stepped or not (lens.ids or lens.focal_length_mm):
        return answer
    own = _own(lens, knowledge)
    lines, rows = own if own[0] else _unknown(lens, question, sorted(set(sizes.values())))
    return Answer(question.text, question.intent, ANSWERED, lines, question=question, quantities=rows)


def _own(lens: Thing, knowledge: Knowledge) -> tuple[tuple[Line, ...], tuple[Quantity, ...]]:
    facts = knowledge.catalogue
    record = own_lens(lens, facts)
    major = facts.threads[record.front_thread].major_mm if record is not None and record.front_thread else None
    if record is None or major is None or not is_known(major):
        return (), ()
    text = f"Your {record.name} takes {trimmed(major.nominal, 1)} mm filters: so the gear file has its front thread."
    return (Line("head", text),), (Quantity("thread_diameter_mm", major, "front"),)


def _unknown(lens: Thing, question: Question, sizes: list[float]) -> tuple[tuple[Line, ...], tuple[Quantity, ...]]:
    lines, focal, at = [Line("head", WHERE)], lens.focal_length_mm, lens.f_number or stop(question)
    if focal is None or at is None or at <= 0:
        return tuple(lines), ()
    beam = focal / at
    wide = [size for size in sizes if size > beam][:_SHOWN]
    name = f"{trimmed(focal, 1)} mm f/{f_number(at)}"
    text = f"It is wider than {trimmed(beam, 0)} mm: so wide a beam {article(name)} {name} lets in wide open."
    if wide:
        shown = listed([trimmed(size, 1) for size in wide])
        text += f" Sizes from there up: {shown} mm; wides and zooms take larger ones."
    rows = (Quantity("opening_mm", Interval.exact(beam), "the beam wide open"),)
    return (*lines, Line("text", text)), rows
