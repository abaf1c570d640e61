"""Records of what holds in general: terms, advice, rules, settings, assumptions, and the words people use."""

from __future__ import annotations

from engine.base.compact import compact, field
from engine.base.interval import UNKNOWN, Interval, Measure
from engine.base.place import NOWHERE, Place
from engine.facts.basis import Basis


@compact
class Term:
    id: str
    names: tuple[str, ...]
    means: str
    basis: Basis
    known_as: tuple[str, ...] = ()  # words of everyday use for it: no names, looked up where its meaning is asked
    about: tuple[str, ...] = ()  # how people tell what it means, who do not know the word
    per_format: str = ""  # the quantity that tells it of a format: allowed_blur_mm, crop_factor, format_diagonal_mm
    place: Place = field(default=NOWHERE, compare=False)


@compact
class Advice:
    """What to know or do about a topic, and whom to defer to."""

    id: str
    topic: str
    names: tuple[str, ...]
    says: str
    defer_to: str
    severity: str
    basis: Basis
    example: str = ""  # the worked table that goes with it, one of EXAMPLES
    mounts: tuple[str, ...] = ()  # the mounts that it tells of or helps to know
    bodies: tuple[str, ...] = ()  # the mounts of the bodies that it alone tells of; none: of any body
    about: tuple[str, ...] = ()  # further words that people use for it; they are looked for, not read as names
    traits: tuple[str, ...] = ()  # told first where lens or body has one of these, by itself or by its mount
    asked_as: str = ""  # the kind of question that it answers, where that is no reason and no danger
    plainly: str = ""  # said first where leave is asked for: 'is it safe', 'may I'
    measures: str = ""  # the fact that it tells how to find, by the key under which an answer asks for it
    happened: bool = False  # it tells what to do once it has happened, and not whether it may
    cue: str = ""  # the cue that makes a question one of danger, which it answers where nothing nearer warns
    place: Place = field(default=NOWHERE, compare=False)


@compact
class Rule:
    """`when` it holds, it lowers the verdict to `limits` (where given) and says `because`."""

    id: str
    when: str
    because: str
    severity: str
    limits: str | None = None
    measure: str = ""  # the reading that decides it where it is undecided
    undecided: str = ""  # what is said where it cannot be decided
    provided: str = ""  # what must hold for it not to apply, as a clause behind 'provided'
    advice: str | None = None  # the advice whose caution comes with it
    remedy: str | None = None  # the quantity whose change lifts it
    brief: str = ""  # the same in a few words, for a card
    hangs_on: str = ""  # the given quantity without which nothing is decided: while that is assumed it is undecided
    stands_when_longer: bool = False  # a longer chain is lowered by it as well: no tubes are tried against it
    place: Place = field(default=NOWHERE, compare=False)


@compact
class Setting:
    """What the body is to be told `when` the condition holds, in general terms."""

    id: str
    when: str
    says: str
    place: Place = field(default=NOWHERE, compare=False)


@compact
class Assumption:
    """A number the trade goes by where a fact is missing. Said to be assumed wherever it is used."""

    id: str
    value: Interval
    unit: str
    says: str
    basis: Basis
    place: Place = field(default=NOWHERE, compare=False)


@compact
class Word:
    """What people type (`says`) for a word of the language (`means`). Empty `means`: a filler."""

    id: str
    means: str
    says: tuple[str, ...]
    place: Place = field(default=NOWHERE, compare=False)


@compact
class Shared:
    """A designation that several mounts carry: asked back, or answered for the likeliest (`likely`).

    `across_mm`: what a caliper reads across the screw, where the designation is that of a screw.
    """

    id: str
    says: tuple[str, ...]
    mounts: tuple[str, ...]
    likely: str | None
    across_mm: Measure = UNKNOWN
    note: str = ""
    place: Place = field(default=NOWHERE, compare=False)
