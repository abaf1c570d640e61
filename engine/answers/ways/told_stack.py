"""The stack behind a lens whose flange to image was measured: how long it must be, and where a draw stands in it.

Lengths add: flange to image = body register + rings + helicoid. So it needs no mount of the lens to be known.
"""

from __future__ import annotations

from typing import Final

from engine.answers.close.close_picture import shown_by
from engine.answers.close.close_rows import assumed_note, at_extension
from engine.answers.parts.answer import ANSWERED, Answer, Line, ListedChain, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.near_enough import right_seat_mm, wrong_seat_mm
from engine.answers.parts.resolve import LensSide, Missing, body_side, lens_side
from engine.answers.parts.said import focals, number, numbers, stop
from engine.answers.parts.wording import small_mm, trimmed
from engine.answers.seat.distances import distances_of
from engine.answers.seat.open_lens import AS_MEASURED
from engine.answers.seat.passed_over import is_passed_over
from engine.answers.seat.spacing import USUAL_FORMAT
from engine.answers.seat.standin import as_listed, judged_alone
from engine.answers.seat.telling import focus_lines, life_line
from engine.answers.ways.stack_ends import ends_told, is_told_already
from engine.base.compact import compact, replace
from engine.base.interval import Interval, is_known
from engine.chains.walk import ADDED_FOCUSING
from grammar.kinds import DIY_DIMENSION, SHIM_CALIBRATION
from grammar.questions import BODY_OFF, Question, Thing
from grammar.things.casting import MOUNTLESS

OTHERS: Final = ("length", "thickness", "total")  # keys of further plates and rings that belong to no piece named
INFINITY: Final = "infinity"
_STILL_TO_COUNT: Final = (
    "What holds it on the body counts too: take the thickness of that ring or plate off the setting of the helicoid."
)
_OF_WORK: Final = (SHIM_CALIBRATION, DIY_DIMENSION)


@compact
class Stack:
    """From the body's flange to the lens's shoulder: how long for infinity, what of it is rings, what is drawn out."""

    whole_mm: float
    rings_mm: float
    drawn: Thing | None

    @property
    def ends_mm(self) -> tuple[float, float]:
        """How far the lens is out beyond infinity with the draw shut and fully out; below 0 it is too close."""
        low, high = (self.drawn.thickness_mm if self.drawn is not None else None) or (0.0, 0.0)
        return low + self.rings_mm - self.whole_mm, high + self.rings_mm - self.whole_mm


