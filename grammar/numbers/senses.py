"""Which sense a number without a measuring word beside it has, by the sizes that things are made in and by its row.

A caliper's readings of one thing stand in a row and hardly differ; a helicoid is told by its two ends; glass of a
few millimetres is a plate and no lens; a thread thinner than any lens mount's is told by its length.
"""

from __future__ import annotations

import re
from itertools import takewhile
from typing import Final

from grammar.numbers.drawn_ends import drawn, each_drawn, mounted, ranged_apart
from grammar.numbers.rings_to_choose import CHOICE
from grammar.numbers.rows_of_tubes import with_counted_tubes
from grammar.numbers.stops_beside import SHARE
from grammar.numbers.two_sides import LEAST_RING, READING, TWO_APART, with_two_sides
from grammar.words.groups import ENDLESS, PLATE, PLATES
from grammar.words.tokens import Token

_LIT: Final = frozenset(["LIGHT", "ISO", "SHUTTER", "FPS"])  # tokens of an exposure
_DIMMEST: Final = 2.8  # f-number that glass is called by
_NOT: Final = "not"  # '25.60 not 25.46' tells the one and what it should be
_LEAST_READINGS: Final = 3
_SPREAD: Final = 0.02  # of the readings of one thing, as a share of them, and in mm:
_WIDEST: Final = 0.6
_NUMBERS: Final = frozenset(["NUMBER", "LENGTH", "FOCAL", "KEYED"])
_BETWEEN: Final = frozenset(["JOIN", "CUE", "MARK"])
_LEAST_PLATE: Final = 0.25  # mm; what is thinner is foil
_THICKEST_GLASS: Final = 8.0  # mm; a lens of a shorter focal length is told with a stop or a mount
_BEHIND_LENS: Final = frozenset(["behind", "between"])  # where such a plate is put
_AFTER: Final = "after"  # '26.05 after lapping' tells when, and not where
_BEING: Final = frozenset(["be"])
_ISO: Final = "iso"  # value of the word that a speed follows
_FILTER: Final = "filter"
_SHORTEST_FOCAL: Final = 3.5
_NARROWEST_THREAD: Final = 9.0  # mm; what is less is a length
_FOCALS: Final = (12.0, 2000.0)  # mm, of what is left over
_LEAST_BEHIND: Final = 20.0  # mm: no plain ring is so long
_OF_LENSES: Final = frozenset(["infinity", "focus", "cant-focus", "blurry", "past-infinity", "mirror-box"])
_THAT: Final = "that"
_DOING: Final = frozenset(["does", "nearest"])  # values of the words for what a lens does or shows, or how near it goes
_AT_MARK: Final = frozenset([("PREP", "at"), ("MEASURE", "size")])  # before a mark: 'at 4 m', 'reads 4 m'
_T_STOP: Final = re.compile(r"[tT] ?/?(\d+(?:\.\d+)?)")
_LINKS: Final = frozenset(["VERB", "DET", "CUE", "FILLER", "JOIN", "PREP", "MARK"])  # between two that are compared
_SEATING: Final = frozenset(["on", "in", "with", "from", "via"])  # before what a lens is mounted by


def with_senses_told(tokens: list[Token], hosts: frozenset[str] = frozenset()) -> list[Token]:
    """Readings of one thing, ends of a helicoid and plates of glass, before numbers are taken one by one.

    `hosts`: mounts that, named alone, are those of a body.
    """
    read = mounted(_readings(with_two_sides(_transmissions(list(tokens)))), hosts)
    return _behind(_subjects(_plates(ranged_apart(drawn(each_drawn(with_counted_tubes(read)))))))


