"""Whether a lens stays what it is or becomes another on a frame: 'is my 80 from a 645 a 50 or an 80 there'."""

from __future__ import annotations

import re

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import article, trimmed
from engine.answers.picture.crop_factors import FULL_FRAMES, crop_of, with_trim
from engine.base.compact import replace
from engine.base.interval import Interval
from engine.facts.catalogue import Catalogue
from grammar.questions import Question, Thing


def of_one_lens(question: Question) -> Question:
    """The question with the one lens alone, where the other length told is only what that may become."""
    first, rest = question.lenses[:1], question.lenses[1:]
    # 'is my 50 a 50 or a 75 there' tells it twice
    others = [lens for lens in rest if not (_is_bare(lens) and lens.focal_length_mm == first[0].focal_length_mm)]
    if not first or first[0].focal_length_mm is None or len(others) != 1 or not _is_bare(others[0]):
        return question
    lens, other = first[0], others[0]
    asked = lens.format is not None or mentions(question, "is-it-either")
    becomes = lens.format is not None and mentions(question, "becomes")  # 'my 75 for 6x4.5 becomes a 47'
    wider = mentions(question, "which-wider")  # 'which is more tele, 135 on APS-C or 200 on full frame' are two
    if not asked or wider or not (becomes or _stand_apart(lens, other, question.text)):
        return question
    return question.with_(lenses=(lens,))


def is_of_its_own(asked: Question, one: Question) -> bool:
    """Whether what a lens is by itself is asked: one of two lengths, on the camera it came from, what it 'becomes'."""
    lens = asked.lens
    becomes = lens is not None and lens.format is not None and mentions(asked, "becomes")
    kept = any(asked.places(key) for key in ("own-frame", "stays-itself"))
    return one is not asked or kept or (becomes and asked.said("numbers") is not None)


def _is_bare(lens: Thing) -> bool:
    return not (lens.ids or lens.format or lens.f_number or lens.lens_kind or lens.traits)


def _stand_apart(lens: Thing, other: Thing, text: str) -> bool:
    """Whether the two lengths stand on both sides of an 'or', a few words apart at most."""
    ends = f"{lens.focal_length_mm:g}", f"{other.focal_length_mm:g}"
    between = r"\s?(?:mm)?\b(?:\W+\w+){0,5}?\W+or\W+(?:\w+\W+){0,5}?"
    return any(re.search(rf"\b{a}{between}{b}\b", text, re.IGNORECASE) for a, b in (ends, ends[::-1]))


def on_its_own_frame(question: Question, facts: Catalogue) -> Told:
    """That it stays what it is, and what it is like on the frame it was made for."""
    lens = question.lens
    if lens is None or lens.focal_length_mm is None:
        return Told()
    focal = trimmed(lens.focal_length_mm, 1)
    rows = [Quantity("focal_length_mm", Interval.exact(lens.focal_length_mm), "on any frame")]
    text = f"It stays {article(focal)} {focal} mm lens: no adapter and no frame changes that."
    own = lens.kind == "mount" and mentions(question, "own-frame")
    mount = facts.mounts.get(lens.id or "") if own else None
    form = facts.formats.get(lens.format or (mount.format if mount is not None else None) or "")
    if form is not None:
        like = lens.focal_length_mm * crop_of(form).by_diagonal
        text += f" On its own {form.name} it saw like {like:.0f} mm on full frame."
        rows.append(Quantity("equivalent_focal_mm", Interval.exact(like), f"{focal} mm on {form.name}"))
    return Told((Line("head", text),), tuple(rows))


def of_its_frame_on_full(question: Question, facts: Catalogue) -> Told:
    """'105 mm of a 6x9 folder, which focal on full frame': what it saw like on the frame that it is told with."""
    lens = question.lens
    form = facts.formats.get(lens.format or "") if lens is not None else None
    asked = not question.bodies and mentions(question, "other-focal-asked")
    frames = {thing.format or thing.id for thing in question.frames} if asked else set()
    if lens is None or form is None or lens.focal_length_mm is None or form.id in FULL_FRAMES:
        return Told()
    if not frames or not frames <= {*FULL_FRAMES} or len(question.lenses) > 1:
        return Told()
    like, focal = lens.focal_length_mm * crop_of(form).by_diagonal, trimmed(lens.focal_length_mm, 1)
    text = f"On {form.name} {focal} mm saw like {like:.0f} mm on full frame; there it is {focal} mm."
    case = f"{focal} mm on {form.name}"
    return Told((Line("head", text),), (Quantity("equivalent_focal_mm", Interval.exact(like), case),))


def set_against_full(question: Question, facts: Catalogue) -> Question:
    """'75 mm on the 44x33 body is like what on a plain full frame body': that is no frame of a body of such a mount.

    With the factor of a mode that is said to trim the frame, as a crop.
    """
    question = with_trim(question)
    mounts = [mount for body in question.bodies if (mount := facts.mounts.get(body.id or "")) is not None]
    form = facts.formats.get(mounts[0].format or "") if len(mounts) == 1 else None
    full = form is None or mounts[0].format != mounts[0].smallest_format or form.id in FULL_FRAMES
    if full or question.topic != "match" or mentions(question, "crop"):
        return question
    bodies = tuple(replace(body, format=None) if body.format in FULL_FRAMES else body for body in question.bodies)
    on = tuple(body for body in bodies if body.id in facts.mounts)
    told = tuple(
        replace(body, kind="format", ids=(body.format,))
        for body in question.bodies
        if body.format in FULL_FRAMES and body.id not in facts.mounts
    )
    return question.with_(bodies=on, things=(*question.things, *told)) if len(on) == 1 else question
