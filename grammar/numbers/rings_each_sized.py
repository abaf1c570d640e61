"""The length of one ring of several, told by a bare number: 'an M-E ring that i measure at 9.72', 'a 1.1 LTM ring'."""

from __future__ import annotations

from typing import Final

from grammar.questions import RING
from grammar.things.casting import MADE_REDUCING
from grammar.words.groups import RIM_OF_BUSH
from grammar.words.token_kinds import LENGTHS
from grammar.words.tokens import Token, is_plural

_SIZE: Final = "size"  # value of 'measures', 'calipers', 'reads'
_BORNE: Final = frozenset(["mark", "bears", "nominal", "does"])  # of 'marked 26', 'sold as 26': not what it measures
_LED: Final = frozenset(["DET", "CUE", "VERB", "FILLER", "PREP", "MARK"])  # between a ring and what it measures
_WORDS: Final = 5  # tokens at most between them
_THICKEST: Final = 120.0  # mm
_LEAST: Final = 2  # rings told: of one alone other readings tell
_ENDS: Final = frozenset(["STOP", "JOIN", "PREP", "CUE", "FILLER", "VERB", "MARK"])  # behind such a length
_BEFORE: Final = frozenset(["DET", "PREP", "JOIN"])  # before the length of a ring that its mounts follow
_VIA: Final = "via"  # value of 'through'
_BUSH: Final = "thread-reducer"
_LIP: Final = "lip"  # value of the words for one
_LINKS: Final = frozenset(["-", "to", ">", "->", "/"])


def with_rings_sized(tokens: list[Token], hosts: frozenset[str] = frozenset()) -> list[Token]:
    """The tokens with each such length right before its ring, where several rings are told.

    `hosts`: mounts that, named alone, are those of a body.
    """
    out = list(tokens)
    if _rings(out) < _LEAST:
        return out
    at = 0
    while at < len(out):
        if out[at].kind == "PIECE" and out[at].value == _BUSH:
            at += _lipped(out, at, hosts)
        elif (out[at].kind, out[at].value) == ("PIECE", RING) and not is_plural(out[at]):
            at += _sized_ahead(out, at)
            at += _measured_behind(out, at) or _lipped(out, at, hosts)
        elif _is_pair(out, at) and not _is_headed(out, at) and at and _is_fine(out[at - 1]) and _is_led(out, at - 1):
            out[at - 1] = out[at - 1].as_("LENGTH", unit="mm")  # 'with the 2.0 om-ef'
            out.insert(at + 3, Token("PIECE", "ring", out[at + 2].column, RING))
            at += 3
        elif _is_pair(out, at) and not _is_headed(out, at) and (size := _measure(out, at + 2)) is not None:
            told = out.pop(size).as_("LENGTH", unit="mm", column=out[at].column)  # 'om-ef says 2 measures 2.05'
            out[at + 3 : size] = [Token("PIECE", "ring", out[at + 2].column, RING)]
            out.insert(at, told)
            at += 4
        elif _is_pair(out, at) and not _is_headed(out, at) and _goes_on(out, at):
            out.insert(at + 3, Token("PIECE", "ring", out[at + 2].column, RING))  # 'via P6-EF 30.1 and EF-Z 28'
            at += 3
        at += 1
    return out


def _goes_on(tokens: list[Token], at: int) -> bool:
    """Whether a pair follows a ring whose last mount it takes, and the two lead by way of that."""
    led = tokens[max(0, at - 3) : at]
    if led[-1:] and led[-1].text == "," and _ends_on(tokens[:at], tokens[at].ids) and _is_numbered(tokens, at + 3):
        return True  # 'T2 to EF ring is 11.2, EF to L 24, 400 mm lens'
    if [one.kind for one in led] != ["MOUNT", "PIECE", "JOIN"] or led[1].value != RING:
        return False
    first = next((n for n in range(at - 3, -1, -1) if tokens[n].kind == "PREP" and tokens[n].value != "to"), None)
    if first is None or led[0].ids[:1] != tokens[at].ids[:1] or tokens[first].value != _VIA:
        return False
    tokens[first] = tokens[first].as_("PREP", value="with")
    return True


def _ends_on(tokens: list[Token], ids: tuple[str, ...]) -> bool:
    """Whether the last ring told there by its two mounts ends on one of these."""
    rings = [at for at, one in enumerate(tokens) if (one.kind, one.value) == ("PIECE", RING)]
    return (
        bool(rings) and rings[-1] > 2 and _is_pair(tokens, rings[-1] - 3) and tokens[rings[-1] - 1].ids[:1] == ids[:1]
    )


def _is_numbered(tokens: list[Token], at: int) -> bool:
    after = tokens[at + 1].kind if at + 1 < len(tokens) else "STOP"
    return at < len(tokens) and tokens[at].kind == "NUMBER" and after in ("STOP", "JOIN")


