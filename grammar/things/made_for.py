"""Which of the formats told is what the lens was made for, and which is to be lit by it."""

from __future__ import annotations

from typing import Final

from engine.base.compact import replace
from grammar.things.cast import Cast
from grammar.things.casting import Part
from grammar.things.phrases import TOWARDS, Noun
from grammar.words.groups import FORMAT_HEADED

_MADE: Final = "made-for"
_FOR: Final = "for"
_MADE_FOR: Final = frozenset(["for", "from", "of", _MADE])
_SIZED: Final = frozenset(
    ["inch", "super", "tube", "tv", "regular", "standard 8"]
)  # in names of formats that go by a size
_BODILY: Final = frozenset(["sensor", "chip"])  # and in those of what only a camera has
_NEAR: Final = 3  # columns
_IT_IS: Final = "it-is"  # a cue
_LIT: Final = frozenset(["cover", "vignette", "image-circle", "frame-filling"])  # cues of what is to be lit


def lens_by_its_frame(cast: Cast) -> None:
    """'a 210 for 13x18, on 44x33': beside what a lens is put on, the frame that it is for is what it was made for."""
    lens = cast.lenses[0] if len(cast.lenses) == 1 else None
    if lens is None or lens.formats:
        return
    # 'marked for 1 inch tv cameras' tells of cameras by their format alone
    cameras = [part for part in cast.bodies if not part.has_mount and part.noun.role in (_FOR, _MADE)]
    told = [part for part in (*cast.frames, *cameras) if part.formats]
    made_for = [part for part in told if _is_made_for(part, cast)]
    if len(made_for) != 1:
        return
    lit = [part for part in (*cast.frames, *cast.bodies) if part is not made_for[0] and _is_lit(part, made_for[0])]
    towards = any(part.noun.role in TOWARDS for part in lit)
    towards = towards or _stands_behind(made_for[0], lens)
    if not lit or not (towards or cast.told & _LIT or made_for[0].noun.role == _MADE):
        return
    lens.formats = list(made_for[0].formats)
    cast.frames = [part for part in cast.frames if part is not made_for[0]]
    cast.bodies = [part for part in cast.bodies if part is not made_for[0]]


def lens_of_its_frame(cast: Cast) -> None:
    """'its made for 1/2 inch, our sensor 2/3': only lenses are made for a frame, so one is told by it.

    Of 'made for super 16, full frame sensor', or 'it's for super 35, sensor is full frame', the first is the lens's.
    """
    framed = [part for part in cast.frames if part.formats]
    beside = [part for part in framed[1:] if part.noun.join == "," or part.noun.told]
    told = _IT_IS in cast.told and bool(beside)
    made_for = [part for part in framed if part.noun.role == _MADE or (told and part.noun.role == _FOR)]
    made_for = [part for part in made_for if part not in beside]
    if cast.lenses or cast.pieces or len(made_for) != 1:
        return
    frame = made_for[0]
    if any(part.noun.column < frame.noun.column for part in cast.bodies):
        return  # 'a camera built for super 16'
    cast.lenses.append(Part("lens", replace(frame.noun, role=""), formats=list(frame.formats)))
    cast.frames = [part for part in cast.frames if part is not frame]


def lens_by_its_camera(cast: Cast) -> None:
    """'the Super 8 camera had a C zoom, on my 1-mount body': the camera told by its film alone is where it came from.

    Its frame said once more is not to be lit either.
    """
    lens = cast.lenses[0] if len(cast.lenses) == 1 else None
    first, other = cast.bodies if len(cast.bodies) == 2 else (None, None)
    if lens is None or first is None or other is None or lens.formats or not cast.told & _LIT:
        return
    came = first.formats and not (first.has_mount or first.noun.role) and first.noun.column < lens.noun.column
    if not came or not other.has_mount or other.noun.column < lens.noun.column:
        return
    lens.formats, lens.by_camera = list(first.formats), True
    ids = first.formats[0].ids
    cast.bodies.remove(first)
    cast.frames = [part for part in cast.frames if not part.formats or part.formats[0].ids != ids or part.noun.role]


def _is_lit(part: Part, frame: Part) -> bool:
    """Whether a lens is put on it, and it is of no frame told right beside it: 'an E body, APS-C'."""
    own = any(one in frame.formats for one in part.formats)
    return not own and (part.sort == "frame" or part.has_mount or bool(part.formats) or part.noun.role in TOWARDS)


def frame_beside_lens(cast: Cast) -> None:
    """'a 1 inch zoom Super 35 coverage': of two formats told of one lens the last is what it is to light."""
    lens = cast.lenses[0] if len(cast.lenses) == 1 else None
    if lens is None or cast.bodies or cast.frames or not cast.told & _LIT or len(lens.formats) != 2:
        return
    first, last = lens.formats
    if first.ids[:1] != last.ids[:1]:
        lens.formats = [first]
        noun = Noun(role="on", mods=[last.as_("FORMAT")], column=last.column, text=last.text)
        cast.frames.append(Part("frame", noun, formats=[last]))


def _is_made_for(frame: Part, cast: Cast) -> bool:
    """'for 13x18', 'a 10 mm cine lens (16mm film)', and 'a 16 mm relic, 25mm, on MFT': told before what is lit."""
    if frame.noun.role in _MADE_FOR or (frame.noun.aside and not frame.noun.role):
        return True
    first = all(frame.noun.column < part.noun.column for part in (*cast.bodies, *cast.frames) if part is not frame)
    headed = frame.noun.head is not None and FORMAT_HEADED not in frame.noun.head.groups
    plain = not frame.noun.role and not headed and frame.noun.join in ("", ",")
    lens = cast.lenses[0]
    return plain and first and bool(cast.told & _LIT or _stands_behind(frame, lens))


def _stands_behind(frame: Part, lens: Part) -> bool:
    """'a 16mm C lens, 1 inch tv type, and an MFT camera': a size of film or tube right behind the lens is its own."""
    text = frame.formats[0].text.casefold()
    sized = (text[:1].isdigit() or any(word in text for word in _SIZED)) and not any(one in text for one in _BODILY)
    gap = frame.noun.column - lens.noun.column - len(lens.noun.text)
    beside = frame.noun.join == "," and not frame.noun.role and lens.has_mount and 0 < gap <= _NEAR
    return sized and beside
