"""Answers that need no computing: help, the gear one has, what is out of scope, what cannot be computed yet."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Final

from engine.answers.about_itself import ABOUT
from engine.answers.parts.answer import ANSWERED, NO, Answer, Line
from engine.answers.parts.knowledge import Knowledge
from engine.facts.subjects import asked_as
from grammar.kinds import CHAIN, HAZARD, OUT_OF_SCOPE
from grammar.questions import Question

SURE: Final = 6.0  # how much an advice must share with a question that is not answered, to be told all the same
_VALUED: Final = "valuation"  # the topic of what a lens is worth
OF_WHAT: Final = (OUT_OF_SCOPE, HAZARD)  # kinds of advice that are told beside what is not answered
INSTEAD: Final = (
    "No repairs, no shops, and no lens or camera is valued or ranked here: for repairs see a qualified technician. "
    "What can be answered: how a lens gets on a body, what it then does, and which adapters that takes, with price "
    "bands."
)
# every one of these is asked by a test, so that help cannot be wrong
EXAMPLES: Final = (
    ("how it fits", "how do I get a C lens on my E-mount body"),
    ("limits", "how do I get an M42 lens on an F-mount body without glass, at most 2 adapters"),
    ("one lens described", "can a 25mm f/1.4 C-mount lens reach infinity on m43"),
    ("from where to where", "how close does a 50mm LTM lens focus on an E-mount APS-C body"),
    ("the reason", "why not infinity for a CS lens on a C body"),
    ("look-alikes", "what looks like M42"),
    ("what fits", "which lenses fit an L-mount body"),
    ("where it fits", "which bodies take a D-mount lens with infinity"),
    ("words", "what is a helicoid"),
    ("the frame", "will a 25mm C-mount lens cover m43"),
    ("equivalents", "35mm f/1.8 with a 0.71 reducer on an APS-C body, equivalent"),
    ("exposure", "how much ND for f/1.6 in full sun at 1/50, iso 100"),
    ("what is sharp", "hyperfocal of a 12.5mm lens at f/4 on super 16"),
    ("close up", "how close does a 50mm f/1.8 get with a 25mm extension tube"),
    ("infinity on its mark", "28mm lens, infinity at the 3 m mark, how thick a shim"),
    ("a part to make", "dimensions of a ring to make for an Exakta lens on a Z-mount body"),
    ("an unknown lens", "which mount has a 15.9mm thread of 0.8 pitch"),
    ("what to buy", "FD, OM and K lenses on E and Z bodies, how many adapters"),
    ("one or the other", "helicoid or tubes for an enlarger lens"),
    ("dangers", "is it safe to point a 500mm lens at the sun"),
    ("the camera's menu", "which focal length do I set for stabilisation with a 50mm lens"),
    ("a drawing", "draw a 25mm f/1.4 C-mount lens on m43"),
    ("a card to carry", "card for a 25mm f/1.4 C-mount lens on m43 at f/2.8 in full sun, 1/50"),
    ("your own gear", "my avocet is a 25mm f/1.4 C-mount lens"),
    ("which of your own", "which of my lenses cover full frame, widest first"),
    ("all at a glance", "all my lenses on all my bodies"),
    ("side by side", "25mm f/1.4 C vs 28mm f/2.8 SR on m43"),
)


def helped(question: Question, knowledge: Knowledge) -> Answer:
    """What can be asked; of the program itself, that part of it."""
    part = ABOUT.get(question.topic or "")
    if part is not None:
        return Answer(question.text, "help", ANSWERED, part, question=question)
    lines = [Line("head", "Ask in plain English. Then 'why?', 'at f/8?', 'and on m43?', 'the second one'.")]
    lines += [Line("fact", f"{kind}: {example}", 1) for kind, example in EXAMPLES]
    lines.append(
        Line("text", "'what are we talking about?' tells what is remembered; 'start over' drops it; 'quit' leaves.")
    )
    return Answer(question.text, "help", ANSWERED, tuple(lines), question=question)


def greeted(question: Question, knowledge: Knowledge) -> Answer:
    text = "Hello. Which lens, and which camera? Tell what you know: 'I have a 50mm M42 lens and an MFT body'."
    return Answer(question.text, "hello", ANSWERED, (Line("text", text),), question=question)


def thanked(question: Question, knowledge: Knowledge) -> Answer:
    return Answer(question.text, "thanks", ANSWERED, (Line("text", "You are welcome."),), question=question)


def noted(question: Question, knowledge: Knowledge) -> Answer:
    text = "Good. Go on asking of the same lens and body, or name others; 'start over' drops them."
    return Answer(question.text, "noted", ANSWERED, (Line("text", text),), question=question)


def left(question: Question, knowledge: Knowledge) -> Answer:
    return Answer(question.text, "quit", ANSWERED, (), question=question, leaves=True)


def gear(question: Question, knowledge: Knowledge) -> Answer:
    """The lenses, bodies and adapters of the user's own file."""
    from engine.answers.seat.observing import seen_text

    facts = knowledge.catalogue
    own = facts.gear_ids
    rows = [
        *(f"{lens.name}: {facts.mounts[lens.mount].designation} lens" for lens in facts.lenses.values()),
        *(f"{body.name}: body with {facts.mounts[body.mount].designation}" for body in facts.bodies.values()
          if body.id in own),
        *(f"{adapter.name}: adapter" for adapter in facts.adapters.values() if adapter.owned),
        *(seen_text(row, facts) for row in facts.observations.values()),
    ]  # fmt: skip
    if not rows:
        text = "No gear of yours is known. Tell it: 'my avocet is a 25mm f/1.4 C-mount lens'."
        return Answer(question.text, "list-gear", NO, (Line("text", text),), question=question)
    return Answer(question.text, "list-gear", ANSWERED, tuple(Line("fact", row) for row in rows), question=question)


