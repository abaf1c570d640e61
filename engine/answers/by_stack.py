"""A lens that is focused by what stands behind it: from flange to image, the body's register and the pieces told.

An enlarger lens on a helicoid or bellows moves whole: x = register + pieces - flange to image. Source: lengths add.
"""

from __future__ import annotations

from engine.answers.close.close_rows import Shown, at_extension
from engine.answers.close.drawn import BELLOWS, draws
from engine.answers.howto import how_to
from engine.answers.parts.answer import Answer, Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.near_enough import right_seat_mm
from engine.answers.parts.resolve import BodySide, body_side
from engine.answers.parts.said import number, numbers
from engine.answers.parts.wording import listed, small_mm, times, trimmed
from engine.answers.seat.distances import Distances, distances_of
from engine.answers.seat.open_lens import MEASURE, usual_flange_to_image
from engine.base.compact import compact, replace
from engine.base.interval import Interval, is_known
from engine.facts.kinds import DRAWN_OUT
from grammar.questions import Question, Thing
from grammar.turns.spans import span_of

SPACER = "extension-tube"
PLAIN = "plain"
NOTHING = "it focuses on nothing"
OTHERS = ("length", "thickness")  # keys of further plates and rings that belong to no piece named


@compact
class _Stack:
    """A lens held by what is drawn out. `seated`: how far that is drawn out at infinity; `others`: rings beside it."""

    lens: Distances
    body: BodySide
    drawn: Thing
    ends: tuple[float, float]
    away: Interval
    measured: float | None
    register_mm: float
    others: float
    seated: Interval


def _stack_told(question: Question, knowledge: Knowledge) -> _Stack | None:
    """What holds the lens by so much; None where lens, body or draw is not told so far."""
    pieces = (_with_seat(_with_length(one, knowledge), knowledge) for one in question.adapters)
    question = question.with_(adapters=tuple(pieces))
    thing, body = question.lens, body_side(question.body, knowledge.catalogue)
    drawn = _drawn(question)
    if thing is None or drawn is None or drawn.thickness_mm is None or not isinstance(body, BodySide):
        return None
    register, lens = body.mount.register_mm, distances_of(thing, knowledge.catalogue)
    measured = number(question, "flange_to_image")
    away = Interval.exact(measured) if measured else usual_flange_to_image(thing, knowledge)
    low, high = drawn.thickness_mm
    held = measured or low < high or (_is_set(drawn) and drawn.piece == BELLOWS)
    if lens is None or away is None or not is_known(register) or not held:
        return None
    others = sum(one.thickness_mm[1] for one in question.adapters if one is not drawn and one.thickness_mm is not None)
    others += sum(numbers(question, *OTHERS))
    seated = away - Interval.exact(register.nominal + others)
    return _Stack(lens, body, drawn, (low, high), away, measured, register.nominal, others, seated)


def stack_ends(question: Question, knowledge: Knowledge) -> list[tuple[str, Interval]]:
    """How far beyond infinity the lens stands at either end of the draw, in words and mm, where it is told so far."""
    stack = _stack_told(question, knowledge)
    drawn = stack.drawn if stack is not None else None
    fixed = drawn is not None and drawn.piece == SPACER  # rings of a known length, and nothing else
    if stack is None or drawn is None or not (fixed or drawn.piece == BELLOWS):
        return []
    if not (fixed or len(set(stack.ends)) > 1 or _is_set(drawn)):
        return []
    out = [(at, Interval.exact(at) - stack.seated) for at in dict.fromkeys(stack.ends)]
    within = [(_at(stack, at), x.at_least(0.0)) for at, x in out]
    return within if out[-1][1].nominal > 0 else []


def drawn_ends(question: Question, knowledge: Knowledge) -> list[tuple[str, str, Interval]]:
    """Both ends of what is drawn out, as (words, draw, mm of extension): by the stack, else the draw counts in full."""
    held = [(words, words.rpartition(" at ")[2], x) for words, x in stack_ends(question, knowledge)]
    plain = draws(question, knowledge) if not held else []
    return held or [(words, f"{trimmed(length, 2)} mm", Interval.exact(length)) for words, length in plain]


