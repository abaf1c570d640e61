"""How far pieces that stretch are drawn out, and which setting of a helicoid has infinity, before other readings."""

from __future__ import annotations

from typing import Final

from grammar.words.groups import BEYOND_INFINITY, DRAWN_OUT, PULLS, SET_SO
from grammar.words.tokens import Token

INFINITY_SETTING: Final = "infinity-setting"
_HELICOID: Final = "helicoid"
_BELLOWS: Final = "bellows"
_DRAW: Final = (20.0, 600.0)  # mm
_PASSED: Final = frozenset(["CUE", "PREP", "DET", "AT", "MEASURE"])
_OF_THE_LENS: Final = "flange-to-image"  # value of words behind it: 'at 43 mm from its shoulder'
_WANTED: Final = "wanted"  # value of 'needs', 'wants'
_PAST: Final = (3.0, 400.0)  # mm beyond infinity
_LONGEST: Final = 120.0  # mm, of what a helicoid may be wanted to stand at
_FAR: Final = frozenset(["infinity", "infinity-at", "past-infinity"])
_FURTHER: Final = frozenset(["another", "further"])  # values of words before what is added
_WORDS: Final = 4
_OUT: Final = "out"
_SIZE: Final = "size"  # value of words for what was measured
_OF_LENS: Final = frozenset(["LENS", "KIND", "FNUM", "MOUNT"])
_LEAST: Final = 1.0  # mm, that something is pulled out by hand; less is an error, or the turns for one are asked
_TURNS: Final = "turns-q"


