"""Whether a lens covers a frame: the share lit, the largest clean crop, and what glass in between makes of it."""

from __future__ import annotations

from math import hypot, log2

from engine.answers.parts.answer import ANSWERED, NO, Answer, Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.nearby import LEAST, MUCH, nearest
from engine.answers.parts.said import mentions, number
from engine.answers.parts.usual_glass import with_usual_factor
from engine.answers.parts.wording import FULL, percent, ranged, trimmed
from engine.answers.picture.by_length import by_length
from engine.answers.picture.circles import Thrown, circles_of, glass_factor
from engine.answers.picture.clipping import grown_out, openings
from engine.answers.picture.crop_factors import crop_factors
from engine.answers.picture.crop_modes import in_mode
from engine.answers.picture.crops import LARGEST_CLEAN, Falls, asks_shape, crop_lines, free_crops, like_line, shapes
from engine.answers.picture.each_frame import with_each_frame
from engine.answers.picture.filled_by import filled_by
from engine.answers.picture.filters import filter_answer, for_filters
from engine.answers.picture.frame_modes import mode_unknown
from engine.answers.picture.frames import frames_named, frames_of
from engine.answers.picture.front_stack import front_stack
from engine.answers.picture.pixels import asks_pixels, count_asked, crop_that_gives, leads_with_pixels, pixels_first
from engine.answers.picture.pixels_cut import pixels_cut
from engine.answers.picture.shifting import ROOM_TO_SHIFT, asks_shift, circle_to_shift, room_to_shift
from engine.answers.picture.which_cover import lit_of, which_cover
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.facts.records import Format
from grammar.questions import Question

MOST_ADVICE = 1
SMALL_DISC = "small-disc"
CLOSED_DOWN = "corners-stopped-down"
NOTE = "note"  # the severity of advice that warns of nothing


def cover(question: Question, knowledge: Knowledge) -> Answer:
    """Each circle on each frame, then the advice that goes with it, then what to measure where it is not settled."""
    if for_filters(question, knowledge.catalogue):
        return _before_rings(front_stack(question, knowledge), filter_answer(question, knowledge))
    question = with_each_frame(question, knowledge.catalogue)
    stacked = pixels_cut(question, knowledge.catalogue)
    stacked = stacked if stacked.lines else front_stack(question, knowledge)
    if stacked.lines:
        return Answer(
            question.text, question.intent, ANSWERED, stacked.lines, question=question, quantities=stacked.quantities
        )
    question, assumed = with_usual_factor(question, knowledge.catalogue) if question.lenses else (question, Told())
    told = _needed(question, knowledge)
    told = told if told.lines else cover_told(question, knowledge, always=True)
    told = told if told.lines or not question.lenses else _of_frames(question, knowledge)  # its circle is not known
    bare = not any(lens.ids or lens.format for lens in question.lenses)
    if question.topic == "crop" and bare and not asks_pixels(question):
        told = crop_factors(question, knowledge) + told
    named = [name for thing in question.things if thing.kind == "advice" for name in thing.ids]
    least = MUCH if told.lines and (question.lenses or question.said("circle")) else LEAST
    notes = nearest(question.text, knowledge.catalogue, MOST_ADVICE, least, among=lambda row: row.severity == NOTE)
    near = [advice.id for advice in notes]  # nothing is stuck or burns where it is asked what is lit
    cured = mentions(question, "cured") and question.topic in ("vignette", "disc")
    near = [SMALL_DISC, *near] if cured else near
    closed = question.follows and mentions(question, "stopped-down") and not question.adapters
    near = [CLOSED_DOWN, *near] if closed else near
    unknown = mode_unknown(question)
    told += assumed + Told((Line("ask", unknown),) if unknown else ())
    table = knowledge.catalogue.advice
    found = dict.fromkeys((*named[:1], *near))
    rows = [table[name] for name in found if name in table and not _only_crops(name, cured)]
    about = [Line("text", f"{row.topic[:1].upper()}{row.topic[1:]}: {row.says}") for row in rows]
    open_yet = not question.lenses and question.said("circle") is None
    instead = closed or not told.lines or (named and open_yet) or _is_method(question) or cured
    lines = [*about, *told.lines] if instead else [*told.lines, *about]
    known = any(lens.focal_length_mm and (lens.f_number or question.f_number) for lens in question.lenses)
    if not any(line.kind == "ask" for line in lines) and question.said("bore") is not None and not known:
        lines.append(Line("ask", "For which lens: focal length and f-number? Fast and long ones lose corners first."))
    return Answer(
        question.text, question.intent, ANSWERED if lines else NO, tuple(lines), question=question,
        quantities=told.quantities,
    )  # fmt: skip


