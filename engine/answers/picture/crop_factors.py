"""Crop factors: of the formats that a question names, and of a crop that is told, alone or on top of a format."""

from __future__ import annotations

from math import prod

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import focals, interval, mentions, number_beside, numbers
from engine.answers.parts.wording import trimmed
from engine.answers.picture.frames import SAME_MM, USUAL_FRAMES, frames_named, frames_of
from engine.base.compact import compact, replace
from engine.base.interval import Interval, is_known
from engine.facts.catalogue import Catalogue
from engine.facts.records import Format
from engine.physics import coverage
from grammar.questions import Question, Thing

FULL_FRAMES = frozenset({"35mm-full-frame", "35mm-ff-digital", "24x36"})
HOST = "mirrorless"
NEAR_VIEW = 0.05  # share by which an equivalent is told rounded
FURTHER = "further "  # how a crop begins that a talk told to come on top of the frame
ON_TOP = " on top"  # and how one ends that was said to do so, however strong it is
_MOST_TRIMMED = 4.0  # times, by a mode
_ON_TOP = "another-crop"  # of what is mentioned
NEAR_OWN = 0.08  # a crop within this share of the format's own is that, told once more


@compact
class Crop:
    """A crop factor by diagonal and, for a format, by width, and what it is called."""

    name: str
    by_diagonal: float
    by_width: float | None = None


def crops_of(question: Question, knowledge: Knowledge) -> list[Crop]:
    """The crop told, on top of that of a format named; else those of the formats named, else of the usual ones."""
    told = numbers(question, "crop")
    if told and ":" not in (question.said("crop") or ""):
        return [_cropped(question, prod(told), knowledge)]
    circle = interval(question, "circle")
    clean = _clean_crops(question, circle, knowledge)
    if clean:
        return clean
    frames = frames_named(question, knowledge.catalogue)
    compared = not question.bodies and all(form.id in FULL_FRAMES for form in frames)
    if circle is not None and circle.least > 0 and compared:
        # cropped to what is lit, whatever it is put on
        return [Crop(f"its {trimmed(circle.nominal, 1)} mm circle", coverage.FULL_FRAME_DIAGONAL_MM / circle.nominal)]
    frames = frames_of(question, knowledge.catalogue)
    if len(frames) == 1:  # a crop body of a mount with no such frame: 'an MFT crop body'
        bodies = tuple(_as_built(body, knowledge.catalogue) for body in question.bodies)
        frames = frames_of(question.with_(bodies=bodies), knowledge.catalogue) if bodies != question.bodies else frames
    own = _of_lens(question, knowledge)
    if own:
        return [crop_of(form) for form in own]
    if question.bodies and all(form.id in FULL_FRAMES for form in frames):
        # 'on MFT, in full frame terms': full frame is what it is compared with
        bodies = tuple(_as_built(body, knowledge.catalogue) for body in question.bodies)
        frames = frames_of(question.with_(things=(), bodies=bodies), knowledge.catalogue)
    sized = question.said("area") or question.said("diagonal")
    named = bool(question.bodies or sized) or any(thing.kind == "format" for thing in question.things)
    if named and any(body.id in knowledge.catalogue.mounts and not body.format for body in question.bodies):
        # bodies of that mount have the one or the other; of several bodies each has its own
        both = not question.frames and (frames[0].id in FULL_FRAMES or len(question.bodies) > 1)
        return [crop_of(form) for form in (frames if both else frames[:1])]
    small = [form for form in frames if form.id not in FULL_FRAMES]
    if not named and not focals(question):
        return []
    if not named:
        small = [knowledge.catalogue.formats[name] for name in (*USUAL_FRAMES, "aps-c-1.6")]
    return [crop_of(form) for form in small or frames]


def is_view(focal_mm: float, told_mm: float, crop: float) -> bool:
    """Whether a length told is only what the lens frames like: its focal length times the crop, as it is rounded."""
    return focal_mm > 0 and crop > 1 + NEAR_VIEW and abs(told_mm / focal_mm / crop - 1) <= NEAR_VIEW


