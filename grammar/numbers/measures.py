"""Which length a measuring word belongs to: '10 m' of 'the 10 m mark' is a mark, '26 mm thick' a thickness."""

from __future__ import annotations

from typing import Final

from grammar.numbers.closer_rings import with_closer_rings
from grammar.numbers.crests import counted, is_screw
from grammar.numbers.near_marks import is_own_size
from grammar.numbers.senses import is_put_in, is_thread_length
from grammar.words.tokens import Token

_LENGTHS: Final = frozenset(["LENGTH", "NUMBER", "FOCAL"])
_NEAR: Final = 5  # tokens
_BEHIND: Final = "behind"
_SUM: Final = "total"
_THE: Final = "the"
_BETWEEN: Final = frozenset(["CUE", "DET", "PREP"])
_OWN: Final = frozenset(["LENS", "KIND", "PIECE", "MOUNT", "BODY"])
_THREAD_WIDTHS: Final = (12.0, 130.0)  # mm
_PIECES: Final = frozenset(["PIECE", "LINK"])  # 'ring', and what two mounts are joined by: 'the M-L'
THREAD_LENGTH: Final = "thread-length"
_MEASURED: Final = frozenset(["flange-to-image", "throat", "barrel", "bore", "circle"])
_NEAR_METRES: Final = 10.0  # of a bare number that tells how near a lens focuses
_MOST_METRES: Final = 250.0  # of a bare number on a scale
_OF_LENSES: Final = frozenset(["mark", "field"])
_LEAST_AWAY: Final = 100.0  # mm
_AWAY: Final = {"m": 1000.0, "ft": 304.8}
_MOST_NEAR: Final = 10.0  # metres, of a bare decimal that tells how near a lens comes by itself
_OF_THE_FIELD: Final = frozenset(["with", "at", "from"])  # what follows them is not its width
_WIDTHS: Final = (10.0, 150.0)  # mm, that a thread may be wide
_BE: Final = "be"


def with_measures_told(tokens: list[Token]) -> list[Token]:
    """Lengths beside a measuring word become KEYED, with what they measure as their value; in mm."""
    out = _crossed(counted(with_closer_rings(tokens)))
    for at, token in enumerate(out):
        if token.kind == "MEASURE" and token.value == "size" and _of_what_follows(out, at):
            token = out[at] = token.as_("CUE")
        if token.kind == "MEASURE" and token.value == "size":
            if _of_mark(out, at):
                continue
            # 'the thread measures 15.8': a width; of a ring it is the length
            if any(one.kind in _PIECES for one in out[:at]):
                target = _before_which(out, at, "thickness")
                if target is not None and "." in out[target].text and not _has_length(out[:at]):
                    out[target] = _of_ring(out, target)
                out[at] = token.as_("CUE")
                continue
            target = _of_ring_behind(out, at)
            if target is not None:
                out[target] = _of_ring(out, target)
                out[at] = token.as_("CUE")
                continue
            if _measured_otherwise(out, at):
                out[at] = token.as_("CUE")
                continue
            token = out[at] = token.as_("MEASURE", value="diameter")
        if token.kind == "MEASURE" and token.value == "diameter" and _of_barrel(out, at):
            token = out[at] = token.as_("MEASURE", value="barrel")
        if token.kind == "MEASURE":
            target = _which(out, at, token)
            if target is not None and not _is_plausible(token, out[target].numbers[0]):
                if token.value == "circle" and target == at - 1:
                    out[at] = token.as_("PIECE", value="adapter")  # 'a 1 mm disc' is no image circle, it stands between
                    continue
                target = None  # '0.2 mm on the ring' is no distance
            if target is not None and token.value == "mark" and _names_format(out[target]):
                out[at], out[target] = token.as_("PREP", value="made-for"), out[target].as_("FORMAT")
                continue  # 'marked 2/3"'
            if target is not None and token.value == "flange-to-image" and target and is_put_in(out[target - 1]):
                token = token.as_("MEASURE", value="extension")
            if target is not None:
                screwed = token.value == "thickness" and is_thread_length(out[target]) and _of_thread(out, at)
                out[target] = _keyed(out[target], THREAD_LENGTH if screwed else token.value)
                out[at] = token.as_("CUE")  # it has its length; the next number is another thing's
        elif token.kind == "MOUNTWORD" and is_screw(token):
            before = out[at - 1] if at else Token("STOP", "", 0)
            ahead = _past_verbs(out, at + 1)
            after = out[ahead] if ahead < len(out) else None
            of = before.value == "of" and at > 1 and out[at - 2].kind in ("LENGTH", "NUMBER")
            if of and is_thread_length(out[at - 2]):
                out[at - 2] = _keyed(out[at - 2], THREAD_LENGTH)  # '6.2 mm of thread'
            elif before.kind in ("LENGTH", "NUMBER") and (
                after is None or after.kind not in ("LENS", "KIND") or any(one.kind == "PITCH" for one in out)
            ):
                out[at - 1] = _keyed(before, THREAD_LENGTH if is_thread_length(before) else "diameter")
            elif after is not None and before.kind != "MOUNT" and (_is_of_thread(after) or _ends_as_width(out, ahead)):
                ends = ahead + 1 >= len(out) or out[ahead + 1].kind not in _OWN
                key = THREAD_LENGTH if is_thread_length(after) else "diameter"
                out[ahead] = _keyed(after, key) if ends else after
        elif token.kind == "KIND" and token.text.casefold() == "wide" and at and out[at - 1].kind == "LENGTH":
            measure = out[at + 1] if at + 1 < len(out) and out[at + 1].kind == "MEASURE" else None
            circle = measure is not None and measure.value == "circle"  # 'a 20 mm wide circle'
            out[at - 1] = _keyed(out[at - 1], "circle" if circle else "width")
            if circle and measure is not None:
                out[at + 1] = measure.as_("CUE")
            out[at] = token.as_("CUE")
    return out