def _before_rings(stacked: Told, answer: Answer) -> Answer:
    """Whether the stack cuts the corners, before which rings lead to one filter; these alone where no lens is told."""
    heads = tuple(line for line in stacked.lines if line.kind == "head")
    if any(line.kind == "ask" for line in stacked.lines) or heads == answer.lines[: len(heads)]:
        return answer
    quantities = (*stacked.quantities, *answer.quantities)
    return replace(answer, lines=(*heads, *answer.lines), quantities=quantities)


def _needed(question: Question, knowledge: Knowledge) -> Told:
    """What circle each frame named needs, and which lens is asked for, where nothing is told of the lens."""
    given = crop_that_gives(question, knowledge.catalogue)
    if given.lines:
        return given
    asks_else = question.topic == "crop" or question.said("circle") is not None
    return Told() if asks_else or not _is_bare(question) else _of_frames(question, knowledge)


def _of_frames(question: Question, knowledge: Knowledge) -> Told:
    frames = frames_named(question, knowledge.catalogue)
    if not frames:
        return Told()
    factor = glass_factor(question, knowledge.catalogue)
    need = "; ".join(_circle_needed(form, factor) for form in frames)
    ask = (
        "Which lens: its mount and focal length, or what format was it made for? Or measure its circle: the bright disc"
        " that a far scene makes on paper held at the focus."
    )
    rows = [Quantity("format_diagonal_mm", Interval.exact(form.diagonal_mm), form.id) for form in frames]
    if factor is not None:
        rows += [Quantity("image_circle_mm", Interval.exact(form.diagonal_mm / factor), "needed") for form in frames]
    told = Told((Line("head", f"{need[:1].upper()}{need[1:]}."),), tuple(rows))
    for form in frames:
        told += circle_to_shift(form, question)
    return told + Told((Line("ask", ask, wants="lens circle"),))


def _circle_needed(form: Format, factor: float | None) -> str:
    """The circle that a frame asks for, and through glass of a factor that of the lens before it."""
    need = f"{form.name} needs an image circle of {trimmed(form.diagonal_mm, 1)} mm"
    if factor is None:
        return need
    lens = f"{trimmed(form.diagonal_mm / factor, 1)} mm of the lens itself"
    return f"{need}: through {factor:g}x that is {lens}"


def _is_bare(question: Question) -> bool:
    """Whether the lens is only 'it', 'a lens': then all that is known is what the frame asks of it."""
    told = (
        (lens.ids or lens.format or lens.lens_kind or lens.focal_length_mm or lens.traits) for lens in question.lenses
    )
    return not any(told) and all(piece.factor for piece in question.adapters)


def _only_crops(name: str, cured: bool) -> bool:
    """Advice that would only say again what the numbers say; what helps is told where a cure is asked for."""
    return name == "black" or (name == SMALL_DISC and not cured)


def _is_method(question: Question) -> bool:
    return mentions(question, "how-to-measure")