def out_of_scope(question: Question, knowledge: Knowledge) -> Answer:
    """That it is not answered here, what is known beside it, and what can be asked instead."""
    from engine.answers.parts.nearby import nearest

    way = _of_contacts(question, knowledge)
    if way is not None:
        return way
    named = [name for thing in question.things if thing.kind == "advice" for name in thing.ids]
    near = [
        advice.id
        for advice in nearest(question.text, knowledge.catalogue, 1, SURE, question.intent)
        if asked_as(advice) in OF_WHAT
    ]
    table = knowledge.catalogue.advice
    named = [name for name in named if asked_as(table[name]) in OF_WHAT]
    topic = table.get(question.topic or "")
    told_of = [topic.id] if topic is not None and asked_as(topic) in OF_WHAT else []
    priced = question.topic == _VALUED and told_of  # no danger where only a price is asked
    rows = [table[name] for name in dict.fromkeys(told_of if priced else (*near, *named, *told_of))][:1]
    lines = [
        Line("head", "Sorry, that is not answered here."),
        *(Line("text", f"{row.topic[:1].upper()}{row.topic[1:]}: {row.says}") for row in rows),
        Line("text", INSTEAD),
    ]
    return Answer(question.text, "out-of-scope", NO, tuple(lines), question=question)


def _of_contacts(question: Question, knowledge: Knowledge) -> Answer | None:
    """Autofocus of a lens on a body that are known: the ring decides whether it can work at all."""
    from engine.answers.parts.said import mentions

    before = question.prior if question.prior is not None else question
    lenses, bodies = question.lenses or before.lenses, question.bodies or before.bodies
    known = any(one.ids for one in lenses) and any(one.ids for one in bodies)
    if not (known and mentions(question, "autofocus-asked")):
        return None
    from engine.answers.howto import how_to

    asked = question.with_(intent=CHAIN, topic=None, lenses=lenses, bodies=bodies, adapters=before.adapters)
    answer = how_to(asked, knowledge)
    return answer if answer.chains else None


def not_yet(question: Question, knowledge: Knowledge) -> Answer:
    text = "Understood, but this is not yet computed here. Ask how the lens gets on the body and how it focuses there."
    return Answer(question.text, question.intent, NO, (Line("text", text),), question=question)


HANDLERS: Final[Mapping[str, Callable[[Question, Knowledge], Answer]]] = {
    "help": helped,
    "hello": greeted,
    "thanks": thanked,
    "noted": noted,
    "quit": left,
    "list-gear": gear,
    "out-of-scope": out_of_scope,
}
