"""Which length a measuring word has: that before it, as in '10 m mark', or that behind it, as in 'mark at 10 m'."""

from __future__ import annotations

from typing import Final

from engine.base.units import MM_PER_FOOT
from grammar.words.groups import ASKS, LEADS_LENS, SHOWS_OR_WOULD
from grammar.words.groups import AWAY as SET_AWAY
from grammar.words.groups import OWN as MINE
from grammar.words.token_kinds import SIZES
from grammar.words.tokens import Token

OWN: Final = frozenset(["LENS", "KIND", "PIECE", "MOUNT", "BODY"])  # what follows a number that is of another thing
AWAY: Final = {"m": 1000.0, "ft": MM_PER_FOOT}  # units of the focus scale, in mm
_WIDE: Final = "wide"
_BEHIND: Final = "behind"
_NEAREST: Final = "close-focus"
_SUM: Final = "total"
_THE: Final = "the"
_SPEED: Final = "iso"
_OF_ONE: Final = (["on"], ["for"], ["with"], ["of"])  # what leads to the lens that it is the register of
_BE: Final = "be"
WIDTHS: Final = frozenset(["diameter", "size", "width"])  # what is told of a thread, by the words for it
_BETWEEN: Final = frozenset(["CUE", "DET", "PREP"])
_IS: Final = "be"
_TOTAL: Final = "total"  # value of 'make', 'comes to'
_REGISTER: Final = "flange-to-image"
_EXTENSION: Final = "extension"
_MEASURED: Final = frozenset([_REGISTER, "throat", "barrel", "bore", "circle", "layer"])
_OF_LENSES: Final = frozenset(["mark", "field"])
_SHORTEST_LENS: Final = 12.0  # mm
_FAR_UNITS: Final = frozenset([*AWAY, "cm"])
_LEAST_AWAY: Final = 100.0  # mm
# what is measured, and the word behind the number that says so again: 'register 71 on paper', 'my sheet is 0.05 thick'
_TOLD_TWICE: Final = frozenset(
    [
        (_REGISTER, "circle"),
        (_REGISTER, "rear-reach"),
        ("layer", "thickness"),
        ("rear-reach", "thickness"),
        ("bore", "diameter"),
        ("throat", "diameter"),
        ("barrel", "diameter"),
        ("circle", "diameter"),
    ]
)
# what may be named between such a word and its length
_WHAT_HAS: Final = {
    _REGISTER: ("LENS", "BODY"), "diameter": ("PIECE", "MOUNTWORD"), "bore": ("PIECE", "MOUNTWORD"),
    "throat": ("PIECE", "MOUNTWORD", "LENS"), "barrel": ("LENS",),
}  # fmt: skip
_OF: Final = "of"
_ENDS_OF: Final = " of"
_OF_WHAT: Final = frozenset([_OF, "on", "in", "for", "through"])
_OF_BODIES: Final = frozenset(["on", "for"])  # leads on to a body only
_NAMING: Final = frozenset(["DET", "LETTER", "MOUNT", "LINK", "UNKNOWN", "KIND", "CUE"])  # what may stand before a noun
_REACH, _FAR_REACH = 3, 7  # tokens, from the word to its length
_FARTHEST: Final = 9  # tokens from the word to what it is of
_OF_THE_FIELD: Final = frozenset(["with", "at", "from"])  # what follows them is not its width


_IN_FRONT: Final = frozenset(["mark", "close-focus", "nearest"])  # words for how far off something is


def length_of(tokens: list[Token], at: int, word: Token) -> int | None:
    """The length of a measuring word: the one before it, else behind it; `next` asks for right behind first."""
    if word.value == _TOTAL and at + 1 < len(tokens) and MINE in tokens[at + 1].groups:
        return None  # 'what makes my 50 look longer'
    right_behind = at + 1 < len(tokens) and tokens[at + 1].kind in SIZES
    if _is_between(tokens, at, word) or ("next" in word.implies and right_behind):
        target = length_behind(tokens, at, word.value)
        if target is not None:
            return target
    target = (
        None if "ahead" in word.implies or _is_led_by_another(tokens, at) else length_before(tokens, at, word.value)
    )
    near = target is not None and word.value in _IN_FRONT and tokens[target].unit in ("mm", "")
    if near and (ahead := length_behind(tokens, at, word.value)) is not None and tokens[ahead].unit in _FAR_UNITS:
        return ahead  # '20 mm: mark 1 m is really 1.3', 'my 55 native 0.7m'
    if target is None and "after" not in word.implies:
        target = length_behind(tokens, at, word.value)
    return target


