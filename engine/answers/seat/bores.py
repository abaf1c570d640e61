"""The bore of a cup that a barrel goes into, the wall that the throat leaves for it, and whether it goes through."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import ANSWERED, Answer, Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import Missing, body_side
from engine.answers.parts.said import lengths_of_pieces, mentions, number, numbers
from engine.answers.parts.usual_mounts import PLAIN, PROJECTOR
from engine.answers.parts.wording import listed, small_mm, trimmed
from engine.answers.seat.open_lens import MEASURE
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from grammar.questions import Question, Thing

_BORED: Final = ("sleeve", "bored-for", "goes-through")  # keys of phrases for what a barrel slides into
SLIDES: Final = (
    "a sliding fit. Slit it and clamp it, or hold the barrel by nylon-tipped grub screws; slide it to set infinity"
)
_TUBE: Final = "extension-tube"
_CUP: Final = "recessed"
_DEEPEST: Final = "deepest-cup"  # of the facts: what is told longer is how wide the cup is
NEAR_MM = 6.0  # widths that are farther from the opening are of other things


def bore_for(question: Question, knowledge: Knowledge) -> Told:
    """The bore of a cup or a sleeve for a barrel, and what wall the throat leaves."""
    named = named_barrel(question, knowledge)
    if named is None and any(lens.lens_kind == PROJECTOR for lens in question.lenses):
        named = number(question, "barrel", "numbers")
    barrel = number(question, "barrel") or (named if mentions(question, *_BORED) else None)
    if barrel is None:
        return _any_of(question, knowledge) if mentions(question, *_BORED) else Told()
    plain = any(_widths(lens, knowledge) for lens in question.lenses)
    slides = (
        named is not None or plain or (mentions(question, *_BORED) and not any(lens.ids for lens in question.lenses))
    )
    bore = barrel + knowledge.catalogue.assumptions["sleeve-play" if slides else "cup-play"].value
    digits = 2 if slides else 1
    text = (
        f"{'Sleeve' if slides else 'Cup'} bore {trimmed(bore.least, digits)} to {trimmed(bore.greatest, digits)} mm"
        f" for a {trimmed(barrel, digits)} mm barrel, "
    )
    text += SLIDES if slides else "over its full depth"
    body = body_side(question.body, knowledge.catalogue)
    if not isinstance(body, Missing) and is_known(body.mount.throat_mm):
        wall = (body.mount.throat_mm.nominal - bore.nominal) / 2
        throat = f"the throat of {trimmed(body.mount.throat_mm.nominal, 1)} mm"
        room = f"leaves a wall of {trimmed(wall, 1)} mm" if wall > 0 else "is too narrow for it: it ends before it"
        text += f"; {throat} {room}"
    return Told((Line("head", f"{text}."),), (Quantity("bore_mm", bore),))


def tube_for(question: Question, knowledge: Knowledge) -> Told:
    """How long the tube before a plain barrel must be, where that is asked and its image was not measured yet."""
    body = body_side(question.body, knowledge.catalogue)
    asked = any(one.piece == _TUBE and one.thickness_mm is None for one in question.adapters)
    if isinstance(body, Missing) or not asked or number(question, "flange_to_image") is not None:
        return Told()
    register = body.mount.register_mm
    if not is_known(register):
        return Told()
    text = (
        f"Tube and clamp together: from where the barrel is held to the image of a far window, less the"
        f" {small_mm(register.nominal)} of the body. Measure that on paper first, in the hand: no two such"
        " barrels are alike. A plain barrel slides, so a tube a little too short is right, never one too long."
    )
    return Told((Line("head", text), Line("ask", MEASURE, wants="flange_to_image")))


def _any_of(question: Question, knowledge: Knowledge) -> Told:
    """A barrel told by a name that several widths carry: what they are, and what the bore is more by."""
    widths = sorted({width for thing in question.lenses for width in _widths(thing, knowledge)})
    if len(widths) < 2:
        return Told()
    play = knowledge.catalogue.assumptions["sleeve-play"].value
    text = (
        f"Such barrels are {listed([trimmed(one, 2) for one in widths], 'or')} mm wide. The sleeve's bore is"
        f" {trimmed(play.least, 2)} to {trimmed(play.greatest, 2)} mm more, {SLIDES}."
    )
    ask = Line("ask", "How wide is the barrel, by caliper, where the sleeve is to hold it?", wants="barrel")
    return Told((Line("head", text), ask))


def _widths(thing: Thing, knowledge: Knowledge) -> tuple[float, ...]:
    """Of the plain barrels that a name stands for, in mm."""
    mounts = [mount for id_ in thing.ids if (mount := knowledge.catalogue.mounts.get(id_)) is not None]
    return tuple(one.throat_mm.nominal for one in mounts if one.coupling in PLAIN and is_known(one.throat_mm))


def named_barrel(question: Question, knowledge: Knowledge) -> float | None:
    """The width of a barrel that was told by its name, in mm."""
    mounts = knowledge.catalogue.mounts
    told = [_widths(thing, knowledge) for thing in question.lenses]
    widths = [row[0] for row in told if len(set(row)) == 1]
    if any(told):
        return widths[0] if len(widths) == 1 else None
    thrown = {lens.focal_length_mm for lens in question.lenses if lens.lens_kind == PROJECTOR}
    plain = [one.throat_mm for one in mounts.values() if one.coupling in PLAIN]
    # 'for my 42.5 mm projector lens': no lens has a focal length to the tenth of the width of a barrel
    return next((w.nominal for w in plain if is_known(w) and w.nominal in thrown and w.nominal % 1), None)


def with_going_through(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """Whether what is so wide goes through the opening told, in place of the answer; both were measured."""
    cups = [one.thickness_mm[0] for one in question.adapters if one.piece == _CUP and one.thickness_mm]
    deepest = knowledge.catalogue.assumptions[_DEEPEST].value.greatest
    wide = [size for size in cups if size > deepest]  # 'a 31 mm barrel in a 30 mm cup'
    opening = number(question, "throat", "bore") or (wide[0] if len(wide) == 1 else None)
    across = (*numbers(question, "barrel", "width", "thread"), *(low for low, _ in lengths_of_pieces(question)))
    told = [one for one in across if opening is not None and one != opening and abs(one - opening) <= NEAR_MM]
    if opening is None or len(told) != 1:
        return answer
    left = round(opening - told[0], 4)
    if left > 0:
        text = f"Yes: {small_mm(told[0])} across goes through {small_mm(opening)}, with {small_mm(left)} to spare"
        text += f", {small_mm(left / 2)} on each side. Measure the widest place of it, and what stands out behind."
    else:
        text = (
            f"No: {small_mm(told[0])} across does not go through {small_mm(opening)}: it is {small_mm(-left)} too wide"
        )
        text += ". Do not force it."
    rows = (Quantity("clearance_mm", Interval.exact(left), "across the opening"),)
    return replace(answer, status=ANSWERED, lines=(Line("head", text),), quantities=rows, chains=None, ring=None)
