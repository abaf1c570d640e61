"""What a question is once it has been read: one frozen value with an intent and the things it names."""

from __future__ import annotations

from typing import Final

from engine.base.compact import compact, field, replace
from engine.base.spaced import Spaced
from grammar.kinds import DIY_DIMENSION
from grammar.words.mentioned import Mention

# what is said to the program itself, of no lens and no body
TALKED: Final = frozenset(["help", "hello", "thanks", "noted", "quit", "start-over", "show-memory", "list-gear"])
DRAWINGS: Final = ("section", "frame", "distances")  # in the order they are drawn
DRAWN: Final = "drawn"  # the topic of a question that was drawn: 'and the frame' is to be drawn too
AND: Final = " and "  # between several of them in a topic
ALL: Final = "all"  # key of the value that tells of which things all of one's own are meant: 'lenses', 'bodies'


# key of the value that tells which lens is to go on which body, by their mounts: 'om-mount l-mount, k-mount e-mount'
TO_ITS_OWN: Final = "to its own"
BY_REGISTER: Final = "assumed by register"  # trait of a lens that has another mount than it is named by
BY_MEASURES: Final = "assumed by measures"  # trait of a lens whose mount is one that all that was measured tells
BY_THREAD: Final = "assumed by thread"  # trait of a lens whose mount is one of those its thread allows
OFF: Final = "off"  # key of the value that tells how a thickness was meant in the turn that told it
BODY_OFF: Final = "body-off"  # key of the value that tells how far the register measured on the body itself is off, mm
CLEAR_DEPTH: Final = "clear_depth"  # key of what a body was told to leave free behind its flange
BODY_REGISTER: Final = "body_register"  # key of the register measured on a body that a lens of another mount is put on
REFIT: Final = "refit"  # key of the value that tells the mount a lens had, and the one it was given, by their ids
MODE: Final = "mode"  # key of the value that tells which frame was told as a mode before
# a thickness said so is not that of the ring, but by how much it is off
RING: Final = "adapter"
# how keys of what is mentioned begin that tell it, the rest is the word for it; and the one that only asks by how much
OFF_KEY, BY_ASKED = "off-", "off-by-asked"
_THINNEST_RING: Final = 0.5  # mm; by less it goes beyond what it should be, unless it 'is' that
FILTER: Final = "filter"  # the pieces that go before a lens
HOOD, CLOSE_UP_LENS = "hood", "close-up-lens"  # the topic of how long one may be; a piece
PROJECTOR_IRIS, RELEASE = "projector-iris-why", "release"  # advice that is asked for on the way
OF_OBJECTIVES: Final = frozenset(["objective-iris", "objective-depth", "objective-cover"])
BY_CABLE, BEST_CLOSE, C_OR_CS, ONLY_NEAR = "auto-iris-cable", "best-stop-close", "look-c-or-cs", "too-far-out-why"
ADVISED: Final = OF_OBJECTIVES | frozenset([PROJECTOR_IRIS, BY_CABLE, BEST_CLOSE, C_OR_CS, ONLY_NEAR, RELEASE])


@compact
class Thing:
    """A lens, body, mount, adapter or other thing that the question names or describes in place.

    `ids`: the records meant, the likeliest first; more than one where the words are ambiguous and nothing decided.
    `kind`: which sort of record they are: mount, lens, body, adapter, thread, format, term, advice, or '' where the
    thing is only described. Lengths in mm; None where it was not said.
    """

    kind: str = ""
    ids: tuple[str, ...] = ()
    words: str = ""  # as typed
    column: int = 0
    focal_length_mm: float | None = None
    f_number: float | None = None
    format: str | None = None
    lens_kind: str | None = None  # zoom, projector, enlarger, reversed, anamorphic ...
    traits: tuple[str, ...] = ()  # no aperture ring, fixed iris ...
    thickness_mm: tuple[float, float] | None = None  # an adapter described by its length
    factor: float | None = None  # a reducer or extender described by its factor
    count: int | None = None
    front: tuple[str, ...] = ()  # an adapter described by what it joins: the lens mount it takes (ids, likeliest first)
    rear: tuple[str, ...] = ()  # and the body mount it fits
    piece: str | None = None  # an adapter described by its kind: helicoid, extension-tube, focal-reducer, adapter ...
    steps: tuple[float, float] | None = None  # a step ring: the two filter threads it joins, mm, as said
    format_too: str | None = None  # a second format told of the same lens: 'a Super 16 zoom, 16 mm era'
    said_too: tuple[str, ...] = ()  # ids of further mounts that were said of the same lens: 'M bayonet, reflex housing'
    called: tuple[str, ...] = field(default=(), compare=False)  # unknown words beside it: what its user calls it

    @property
    def id(self) -> str | None:
        return self.ids[0] if self.ids else None

    @property
    def ambiguous(self) -> bool:
        return len(self.ids) > 1

    @property
    def is_of_one_length(self) -> bool:
        return self.thickness_mm is not None and self.thickness_mm[0] == self.thickness_mm[1]