def _of_mark(tokens: list[Token], at: int) -> bool:
    """'the 5 ft mark measures 4.5': how far off it is sharp, in the unit of the mark; it is told in place."""
    marks = [one for one in tokens[max(0, at - _NEAR) : at] if one.kind == "KEYED" and one.value == "mark"]
    target = _before_which(tokens, at, "length") if marks and marks[-1].unit in _AWAY else None
    if target is None:
        return False
    bare, unit = tokens[target].kind == "NUMBER", marks[-1].unit
    size = tokens[target].numbers[0] * (_AWAY[unit] if bare else 1.0)
    tokens[target] = tokens[target].as_("KEYED", value="distance", numbers=(size,), unit=unit)
    tokens[at] = tokens[at].as_("CUE")
    return True


def _which(tokens: list[Token], at: int, word: Token) -> int | None:
    """The length of a measuring word: the one before it, else behind it; `next` asks for right behind first."""
    if "next" in word.implies and at + 1 < len(tokens) and tokens[at + 1].kind in _LENGTHS:
        target = _before_which(tokens, at, word.value)
        if target is not None:
            return target
    target = None if "ahead" in word.implies else _after_which(tokens, at, word.value)
    near = target is not None and word.value == "mark" and tokens[target].unit == "mm"
    if near and (ahead := _before_which(tokens, at, word.value)) is not None and tokens[ahead].unit in _AWAY:
        return ahead  # '20 mm: mark 1 m is really 1.3'
    if target is None and "after" not in word.implies:
        target = _before_which(tokens, at, word.value)
    return target


def _is_of_thread(token: Token) -> bool:
    """'thread 42 mm', 'thread 38.8': told with its unit, or as wide as threads are."""
    wide = (
        token.kind == "NUMBER"
        and not token.text.isalpha()
        and _THREAD_WIDTHS[0] <= token.numbers[0] <= _THREAD_WIDTHS[1]
    )
    return token.kind == "LENGTH" or wide


def _names_format(token: Token) -> bool:
    """Whether a length in inches is the figure of a sensor."""
    return token.unit == "in" and "format" in token.implies and "/" in token.value


def _ends_as_width(tokens: list[Token], at: int) -> bool:
    """'with thread 42': a bare number that ends what is said of the thread."""
    after = tokens[at + 1].kind if at + 1 < len(tokens) else "STOP"
    number = tokens[at].numbers[0] if tokens[at].kind == "NUMBER" and not tokens[at].text.isalpha() else 0.0
    return _WIDTHS[0] <= number <= _WIDTHS[1] and after in ("STOP", "JOIN", "CUE")


def _measured_otherwise(tokens: list[Token], at: int) -> bool:
    """'measured 74.6 from shoulder to image': the words behind the number tell what was measured."""
    target = _before_which(tokens, at, "length")
    after = tokens[at + 1 : at + 5]
    return target is None and len(after) > 1 and after[0].kind in _LENGTHS and after[1].kind == "MEASURE"


