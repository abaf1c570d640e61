"""Crests counted over a length, or to the inch, give the pitch of a thread: '10 threads are 10 mm', 'ten make 7.5'."""

from __future__ import annotations

from typing import Final

from engine.base.units import MM_PER_INCH
from grammar.words.groups import SCREW, SCREW_CRESTS
from grammar.words.tokens import Token

_LEAST_WIDTH: Final = 12.0  # mm, of a thread
_THREAD: Final = " thread"  # 'fine thread', 'male thread'
_CRESTS: Final = "crests"
_TOTAL: Final = "total"  # 'ten of them make 7.9' counts crests too, where nothing else is there to be added up
_PITCH: Final = "PITCH"
_PER_INCH: Final = frozenset([24, 26, 27, 28, 32, 36, 40])
_ROUND: Final = frozenset([5.0, 10.0, 20.0])  # crests that are asked about, and no width
_LEAST: Final = 5  # crests that are counted along a rule
_MOST: Final = 50
_PITCHES: Final = (0.3, 2.0)  # mm
_ALONG: Final = frozenset(["CUE", "DET", "PREP", "MEASURE", "VERB", "THREAD"])
_COUNTS: Final = ("NUMBER", "COUNT", "FOCAL")
_SIZES: Final = frozenset(["size", "total", "diameter", _CRESTS])  # 'ten measure 7.5', 'ten across are 7.5'
_OF_THEM: Final = frozenset(["CUE", "DET", "PREP", "MOUNTWORD", "MEASURE"])
_MOST_BETWEEN: Final = 3  # small words between a count and its length
_OVER: Final = frozenset(["over", "for", "across", "in"])
_REACH: Final = 5  # tokens from a count to the word for its total


def counted(tokens: list[Token], threaded: bool = False) -> list[Token]:
    """So many crests and the length or the inch that they take become one PITCH.

    What says that crests were counted: a word for them behind the number ('8 threads'), a word for a total behind it
    ('ten come to 7.5'), or 'over', 'in' and the like beside a thread ('thread is 42, ten in 7.5 mm').
    `threaded`: a thread was spoken of before.
    """
    threaded = threaded or any(is_screw(token) or token.kind == _PITCH or token.value == _CRESTS for token in tokens)
    bare = not any(token.kind in ("PIECE", "LINK") for token in tokens)
    for at, token in enumerate(tokens):
        if token.value == _CRESTS or (token.kind == "MOUNTWORD" and SCREW_CRESTS in token.groups):
            _of_crests(tokens, at)
        elif token.kind == "MEASURE" and token.value == _TOTAL and bare:
            _of_total(tokens, at)
        elif threaded and bare and is_count(token):
            _of_row(tokens, at)
    return tokens


def is_screw(token: Token) -> bool:
    """Whether a token is a word for a screw thread."""
    screw = SCREW in token.groups or token.text.casefold().endswith(_THREAD)
    return screw and token.kind in ("MOUNTWORD", "HEADMOD")


def is_thread_measured(tokens: list[Token], at: int) -> bool:
    """'my ring jams, the thread measures 41.9': a width of its thread, and not how long the ring is."""
    behind = next((one.numbers[0] for one in tokens[at + 1 : at + 3] if one.kind in ("NUMBER", "LENGTH")), 0.0)
    thread = at > 0 and tokens[at - 1].kind == "MOUNTWORD" and tokens[at - 1].text.casefold().endswith(_THREAD.strip())
    return thread and behind >= _LEAST_WIDTH


def _of_crests(tokens: list[Token], at: int) -> None:
    """'10 threads are 10 mm', '7.5 mm over 10 crests', '24 crests to the inch'."""
    count = tokens[at - 1] if at else None
    if count is None or count.kind not in _COUNTS:
        return
    number = count.numbers[0]
    if any(one.kind == _PITCH for one in tokens[at + 1 : at + 3]):
        tokens[at - 1] = count.as_("CUE")  # 'what do ten threads of 32 tpi measure'
        return
    found = _beside(tokens, at + 1, 1)
    found = found if found is not None else _beside(tokens, at - 2, -1)
    found = found if found is not None else _whole_beside(tokens, at + 1, number)
    found = found if found is not None else _whole_beside(tokens, at - 2, number, -1)
    if found is None and number in _PER_INCH:  # '1 inch across, 32 threads', '24 crests to the inch'
        tokens[at - 1] = count.as_(_PITCH, value=f"{number:g} tpi", numbers=(MM_PER_INCH / number,), unit="tpi")
        tokens[at] = tokens[at].as_("CUE")
    if found is not None and _put(tokens, at - 1, found, number):
        tokens[at] = tokens[at].as_("CUE")
    elif found is None and number in _ROUND and count.unit == "" and tokens[at].text.endswith("s"):
        tokens[at - 1] = count.as_("CUE")  # 'how long are ten threads of a T2': no thread so wide


