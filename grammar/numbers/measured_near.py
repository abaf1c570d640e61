"""What stands right beside a number and tells what it measures, or that another word did so already."""

from __future__ import annotations

from grammar.numbers.measured_lengths import WIDTHS
from grammar.words.token_kinds import SIZES
from grammar.words.tokens import Token


def is_measured_behind(tokens: list[Token], at: int) -> bool:
    """'threaded, 17.5 from flange to image': the words behind the number tell what it is, and have no other."""
    rest = [token for token in tokens[at + 1 : at + 5] if token.kind not in ("CUE", "DET", "PREP")]
    if not rest or rest[0].kind != "MEASURE" or rest[0].value in WIDTHS:
        return False
    return not any(token.kind in SIZES for token in rest[1:2])


def is_led_as_other(tokens: list[Token], at: int) -> bool:
    """'flange to image 28.8 mm 26 tpi': a word right before the number tells that it is no width."""
    led = tokens[at - 1] if at else None
    return led is not None and led.kind == "MEASURE" and led.value not in WIDTHS


def is_keyed_before(tokens: list[Token], at: int) -> bool:
    """'screw thread 37 mm across, 0.75': what it measures was told right before it, by another clue."""
    return at > 0 and tokens[at - 1].kind == "KEYED" and tokens[at - 1].value == tokens[at].value


def is_keyed_behind(tokens: list[Token], at: int) -> bool:
    """'a 28 mm whose flange is 46.3 not 46.0': what it measures was told behind it, by another clue."""
    return any(one.kind == "KEYED" and one.value == tokens[at].value for one in tokens[at + 1 : at + 4])


def is_its_length(tokens: list[Token], at: int) -> bool:
    """'a ring of 0.5, too thick?': what a ring is 'of' is its length, and not by how much it is off."""
    return at > 1 and tokens[at - 1].value == "of" and tokens[at - 2].kind == "PIECE"