def _as_built(body: Thing, facts: Catalogue) -> Thing:
    """A body without the format told of it where its mount is built with none so large: 'MFT full frame'."""
    mount, told = facts.mounts.get(body.id or ""), facts.formats.get(body.format or "")
    largest = facts.formats.get(mount.format or "") if mount is not None else None
    too_large = largest is not None and told is not None and told.diagonal_mm > largest.diagonal_mm + SAME_MM
    return replace(body, format=None) if too_large else body


def _clean_crops(question: Question, circle: Interval | None, knowledge: Knowledge) -> list[Crop]:
    """Of a shape told beside a circle the largest clean picture: the crop that it makes of the frame."""
    out: list[Crop] = []
    for form in frames_named(question, knowledge.catalogue)[:1]:
        for name, aspect in shapes_told(question):
            lit = circle if circle is not None else Interval.exact(form.diagonal_mm)
            wide, high = coverage.largest_crop_mm(lit, form.width_mm, form.height_mm, aspect)
            crop, by_width = coverage.crop_factor(wide, high), coverage.crop_factor_by_width(wide)
            if is_known(crop) and is_known(by_width):
                part = f"clean {name} of its circle" if circle is not None else f"{name} on {form.name}"
                out.append(Crop(part, crop.greatest, by_width.greatest))
    return out


def shapes_told(question: Question) -> list[tuple[str, float]]:
    """Shapes of a picture that are told by two numbers, or as a square, as (name, width over height)."""
    told = [said.partition(":") for said in (question.said("crop") or "").split(", ") if ":" in said]
    shapes = [(f"{one}:{other}", float(one) / float(other)) for one, _, other in told]
    square = mentions(question, "square") and not mentions(question, "squared")
    return [*shapes, ("1:1", 1.0)] if square else shapes


def _of_lens(question: Question, knowledge: Knowledge) -> list[Format]:
    """'a half-frame 38, what is that on full frame': the frame that the lens is made for, where no other is told.

    Full frame by itself is what it is compared with. A lens for a larger format on it is adapted, and a body that is
    told by its mount is what the lens goes on: there the body's frame counts.
    """
    formats = knowledge.catalogue.formats
    frames = frames_named(question, knowledge.catalogue)
    ids = dict.fromkeys(lens.format for lens in question.lenses if lens.format in formats)
    made_for = [formats[name] for name in ids if name and name not in FULL_FRAMES]
    if not frames:
        return made_for
    compared = all(body.kind == "format" for body in question.bodies) and all(form.id in FULL_FRAMES for form in frames)
    least = min(form.diagonal_mm for form in frames)
    return [form for form in made_for if compared and form.diagonal_mm < least]


def _cropped(question: Question, told: float, knowledge: Knowledge) -> Crop:
    """The crop told; where it is not that of the format named itself, it comes on top of that."""
    facts = knowledge.catalogue
    # '25 mm, MFT, crops another 1.3': a mount of modern bodies told beside the lens is that of its body
    mounts = [(lens, facts.mounts.get(lens.id or "")) for lens in question.lenses]
    hosts = tuple(lens for lens, mount in mounts if mount is not None and mount.kind == HOST)
    whole = question.without("crop") if mentions(question, "punched-in") else question
    forms = frames_named(whole, facts) or frames_named(whole.with_(bodies=hosts), facts)
    forms = forms or [facts.formats[lens.format or ""] for lens in question.lenses if lens.format in facts.formats]
    largest = max(forms, key=lambda form: form.diagonal_mm) if forms else None
    now = question.follows and number_beside(question, "on-a-crop") == told and not mentions(question, "further-crop")
    if largest is None or is_own(largest, told, question) or now:  # 'now on 1.6x' is another body
        return Crop(f"{told:g}x crop", told)
    own, further = crop_of(largest), beyond_own(largest, told, question)
    assert own.by_width is not None
    return Crop(f"{own.name} cropped {further:.3g}x", own.by_diagonal * further, own.by_width * further)


