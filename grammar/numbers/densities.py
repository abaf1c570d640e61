"""What a filter holds back, told as a number: 'says 1.8 on the rim', 'marked 8x', 'bellows factor came out 2.2'."""

from __future__ import annotations

from typing import Final

from grammar.numbers.filters_stacked import with_filters_stacked
from grammar.words.groups import GREY, OPENED, STOP_NAMED, STOPPED_SO
from grammar.words.tokens import Token

DENSITIES: Final = frozenset([0.3, 0.6, 0.9, 1.2, 1.5, 1.8, 2.1, 2.4, 2.7, 3.0])  # as filters are marked
_SPOKEN: Final = "densit"
_ENGRAVED: Final = "mark"  # value of 'engraved': '1.8 engraved'
_TELLING: Final = frozenset(["VERB", "CUE", "MEASURE"])  # 'says', 'reads', 'marked'
_LEAST_FACTOR: Final = 2.0  # that filters are marked with
_FACTOR_NAMED: Final = "bellows-factor"  # cue
_FACTOR: Final = "factor"
_REACH: Final = 5  # tokens
_A_STOP: Final = 0.3  # density
_ROWED: Final = frozenset(["STOPS", "NUMBER", "ND"])  # what may stand in a row of filters
_BETWEEN: Final = frozenset(["JOIN", "DET", "PREP"])
_STACKS: Final = frozenset(["route"])  # cue of 'stack'
_GOING_ON: Final = "after-exposure-nd"
_STOPS: Final = "stops"
_AND_A: Final = "with"  # value of 'and a'
_OF_OTHERS: Final = frozenset(["PIECE", "BODY", "FRAME", "MEASURE", "MOUNTWORD", "LENS", "KIND", "MOUNT", "TRAIT"])


