"""Two answers of before, or two chains of the last one, set against each other: what changed, and which is better."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import log2
from typing import Protocol

from engine.answers.own.own_cases import Case
from engine.answers.own.side_by_side import side_by_side
from engine.answers.parts.answer import ANSWERED, NO, Answer, Line, ListedChain, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.nearby import SURE, nearest
from engine.answers.parts.own_words import OwnWords, told_value
from engine.answers.parts.resolve import BodySide, LensSide
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import READS_MM, listed, small_mm, trimmed
from engine.answers.seat.telling import CERTAINTY_WORDS, VERDICT_WORDS, chain_title
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.base.span import Span
from engine.facts.kinds import VERDICTS
from engine.judging.judge import CERTAINTIES, Judged
from engine.judging.ranking import Listed
from grammar.kinds import COMPARE
from grammar.questions import Question


class Past(Protocol):
    """One answer of before, as the talk keeps it."""

    @property
    def question(self) -> Question: ...
    @property
    def reading(self) -> str: ...
    @property
    def best(self) -> ListedChain | None: ...
    @property
    def quantities(self) -> tuple[Quantity, ...]: ...


def between(question: Question, past: Sequence[Past], rows: Sequence[Listed], knowledge: Knowledge) -> Answer | None:
    """The comparison that the question asks of what was answered; None where it names what it compares."""
    others = question.said("and_number")
    several = max(len(question.lenses), len(question.bodies)) > 1
    looks_back = mentions(question, "earlier-answers", *(() if several else ("earlier-things",))) or (
        question.number is not None and others is not None
    )
    if not question.follows or _names_pieces(question) or question.limits.with_glass or (several and not looks_back):
        return None
    if question.number is not None and others is not None and not mentions(question, "answer"):
        return _chains(question, (question.number, int(others.split(",")[0])), rows, knowledge)
    if question.number is not None and len(rows) > 1 and not mentions(question, "earlier-answers", "earlier-things"):
        if question.number == 1:
            return _refused(
                question, "The first of the last answer, against which? Say 'compare the first and the second'."
            )
        return _chains(question, (1, question.number), rows, knowledge)
    if not looks_back and (_goes_on(question) or _is_advised(question, knowledge)):
        return None
    pair = _pair(question, past)
    if pair is None:
        if len(rows) > 1:
            return _chains(question, (1, 2), rows, knowledge)
        if several:
            return None
        text = "There is only one answer to compare. Ask for another lens or body first; or name the two."
        return _refused(question, text)
    return _answers(question, *pair, knowledge)


def _names_pieces(question: Question) -> bool:
    """Whether pieces are named with it; those of the turn before may be what is compared."""
    return bool(question.adapters) and (question.prior is None or question.adapters != question.prior.adapters)


def _goes_on(question: Question) -> bool:
    """'which covers better', 'with a 25' after 'compare MFT and APS-C for C lenses': the same are set apart."""
    compared = question.prior is not None and question.prior.intent == COMPARE
    pieces = question.prior is not None and question.adapters == question.prior.adapters
    ways = len(question.adapters) > 1 and pieces  # 'which one reaches 1:2' after a tube against a close-up lens
    return compared and (len(question.bodies) + len(question.frames) > 1 or ways)


def _is_advised(question: Question, knowledge: Knowledge) -> bool:
    """'variable or fixed?', 'brass or aluminium' after anything: a choice that is surely advised on, of no answers."""
    return mentions(question, "either-or") and bool(nearest(question.text, knowledge.catalogue, 1, SURE, COMPARE))


def _refused(question: Question, text: str) -> Answer:
    return Answer(question.text, "compare", NO, (Line("ask", text),), question=question, aside=True)


def _pair(question: Question, past: Sequence[Past]) -> tuple[Past, Past] | None:
    """The two answers meant: the last two of a kind, or the last and one that is named by its number."""
    if len(past) < 2:
        return None
    number, others = question.number, question.said("and_number")
    if number is None:
        return _alike_in_kind(past) or (past[-2], past[-1])
    seen = list(past) if mentions(question, "answer") else _apart(past)
    if not 1 <= number <= len(seen):
        return None
    other = int(others.split(",")[0]) if others is not None else None
    last = seen[other - 1] if other is not None and 1 <= other <= len(seen) else past[-1]
    first = seen[number - 1]
    return (past[-2], last) if first is last else (first, last)


def _alike_in_kind(past: Sequence[Past]) -> tuple[Past, Past] | None:
    """The last answer, and the last of before that was asked the same of another lens or body.

    'ring for E', 'does it cover', 'ring for Q', 'which is better': of the two bodies.
    """
    last = past[-1]
    if past[-2].question.intent == last.question.intent:
        return None
    others = (
        one for one in reversed(past[:-1])
        if one.question.intent == last.question.intent and _told_of(one) != _told_of(last)
    )  # fmt: skip
    found = next(others, None)
    return (found, last) if found is not None else None


def _told_of(one: Past) -> tuple[object, ...]:
    return tuple((thing.ids, thing.format) for thing in (*one.question.lenses, *one.question.bodies))


def _apart(past: Sequence[Past]) -> list[Past]:
    """The first answer for each body and lens, in order: what 'the first body' may mean."""
    seen: dict[tuple[object, ...], Past] = {}
    for one in past:
        seen.setdefault(_told_of(one), one)
    return list(seen.values())


def _chains(question: Question, numbers: tuple[int, int], rows: Sequence[Listed], knowledge: Knowledge) -> Answer:
    wrong = next((number for number in numbers if not 1 <= number <= len(rows)), None)
    if wrong is not None:
        text = f"The last answer listed {len(rows)}; there is no number {wrong}." if rows else "None was listed."
        return _refused(question, text)
    picked = [rows[number - 1] for number in numbers]
    same_pair = len({(row.judged.setup.lens.name, row.judged.setup.body.name) for row in picked}) == 1
    names = [f"#{number}" if same_pair else _name(rows[number - 1], picked) for number in numbers]
    sides = [_case(row, name, chain_title(row.judged, knowledge)) for row, name in zip(picked, names, strict=True)]
    reading = f"compare #{numbers[0]} and #{numbers[1]} of the last answer"
    return replace(_told(question, sides, picked, knowledge, []), reading=reading)


def _answers(question: Question, one: Past, other: Past, knowledge: Knowledge) -> Answer:
    reading = "compare two answers of before"
    asked = [Line("text", f"Before: {one.reading}."), Line("text", f"Then: {other.reading}.")]
    if one.best is not None and other.best is not None:
        picked = [one.best.listed, other.best.listed]
        names = [_name(row, picked) for row in picked]
        if names[0] == names[1]:
            titles = [one.best.title, other.best.title]
            names = titles if titles[0] != titles[1] else ["before", "then"]
        sides = [_case(row, name, past.best.title if past.best else "")
                 for row, name, past in zip(picked, names, (one, other), strict=True)]  # fmt: skip
        return replace(_told(question, sides, picked, knowledge, asked), reading=reading)
    lines = [*_seen_apart(one, other), *asked, *_changed(one, other, OwnWords.of(knowledge.catalogue))]
    if lines == asked:
        lines.append(Line("text", "The two have no numbers in common."))
    return Answer(question.text, "compare", ANSWERED, tuple(lines), reading, question,
                  quantities=(*_of("before", one), *_of("then", other)), aside=True)  # fmt: skip


def _seen_apart(one: Past, other: Past) -> Iterator[Line]:
    """Which of two images is the larger, view the wider, opening the brighter, before what differs in numbers."""
    views, stops = [_first("equivalent_focal_mm", past) for past in (one, other)], [_opening(one), _opening(other)]
    sizes = [_largest("magnification", past) for past in (one, other)]
    told = []
    if sizes[0] and sizes[1] and sizes[0] != sizes[1]:
        large, small = max(sizes[0], sizes[1]), min(sizes[0], sizes[1])
        told.append((sizes[0] > sizes[1], f"larger, {_times(large)} against {_times(small)}"))
    if views[0] and views[1] and views[0] != views[1]:
        wide = f"like {min(views[0], views[1]):.0f} mm against {max(views[0], views[1]):.0f} mm on full frame"
        told.append((views[0] < views[1], f"wider, {wide}"))
    if stops[0] and stops[1] and stops[0] != stops[1]:
        more = trimmed(abs(2 * log2(stops[0] / stops[1])), 2)
        told.append((stops[0] < stops[1], f"brighter by {more} stops"))
    for first, name in ((True, "The first"), (False, "The second")):
        words = [text for is_first, text in told if is_first is first]
        if words:
            yield Line("head", f"{name} is {'; '.join(words)}.")


def _largest(name: str, past: Past) -> float | None:
    """The largest of that name: a bellows draws out to what counts."""
    found = [row.value.nominal for row in past.quantities if row.name == name and is_known(row.value)]
    return max(found, default=None)


def _first(name: str, past: Past) -> float | None:
    return next((row.value.nominal for row in past.quantities if row.name == name and is_known(row.value)), None)


def _times(magnification: float) -> str:
    return told_value("magnification", Interval.exact(magnification))


def _opening(past: Past) -> float | None:
    """The f-number that exposes: behind glass where there is any, else the lens's own."""
    lens = past.question.lens
    return _first("f_number", past) or past.question.f_number or (lens.f_number if lens is not None else None)


