"""Several bare numbers that are the front threads of lenses: 'fronts are 49, 52 and 55', 'an ND for 40.5 / 49 / 58'."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

KEY: Final = "filter-thread"
_FRONTS: Final = "front-sizes"  # the cue of the words for front threads
_DENSITY: Final = "nd"  # and that of a filter that goes on them
_FILTERS: Final = frozenset(["filter", "step-ring"])
# sizes that filters are made in, mm, and those of them that lenses have as focal lengths too
_SIZES: Final = frozenset(
    [22.5, 24, 25, 25.5, 27, 28, 30, 30.5, 34, 35.5, 37, 39, 40.5, 43, 46, 48, 49, 52, 55, 58, 60, 62, 67, 72, 77, 82]
)
_FOCALS: Final = frozenset([24, 25, 28, 30, 55, 58, 60])
_LEAST, _MOST = 18.0, 130.0  # mm
_OF_OTHERS: Final = frozenset(["LENS", "KIND", "MOUNT", "BODY", "FRAME", "FORMAT", "FNUM", "PITCH"])
_LEAST_ROW: Final = 2


def with_front_threads(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """The tokens with such numbers as KEYED; as they are where fewer than two of them are told."""
    parted = [part for token in tokens for part in _parted(token)]
    lens = [] if _FRONTS in told else [at for at in range(len(parted)) if _is_put_on(parted, at)]
    places = [at for at in range(len(parted)) if _may_be(parted, at) and at not in lens[:1]]
    sizes = {parted[at].numbers[0] for at in places}
    filters = _DENSITY in told or any(token.kind == "PIECE" and token.value in _FILTERS for token in tokens)
    sold = sizes <= _SIZES and not sizes <= _FOCALS
    if len(sizes) < _LEAST_ROW or not (_FRONTS in told or (filters and sold)):
        return tokens
    return [
        token.as_("KEYED", value=KEY, unit="mm") if at in places else token
        for at, token in enumerate(parted)
        if not (token.text == "/" and at - 1 in places)
    ]


def _may_be(tokens: list[Token], at: int) -> bool:
    """A bare number, or a length in mm, of nothing that follows it."""
    token = tokens[at]
    bare = token.kind == "NUMBER" or (token.kind == "LENGTH" and token.unit == "mm")
    if not bare or token.text.isalpha() or not _LEAST <= token.numbers[0] <= _MOST:
        return False
    after = tokens[at + 1].kind if at + 1 < len(tokens) else "STOP"
    return after not in _OF_OTHERS


def _is_put_on(tokens: list[Token], at: int) -> bool:
    """'two filters on a 24mm': what a filter is put on is a lens, where it can be one."""
    before = tokens[max(0, at - 2) : at]
    put = [(one.kind, one.value) for one in before] == [("PREP", "on"), ("DET", "A")]
    return put and _may_be(tokens, at) and tokens[at].numbers[0] in _FOCALS | {35.0, 40.0, 50.0, 85.0, 105.0}


def _parted(token: Token) -> list[Token]:
    """'49/58' and '46 49' look like two numbers of one thing: each is one here."""
    texts = token.text.replace("/", " ").split()
    if token.kind not in ("COMBO", "FRACTION") or len(texts) != len(token.numbers):
        return [token]
    return [Token("NUMBER", text, token.column, numbers=(n,)) for text, n in zip(texts, token.numbers, strict=True)]
