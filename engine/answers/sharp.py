"""Depth of field: near and far limit, hyperfocal distance, the slice that is sharp close up, the scale re-marked."""

from __future__ import annotations

from collections.abc import Iterator

from engine.answers.by_stack import drawn_ends
from engine.answers.close.close_picture import shown_by
from engine.answers.close.close_rows import Shown, at_extension
from engine.answers.close.coupled import coupled, deep_first
from engine.answers.close.depth_rows import (
    around,
    beyond_mm,
    blur_behind,
    close_up,
    paper_stop,
    set_apart,
    set_hyperfocal,
    to_infinity,
)
from engine.answers.close.dioptres import behind_close_up
from engine.answers.close.distance_for_depth import distance_for_depth
from engine.answers.close.least_deep import least_deep, likens_blur
from engine.answers.close.own_and_tubes import with_size_grown
from engine.answers.close.stacked import stacked
from engine.answers.close.stop_wanted import stop_wanted
from engine.answers.close.turned_round import deep_reversed
from engine.answers.diffracted import diffracted, spread_beside
from engine.answers.ends_so_near import AT_END, out_of_reach, seen_at_its_end
from engine.answers.parts.answer import ANSWERED, Answer, Line, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.nearby import LEAST, SURE, nearest, nearest_term
from engine.answers.parts.owned import own_lens
from engine.answers.parts.said import distance_mm, focals, mentions, number, number_beside, numbers, stop
from engine.answers.parts.usual_glass import with_usual_factor
from engine.answers.parts.wording import f_number, small_mm, trimmed
from engine.answers.picture.blur import blur_of
from engine.answers.picture.crop_modes import in_mode
from engine.answers.picture.fine import sensor_glass
from engine.answers.picture.frames import frames_named, frames_of
from engine.answers.picture.matching import each_on_its_own, frame_of
from engine.answers.picture.moved_out import extension_mm
from engine.answers.picture.same_depth import deeper_by, same_depth
from engine.answers.picture.through_glass import through_glass
from engine.answers.remarking import remarked
from engine.answers.seat.distances import Distances, distances_of, moves_in_part
from engine.answers.seat.spacing import usual_focals
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.facts.catalogue import Catalogue
from engine.facts.records import Format
from grammar.questions import Question, Thing

_ALL = "the limits are those of a lens that moves whole, and not for close up"
WHOLE = f"It focuses by moving only a part of itself: {_ALL}."
SAME_SCALE = "same-scale"  # a question of principle, which wants no numbers
BLURRED = "blurred-background"
SAME_SIZE = "same-size-depth"  # and that of lenses that show a thing as large
USUAL_CLOSE = "stop-of-a-close-up"  # the fact of the stop that is told of where a close-up has none
CLOSE_UPS = (0.1, 0.25, 0.5, 1.0)
FEW, FEWER = 2, 1  # frames told at most; usual focal lengths left out at either end where none is told


def sharpness(question: Question, knowledge: Knowledge) -> Answer:
    """What is sharp, for each format: by focal length and distance, or by magnification close up."""
    question = with_size_grown(question, knowledge)
    at_end = seen_at_its_end(question, knowledge)
    asked = question.distance_mm is not None or at_end is not question
    scaled = bool(question.adapters) and question.mentions("hyperfocal-asked")
    ends = out_of_reach(question, knowledge) if asked or scaled else Told()
    question = at_end
    glazed, usual = with_usual_factor(question, knowledge.catalogue)
    seen, glass = through_glass(glazed)
    glass += usual if glass.lines else Told()
    told, as_usual = Told(), _at_usual_stop(seen, knowledge)
    if as_usual is not seen and as_usual.f_number is not None:
        stop_of = f_number(as_usual.f_number)
        seen, told = as_usual, Told((Line("note", f"No stop is told: f/{stop_of} is only an example."),))
    for part in _parts(seen, knowledge):
        told += part
    told = least_deep(seen, told) + told + glass if told.lines else told
    lines = [*_by_topic(question, knowledge), *ends.lines, *told.lines]
    if not lines or (mentions(question, "same-or-why") and lines[0].kind != "head"):
        rows = nearest(question.text, knowledge.catalogue, 2, SURE if lines else LEAST)
        advice = [Line("text", f"{row.topic[:1].upper()}{row.topic[1:]}: {row.says}") for row in rows]
        lines = [*advice, *lines] if not told.lines else [*lines, *advice]
    term = nearest_term(question.text, knowledge.catalogue) if not told.lines and not lines else None
    if term is not None:
        lines.insert(0, Line("head", f"{term.names[0]}: {term.means}"))
    if not told.lines and question.topic != SAME_SCALE:
        lines += _lacking(question)
    return Answer(
        question.text, "depth-of-field", ANSWERED, tuple(lines), question=question, quantities=told.quantities
    )  # fmt: skip


