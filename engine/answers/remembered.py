"""Answers about the answer before: why, why not, a chain by its number, what is being talked about."""

from __future__ import annotations

from collections.abc import Callable

from engine.answers.advising import ruled
from engine.answers.left_so import left_so
from engine.answers.listed_of import is_of, of_lens
from engine.answers.off_since import REMEDY, as_off, error_mm
from engine.answers.parts.answer import NO, Answer, Line, ListedChain
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions
from engine.answers.ways.hub_rings import hub_rings
from engine.answers.ways.iris_asked import why_iris
from engine.answers.ways.other_on_same import other_on_same
from engine.answers.ways.room_asked import ROOM_ASKED, with_room_asked
from engine.answers.why_of_it import SEEN_SO, but_of_edges, is_not_of_the_seat, why_of_it
from engine.answers.words.advice import HARM, advice_lines, examples, named_mounts
from engine.base.compact import replace
from engine.facts.kinds import VERDICTS
from engine.judging.ranking import Listed
from grammar.kinds import COVERAGE, DRAW, HAZARD, IDENTIFY_MOUNT, OF_FRAMES, WHY
from grammar.questions import Question, Thing

CUT_SO = (("made-thin", "thin-on-purpose", -1), ("made-thick", "thick-on-purpose", 1))  # mention, advice, way it is off
_TWO_RINGS = 2
OF_GLASS = "glass-ring-soft"  # and that on glass that gives infinity back
SURE = "sure"  # how sure that is
IRIS = "iris"  # a reason that the iris has, and no chain
OF_PICTURE = ("vignette", "disc", "cover")  # topics that the image circle answers, not the chain
OF_FRAME = (None, "vignette", "disc")  # topics of a reason that may be one of what is lit


def answer(
    question: Question,
    before: Question | None,
    rows: tuple[Listed, ...],
    reading: str,
    knowledge: Knowledge,
    chains_first: Callable[[Question], Answer],
) -> Answer | None:
    """The answer where the question is about the last one, `before`; None where it stands for itself."""
    if question.intent == "show-memory":
        text = f"We are talking about: {reading}." if reading else "Nothing yet; ask something."
        return Answer(question.text, "show-memory", 0, (Line("text", text),), question=question)
    if question.intent == "start-over":
        return Answer(
            question.text, "start-over", 0, (Line("text", "Forgotten. Start with a lens and a body."),),
            question=question, forgets=True,
        )  # fmt: skip
    if _of_the_frame(question, before):
        from engine.answers.picture.dark_edge import why_dark

        return why_dark(question, knowledge)
    of_it = hub_rings(question, before, chains_first) or why_of_it(question, before, knowledge)
    if of_it is not None:
        return of_it
    left = left_so(question, before, knowledge) if question.intent == WHY and question.follows else None
    left = other_on_same(question, before, rows, knowledge) or left
    if left is not None:
        return left
    of_iris = why_iris(question, rows, knowledge, chains_first) if _asks_on(question) else None
    if of_iris is not None:
        return of_iris
    rows = as_off(question, rows, knowledge.catalogue, chains_first)
    apart = question.topic == HARM or (question.topic == IRIS and not question.follows)  # not of the seat
    if question.topic == SURE and question.follows and before is not None and before.intent == IDENTIFY_MOUNT:
        from engine.answers.sure_which import how_sure_which

        return how_sure_which(question, before, knowledge)
    if question.intent == WHY and not apart and not is_not_of_the_seat(question, knowledge):
        return _why(question, rows, knowledge, chains_first)
    if question.intent == DRAW:
        return _drawing(question, before, rows, knowledge) if question.follows and rows else None
    if question.topic == REMEDY and question.follows and rows and not question.adapters:
        from engine.answers.seat.doubting import put_right

        number = question.number or _meant(question.with_(topic="not"), rows)
        return put_right(question, rows, number, knowledge, question.feet) if 1 <= number <= len(rows) else None
    if question.number is not None and question.follows and rows and not _of_another_frame(question, before):
        if not 1 <= question.number <= len(rows):
            return no_such(question, len(rows))
        from engine.answers.seat.reasons import listing

        return listing(question, rows, question.number, knowledge)
    return None


def _asks_on(question: Question) -> bool:
    """Whether it only asks on of what was told: 'why not', 'what would fix it'."""
    # 'the aperture ring' is no adapter
    plain = question.topic == IRIS and not any(map(_is_described, question.adapters))
    bare = (plain or not question.adapters) and question.number is None
    return bare and (question.topic == REMEDY or (question.intent == WHY and question.topic in (None, "not", "iris")))


