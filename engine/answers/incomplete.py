"""A question about a chain without a lens mount or a body: what can be said all the same, and what is asked back."""

from __future__ import annotations

from collections.abc import Sequence

from engine.answers.parts.answer import ANSWERED, NO, Answer, Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.nearby import PLAIN, SEEN, nearest
from engine.answers.parts.owned import with_own_facts
from engine.answers.parts.resolve import BodySide, LensSide, Missing
from engine.answers.parts.said import focals, mentions, number, pitch_mm
from engine.answers.parts.usual_mounts import PROJECTOR
from engine.answers.parts.wording import listed, money
from engine.answers.seat.described import ANY_PIECE
from engine.answers.seat.elsewhere import elsewhere
from engine.answers.seat.lens_for_ring import lens_for_ring
from engine.answers.seat.open_lens import CLAMP, depends
from engine.answers.seat.spacing import far_limits, marks, usual_focals
from engine.answers.shims.bare_sensor import glass_told
from engine.answers.shims.forgiving import is_error
from engine.answers.shims.loose import loose
from engine.answers.shims.turning import as_turns, asks_turns, turned, turns_told
from engine.answers.ways.fits import list_fits
from engine.answers.ways.kinds_asked import kinds_of
from engine.base.compact import replace
from engine.base.interval import Interval
from engine.facts.records import Mount
from grammar.kinds import BY_SEAT
from grammar.questions import Question
from grammar.things.casting import DRAWN

MOST_ADVICE = 2
MOST_SOLD = 6
WHICH_RING = "which-ring"  # the advice on what must be known before a ring can be told
SURE = 4.5  # what shares less with the question is beside the point here


def incomplete(
    question: Question,
    lenses: Sequence[LensSide | Missing],
    bodies: Sequence[BodySide | Missing],
    knowledge: Knowledge,
) -> Answer:
    """Worked out as far as it goes: by focal length alone, by the body's register alone, or the rings for any body."""
    question = with_own_facts(question, knowledge.catalogue)
    lens = next((side for side in lenses if isinstance(side, LensSide)), None)
    body = next((side for side in bodies if isinstance(side, BodySide)), None)
    missing = [side for side in (*lenses, *bodies) if isinstance(side, Missing)]
    if lens is None and body is not None and _asks_which(question):
        return list_fits(question.with_(lenses=tuple(one for one in question.lenses if one.lens_kind)), knowledge)
    if body is not None and lens is None and question.lens is not None and _hangs_on_lens(question):
        sold = _sold_of_kind(question, body, knowledge)
        answer = depends(question, question.lens, body, knowledge)
        if sold.lines and not any(one.thickness_mm for one in question.adapters):
            quantities = (*(answer.quantities or ()), *sold.quantities)
            return replace(answer, lines=(*sold.lines, *answer.lines), quantities=quantities)
        return _with_advice(answer, question, knowledge)
    hung = lens_for_ring(question, body, knowledge) if body is not None and lens is None else None
    if hung is not None:
        return hung
    if lens is not None and body is None and _asks_for_a_kind(question):
        return list_fits(question, knowledge)
    found = loose(question, knowledge)
    glass = glass_told(question, knowledge)
    told = found.told
    if turns_told(question) is not None and (lens is not None or pitch_mm(question) is not None):
        told = turned(question, knowledge) + told
    elif lens is not None and body is None and asks_turns(question) and is_error(_moved(question), knowledge):
        told = as_turns(question, _moved(question), knowledge) + told
    lines, behind = list(told.lines), list[Line]()
    if (
        not (found.chains or told.lines or glass.lines)
        and lens is None
        and not _is_plain_barrel(question)
        and _is_about_spacing(question, knowledge)
    ):
        told = example_of_spacing(question, knowledge)
        # a lens that is only told of is first asked for its mount: what spacing does to it stands behind that
        lines, behind = ([], list(told.lines)) if _is_only_told(question) else (list(told.lines), [])
    # beside a lens that is named only what is surely about the same
    advice = _advice_lines(question, knowledge, SURE if lens is None else PLAIN) if lens is None or not lines else []
    rings = _rings_for(lens.mount, knowledge) if lens is not None else Told()
    several = [side for side in lenses if isinstance(side, LensSide)]
    if body is None and len({side.mount.id for side in several}) > 1:
        from engine.answers.ways.left_over import rings_for_each

        rings = rings_for_each(several, knowledge)
    # what was worked out is the answer, else what is missing of a lens that is known; advice only helps on
    asked = [Line("ask", row.ask, wants=row.wants) for row in missing[:1] if not found.chains or lens is not None]
    advice = advice[: MOST_ADVICE if not lines else 1]
    beside = [*advice, *rings.lines, *asked] if lens is None else [*rings.lines, *asked, *advice]
    lines = [*glass.lines, *lines, *beside, *behind]
    status = ANSWERED if told.lines or rings.lines or glass.lines else NO
    return Answer(
        question.text, question.intent, status, tuple(lines), question=question, chains=found.chains or None,
        quantities=(*glass.quantities, *told.quantities, *rings.quantities),
    )  # fmt: skip


def _hangs_on_lens(question: Question) -> bool:
    """Whether no more can be said than what the lens must have: of a plain barrel in a helicoid too."""
    plain = any(one.lens_kind == PROJECTOR and not one.ids for one in question.lenses)
    drawn = all(one.piece in DRAWN for one in question.adapters) and question.said("extension") is None
    return not loose_numbers(question) or (plain and drawn and question.intent in BY_SEAT)


