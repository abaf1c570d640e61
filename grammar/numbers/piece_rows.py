"""Bare numbers in a row beside a piece that spaces: 'a 1 and a 5 spacer', 'tubes 12 20 36', 'bellows 45 to 170'."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from grammar.numbers.added_up import LENSLIKE, OF_LENS, as_row, with_rings_added, with_sums_told
from grammar.numbers.draws import draw_at, is_bare, tell_draw_before
from grammar.numbers.further_tubes import with_further_tubes
from grammar.numbers.number_rows import is_of_scale
from grammar.numbers.parted_rows import with_parted
from grammar.numbers.rings_close_up import tell_lens_of_ring, tell_rings_as_tubes, tell_sets_of_rings
from grammar.numbers.rows_of_tubes import with_unsaid_tubes
from grammar.numbers.run_together import with_joins_between
from grammar.numbers.washers import tell_washers
from grammar.things.casting import DRAWN, SPACER
from grammar.things.lens_rows import begins_another
from grammar.things.phrases import TOLD
from grammar.words.groups import OWN
from grammar.words.tokens import Token, is_plural

_MOST_ALIKE: Final = 6  # so many tubes of one length are told by their number
_BETWEEN: Final = frozenset(["JOIN", "DET", "MARK"])
_LEADING: Final = frozenset(["CUE", "VERB", "PREP", "DET", "MARK"])  # 'a bellows that goes from 45 to 170'
_CLOSE: Final = frozenset(["how-close", "how-big", "macro", "working-distance"])
_SUMMED: Final = "add-up"  # '12 and 20 together behind the 85'
_STACKED: Final = "route"
_COMPARED: Final = frozenset(["compare-word", "versus"])
_BRACKET: Final = 4  # tokens from a piece to the bracket that tells of it
_LEAST_ADDED: Final = 2
_PUT_ON: Final = frozenset(["on", "behind", "under", "with"])  # between a piece and its lens
_MOST_LEADING: Final = 3  # words between a piece and its lengths


def with_piece_rows(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """Numbers of a row become LENGTH with a join between, those of a draw one RANGE, those of alike pieces COUNT."""
    out = with_further_tubes(with_joins_between(with_parted(_without_traits(tokens))))
    out = with_sums_told(out, told)
    # '12 and 24 behind a 100 that gets 0.1x', '12 20 36, all on a 50'
    sized = any(one.kind == "RATIO" or (one.kind == "DET" and one.text.casefold() == "all") for one in out)
    if (sized or told & {*_CLOSE, _SUMMED, _STACKED}) and not told & _COMPARED:
        out = with_unsaid_tubes(out)
    tell_washers(out, told)
    tell_lens_of_ring(out)
    tell_sets_of_rings(out)
    if told & _CLOSE:
        tell_rings_as_tubes(out)
    at = 0
    while at < len(out):
        if out[at].kind == "PIECE" and out[at].value in DRAWN:
            at -= tell_draw_before(out, at)
            at += _told_twice(out, at)
            at += _lens_beside(out, at)
            at += _told_ahead(out, at, out[at])
            _told_behind(out, at)
        elif out[at].kind == "PIECE" and out[at].value == "adapter" and is_plural(out[at]):
            with_rings_added(out, _without_of(out, at))  # '68 mm of rings', 'rings 1+1'
        elif out[at].kind == "TRAIT" and out[at].value == "reversed" and at + 1 < len(out) and is_bare(out[at + 1]):
            after = out[at + 2] if at + 2 < len(out) else None
            if after is None or after.kind not in LENSLIKE:
                out[at + 1] = out[at + 1].as_("FOCAL", unit="mm")  # 'a backwards 28 on the front'
        at += 1
    return out


def _without_traits(tokens: list[Token]) -> list[Token]:
    """'31 + 13 electronic tubes': what tubes are like besides does not part them from how long they are."""
    return [
        token for at, token in enumerate(tokens)
        if not (token.kind == "TRAIT" and at and tokens[at - 1].numbers
                and tokens[at + 1 : at + 2] and tokens[at + 1].value == SPACER)
    ]  # fmt: skip


def with_bracketed_told(tokens: list[Token]) -> list[Token]:
    """'a lipped ring (1) + helicoid': the number in brackets behind a piece is its length."""
    out = list(tokens)
    for at in range(len(out) - 3):
        piece, opened, number, closed = out[at : at + 4]
        if piece.kind == "PIECE" and opened.text == "(" and is_bare(number) and closed.text == ")":
            out[at + 2] = number.as_("LENGTH", unit="mm")
    return _with_bracketed_row(out)


def _with_bracketed_row(tokens: list[Token]) -> list[Token]:
    """'three tubes stacked (12, 20, 36)': the lengths in brackets stand right behind the tubes."""
    for at, token in enumerate(tokens):
        opened = next((n for n in range(at + 1, min(len(tokens), at + _BRACKET)) if tokens[n].text == "("), None)
        if token.kind != "PIECE" or token.value != SPACER or opened is None:
            continue
        closed = next((n for n in range(opened + 1, len(tokens)) if tokens[n].text == ")"), None)
        row = tokens[opened + 1 : closed] if closed is not None else []
        numbers, joins = row[::2], row[1::2]
        if closed is None or len(numbers) < _LEAST_ADDED or not all(map(is_bare, numbers)):
            continue
        if any(one.kind != "JOIN" for one in joins) or any(one.kind in OF_LENS for one in tokens[at + 1 : opened]):
            continue
        told = [one.as_("LENGTH", unit="mm") if is_bare(one) else one for one in row]
        return [*tokens[: at + 1], *told, *tokens[at + 1 : opened], *tokens[closed + 1 :]]
    return tokens


def _told_ahead(out: list[Token], piece: int, what: Token) -> int:
    """What stands before a piece, told in place; gives how many tokens were put in."""
    piece = _without_of(out, piece)
    while piece and out[piece - 1].kind in ("MOUNT", "LETTER"):
        piece -= 1  # '10, 16 and 21 c-mount spacers'
    sized = out[piece - 1].is_mm if piece else False
    row = _row_before(out, piece - 1 if sized else piece)
    row = [*row, piece - 1] if sized else row
    put = 0
    if len(row) > 1 and not _is_count(out, row[-2], row[-1], what) and not _is_lens_before(out, row):
        put = as_row(out, row)
    elif row and (len(row) == 1 or _is_count(out, row[-2], row[-1], what)):
        _count(out, row[-1], what)
    return put


def _told_twice(out: list[Token], piece: int) -> int:
    """'2x 25 mm tubes' is no area; gives how many tokens were put in."""
    area = out[piece - 1] if piece else None
    if area is None or area.kind != "AREA" or not is_plural(out[piece]):
        return 0
    number, size = area.numbers[0], area.numbers[1]
    if number != int(number) or not 2 <= number <= _MOST_ALIKE < size:
        return 0
    out[piece - 1 : piece] = [
        area.as_("COUNT", numbers=(number,)), area.as_("LENGTH", numbers=(size,), unit="mm", column=area.column + 1)
    ]  # fmt: skip
    return 1


def _lens_beside(out: list[Token], piece: int) -> int:
    """'50mm 10mm tube, mag?': the first of two lengths is that of the lens; gives how many tokens were put in."""
    before = out[max(0, piece - 2) : piece]
    metric = len(before) == 2 and all(one.is_mm for one in before)
    if not metric or is_plural(out[piece]) or any(one.kind in ("FOCAL", "COMBO") for one in out):
        return 0
    out[piece - 2] = before[0].as_("FOCAL")
    out.insert(piece - 1, Token("JOIN", ",", before[1].column, ","))
    return 1


def _without_of(out: list[Token], piece: int) -> int:
    """'5 mm of spacer', '2 mm of thin rings': a spacer of 5 mm; gives where what describes the piece ends."""
    if piece > 2 and out[piece - 1].kind == "MEASURE" and out[piece - 2].value == "of":
        out[piece - 1] = out[piece - 1].as_("DET")
        return _without_of(out, piece - 1)
    if piece > 1 and out[piece - 1].value == "of" and out[piece - 2].kind in ("LENGTH", "NUMBER"):
        out[piece - 1] = out[piece - 1].as_("DET")
        out[piece - 2] = out[piece - 2].as_("LENGTH", unit=out[piece - 2].unit or "mm")
        return piece - 1
    return piece


def _row_before(out: list[Token], end: int) -> list[int]:
    """The bare numbers right before a place, with nothing but joins between."""
    first = end
    while first and (is_bare(out[first - 1]) or out[first - 1].kind in _BETWEEN or begins_another(out[first - 1])):
        first -= 1
    measured = [at for at in range(max(first, 1), end) if (out[at - 1].kind, out[at - 1].value) == ("MEASURE", "size")]
    first = max(first, measured[-1] + 1) if measured else first  # 'ring measured 3.05 and a 0.1 shim'
    return [at for at in range(first, end) if is_bare(out[at]) and not is_of_scale(out, at)]


def _count(out: list[Token], length: int, piece: Token) -> None:
    """'two 25 mm tubes', '2x 25 tubes': so many of one length."""
    at = length - 1
    while at >= 0 and out[at].kind == "MARK":
        at -= 1
    if at >= 0 and _is_count(out, at, length, piece):
        out[at] = out[at].as_("COUNT")
        out[length] = out[length].as_("LENGTH", unit="mm")


def _told_behind(out: list[Token], piece: int) -> None:
    """What stands behind a piece: the ends of its draw, or the lengths of several."""
    at = piece + 1
    while at < len(out) and at <= piece + _MOST_LEADING and out[at].kind in _LEADING and not begins_another(out[at]):
        at += 1
    if at > piece + 1 and _is_range(out, at):
        out.insert(piece + 1, out.pop(at))  # 'a bellows that goes from 40 mm to 140 mm'
        return
    ends = draw_at(out, at)
    if ends is not None:
        low, high = (out[one].numbers[0] for one in ends)
        whole = out[ends[0]].as_("RANGE", numbers=(low, high), unit="mm")
        del out[piece + 1 : ends[1] + 1]
        out.insert(piece + 1, whole)
        return
    lengths: list[int] = []
    at = piece + 1
    of = at + 1 < len(out) and out[at].value == "of" and is_bare(out[at + 1])
    if of or _opens_row(out, piece) or _is_toldas_row(out, at):
        del out[at]  # 'tubes of 10 and 26' are tubes 10 and 26, and so are 'both tubes, 10 and 26'
    while at < len(out) and (is_bare(out[at]) or (lengths and _lies_between(out[at])) or out[at].kind == "MARK"):
        if is_bare(out[at]):
            lengths.append(at)
        at += 1
    after = out[at] if at < len(out) else None
    if lengths and after is not None and after.kind in LENSLIKE and out[at - 1].kind == "NUMBER":
        lengths.pop()  # the last is that of a lens: 'tubes 12 20 50 f2'
    if lengths and _ends_row(out, at, piece):
        lengths.append(at)
    if len(lengths) == 1 and not of and _stands_before_lens(out, lengths[0]):
        out[lengths[0]] = out[lengths[0]].as_("LENGTH", unit="mm")  # 'tube 36 on 200mm'
    if len(lengths) > 1:
        as_row(out, lengths)
    elif lengths and of and not is_plural(out[piece]):
        out.insert(piece, out.pop(lengths[0]).as_("LENGTH", unit="mm"))  # 'a tube of 10' is a 10 mm tube


def _ends_row(out: list[Token], at: int, piece: int) -> bool:
    """'a tube of 10, 16, or 26 mm': the last of the row alone has its unit, and the lens is told elsewhere."""
    if at + 1 < len(out) and out[at + 1].kind in LENSLIKE:
        return False
    told = any(one.is_mm or one.kind in ("FOCAL", "COMBO", "NAMED", "FNUM") for one in (*out[:piece], *out[at + 1 :]))
    told = told or any(
        one.kind == "MOUNT" and is_bare(other) for one, other in pairwise(out[:piece])
    )  # 'EF 50 with ...'
    return at < len(out) and out[at].is_mm and out[at - 1].kind == "JOIN" and told


def _stands_before_lens(out: list[Token], at: int) -> bool:
    """Whether what the piece is put on follows its number, told by a length of its own: '36 on 200 mm'."""
    row = [one for one in out[at + 1 : at + 4] if one.kind != "DET"]
    put = len(row) > 1 and row[0].kind == "PREP" and row[0].value in _PUT_ON
    return put and row[1].kind in ("LENGTH", "NUMBER", "FOCAL", "COMBO") and row[1].unit in ("", "mm")


def _lies_between(token: Token) -> bool:
    return token.kind in _BETWEEN and OWN not in token.groups  # 'which tube (7 14 28) puts my 85 ...'


def _opens_row(out: list[Token], piece: int) -> bool:
    """Whether a row of numbers to the end of what is said follows a comma behind several pieces."""
    several = is_plural(out[piece]) and piece + 3 < len(out) and out[piece + 1].text in (",", ":")
    if not several or not (is_bare(out[piece + 2]) and out[piece + 3].kind == "JOIN"):
        return False
    row = piece + 2
    while row < len(out) and (is_bare(out[row]) or out[row].kind == "JOIN"):
        row += 1
    return row >= len(out) or out[row].kind in ("STOP", "CUE")


def _is_toldas_row(out: list[Token], at: int) -> bool:
    """'my tube set is 9 16 30': behind a word that tells, several lengths follow each other."""
    row = [one for one in out[at + 1 : at + 4] if one.kind != "JOIN"][:2]
    return at < len(out) and out[at].value == TOLD and len(row) > 1 and all(map(is_bare, row))


def _is_range(out: list[Token], at: int) -> bool:
    """A range here that no piece or lens of its own follows."""
    after = out[at + 1] if at + 1 < len(out) else None
    own = after is not None and after.kind in (*LENSLIKE, "PIECE")
    return at < len(out) and out[at].kind == "RANGE" and out[at].unit in ("", "mm") and not own


def _is_count(out: list[Token], at: int, length: int, piece: Token) -> bool:
    """'2 25 tubes', '2 x 25 mm tubes': a small number before the length of several pieces."""
    token, size = out[at], out[length].numbers[0]
    if token.kind not in ("NUMBER", "TIMES") or not is_plural(piece):
        return False
    number = token.numbers[0]
    between = out[at + 1 : length]
    return number == int(number) and 2 <= number <= _MOST_ALIKE < size and all(one.kind == "MARK" for one in between)


def _is_lens_before(out: list[Token], lengths: list[int]) -> bool:
    """'50 + 12 tube': where nothing else can be the lens, the first of two that are added is."""
    others = any(one.kind in ("LENGTH", "FOCAL", "COMBO") and at not in lengths for at, one in enumerate(out))
    return not others and len(lengths) == 2 and out[lengths[0]].numbers[0] >= 16
