"""Which length a measuring word belongs to: '10 m' of 'the 10 m mark' is a mark, '26 mm thick' a thickness."""

from __future__ import annotations

from typing import Final

from grammar.numbers.added_travel import with_added_travel
from grammar.numbers.closer_rings import with_closer_rings
from grammar.numbers.crests import counted, is_screw, is_thread_measured
from grammar.numbers.measured_lengths import AWAY, OWN, is_plausible, length_behind, length_of
from grammar.numbers.measured_near import (
    is_its_length,
    is_keyed_before,
    is_keyed_behind,
    is_led_as_other,
    is_measured_behind,
)
from grammar.numbers.near_marks import is_own_size
from grammar.numbers.ring_measured import PIECES, pieces_told, ring_measured
from grammar.numbers.screw_widths import is_lens_by_stop
from grammar.numbers.senses import is_put_in, is_thread_length
from grammar.numbers.threads_told import with_led_apart
from grammar.numbers.wide_lenses import is_lens_amiss, is_wide_lens
from grammar.words.groups import ASKS
from grammar.words.token_kinds import SIZES
from grammar.words.tokens import Token

THREAD_LENGTH: Final = "thread-length"
_TOO: Final = "too "
_THIN: Final = "thin"
_THINNEST_RING_MM: Final = 0.5
_NEAR: Final = 5  # tokens
_THREAD_NEAR: Final = 8  # from a thread to how long it is: 'the thread on this one is nearly 5 mm long'
_THREAD_WIDTHS: Final = (12.0, 130.0)  # mm
_WIDTHS: Final = (10.0, 150.0)  # mm, of a bare number that ends what is said of a thread
_LEAST_MARK_MM: Final = 100.0  # of a focus scale
_NEAR_METRES: Final = 10.0  # of a bare number that tells how near a lens focuses
_MOST_METRES: Final = 250.0  # of a bare number on a scale
_IDENTIFIED: Final = "after-identify-mount"  # a thread may have been asked for


def with_measures_told(tokens: list[Token], told: frozenset[str] = frozenset()) -> list[Token]:
    """Lengths beside a measuring word become KEYED, in mm. `told`: what cues tell, and the kind of question before."""
    out = _crossed(counted(with_led_apart(with_closer_rings(with_added_travel(tokens))), threaded=_IDENTIFIED in told))
    for at, token in enumerate(out):
        if token.kind == "MEASURE" and token.value == "total" and "nd" in told:
            out[at] = token.as_("CUE")  # 'how much nd to get f/1.8'
        elif token.kind == "MEASURE":
            _tell_measure(out, at)
        elif token.kind == "MOUNTWORD" and is_screw(token) and not is_lens_by_stop(out, at):
            _tell_screw(out, at)
        elif _is_wide(token) and at and out[at - 1].kind == "LENGTH" and not is_wide_lens(out, at):
            _tell_wide(out, at)
    return out


def _tell_measure(tokens: list[Token], at: int) -> None:
    """The length of a measuring word told as its own; the word itself then waits for no other."""
    word = tokens[at]
    if word.value == "mark" and at + 1 < len(tokens) and tokens[at + 1].kind == "MOUNT":
        tokens[at] = word.as_("DET")  # 'a 12 mm marked CS'
        return
    if word.value == "size":
        if not is_thread_measured(tokens, at) and _size_is_told(tokens, at):
            tokens[at] = word.as_("CUE")
            return
        word = tokens[at] = word.as_("MEASURE", value="diameter")
    if word.value == "diameter" and _of_barrel(tokens, at):
        word = tokens[at] = word.as_("MEASURE", value="barrel")
    if is_keyed_before(tokens, at):
        tokens[at] = word.as_("CUE")
        return
    asked = word.value == "field" and any(ASKS in one.groups for one in tokens[max(0, at - 2) : at])
    target = None if asked or is_keyed_behind(tokens, at) else _past_own(tokens, at) or length_of(tokens, at, word)
    if target is None or is_lens_amiss(tokens, target, at):
        return
    if not is_plausible(word, tokens[target].numbers[0]):  # '0.2 mm on the ring' is no distance
        if word.value == "circle" and target == at - 1 and tokens[target].kind == "LENGTH":
            tokens[at] = word.as_("PIECE", value="adapter")  # 'a 1 mm disc' is no image circle, it stands between
        return
    if word.value == "field" and target > at and _is_lens_before_tube(tokens, target):
        return
    if word.value == "mark" and target > at and tokens[target].is_mm and tokens[target].numbers[0] < _LEAST_MARK_MM:
        return  # 're-mark scale: 50mm, ..': the lens
    if word.value == "mark" and _names_format(tokens[target]):  # 'marked 2/3"'
        tokens[at], tokens[target] = word.as_("PREP", value="made-for"), tokens[target].as_("FORMAT")
        return
    key = "mark" if word.value == "barrel" and tokens[target].unit in AWAY else word.value  # 'the barrel reads 3 m'
    if key == "flange-to-image" and target and is_put_in(tokens[target - 1]):
        key = "extension"
    elif key == "thickness" and word.text.casefold().startswith(_TOO) and is_its_length(tokens, target):
        tokens[target], tokens[at] = tokens[target].as_("LENGTH", unit="mm"), word.as_("CUE")
        return
    elif key == "thickness" and target == at - 1 and _is_thin_piece(tokens, at):
        tokens[target], tokens[at] = tokens[target].as_("LENGTH", unit="mm"), word.as_("DET")
        return
    elif key == "thickness" and is_thread_length(tokens[target]) and _of_thread(tokens, at):
        key = THREAD_LENGTH
    tokens[target] = _keyed(tokens[target], key)
    tokens[at] = word.as_("CUE")
    if target + 1 < len(tokens) and _is_wide(tokens[target + 1]):
        tokens[target + 1] = tokens[target + 1].as_("CUE")  # 'the hole is 22 mm wide'