def _moved(question: Question) -> float:
    return number(question, "numbers", "length") or 0.0


def _sold_of_kind(question: Question, body: BodySide, knowledge: Knowledge) -> Told:
    """The adapters of a kind that was named, as tilt rings, that end on the body: cheapest first, with their prices."""
    kinds = {thing.piece for thing in question.adapters if thing.piece and thing.piece not in ANY_PIECE}
    rows = [
        row for row in knowledge.catalogue.adapters.values()
        if row.kind in kinds and row.rear == body.mount.id and row.front != row.rear and row.price_usd is not None
    ]  # fmt: skip
    rows.sort(key=lambda row: (row.price_usd or (0, 0), row.name))
    if not rows:
        return Told()
    lines = [Line("head", f"Sold for {body.mount.designation}, cheapest first:")]
    quantities = []
    for row in rows[:MOST_SOLD]:
        assert row.price_usd is not None
        lines.append(Line("fact", f"{row.name} [{money(row.price_usd)}]", 1))
        quantities.append(Quantity("price", Interval.between(*row.price_usd), row.name))
    return Told(tuple(lines), tuple(quantities))


def _asks_which(question: Question) -> bool:
    """'what slr lenses still reach infinity on F': no one lens is told of, and which is asked."""
    told = any(one.focal_length_mm or one.ids or one.format or one.f_number for one in question.lenses)
    return not told and not question.adapters and mentions(question, "which-lenses")


def _asks_for_a_kind(question: Question) -> bool:
    """Whether the body is only told by its kind: 'any SLR'."""
    return bool(question.bodies) and bool(kinds_of(question.bodies))


def _rings_for(mount: Mount, knowledge: Knowledge) -> Told:
    """The rings for any body; where the mount has no register to hold, those that are sold for it."""
    told = elsewhere(mount, knowledge)
    if told.lines:
        return told
    rings = [ring for row in knowledge.rings.onward.get(mount.id, {}).values() for ring in row if not ring.glass]
    names = list(dict.fromkeys(knowledge.catalogue.adapters[ring.id].name for ring in rings))[:8]
    return Told((Line("text", f"Sold for it: {listed(names)}."),)) if names else Told()


def loose_numbers(question: Question) -> bool:
    """Whether focal lengths alone let the question be worked out."""
    return bool(focals(question)) and (
        question.said("extension") is not None or any(thing.thickness_mm for thing in question.adapters)
    )


def _asks_for_ring(question: Question) -> bool:
    """'an old lens and a newish camera, which ring': of neither is anything told."""
    return question.lens is not None and question.body is not None and mentions(question, "ring-asked")


def _is_only_told(question: Question) -> bool:
    """'i have a 16mm projector lens 50mm f1.2': a lens, and nothing that is asked of its seat."""
    return question.topic is None and bool(question.lenses) and not question.adapters and not loose_numbers(question)


def _is_about_spacing(question: Question, knowledge: Knowledge) -> bool:
    """Whether what stands between is asked about, and no advice is surely about the same."""
    if not focals(question) and (_asks_for_ring(question) or nearest(question.text, knowledge.catalogue, 1, PLAIN)):
        return False
    return bool(question.adapters or focals(question)) and (
        question.topic in ("infinity", "focus", "cant-focus", "lose", "range", None)
    )


def example_of_spacing(question: Question, knowledge: Knowledge) -> Told:
    """What an everyday error does to the lenses named, or to usual ones: a tenth too far, half of that too close."""
    facts, lenses = knowledge.catalogue, focals(question) or usual_focals(knowledge.catalogue)
    close = facts.assumptions["making-spread-derived"].value.greatest
    far = facts.assumptions["making-spread-nominal"].value.greatest
    if mentions(question, "sits-too-close"):
        return marks(lenses, close, facts, question.feet, 1)
    return far_limits(lenses, far, facts, question.feet, 1) + far_limits(lenses, close, facts, question.feet, 1)


def _is_plain_barrel(question: Question) -> bool:
    """'my uncle left me a projector lens': what holds such a lens comes before all that its words are about."""
    return not question.bodies and any(lens.lens_kind == PROJECTOR and not lens.ids for lens in question.lenses)


def _advice_lines(question: Question, knowledge: Knowledge, least: float = SURE) -> list[Line]:
    first = knowledge.catalogue.advice.get(WHICH_RING) if _asks_for_ring(question) else None
    rows = nearest(
        question.text,
        knowledge.catalogue,
        MOST_ADVICE,
        PLAIN if first is not None or _is_plain_barrel(question) else least,
    )
    held = knowledge.catalogue.advice.get(CLAMP) if _is_plain_barrel(question) else None
    rows = tuple(dict.fromkeys(row for row in (first or held, *rows) if row is not None))
    return [Line("text", f"{row.topic[:1].upper()}{row.topic[1:]}: {row.says}") for row in rows]


def _with_advice(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    # what it hangs on is told; of advice only what is said of something seen goes beside it
    extra = tuple(_advice_lines(question, knowledge, SEEN))
    return replace(answer, lines=(*answer.lines[:-1], *extra, answer.lines[-1])) if extra else answer
