"""When something is added to an answer: in which kinds, where a value is told, where a phrase is heard."""

from __future__ import annotations

from collections.abc import Callable
from importlib import import_module

from engine.answers.parts.answer import Answer
from engine.answers.parts.knowledge import Knowledge
from grammar.questions import Question

Beside = Callable[[Answer, Question, Knowledge], Answer]  # what is added to an answer

ON_A_BODY = ("coverage", "crop-equivalent", "buy-plan")  # beside these it is told how the lens gets there
OF_THREADS = ("chain", "diy-dimension", "hazard", "why")  # kinds that may be asked of a thread in another
NAMING = ("chain", "focus-verdict", "identify-mount", "look-alike", "coverage", "list-fits")  # kinds that need a name
OF_A_RING = ("chain", "focus-verdict", "diy-dimension", "shim-calibration", "compare", "buy-plan", "list-fits")
READ_RINGS = ("chain", "focus-verdict", "diy-dimension", "identify-mount")  # kinds that may be asked of a measured ring
# kinds that may be asked of the gap behind a lens; where it may touch, the answer tells of it by itself
REACHING = ("chain", "focus-verdict", "diy-dimension", "coverage", "shim-calibration", "identify-mount", "list-fits")
# kinds that the shape of an anamorphic picture may be asked as
OF_PICTURES = (
    "coverage", "crop-equivalent", "gear-setting", "definition", "macro-distance", "chain", "focus-verdict", "draw",
)  # fmt: skip
WAYS = ("chain", "focus-verdict")  # kinds about how a lens gets on a body, which may tell what it shall do there


def named(module: str, name: str) -> Callable[[], Beside]:
    """What is added, by the module of this room and the name in it; the module is loaded only when it is called for."""

    def load() -> Beside:
        add: Beside = getattr(import_module(f"engine.answers.{module}"), name)
        return add

    return load


def where(load: Callable[[], Beside], *keys: str) -> Beside:
    """What is added where one of the values is told; its module is loaded only then."""

    def add(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
        told = any(question.said(key) is not None for key in keys)
        return load()(answer, question, knowledge) if told else answer

    return add


def heard(load: Callable[[], Beside], *keys: str) -> Beside:
    """What is added where one of the phrases is heard; its module is loaded only then."""

    def add(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
        return load()(answer, question, knowledge) if question.mentions(*keys) else answer

    return add