def _is_described(piece: Thing) -> bool:
    return bool(piece.ids or piece.front or piece.rear or piece.thickness_mm or piece.factor)


def _of_another_frame(question: Question, before: Question | None) -> bool:
    """'the first ones, with the 1/2.3 sensor, black corners?': what is told tells of the frame, not of the chain."""
    if before is None or question.intent not in OF_FRAMES:
        return False
    return [body.format for body in question.bodies] != [body.format for body in before.bodies]


def _of_the_frame(question: Question, before: Question | None) -> bool:
    """Whether the reason is asked for after what a lens lights of a frame."""
    if question.intent != WHY or not question.follows or before is None or not question.lenses:
        return False
    far = mentions(question, "soft-far", "no-farther")  # 'blurry far away, only focuses close' is none of what is lit
    crop = before.intent in OF_FRAMES and mentions(question, "crop")  # 'why bother with the crop then'
    return crop or (before.intent == COVERAGE and question.topic in OF_FRAME and question.number is None and not far)


def _drawing(
    question: Question, before: Question | None, rows: tuple[Listed, ...], knowledge: Knowledge
) -> Answer | None:
    """A drawing of a chain of the last answer; None where another lens, body or way is asked for."""
    from engine.answers.pictures import draw_again

    if before is None or any(
        getattr(question, part) != getattr(before, part) for part in ("lenses", "bodies", "adapters", "limits")
    ):
        return None
    if not 1 <= (question.number or 1) <= len(rows):
        return no_such(question, len(rows))
    return draw_again(question, rows, knowledge)


def _why(
    question: Question, rows: tuple[Listed, ...], knowledge: Knowledge, chains_first: Callable[[Question], Answer]
) -> Answer | None:
    from engine.answers.seat.pairs_explained import with_rings_for_bodies
    from engine.answers.seat.reasons import why

    question = with_rings_for_bodies(question, knowledge)
    if question.topic in OF_PICTURE:
        return None  # the picture's edge is no matter of where the lens sits
    if question.topic != SURE and mentions(question, "said-danger") and not mentions(question, "glass-does"):
        return _why_harmful(question, knowledge) if not question.lenses[1:] else None  # why the one alone is hurt
    pairs = None
    rows = of_lens(question, rows)
    known = question.follows and rows and is_of(question, rows)
    if not known and question.lens is not None and question.body is not None:
        found = chains_first(question)
        rows = tuple(chain.listed for chain in found.chains or ())
        pairs = found if len(question.lenses) > 1 or len(question.bodies) > 1 else None  # why the one and not the other
        if not rows:
            # without the mounts of both there is no chain to give reasons for: the words themselves are answered
            named = question.lens.ids and question.body.ids
            return found if named or question.topic == SURE else None
    if not rows:
        return None
    rows += _without_glass(question, rows, chains_first)
    number = question.number or _meant(question, rows)
    if not 1 <= number <= len(rows):
        return no_such(question, len(rows))
    if question.topic == SURE:
        from engine.answers.seat.doubting import how_sure

        sure = how_sure(question, rows[number - 1], number, knowledge)
        return replace(
            sure, chains=_as_listed((rows[number - 1],), knowledge) if number > 1 else _as_listed(rows, knowledge)
        )
    told, short = why(question, rows[number - 1], number, knowledge, rows), _is_short(rows)
    if pairs is not None:
        told = replace(
            told, lines=(*pairs.lines, *told.lines), quantities=(*(told.quantities or ()), *(pairs.quantities or ()))
        )
    outright = _outright(question, rows[number - 1])
    if outright is not None:
        first = advice_lines([knowledge.catalogue.advice[outright]])
        return replace(told, lines=(*first, *but_of_edges(told.lines, question, short)))
    told = _with_grounds(told, pairs is not None or short, question, knowledge)
    return replace(told, chains=_as_listed(rows, knowledge))