@compact
class Limits:
    """What a chain must keep to. None: no limit."""

    pieces: int | None = None
    without_glass: bool = False
    with_glass: bool = False
    owned_only: bool = False
    price_usd: float | None = None
    without: tuple[str, ...] = ()  # adapter ids or kinds that must not be used
    using: tuple[str, ...] = ()  # adapter ids or kinds that must be used
    at_least: str | None = None  # a verdict: "with infinity"
    best: int | None = None  # how many to show
    cheapest: bool = False


@compact
class Taught:
    """What the user says of a thing of their own, or, with the intent to forget, which thing or field is meant.

    `fields`: key and value as the gear file has them. `id` is '' where the thing has no name yet, or where the last
    thing told is meant.
    """

    section: str  # lenses, bodies, adapters, or '' for the last thing told
    id: str = ""
    name: str = ""
    fields: tuple[tuple[str, str], ...] = ()


@compact
class Demand:
    """A condition on a named quantity. Of `number` (in the unit of the quantity's name), `word` and `than` one is told.

    `how`: < <= > >= is isnt. `than`: the lens whose own value is the bound. `bodies`: places in the question's bodies,
    `frames` in its formats, that this condition alone is about; none: it is about whatever the question is about.
    """

    quantity: str
    how: str
    number: float | None = None
    word: str = ""
    than: Thing | None = None
    negated: bool = False
    says: str = ""  # in canonical words
    bodies: tuple[int, ...] = ()
    frames: tuple[int, ...] = ()


@compact
class Order:
    """What comes first: the least or the greatest of a quantity, or what is nearest to `toward`.

    `says`: in canonical words.
    """

    quantity: str
    least: bool
    says: str
    toward: float | None = None


@compact
class Sought:
    """What is asked of all of one's own `of` (lenses, bodies, adapters): conditions, and the order of what fulfils.

    `any_of`: groups of conditions; a thing fulfils where one group holds whole. `why`: the lens named was not among
    them, or was, and the reason is asked for.
    """

    of: str
    any_of: tuple[tuple[Demand, ...], ...] = ()
    order: Order | None = None
    why: bool = False