def _at_usual_stop(question: Question, knowledge: Knowledge) -> Question:
    """The question at a stop as is usual close up, where a lens stands on an extension and none is told."""
    drawn = extension_mm(question, knowledge.catalogue) is not None and bool(focals(question))
    if stop(question) is not None or not drawn or question.topic is not None or distance_mm(question) is not None:
        return question
    if stop_wanted(question, frames_of(question, knowledge.catalogue)[::-1], knowledge).lines:
        return question
    return question.with_(f_number=knowledge.catalogue.assumptions[USUAL_CLOSE].value.nominal)


def _lacking(question: Question) -> Iterator[Line]:
    """What is asked for: the stop alone, where the rest is told."""
    whole = focals(question) and distance_mm(question) is not None
    if whole or question.said("magnification") is not None:
        yield Line("ask", "At which f-number? Twice as high a number, and about twice as much is sharp.", wants="stop")
    else:
        yield Line("ask", "For which focal length, f-number, format and distance, or at what magnification?")


def _parts(question: Question, knowledge: Knowledge) -> Iterator[Told]:
    facts = knowledge.catalogue
    if question.topic == "remark":
        yield remarked(question, knowledge)
        return
    pair = coupled(question, shown_by(question, knowledge))
    if pair.lines:
        yield deep_first(pair, question.feet)
        return
    at = stop(question)
    named = frames_named(question, facts)
    lenses = () if named and question.bodies and len(question.lenses) == 1 else question.lenses  # it is on that body
    theirs = [form for thing in lenses if (form := frame_of(thing, question, facts)) is not None]
    frames = list(dict.fromkeys((*theirs, *named)))[: max(FEW, len(set(theirs)))] or frames_of(question, facts)[::-1]
    frames = frames if len(theirs) > 1 else in_mode(frames, question)
    if question.said("blur") and not (theirs or named):
        frames = [replace(frames[0], name="any frame")]  # the blur told is all that a frame is asked for
    if question.topic == "diffraction":
        yield from diffracted(at, frames, question, knowledge)
        return
    if question.topic == "cover-glass":
        yield _cover_glass(at, frames[0], question, knowledge)
        return
    asked = stop_wanted(question, frames, knowledge)
    if asked.lines:
        yield asked
        return
    if at is None:
        return
    worn = (*behind_close_up(at, frames, question, knowledge), *deep_reversed(at, frames[0], question, knowledge))
    if worn := worn or tuple(distance_for_depth(at, frames, question, knowledge)):
        yield from worn
        return
    alike = same_depth(question, at, facts)
    if alike.lines and not any(thing.focal_length_mm for thing in question.lenses):
        yield alike
        return
    yield from _at_stop(at, frames, bool(named), alike, question, knowledge)


