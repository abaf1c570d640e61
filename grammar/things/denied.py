"""What is said not to be: 'not a zoom', 'no EF, only Z', 'forget the reducer'."""

from __future__ import annotations

from grammar.words.groups import LEAVES_AWAY, RATHER, STANDS_IN
from grammar.words.tokens import Token


def with_denied_told(tokens: list[Token]) -> list[Token]:
    """'not rangefinder', 'not a zoom', 'not the 38 one': what a lens is said not to be is no word for it."""
    out: list[Token] = []
    numbered_before = False
    for at, token in enumerate(tokens):
        behind = [one for one in out[-2:] if one.kind not in ("DET", "MARK")]
        word = behind[-1].text.casefold() if behind else ""
        denied = word == "not" or (word == "how" and token.text.casefold() == "wide")
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
        other = word == "not" and token.kind == "PIECE" and any(one.kind == "PIECE" for one in out)  # 'flat, not a cup'
        drop = (denied and token.kind in ("KIND", "TRAIT")) or numbered or stood_for or other
        out.append(token.as_("FILLER") if drop else token)
    return out


def _is_bracketed_off(tokens: list[Token], at: int) -> bool:
    """'M39 SLR (not RF)': in brackets, what the mount named before them is not."""
    row = [one.text.casefold() for one in (*tokens[max(0, at - 2) : at], *tokens[at + 1 : at + 2])]
    return row == ["(", "not", ")"] and at > 2 and tokens[at - 3].kind in ("MOUNT", "MOUNTWORD", "BODY", "LENS")


def _is_put_off(tokens: list[Token], at: int) -> bool:
    """'no EF, only Z': a mount that is put off for another."""
    ahead = tokens[at + 1 :]
    others = any(RATHER in one.groups for one in ahead[1:])
    return bool(ahead) and ahead[0].kind in ("MOUNT", "LETTER") and others
