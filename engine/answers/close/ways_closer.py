"""What brings a lens on a body closer than it comes by itself: a helicoid, a tube, a close-up lens, each in numbers."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from engine.answers.close.close_picture import shown_by
from engine.answers.close.close_rows import at_extension
from engine.answers.close.dioptres import with_close_up_lens
from engine.answers.parts.answer import Answer, Line, ListedChain, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import money, small_mm, trimmed
from engine.answers.seat.distances import distances_of
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.base.span import Span
from engine.facts.kinds import VERDICTS
from engine.facts.records import Adapter
from engine.judging.judge import Judged
from grammar.kinds import BY_SEAT
from grammar.questions import CLOSE_UP_LENS, Question, Thing
from grammar.things.casting import DRAWN

_HELICOID: Final = "helicoid"
LEAD: Final = (
    "Ways closer, nearest at hand first: a helicoid in the ring's place keeps infinity, a tube between loses it while "
    "it is in, a close-up lens on the front comes off again."
)
OWN: Final = (
    "By its own ring it comes as near as the nearest mark of its scale, told from the sensor, while it sits right; how "
    "near that is, is not known."
)
OWN_OFF: Final = (
    "By its own ring it comes nearer than the nearest mark of its scale, as it sits too far out; how near that is, is "
    "not known."
)
NEAREST_MARK: Final = "close_focus"  # the fact that tells it
_UNTOLD: Final = "How large it comes is the length added over the focal length, which is not told."


def led_by_ways(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer, behind the ways; of chains that were told just before only what is asked back is told again."""
    drawn = any(thing.piece in DRAWN or thing.piece == CLOSE_UP_LENS for thing in question.adapters)
    if drawn or not mentions(question, "closer-wanted"):
        return _led_by_own(answer, question, knowledge) if not drawn else answer
    told = sum(_ways(answer, question, knowledge), Told((Line("head", LEAD),)))
    again = question.follows and question.prior is not None and question.prior.intent in BY_SEAT
    rest = tuple(line for line in answer.lines if line.kind == "ask" or not again)
    return replace(answer, lines=(*told.lines, *rest), quantities=(*told.quantities, *answer.quantities))


def _led_by_own(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """What decides how near the lens comes by itself, where that is not known, and what brings it nearer, first."""
    asks = tuple(line for line in answer.lines if line.wants == NEAREST_MARK)
    best = answer.chains[0].listed.judged if answer.chains else None
    if not asks or best is None or best.verdict == VERDICTS[-1]:
        return answer
    own = OWN if best.verdict == VERDICTS[0] else OWN_OFF
    far = _at_infinity_mark(best, question, knowledge) if own is OWN_OFF else Told()
    led = Told((Line("head", own),)) + far + Told((*asks, Line("text", LEAD)))
    told = sum(_ways(answer, question, knowledge), led)
    rest = tuple(line for line in answer.lines if line not in asks)
    return replace(answer, lines=(*told.lines, *rest), quantities=(*told.quantities, *(answer.quantities or ())))


def _at_infinity_mark(best: Judged, question: Question, knowledge: Knowledge) -> Told:
    """Where a lens that sits too far out is sharp with its ring at infinity: nothing farther is."""
    lens = distances_of(question.lens, knowledge.catalogue) if question.lens is not None else None
    error = best.trace.value("register_error_mm")
    if lens is None or not isinstance(error, Span) or not is_known(error.shortest):
        return Told()
    off = error.shortest.nominal
    lead = f"At its infinity mark it sits {small_mm(off)} too far out"
    return at_extension(lens, off, shown_by(question, knowledge), "at the infinity mark", lead=lead)


def _ways(answer: Answer, question: Question, knowledge: Knowledge) -> Iterator[Told]:
    lens = distances_of(question.lens, knowledge.catalogue) if question.lens is not None else None
    helicoid = next((piece for chain in answer.chains or () for piece in _helicoids(chain)), None)
    shown = shown_by(question, knowledge)
    if lens is None:
        yield Told((Line("text", _UNTOLD),))
        return
    if helicoid is not None:
        travel = _travel(helicoid)
        price = f" [{money(helicoid.price_usd)}]" if helicoid.price_usd is not None else ""
        lead = f"{helicoid.name}{price}, drawn out {small_mm(travel)}"
        yield at_extension(lens, travel, shown, lead, end="near", lead=lead)
    tube = knowledge.catalogue.assumptions["tube-to-show-by"].value.nominal
    lead = f"a tube of {trimmed(tube, 1)} mm, say"
    yield at_extension(lens, tube, shown, lead, end="near", lead=lead)
    glass = question.with_(adapters=(Thing(piece=CLOSE_UP_LENS),), values=(), distance_mm=None)
    yield max(with_close_up_lens(lens, glass, shown), key=_power, default=Told())


def _power(told: Told) -> float:
    """By how much a close-up lens magnifies, the strongest of a usual set being shown."""
    return max(
        (row.value.nominal for row in told.quantities if row.name == "magnification" and is_known(row.value)),
        default=0.0,
    )


def _helicoids(chain: ListedChain) -> list[Adapter]:
    return [piece for piece in chain.listed.judged.chain.adapters if piece.kind == _HELICOID and _travel(piece) > 0]


def _travel(piece: Adapter) -> float:
    short, long = piece.thickness_mm.shortest, piece.thickness_mm.longest
    return long.nominal - short.nominal if is_known(short) and is_known(long) else 0.0
