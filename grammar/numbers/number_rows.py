"""Rows of bare numbers that are lengths of pieces: '10 + 16 + 21 tubes', 'rings 1.0 + 9.8', 'tube set 7 14 28'."""

from __future__ import annotations

from typing import Final

from grammar.words.token_kinds import CHOICES, LENGTHS
from grammar.words.tokens import Token, is_plural

_TUBES: Final = "extension-tube"
_LONGEST_TUBE: Final = 100.0  # mm
_LEAST_SET: Final = 2  # numbers
_MOST_ALIKE: Final = 6  # tubes of one length
_HELICOID, _TRAVEL = "helicoid", "travel"
_LEAST_LENS: Final = 8.0  # mm
_SIZED: Final = frozenset(["LENGTH", "FOCAL", "COMBO", "RANGE", "NUMBER"])
_TURNING: Final = frozenset(["reverse-ring"])
_IN_METRES: Final = frozenset(["close-focus", "mark", "distance"])  # what a bare number behind is metres of


def with_ones_counted(tokens: list[Token]) -> list[Token]:
    """'two tubes of 12 and one of 25': three tubes, of 12, 12 and 25 mm."""
    for at in range(1, len(tokens) - 6):
        count, piece, of, size, join, one, again = tokens[at - 1 : at + 6]
        last = tokens[at + 6]
        shape = piece.value == _TUBES and of.value == again.value == "of" and one.text.casefold() == "one"
        sized = is_number(size) or size.kind == "LENGTH"
        if not (shape and sized and (is_number(last) or last.kind == "LENGTH") and join.kind in ("JOIN", "CUE")):
            continue
        times = (
            int(count.numbers[0]) if count.kind in ("NUMBER", "COUNT") and 1 <= count.numbers[0] <= _MOST_ALIKE else 1
        )
        lengths = [*[size] * times, last]
        row: list[Token] = []
        for n, length in enumerate(lengths):
            row += [Token("JOIN", ",", length.column, ",")] if n else []
            row.append(length.as_("LENGTH", unit="mm", column=size.column + n))
        return [*tokens[: at - (times > 1)], *row, piece, *tokens[at + 7 :]]
    return tokens


def with_sum_of_tube(tokens: list[Token]) -> list[Token]:
    """'ten plus sixteen of tube', '12 or 25 mm of tubes': lengths added up or to choose from are those of tubes."""
    out = _with_tubes_of_mount(tokens)
    for at in range(3, len(out)):
        of_tube = out[at].kind == "MEASURE" and out[at].text.casefold().startswith("of tub")
        if not of_tube:
            continue
        if is_number(out[at - 1]) and out[at - 2].kind == "JOIN" and is_number(out[at - 3]):
            out[at] = out[at].as_("PIECE", value=_TUBES, text="tubes", implies=())
            all_lengths(out, at - 1)
        else:
            _choose_tubes(out, at)
    return out


def _choose_tubes(tokens: list[Token], at: int) -> None:
    """'a 60 and 20 or 40 mm of tube', 'a 50 with 12 vs 25 mm of tubes': each a tube, behind the lens."""
    first = at - 1
    while first > 1 and tokens[first - 1].value in CHOICES and _is_metric(tokens[first - 2]):
        first -= 2
    if first == at - 1 or not _is_metric(tokens[first]):
        return
    tokens[at] = tokens[at].as_("PIECE", value=_TUBES, text="tubes", implies=())
    for place in range(first, at, 2):
        tokens[place] = tokens[place].as_("LENGTH", unit="mm")
        if place + 1 < at:
            tokens[place + 1] = tokens[place + 1].as_("JOIN", text=",", value=",")
    if first > 1 and tokens[first - 1].kind == "JOIN" and _is_metric(tokens[first - 2]):
        tokens[first - 2] = tokens[first - 2].as_("FOCAL", unit="mm")
        tokens[first - 1] = tokens[first - 1].as_("PREP", value="with")


def _with_tubes_of_mount(tokens: list[Token]) -> list[Token]:
    """'40 mm of C tubes': so much of tubes of a mount is their length."""
    out: list[Token] = []
    for at, token in enumerate(tokens):
        ahead = tokens[at + 1 : at + 3]
        tubes = [one.kind for one in ahead] == ["MOUNT", "PIECE"] and ahead[1].value == _TUBES
        if not (tubes and token.value == "of" and out and out[-1].is_mm):
            out.append(token)
    return out