def cover_told(question: Question, knowledge: Knowledge, always: bool = False) -> Told:
    """The circles on the frames; by itself only where the question is about dark corners or the frame."""
    if not always and question.topic not in ("disc", "vignette", "cover", "image-circle", "crop"):
        return Told()
    facts = knowledge.catalogue
    circles, frames = circles_of(question, facts), in_mode(frames_of(question, facts, modes=True), question)
    factor = glass_factor(question, facts)
    lines: list[Line] = []
    rows: list[Quantity] = []
    unsure = False
    if factor is not None:
        rows.append(Quantity("light_difference_stops", Interval.exact(abs(2 * log2(factor))), f"{factor:g}x"))
    moved = [grown_out(thrown, question, facts) for thrown in circles]
    for thrown, grown in moved:
        for behind in [factor, None] if factor is not None and factor > 1 else [factor]:
            part, open_ = _of_circle(thrown, behind, frames, question, knowledge)
            lines += part.lines
            rows += part.quantities
            unsure = unsure or (open_ and behind == factor)
        lengths = by_length(thrown.thing, facts) if thrown.typical and not thrown.made_for else Told()
        lines += (*lengths.lines, *grown.lines)
        rows += (*lengths.quantities, *grown.quantities)
    alone = circles and factor is None and not frames_named(question, facts)
    if alone and (question.said("circle") or asks_shape(question)):
        free = free_crops(moved[0][0].circle_mm, question)
        lines = [*free.lines, *lines] if _wants_crop(question) else [*lines, *free.lines]
        rows += free.quantities
    if factor is not None and lines:
        way = "lost" if factor > 1 else "gained"
        lines.append(Line("fact", f"{abs(2 * log2(factor)):.1f} stops of light are {way} by the {factor:g}x", 1))
    thrown_now = [thrown for thrown, _ in moved]
    summed = which_cover(thrown_now, factor, frames) if not _shift(question)[2] else []
    summed = [*filled_by(question, thrown_now, factor, facts), *summed]
    clipped = openings(question, knowledge, frames)
    asked = [line for line in clipped.lines if line.kind == "head"]
    lines[1:1] = [line for line in clipped.lines if line.kind != "head"]  # it qualifies what the head has said
    lines = [*asked, *summed, *lines]
    rows += clipped.quantities
    if unsure:
        ask = "It hangs on this very lens: what image circle does it throw? Measure the bright disc of a far scene."
        lines.append(Line("ask", ask, wants="circle"))
    return Told(tuple(_asked_first(lines, question, knowledge)), tuple(rows))


def clipped_told(question: Question, knowledge: Knowledge) -> Told:
    """What the openings do that are told or known, on the largest frame."""
    return openings(question, knowledge, in_mode(frames_of(question, knowledge.catalogue, modes=True), question))


def _asked_first(lines: list[Line], question: Question, knowledge: Knowledge) -> list[Line]:
    """The lines with what is left of the pixels, or with the crop, as the answer where that is what was asked."""
    if leads_with_pixels(question):
        left = pixels_first(lines, question)
        lines = [*lines, *count_asked(left)]
    elif asks_shift(question) and question.said("shift") is None:
        left = [line for line in lines if ROOM_TO_SHIFT in line.text]
    elif _wants_crop(question):
        left = [line for line in lines if LARGEST_CLEAN in line.text]
    else:
        return lines
    named = frames_named(question, knowledge.catalogue)
    if not left or not (len(named) == 1 or (named and len(question.bodies) == 1)):
        return lines
    return [Line("head", f"{left[0].text[:1].upper()}{left[0].text[1:]}."), *lines]


def _wants_crop(question: Question) -> bool:
    """Whether the crop is what is asked: the largest, or one of a shape."""
    return asks_shape(question) or mentions(question, "largest-crop")


