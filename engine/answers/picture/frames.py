"""The frames that a question is about: those named, those told by their sides, those of the bodies, else the usual."""

from __future__ import annotations

import re

from engine.answers.parts.said import mentions, named, numbers
from engine.answers.picture.frame_modes import modes_told
from engine.facts.basis import Basis
from engine.facts.catalogue import Catalogue
from engine.facts.records import Format
from grammar.questions import Question, Thing

FULL = "35mm-full-frame"
CROPPED = ("aps-c-1.5", "aps-c-1.6", "four-thirds", "1-inch-type")
SAME_CROP = 0.03  # of its factor, by which a frame goes by a usual name
SAME_FRAME = 0.06  # and by which a word for it may still mean that frame
USUAL_FRAMES = ("four-thirds", "aps-c-1.5", "35mm-full-frame")
ENLARGER = "enlarger"  # the kind of lens
TOLD = Basis("own-measured", ("asked",))
SAME_MM = 0.01  # a frame told whose sides are those of a format goes by its name
ROUNDED_MM = 0.5  # and by which they may be where it is named by whole ones


def frames_of(question: Question, facts: Catalogue, modes: bool = False) -> list[Format]:
    """The formats that the question names, else those of its bodies, else the usual ones.

    `modes`: with the crop modes that a body of the gear file records in.
    """
    kept = frames_named(question, facts, modes)
    return kept or [facts.formats[name] for name in USUAL_FRAMES]


def frames_named(question: Question, facts: Catalogue, modes: bool = False) -> list[Format]:
    """The same without the usual ones: nothing where the question names no area."""
    told = _told(question, facts) or [facts.formats[name] for name in modes_told(question) if name in facts.formats]
    return told or _whole(question, facts, modes)


def frames_judged(question: Question, facts: Catalogue) -> list[Format]:
    """The frames that what is forgiven goes by: those named, else what the lens was made for, then the usual ones."""
    named = frames_named(question, facts)
    if named:
        return named
    mounts = [facts.mounts.get(lens.ids[0]) for lens in question.lenses if lens.ids]
    ids = [lens.format for lens in question.lenses if lens.format]
    ids = ids or [mount.format for mount in mounts if mount is not None and mount.format]
    made_for = [facts.formats[name] for name in dict.fromkeys(ids) if name in facts.formats]
    return list(dict.fromkeys([*made_for, *frames_of(question, facts)]))


def whole_of(question: Question, form: Format, facts: Catalogue) -> Format:
    """The whole frame that this one is a part of by a mode or a crop told; the same where it is the whole."""
    modes = modes_told(question)
    if not modes:
        larger = _larger(frames_named(question, facts), form)
        return max(larger, key=lambda one: one.diagonal_mm, default=form)
    rest = question.with_(things=tuple(thing for thing in question.things if thing.id not in modes))
    named = _told(question, facts) or _whole(rest, facts, modes=False)
    # of the frames that bodies of a mount have it is the smallest that holds the mode
    return min(_larger(named, form), key=lambda one: one.diagonal_mm, default=form)


def _larger(frames: list[Format], form: Format) -> list[Format]:
    return [one for one in frames if one.diagonal_mm > form.diagonal_mm + SAME_MM]


def _whole(question: Question, facts: Catalogue, modes: bool) -> list[Format]:
    ids = [*named(question.things, "format")]
    open_yet = [thing for thing in question.bodies if thing.kind == "mount"] if not ids else []
    for thing in question.bodies:
        own = _of_body(thing, facts, modes)
        ids += own
        open_yet = [one for one in open_yet if one is not thing or not own]
    if not ids or open_yet:  # 'on an L body and on an APS-C one on E': of the first its mount tells
        # of what a letter may mean the likeliest is taken, as in the chain
        meant = dict.fromkeys(thing.id or "" for thing in open_yet)
        for mount in (facts.mounts[id_] for id_ in meant if id_ in facts.mounts):
            ids += [mount.format] if mount.format else []
            if mount.smallest_format:
                ids.append(mount.smallest_format)
    if not ids and not question.bodies:
        ids += [thing.format for thing in question.adapters if thing.format]  # 'on APS-C by some ring'
        # 'a 105 enlarger lens for 6x9': its circle goes by its focal length, the format is what it shall cover
        ids += [lens.format for lens in question.lenses if lens.format and lens.lens_kind == ENLARGER]
    forms = [facts.formats[name] for name in dict.fromkeys(ids) if name in facts.formats]
    return [_by_its_crop(form, question, facts) for form in forms] or _by_crop(question, facts)