def by_stack(question: Question, shown: Shown, knowledge: Knowledge) -> Told:
    """Both ends of the draw, and the setting for infinity; nothing where lens, body or draw is not told so far."""
    stack = _stack_told(question, knowledge)
    if stack is None:
        return Told()
    lens, body, drawn, others, measured = stack.lens, stack.body, stack.drawn, stack.others, stack.measured
    away, seated, at_infinity, (low, high) = stack.away, stack.seated, stack.seated.nominal, stack.ends
    if low == high and high <= at_infinity and _is_set(drawn):
        return _too_short(high, at_infinity, drawn, right_seat_mm(knowledge.catalogue))
    if low == high and high <= at_infinity:
        return Told()  # 'it has 14 mm beyond infinity' is no length of all that holds the lens
    plain = f"{small_mm(stack.register_mm)} of body register"
    assumed = "" if measured else " (usual for such a lens, assumed)"
    setting = _infinity(at_infinity, low, high, drawn.piece or "")
    fixed = drawn.piece == SPACER
    plain += f" + {small_mm(others)} of rings" if others and not fixed else ""
    piece = _at(stack, high) if fixed else drawn.piece
    text = f"Extension is {plain} + {piece} - {small_mm(away.nominal)} from flange to image{assumed}: {setting}."
    lines = [Line("text", text)]
    rows = [Quantity("helicoid_setting_mm", Interval.exact(at_infinity), "infinity")] if at_infinity > 0 else []
    told = Told()
    for length, end in ((low, "far"), (high, "near")) if low < high else ((high, "near"),):
        x = (Interval.exact(length) - seated).at_least(0.0)
        if x.nominal > 0:
            case = _at(stack, length)
            told += at_extension(lens, x, shown, case, end=end, lead=case, level=0 if end == "near" else 1)
    asked = () if measured else (Line("ask", MEASURE, wants="flange_to_image"),)
    wanted = number(question, "magnification")
    if wanted is not None:
        told = _for_size(wanted, lens.focal.nominal, at_infinity, (low, high), drawn.piece or "") + told
    lines += [] if others else _beside(drawn, body, knowledge)
    return Told(told.lines + tuple(lines) + asked, told.quantities + tuple(rows))


def _at(stack: _Stack, length: float) -> str:
    if stack.drawn.piece == SPACER:
        return f"{small_mm(length + stack.others)} of rings"
    return f"{stack.drawn.piece} at {trimmed(length, 1)} mm"


def _beside(drawn: Thing, body: BodySide, knowledge: Knowledge) -> list[Line]:
    """The rings that join what is drawn out to the body, where none was told: each counts in full."""
    found = [
        f"{one.name} {small_mm(seat.nominal)}"
        for one in knowledge.catalogue.adapters.values()
        if one.rear == body.mount.id and one.kind == PLAIN and one.front in (drawn.rear or drawn.front)
        and one.thickness_mm.is_fixed and is_known(seat := one.thickness_mm.shortest)
    ]  # fmt: skip
    if not found:
        return []
    text = f"Reckoned without a ring between {drawn.piece} and body. One that is there takes its whole seat off the "
    return [Line("note", f"{text}setting: {listed(found, 'or')}.")]


def _with_seat(thing: Thing, knowledge: Knowledge) -> Thing:
    """'the M42 to E ring': a ring told by its two ends alone is as thick as it is usually cut."""
    if thing.thickness_mm is not None or not (thing.front and thing.rear):
        return thing
    for one in knowledge.catalogue.adapters.values():
        cut = one.front == thing.front[0] and one.rear == thing.rear[0] and one.seat_basis == "derived"
        if cut and one.kind == PLAIN and one.thickness_mm.is_fixed and is_known(seat := one.thickness_mm.shortest):
            return replace(thing, thickness_mm=(seat.nominal, seat.nominal))
    return thing


def _is_set(piece: Thing) -> bool:
    """Whether it is set to a length now, and could be set otherwise."""
    span = span_of(piece)
    return span is not None and span[0] < span[1]