def _past_own(tokens: list[Token], at: int) -> int | None:
    """'100mm lens to sensor 120mm': the length before is the lens's own, the one behind how far off it stands."""
    behind, word = _past_verbs(tokens, at + 1), tokens[at]
    led = word.value == "image-distance" and word.text.casefold().startswith("lens") and at > 0
    if not led or behind == len(tokens) or not {tokens[at - 1].kind, tokens[behind].kind} <= SIZES:
        return None
    tokens[at - 1] = tokens[at - 1].as_("FOCAL")
    return behind


def _is_lens_before_tube(tokens: list[Token], at: int) -> bool:
    """'field width 28 mm + 12 mm tube': the lens, of which nothing else is told, and the field is asked for."""
    rest = [one.kind for one in tokens[at + 1 : at + 5]]
    others = any(one.kind in ("FOCAL", "COMBO", "NAMED") for one in tokens)
    tube = "PIECE" in rest and rest[1:2] in (["LENGTH"], ["NUMBER"])
    return tube and not others and rest[0] in ("JOIN", "PREP")


def _is_thin_piece(tokens: list[Token], at: int) -> bool:
    """'a 1 mm thin E ring': a ring so long, which is said to be thin; no ring is as short as what one is off by."""
    ahead = at + 1
    while ahead < len(tokens) and tokens[ahead].kind == "MOUNT":
        ahead += 1
    ring = ahead < len(tokens) and tokens[ahead].kind == "PIECE" and ahead > at + 1
    return ring and tokens[at].text.casefold() == _THIN and tokens[at - 1].numbers[0] >= _THINNEST_RING_MM


def _size_is_told(tokens: list[Token], at: int) -> bool:
    """Whether a plain 'measures' tells of a mark or a ring, which is then told, or leaves it to a word that follows."""
    if _of_what_follows(tokens, at) or _of_mark(tokens, at):
        return True
    if any(one.kind in PIECES for one in tokens[:at]):
        if at and tokens[at - 1].kind == "NUMBER" and "." in tokens[at - 1].text and not _has_length(tokens[: at - 1]):
            tokens[at - 1] = tokens[at - 1].as_("LENGTH", unit="mm")  # 'M-E 9.86 by caliper'
            return True
        # 'the thread measures 15.8': a width; of a ring it is the length
        target = length_behind(tokens, at, "thickness") or ring_measured(tokens, at)
        if target is not None and "." in tokens[target].text and not _has_length(tokens[:at]):
            tokens[target] = _of_ring(tokens, target)
        return True
    target = ring_measured(tokens, at)
    if target is not None:
        tokens[target] = _of_ring(tokens, target)
        return True
    return _measured_otherwise(tokens, at)