def _transmissions(tokens: list[Token]) -> list[Token]:
    """'is T2 the same as f/2': a mount whose name is a T-stop is that stop where an f-stop is set against it.

    So it is beside what passes the glass, where no f-stop is told: 'T2 with 88 % transmission'.
    """
    passes = any(one.kind == "MEASURE" and one.value == SHARE for one in tokens)
    passes = passes and not any(one.kind == "FNUM" for one in tokens)
    for at, token in enumerate(tokens):
        told = _T_STOP.fullmatch(token.text) if token.kind == "MOUNT" else None
        before = tokens[at - 1] if at else None
        seated = before is not None and before.kind == "PREP" and before.value in _SEATING
        if told is None or seated:
            continue  # 'a 500 f/8 mirror on T2'
        if passes:
            tokens[at] = token.as_("TSTOP", numbers=(float(told[1]),))
        for step in (1, -1):
            rest = tokens[at + step :: step] if at + step >= 0 else []
            between = list(takewhile(lambda one: one.kind in _LINKS, rest))
            facing = rest[len(between)] if len(between) < len(rest) else None
            if facing is not None and facing.kind == "FNUM" and any(one.kind in ("CUE", "JOIN") for one in between):
                tokens[at] = token.as_("TSTOP", numbers=(float(told[1]),))
    return tokens


def _subjects(tokens: list[Token]) -> list[Token]:
    """'28 mm says infinity at 3 m', 'now 35 ends at 7 m': a whole length that does something is that of a lens."""
    for at, token in enumerate(tokens[:-1]):
        before = [one for one in tokens[:at] if one.kind != "DET"][-1:]
        begins = not before or before[0].kind in ("STOP", "JOIN")
        marked = _is_marked(tokens, at + 1)
        begins = begins or (marked and before[0].kind == "CUE")
        metric = (token.is_mm and begins) or token.kind == "NUMBER"
        whole = metric and token.text[:1].isdigit() and token.numbers[0] == int(token.numbers[0])
        free = not before or (before[0].kind not in ("PIECE", "MEASURE", "PREP", "LIMIT", "AT"))
        free = free and not _is_speed(tokens[:at])
        if _is_beside_ring(token, before, at > 0 and tokens[at - 1].kind == "DET"):
            whole = free = token.numbers[0] == int(token.numbers[0])
        that = tokens[at + 1].text.casefold() == _THAT and at + 2 < len(tokens)  # 'a fifty that never gets beyond 25 m'
        does = tokens[at + 1 + that].value in _DOING or _is_stopped(tokens, at + 1) or marked
        if whole and free and _FOCALS[0] <= token.numbers[0] <= _FOCALS[1] and does:
            tokens[at] = token.as_("FOCAL", unit="mm")
            if marked and tokens[at + 1].kind == "MEASURE":
                tokens[at + 1] = tokens[at + 1].as_("CUE")
                tokens[at + 2] = tokens[at + 2].as_("KEYED", value="mark")
    return tokens


def _is_speed(before: list[Token]) -> bool:
    """'iso is 200 minimum': how fast the film or sensor is, and no lens of that length."""
    told = [one for one in before if one.kind not in ("DET", "FILLER") and one.value not in _BEING]
    return bool(told) and told[-1].value == _ISO


def _is_beside_ring(token: Token, before: list[Token], led: bool) -> bool:
    """'with this adapter 58mm hits infinity at 3 m': no plain ring is so long. `led`: 'with the ring my 58 hits it'."""
    ring = bool(before) and (before[0].kind, before[0].value) == ("PIECE", "adapter")
    metric = token.is_mm or (led and token.kind == "NUMBER")
    return ring and metric and token.numbers[0] >= _LEAST_BEHIND


def _is_stopped(tokens: list[Token], at: int) -> bool:
    """'135 at f/4': what is set to a stop is a lens."""
    return [one.kind for one in tokens[at : at + 2]] == ["PREP", "FNUM"] and tokens[at].value == "at"


def _is_marked(tokens: list[Token], at: int) -> bool:
    """'35 hits infinity at 4 m and 50 mm at 8 m', '90 reads 12 m': what has a mark in metres is a lens."""
    endless = False
    while at + 1 < len(tokens) and tokens[at].kind == "CUE":
        endless = endless or ENDLESS in tokens[at].groups
        at += 1
    far = tokens[at + 1] if at + 1 < len(tokens) else None
    at_mark = (tokens[at].kind, tokens[at].value) in _AT_MARK
    if far is None or not at_mark:
        return False
    return (far.kind == "LENGTH" and far.unit in ("m", "ft")) or (endless and far.kind == "NUMBER")