def _outright(question: Question, row: Listed) -> str | None:
    """The advice that is the reason by itself: that makers cut rings thin, what glass in a ring does to the picture."""
    ranged = row.judged.setup.lens_mount.kind == "rangefinder" or mentions(question, "symmetrical")
    if ranged and mentions(question, "edges-smear") and not mentions(question, "on-one-side"):
        return "smear"
    if seen := next((told for key, told in SEEN_SO if question.places(key)), None):
        return seen
    # 'why is the M to E ring thinner than the M to X ring', 'so thin on EF but long on E' is of both
    alone = max(len(question.adapters), len(question.lenses), len(question.bodies)) < _TWO_RINGS
    tight = row.judged.setup.body_mount.kind == "slr"  # whose mirror a thicker ring keeps rears off
    for key, told, sign in CUT_SO:
        if alone and question.places(key) and error_mm(row) * sign > 0 and (tight or sign < 0):
            return told
    glazed = any(piece.has_glass for piece in row.judged.chain.adapters)
    return OF_GLASS if glazed and mentions(question, "glass-does") else None


def _is_short(rows: tuple[Listed, ...]) -> bool:
    """Whether the best way without glass falls short of infinity, so that the registers are the reason."""
    plain = (row.judged for row in rows if not any(piece.has_glass for piece in row.judged.chain.adapters))
    return next((judged.verdict != VERDICTS[0] for judged in plain), True)


def _why_harmful(question: Question, knowledge: Knowledge) -> Answer:
    """What may be harmed, and by what, of what was spoken of before as well."""
    said = f"{question.prior.text} {question.text}" if question.prior is not None else question.text
    told = ruled(question.with_(intent=HAZARD, topic=None, text=said), knowledge)
    return replace(told, text=question.text, intent=question.intent, question=question)


def _as_listed(rows: tuple[Listed, ...], knowledge: Knowledge) -> tuple[ListedChain, ...]:
    """The chains that the reasons are of and are set against, by the numbers that they were listed with."""
    from engine.answers.seat.telling import chain_title

    return tuple(ListedChain(at, row, chain_title(row.judged, knowledge)) for at, row in enumerate(rows, start=1))


def _with_grounds(answer: Answer, short: bool, question: Question, knowledge: Knowledge) -> Answer:
    """The reasons of a chain, after what the question's own numbers come from and the reason for what was seen.

    `short`: the registers keep it from infinity, which is the reason before any other.
    """
    from engine.answers.explained import explained
    from engine.answers.parts.nearby import SEEN, nearest

    told = explained(question, knowledge)
    rows = nearest(answer.text, knowledge.catalogue, 1, SEEN, "why", mounts=named_mounts(question, knowledge))
    shown = examples(rows, question, knowledge)
    reasons = (*advice_lines(rows), *shown.lines)
    first, second = (told.lines, reasons) if short else (reasons, told.lines)
    quantities = (*told.quantities, *shown.quantities, *(answer.quantities or ()))
    seat = but_of_edges(answer.lines, question, short or not reasons)
    answer = replace(answer, lines=(*first, *second, *seat), quantities=quantities)
    return with_room_asked(answer, question, knowledge) if mentions(question, ROOM_ASKED) else answer


def _without_glass(
    question: Question, rows: tuple[Listed, ...], chains_first: Callable[[Question], Answer]
) -> tuple[Listed, ...]:
    """Where the best chain has glass, the best without it: what the glass is there for."""
    with_glass = [any(piece.has_glass for piece in row.judged.chain.adapters) for row in rows]
    if question.limits.with_glass or not with_glass[0] or not all(with_glass) or question.number is not None:
        return ()
    limits = question.limits.__class__(without_glass=True)
    plain = chains_first(question.with_(limits=limits)).chains or ()
    return tuple(chain.listed for chain in plain[:1])


def _meant(question: Question, rows: tuple[Listed, ...]) -> int:
    """The chain that a reason is asked for: the first that falls short where it is 'why not', or an end is told.

    All else is about the best.
    """
    from engine.answers.parts.said import tells_limit

    lost = question.topic == "infinity" and mentions(question, "infinity-lost")
    seen = question.number is None and (tells_limit(question) or lost)
    if question.topic == "not" or seen:
        short = [n for n, row in enumerate(rows, start=1) if row.judged.verdict != VERDICTS[0]]
        plain = [n for n in short if not any(one.has_glass for one in rows[n - 1].judged.chain.adapters)]
        return next(iter(plain if seen and plain else short), 1)
    return 1


def no_such(question: Question, count: int) -> Answer:
    text = f"The last answer listed {count}; ask for one of 1 to {count}." if count else "The last answer listed none."
    return Answer(question.text, question.intent, NO, (Line("ask", text),), question=question)
