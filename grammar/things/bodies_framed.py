"""A body told by its frame, with its mount behind a comma: 'my camera is full frame, Z' is one body."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

_IS: Final = "be"
_WITH, _FROM = "with", "from"
_ROW: Final = 6  # tokens of such a pair, without articles
_ENDS: Final = frozenset(["JOIN", "STOP", "CUE", "PREP"])


def with_bodies_framed(tokens: list[Token], hosts: frozenset[str]) -> list[Token]:
    """The tokens without the comma between such a frame and the mount, and without what leads to the frame.

    `hosts`: mounts that, named alone, are those of a body.
    """
    tokens = _with_lens_behind_body(tokens)
    for at, token in enumerate(tokens):
        if token.kind != "BODY":
            continue
        after = tokens[at + 1 : at + 3]
        bracketed = at and tokens[at - 1].kind == "FORMAT" and _is_host(after[:1], hosts)
        if bracketed and (len(after) == 1 or after[1].kind in _ENDS):  # 'a full frame camera (E-mount)'
            return [*tokens[: at - 1], token, tokens[at - 1], *tokens[at + 1 :]]
        led = at + 1 < len(tokens) and tokens[at + 1].kind == "CUE" and tokens[at + 1].value in (_IS, ":")
        row = tokens[at + 1 + led : at + 4 + led]
        if [one.kind for one in row] != ["FORMAT", "JOIN", "MOUNT"] or row[1].text != ",":
            continue
        if _is_host(row[2:], hosts):
            return [*tokens[: at + 1], row[0], row[2], *tokens[at + 4 + led :]]
    return tokens


def _with_lens_behind_body(tokens: list[Token]) -> list[Token]:
    """'X mount aps-c + 24 mm from the auto 110 slr': the mount with its frame is the body, what comes off another the
    lens: as if it were 'auto 110 24 mm lens on X mount aps-c body'.
    """
    for at in range(len(tokens) - _ROW + 1):
        row = [n for n in range(at, len(tokens)) if tokens[n].kind != "DET"][:_ROW]
        if len(row) < _ROW:
            break
        body, frame, joined, size, led, lens = (tokens[n] for n in row)
        framed = (body.kind, frame.kind) == ("MOUNT", "FORMAT") and (joined.kind == "JOIN" or joined.value == _WITH)
        off = size.kind in ("LENGTH", "FOCAL", "COMBO") and (led.kind, led.value) == ("PREP", _FROM)
        if not (framed and off and lens.kind == "MOUNT"):
            continue
        rest = row[-1] + 1
        while rest < len(tokens) and tokens[rest].kind in ("BODY", "MOUNTWORD"):
            rest += 1
        head = Token("LENS", "lens", lens.column, listed=lens.listed)
        host = Token("BODY", "body", frame.column, listed=frame.listed)
        on = led.as_("PREP", text="on", value="on")
        return [*tokens[:at], lens, size, head, on, body, frame, host, *tokens[rest:]]
    return tokens


def _is_host(tokens: list[Token], hosts: frozenset[str]) -> bool:
    return bool(tokens) and tokens[0].kind == "MOUNT" and tokens[0].ids[:1] != () and tokens[0].ids[0] in hosts