def _is_led_by_another(tokens: list[Token], at: int) -> bool:
    """'outer diameter 54 throat 46': the length before the word is that of the measure told before it."""
    if not 0 < at < len(tokens) - 1:
        return False
    led, before, after = tokens[max(0, at - 2)], tokens[at - 1], tokens[at + 1]
    if before.numbers == (1.0,) and before.text[:1].isalpha() and after.kind in SIZES:
        return not after.text.isalpha()  # 'that one measured 28.7'
    return led.kind == "MEASURE" and before.kind in SIZES and after.kind in SIZES and not after.text.isalpha()


def _is_between(tokens: list[Token], at: int, word: Token) -> bool:
    """'enlarger 50 mm register 43': a whole length before the word is the lens's where a bare one is right behind."""
    stopped = word.value == "barrel" and at > 1 and tokens[at - 2].kind == "FNUM"  # 'f1.3 20mm smooth barrel 31'
    # 'projector lens 85 mm barrel 62.5'
    headed = word.value == "barrel" and at > 1 and tokens[at - 2].kind in ("LENS", "KIND")
    if not (word.value == _REGISTER or stopped or headed) or not 0 < at < len(tokens) - 1:
        return False
    told_so = tokens[at + 1].value == _IS and at + 2 < len(tokens)  # 'a 28mm whose flange is 46.3'
    before, after = tokens[at - 1], tokens[at + 1 + told_so]
    metric = before.kind == "NUMBER" and before.text.isdecimal() if after.kind == "NUMBER" else False
    metric = metric or before.is_mm
    whole = metric and before.numbers[0] == int(before.numbers[0])
    fits = after.kind in SIZES and (after.kind == "NUMBER" or after.is_mm)
    return whole and fits and not after.text.isalpha()


def length_before(tokens: list[Token], at: int, measured: str) -> int | None:
    """'10 m mark': the length right before the word; '135mm distance' is a lens."""
    back = at - 1
    while back >= 0 and tokens[back].kind == "DET":
        back -= 1
    if back > 0 and tokens[back].value == "of" and measured in ("layer", "stock"):
        back -= 1  # '0.1 of foil'
    if back > 0 and tokens[back].value == _BE and length_behind(tokens, at, measured) is None:
        back -= 1  # '70.6 is the barrel'
    if measured in _MEASURED and back >= 0 and tokens[back].text.isalpha():
        return None  # 'four flanges'
    if measured == "thickness" and back > 0 and (is_lens_led(tokens, back) or tokens[back - 1].value == "bellows"):
        return None  # 'the ring for my 55 is short'
    if back < 0 or tokens[back].kind not in SIZES:
        return None
    so_far = tokens[back].unit == "mm" and SET_AWAY in tokens[at].groups  # '300 mm away', which no lens is
    if measured == "distance" and tokens[back].unit in ("", "mm") and not so_far:
        return None
    return back


def is_lens_led(tokens: list[Token], at: int) -> bool:
    """'for my 55', 'under the 28': a bare whole number so led is a lens."""
    token, led = tokens[at], tokens[max(0, at - 2) : at]
    bare = token.kind in ("NUMBER", "FOCAL") and token.text.isdecimal() and token.numbers[0] >= _SHORTEST_LENS
    return bare and [one.kind for one in led[1:]] == ["DET"] and LEADS_LENS in led[0].groups


def _is_with_a(tokens: list[Token], at: int) -> bool:
    """'with a': what follows is one thing that is there, not how much of it."""
    return tokens[at].value == "with" and at + 1 < len(tokens) and tokens[at + 1].kind == "DET"