def _at_stop(
    at: float, frames: list[Format], named: bool, alike: Told, question: Question, knowledge: Knowledge
) -> Iterator[Told]:
    """Each lens at the stop, on each frame, and close up. `named`: a frame was; `alike`: stops of the same depth."""
    facts = knowledge.catalogue
    rows = [
        (thing, lens, _stop_of(thing, question, at, facts))
        for thing in question.lenses
        if (lens := distances_of(thing, facts)) is not None
    ]
    if rows and any(moves_in_part(thing, facts) for thing in question.lenses):
        yield Told((Line("note", WHOLE),))
    close = number(question, "magnification") is not None or mentions(question, "macro")
    if not (rows or close) and distance_mm(question) is not None:
        yield from _of_usual(at, frames, question, knowledge)
        return
    close = close or not rows
    sized = number(question, "magnification") is not None and distance_mm(question) is None
    each = each_on_its_own(question, facts)
    yield each if rows or sized else deeper_by(question) + each
    for form in frames:
        blur = Interval.exact(blur_of(question, form, knowledge))
        for n_row, (thing, lens, own) in enumerate(() if sized else rows):  # at that size no hyperfocal distance holds
            if each.lines and frame_of(thing, question, facts) is not form:
                continue
            for n in _stops_of(own, question) if len(rows) == 1 else (own,):
                yield from _of_lens(lens, n, blur, form, _at_its_distance(question, n_row, len(rows)), knowledge)
        if close:
            for m in numbers(question, "magnification") or CLOSE_UPS:
                for one in _stops(question, at):
                    yield close_up(m, one, blur, form, question.feet)
                yield stacked(m, at, blur, question, facts)
        if named:
            yield spread_beside(at, form, question, knowledge)
    yield alike
    paper = facts.assumptions["paper-stop"].value.nominal
    if close and at < paper:
        yield paper_stop([lens.focal.nominal for _, lens, _ in rows] or usual_focals(facts), paper)


def _of_usual(at: float, frames: list[Format], question: Question, knowledge: Knowledge) -> Iterator[Told]:
    """Around the distance told, for lenses as are usual, where no focal length is: that is asked for."""
    facts, subject = knowledge.catalogue, distance_mm(question)
    for form in frames[:FEW]:
        blur = Interval.exact(blur_of(question, form, knowledge))
        for focal in usual_focals(facts)[FEWER:-FEWER]:
            lens = distances_of(Thing(focal_length_mm=focal), facts)
            if lens is not None and subject is not None:
                yield around(lens, at, subject, blur, form, question.feet)
    yield Told((Line("ask", "Of what focal length is your lens? The longer it is, the less is sharp.", wants="focal"),))


def _by_topic(question: Question, knowledge: Knowledge) -> Iterator[Line]:
    """The advice that bears the name of what is asked, first of all."""
    alike = mentions(question, "framed-alike") and len(focals(question)) > 1
    at_scale = question.said("magnification") is not None and stop(question) is None and not question.said("depth")
    blurred = mentions(question, "wants-blur") and question.distance_mm is None and not likens_blur(question)
    name = SAME_SIZE if alike else SAME_SCALE if at_scale else BLURRED if blurred else question.topic or ""
    if (advice := knowledge.catalogue.advice.get(name)) is not None:
        yield Line("head", f"{advice.topic[:1].upper()}{advice.topic[1:]}: {advice.says}")


def _at_its_distance(question: Question, row: int, rows: int) -> Question:
    """'50 at 1 m or 85 at 1.7 m': as many distances as lenses are told in the order of these."""
    told = (question.distance_mm, *numbers(question, "distance"))
    return question.with_(distance_mm=told[row], values=()) if rows == len(told) > 1 else question


def _stops_of(own: float, question: Question) -> tuple[float, ...]:
    """Several stops told are each answered; what the lens opens to too, where another is only supposed."""
    if len(question.stops) > 1:
        return question.stops
    widest = [thing.f_number for thing in question.lenses if thing.f_number and thing.focal_length_mm]
    supposed = not question.follows or question.f_number in question.stops  # and not only kept from before
    if question.f_number is not None and widest and widest[0] > question.f_number and supposed:
        return widest[0], question.f_number  # 'f/4 ..., then at f/2.8': neither is what it opens to
    both = mentions(question, "and-what-if") and not question.follows  # 'and at f/4' in a talk is that one
    return tuple(dict.fromkeys((*widest, own))) if both else (own,)


