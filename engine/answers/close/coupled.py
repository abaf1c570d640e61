"""A lens reversed before another: how much the pair magnifies, what light it costs, what field and depth it shows."""

from __future__ import annotations

from engine.answers.close.close_rows import Shown
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import mentions, numbers
from engine.answers.parts.wording import area, depth_words, f_number, small_mm, times, trimmed
from engine.answers.picture.frames import USUAL_FRAMES
from engine.base.compact import replace
from engine.base.interval import Interval, Measure, exact_or_unknown, is_known
from engine.physics import closeup, exposure
from grammar.questions import Question, Thing

CASE = "coupled"
PAIR = 2
TURNED = "reversed"  # the trait of a lens that is
REVERSE_RING = "reverse-ring"
_FOCALS = (35.0, 800.0)  # mm, of a lens before which another is reversed
LEAST_LOST = 0.05  # stops
ROOM = (
    "Working distance is about the reversed lens's own register, less what its rear stands behind its flange. Stop down"
    " by the rear lens, the reversed one open: its iris would cut the corners. Dark corners are usual unless the rear"
    " lens is a long one; focus it nearer, or crop."
)


def is_turned(lens: Thing) -> bool:
    return TURNED in (*lens.traits, lens.lens_kind or "")


def with_ring_turned(question: Question) -> Question:
    """'a reverse ring and a 24 mm': the one lens told is the one that the ring turns round."""
    ringed = any(thing.piece == REVERSE_RING for thing in question.adapters)
    if not ringed or not question.lenses or any(is_turned(lens) for lens in question.lenses):
        return question
    *others, last = question.lenses
    return question.with_(lenses=(*others, replace(last, traits=(*last.traits, TURNED))))


def coupled(question: Question, shown: Shown) -> Told:
    """Both at infinity: the rear one's focal length over the reversed one's, and all that follows from it.

    Nothing where there are not two, one of them reversed, their focal lengths known.
    """
    pair = pair_of(question)
    if pair is None:
        return Told()
    behind, front = pair
    rear, reverse = exact_or_unknown(behind.focal_length_mm), exact_or_unknown(front.focal_length_mm)
    magnified = closeup.coupled_magnification(rear, reverse)
    if not (is_known(rear) and is_known(reverse) and is_known(magnified)):
        return Told()
    words = f"{trimmed(reverse.nominal, 1)} mm reversed before {trimmed(rear.nominal, 1)} mm"
    head = f"{words}, both at infinity: {times(magnified.nominal)}."
    stop = behind.f_number if behind.f_number is not None else question.f_number
    if question.f_number is not None and stop is not None:
        stop = max(stop, question.f_number)
    told = Told((Line("head", head),), (Quantity("magnification", magnified, CASE),))
    told += _light(rear, reverse, exact_or_unknown(stop), exact_or_unknown(front.f_number))
    forms = [shown.form] if shown.form is not None else [shown.facts.formats[name] for name in USUAL_FRAMES]
    counts = _counts(rear, reverse, exact_or_unknown(stop), exact_or_unknown(front.f_number))
    for form in forms:
        told += _seen(magnified, counts, replace(shown, form=form))
    return told + Told((Line("text", ROOM),))


def pair_of(question: Question) -> tuple[Thing, Thing] | None:
    """The lens on the body and the one reversed before it; of two that are only said to be coupled the longer behind.

    Two of a kind may be told as one: 'two 50s face to face'. None where no pair is told.
    """
    lenses = [lens for lens in question.lenses if lens.focal_length_mm is not None]
    front = next((lens for lens in lenses if is_turned(lens)), None)
    joined = mentions(question, "coupled-lenses")
    if len(lenses) == len(question.lenses) == 1 and lenses[0].count == PAIR and (joined or front is not None):
        return lenses[0], lenses[0]
    if front is None and joined and len(lenses) == PAIR:
        front = min(lenses, key=lambda lens: lens.focal_length_mm or 0.0)
    if front is None:
        return None
    behind = next((lens for lens in question.lenses if lens is not front), None) or _length_left(question)
    return (behind, front) if behind is not None and behind.focal_length_mm is not None else None


def coupled_light(question: Question) -> Told:
    """The f-number that counts for exposure, and what is lost against the lens on the body alone."""
    pair = pair_of(question)
    if pair is None:
        return Told()
    rear, front = pair
    return _light(*(exact_or_unknown(value) for value in (
        rear.focal_length_mm, front.focal_length_mm, rear.f_number, front.f_number
    )))  # fmt: skip