def _of(which: str, past: Past) -> Iterator[Quantity]:
    """The numbers of an answer, each with the answer that it is of."""
    for row in past.quantities:
        yield Quantity(row.name, row.value, f"{which}, {row.case}" if row.case else which)


def _changed(one: Past, other: Past, words: OwnWords) -> Iterator[Line]:
    """Each number that both answers hold and that differs, before and then."""
    before = {(row.name, row.case): row for row in one.quantities}
    single = {row.name: row for row in one.quantities if sum(row.name == r.name for r in one.quantities) == 1}
    for row in other.quantities:
        alone = sum(row.name == r.name for r in other.quantities) == 1
        old = before.get((row.name, row.case)) or (single.get(row.name) if alone else None)
        if old is None or old.value == row.value:
            continue
        case = f" ({row.case})" if row.case and row.case == old.case else ""
        told = f"before {told_value(row.name, old.value)}, then {told_value(row.name, row.value)}"
        yield Line("fact", f"{words.label(row.name)}{case}: {told}", 1)


def _name(row: Listed, picked: Sequence[Listed]) -> str:
    """By what the two differ: the lens, the body, or both."""
    setups = [one.judged.setup for one in picked]
    setup = row.judged.setup
    lens, body = setup.lens.name.removeprefix("a ").removeprefix("an "), setup.body.name
    by_lens = len({one.lens.name for one in setups}) > 1
    by_body = len({one.body.name for one in setups}) > 1
    return f"{lens} on {body}" if by_lens and by_body else lens if by_lens else body