def with_stack(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind what the lengths told come to; instead of it where no chain is made of the pieces named."""
    stack = _stack(question, knowledge)
    if stack is not None and stack.drawn is None and stack.rings_mm > 0:
        return _on_rings(stack, answer, question, knowledge)
    if stack is None or (stack.drawn is None and any(row.case == AS_MEASURED for row in answer.quantities or ())):
        return answer
    told = _told(stack, question, knowledge)
    piece = stack.drawn.piece if stack.drawn is not None else None
    ends = ends_told(stack.ends_mm, piece, question, knowledge) if piece else Told()
    told += ends if not is_told_already(answer, stack.ends_mm[1], knowledge) else Told()
    quantities = (*told.quantities, *(answer.quantities or ()))
    short = _is_spoilt(answer, stack)
    if stack.drawn is None or not (short or any(is_passed_over(line.text) for line in answer.lines)):
        return replace(answer, lines=(*told.lines, *answer.lines), quantities=quantities)
    chain = _chain(stack, question, knowledge)
    if chain is None:
        return replace(answer, status=ANSWERED, lines=told.lines, quantities=told.quantities, chains=None)
    facts = [
        Line("fact", text, 1) for text in focus_lines(chain.listed.judged, question.feet) if text and not ends.lines
    ]
    facts += [Line("text", _STILL_TO_COUNT)] if short else []
    return replace(
        answer, status=ANSWERED, lines=(*told.lines, *facts), quantities=told.quantities, chains=(chain,), ring=None
    )


def _is_spoilt(answer: Answer, stack: Stack) -> bool:
    """Whether the lengths told have infinity, and only a ring that nobody told of keeps the chain from it."""
    low, high = stack.ends_mm
    first = answer.chains[0].listed.judged if answer.chains else None
    return low <= 0 <= high and first is not None and first.verdict != INFINITY


def is_drawn_out(question: Question) -> bool:
    """Whether a measured lens stands on what can be drawn out: where infinity falls there is a setting, no shim."""
    return number(question, "flange_to_image") is not None and bool(question.bodies) and bool(_drawn(question))


def _drawn(question: Question) -> list[Thing]:
    lengths = (one for one in question.adapters if one.thickness_mm is not None and one.piece in ADDED_FOCUSING)
    return [one for one in lengths if len(set(one.thickness_mm or ())) > 1]


def _stack(question: Question, knowledge: Knowledge) -> Stack | None:
    """None where flange to image or body is not told, or where the lens has a register of its own by its mount."""
    wanted, lens = number(question, "flange_to_image"), question.lens
    if question.said(BODY_OFF) is not None:
        return None  # it is the body's own
    body = body_side(question.body, knowledge.catalogue)
    side = lens_side(lens, knowledge.catalogue)
    own = isinstance(side, LensSide) and is_known(side.mount.register_mm)
    unseated = lens is None or not own or lens.lens_kind in MOUNTLESS
    if wanted is None or not unseated or isinstance(body, Missing) or not is_known(body.mount.register_mm):
        return None
    if len(question.bodies) > 1:
        return None
    lengths = [one for one in question.adapters if one.thickness_mm is not None]
    drawn = _drawn(question)
    rings = sum((one.thickness_mm or (0.0,))[0] * (one.count or 1) for one in lengths if one not in drawn)
    rings += sum(numbers(question, *OTHERS)) if drawn else 0.0
    rings += _beside_draw(question, drawn, lengths)
    rings += sum(_seat_between(one, knowledge) for one in question.adapters if one.thickness_mm is None)
    # 'the tube I turned is 43.4 long': told behind the one piece that is named
    lone = len(question.adapters) == 1 and question.adapters[0].thickness_mm is None and not question.adapters[0].ids
    rings += _lone_length(question, wanted - body.mount.register_mm.nominal, knowledge) if lone and not rings else 0.0
    if wanted <= body.mount.register_mm.nominal and (drawn or not rings):
        return None
    return Stack(
        round(wanted - body.mount.register_mm.nominal, 4), round(rings, 4), drawn[0] if len(drawn) == 1 else None
    )


def _lone_length(question: Question, right_mm: float, knowledge: Knowledge) -> float:
    """How long that piece is; a bare number is where it is nearly what is right, mm."""
    told = number(question, "thickness", "total")
    near = wrong_seat_mm(knowledge.catalogue)
    bare = next((one for one in numbers(question, "numbers") if abs(one - right_mm) <= near), 0.0)
    return told if told is not None else bare


def _beside_draw(question: Question, drawn: list[Thing], lengths: list[Thing]) -> float:
    """'plus 3 mm of rings' beside a helicoid, mm; 0 where that is how far it is drawn, or stands among the pieces."""
    more = number(question, "extension")
    ends = drawn[0].thickness_mm if len(drawn) == 1 else (0.0, 0.0) if not drawn else None
    if more is None or ends is None or ends[0] <= more <= ends[1]:
        return 0.0
    return more if not any(one.thickness_mm == (more, more) for one in lengths) else 0.0


def _seat_between(ring: Thing, knowledge: Knowledge) -> float:
    """'an M42 to Z ring' beside a helicoid: as long as it has to be between its mounts; 0 where that is not known."""
    if not (ring.front and ring.rear) or ring.factor is not None or ring.front[0] == ring.rear[0]:
        return 0.0
    front, rear = (knowledge.catalogue.mounts[ids[0]].register_mm for ids in (ring.front, ring.rear))
    return max(front.nominal - rear.nominal, 0.0) if is_known(front) and is_known(rear) else 0.0


def _told(stack: Stack, question: Question, knowledge: Knowledge) -> Told:
    body = body_side(question.body, knowledge.catalogue)
    assert not isinstance(body, Missing)
    register = body.mount.register_mm
    assert is_known(register)  # or there were no stack
    image = trimmed(stack.whole_mm + register.nominal, 3)
    text = (
        f"{image} - {trimmed(register.nominal, 3)} = {small_mm(stack.whole_mm)} from the {body.mount.designation}"
        " flange to the lens's shoulder at infinity, rings and helicoid together."
    )
    rows = [Quantity("stack_mm", Interval.exact(stack.whole_mm), "shoulder to body flange")]
    lines = [Line("head", text)]
    if stack.drawn is not None and stack.drawn.thickness_mm is not None:
        low, high = stack.drawn.thickness_mm
        at = round(stack.whole_mm - stack.rings_mm, 4)
        # one that is too short is not yet the whole stack: how long that is comes first
        lines.insert(1 if at > high else 0, Line("head", _setting(at, low, high, stack)))
        if low <= at <= high:
            rows.append(Quantity("helicoid_setting_mm", Interval.exact(at), "infinity"))
    return Told(tuple(lines), tuple(rows))


def _on_rings(stack: Stack, answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """A lens that stands on rings of a known length alone, and has no mount that would tell more: so far out, mm."""
    body, lens, named = body_side(question.body, knowledge.catalogue), question.lens, focals(question)
    if isinstance(body, Missing) or lens is None or not named:
        return answer
    register = body.mount.register_mm
    assert is_known(register)  # or there were no stack
    off, right = round(stack.rings_mm - stack.whole_mm, 4), right_seat_mm(knowledge.catalogue)
    way = "too far out for infinity" if off > 0 else "too close"
    how = f"the lens stands {small_mm(abs(off))} {way}" if abs(off) > right else "infinity is where it belongs"
    text = (
        f"{trimmed(register.nominal, 3)} mm of body register + {small_mm(stack.rings_mm)} of rings -"
        f" {trimmed(stack.whole_mm + register.nominal, 3)} mm from flange to image: {how}."
    )
    form = knowledge.catalogue.formats[USUAL_FORMAT]
    judged = judged_alone(named[0], stop(question), (("extension-tube", off, off),), form, knowledge)
    chain = as_listed(judged, "the rings named, by their lengths")
    rows = (Quantity("register_error_mm", Interval.exact(off)), Quantity("stack_mm", Interval.exact(stack.rings_mm)))
    told = Told((Line("head", text),), rows)
    distances = distances_of(lens, knowledge.catalogue)
    if abs(off) > right:
        told = _mend(off, stack) + told if question.intent in _OF_WORK else told + _mend(off, stack)
    if off < -right and lens.lens_kind not in MOUNTLESS:
        told += Told((Line("fact", f"at its own stop for infinity: {life_line(judged, question.feet)}", 1),))
    elif off < -right:
        none = "nothing comes sharp: such a lens has no focusing of its own to make that up"
        told += Told((Line("fact", none, 1),))
    elif off > right and distances is not None:
        told += at_extension(distances, off, shown_by(question, knowledge), f"{small_mm(stack.rings_mm)} of rings")
        told += assumed_note(distances)
    return replace(answer, status=ANSWERED, lines=told.lines, quantities=told.quantities, chains=(chain,), ring=None)


def _mend(off: float, stack: Stack) -> Told:
    """What is taken off the tube, or put behind it, for infinity."""
    by = small_mm(abs(off))
    mend = f"Take {by} off the tube" if off > 0 else f"Add {by} to the tube"
    text = f"{mend}: {small_mm(stack.whole_mm)} is right, and it is {small_mm(stack.rings_mm)}."
    return Told((Line("head", text),), (Quantity("shim_mm", Interval.exact(abs(off))),))


def held_on_tube(question: Question, intent: str, knowledge: Knowledge) -> Answer | None:
    """A measured lens on a tube that is nearly right, for what is asked of that tube; None where it is none such."""
    stack = _stack(question, knowledge) if number(question, "flange_to_image") is not None else None
    if stack is None or stack.drawn is not None or stack.rings_mm <= 0:
        return None
    off = abs(stack.rings_mm - stack.whole_mm)
    if not right_seat_mm(knowledge.catalogue) < off <= wrong_seat_mm(knowledge.catalogue):
        return None
    nothing = Answer(question.text, intent, ANSWERED, (), question=question)
    found = _on_rings(stack, nothing, question, knowledge)
    return found if found is not nothing else None


def _setting(at: float, low: float, high: float, stack: Stack) -> str:
    """Where the draw stands at infinity, or by how much it misses it."""
    piece = stack.drawn.piece if stack.drawn is not None else ""
    less = f" with {small_mm(stack.rings_mm)} of rings beside it" if stack.rings_mm else ""
    if at < low:
        return f"Even shut the {piece} is {small_mm(low - at)} too long for infinity{less}: close-up only."
    if at > high:
        short = small_mm(at - high)
        more = (
            f"rings of {short} or more must stand with it" if not stack.rings_mm else f"{short} more must stand there"
        )
        return (
            f"Even fully out the {piece} is {short} too short for infinity{less}: as it is nothing comes sharp; {more}."
        )
    return (
        f"Infinity at {small_mm(at)} on the {trimmed(low, 1)} to {trimmed(high, 1)} mm {piece}{less};"
        f" {small_mm(high - at)} are left beyond it for close focus."
    )


def _chain(stack: Stack, question: Question, knowledge: Knowledge) -> ListedChain | None:
    """The lens on these lengths, judged as one that is so far out of its place; None without a focal length."""
    named, (low, high) = focals(question), stack.ends_mm
    if not named or stack.drawn is None:
        return None
    form = knowledge.catalogue.formats[USUAL_FORMAT]
    judged = judged_alone(named[0], stop(question), ((stack.drawn.piece or "", low, high),), form, knowledge)
    return as_listed(judged, "the pieces named, by their lengths")


def is_set_by_draw(question: Question) -> bool:
    """'a 17-31 helicoid into a 1 mm ring, to what length do i lock it': every piece between lens and body is there."""
    lengths = [one.thickness_mm for one in question.adapters if one.thickness_mm is not None]
    drawn = [one for one in lengths if one[0] < one[1]]
    named = any(lens.ids for lens in question.lenses) and any(body.ids for body in question.bodies)
    return named and len(drawn) == 1 and len(lengths) > 1 and question.said("flange_to_image") is None
