"""A designation that several lenses carry, none of them the likelier: the answer for each, the best fitting first."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from engine.answers.parts.answer import Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import BodySide, LensSide
from engine.answers.parts.wording import for_infinity, money
from engine.answers.seat.chain_numbers import price_of
from engine.answers.seat.telling import CERTAINTY_WORDS, life_line, seat_line
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.base.span import Span
from engine.facts.catalogue import Catalogue
from engine.facts.kinds import VERDICTS
from grammar.questions import BY_MEASURES, Question, Thing

OF_ONE_NAME = "Measure flange to image: the name alone does not tell which it is."
OF_ONE_LOOK = "Others look or measure like it: flange to image tells which it is."
OF_ONE_REGISTER = "Others have that register too: its lugs or thread, throat and levers tell which it is."
_NEAR_MM = 3.0
OnePair = Callable[[Question, LensSide, BodySide, Knowledge], Answer]


def likeliest(
    question: Question, meanings: Sequence[LensSide], body: BodySide, knowledge: Knowledge, one_pair: OnePair
) -> Answer:
    """The answer for the meaning that the pieces named suit best (else the first), then the others in a line each."""
    answers = [one_pair(question, side, body, knowledge) for side in meanings]
    of_kind = question.lenses[0].lens_kind is not None  # 'a rangefinder 50' is no rarer one that nearly sits right
    hopeless = not (question.adapters or of_kind) and _is_hopeless(answers[0])
    misses = [_miss(question, answer)[: 1 if of_kind else None] for answer in answers]
    order = sorted(range(len(answers)), key=lambda n: (misses[n], hopeless * _is_far(answers[n]), n))
    best = answers[order[0]]
    lines, quantities = list(best.lines), list(_cased(best, meanings[order[0]]))
    taken = f"Taken for {meanings[order[0]].mount.designation}"
    by_looks = question.lens is not None and BY_MEASURES in question.lens.traits
    why = OF_ONE_LOOK if by_looks else OF_ONE_NAME
    why = OF_ONE_REGISTER if question.said("flange_to_image") is not None else why
    lines.insert(1, Line("note", f"{taken}. {why}"))
    for n in order[1:]:
        lines.append(Line("fact", _told(answers[n], meanings[n], question.feet), 1))
        quantities += _cased(answers[n], meanings[n])
    told = {side.mount.id for side in meanings}
    lens = question.lenses[0]
    for id_ in lens.ids:
        mount = knowledge.catalogue.mounts[id_]
        if id_ not in told and not is_known(mount.register_mm):
            text = f"if it is {mount.designation}: a mount without a register; measure the lens's own flange to image"
            lines.append(Line("fact", text, 1))
    first = meanings[order[0]].mount.id
    lens = replace(lens, ids=(first, *(one for one in lens.ids if one != first)))
    question = question.with_(lenses=(lens, *question.lenses[1:]))
    # where it is another meaning, the lens sides that were passed over as "others" are told here already
    kept = tuple(
        line
        for line in lines
        if not line.text.startswith("Taken for") or line.text.endswith((OF_ONE_NAME, OF_ONE_LOOK, OF_ONE_REGISTER))
    )
    return replace(best, lines=kept, quantities=tuple(quantities), question=question)


def one_of_name(lens: Thing | None, question: Question, facts: Catalogue) -> tuple[Line, ...]:
    """'39mm screw lens, goes on what': screws of one width whose registers lie apart are told by measuring alone."""
    mounts = [facts.mounts[id_] for id_ in lens.ids if id_ in facts.mounts] if lens is not None else []
    known = [mount.register_mm.nominal for mount in mounts if is_known(mount.register_mm)]
    apart = len(known) > 1 and max(known) - min(known) > _NEAR_MM and all(one.coupling == "screw" for one in mounts)
    if not apart or question.said("flange_to_image") is not None:
        return ()
    text = f"Taken for {mounts[0].designation}. {OF_ONE_NAME}"
    ask = "How far is it from the lens flange to the image of a far window, in mm?"
    return (Line("note", text), Line("ask", ask, wants="flange_to_image"))


def _is_hopeless(answer: Answer) -> bool:
    """Whether no ring at all holds the lens for infinity: then rather one is meant that nearly sits right."""
    return answer.ring is not None and answer.ring.possible == "no"


def _is_far(answer: Answer) -> bool:
    """Whether the register of the lens is not near that of the body: 'M39 58 on EF' is an SLR's, 45.2 mm to 44."""
    right = answer.ring.thickness_mm if answer.ring is not None else None
    return right is None or abs(right.nominal) > _NEAR_MM


def _miss(question: Question, answer: Answer) -> tuple[float, ...]:
    """How badly the best chain does: pieces that were named are asked about for the lens that they suit."""
    if not question.adapters or not answer.chains:
        return (0 if not question.adapters else len(VERDICTS), 0.0)
    judged = answer.chains[0].listed.judged
    error = judged.measured_trace.value("register_error_mm")
    known = isinstance(error, Span) and is_known(error.shortest)
    return (VERDICTS.index(judged.verdict), abs(error.shortest.nominal) if known else 1e6)  # type: ignore[union-attr]


def _cased(answer: Answer, side: LensSide) -> list[Quantity]:
    named = ("ring_thickness_mm", "register_difference_mm")
    return [
        replace(row, case=row.case or side.mount.id) if row.name in named else row for row in answer.quantities
    ]  # fmt: skip


def _told(answer: Answer, side: LensSide, feet: bool) -> str:
    ring = answer.ring.thickness_mm if answer.ring else None
    seat = f"; {for_infinity(ring.nominal)}" if ring is not None else ""
    lead = f"if it is {side.mount.designation}"
    if not answer.chains:
        return f"{lead}: no way found{seat}"
    judged = answer.chains[0].listed.judged
    band = price_of(judged)
    price = f" [{money((band.least, band.greatest))}]" if band else ""
    sure = "" if judged.certainty == "unknown" else f" ({CERTAINTY_WORDS[judged.certainty]})"
    near = f"; {seat_line(judged)}" if judged.verdict != "infinity" else ""
    return f"{lead}: {answer.chains[0].title}{price}, {life_line(judged, feet)}{sure}{near}{seat}"