def _case(row: Listed, name: str, title: str) -> Case:
    setup = row.judged.setup
    lens = LensSide(setup.lens, setup.lens_mount, setup.lens_alone, setup.lens.name)
    body = BodySide(setup.body, setup.body_mount, setup.body_alone, setup.body.name, setup.format)
    return Case(name, lens, body, setup, row.judged.trace, row, title)


def _told(
    question: Question, sides: list[Case], picked: Sequence[Listed], knowledge: Knowledge, lead: list[Line]
) -> Answer:
    told = side_by_side(sides, knowledge, question.feet)
    chains = tuple(ListedChain(n, row, side.title) for n, (row, side) in enumerate(zip(picked, sides, strict=True), 1))
    lines = (_better(sides, picked), *lead, *told.lines)
    return Answer(
        question.text, "compare", ANSWERED, lines, question=question, chains=chains, quantities=told.quantities,
        aside=True,
    )  # fmt: skip


def _better(sides: Sequence[Case], picked: Sequence[Listed]) -> Line:
    """Which comes first by verdict, danger and certainty, as answers are ordered."""
    ranks = [_rank(row.judged) for row in picked]
    if ranks[0] == ranks[1]:
        return Line("head", _nearer_right(sides, picked) or "Neither is better in how it focuses; they differ in this:")
    best, other = (0, 1) if ranks[0] < ranks[1] else (1, 0)
    words = [f"{VERDICT_WORDS[row.judged.verdict]} ({CERTAINTY_WORDS[row.judged.certainty]})" for row in picked]
    mind = [sides[at].name for at in (best, other) if ranks[at][1]]
    danger = f" Mind the danger of {listed(mind)}: ask why." if mind else ""
    return Line("head", f"Better: {sides[best].name}, {words[best]}; {sides[other].name}: {words[other]}.{danger}")


def _nearer_right(sides: Sequence[Case], picked: Sequence[Listed]) -> str | None:
    """Which ring of two for the same lens on the same body sits nearer to right, where one of a fixed length does."""
    pairs = {(row.judged.setup.lens.name, row.judged.setup.body.name) for row in picked}
    errors = [row.judged.measured_trace.value("register_error_mm") for row in picked]
    offs = [one.shortest.nominal for one in errors if isinstance(one, Span) and one.is_fixed and is_known(one.shortest)]
    if len(pairs) > 1 or len(offs) != len(picked) or abs(abs(offs[0]) - abs(offs[1])) < READS_MM:
        return None
    best, other = (0, 1) if abs(offs[0]) < abs(offs[1]) else (1, 0)
    seats = [f"{sides[at].title}: {_off_by(offs[at])}" for at in (best, other)]
    both = " Both reach infinity; too close it comes before its mark." if picked[0].judged.verdict == "infinity" else ""
    return f"Nearer to right: {seats[0]}; {seats[1]}.{both}"


def _off_by(off: float) -> str:
    return f"{small_mm(abs(off))} {'too far out' if off > 0 else 'too close'}" if off else "just right"


def _rank(judged: Judged) -> tuple[int, int, int]:
    danger = any(finding.severity == "danger" for finding in judged.findings)
    return VERDICTS.index(judged.verdict), int(danger), CERTAINTIES.index(judged.certainty)