def length_behind(tokens: list[Token], at: int, measured: str) -> int | None:
    """'mark at 10 m': the length soon after the word, unless it goes on to describe a thing of its own."""
    behind = tokens[at + 1 : at + 3]
    if measured in _OF_LENSES and len(behind) > 1 and behind[0].value == "of" and behind[1].kind == "DET":
        return None  # 'the marks of my 35', 'the field of a 28': that is the lens
    begin = _past_what_has_it(tokens, at, measured)
    reach = _FAR_REACH if measured == _REGISTER else _REACH  # 'flange to picture of the far house = 71'
    for ahead in range(begin, min(begin + reach, len(tokens))):
        token = tokens[ahead]
        if token.kind == "NUMBER" and token.text.isalpha():
            return None  # 'a flange with four lobes'
        if measured == _EXTENSION and (token.value in _OF_BODIES or _is_with_a(tokens, ahead)):
            return None  # 'how much extension for a 90', 'with a 100': that is the lens
        if token.value == _BEHIND or (measured == _SUM and token.kind == "DET" and token.value != _THE):
            return None  # 'of tube behind a 100', 'to make a 135 into f/11'
        if measured == "mark" and token.unit in ("", "mm") and _is_of_lens(tokens, at, ahead):
            return None  # 'on the scale of a 50'
        if measured == "mark" and token.kind in SIZES and token.unit in ("", "mm") and _is_asked_of(tokens, at, ahead):
            tokens[ahead] = token.as_("FOCAL", unit="mm")
            return None
        if (measured == _NEAREST and _is_focal(tokens, ahead)) or (measured == _REGISTER and _is_a_lens(tokens, ahead)):
            return None
        if measured == "depth" and token.unit in AWAY and tokens[ahead - 1].value == "at":
            return None  # 'what is gained in depth at 2 m': that is how far away
        if token.kind in SIZES:
            near = measured == "distance" and token.unit in ("", "mm")  # 'minimum distance 90mm': that is the lens
            near = near or (measured == _EXTENSION and is_led(tokens, ahead))  # 'what extension does a 60 need'
            return None if near or _is_of_another(tokens, ahead, measured) else ahead
        if token.kind == "MEASURE" and token.value == "size" and measured in _MEASURED:
            continue  # 'register measured 46.4'
        if token.kind == "LIMIT" and measured in _MEASURED:
            continue  # 'a register below 20'
        bare = ahead + 1 < len(tokens) and tokens[ahead + 1].kind in ("NUMBER", "FOCAL")
        of_field = measured == "field" and token.value in _OF_THE_FIELD
        if token.kind not in _BETWEEN or (token.value == "with" and bare) or of_field:
            # 'depth of field with a 50', '2 m deep with 85' is of a lens, 'field at 3 m' that of a subject so far off
            return None
    return None


def _past_what_has_it(tokens: list[Token], at: int, measured: str) -> int:
    """'register of my lens is 44.9', 'hole in the C to E ring is 22': what is measured may be named between."""
    has = _WHAT_HAS.get(measured)
    rest = [n for n in range(at + 1, min(len(tokens), at + _FARTHEST)) if tokens[n].kind != "FILLER"]
    led = _OF if tokens[at].text.casefold().endswith(_ENDS_OF) else ""  # 'register of' is one word
    if not led and rest:
        led = str(tokens[rest.pop(0)].value)
    if has is None or led not in _OF_WHAT or (led in _OF_BODIES and "BODY" not in has):
        return at + 1
    for n in rest:
        if tokens[n].kind in has or _is_lens_told_of(tokens, n):
            return n + 1
        if tokens[n].kind not in _NAMING and tokens[n].text.casefold() != "a":
            break
    return at + 1


def _is_lens_told_of(tokens: list[Token], at: int) -> bool:
    """'barrel of the 75 is 41': the first number is the lens by its focal length, of which the other is measured."""
    ahead = tokens[at + 1 : at + 3]
    told = len(ahead) > 1 and ahead[0].value == _BE and ahead[1].kind in SIZES
    return told and tokens[at].kind in SIZES and tokens[at - 1].kind == "DET"


