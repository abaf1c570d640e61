"""What only stands beside a question: the times a lens is of, a colon that parts where it goes from what is asked."""

from __future__ import annotations

from typing import Final

from grammar.questions import RING
from grammar.things.casting import OPTICAL, SPACER
from grammar.words.groups import AWAY, LEFT_OUT, MATERIAL, PURPOSE, TAKEN_AWAY, USED_WITH, WAS_TAKEN
from grammar.words.tokens import Token

_ENDS_LENS: Final = frozenset(["LENS", "LENGTH", "NUMBER", "FNUM", "COMBO", "FOCAL"])  # before a colon
_FIELD: Final = ("MEASURE", "field")
_SIZED: Final = frozenset(["FORMAT", "AREA", "LENGTH", "FRACTION", "MOUNT"])  # before the word for a frame or a body

_DRAWN: Final = frozenset(["helicoid", "bellows"])  # pieces that a thin ring is made for
_WITHOUT: Final = "without"
_FOR: Final = "for"
_MADE_FOR: Final = "made-for"
# what may be told of a ring before it
_OF_RING: Final = frozenset(["DET", "LENGTH", "NUMBER", "MOUNT", "LETTER", "LINK", "TO", "PAIR", "MARK", "TRAIT"])
_PLATES: Final = frozenset(["flange-to-image"])  # 'the 1 mm M42-E flange'


def without_asides(tokens: list[Token]) -> list[Token]:
    """'C-mount, 16 mm film camera era': the camera tells of what times the lens is, not what it is put on.

    Nor does 'only' of 'an APS-C-only lens' stand between the two.
    """
    out = []
    tokens = _with_ring_taken_off(_with_glass_left_out(tokens))
    for at, token in enumerate(tokens):
        before = tokens[at - 1].text if at else ""
        after = tokens[at + 1].text.casefold() if at + 1 < len(tokens) else ""
        if token.text == ":" and _ends_frame(tokens[:at]):
            token = token.as_("CUE")  # 'better on MFT: the 25 mm or the 28 mm', 'a 1/2.3 inch sensor: 13 mm D mount'
        elif token.text == ":" and at and tokens[at - 1].kind in _ENDS_LENS and _headed_by_piece(tokens, at + 1):
            token = token.as_("CUE")  # '90mm lens: tube length'
        aside = (
            token.text.casefold() == "era" and at > 0 and tokens[at - 1].kind == "FORMAT" and after not in ("", "lens")
        )
        aside = (
            aside or (token.kind == "BODY" and after == "era") or (token.text.casefold() == "only" and before == "-")
        )
        aside = aside or _is_material(tokens, at)
        out.append(token.as_("FILLER") if aside or _is_what_for(tokens, at) else token)
    return out


def _with_ring_taken_off(tokens: list[Token]) -> list[Token]:
    """'took off a 5mm ring', 'removed the spacer', 'took the 5 mm ring out': what is no longer there is left out."""
    out = list(tokens)
    for at, token in enumerate(tokens):
        gone = tokens[at + 1] if at + 1 < len(tokens) else token
        if _is_ring(token) and WAS_TAKEN in gone.listed.of(gone.text.partition(" ")[0]) and _ends(tokens, at + 2):
            before = Token("PREP", "", token.column, value=_WITHOUT)  # '5mm ring taken off, 8mm C lens on CS'
            return [*tokens[:at], before, token, gone.as_("FILLER", value=""), *tokens[at + 2 :]]
        if WAS_TAKEN not in token.groups:
            continue
        row, ahead = [at], at + 1
        if ahead < len(tokens) and _is_away(tokens[ahead]):
            row.append(ahead)
            ahead += 1
        while ahead < len(tokens) and tokens[ahead].kind in _OF_RING:
            ahead += 1
        if ahead == len(tokens) or not _is_ring(tokens[ahead]):
            continue
        if ahead + 1 < len(tokens) and AWAY in tokens[ahead + 1].groups:
            row.append(ahead + 1)
        if len(row) > 1 or TAKEN_AWAY in token.groups:
            for place in row[1:]:
                out[place] = tokens[place].as_("FILLER")
            out[at] = token.as_("PREP", value=_WITHOUT)
    return out