def _stops(question: Question, at: float) -> tuple[float, ...]:
    """Every stop told: 'f/16 or f/8' sets two side by side."""
    bare = [thing.f_number for thing in question.lenses if thing.f_number and not thing.focal_length_mm]
    return tuple(dict.fromkeys((at, *bare)))


def _stop_of(thing: Thing, question: Question, otherwise: float, facts: Catalogue) -> float:
    """The stop that was told, but no wider than the lens opens; where none was, its own widest."""
    lens = own_lens(thing, facts)
    known = lens.f_number.nominal if lens is not None and is_known(lens.f_number) else None
    widest = thing.f_number if thing.f_number is not None else known
    if question.f_number is None:
        return widest if widest is not None else otherwise
    return max(question.f_number, widest) if widest is not None else question.f_number


def _of_lens(
    lens: Distances, at: float, blur: Interval, form: Format, question: Question, knowledge: Knowledge
) -> Iterator[Told]:
    """Around the distance told, then hyperfocal; with tubes or bellows, at what they make of the infinity mark."""
    subject, x = distance_mm(question), extension_mm(question, knowledge.catalogue)
    focal = f"{trimmed(lens.focal.nominal, 1)} mm"
    ends = [(f"{focal} on {words}", case, length) for words, case, length in drawn_ends(question, knowledge)]
    if not ends and x is not None:
        lead = f"{focal} with {small_mm(x)} of extension, ring at infinity"
        ends = [(lead, f"{trimmed(x, 2)} mm", Interval.exact(x))]
    if ends and question.distance_mm is None:
        subject = None  # how near it comes by itself is no distance of a subject
    apart, beyond = set_apart(question), number_beside(question, "so-far-behind")
    near = lens.at(ends[-1][2]).from_sensor_mm if ends and beyond is not None else None
    if near is not None and is_known(near) and mentions(question, "point-blurred"):
        subject = None  # what stands behind is told from where the tubes bring the subject
        told = (near.nominal, near.nominal + beyond_mm(question))
        yield blur_behind(lens, at, told, blur, form, question.feet)
    elif apart is not None:
        subject = apart[0]
        yield blur_behind(lens, at, apart, blur, form, question.feet)
    if subject is not None:
        if question.places("far-things"):
            yield to_infinity(lens, at, subject, blur, question.feet)
        yield around(lens, at, subject, blur, form, question.feet)
    if not ends and question.said(AT_END) is None:
        yield set_hyperfocal(lens.focal.nominal, at, blur, form, question.feet)
    elif ends and subject is None:
        shown = Shown(knowledge.catalogue, at, form, question.feet, blur.nominal)
        for lead, case, length in ends:
            yield at_extension(lens, length, shown, f"{case}, {form.name}", lead=lead, level=0)


def _cover_glass(at: float | None, form: Format, question: Question, knowledge: Knowledge) -> Told:
    """The glass of the body named, or the thickness told, at the stop told."""
    if at is None:
        return Told((Line("ask", "At which f-number? Glass before the sensor blurs fast lenses only.", wants="stop"),))
    body = question.body
    record = knowledge.catalogue.bodies.get(body.id or "") if body is not None and body.kind == "body" else None
    # '2 mm of sensor glass' may have been read as a lens
    beside = number_beside(question, "so-much-sensor-glass")
    told = (beside,) if beside is not None else numbers(question, "length", "thickness")
    glass = Interval.exact(told[0]) if told else record.cover_glass_mm if record is not None else None
    if glass is None or not is_known(glass):
        glass = knowledge.catalogue.assumptions["usual-sensor-glass"].value
        part = sensor_glass(at, Interval.exact(glass.nominal), form, question, knowledge)
        note = Line("note", f"Assumed: {knowledge.catalogue.assumptions['usual-sensor-glass'].says}.")
        return part + Told((note,))
    return sensor_glass(at, glass, form, question, knowledge)