def _rings(tokens: list[Token]) -> int:
    """How many rings are told, by their word or by their two mounts alone."""
    bare = (at for at in range(len(tokens)) if _is_pair(tokens, at) and not _is_headed(tokens, at))
    return sum(one.kind in ("PIECE", "ADAPTER") or one.unit == RING for one in tokens) + len(list(bare))


def _is_pair(tokens: list[Token], at: int) -> bool:
    row = tokens[at : at + 3]
    return [one.kind for one in row[::2]] == ["MOUNT", "MOUNT"] and row[1].text.casefold() in _LINKS


def _is_headed(tokens: list[Token], at: int) -> bool:
    """Whether the pair here describes a piece, lens or body that stands behind it."""
    behind = [one for one in tokens[at + 3 : at + 6] if one.kind not in ("LENGTH", "NUMBER", "MARK")]
    return bool(behind) and behind[0].kind in ("PIECE", "LENS", "BODY", "ADAPTER")


def _is_fine(token: Token) -> bool:
    """A length told to the tenth, as it is of a ring."""
    metric = token.kind in LENGTHS and token.unit in ("", "mm") and len(token.numbers) == 1
    return metric and "." in token.text and 0 < token.numbers[0] <= _THICKEST and token.numbers[0] not in MADE_REDUCING


def _is_led(tokens: list[Token], at: int) -> bool:
    return at > 0 and tokens[at - 1].kind in _BEFORE


def _sized_ahead(tokens: list[Token], piece: int) -> int:
    """'a 1.1 LTM ring': told right before the one mount of a ring; gives how many tokens were put in."""
    at = piece - 2
    mount = piece > 2 and tokens[piece - 1].kind == "MOUNT"
    if mount and _is_fine(tokens[at]) and tokens[at].kind == "NUMBER" and _is_led(tokens, at):
        tokens[at] = tokens[at].as_("LENGTH", unit="mm")
    return 0


def _measured_behind(tokens: list[Token], piece: int) -> int:
    """'the M-E ring, which i measure at 9.72': in place of what it was sold as; gives how many tokens were put in."""
    size = _measure(tokens, piece)
    if size is None:
        return 0
    first = piece
    while first and (tokens[first - 1].kind == "MOUNT" or tokens[first - 1].text.casefold() in _LINKS):
        first -= 1
    told = tokens.pop(size).as_("LENGTH", unit="mm", column=max(1, tokens[first].column - (first == piece)))
    for at in range(size - 1, piece, -1):
        if tokens[at].kind == "MEASURE" or tokens[at].kind in LENGTHS or tokens[at].value == "at":
            tokens[at] = tokens[at].as_("CUE", ids=())
    for at in (first - 1, piece - 1):
        if at >= 0 and tokens[at].kind in LENGTHS and tokens[at].unit in ("", "mm"):
            tokens[at] = told.as_("LENGTH", column=tokens[at].column)
            return 0
    tokens.insert(first, told)
    return 1


def _lipped(tokens: list[Token], piece: int, hosts: frozenset[str]) -> int:
    """'a 39-42 ring with a 1 mm lip': it seats the lens so far out; on a ring for a body the lip is a part of it."""
    row = [n for n in range(piece + 1, min(piece + 1 + _WORDS, len(tokens))) if tokens[n].kind != "DET"][:3]
    named = piece and tokens[piece - 1].kind in ("MOUNT", "RANGE") and not hosts & set(tokens[piece - 1].ids[:1])
    said = len(row) == 3 and (tokens[row[2]].value == _LIP or RIM_OF_BUSH in tokens[row[2]].groups)
    lip = said and tokens[row[0]].value in ("with", "(")
    size = tokens[row[1]] if named and lip else None
    if size is None or size.kind not in LENGTHS or size.unit not in ("", "mm") or len(size.numbers) != 1:
        return 0
    first = piece
    while first and (tokens[first - 1].kind in ("MOUNT", "RANGE") or tokens[first - 1].text.casefold() in _LINKS):
        first -= 1
    if first and tokens[first - 1].kind in LENGTHS:
        return 0
    del tokens[row[0] : row[2] + 1]
    tokens.insert(first, size.as_("LENGTH", unit="mm", column=tokens[first].column))
    return 1


def _measure(tokens: list[Token], piece: int) -> int | None:
    """Where the length stands that a ring is said to measure, behind it in the same clause."""
    measured = False
    for at in range(piece + 1, min(piece + 1 + _WORDS, len(tokens))):
        token = tokens[at]
        after = tokens[at + 1] if at + 1 < len(tokens) else None
        borne = tokens[at - 1].value in _BORNE
        if _is_fine(token) and measured and not borne:
            return at if after is None or after.kind in _ENDS else None
        if token.kind == "MEASURE" and token.value in (_SIZE, *_BORNE):
            measured = measured or token.value == _SIZE
        elif not (token.kind in _LED or token.text == "," or (borne and token.kind in LENGTHS)):
            return None
    return None
