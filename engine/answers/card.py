"""Cards to carry: one small card for each lens on each body, with everything that is needed where it is used."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from engine.answers.cards.card_light import light_of
from engine.answers.cards.card_picture import picture_of
from engine.answers.cards.card_scale import scale_of
from engine.answers.cards.card_words import (
    alerts_of,
    check_of,
    close_up_alert,
    head_of,
    settings_of,
    stack_of,
    subject_of,
)
from engine.answers.close.coupled import is_turned
from engine.answers.close.dioptres import powers_of
from engine.answers.own.own_places import with_all_of_mine
from engine.answers.parts.answer import ANSWERED, NO, Answer, Line, ListedChain, Quantity
from engine.answers.parts.card_parts import Card, Cards, Numbers, figures_of, spoken
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import BodySide, LensSide, Missing, body_side, lens_side, setup_of
from engine.answers.parts.said import numbers as numbers_of
from engine.answers.remembered import no_such
from engine.answers.seat.telling import chain_title
from engine.answers.ways.pair import one_pair
from engine.answers.ways.pairs import as_measured
from engine.base.compact import replace
from engine.facts.kinds import TUBELIKE
from engine.judging.judge import Judged
from engine.judging.ranking import Listed
from grammar.kinds import MACRO_DISTANCE
from grammar.questions import ALL, Question

MOST_CARDS = 100


def cards(question: Question, knowledge: Knowledge, rows: Sequence[Listed] = ()) -> Answer:
    """A card for each lens on each body. `rows`: the chains of the last answer, one of which may be meant."""
    if question.number is not None and rows and not 1 <= question.number <= len(rows):
        return no_such(question.with_(number=None), len(rows))
    if any(is_turned(lens) for lens in question.lenses):
        from engine.answers.turned_answer import turned  # seldom asked of a card

        return turned(question, knowledge)
    question = with_all_of_mine(question, knowledge.catalogue)
    lenses = [lens_side(thing, knowledge.catalogue) for thing in question.lenses or (None,)]
    bodies = [body_side(thing, knowledge.catalogue) for thing in question.bodies or (None,)]
    missing = [side for side in (*lenses, *bodies) if isinstance(side, Missing)]
    if missing:
        return _of_tubes(question, knowledge) or _asked_back(question, missing)
    if len(lenses) == 1:  # what was measured is told of the one lens
        lenses = [as_measured(lens, question) for lens in lenses if isinstance(lens, LensSide)]
    pairs = [(lens, body) for lens in lenses for body in bodies if isinstance(lens, LensSide)]
    made: list[Card] = []
    chains: list[ListedChain] = []
    lines: list[Line] = []
    for lens, body in pairs[:MOST_CARDS]:
        assert isinstance(body, BodySide)
        listed = _chain(question, lens, body, knowledge, rows)
        if listed is None:
            lines.append(Line("note", f"{lens.words[:1].upper()}{lens.words[1:]} on {body.words}: no way found."))
            continue
        number = len(made) + 1
        made.append(card_of(listed.judged, question, knowledge, Numbers(f"card {number}")))
        chains.append(ListedChain(number, listed, chain_title(listed.judged, knowledge)))
        lines.append(Line("chain", f"{number}. {spoken(made[-1].subject)}"))
        lines.append(Line("fact", spoken(made[-1].head), 1))
        lines += [Line(row.severity, spoken(row.text), 1) for row in made[-1].alerts if row.severity == "danger"]
    if len(pairs) > MOST_CARDS:
        lines.append(Line("note", f"Only the first {MOST_CARDS} of {len(pairs)} pairs are on cards."))
    return Answer(
        question.text, question.intent, ANSWERED if made else NO, tuple(lines), question=question,
        chains=tuple(chains), quantities=tuple(_quantities(made)),
        cards=Cards(tuple(made), _name(pairs, made)) if made else None,
    )  # fmt: skip


def best_cards(question: Question, knowledge: Knowledge) -> Answer:
    """The cards where there is no answer before."""
    return cards(question, knowledge)


def card_of(judged: Judged, question: Question, knowledge: Knowledge, numbers: Numbers) -> Card:
    """One card."""
    feet = question.feet
    alerts = (*alerts_of(judged, knowledge, numbers, feet), *close_up_alert(judged, powers_of(question), numbers, feet))
    return Card(
        head_of(judged, numbers, feet),
        subject_of(judged, numbers),
        alerts,
        stack_of(judged, knowledge, numbers),
        scale_of(judged, knowledge, numbers, feet, numbers_of(question, "mark")),
        picture_of(judged, question, knowledge, numbers),
        light_of(judged, question, knowledge, numbers),
        settings_of(judged, knowledge, numbers, feet),
        check_of(judged, numbers, feet),
    )


def _quantities(made: Sequence[Card]) -> Iterator[Quantity]:
    seen: set[tuple[str, str | None]] = set()
    for card in made:
        for figure in figures_of(card):
            row = figure.quantity
            if (row.name, row.case) not in seen:
                seen.add((row.name, row.case))
                yield row


def _of_tubes(question: Question, knowledge: Knowledge) -> Answer | None:
    """'a card that says how near each tube brings my 50': what tubes do to a lens hangs on no mount."""
    lens = question.lens
    tubes = any(piece.piece in TUBELIKE for piece in question.adapters)
    told = any(body.ids or body.format for body in question.bodies)
    if lens is None or lens.focal_length_mm is None or told or not tubes or len(question.lenses) > 1:
        return None
    from engine.answers.closeup import macro

    return macro(question.with_(intent=MACRO_DISTANCE, bodies=()), knowledge)


def _asked_back(question: Question, missing: Sequence[Missing]) -> Answer:
    ask = missing[0].ask
    if "lenses" in (question.said(ALL) or "") and not question.lenses:
        ask = "No lens of yours is known. Tell one: 'my avocet is a 25mm f/1.4 C-mount lens'."
    return Answer(question.text, question.intent, NO, (Line("ask", ask),), question=question)


def _chain(
    question: Question, lens: LensSide, body: BodySide, knowledge: Knowledge, rows: Sequence[Listed]
) -> Listed | None:
    """The chain meant by its number in the last answer, judged anew for this stop; else the best one."""
    setup = setup_of(lens, body, knowledge.catalogue, question.f_number)
    if question.number is not None and question.follows and 1 <= question.number <= len(rows):
        row = rows[question.number - 1]
        return replace(row, judged=knowledge.judge_chain(row.judged.chain, setup))
    chains = one_pair(question, lens, body, knowledge).chains
    return chains[0].listed if chains else None


def _name(pairs: Sequence[tuple[LensSide | Missing, BodySide | Missing]], made: Sequence[Card]) -> str:
    """What the file is called where nothing is told: 'avocet on skiff', '3 cards for skiff'."""
    bodies = {body.words for _, body in pairs if isinstance(body, BodySide)}
    lens = pairs[0][0]
    if len(made) == 1 and len(pairs) == 1 and isinstance(lens, LensSide):
        return f"card {lens.words} on {next(iter(bodies))}".replace("/", "")
    return f"{len(made)} cards for {next(iter(bodies))}".replace("/", "") if len(bodies) == 1 else f"{len(made)} cards"
