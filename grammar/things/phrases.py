"""The phrases of a question: its descriptions of things, each with its place, and what stands between."""

from __future__ import annotations

from typing import Final

from engine.base.compact import compact, field
from grammar.shifting import Node
from grammar.words.tokens import Token

TOLD: Final = "be"  # the value of the words by which something is said of a thing
DENIED: Final = "not"  # and of the word by which it is denied
TOWARDS: Final = frozenset(["on", "to"])  # values of the prepositions before what a lens is put on
_MEASURED: Final = ("KEYED", "thickness")
_LISTS: Final = frozenset(["bare_closed", "bare_open", "role_closed", "role_open"])


@compact(frozen=False)
class Noun:
    """One description: 'on my 25 mm f/1.4 C-mount lens'. `listed`: the list it stands in, counted from 1."""

    role: str = ""  # the preposition before it
    mods: list[Token] = field(default_factory=list)
    pair: list[Token] = field(default_factory=list)  # mounts linked as those of one adapter
    head: Token | None = None
    tails: list[Token] = field(default_factory=list)
    listed: int = 0
    join: str = ""  # what joins it to the one before in its list: ',', 'or', 'vs' ...
    sentence: int = 0
    apart: bool = False  # whether other words stand between it and the description before
    told: bool = False  # whether an 'is' or 'has' stands between, so that it is said of what stands before
    measured: bool = False  # whether a thickness was told since the description before: it has its own
    denied: bool = False  # whether a 'not' stands right before it
    aside: bool = False  # whether it stands in brackets
    column: int = 0
    text: str = ""

    def all(self, *kinds: str) -> list[Token]:
        """Its tokens of these kinds, those after the head too, in order."""
        return [token for token in self.mods if token.kind in kinds] + [
            token for token in self.tails if token.implies[0] in kinds
        ]

    def first(self, *kinds: str) -> Token | None:
        found = self.all(*kinds)
        return found[0] if found else None

    @property
    def heads(self) -> str:
        return self.head.kind if self.head else ""

    def headed_by(self, kind: str) -> bool:
        """Whether its head, or a head word that only describes, is of this kind."""
        return self.heads == kind or any(token.kind == "HEADMOD" and token.unit == kind for token in self.mods)


@compact(frozen=False)
class Between:
    """What stands between descriptions. `sort`: limit, setting, value or word."""

    sort: str
    tokens: list[Token]
    sentence: int = 0

    @property
    def token(self) -> Token:
        return self.tokens[-1]


Phrase = Noun | Between


def phrases_of(tree: Node, text: str) -> list[Phrase]:
    """The phrases of a parsed question in order."""
    out: list[Phrase] = []
    sentence = listed = 0
    apart = told = measured = False
    for part in tree.parts:
        if part.rule in _LISTS:
            listed += 1
            join = ""
            for thing in part.parts:
                if thing.rule == "join":
                    join = thing.parts[0].value
                    continue
                noun = _noun(thing, text)
                noun.listed, noun.sentence, noun.join, noun.apart = listed, sentence, join, apart
                noun.measured = measured
                noun.told = told and not noun.role and not join
                before = out[-1] if out else None
                noun.denied = isinstance(before, Between) and before.token.value == DENIED
                out.append(noun)
                apart = told = measured = False
            continue
        between = Between(part.rule, list(part.parts), sentence)
        out.append(between)
        apart = True
        measured = measured or (between.token.kind, between.token.value) == _MEASURED
        told = between.token.kind != "STOP" and (told or between.token.value == TOLD)
        if between.token.kind == "STOP":
            sentence += 1
    return out


def _noun(thing: Node, text: str) -> Noun:
    noun = Noun()
    tokens: list[Token] = []
    for part in thing.parts:
        if part.rule == "role":
            noun.role = part.parts[0].value
        elif part.rule == "mods":
            for mod in part.parts:
                if isinstance(mod, Node):
                    mounts = [one for one in mod.parts if one.kind == "MOUNT"]
                    noun.pair.extend(mounts)
                    tokens.extend(mounts)
                else:
                    noun.mods.append(mod)
                    tokens.append(mod)
        elif part.rule == "head":
            noun.head = part.parts[0]
            tokens.append(part.parts[0])
        else:
            noun.tails.append(part.parts[0])
            tokens.append(part.parts[0])
    first, last = min(tokens, key=lambda one: one.column), max(tokens, key=lambda one: one.column)
    noun.column = first.column
    before = text[: first.column - 1]
    noun.aside = before.count("(") > before.count(")")
    noun.text = text[first.column - 1 : last.column - 1 + len(last.text)].strip()
    return noun
