"""What an answer is made of: lines to read, chains, quantities and the status a door leaves with."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, Final

from engine.answers.parts.quantity import Quantity as Quantity  # what every answer is built of comes from here
from engine.base.compact import compact, field
from engine.base.interval import Interval
from engine.judging.judge import Judged
from engine.judging.ranking import Listed
from grammar.questions import Question, Unread

if TYPE_CHECKING:
    from engine.answers.parts.card_parts import Cards  # made only where cards are asked for

ANSWERED: Final = 0
NO: Final = 1
NOT_UNDERSTOOD: Final = 2

Entity = Mapping[str, Any]


@compact
class Line:
    """A line of an answer. `kind`: head, text, chain, fact, note, caution, danger, ask, reason."""

    kind: str
    text: str
    depth: int = 0
    wants: str = ""  # of an ask: the fact that is asked for, where a bare reply can give it


@compact
class Told:
    """A part of an answer: what is said, and its numbers for the record."""

    lines: tuple[Line, ...] = ()
    quantities: tuple[Quantity, ...] = ()

    def __add__(self, other: Told) -> Told:
        return Told(self.lines + other.lines, self.quantities + other.quantities)

    def as_heads(self) -> Told:
        """The same said first, each line a sentence of its own, and not beneath something else."""
        lines = (Line("head", f"{line.text[:1].upper()}{line.text[1:]}.") for line in self.lines)
        return Told(tuple(lines), self.quantities)


@compact
class RingToMake:
    """The ring that is right here. `possible`: plain, recessed or no; `thickness_mm` None where unknown."""

    thickness_mm: Interval | None
    possible: str
    why: str


@compact
class ListedChain:
    """A chain of the answer with the words for it."""

    number: int
    listed: Listed
    title: str


@compact
class Sketch:
    """A drawing that is wanted: which kind, of which judged chain, and under which name without its ending.

    `number`: of the chain in the answer. `marks`: engraved distances in mm from the sensor. `aspect`: of the crop.
    """

    kind: str
    judged: Judged
    stem: str
    number: int = 1
    marks: tuple[float, ...] = ()
    aspect: float | None = None
    feet: bool = False


@compact
class Drawing:
    """A drawing that was saved, and where."""

    kind: str
    path: str
    number: int


@compact
class Document:
    """A file that goes with an answer: what it is called where nothing is told, its ending and its text."""

    name: str
    ending: str
    text: str


@compact
class Answer:
    text: str  # the question as typed
    intent: str | None
    status: int
    lines: tuple[Line, ...]
    reading: str = ""
    question: Question | None = None
    entities: Mapping[str, Entity | tuple[Entity, ...]] = field(default_factory=dict)
    chains: tuple[ListedChain, ...] | None = None
    ring: RingToMake | None = None
    quantities: tuple[Quantity, ...] = ()
    sketches: tuple[Sketch, ...] = ()  # drawings that are wanted and not yet made
    drawings: tuple[Drawing, ...] | None = None  # None: none were asked for
    unread: Unread | None = None
    learnt: Question | None = None  # the question as it is to be leant on, where the answer found out more
    draws_again: bool = False  # drew a chain of the answer before, and says nothing new of it
    cards: Cards | None = None
    document: Document | None = None
    saved: str | None = None  # where the document was written
    leaves: bool = False
    forgets: bool = False
    aside: bool = False  # it only looks back: what follows goes on with the question before it