def with_lens_of_ring(tokens: list[Token]) -> list[Token]:
    """'reverse ring + 24mm', 'a 28mm and 10mm ring': one length is that of the lens, where no lens is told else."""
    tokens = _with_lens_headed(tokens)
    lengths = [at for at, one in enumerate(tokens) if one.kind in _SIZED and not one.text.isalpha()]
    if any(_tells_lens(tokens, at) for at in range(len(tokens))) and not _turns(tokens):
        return tokens
    pair = next((at for at, one in enumerate(tokens[:-1]) if _is_lens_and_tube(one, tokens[at + 1])), None)
    if pair is not None and len(lengths) <= 1:
        both = tokens[pair]
        lens, tube = (float(one) for one in both.text.split("/"))
        told = [both.as_("FOCAL", numbers=(lens,), unit="mm", ids=()), Token("JOIN", ",", both.column, ",")]
        told.append(both.as_("LENGTH", numbers=(tube,), unit="mm", ids=(), column=both.column + 1))
        return [*tokens[:pair], *told, *tokens[pair + 1 :]]
    for at in range(len(tokens) - 2):
        first, join, other = tokens[at : at + 3]
        if first.value in _TURNING and join.kind == "JOIN" and other.kind == "LENGTH" and len(lengths) == 1:
            tokens[at + 2] = other.as_("FOCAL", unit="mm")
        after = tokens[at + 3] if at + 3 < len(tokens) else None
        single = after is not None and after.kind == "PIECE" and not is_plural(after)
        beside = at in lengths and at + 2 in lengths and join.kind == "JOIN" and join.value == "and" and single
        metric = {first.unit, other.unit} <= {"", "mm"} and first.kind in LENGTHS and other.kind in LENGTHS
        if beside and metric and len(lengths) == _LEAST_SET and not _turns(tokens):
            tokens[at] = first.as_("FOCAL", unit="mm")
    return tokens


def _tells_lens(tokens: list[Token], at: int) -> bool:
    """Whether a lens may be told beside its focal length; a mount that it is 'on' is that of a body."""
    on = at > 0 and (tokens[at - 1].kind, tokens[at - 1].value) == ("PREP", "on")
    return tokens[at].kind in ("LENS", "KIND", "FNUM") or (tokens[at].kind == "MOUNT" and not on)


def _with_lens_headed(tokens: list[Token]) -> list[Token]:
    """'c lens 16mm plus 1mm ring', '50mm m42 helicoid 10mm travel': the first length is that of the lens."""
    kinds = [one.kind for one in tokens]
    for at in range(len(tokens) - 4):
        behind_lens = kinds[at : at + 5] == ["LENS", "LENGTH", "JOIN", "LENGTH", "PIECE"] and tokens[at + 2].text != ","
        if behind_lens:
            return [*tokens[: at + 1], tokens[at + 1].as_("FOCAL"), *tokens[at + 2 :]]
        stretched = kinds[at : at + 5] == ["LENGTH", "MOUNT", "PIECE", "LENGTH", "MEASURE"]
        if stretched and tokens[at + 2].value == _HELICOID and tokens[at + 4].value == _TRAVEL:
            placed = Token("PREP", "", tokens[at + 2].column, value="with")
            return [*tokens[:at], tokens[at].as_("FOCAL"), tokens[at + 1], placed, *tokens[at + 2 :]]
    return tokens


def _is_lens_and_tube(token: Token, after: Token) -> bool:
    """'50/20 tube': a lens and the one tube behind it."""
    parts = token.text.split("/")
    plain = token.kind in ("COMBO", "FRACTION") and len(parts) == _LEAST_SET and all(one.isdecimal() for one in parts)
    single = after.kind == "PIECE" and after.value == _TUBES and not is_plural(after)
    return plain and single and all(float(one) >= _LEAST_LENS for one in parts)


def _turns(tokens: list[Token]) -> bool:
    return any(one.value in _TURNING for one in tokens)


def all_lengths(tokens: list[Token], at: int) -> None:
    """'10 + 16 + 21 tubes': what the last of a row of bare numbers is of, all of them are."""
    first = at
    while first > 1 and tokens[first - 1].kind == "JOIN" and is_number(tokens[first - 2]):
        first -= 2
    if first == at:
        return
    for place in range(first, at + 1, 2):
        tokens[place] = tokens[place].as_("LENGTH", unit="mm")


def row_behind(tokens: list[Token], at: int) -> None:
    """'rings 1.0 + 9.8': a row of bare numbers right behind a piece, added up or told to the tenth."""
    row = [at]
    while at + 2 < len(tokens) and tokens[at + 1].kind == "JOIN" and is_number(tokens[at + 2]):
        at += 2
        row.append(at)
    added = len(row) > 1 and all(tokens[one - 1].text in ("+", "and", "&") for one in row[1:])
    if added and any("." in tokens[one].text for one in row):
        for one in row:
            tokens[one] = tokens[one].as_("LENGTH", unit="mm")


def set_behind(tokens: list[Token], at: int) -> None:
    """'tube set 7 14 28': two or more bare numbers right behind tubes are their lengths."""
    end = at + 1
    while end < len(tokens) and is_number(tokens[end]) and tokens[end].numbers[0] <= _LONGEST_TUBE:
        end += 1
    if tokens[at].value == _TUBES and end - at > _LEAST_SET:
        for place in range(at + 1, end):
            tokens[place] = tokens[place].as_("LENGTH", unit="mm")


def is_number(token: Token) -> bool:
    return token.kind == "NUMBER" and not token.text[:1].isalpha()


def _is_metric(token: Token) -> bool:
    return is_number(token) or token.is_mm


def is_of_scale(tokens: list[Token], at: int) -> bool:
    """'close focus .9, 6 mm helicoid': the number behind a word for how far is of no row of lengths."""
    return at > 0 and tokens[at - 1].kind == "MEASURE" and tokens[at - 1].value in _IN_METRES