def with_marked_densities(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """The tokens with each number as ND that a filter is said to be marked with, where light is spoken of."""
    stacked = _STACKS & told and _GOING_ON in told  # 'can i stack a 1.8 and a 1.2' after a filter that is wanted
    if ("add-up" in told or stacked) and not any(token.kind in _OF_OTHERS for token in tokens):
        summed = [token for token in tokens if _is_density(token)]
        if len(summed) > 1 and len(summed) == sum(token.kind == "NUMBER" for token in tokens):
            # 'stacked a 0.6 and a 1.2, total?': nothing else is told that numbers so marked may be of
            return [token.as_("ND", value=f"ND {token.text}") if token in summed else token for token in tokens]
    filtered = any(token.kind == "PIECE" and token.value == "filter" for token in tokens)
    spoken = any(token.text.casefold().startswith(_SPOKEN) for token in tokens)  # 'one has 1.8 on it, guessing density'
    engraved = "engraved" in told or any((one.kind, one.value) == ("MEASURE", _ENGRAVED) for one in tokens)
    if not ("nd" in told or spoken or (filtered and engraved)) or any(token.kind == "ND" for token in tokens):
        return tokens
    return [_marked(tokens, at) for at in range(len(tokens))]


def with_factors_marked(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """The tokens with each number as ND that is the factor of a filter or of an exposure, several alike as so many."""
    return with_filters_stacked([_by_factor(tokens, at, told) for at in range(len(tokens))])


def _by_factor(tokens: list[Token], at: int, told: frozenset[str]) -> Token:
    token = tokens[at]
    if token.kind == "TIMES" and token.numbers[0] >= _LEAST_FACTOR and _is_of_filter(tokens, at):
        return token.as_("ND", value=f"ND{token.numbers[0]:g}", unit="")
    bare = token.kind in ("NUMBER", "TIMES") and token.text[:1].isdigit() and token.numbers[0] > 1
    if not bare or _FACTOR_NAMED not in told:
        return token
    behind = [one for one in tokens[max(0, at - _REACH) : at] if one.kind not in ("FILLER", "DET", "MARK", "PREP")]
    while behind and behind[-1].kind in _TELLING and not _is_factor(behind[-1]):
        behind.pop()
    return token.as_("ND", value=f"ND{token.numbers[0]:g}", unit="") if behind and _is_factor(behind[-1]) else token


def _is_factor(token: Token) -> bool:
    return token.text.casefold().endswith(_FACTOR)


def _is_of_filter(tokens: list[Token], at: int) -> bool:
    """'an 8x filter', 'the filter says 400x': the filter right behind it, or before it with words that tell between."""
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    if after is not None and _is_filter(after):
        return True
    before = [one for one in tokens[max(0, at - _REACH) : at] if one.kind not in ("FILLER", "DET", "MARK")]
    while before and before[-1].kind in _TELLING:
        before.pop()
    return bool(before) and _is_filter(before[-1])


def _is_filter(token: Token) -> bool:
    return (token.kind, token.value) == ("PIECE", "filter") or _is_grey(token)


def with_density_rows(tokens: list[Token]) -> list[Token]:
    """'got 0.6, 0.9 and 1.8 filters, want 8 stops': a row of densities is no row of rings where stops are wanted."""
    tokens = _with_stops_of_filters(tokens)
    wanted = any(token.kind == "STOPS" for token in tokens)
    filtered = any((token.kind, token.value) == ("PIECE", "filter") or _is_grey(token) for token in tokens)
    row = [at for at, token in enumerate(tokens) if _is_density(token)]
    alone = len(row) == sum(token.kind in ("NUMBER", "LENGTH") for token in tokens)
    if alone and len(row) > 1 and _are_screwed_together(tokens):
        filtered = wanted = True
    if not ((wanted or _is_row_of_filters(tokens, row)) and filtered and alone and len(row) > 1):
        row = [at for at in row if _is_of_one_filter(tokens, at)]
    return [token.as_("ND", value=f"ND {token.text}") if at in row else token for at, token in enumerate(tokens)]


def _are_screwed_together(tokens: list[Token]) -> bool:
    """'0.9 plus 0.6 screwed together how many stops': nothing else is told, and stops are asked for."""
    stops = any(one.kind == "CUE" and one.text.casefold().endswith(_STOPS) for one in tokens)
    others = [one for one in tokens if one.kind in _OF_OTHERS and one.kind != "MOUNTWORD"]
    return stops and not others


def _is_of_one_filter(tokens: list[Token], at: int) -> bool:
    """'a 0.9 filter': right before it, and behind nothing that has a stop, as in '50 1.2 filter'."""
    before, after = tokens[at - 1] if at else None, tokens[at + 1] if at + 1 < len(tokens) else None
    of_lens = before is not None and before.kind in ("NUMBER", "LENGTH", "FOCAL", "LENS", "KIND", "MOUNT", "PREFIX")
    return after is not None and (after.kind, after.value) == ("PIECE", "filter") and not of_lens


def _is_row_of_filters(tokens: list[Token], row: list[int]) -> bool:
    """'a 1.2 and a 0.6 filter': one behind the other, with a filter right behind the last."""
    behind = tokens[row[-1] + 1 : row[-1] + 2] if row else []
    between = [one for at, one in enumerate(tokens[row[0] : row[-1]], row[0]) if at not in row] if row else []
    small = all(one.kind in _BETWEEN or one.kind == "FILLER" for one in between)
    return small and any((one.kind, one.value) == ("PIECE", "filter") or _is_grey(one) for one in behind)


def _with_stops_of_filters(tokens: list[Token]) -> list[Token]:
    """'a 6 stop and a 3 stop ND', '2, 4 and 6 stop filters', 'an ND8 and a 3 stop': each is a filter that is there."""
    for at, token in enumerate(tokens):
        row = _row_of_filters(tokens, at) if token.kind == "STOPS" else []
        filtered = at + 1 < len(tokens) and _is_filter(tokens[at + 1])
        if len(row) > 1 and (filtered or any(tokens[one].kind == "ND" for one in row)):
            return [_as_density(one) if n in row and one.kind != "ND" else one for n, one in enumerate(tokens)]
    return tokens


def _row_of_filters(tokens: list[Token], last: int) -> list[int]:
    """The places of the numbers in the row that ends here; 'ND 1.5, 5 stops?' sets two against each other."""
    row, back = [last], last - 1
    while back >= 0:
        between = [back]
        while tokens[between[-1]].kind in _BETWEEN and between[-1]:
            between.append(between[-1] - 1)
        at = between.pop()
        joined = any(tokens[one].kind == "JOIN" or tokens[one].value == _AND_A for one in between)
        comma = all(tokens[one].text == "," for one in between)
        if not joined or tokens[at].kind not in _ROWED or (tokens[at].kind == "ND" and comma):
            break
        row.append(at)
        back = at - 1
    return row


def _as_density(token: Token) -> Token:
    """A stop of light is a density of 0.3, as filters are marked."""
    return token.as_("ND", value=f"ND {token.numbers[0] * _A_STOP:.1f}", unit="")


def _is_grey(token: Token) -> bool:
    return GREY in token.groups


def _is_density(token: Token) -> bool:
    return token.kind == "NUMBER" and "." in token.text and token.numbers[0] in DENSITIES


def _marked(tokens: list[Token], at: int) -> Token:
    token = tokens[at]
    before, after = tokens[at - 1] if at else None, tokens[at + 1] if at + 1 < len(tokens) else None
    of_lens = at > 1 and before is not None and before.kind == "CUE" and tokens[at - 2].kind == "LENS"
    if not _is_density(token) or before is None or {STOP_NAMED, OPENED} & set(before.groups) or of_lens:
        return token  # 'lens is 1.8'
    other = after is not None and (after.kind in _OF_OTHERS or STOPPED_SO in after.groups)
    if before.kind not in _TELLING or (other and after is not None and after.value != _ENGRAVED):
        return token
    return token.as_("ND", value=f"ND {token.text}")
