"""What stands in brackets behind a mount and tells which of its name is meant: 'R (the slr one)', 'R (47 mm slr)'."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

_OPEN, _CLOSE = "(", ")"
_LONGEST: Final = 6  # tokens between the brackets
_CAMERAS: Final = frozenset(["slr", "dslr", "rangefinder", "mirrorless", "half-frame"])
_BESIDE: Final = frozenset(["DET", "NUMBER", "LENGTH", "FILLER", "VERB", "UNKNOWN", "PREP"])


def with_brackets_told(tokens: list[Token]) -> list[Token]:
    """The camera in such brackets as a TRAIT of the mount, with nothing else of them; no body, nor a lens's length."""
    out: list[Token] = []
    at = 0
    while at < len(tokens):
        out.append(tokens[at])
        end = _end(tokens, at + 1) if tokens[at].kind == "MOUNT" else None
        if end is not None:
            camera = next(one for one in tokens[at + 2 : end] if _is_camera(one))
            out.append(camera.as_("TRAIT", value=camera.value or camera.text.casefold(), implies=()))
            at = end
        at += 1
    return out


def _end(tokens: list[Token], start: int) -> int | None:
    """Where brackets that open at `start` close, if they tell of a camera and of little else."""
    if start >= len(tokens) or tokens[start].text != _OPEN:
        return None
    within = tokens[start + 1 : start + 2 + _LONGEST]
    end = next((n for n, one in enumerate(within) if one.text == _CLOSE), None)
    if end is None:
        return None
    told = within[:end]
    others = [one for one in told if not _is_camera(one) and one.kind not in _BESIDE]
    return start + 1 + end if any(_is_camera(one) for one in told) and not others else None


def _is_camera(token: Token) -> bool:
    return token.kind in ("BODY", "KIND") and (token.value in _CAMERAS or token.text.casefold() in _CAMERAS)
