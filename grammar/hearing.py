"""Everything that can be made out of a question on its own: its phrases, things, readings and likely intents."""

from __future__ import annotations

from typing import Final

from engine.base.compact import compact
from grammar.gathering import Cast
from grammar.intents import Weighed, features_of, weigh
from grammar.lexicon import Lexicon
from grammar.parsing import parse
from grammar.phrases import Phrase, phrases_of
from grammar.readings import Readings, readings_of
from grammar.roles import cast_of
from grammar.shaping import Shaped, shaped
from grammar.shifting import Misfit
from grammar.tokens import Cue, Line, tokens_of

_NAMING: Final = frozenset(["TRAIT", "KIND", "PIECE", "LIMIT", "MOUNT", "FORMAT"])


@compact
class Heard:
    line: Line
    cues: tuple[Cue, ...]
    shape: Shaped
    phrases: list[Phrase]
    cast: Cast
    readings: Readings
    features: frozenset[str]
    weighed: Weighed

    @property
    def text(self) -> str:
        return self.line.text

    def tells(self, cue: str) -> bool:
        return cue in self.features


def hear(text: str, lexicon: Lexicon, talking: bool = False) -> Heard:
    """What a text says on its own. `talking`: whether there is a question before it that it may lean on."""
    line = tokens_of(text, lexicon)
    cues = _free(line)
    told = frozenset(cue.tells for cue in cues)
    shape = shaped(line, told)
    tree = parse("question", shape.tokens)
    assert not isinstance(tree, Misfit), f"tokens that no rule takes: {shape.tokens}"
    phrases = phrases_of(tree, text)
    cast = cast_of(phrases)
    readings = readings_of(phrases, cast, told)
    features = features_of(line, cues, cast, readings) | ({"talking"} if talking else set())
    return Heard(line, cues, shape, phrases, cast, readings, features, weigh(features, lexicon))


def _free(line: Line) -> tuple[Cue, ...]:
    """The cues but for those that are only a part of a longer name: 'iris' of 'fixed iris' asks nothing."""
    spans = [(token.column, token.column + len(token.text) - 1) for token in line.tokens if token.kind in _NAMING]
    return tuple(
        cue
        for cue in line.cues
        if not any(
            start <= cue.column and cue.end <= end and (start, end) != (cue.column, cue.end) for start, end in spans
        )
    )
