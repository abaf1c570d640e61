"""What filters do to the picture: a stack before the lens may clip its view, one behind it moves the focus."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.owned import own_lens
from engine.answers.parts.said import mentions, number_beside, numbers
from engine.answers.parts.wording import listed, ranged, small_mm, trimmed
from engine.answers.picture.frames import frames_named
from engine.answers.seat.distances import distances_of
from engine.base.interval import Interval, is_known
from engine.physics import coverage, openings, seat
from grammar.questions import Question

THICKEST: Final = "thickest-filter"  # of the facts, as those below
USUAL: Final = ("gel-thickness", "filter-glass-thickness")  # what a filter behind a lens may be
INDICES: Final = "index-of-plates"
GLASS_GONE: Final = ("glass-gone", "glass-left-out")  # keys of what tells that glass is no longer there


def clipped(question: Question, width: float, height: float, knowledge: Knowledge) -> Told:
    """Whether rings and a filter of this width before the lens clip the view, by the rim that its angle needs."""
    facts = knowledge.catalogue
    rows = {name: row.value for name, row in facts.assumptions.items()}
    thing = next((lens for lens in question.lenses if lens.focal_length_mm is not None), None)
    optics = distances_of(thing, facts) if thing is not None else None
    stop_at = thing.f_number if thing is not None and thing.f_number is not None else question.f_number
    if thing is None or optics is None or stop_at is None:
        return Told()
    forms = frames_named(question, facts)
    lens = own_lens(thing, facts)
    made_for = lens.made_for if lens is not None else thing.format
    if not forms and made_for in facts.formats:
        forms = [facts.formats[made_for or ""]]
    if not forms:
        return Told(
            (Line("ask", "Whether the stack shades the corners hangs on the sensor too: which body or format?"),)
        )
    form = max(forms, key=lambda one: one.diagonal_mm)
    angle = coverage.angle_of_view_deg(Interval.exact(form.diagonal_mm), optics.focal, Interval.exact(0.0))
    behind = openings.entrance_pupil_behind_mm(optics.focal, optics.pupil, optics.offset)
    if not (is_known(angle) and is_known(behind)):
        return Told()
    ahead = behind + rows["front-rim-ahead"] + rows["filter-height"] + height
    needed = openings.rim_needed_mm(optics.focal / stop_at, ahead, angle)
    if not is_known(needed):
        return Told()
    clear = width - rows["filter-clear-less"]
    told = (
        f"about {ranged(needed, _mm)} wide is needed that far ahead on {form.name}, about {ranged(clear, _mm)} is clear"
    )
    if clear.least >= needed.greatest:
        text = f"The stack does not clip the view: {told}."
    elif clear.greatest < needed.least:
        text = f"The stack clips the corners: {told}. Take a larger filter, or fewer rings."
    else:
        text = (
            f"The stack may clip the corners: {told}. Look at an even sky at f/16 or smaller: a hard edge is the rim."
        )
    return Told((Line("fact", text),), (Quantity("rim_needed_mm", needed, form.name), Quantity("rim_clear_mm", clear)))


def _mm(value: float) -> str:
    return f"{value:.0f} mm"


def is_behind(question: Question) -> bool:
    """Whether the filter asked about sits behind the lens."""
    placed = mentions(question, "behind-lens")
    return placed and mentions(question, "filter-or-gel")


def index_of_glass(question: Question, knowledge: Knowledge) -> tuple[Interval, bool]:
    """The index of the plate: told, or the usual one; and whether it was told."""
    given = number_beside(question, "index-of-glass")
    usual = knowledge.catalogue.assumptions
    if given is not None and usual[INDICES].value.holds(given):
        return Interval.exact(given), True
    return usual["filter-glass-index"].value, False


def _usual_mm(knowledge: Knowledge) -> list[float]:
    """How thick filters usually are: the ends of what the facts say."""
    usual = [knowledge.catalogue.assumptions[name].value for name in USUAL]
    return sorted({end for mm in usual if is_known(mm) for end in (mm.least, mm.greatest)})


def _of_any_thickness(index: Interval, knowledge: Knowledge) -> Told:
    """What a filter behind the lens does whose thickness is not told, by the usual ones."""
    shifts = [(mm, seat.glass_shift_mm(Interval.exact(mm), index)) for mm in _usual_mm(knowledge)]
    told = [(mm, shift) for mm, shift in shifts if is_known(shift)]
    each = listed([f"{small_mm(mm)} of glass {small_mm(shift.nominal)}" for mm, shift in told])
    text = (
        f"A filter may sit behind the lens too, but there it moves the focus back by about a third of its thickness, "
        f"{each}: infinity comes before its mark, and the filter has to stay in, or a clear one as thick. It must "
        "clear the rear glass, the mirror and the shutter. Before the lens it moves nothing, but needs the thread."
    )
    rows = tuple(Quantity("glass_shift_mm", shift, f"{trimmed(mm, 2)} mm of glass") for mm, shift in told)
    return Told((Line("head", text), Line("ask", "How thick is the filter?")), rows)


def _missing(shift: Interval, thickness_mm: float) -> Told:
    """What it does that a filter is gone which a lens was made to have behind it."""
    by = small_mm(shift.nominal)
    text = (
        f"Without its {small_mm(thickness_mm)} filter behind the lens the image falls {by} nearer to it: the lens sits"
        f" {by} too far out, and ends short of infinity where it turns no farther. Put it back, or clear glass."
    )
    rows = (Quantity("glass_shift_mm", shift), Quantity("register_error_mm", shift, "without it"))
    return Told((Line("head", text),), rows)


def rear_filter(question: Question, knowledge: Knowledge) -> Told:
    """The focus shift that a filter behind the lens makes, and what it does to infinity."""
    if not is_behind(question):
        return Told()
    sizes = numbers(question, "length", "thickness", "filter_thread", "glass")
    thickest = knowledge.catalogue.assumptions[THICKEST].value.greatest
    told = [value for value in sizes if 0 < value <= thickest]
    told += [
        thing.thickness_mm[0] for thing in question.adapters
        if thing.thickness_mm is not None and thing.piece in ("filter", "adapter", None)
    ]  # fmt: skip
    beside = number_beside(question, "so-much-glass")  # which may have been read as a lens
    thickness = beside if beside is not None else told[0] if told else None
    index, named = index_of_glass(question, knowledge)
    if thickness is None:
        return _of_any_thickness(index, knowledge)
    shift = seat.glass_shift_mm(Interval.exact(thickness), index)
    if not is_known(shift):
        return Told()
    if question.mentions(*GLASS_GONE):
        return _missing(shift, thickness)
    text = (
        f"A {small_mm(thickness)} filter behind the lens moves the focus back by {small_mm(shift.nominal)} (index "
        f"{trimmed(index.nominal, 2)}{'' if named else ', assumed'}): the lens then seems to sit that much too close, "
        "and infinity comes before its mark. A ring or shim thicker by that puts it back; then leave the filter, or a "
        "clear one as thick, in."
    )
    return Told((Line("head", text),), (Quantity("glass_shift_mm", shift, f"{trimmed(thickness, 2)} mm of glass"),))