def _is_material(tokens: list[Token], at: int) -> bool:
    """'a 0.4 cardboard ring': between how thick a ring is and the ring it only says of what."""
    sized = at > 0 and tokens[at - 1].kind in ("NUMBER", "LENGTH") and at + 1 < len(tokens)
    return sized and tokens[at].kind == "CUE" and MATERIAL in tokens[at].groups and tokens[at + 1].kind == "PIECE"


def _ends(tokens: list[Token], at: int) -> bool:
    return at >= len(tokens) or tokens[at].kind in ("JOIN", "STOP")


def _is_away(token: Token) -> bool:
    return AWAY in token.groups or (token.kind == "PREP" and token.text.casefold().startswith("off"))


def _is_ring(token: Token) -> bool:
    piece = token.kind == "PIECE" and token.value in (RING, SPACER)
    return piece or token.kind == "ADAPTER" or (token.kind == "NAMED" and token.unit == RING)


def _with_glass_left_out(tokens: list[Token]) -> list[Token]:
    """'b4 lens, no doubler', 'with the extender off': glass that is said not to be there is left out."""
    out: list[Token] = []
    for at, token in enumerate(tokens):
        before = [one for one in out[-2:] if one.kind != "DET"][-1:]
        after = tokens[at + 1] if at + 1 < len(tokens) else None
        glass = token.kind == "PIECE" and token.value in OPTICAL
        if token.text.casefold() == "no" and after is not None and after.kind == "PIECE" and after.value in OPTICAL:
            told = any(one.kind == "VERB" for one in out[-2:])  # 'there is no reducer for it'
            out.append(token if told else token.as_("PREP", value=_WITHOUT))
        elif glass and after is not None and LEFT_OUT in after.groups and not _goes_on(tokens[at + 2 : at + 3]):
            if before and before[0].kind == "PREP":
                out[out.index(before[0])] = before[0].as_("PREP", value=_WITHOUT)
            elif not before or before[0].value != _WITHOUT:
                out.append(Token("PREP", "", token.column, value=_WITHOUT))
            out.append(token)
        else:
            out.append(token)
    return out


def _goes_on(rest: list[Token]) -> bool:
    """Whether what follows is told with the word before it: 'out of', 'off a zoom'."""
    return (bool(rest) and rest[0].kind in ("DET", "LETTER")) or [one.text for one in rest] == ["of"]


def _is_what_for(tokens: list[Token], at: int) -> bool:
    """'the flat 1 mm ring (the one for helicoids)': what a ring is made for is not there with it."""
    if tokens[at].kind != "PIECE" or tokens[at].value not in _DRAWN:
        return False
    before = at - 1
    while before >= 0 and (tokens[before].kind == "DET" or USED_WITH in tokens[before].groups):
        before -= 1
    led = before > 0 and (tokens[before].value == _MADE_FOR or _says_what_for(tokens[before - 1 : before + 1]))
    return led and any(one.kind == "PIECE" or one.value in _PLATES for one in tokens[:before])


def _says_what_for(words: list[Token]) -> bool:
    return words[1].value == _FOR and PURPOSE in words[0].groups


def _ends_frame(tokens: list[Token]) -> bool:
    """Whether these end on a mount or a frame; in 'sensor: 2/3' what the sensor is only follows."""
    last = [one.kind for one in tokens[-2:]]
    if last[:1] == ["FORMAT"] and last[1:] in (["NUMBER"], ["TIMES"]):
        return True  # 'crop sensor 1.6: a C-mount lens'
    inches = tokens[-1].kind == "LENGTH" and tokens[-1].unit == "in" and bool(tokens[-1].ids) if tokens else False
    return inches or last[-1:] in (["MOUNT"], ["FORMAT"]) or (last[1:] in (["FRAME"], ["BODY"]) and last[0] in _SIZED)


def _headed_by_piece(tokens: list[Token], at: int) -> bool:
    """'90mm lens: tube length', '25 mm: field width at 3 m'."""
    return at < len(tokens) and (tokens[at].kind == "PIECE" or (tokens[at].kind, tokens[at].value) == _FIELD)
