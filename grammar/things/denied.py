"""What is said not to be: 'not a zoom', 'no EF, only Z', 'forget the reducer'."""

from __future__ import annotations

from typing import Final

from grammar.words.groups import DENYING, LEAVES_AWAY, RATHER, STANDS_IN
from grammar.words.tokens import Token

_MOST_BETWEEN: Final = 5  # words between the word that denies and what is denied
_ELSE: Final = "denied:"  # how what a kind of lens implies begins: the kind it is where it is said not to be that one
_STANDING: Final = frozenset(["one", "1", "some", "real", "true", "kind", "sort", "type"])


def with_denied_told(tokens: list[Token]) -> list[Token]:
    """'not rangefinder', 'not a zoom', 'not the 38 one': what a lens is said not to be is no word for it."""
    out: list[Token] = []
    numbered_before = False
    for at, token in enumerate(tokens):
        behind = [one for one in out[-2:] if one.kind not in ("DET", "MARK")]
        word = behind[-1].text.casefold() if behind else ""
        denied = word == "not" or (word == "how" and token.text.casefold() == "wide") or _is_said_not(out)
        stands_in = at + 1 < len(tokens) and STANDS_IN in tokens[at + 1].groups
        numbered = word == "not" and token.kind in ("NUMBER", "LENGTH") and stands_in
        stood_for = numbered_before and STANDS_IN in token.groups
        numbered_before = numbered
        if numbered:
            out = [one.as_("FILLER") if one in behind else one for one in out]
        if token.kind == "MOUNT" and _is_bracketed_off(tokens, at):
            token = token.as_("FILLER", ids=())
        if LEAVES_AWAY in token.groups and not out and [one.kind for one in tokens[at + 1 : at + 2]] == ["PIECE"]:
            token = token.as_("PREP", value="without")  # 'forget the reducer'
        if token.text.casefold() == "no" and _is_put_off(tokens, at):
            token = token.as_("VERB", value="not")
        # 'flat, not a cup', 'my ring isnt a cup'
        no = word == "not" or _is_said_not(out)
        other = no and token.kind == "PIECE" and any(one.kind == "PIECE" for one in out)
        drop = (denied and token.kind in ("KIND", "TRAIT")) or numbered or stood_for or other
        out.append((_opposite(token, tokens) or token.as_("FILLER")) if drop else token)
    return out


def _opposite(token: Token, tokens: list[Token]) -> Token | None:
    """The kind that a lens is by not being of this one, where no other kind is told: of two screws as wide, the other.

    'M39, not rangefinder' is that of a reflex.
    """
    other = next((one.removeprefix(_ELSE) for one in token.implies if one.startswith(_ELSE)), "")
    told = any(one is not token and (one.kind == "KIND" or one.value == other) for one in tokens)
    return token.as_("KIND", value=other, implies=()) if other and not told else None


def _is_said_not(before: list[Token]) -> bool:
    """'it is not of the rangefinder kind', 'isn't a rangefinder one', 'was never a zoom'; 'Isn't a zoom ...' asks."""
    place = len(before) - 1
    while place >= 0 and len(before) - place <= _MOST_BETWEEN and _is_small(before[place]):
        place -= 1
    if place < 0 or DENYING not in before[place].groups:
        return False
    ahead = before[place - 1] if place else None
    return before[place].text.casefold() == "not" or (ahead is not None and ahead.kind != "STOP")


def _is_small(token: Token) -> bool:
    """An article, 'of', 'one of those'; what denies is none."""
    small = token.kind in ("DET", "LETTER", "MARK") or token.value == "of" or token.text.casefold() in _STANDING
    return small and DENYING not in token.groups


def _is_bracketed_off(tokens: list[Token], at: int) -> bool:
    """'M39 SLR (not RF)': in brackets, what the mount named before them is not."""
    row = [one.text.casefold() for one in (*tokens[max(0, at - 2) : at], *tokens[at + 1 : at + 2])]
    return row == ["(", "not", ")"] and at > 2 and tokens[at - 3].kind in ("MOUNT", "MOUNTWORD", "BODY", "LENS")


def _is_put_off(tokens: list[Token], at: int) -> bool:
    """'no EF, only Z': a mount that is put off for another."""
    ahead = tokens[at + 1 :]
    others = any(RATHER in one.groups for one in ahead[1:])
    return bool(ahead) and ahead[0].kind in ("MOUNT", "LETTER") and others