def _of_circle(
    thrown: Thrown, factor: float | None, frames: list[Format], question: Question, knowledge: Knowledge
) -> tuple[Told, bool]:
    circle = thrown.circle_mm * factor if factor is not None else thrown.circle_mm
    case = thrown.case + (f" with {factor:g}x" if factor is not None else "")
    size = ranged(circle, lambda value: f"{trimmed(value, 1)} mm")
    typical = " (typical of such lenses)" if thrown.typical else ""
    if thrown.made_for:
        size = f"at least {size}"
        typical = f" (such lenses cover {thrown.made_for}; how much more is not known)"
    words = thrown.words + (f" with {factor:g}x" if factor is not None else "")
    right, up, shifted = _shift(question)
    case += shifted
    told = Told((), (Quantity("image_circle_mm", circle, case),))
    heads: list[str] = []
    unsure = False
    for form in frames:
        falls = Falls(
            form, right, up, None if thrown.focal_mm is None else thrown.focal_mm * (factor or 1.0),
            None if thrown.f_number is None else thrown.f_number * (factor or 1.0),
            thrown.extension_mm * (factor or 1.0) ** 2,
        )  # fmt: skip
        lit = lit_of(thrown, factor, form, right, up)
        told += Told((), (Quantity("format_diagonal_mm", Interval.exact(form.diagonal_mm), form.id),))
        told += room_to_shift(circle, form, question, case, bool(thrown.made_for))
        if not is_known(lit):
            continue
        beyond = thrown.made_for if lit.least <= FULL else ""  # how much more than that it covers is not known
        unsure = unsure or lit.least <= FULL < lit.greatest
        heads.append(_short(lit, form))
        told += Told(
            (Line("fact", _verdict(lit, falls, shifted, beyond), 1),),
            (Quantity("lit_share", lit, f"{form.id}, {case}"),),
        )
        if beyond:
            told += Told((), (Quantity("lit_share", Interval.exact(lit.least), f"{form.id}, {case}, at the least"),))
        asked = question.topic == "crop" or question.said("crop") is not None or asks_pixels(question)
        if not (asked or frames_named(question, knowledge.catalogue)):
            continue  # the usual frames are told in short
        told += like_line(falls, form.width_mm, form.height_mm, "the whole frame:", f"{form.id}, {case}")
        if lit.least <= FULL or asked or any(name == "1:1" for name, _ in shapes(form, question)):
            told += crop_lines(circle, falls, question, knowledge, case)
    answer = "; ".join(heads)
    head = f"{words[:1].upper()}{words[1:]}{shifted}: {answer + ': ' if answer else ''}image circle {size}{typical}."
    return Told((Line("head", head),)) + told, unsure


def _shift(question: Question) -> tuple[float, float, str]:
    """How far the frame is shifted off the circle's middle: along the long side unless up or down is said."""
    by = number(question, "shift")
    if by is None:
        return 0.0, 0.0, ""
    upright = mentions(question, "up-or-down")
    return (
        (0.0, by, f", shifted {trimmed(by, 2)} mm up")
        if upright
        else (by, 0.0, f", shifted {trimmed(by, 2)} mm sideways")
    )


def _short(lit: Interval, form: Format) -> str:
    if lit.least > FULL:
        return f"covers {form.name}"
    depends = f"may or may not cover {form.name}, that depends on the lens"
    return depends if lit.greatest > FULL else f"does not cover {form.name}"


def _verdict(lit: Interval, falls: Falls, shifted: str, beyond: str) -> str:
    form = falls.form
    reach = 2 * hypot(form.width_mm / 2 + falls.right, form.height_mm / 2 + falls.up)
    need = f"{form.name}{shifted} needs {trimmed(reach, 2)} mm"
    if lit.least > FULL:
        return f"{need}: yes, it covers, 100 % is lit"
    if beyond:
        return (
            f"{need}: maybe not, at least {percent(lit.least)} is lit; a circle larger than {beyond} lights the corners"
        )
    share = ranged(lit, percent)
    if lit.greatest > FULL:
        return f"{need}: maybe not, {share} is lit, the corners may go dark"
    if lit.nominal > 0.9:
        return f"{need}: nearly, {share} is lit, the corners go dark"
    return f"{need}: no, only {share} is lit, with black corners round a disc"
