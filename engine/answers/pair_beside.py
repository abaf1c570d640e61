"""How the lens goes on the body, in one line beside an answer about something else of the two."""

from __future__ import annotations

from engine.answers.answer import Answer, Line
from engine.answers.knowledge import Knowledge
from engine.answers.resolve import BodySide, LensSide, body_side, lens_side
from engine.answers.telling import iris_text
from engine.base.compact import replace
from grammar.questions import Question


def with_pair(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer with the best way for the one lens on the one body that it is about; as it is where there is none."""
    if answer.chains is not None or len(question.lenses) != 1 or len(question.bodies) != 1:
        return answer
    lens, body = lens_side(question.lens, knowledge.catalogue), body_side(question.body, knowledge.catalogue)
    if not (isinstance(lens, LensSide) and isinstance(body, BodySide)) or lens.mount.id == body.mount.id:
        return answer
    from engine.answers.several import pair_numbers, pair_of, pair_told

    pair = pair_of(question.with_(intent="chain", topic=None), lens, body, knowledge, by_lens=False, by_body=False)
    if pair.chain is None:
        return answer
    _, iris = iris_text(pair.chain.listed.judged)
    line = Line("text", f"On that body: {pair_told(pair, question.feet)}. {iris[:1].upper()}{iris[1:]}.")
    quantities = (*(answer.quantities or ()), *pair_numbers(pair, knowledge))
    return replace(answer, lines=(*answer.lines, line), chains=(pair.chain,), quantities=quantities)