@compact
class Question:
    text: str
    intent: str
    lenses: tuple[Thing, ...] = ()
    bodies: tuple[Thing, ...] = ()
    adapters: tuple[Thing, ...] = ()
    things: tuple[Thing, ...] = ()  # what is asked about where it is neither lens nor body: term, thread, format
    limits: Limits = Limits()
    f_number: float | None = None
    distance_mm: float | None = None
    number: int | None = None  # the chain of the last answer that is meant
    topic: str | None = None  # an advice, a word of the language ("infinity", "not"), a quantity
    values: tuple[tuple[str, str], ...] = ()  # other readings, as (key, text): shutter, iso, light, mark, turns ...
    follows: bool = False  # leans on the question before
    feet: bool = False  # the user spoke in inches or feet
    skipped: tuple[str, ...] = field(default=(), compare=False)  # words that were passed over
    taught: Taught | None = None
    instead: tuple[str, ...] = field(default=(), compare=False)  # whole questions that may have been meant as well
    sought: Sought | None = None
    wants: str = ""  # what the answer to it asked for, by name, so that a bare reply completes it
    corrects: bool = field(default=False, compare=False)  # a number told before was wrong, and this is the right one
    told: tuple[tuple[str, float], ...] = field(default=(), compare=False)  # numbers its answer told, by quantity
    known: tuple[Thing, ...] = field(default=(), compare=False)  # every lens that the talk has spoken of
    stops: tuple[float, ...] = field(default=(), compare=False)  # f-numbers told by themselves, in the order told
    # what an answer listens for, by key, and where it stands in the text
    mentioned: tuple[Mention, ...] = field(default=(), compare=False)
    scale_pair: tuple[float, float] | None = field(default=None, compare=False)  # what the scale says, what is so, mm
    asked: str = field(default="", compare=False)  # the words of before that still ask, where these only tell a number
    prior: Question | None = field(default=None, compare=False)  # the question before, to go back to
    beside: str = field(default="", compare=False)  # what was asked by the way since, of the same lens and body
    beside_text: str = field(default="", compare=False)  # and its words
    elsewhere: tuple[Thing, ...] = field(default=(), compare=False)  # other bodies or frames, told of last
    away: float | None = field(default=None, compare=False)  # how far away what should be sharp was told to be, mm
    stood: tuple[Thing, ...] = field(default=(), compare=False)  # the pieces that stood before those of now
    seat: Question | None = field(default=None, compare=False)  # what told last how a ring seats the lens
    # what of sheet lies under the ring, which is told with it, what was taken out again last, and one layer of it, mm
    laid: tuple[float, float, float] = field(default=(0.0, 0.0, 0.0), compare=False)
    drawn: float | None = field(default=None, compare=False)  # how far its helicoid goes in all, mm
    spaced: Spaced | None = field(default=None, compare=False)  # what is to stand before a corrector
    # light, shutter and the rest of an exposure as told last, whatever was asked since
    lit: tuple[tuple[str, str], ...] = field(default=(), compare=False)
    called: tuple[tuple[str, Thing], ...] = field(default=(), compare=False)  # words for bodies: 'the board camera'

    @property
    def between(self) -> tuple[Thing, ...]:
        """The pieces that may go between lens and body; a filter of no told thickness goes before the lens."""
        return tuple(one for one in self.adapters if one not in self.before_lens)

    @property
    def before_lens(self) -> tuple[Thing, ...]:
        """The pieces that go before the lens."""
        return tuple(
            one for one in self.adapters
            if one.piece == CLOSE_UP_LENS or (one.piece == FILTER and one.thickness_mm is None)
        )  # fmt: skip

    @property
    def is_of_a_fault(self) -> bool:
        """Whether it asks on of a fault seen in the picture, of which the reason was told."""
        return self.follows and self.prior is not None and self.prior.beside == "why"

    @property
    def lens(self) -> Thing | None:
        return self.lenses[0] if self.lenses else None

    @property
    def body(self) -> Thing | None:
        return self.bodies[0] if self.bodies else None

    @property
    def frames(self) -> tuple[Thing, ...]:
        """The formats that stand for themselves, of no body."""
        return tuple(thing for thing in self.things if thing.kind == "format")

    def said(self, key: str) -> str | None:
        """The reading under `key` of `values`, None where it was not said."""
        return dict(self.values).get(key)

    def rest(self, *keys: str) -> tuple[tuple[str, str], ...]:
        """The values but those under these keys."""
        return tuple(row for row in self.values if row[0] not in keys)

    def without(self, *keys: str) -> Question:
        """The question with what was said under these keys left out."""
        return self.with_(values=self.rest(*keys))

    def mentions(self, *keys: str) -> bool:
        """Whether the text, or what still asks of the question before, holds a phrase of one of the keys."""
        return not frozenset(keys).isdisjoint([one.key for one in self.mentioned])

    def places(self, key: str) -> tuple[Mention, ...]:
        """Where in the text itself phrases of the key stand, in their order."""
        return tuple(one for one in self.mentioned if one.key == key and one.at < len(self.text))

    @property
    def asks_which_way(self) -> bool:
        """'too thick or too thin?', of a size; '0.1 too thick or thin' tells by how much, either way."""
        return self.mentions("which-way-off") and not self.mentions("off-either-way")

    @property
    def off_word(self) -> str | None:
        """How a thickness is off: as said in this turn, else as in the one before that it goes on from."""
        if self.asks_which_way:
            return self.said(OFF)
        if self.places("overdone"):
            return "too thin"  # '0.05 too much taken off'
        pieces = self.places("thin-piece")  # 'a 0.2 thin plate' is so thick, and not so much too thin
        toos = {one.at for one in self.mentioned if one.key == "too"}  # 'a 1 mm too thick ring' is off all the same
        reckoned = BY_ASKED if self.said(OFF) is not None else ""  # 'how much is it off' tells no way
        for one in self.mentioned:
            within = any(one.at <= piece.at < one.end for piece in pieces) and one.at not in toos
            if one.key.startswith(OFF_KEY) and not (within or one.key == reckoned):
                return one.key.removeprefix(OFF_KEY).replace("-", " ")
        if self._is_off_by("beyond-by", self.places("is-a-number")) or self._is_off_by("over-by"):
            return "too thick"
        return "too thin" if self._is_off_by("below-by") else self.said(OFF)

    def _is_off_by(self, key: str, sizes: tuple[Mention, ...] = ()) -> bool:
        """Whether a ring is told to be so much 'over', or 'under'. `sizes`: where 'is 0.2 thick' is no error."""
        over = [one for one in self.places(key) if not any(size.at < one.at < size.end for size in sizes)]
        ring = self.intent == DIY_DIMENSION or any(piece.piece == RING for piece in self.adapters)
        return ring and any((one.number or 0.0) < _THINNEST_RING for one in over[:1])

    def with_(self, **changes: object) -> Question:
        return replace(self, **changes)


@compact
class Unread:
    """A question that could not be read: where, what stands there, what could, and the nearest known word."""

    text: str
    column: int  # from 1, into `text`
    found: str
    expected: str
    nearest: str | None = None
    guesses: tuple[str, ...] = ()  # whole questions that may have been meant
    partial: Question | None = None  # what was understood, for the next to lean on