def _is_plausible(word: Token, number: float) -> bool:
    """Whether what the word measures is ever so long, in mm: the word list tells from what to what, as '3..250'."""
    for told in word.implies:
        least, dots, greatest = told.partition("..")
        if dots and not float(least or 0) <= number <= float(greatest or "inf"):
            return False
    return True


def _has_length(tokens: list[Token]) -> bool:
    """Whether the last piece among the tokens has its length already."""
    last = max(n for n, token in enumerate(tokens) if token.kind in _PIECES)
    return any(token.kind == "LENGTH" for token in tokens[max(0, last - 2) : last + 2])


def _of_ring_behind(tokens: list[Token], at: int) -> int | None:
    """'measured my M42 to E ring at 27.35': the decimal number behind the ring that follows the word."""
    piece = False
    for n, token in enumerate(tokens[at + 1 :], start=at + 1):
        if token.kind == "STOP":
            return None
        piece = piece or token.kind in _PIECES
        if piece and token.kind in _LENGTHS and "." in token.text:
            return n
    return None


def _of_thread(tokens: list[Token], at: int) -> bool:
    """'M39 thread 5mm long': the length of a thread, not of a ring."""
    return any(map(is_screw, tokens[max(0, at - _NEAR) : at]))


def _of_what_follows(tokens: list[Token], at: int) -> bool:
    """'measured 20 mm on a card': the word behind the length tells what it measures."""
    kinds = [token.kind for token in tokens[at + 1 : at + 4]]
    last = next((n for n, kind in enumerate(kinds) if kind in _LENGTHS), None)
    measure = tokens[at + 2 + last] if last is not None and at + 2 + last < len(tokens) else None
    return measure is not None and measure.kind == "MEASURE" and measure.value == "circle"


def _of_barrel(tokens: list[Token], at: int) -> bool:
    """'the barrel is 24 mm across': the width of a barrel, not of a thread."""
    return any(token.kind == "MEASURE" and token.value == "barrel" for token in tokens[max(0, at - _NEAR) : at])


def _past_verbs(tokens: list[Token], at: int) -> int:
    """Where what is said of a thing begins: 'the thread is about 42 mm'."""
    while at < len(tokens) and tokens[at].kind in ("CUE", "DET"):
        at += 1
    return at


def _crossed(tokens: list[Token]) -> list[Token]:
    """'the barrel is 40mm wide' tells of the barrel; '42 mm, 1.0 pitch', '42 x 1' of a thread: both are widths."""
    for at in range(1, len(tokens)):
        token, before = tokens[at], tokens[at - 1]
        wide = token.kind == "KIND" and token.text.casefold() == "wide"
        after = tokens[at + 1] if at + 1 < len(tokens) else None
        if wide and before.kind == "NUMBER" and "." in before.text and (after is None or after.kind not in _OWN):
            tokens[at - 1] = _keyed(before, "width")
            tokens[at] = token.as_("CUE")
        elif (
            wide
            and before.kind == "LENGTH"
            and (measures := [one.value for one in tokens[max(0, at - _NEAR) : at - 1] if one.kind == "MEASURE"])
        ):
            if measures[-1] == "distance":
                tokens[at - 1] = _keyed(before, "field")  # 'the subject is 24 mm wide'
            tokens[at] = token.as_("CUE")
        elif token.kind == "PITCH" and _is_width(before):
            tokens[at - 1] = _keyed(before, "diameter")
    return tokens


def _is_width(token: Token) -> bool:
    metric = token.kind in _LENGTHS and token.unit in ("", "mm") and not token.text.isalpha()
    return metric and not is_thread_length(token)


def _keyed(token: Token, key: str) -> Token:
    if key == "close-focus" and is_own_size(token):
        return token.as_("RATIO")
    if key == "close-focus" and token.kind == "NUMBER" and "." in token.text and token.numbers[0] < _MOST_NEAR:
        return token.as_("KEYED", value=key, unit="m", numbers=(token.numbers[0] * 1000,))  # '.9 on its own'
    if key == "mark" and token.kind == "NUMBER" and token.numbers[0] < _MOST_METRES:
        return token.as_("KEYED", value=key, unit="m", numbers=(token.numbers[0] * 1000,))  # 'mark 7'
    if key == "close-focus" and token.kind == "NUMBER" and token.numbers[0] < _NEAR_METRES:
        return token.as_("KEYED", value=key, unit="m", numbers=(token.numbers[0] * 1000,))  # 'close focus 0.7'
    return token.as_("KEYED", value=key, unit=token.unit or "mm")