def _behind(tokens: list[Token]) -> list[Token]:
    """'image 45.5 behind', with nothing told that it is behind: behind the flange, where the image is."""
    for at, token in enumerate(tokens[:-1]):
        bare = token.kind == "NUMBER" or (token.kind == "LENGTH" and token.unit in ("mm", "cm"))
        after = tokens[at + 2] if at + 2 < len(tokens) else None
        ends = after is None or after.kind in ("STOP", "JOIN", "CUE")
        is_behind = (
            tokens[at + 1].kind == "PREP"
            and tokens[at + 1].value == "behind"
            and tokens[at + 1].text.casefold() != _AFTER
        )
        of_piece = [one.kind for one in tokens[max(0, at - 2) : at]] == ["PIECE", "PREP"]  # 'a tube of 12 behind it'
        if bare and is_behind and ends and not token.text.isalpha() and not of_piece:
            put_in = at > 0 and (is_put_in(tokens[at - 1]) or tokens[at - 1].value == "with")  # 'with 10 mm behind it'
            tokens[at] = token.as_("KEYED", value="extension" if put_in else "flange-to-image", unit="mm")
            tokens[at + 1] = tokens[at + 1].as_("CUE")
    return tokens


def is_put_in(before: Token) -> bool:
    """'+5 mm behind it', 'another 3 mm off the sensor': what is added moves the lens out, and is no distance of it."""
    return before.text in ("+", "plus") or before.value in ("another", "further", "added")