def _by_its_crop(form: Format, question: Question, facts: Catalogue) -> Format:
    """'crop sensor 1.6': which of the usual small frames a word for them means, a crop factor beside it tells."""
    told = numbers(question, "crop")
    if len(told) != 1 or question.bodies or form.id not in CROPPED or ":" in (question.said("crop") or ""):
        return form
    full, factor = facts.formats[FULL], told[0]
    usual = min(
        (facts.formats[name] for name in CROPPED), key=lambda one: abs(full.diagonal_mm / one.diagonal_mm / factor - 1)
    )
    near = all(abs(full.diagonal_mm / one.diagonal_mm / factor - 1) < SAME_FRAME for one in (form, usual))
    return usual if near else form


def _by_crop(question: Question, facts: Catalogue) -> list[Format]:
    """'85 f2, crop 1.5': the frame that a crop factor alone tells, of full frame's shape; a usual one by its name."""
    told = numbers(question, "crop")
    if len(told) != 1 or told[0] <= 1 or ":" in (question.said("crop") or "") or mentions(question, "further-crop"):
        return []
    full, factor = facts.formats[FULL], told[0]
    for usual in (facts.formats[name] for name in CROPPED):
        if abs(full.diagonal_mm / usual.diagonal_mm / factor - 1) < SAME_CROP:
            return [usual]
    wide, high = full.width_mm / factor, full.height_mm / factor
    return [Format(f"crop {factor:g}", f"a {factor:g}x crop", wide, high, TOLD)]


def _of_body(thing: Thing, facts: Catalogue, modes: bool) -> list[str]:
    if thing.format is not None:
        return [thing.format]
    if thing.kind != "body" or thing.id not in facts.bodies:
        return []
    body = facts.bodies[thing.id or ""]
    return [name for name in (body.format, *(body.crops if modes else ())) if name]


def _told(question: Question, facts: Catalogue) -> list[Format]:
    """Frames told by their sides: '12.5 x 7 mm'. One that has the sides of a format goes by its name."""
    sides = re.findall(r"([\d.]+) x ([\d.]+) mm", question.said("area") or "")
    told = [_by_sides(max(pair), min(pair), facts) for pair in ((float(one), float(other)) for one, other in sides)]
    return told or [_by_diagonal(one, facts) for one in numbers(question, "diagonal")]


def _by_diagonal(diagonal: float, facts: Catalogue) -> Format:
    """A frame of which the diagonal alone is told: of full frame's shape."""
    full = facts.formats[FULL]
    share = diagonal / full.diagonal_mm
    name = f"a 3:2 frame of {diagonal:g} mm diagonal"
    return Format(f"diagonal {diagonal:g}", name, full.width_mm * share, full.height_mm * share, TOLD)


def _by_sides(wide: float, high: float, facts: Catalogue) -> Format:
    """The format of these sides: first one that is named by them, rounded as they are, '44 by 33'."""
    sides = f"{wide:g}x{high:g}"
    for form in facts.formats.values():
        rounded = max(abs(form.width_mm - wide), abs(form.height_mm - high)) <= ROUNDED_MM
        if rounded and sides in (form.name, *form.aliases):  # '12x9' are centimetres of a plate
            return form
    for form in facts.formats.values():
        if abs(form.width_mm - wide) <= SAME_MM and abs(form.height_mm - high) <= SAME_MM:
            return form
    return Format(f"told {wide:g}x{high:g}", f"the {wide:g} x {high:g} mm frame", wide, high, TOLD)