def _tell_screw(tokens: list[Token], at: int) -> None:
    """A width, or a length, beside 'thread' or 'screw'."""
    before, ahead = tokens[at - 1] if at else Token("STOP", "", 0), _past_verbs(tokens, at + 1)
    after = tokens[ahead] if ahead < len(tokens) else None
    of = before.value == "of" and at > 1 and tokens[at - 2].kind in ("LENGTH", "NUMBER")
    if of and is_thread_length(tokens[at - 2]):
        tokens[at - 2] = _keyed(tokens[at - 2], THREAD_LENGTH)  # '6.2 mm of thread'
    elif before.kind in ("LENGTH", "NUMBER") and (
        after is None or after.kind not in ("LENS", "KIND") or any(one.kind == "PITCH" for one in tokens)
    ):
        tokens[at - 1] = _keyed(before, THREAD_LENGTH if is_thread_length(before) else "diameter")
    elif (
        after is not None
        and before.kind != "MOUNT"
        and (ahead + 1 >= len(tokens) or tokens[ahead + 1].kind not in OWN)
        and (_is_of_thread(after) or _ends_as_width(tokens, ahead))
        and not is_measured_behind(tokens, ahead)
    ):
        tokens[ahead] = _keyed(after, THREAD_LENGTH if is_thread_length(after) else "diameter")


def _tell_wide(tokens: list[Token], at: int) -> None:
    """'24 mm wide', and 'a 20 mm wide circle'."""
    measure = tokens[at + 1] if at + 1 < len(tokens) and tokens[at + 1].kind == "MEASURE" else None
    circle = measure is not None and measure.value == "circle"
    tokens[at - 1] = _keyed(tokens[at - 1], "circle" if circle else "width")
    if circle and measure is not None:
        tokens[at + 1] = measure.as_("CUE")
    tokens[at] = tokens[at].as_("CUE")


def _is_wide(token: Token) -> bool:
    """'wide' said of a size; elsewhere it is a kind of lens."""
    return token.kind == "KIND" and token.text.casefold() == "wide"


def _of_mark(tokens: list[Token], at: int) -> bool:
    """'the 5 ft mark measures 4.5': how far off it is sharp, in the unit of the mark; it is told in place."""
    marks = [one for one in tokens[max(0, at - _NEAR) : at] if one.kind == "KEYED" and one.value == "mark"]
    target = length_behind(tokens, at, "length") if marks and marks[-1].unit in AWAY else None
    if target is None:
        return False
    bare, unit = tokens[target].kind == "NUMBER", marks[-1].unit
    size = tokens[target].numbers[0] * (AWAY[unit] if bare else 1.0)
    tokens[target] = tokens[target].as_("KEYED", value="distance", numbers=(size,), unit=unit)
    return True


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
    target = length_behind(tokens, at, "length")
    after = tokens[at + 1 : at + 5]
    return target is None and len(after) > 1 and after[0].kind in SIZES and after[1].kind == "MEASURE"


def _has_length(tokens: list[Token]) -> bool:
    """Whether the last piece among the tokens has its length already."""
    last = max(n for n, token in enumerate(tokens) if token.kind in PIECES)
    return any(token.kind == "LENGTH" for token in tokens[max(0, last - 2) : last + 2])


def _of_thread(tokens: list[Token], at: int) -> bool:
    """'M39 thread 5mm long': the length of a thread, not of a ring."""
    return any(map(is_screw, tokens[max(0, at - _THREAD_NEAR) : at]))


def _of_what_follows(tokens: list[Token], at: int) -> bool:
    """'measured 20 mm on a card': the word behind the length tells what it measures."""
    kinds = [token.kind for token in tokens[at + 1 : at + 4]]
    last = next((n for n, kind in enumerate(kinds) if kind in SIZES), None)
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
        wide = _is_wide(token)
        after = tokens[at + 1] if at + 1 < len(tokens) else None
        if wide and before.kind == "NUMBER" and "." in before.text and (after is None or after.kind not in OWN):
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
        elif token.kind == "PITCH" and _is_width(before) and not is_led_as_other(tokens, at - 1):
            tokens[at - 1] = _keyed(before, "diameter")
    return tokens


def _is_width(token: Token) -> bool:
    metric = token.kind in SIZES and token.unit in ("", "mm") and not token.text.isalpha()
    return metric and not is_thread_length(token)


def _keyed(token: Token, key: str) -> Token:
    """A length with what it is of; on a focus scale a bare number is of metres."""
    if key == "close-focus" and is_own_size(token):
        return token.as_("RATIO")
    most = {"mark": _MOST_METRES, "close-focus": _NEAR_METRES}.get(key, 0.0)
    if token.kind == "NUMBER" and 0 <= token.numbers[0] < most:
        return token.as_("KEYED", value=key, unit="m", numbers=(token.numbers[0] * 1000,))  # 'mark 7', '.9 on its own'
    return token.as_("KEYED", value=key, unit=token.unit or "mm")


def _of_ring(tokens: list[Token], at: int) -> Token:
    """The thickness of the ring; where there are several pieces, that of the one it stands beside."""
    several = pieces_told(tokens) > 1
    return tokens[at].as_("LENGTH", unit="mm") if several else _keyed(tokens[at], "thickness")