def _is_led(tokens: list[Token], at: int) -> bool:
    """'what circle does a 135 throw': an article makes the bare number a lens."""
    return tokens[at - 1].kind == "DET" or tokens[at - 1].text.casefold() == "a"


def _of_ring(tokens: list[Token], at: int) -> Token:
    """The thickness of the ring; where there are several pieces, that of the one it stands beside."""
    several = sum(one.kind == "PIECE" for one in tokens) > 1
    return tokens[at].as_("LENGTH", unit="mm") if several else _keyed(tokens[at], "thickness")


def _is_of_lens(tokens: list[Token], at: int) -> bool:
    """'of a 50': an 'of' stands before the number, so that it tells whose it is."""
    return any(token.kind == "PREP" and token.value == "of" for token in tokens[max(0, at - 2) : at])


def _past_its_lens(tokens: list[Token], at: int) -> int:
    """'register of my lens is 44.9': what is measured may be named between."""
    values = [one.value for one in tokens[at + 1 : at + 5]]
    kinds = [one.kind for one in tokens[at + 1 : at + 5]]
    named = kinds[:3] == ["PREP", "DET", "LENS"] and values[0] == "of"
    return at + 4 if named and len(kinds) > 3 and kinds[3] == "CUE" else at + 1


def _after_which(tokens: list[Token], at: int, measured: str) -> int | None:
    """'10 m mark': the length right before the word; '135mm distance' is a lens."""
    back = at - 1
    while back >= 0 and tokens[back].kind == "DET":
        back -= 1
    if back > 0 and tokens[back].value == "of" and measured == "layer":
        back -= 1  # '0.1 of foil'
    if back > 0 and tokens[back].value == _BE and _before_which(tokens, at, measured) is None:
        back -= 1  # '70.6 is the barrel'
    if measured in _MEASURED and back >= 0 and tokens[back].text.isalpha():
        return None  # 'four flanges'
    if back < 0 or tokens[back].kind not in _LENGTHS or (measured == "distance" and tokens[back].unit in ("", "mm")):
        return None
    return back


def _before_which(tokens: list[Token], at: int, measured: str) -> int | None:
    """'mark at 10 m': the length soon after the word, unless it goes on to describe a thing of its own."""
    behind = tokens[at + 1 : at + 3]
    if measured in _OF_LENSES and len(behind) > 1 and behind[0].value == "of" and behind[1].kind == "DET":
        return None  # 'the marks of my 35', 'the field of a 28': that is the lens
    begin = _past_its_lens(tokens, at) if measured == "flange-to-image" else at + 1
    for ahead in range(begin, min(begin + 3, len(tokens))):
        token = tokens[ahead]
        if token.kind == "NUMBER" and token.text.isalpha():
            return None  # 'a flange with four lobes'
        if token.value == _BEHIND or (measured == _SUM and token.kind == "DET" and token.value != _THE):
            return None  # 'of tube behind a 100', 'to make a 135 into f/11'
        if measured == "mark" and token.unit in ("", "mm") and _is_of_lens(tokens, ahead):
            return None  # 'on the scale of a 50'
        if token.kind in _LENGTHS:
            after = tokens[ahead + 1] if ahead + 1 < len(tokens) else None
            of_it = (
                after is not None and measured == "flange-to-image" and after.value == "circle"
            )  # 'register 71 on paper'
            # 'my sheet is 0.05 thick'
            of_it = of_it or (after is not None and measured == "layer" and after.value == "thickness")
            taken = after is not None and (after.kind in _OWN or after.kind in ("MEASURE", "FNUM")) and not of_it
            taken = taken or (measured == "circle" and token.kind == "NUMBER" and _is_led(tokens, ahead))
            if measured == "distance" and after is not None and after.value == "flange-to-image":
                taken = (
                    token.unit in ("", "mm") or token.numbers[0] < _LEAST_AWAY
                )  # 'the subject 30 cm from the sensor'
            near = measured == "distance" and token.unit in ("", "mm")  # 'minimum distance 90mm': that is the lens
            return None if taken or near else ahead
        if token.kind == "MEASURE" and token.value == "size" and measured in _MEASURED:
            continue  # 'register measured 46.4'
        bare = ahead + 1 < len(tokens) and tokens[ahead + 1].kind in ("NUMBER", "FOCAL")
        of_field = measured == "field" and token.value in _OF_THE_FIELD
        if token.kind not in _BETWEEN or (token.value == "with" and bare) or of_field:
            # 'depth of field with a 50', '2 m deep with 85' is of a lens, 'field at 3 m' that of a subject so far off
            return None
    return None
