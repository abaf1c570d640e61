"""One lens offered in several mounts, for one body: each by its ring there, its price, and who closes the iris."""

from __future__ import annotations

from collections.abc import Sequence

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import BodySide, LensSide
from engine.answers.seat.chain_numbers import price_of
from engine.answers.seat.telling import iris_text
from engine.answers.ways.several import Pair, pair_numbers, pair_of, pair_told
from grammar.questions import Question


def mounts_on_body(
    question: Question, lenses: Sequence[LensSide], bodies: Sequence[BodySide], knowledge: Knowledge
) -> Told:
    """Nothing where the lenses do not differ by their mounts, or where there is more or less than one body."""
    if len(bodies) != 1 or len({lens.mount.id for lens in lenses}) < 2:
        return Told()
    pairs = [pair_of(question.with_(adapters=()), lens, bodies[0], knowledge, True, False) for lens in lenses]
    told = Told()
    for pair in pairs:
        lines = [Line("fact", pair_told(pair, question.feet))]
        rows = [*pair_numbers(pair, knowledge)]
        if pair.chain is not None:
            judged = pair.chain.listed.judged
            lines.append(Line("fact", iris_text(judged)[1], 1))
            band = price_of(judged)
            rows += [Quantity("price", band, pair.case)] if band is not None else []
        told += Told(tuple(lines), tuple(rows))
    return _decided(pairs) + told


def _decided(pairs: Sequence[Pair]) -> Told:
    """Which keep infinity, and which ring is the cheapest of those that do."""
    far = [pair for pair in pairs if pair.chain is not None and pair.chain.listed.judged.verdict == "infinity"]
    if not far:
        return Told((Line("head", "None of them reaches infinity there."),))
    every = "Both" if len(pairs) == 2 else "All of them"
    text = f"{every} reach infinity there." if len(far) == len(pairs) else (
        f"Only {' and '.join(pair.words for pair in far)} reaches infinity there."
    )  # fmt: skip
    priced = [(band.nominal, pair.words) for pair in far if pair.chain and (band := price_of(pair.chain.listed.judged))]
    if len(priced) > 1 and min(priced)[0] < max(priced)[0]:
        text += f" The ring for {min(priced)[1]} is the cheapest."
    return Told((Line("head", text),))