def _too_short(length: float, at_infinity: float, piece: Thing, near_mm: float) -> Told:
    """A draw that is set to less than infinity wants, where it has its stops told."""
    least, most = span_of(piece) or (length, length)
    short = at_infinity - length
    row = Quantity("helicoid_setting_mm", Interval.exact(at_infinity), "infinity")
    if short < near_mm:
        return Told((Line("head", f"At {small_mm(length)} the {piece.piece} stands at infinity."),), (row,))
    text = f"At {small_mm(length)} the {piece.piece} is {small_mm(short)} short of infinity: {NOTHING}."
    held = least <= at_infinity <= most
    rest = f" Infinity is at {small_mm(at_infinity)} on it." if held else ""
    rings = Line("note", "A ring that stands beside it counts in full: tell how thick it is.")
    return Told((Line("head", text + rest), rings), (row,))


def _drawn(question: Question) -> Thing | None:
    """The piece that is drawn out; where how long the lens is was measured, also one that is only so long."""
    told = [one for one in question.adapters if one.thickness_mm is not None]
    fixed = DRAWN_OUT | {SPACER} if number(question, "flange_to_image") else DRAWN_OUT
    return next((one for kinds in (DRAWN_OUT, fixed) for one in told if one.piece in kinds), None)


def _with_length(thing: Thing, knowledge: Knowledge) -> Thing:
    """A helicoid or bellows that is named, told by its kind and its draw."""
    named = knowledge.catalogue.adapters.get(thing.id or "") if thing.kind == "adapter" else None
    if named is None or named.kind not in DRAWN_OUT or not is_known(draw := named.thickness_mm.hull()):
        return thing
    return replace(thing, piece=named.kind, thickness_mm=(draw.least, draw.greatest))


def _for_size(wanted: float, focal: float, at_infinity: float, ends: tuple[float, float], piece: str) -> Told:
    """Where the draw stands for a magnification, or by how much it falls short of it."""
    setting, (low, high) = at_infinity + wanted * focal, ends
    size = times(wanted)
    if low <= setting <= high:
        text = f"{size} with the {piece} at {small_mm(setting)}."
    elif setting > high:
        lacks = small_mm(setting - high)
        text = f"{size} is out of reach: the {piece} would have to stand at {small_mm(setting)}, {lacks} more than it"
        text += " has; put a tube of that length between."
    else:
        text = f"{size} is passed even at its shortest: the {piece} would have to stand at {small_mm(setting)}."
    return Told((Line("head", text),), (Quantity("helicoid_setting_mm", Interval.exact(setting), f"for {size}"),))


def held_by_rings(stack: Told, question: Question, knowledge: Knowledge) -> Answer | None:
    """The chain with the rings that nobody named: a draw alone seldom is what holds a lens on a body."""
    alone = len(question.adapters) == 1 and not numbers(question, *OTHERS) and number(question, "flange_to_image")
    if all(one.piece == SPACER for one in question.adapters):
        return None  # rings of a known length, which are all that stands there
    if any(
        _is_set(one) and one.thickness_mm is not None and len(set(one.thickness_mm)) == 1 for one in question.adapters
    ):
        return None  # it is asked of that setting, and of no other pieces
    if not alone and not any(NOTHING in line.text for line in stack.lines):
        return None
    found = how_to(question, knowledge, "macro-distance")
    focuses = bool(found.chains) and found.chains is not None and found.chains[0].listed.judged.verdict != "unusable"
    return found if focuses else None


def _infinity(setting: float, low: float, high: float, piece: str) -> str:
    """Where the draw stands at infinity, or that it cannot."""
    if low == high:
        return f"infinity would be at {small_mm(setting)} there" if setting > 0 else "there is none of it for infinity"
    if setting < low:
        return f"at its shortest it is {small_mm(low - setting)} too far out for infinity, so close-up only"
    if setting > high:
        return f"even drawn out it is {small_mm(setting - high)} short of infinity: {NOTHING}"
    return f"infinity at {small_mm(setting)} on the {piece}"