def _length_left(question: Question) -> Thing | None:
    """A length as lenses have it that is told of nothing else, where no body is named that the one alone goes on."""
    told = numbers(question, "length")
    if len(told) != 1 or not _FOCALS[0] <= told[0] <= _FOCALS[1] or any(body.ids for body in question.bodies):
        return None
    return Thing(focal_length_mm=told[0])


def _counts(rear: Measure, reverse: Measure, stop: Measure, front_stop: Measure) -> Measure:
    """The f-number of the pair; that of the rear one where it is not known how far the reversed one opens."""
    return closeup.coupled_f_number(rear, stop, reverse, front_stop) if is_known(front_stop) else stop


def _light(rear: Measure, reverse: Measure, stop: Measure, front_stop: Measure) -> Told:
    """Nothing is lost by extension, since both stand at infinity; the reversed lens may let less through."""
    if not (is_known(rear) and is_known(reverse)):
        return Told()
    plain = "Between the two the light runs parallel, and none is lost by extension: the rear lens stands at infinity"
    counts = _counts(rear, reverse, stop, front_stop)
    if not (is_known(stop) and is_known(counts)):
        enough = f"{trimmed(reverse.nominal / rear.nominal, 2)} of its f-number"
        text = f"{plain}, and its f-number counts, so long as the reversed one opens to {enough} or wider."
        return Told((Line("fact", text),), (Quantity("light_difference_stops", Interval.exact(0.0), CASE),))
    lost = exposure.f_number_stops(stop, counts)
    rows = [Quantity("effective_f_number", counts, CASE)]
    if not is_known(lost) or abs(lost.nominal) < LEAST_LOST:
        needed = f_number(stop.nominal * reverse.nominal / rear.nominal)
        sure = f", the reversed one opening to f/{needed} or wider" if not is_known(front_stop) else ""
        rows.append(Quantity("light_difference_stops", Interval.exact(0.0), CASE))
        return Told((Line("fact", f"{plain}, so that f/{f_number(stop.nominal)} counts as it is{sure}."),), tuple(rows))
    pupil = small_mm(round(reverse.nominal / front_stop.nominal, 1)) if is_known(front_stop) else ""
    rows.append(Quantity("light_difference_stops", lost, CASE))
    text = (
        f"{plain}; but the reversed lens opens to {pupil} only, less than the rear one, so that f/"
        f"{f_number(stop.nominal)} counts as f/{f_number(counts.nominal)}: {lost.nominal:.1f} stops darker."
    )
    return Told((Line("fact", text),), tuple(rows))


def _seen(magnified: Interval, counts: Measure, shown: Shown) -> Told:
    """The field on one area, and the depth where a stop is told."""
    form, blur = shown.form, shown.blur()
    if form is None or blur is None:
        return Told()
    wide = closeup.field_mm(Interval.exact(form.width_mm), magnified)
    high = closeup.field_mm(Interval.exact(form.height_mm), magnified)
    if not (is_known(wide) and is_known(high)):
        return Told()
    case = f"{CASE}, {form.id}"
    text = f"field {area(wide.nominal, high.nominal, shown.feet)} on {form.name}"
    rows = [Quantity("field_width_mm", wide, case), Quantity("field_height_mm", high, case)]
    deep = closeup.coupled_depth_mm(counts, blur, magnified)
    if is_known(deep) and is_known(counts):
        text += f", {depth_words(deep.nominal, shown.feet)} deep at f/{f_number(counts.nominal)}"
        rows.append(Quantity("dof_mm", deep, case))
    return Told((Line("fact", text, 1),), tuple(rows))


def deep_first(told: Told, feet: bool) -> Told:
    """What is told of a pair, with how much is sharp before it first of all, where that is what is asked."""
    deep = [row.value for row in told.quantities if row.name == "dof_mm" and isinstance(row.value, Interval)]
    if not deep:
        return told
    head = Line("head", f"{depth_words(deep[0].nominal, feet)} is sharp in all.")
    return replace(told, lines=(head, *told.lines))


def by_their_stops(question: Question) -> list[Question]:
    """The question of each lens by itself, where each has a stop of its own and none is asked for."""
    lenses = question.lenses
    turned = pair_of(question) is not None or any(is_turned(lens) for lens in lenses)
    if question.f_number is not None or turned or len({lens.f_number for lens in lenses}) < 2:
        return [question]
    return [question.with_(lenses=(lens,)) for lens in lenses]