def with_trim(question: Question) -> Question:
    """'full frame, trims 4k by a further 1.3': the question with that factor as a crop on top of the frame told."""
    by = number_beside(question, "trimmed-by")
    framed = question.bodies or question.frames
    if by is None or not framed or question.said("crop") is not None or not 1 < by <= _MOST_TRIMMED:
        return question
    return question.with_(values=(*question.rest("numbers"), ("crop", f"{FURTHER}{by:g}{ON_TOP}")))


def with_crop_on_top(question: Question) -> Question:
    """The question with a crop that was said to come on top of the frame told so, as the next turns lean on it."""
    said = question.said("crop")
    if said is None or ":" in said or said.startswith(FURTHER) or not mentions(question, "further-crop"):
        return question
    end = ON_TOP if mentions(question, _ON_TOP) else ""
    return question.with_(values=(*question.rest("crop"), ("crop", f"{FURTHER}{said}{end}")))


def is_own(form: Format, told: float, question: Question) -> bool:
    """Whether a crop factor told is that of the format itself, said once more, and nothing that comes on top of it."""
    if mentions(question, "punched-in"):
        return False  # what is done in the edit comes on top of any frame
    on_top = mentions(question, "further-crop") or (question.said("crop") or "").startswith(FURTHER)
    return abs(told / crop_of(form).by_diagonal - 1) < NEAR_OWN and not on_top


def beyond_own(form: Format, told: float, question: Question) -> float:
    """By how much a crop told cuts the format itself: '2.3x in 4K' on a small sensor counts from full frame.

    What is less than the format's own factor, or said to come on top, is of the format.
    """
    if is_own(form, told, question):
        return 1.0
    own = crop_of(form).by_diagonal
    on_top = mentions(question, _ON_TOP) or (question.said("crop") or "").endswith(ON_TOP)
    in_all = own > 1 + NEAR_OWN and told > own * (1 + NEAR_OWN) and not on_top
    return told / own if in_all else told


def crop_factors(question: Question, knowledge: Knowledge) -> Told:
    """The crop factor of each format named, by diagonal and by width."""
    told = Told()
    for crop in crops_of(question, knowledge):
        told += crop_factor_of(crop)
    return told


def crop_of(form: Format) -> Crop:
    width, height = Interval.exact(form.width_mm), Interval.exact(form.height_mm)
    diagonal, wide = coverage.crop_factor(width, height), coverage.crop_factor_by_width(width)
    assert is_known(diagonal)
    assert is_known(wide)
    return Crop(form.name, diagonal.nominal, wide.nominal)


def crop_factor_of(crop: Crop) -> Told:
    """The crop factor by diagonal, and by width where the shape is another."""
    rows = [Quantity("crop_factor", Interval.exact(crop.by_diagonal), crop.name)]
    text = f"{crop.name}: crop factor {trimmed(crop.by_diagonal, 2)} by diagonal"
    if crop.by_width is not None:
        rows.append(Quantity("crop_factor_by_width", Interval.exact(crop.by_width), crop.name))
        text += f", {trimmed(crop.by_width, 2)} by width"
    return Told((Line("fact", text, 1),), tuple(rows))


def net_crops(crops: list[Crop], factor: float | None) -> Told:
    """What is left of each crop behind glass of a factor: a reducer gives some of the view back."""
    told = Told()
    for crop in crops if factor is not None else []:
        net = crop.by_diagonal * (factor or 1.0)
        case = f"{crop.name} with {factor:g}x"
        text = f"{case}: net crop factor {trimmed(net, 2)}, {trimmed(crop.by_diagonal, 2)} x {factor:g}"
        told += Told((Line("fact", text, 1),), (Quantity("crop_factor", Interval.exact(net), case),))
    return told


def exposure_stays(at: float | None) -> Told:
    """That a crop changes nothing of the exposure; `at`: the f-number that counts."""
    stop = f": f/{trimmed(at, 2)} stays f/{trimmed(at, 2)}" if at is not None else ""
    text = f"No crop changes the exposure{stop}, at the same shutter, ISO and ND: only view and depth of field."
    return Told((Line("head", text),))
