"""How the lens goes on the body, in a line beside an answer about something else of the two."""

from __future__ import annotations

from engine.answers.parts.answer import Answer, Line, ListedChain, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import BodySide, LensSide, body_side, lens_side
from engine.answers.seat.iris import iris_text
from engine.base.compact import replace
from grammar.kinds import CHAIN
from grammar.questions import Question

MOST_PAIRS = 4


def with_pair(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer with the best way for each lens on each body that it is about; as it is where there is none."""
    lenses, bodies = question.lenses, question.bodies
    if answer.chains or not lenses or not bodies or len(lenses) * len(bodies) > MOST_PAIRS:
        return answer
    from engine.answers.ways.several import pair_numbers, pair_of, pair_told

    lines: list[Line] = []
    quantities: list[Quantity] = []
    chains: list[ListedChain] = []
    for thing in lenses:
        for place in bodies:
            lens, body = lens_side(thing, knowledge.catalogue), body_side(place, knowledge.catalogue)
            if not (isinstance(lens, LensSide) and isinstance(body, BodySide)) or lens.mount.id == body.mount.id:
                continue
            asked = question.with_(intent=CHAIN, topic=None)
            pair = pair_of(asked, lens, body, knowledge, by_lens=len(lenses) > 1, by_body=len(bodies) > 1)
            if pair.chain is None:
                continue
            if len(lenses) == len(bodies) == 1:
                _, iris = iris_text(pair.chain.listed.judged)
                lines.append(
                    Line("text", f"On that body: {pair_told(pair, question.feet)}. {iris[:1].upper()}{iris[1:]}.")
                )
            else:
                lines.append(Line("fact", pair_told(pair, question.feet), 1))
            told = {row.name for row in answer.quantities or ()}
            quantities += [row for row in pair_numbers(pair, knowledge) if row.name not in told]
            chains.append(ListedChain(len(chains) + 1, pair.chain.listed, pair.chain.title))
    if not chains:
        return answer
    heads = [] if len(lenses) == len(bodies) == 1 else [Line("head", "How each gets there:")]
    return replace(
        answer, lines=(*answer.lines, *heads, *lines), chains=tuple(chains),
        quantities=(*(answer.quantities or ()), *quantities),
    )  # fmt: skip