def with_draws_told(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """The tokens with the draw of a bellows as KEYED extension, and the setting that has infinity as KEYED."""
    out = list(tokens)
    for at, token in enumerate(out):
        if token.kind == "PIECE" and token.value == _BELLOWS:
            _tell_draw(out, at)
    out = _with_set_within(_with_drawn_further(_with_drawn_past(out)))
    return _with_infinity_set(out) if told & _FAR else out


def _with_set_within(tokens: list[Token]) -> list[Token]:
    """'17-31 helicoid at 25', 'a 40-140 bellows set to 90': how long it stands, of its two ends."""
    for at in range(len(tokens) - 3):
        ends, piece, led, size = tokens[at : at + 4]
        drawn = ends.kind == "RANGE" and len(ends.numbers) == 2 and piece.value in (_HELICOID, _BELLOWS)
        led_so = led.kind in ("PREP", "AT", "CUE") and (led.value == "at" or SET_SO in led.groups)
        after = tokens[at + 4].kind if at + 4 < len(tokens) else "STOP"
        told = drawn and led_so and _is_length(size) and after not in _OF_LENS
        if told and ends.numbers[0] <= size.numbers[0] <= ends.numbers[1]:
            stands = ends.as_("LENGTH", numbers=size.numbers, unit="mm")
            return [*tokens[:at], stands, piece, *_with_set_within(tokens[at + 4 :])]
    return tokens


def _with_drawn_further(tokens: list[Token]) -> list[Token]:
    """'50mm pulled out another 25mm': the length behind is how far, and the one before it the lens."""
    out = list(tokens)
    for at in range(len(tokens) - 2):
        drawn, more, size = tokens[at : at + 3]
        told = (drawn.kind, drawn.value) == ("MEASURE", "extension")
        bellows = told and any((one.kind, one.value) == ("PIECE", "bellows") for one in tokens)
        if bellows and more.value == "be" and _is_length(size) and _DRAW[0] <= size.numbers[0] <= _DRAW[1]:
            out[at], out[at + 2] = drawn.as_("CUE"), size.as_("KEYED", value="extension", unit="mm")  # 'draw is 90'
        pulled = told or DRAWN_OUT in drawn.groups
        if pulled and more.value in _FURTHER and size.is_mm:
            out[at], out[at + 2] = drawn.as_("CUE"), size.as_("KEYED", value="extension", unit="mm")
    return out


def _with_drawn_past(tokens: list[Token]) -> list[Token]:
    """'drawn out 100 mm past infinity': the extension; a lens that is off goes past it by less."""
    out = list(tokens)
    for at, token in enumerate(tokens):
        if BEYOND_INFINITY in token.groups:
            out[at] = token.as_("CUE", value="")
            before = out[at - 1] if at else token
            if before.is_mm and _PAST[0] <= before.numbers[0] <= _PAST[1]:
                out[at - 1] = before.as_("KEYED", value="extension", unit="mm")
    return out


def with_pulled_out(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """'if i pull it out 10 mm', 'slide the lens 10 mm out': how far it then stands out, and no lens."""
    out = list(tokens)
    for at, token in enumerate(tokens if _TURNS not in told else []):
        # 'a ring that turned out 1.0 mm thick' was measured so, and nothing is drawn
        beside = [one for one in (at - 1, at + 1) if 0 <= one < len(tokens) and tokens[one].value != _SIZE]
        beside = [one for one in beside if _OUT in tokens[one].text.split()]
        led = any(PULLS in one.groups for one in tokens[max(0, at - _WORDS) : at])
        if token.is_mm and _LEAST <= token.numbers[0] <= _LONGEST and beside and led:
            out[at] = token.as_("KEYED", value="extension", unit="mm")
            out[beside[0]] = tokens[beside[0]].as_("CUE", value="")
    return out


def _tell_draw(tokens: list[Token], at: int) -> None:
    """'bellows out to 160', 'bellows drawn to 120 mm': how far it is drawn, where a word says that it is."""
    led = False
    for place in range(at + 1, min(at + 1 + _WORDS, len(tokens))):
        token = tokens[place]
        if DRAWN_OUT in token.groups:
            led = True
            tokens[place] = token.as_("CUE") if token.kind == "MEASURE" else token
        elif led and _is_length(token) and _DRAW[0] <= token.numbers[0] <= _DRAW[1]:
            tokens[place] = token.as_("KEYED", value="extension", unit="mm")
            return
        elif token.kind not in _PASSED:
            return


def _with_infinity_set(tokens: list[Token]) -> list[Token]:
    """'infinity at 20.5 of 18-33 on the helicoid': the number within its ends, behind 'at'."""
    named = any((one.kind, one.value) == ("PIECE", _HELICOID) for one in tokens)
    ends = next((one.numbers for one in tokens if one.kind == "RANGE" and len(one.numbers) == 2), None)
    for at in range(1, len(tokens)):
        token, before = tokens[at], tokens[at - 1]
        placed = before.kind in ("PREP", "AT") and before.value == "at"
        of_lens = any(one.value == _OF_THE_LENS for one in tokens[at + 1 : at + 2])  # 'wants 63 mm to the film'
        placed = placed and not of_lens
        wanted = (
            named and not of_lens and before.value == _WANTED and _is_length(token) and token.numbers[0] <= _LONGEST
        )
        if ends is not None and wanted:  # 'my lens needs 15.3': told of what it shall be set to, within its ends or not
            return [*tokens[:at], token.as_("KEYED", value=INFINITY_SETTING, unit="mm"), *tokens[at + 1 :]]
        if ends is not None and placed and _is_length(token) and ends[0] <= token.numbers[0] < ends[1]:
            told = token.as_("KEYED", value=INFINITY_SETTING, unit="mm")
            if named:
                return [*tokens[:at], told, *tokens[at + 1 :]]
            return _with_ends_named(tokens, at, told)
    return tokens


def _with_ends_named(tokens: list[Token], at: int, told: Token) -> list[Token]:
    """'20.5 of 18-33': only what is drawn out stands at a part of its ends."""
    behind = [one for one in tokens[at + 1 : at + 4] if one.kind != "DET"][:2]
    if [one.kind for one in behind] != ["PREP", "RANGE"] or behind[0].value != "of":
        return tokens
    drawn = behind[1].as_("PIECE", text=_HELICOID, value=_HELICOID, numbers=())
    return [*tokens[:at], told, *behind, drawn, *tokens[tokens.index(behind[1]) + 1 :]]


def _is_length(token: Token) -> bool:
    bare = token.kind == "NUMBER" and not token.text.isalpha()
    return bare or token.is_mm
