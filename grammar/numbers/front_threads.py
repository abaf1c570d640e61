"""Several bare numbers that are the front threads of lenses: 'fronts are 49, 52 and 55', 'an ND for 40.5 / 49 / 58'."""

from __future__ import annotations

from typing import Final

from grammar.words.groups import SCREW
from grammar.words.tokens import Token, is_plural

KEY: Final = "filter-thread"
OF_FILTER: Final = "filter-size"  # the key of the one that is the filter's, where the other is that of a lens
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
_TURNED: Final = "revers"
_BINDS: Final = frozenset(["wont-go", "stuck", "force"])  # cues that a screw does not go in
_LEAST_ROW: Final = 2
_BESIDE: Final = 3  # so far after the word for a filter its size may stand: 'the filter is a 52'
_NARROW: Final = 48.0  # mm: a bare number below it beside 'lens' is a focal length, where lenses are made with that
_TOLD_LENS: Final = frozenset(["FNUM", "COMBO", "MOUNT", "KIND", "FORMAT", "LETTER", "RANGE"])


def with_front_threads(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """The tokens with such numbers as KEYED; as they are where fewer than two of them are told."""
    parted = [part for token in tokens for part in _parted(token)]
    whole = [part for token in parted for part in _sized(token)]
    pair = _filter_and_lens(whole)
    if pair is not None:
        return _with_pair(whole, *pair)
    parted = [_width(token) for token in parted] if any(_may_be(parted, at) for at in range(len(parted))) else parted
    lens = [] if _FRONTS in told else [at for at in range(len(parted)) if _is_put_on(parted, at)]
    places = [at for at in range(len(parted)) if _may_be(parted, at) and at not in lens[:1]]
    made = [at for at in places if parted[at].numbers[0] in _SIZES]
    turned = any(_TURNED in token.text.casefold() for token in tokens)
    places = made if turned and len(made) >= _LEAST_ROW else places  # '35 reversed on an 85, fronts 52 and 49'
    sizes = {parted[at].numbers[0] for at in places}
    filters = _DENSITY in told or any(token.kind == "PIECE" and token.value in _FILTERS for token in tokens)
    sold = sizes <= _SIZES and not sizes <= _FOCALS
    if len(sizes) == len(places) == 1 and filters and told & _BINDS and parted[places[0]].kind == "NUMBER":
        return [one.as_("KEYED", value=KEY, unit="mm") if at in places else one for at, one in enumerate(parted)]
    if len(sizes) < _LEAST_ROW or not (_FRONTS in told or (filters and sold)):
        return tokens
    return [
        token.as_("KEYED", value=KEY, unit="mm") if at in places else token
        for at, token in enumerate(parted)
        if not (token.text == "/" and at - 1 in places)
    ]


def _filter_and_lens(tokens: list[Token]) -> tuple[int, int] | None:
    """'a 52 filter on a 49 lens': where the size of the filter stands and where that of the front."""
    filters = [at for at, token in enumerate(tokens) if token.kind == "PIECE" and token.value == "filter"]
    sizes = [at for at, token in enumerate(tokens) if _is_size(token)]
    numbers = sum(bool(token.numbers) for token in tokens)
    if len(filters) != 1 or len(sizes) != _LEAST_ROW or numbers != _LEAST_ROW:
        return None
    if any(token.kind in _TOLD_LENS and token.text.casefold() != "a" for token in tokens):
        return None
    at = filters[0]
    of_filter = [one for one in sizes if one == at - 1] or [one for one in sizes if at < one <= at + _BESIDE]
    others = [one for one in sizes if one not in of_filter]
    if not of_filter or len(others) != 1 or "thread" in tokens[at].text:
        return None
    front = others[0]
    headed = tokens[front + 1 : front + 2] and tokens[front + 1].kind == "LENS"
    focal = tokens[front].numbers[0] in _FOCALS and tokens[front].numbers[0] < _NARROW
    named = any(token.kind == "LENS" for token in tokens)
    unit = headed and tokens[front].unit == "mm" and tokens[front].numbers[0] in _FOCALS
    return None if focal or unit or not named else (of_filter[0], front)


def _sized(token: Token) -> list[Token]:
    """'62mm filter' looks like the name of a thread: here the size and the filter are two."""
    size, _, rest = token.text.partition("mm")
    if token.kind != "MOUNT" or rest.strip() != "filter" or not size.strip().replace(".", "", 1).isdigit():
        return [token]
    number = Token("NUMBER", size.strip(), token.column, numbers=(float(size),))
    return [number, Token("PIECE", "filter", token.column + token.text.index("filter"), "filter")]


def _width(token: Token) -> Token:
    """'72mm threads' looks like a mount: at the end of a row of sizes it is one more of them."""
    size, _, rest = token.text.casefold().partition("mm")
    threaded = token.kind == "MOUNT" and SCREW in token.listed.of(rest.strip())
    if not threaded or not size.strip().replace(".", "", 1).isdigit():
        return token
    return Token("NUMBER", token.text, token.column, numbers=(float(size),))


def _is_size(token: Token) -> bool:
    bare = token.kind == "NUMBER" or token.is_mm
    return bare and bool(token.numbers) and token.numbers[0] in _SIZES


def _with_pair(tokens: list[Token], of_filter: int, front: int) -> list[Token]:
    out: list[Token] = []
    for at, token in enumerate(tokens):
        key = token.as_("KEYED", value=KEY, unit="mm") if at in (of_filter, front) else token
        out += [key, key.as_("KEYED", value=OF_FILTER)] if at == of_filter else [key]
    return out


def _may_be(tokens: list[Token], at: int) -> bool:
    """A bare number, or a length in mm, of nothing that follows it."""
    token = tokens[at]
    bare = token.kind == "NUMBER" or token.is_mm
    if not bare or token.text.isalpha() or not _LEAST <= token.numbers[0] <= _MOST:
        return False
    after = tokens[at + 1].kind if at + 1 < len(tokens) else "STOP"
    return after not in _OF_OTHERS or _ends_row(tokens, at)


def _ends_row(tokens: list[Token], at: int) -> bool:
    """'for 49, 52 and 58 lenses', '49 55 62 mm lenses': the last of a row of sizes, and the lenses that have them."""
    if at < _LEAST_ROW or at + 1 >= len(tokens) or not (tokens[at + 1].kind == "LENS" and is_plural(tokens[at + 1])):
        return False
    before = tokens[at - 1] if tokens[at - 1].numbers else tokens[at - 2]
    joined = before is tokens[at - 1] or tokens[at - 1].kind in ("JOIN", "CUE")
    return joined and all(one.numbers and one.numbers[0] in _SIZES for one in (before, tokens[at]))


def _is_put_on(tokens: list[Token], at: int) -> bool:
    """'two filters on a 24mm', 'on 28mm': what a filter is put on is a lens, where it can be one."""
    before = [(one.kind, one.value) for one in tokens[max(0, at - 2) : at]]
    put = before == [("PREP", "on"), ("DET", "A")] or (before[-1:] == [("PREP", "on")] and tokens[at].unit == "mm")
    return put and _may_be(tokens, at) and tokens[at].numbers[0] in _FOCALS | {35.0, 40.0, 50.0, 85.0, 105.0}


def _parted(token: Token) -> list[Token]:
    """'49/58' and '46 49' look like two numbers of one thing: each is one here."""
    texts = token.text.replace("/", " ").split()
    if token.kind not in ("COMBO", "FRACTION") or len(texts) != len(token.numbers):
        return [token]
    return [Token("NUMBER", text, token.column, numbers=(n,)) for text, n in zip(texts, token.numbers, strict=True)]