def _is_of_another(tokens: list[Token], at: int, measured: str) -> bool:
    """Whether the length behind a measuring word is that of the thing, or of the measure, that follows it."""
    token, after = tokens[at], tokens[at + 1] if at + 1 < len(tokens) else None
    if measured == "distance" and after is not None and after.value == _REGISTER:
        return token.numbers[0] < _LEAST_AWAY  # 'the subject 30 cm from the sensor'
    if measured == "circle" and (token.kind == "NUMBER" or tokens[at - 1].kind != "CUE") and is_led(tokens, at):
        return True
    if measured == "circle" and after is not None and after.kind == "FORMAT":
        return True  # 'image circle of 50 mm standard 8 lens'
    if after is None or (measured, after.value) in _TOLD_TWICE:
        return False
    if after.value == _SPEED:
        return True  # 'make that 100 iso'
    if after.text.casefold() == _WIDE and measured in _MEASURED:
        return False  # 'the hole is 22 mm wide'
    if after.kind == "MEASURE" and _has_own_behind(tokens, at + 1):
        return False  # 'thread measures 41.9, register 45.5'
    return after.kind in OWN or after.kind in ("MEASURE", "FNUM")


def _is_a_lens(tokens: list[Token], at: int) -> bool:
    """'set the flange on a 100', 'register for my 35 mm': so led a whole number is a lens, and no register."""
    token, led = tokens[at], [one.value for one in tokens[max(0, at - 2) : at - 1]]
    whole = token.unit in ("", "mm") and bool(token.numbers) and token.numbers[0] == int(token.numbers[0])
    return token.kind in SIZES and whole and "." not in token.text and is_led(tokens, at) and led[-1:] in _OF_ONE


def _is_focal(tokens: list[Token], at: int) -> bool:
    """'closest focus of a 28 mm', 'of my 35': no lens focuses so near, and an article makes a bare number a lens."""
    token = tokens[at]
    short = token.is_mm and token.numbers[0] < _LEAST_AWAY
    bare = token.kind == "NUMBER" and not token.unit and "." not in token.text
    return short or token.kind == "FOCAL" or (bare and is_led(tokens, at))


def _has_own_behind(tokens: list[Token], at: int) -> bool:
    """Whether a length stands right behind the measuring word at `at`, and nothing behind that which it may be of."""
    number, after = (tokens[at + n] if at + n < len(tokens) else None for n in (1, 2))
    told = number is not None and number.kind in ("LENGTH", "NUMBER") and not number.text.isalpha()
    return told and (after is None or after.kind not in (*OWN, "FNUM", "NUMBER", "LENGTH"))


def is_led(tokens: list[Token], at: int) -> bool:
    """'what circle does a 135 throw', 'image circle of a 50 mm': an article makes the number a lens."""
    return tokens[at - 1].kind == "DET" or tokens[at - 1].text.casefold() == "a"


def _is_asked_of(tokens: list[Token], at: int, ahead: int) -> bool:
    """'which mark would a 100 show': between the word and the number one that asks of it, and its article."""
    asks = any(SHOWS_OR_WOULD in one.groups for one in tokens[at + 1 : ahead])
    return asks and tokens[ahead - 1].kind == "DET"


def _is_of_lens(tokens: list[Token], at: int, ahead: int) -> bool:
    """'of a 50', 'with a 135': an 'of' stands before the number, or one lens is told, so that it tells whose it is.

    So it is with 'on the 28' where the mark is asked for: 'at which mark on the 28'.
    """
    led, asked = tokens[max(0, ahead - 2) : ahead], any(ASKS in one.groups for one in tokens[max(0, at - 2) : at])
    one_told = ("a", "an", "my", _THE) if asked else ("a", "an", "my")
    article = len(led) > 1 and led[0].kind == "PREP" and led[1].text.casefold() in one_told
    return article or any(token.kind == "PREP" and token.value == "of" for token in led)


def is_plausible(word: Token, number: float) -> bool:
    """Whether what the word measures is ever so long, in mm: the word list tells from what to what, as '3..250'."""
    for told in word.implies:
        least, dots, greatest = told.partition("..")
        if dots and not float(least or 0) <= number <= float(greatest or "inf"):
            return False
    return True
