"""On which bodies a question about all of one's own gear is worked out, where it names none."""

from __future__ import annotations

from collections.abc import Sequence

from engine.answers.own.own_cases import asked_of, needs_body, needs_format
from engine.facts.catalogue import Catalogue
from engine.judging.ranking import Listed
from grammar.kinds import COMPARE
from grammar.questions import ALL, Question, Thing
from grammar.turns.seat_held import same_mounts


def placed(question: Question, before: Question | None, catalogue: Catalogue) -> Question:
    """The question with the body of before, else the only body of one's own, else all of them; the lens likewise."""
    told = question.sought
    if told is None or told.of == "adapters":
        return question
    if told.of == "bodies":
        lenses = question.lenses or (before.lenses if before is not None else ())
        return question.with_(lenses=lenses or own(catalogue, "lens"), bodies=own(catalogue, "body"))
    if question.bodies or not _hangs_on_body(question):
        return question
    remembered = before.bodies if before is not None and question.intent != "all-on-all" else ()
    return question.with_(bodies=remembered or own(catalogue, "body"))


def pointed(question: Question, rows: Sequence[Listed]) -> Question:
    """'the second one' of a list of one's own lenses: the question is about that lens, on its body, from now on."""
    number = question.number
    if not question.follows or question.intent == COMPARE or number is None or not 1 <= number <= len(rows):
        return question
    if len({row.judged.setup.lens.id for row in rows} | {row.judged.setup.body.id for row in rows}) <= 2:
        return question
    setup = rows[number - 1].judged.setup
    lens = (Thing("lens", (setup.lens.id,), setup.lens.name),) if setup.lens.id else question.lenses
    body = (Thing("body", (setup.body.id,), setup.body.name),) if setup.body.id else question.bodies
    return question.with_(lenses=lens, bodies=body)


def with_all_of_mine(question: Question, catalogue: Catalogue) -> Question:
    """'all my lenses', 'all my bodies': those of the gear file, in its order; not where others are named since."""
    every = (question.said(ALL) or "").split(", ")
    lenses, bodies = own(catalogue, "lens"), own(catalogue, "body")
    kept = []
    if "lenses" in every and (not question.lenses or same_mounts(question.lenses, lenses)):
        question = question.with_(lenses=lenses)
        kept.append("lenses")
    if "bodies" in every and (not question.bodies or same_mounts(question.bodies, bodies)):
        question = question.with_(bodies=bodies)
        kept.append("bodies")
    rest = question.rest(ALL)
    return question.with_(values=(*rest, (ALL, ", ".join(kept)))) if kept else question.with_(values=rest)


def own(catalogue: Catalogue, kind: str) -> tuple[Thing, ...]:
    """The user's own lenses, bodies or adapters, in the order of the gear file."""
    table = {"lens": catalogue.lenses, "body": catalogue.bodies, "adapter": catalogue.adapters}[kind]
    return tuple(Thing(kind, (name,), name) for name in table if name in catalogue.gear_ids)


def _hangs_on_body(question: Question) -> bool:
    told = question.sought
    assert told is not None
    if question.intent in (COMPARE, "all-on-all") or question.limits != type(question.limits)():
        return True
    has_format = any(thing.kind == "format" for thing in question.things)
    names = [demand.quantity for group in told.any_of for demand in group]
    if not told.any_of and told.order is not None:
        # an order alone: 'widest first' is told by focal length where no body is spoken of
        return needs_format(asked_of(told.order.quantity, False, has_format)) and not has_format
    return any(needs_body(name) if has_format else needs_format(name) for name in names)