def _of_total(tokens: list[Token], at: int) -> None:
    """'ten of them make 7.9': the count stands before the word, what it comes to behind it."""
    if at + 1 >= len(tokens) or tokens[at + 1].kind not in ("NUMBER", "LENGTH"):
        return
    for back in range(at - 1, max(-1, at - 1 - _REACH), -1):
        if is_count(tokens[back]):
            if _is_pitch(tokens[at + 1], tokens[back]) and _put(tokens, back, at + 1, tokens[back].numbers[0]):
                tokens[at] = tokens[at].as_("CUE")
            return
        if tokens[back].kind not in _OF_THEM:
            return


def _of_row(tokens: list[Token], at: int) -> None:
    """'ten in 7.5 mm', '10 of them 8mm': of a thread that is spoken of, with no more than a small word between."""
    length = at + 1
    while length < len(tokens) and length - at <= _MOST_BETWEEN and tokens[length].kind in _ALONG:
        if tokens[length].kind == "MEASURE" and tokens[length].value not in _SIZES:
            return  # 'thread 37, register 45.46'
        length += 1
    if at + 1 < length < len(tokens) and _is_pitch(tokens[length], tokens[at]):
        spelt = tokens[at].text.isalpha() and any(one.value == "be" for one in tokens[at:length])  # 'ten are 10'
        if spelt or tokens[length].kind == "LENGTH" or "." in tokens[length].text:
            _put(tokens, at, length, tokens[at].numbers[0])
            return
    before = at - 1
    while before >= 0 and at - before <= _MOST_BETWEEN and tokens[before].kind in _ALONG:
        before -= 1
    led = tokens[at - 1] if at else None
    named = tokens[at].text.isalpha()  # 'over' has gone by now
    over = led is not None and (led.value in _OVER or led.text.casefold() in _OVER or (named and before == at - 1))
    told_as_length = before >= 0 and (tokens[before].kind == "LENGTH" or "." in tokens[before].text or named)
    if over and told_as_length and _is_pitch(tokens[before], tokens[at]):
        _put(tokens, at, before, tokens[at].numbers[0])  # '10 mm over ten of them', '7.5 over ten', '15 over twenty'


def is_count(token: Token) -> bool:
    """Whether a token counts crests: a whole number of as many as are counted along a rule."""
    whole = (
        token.kind in ("NUMBER", "COUNT", "TURNS") and bool(token.numbers) and token.numbers[0] == int(token.numbers[0])
    )
    return whole and "." not in token.text and _LEAST <= token.numbers[0] <= _MOST


def _is_pitch(length: Token, count: Token) -> bool:
    """Whether a length shared out among so many crests is a pitch that threads have."""
    if length.kind not in ("LENGTH", "NUMBER", "FOCAL") or not length.numbers:
        return False
    return _PITCHES[0] <= length.numbers[0] / count.numbers[0] <= _PITCHES[1]


def _put(tokens: list[Token], count: int, length: int, number: float) -> bool:
    """Put the pitch where the length stood; whether the count is one of crests."""
    pitch = tokens[length].numbers[0] / number if number else 0.0
    whole = number == int(number) or (number * 2 == int(number * 2) and _PITCHES[0] <= pitch <= _PITCHES[1])
    if number < 1 or not whole:
        return False  # '13.5 threads in 10 mm' were counted to the half
    tokens[length] = tokens[length].as_(_PITCH, value=f"{pitch:.6g} mm", numbers=(pitch,), unit="mm")
    tokens[count] = tokens[count].as_("CUE")
    return True


def _beside(tokens: list[Token], at: int, step: int) -> int | None:
    """The length next to `at` in one direction, past the words that only lead to it."""
    while 0 <= at < len(tokens) and tokens[at].kind in _ALONG:
        at += step
    if not 0 <= at < len(tokens):
        return None
    token = tokens[at]
    return at if token.kind == "LENGTH" or (token.kind == "NUMBER" and "." in token.text) else None


def _whole_beside(tokens: list[Token], at: int, count: float, step: int = 1) -> int | None:
    """'twenty crests make 15': a whole number next to them, where it is as long as so many pitches may be."""
    while 0 <= at < len(tokens) and tokens[at].kind in _ALONG:
        at += step
    if not 0 <= at < len(tokens) or tokens[at].kind != "NUMBER" or count < _LEAST:
        return None
    return at if _PITCHES[0] <= tokens[at].numbers[0] / count <= _PITCHES[1] else None
