"""A question about all of one's own gear as one plain sentence in canonical words."""

from __future__ import annotations

from grammar.echo.thing_words import NameOf, limit_words, thing_words
from grammar.kinds import COMPARE
from grammar.questions import Demand, Question, Thing


def sought_sentence(question: Question, name_of: NameOf) -> str:
    """'which of my lenses cover the frame and reach infinity on my dory, widest first'."""
    told = question.sought
    assert told is not None
    bodies = [thing_words(thing, "body", name_of) for thing in question.bodies]
    frames = [name_of("format", thing.id or "") for thing in question.things if thing.kind == "format"]
    each = "each of " if len(bodies) > 1 and not any(one.bodies for group in told.any_of for one in group) else ""
    where = f" on {each}{' and '.join((*bodies, *frames))}" if (bodies or frames) and told.of != "bodies" else ""
    rest = [f"at f/{question.f_number:g}"] if question.f_number is not None else []
    rest += limit_words(question.limits, name_of)
    pieces = " and ".join(thing_words(thing, "adapter", name_of) for thing in question.adapters)
    tail = f" with {pieces}" if pieces else ""
    if question.intent == "all-on-all":
        return ", ".join([f"all my lenses{where or ' on all my bodies'}{tail}", *rest])
    if question.intent == COMPARE:
        return ", ".join([f"compare my {told.of}{where}{tail}", *rest])
    lenses = " and ".join(thing_words(thing, "lens", name_of) for thing in question.lenses)
    who = f" for {lenses}" if lenses and told.of == "adapters" else f" with {lenses}" if lenses and not told.why else ""
    places = {(one.bodies, one.frames) for group in told.any_of for one in group}
    everywhere = (tuple(range(len(bodies))), tuple(range(len(frames))))
    apart = bool(places - {((), ()), everywhere})
    groups = [
        " and ".join(f"{one.says}{_places(one, question, name_of) if apart else ''}" for one in group if one.says)
        for group in told.any_of
    ]
    plain = [one for group in told.any_of[:1] for one in group if not one.says]
    named = "".join(
        f"{one.number:g} mm " if one.number is not None
        else f"{thing_words(Thing('mount', (one.word,)), 'mount', name_of)} " for one in reversed(plain)
    )  # fmt: skip
    head = f"which of my {named}{told.of} {' or '.join(groups)}" if told.any_of else f"my {told.of}"
    if told.of == "adapters" and not told.any_of:
        head, where = "which of my adapters fit" if bodies else "which of my adapters", where.replace(" on ", " ", 1)
    sentence = f"{head}{who}{'' if apart else where}{tail}"
    order = [told.order.says] if told.order is not None else []
    whole = ", ".join([sentence, *order, *rest])
    return f"why {lenses} is or is not among: {whole}" if told.why else whole


def _places(demand: Demand, question: Question, name_of: NameOf) -> str:
    formats = [thing for thing in question.things if thing.kind == "format"]
    bodies: list[Thing] = [question.bodies[n] for n in demand.bodies if n < len(question.bodies)]
    names = [thing_words(thing, "body", name_of) for thing in bodies]
    names += [name_of("format", formats[n].id or "") for n in demand.frames]
    return f" on {' and '.join(names)}" if names else ""
