"""What is sold for a body where no lens is told by its mount: of the kind of piece, or for the kind of lens, named."""

from __future__ import annotations

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import BodySide
from engine.answers.parts.wording import money
from engine.base.interval import Interval
from engine.facts.records import Adapter
from grammar.questions import Question

MOST_OF_KIND = 6


def sold_on(question: Question, body: BodySide, knowledge: Knowledge) -> Told:
    """The pieces of the kinds named that fit the body, the cheapest first, where no lens is told yet."""
    kinds = {thing.piece for thing in question.adapters if thing.piece and thing.piece != "adapter"}
    mounts = knowledge.catalogue.mounts
    of_lens = {trait for thing in question.lenses for trait in thing.traits}  # 'any SLR lens'
    rows = sorted(
        (row.price_usd, row.id, row) for row in knowledge.catalogue.adapters.values()
        if row.rear == body.mount.id and row.front != row.rear and row.price_usd
        and (row.kind in kinds or (not kinds and _is_usual(row) and mounts[row.front].kind in of_lens))
        and (question.limits.price_usd is None or row.price_usd[0] <= question.limits.price_usd)
    )  # fmt: skip
    if not rows:
        return Told()
    lines = [Line("head", f"On {body.words} fit, cheapest first:")]
    lines += [Line("fact", f"{row.name} [{money(band)}]", 1) for band, _, row in rows[:MOST_OF_KIND]]
    lines.append(Line("ask", "For which lenses: their mount?", wants="lens"))
    return Told(tuple(lines), tuple(Quantity("price", Interval.between(*band), row.name) for band, _, row in rows))


def _is_usual(row: Adapter) -> bool:
    """Whether it is a ring as most people buy it: plain, and as thick as infinity asks for."""
    return row.kind == "plain" and row.seat_basis != "nominal"