def with_rest_told(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """'T ring on E, 36.85, 500 mirror': where no focal length is told, the one whole number left over is it."""
    if not told & _OF_LENSES or any(_is_focal(token) for token in tokens) or not any(
        token.kind in ("MOUNT", "LENS", "KIND") for token in tokens
    ):  # fmt: skip
        return tokens
    left = [at for at, token in enumerate(tokens) if _may_be_focal(tokens, at)]
    bare = [token for token in tokens if token.kind == "NUMBER" and token.text[:1].isdigit()]
    if len(left) == 1 and len(bare) == 1:
        tokens[left[0]] = tokens[left[0]].as_("FOCAL", unit="mm")
    return tokens


def _is_focal(token: Token) -> bool:
    return token.kind in ("FOCAL", "COMBO", "RANGE") or token.is_mm


def _may_be_focal(tokens: list[Token], at: int) -> bool:
    token, before = tokens[at], tokens[at - 1] if at else None
    if token.kind != "NUMBER" or not token.text.isdecimal() or not _FOCALS[0] <= token.numbers[0] <= _FOCALS[1]:
        return False
    same = before is not None and before.kind == "JOIN" and before.value == "and" and tokens[at - 2].kind == "KEYED"
    return before is None or (not same and before.kind not in ("PREP", "LIMIT", "MEASURE", "AT"))


def _readings(tokens: list[Token]) -> list[Token]:
    """'28.47 28.49 28.50 28.46': three or more, a hair apart, are readings of one thing."""
    at = 0
    while at < len(tokens):
        row = _row(tokens, at)
        values = [tokens[place].numbers[0] for place in row]
        beside = [tokens[place] for place in (row[0] - 1, row[-1] + 1) if 0 <= place < len(tokens)] if row else []
        stock = any(one.value == "layer" for one in beside)  # sheets of several thicknesses
        enough = len(row) >= _LEAST_READINGS or _are_two_sides(tokens, row)
        if enough and not stock and _is_one_thing(values, [tokens[place].text for place in row]):
            for place in row:
                tokens[place] = tokens[place].as_("KEYED", value=READING, unit="mm")
        at = row[-1] + 1 if row else at + 1
    return tokens


def _are_two_sides(tokens: list[Token], row: list[int]) -> bool:
    """'18.00 left, 18.06 right': two, told to the hundredth and a hair apart, are the two sides of one thing."""
    if len(row) != 2:
        return False
    fine = all(len(tokens[place].text.partition(".")[2]) == 2 for place in row)
    between = [one for one in tokens[row[0] + 1 : row[1]] if one.kind == "JOIN" or one.value == _NOT]
    joined = {one.value for one in between} <= {",", "and"}
    one, other = (tokens[place].numbers[0] for place in row)
    return fine and joined and one >= LEAST_RING and 0 < abs(one - other) <= TWO_APART


def _row(tokens: list[Token], at: int) -> list[int]:
    """The places of the numbers that follow each other from `at` on with no more than a join between."""
    row: list[int] = []
    gap = 0
    while at < len(tokens):
        token = tokens[at]
        if token.kind in _NUMBERS and len(token.numbers) == 1 and not token.text.isalpha() and token.value != CHOICE:
            row.append(at)
            gap = 0
        elif not row or gap or token.kind not in _BETWEEN:
            break
        else:
            gap = 1
        at += 1
    return row


def _is_one_thing(values: list[float], texts: list[str]) -> bool:
    apart = max(values) - min(values)
    written = sum("." in text for text in texts)
    return written >= min(_LEAST_READINGS, len(texts)) and 0 <= apart <= min(_WIDEST, max(0.1, _SPREAD * max(values)))


def _plates(tokens: list[Token]) -> list[Token]:
    """'2 mm glass', '2.5mm of glass': too short for a focal length, so the glass is a plate and that its thickness."""
    tokens = _thick_plates(tokens)
    for at, token in enumerate(tokens):
        if token.kind == "PIECE" and token.value == _FILTER and at and _is_plate(tokens[at - 1]):
            tokens[at - 1] = tokens[at - 1].as_("KEYED", value="glass", unit="mm")  # 'a 2 mm filter' has no such thread
            continue
        if token.kind != "LENS" or token.text.casefold() != "glass":
            continue
        back = at - 1
        while back >= 0 and (_leads_to_glass(tokens[back]) or _names_plate(tokens[back])):
            back -= 1
        before = tokens[back] if back >= 0 else None
        if before is None or before.kind not in ("LENGTH", "NUMBER") or before.unit not in ("mm", ""):
            continue
        after = tokens[at + 1] if at + 1 < len(tokens) else None
        if back == at - 1 and _is_opening(before, tokens):
            tokens[back] = before.as_("FNUM")
            continue
        plate = back < at - 1 or (after is not None and (after.value in _BEHIND_LENS or _names_plate(after)))
        if before.numbers[0] <= (_THICKEST_GLASS if plate else _SHORTEST_FOCAL):
            tokens[back] = before.as_("KEYED", value="glass", unit="mm")
            for place in range(back + 1, min(at + 2, len(tokens))):
                if place == at or _names_plate(tokens[place]):
                    tokens[place] = tokens[place].as_("CUE")
    return tokens


def _is_opening(number: Token, tokens: list[Token]) -> bool:
    """'outside w/ 1.2 glass from a projector, ISO 800': beside what a shot is lit by, so bright a lens."""
    bare = number.kind == "NUMBER" and "." in number.text and number.numbers[0] <= _DIMMEST
    return bare and any(one.kind in _LIT for one in tokens)


def _leads_to_glass(token: Token) -> bool:
    return token.kind in ("PREP", "DET") and token.value in ("of", "the", "")


def _names_plate(token: Token) -> bool:
    """'a 5 mm plate of glass', 'a glass plate': that glass is a plate, and no ring or lens."""
    return token.kind == "PIECE" and PLATES in token.groups


def _thick_plates(tokens: list[Token]) -> list[Token]:
    """'plane glass 1.5mm thick behind a 50', 'a 2mm thick ND behind the lens': so thick a piece of glass is a plate."""
    for at, token in enumerate(tokens[:-1]):
        thick = tokens[at + 1].kind == "MEASURE" and tokens[at + 1].value == "thickness"
        if not (thick and _is_plate(token) and token.numbers[0] > _LEAST_PLATE):
            continue
        led = [one for one in tokens[max(0, at - 2) : at] if one.text != ","]
        beside = [*led[-1:], *tokens[at + 2 : at + 3]]
        if any(PLATE in one.groups or one.value == _FILTER for one in beside):
            tokens[at] = token.as_("KEYED", value="glass", unit="mm")
            tokens[at + 1] = tokens[at + 1].as_("CUE")
    return tokens


def _is_plate(token: Token) -> bool:
    metric = token.is_mm
    return metric and 0 < token.numbers[0] <= _THICKEST_GLASS


def is_thread_length(token: Token) -> bool:
    """Whether a length told of a thread is how long it is: no lens screws in by one so thin."""
    return token.kind in ("LENGTH", "NUMBER") and token.numbers[0] < _NARROWEST_THREAD and "tpi" not in token.text
