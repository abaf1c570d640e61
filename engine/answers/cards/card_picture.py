"""What is left of the frame, for one card: punch-in for a clean picture, crop modes, and what it then looks like."""

from __future__ import annotations

from fractions import Fraction
from math import hypot

from engine.answers.parts.card_parts import Name, Numbers, Part, Text, known
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import percent, trimmed
from engine.answers.seat.chain_numbers import circle_of
from engine.base.interval import Interval, is_known
from engine.facts.records import Format
from engine.judging.judge import Judged
from engine.physics import coverage
from grammar.questions import Question

SHAPE = "card-timeline-shape"
WHOLE = 1.0005  # a punch-in below this is none
SQUARISH = 20  # shapes are written as ratios of whole numbers up to here


def picture_of(judged: Judged, question: Question, knowledge: Knowledge, numbers: Numbers) -> tuple[Text, ...]:
    """How much is lit, the punch-in on the timeline, and the focal length that looks alike."""
    form = judged.setup.format
    if form is None:
        return (("Frame not known: which format does the body record?",),)
    circle = circle_of(judged, knowledge.catalogue)
    shape, aspect = _shape(question, knowledge, numbers)
    if circle is None:
        ask = "Image circle not known: shoot a white wall and measure the bright disc."
        return ((ask,), *_looks_like(judged, None, shape, numbers))
    wide = min(form.width_mm, form.height_mm * aspect)
    high = wide / aspect
    crop_wide, crop_high = coverage.largest_crop_mm(circle, wide, high, aspect)
    if not (is_known(crop_wide) and is_known(crop_high)) or crop_high.least <= 0:
        return (("No clean picture is left of this circle.",),)
    enlarged = coverage.punch_in(Interval.exact(wide), Interval.exact(high), crop_wide, crop_high)
    lines: list[Text] = []
    typical = judged.trace.given["image_circle_mm"].assumed
    if not is_known(enlarged) or enlarged.greatest <= WHOLE:
        lines.append(("Lights the whole of ", Name(form.name), ", no punch-in."))
        clean = None
    else:
        # what is claimed is claimed on the least circle
        kept = Interval.exact(enlarged.greatest)
        told: list[Part] = [numbers.likeliest("punch_in", kept, percent), " on the ", *shape, " timeline"]
        at_least = Interval.exact(max(enlarged.least, 1.0))
        if percent(at_least.nominal) != percent(kept.nominal):
            told += ["; perhaps only ", numbers.likeliest("punch_in", at_least, percent, "largest circle")]
        lines.append((*told, *_pixels(judged, form, (crop_wide, crop_high), numbers), "."))
        lines += _crop_modes(judged, knowledge, circle, aspect)
        clean = crop_wide.least, crop_high.least
    if typical:
        lines.append(("Usual circle: try it on a white wall.",))
    return (*lines, *_looks_like(judged, clean, shape, numbers))


def _shape(question: Question, knowledge: Knowledge, numbers: Numbers) -> tuple[Text, float]:
    """The shape of the timeline: as told, else the usual one."""
    said = question.said("crop") or ""
    first, colon, second = said.partition(":")
    if colon:
        aspect = float(first) / float(second)
        words = said
    else:
        aspect = knowledge.catalogue.assumptions[SHAPE].value.nominal
        ratio = Fraction(aspect).limit_denominator(SQUARISH)
        words = f"{ratio.numerator}:{ratio.denominator}"
    return (numbers.likeliest("aspect", Interval.exact(aspect), lambda _: words),), aspect


def _pixels(judged: Judged, form: Format, crop: tuple[Interval, Interval], numbers: Numbers) -> Text:
    """The pixels across that are left of the least crop, where the body's are known."""
    pixels = judged.setup.body.pixels
    if pixels is None:
        return ()
    across, _ = coverage.pixels_left(pixels, form.width_mm, form.height_mm, crop[0].least, crop[1].least)
    left = numbers.likeliest("pixels_across", Interval.exact(float(across)), lambda n: f"{n:.0f}")
    return ("; ", left, " pixels across remain")


def _crop_modes(judged: Judged, knowledge: Knowledge, circle: Interval, aspect: float) -> list[Text]:
    """The crop modes of the body whose frame is lit to the corners."""
    out: list[Text] = []
    for name in judged.setup.body.crops:
        form = knowledge.catalogue.formats[name]
        wide = min(form.width_mm, form.height_mm * aspect)
        lit = coverage.lit_share(circle, Interval.exact(wide), Interval.exact(wide / aspect))
        if is_known(lit) and lit.least * WHOLE >= 1:
            out.append(("Or crop mode ", Name(form.name), ": lit to the corners."))
    return out


def _looks_like(judged: Judged, clean: tuple[float, float] | None, shape: Text, numbers: Numbers) -> tuple[Text, ...]:
    """The focal length that frames alike on full frame, of the whole frame and of what is punched in, by diagonals.

    `clean`: width and height of what is punched in, mm; None: the whole frame is kept.
    """
    trace = judged.measured_trace
    equal, focal = known(trace.value("equivalent_focal_mm")), known(trace.value("combined_focal_mm"))
    if equal is None:
        return ()
    show = lambda value: f"{trimmed(value, 0)} mm"  # noqa: E731
    told: list[Part] = ["Looks like ", numbers.told("equivalent_focal_mm", equal, show)]
    if clean is None or focal is None:
        return ((*told, " on full frame."),)
    after = focal * (coverage.FULL_FRAME_DIAGONAL_MM / hypot(*clean))
    told += [" whole, ", numbers.told("equivalent_focal_mm", after, show, "punched in"), " in the clean ", *shape]
    return ((*told, ", on full frame by diagonal."),)
