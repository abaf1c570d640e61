"""What stands in brackets behind a mount and tells which of its name is meant: 'R (the slr one)', 'R (47 mm slr)'."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

_OPEN, _CLOSE = "(", ")"
_LONGEST: Final = 6  # tokens between the brackets
_CAMERAS: Final = frozenset(["slr", "dslr", "rangefinder", "mirrorless", "half-frame"])
_LINKS: Final = frozenset(["to", "-", ">"])
_LENSES: Final = frozenset(["LENS", "KIND"])
_OF_ITS_OWN: Final = frozenset(["MOUNT", "LETTER", "FORMAT", "LENGTH", "NUMBER", "LENS"])  # what would tell more
_WORDS: Final = frozenset(["CUE", "FILLER", "UNKNOWN"])
_DESCRIBES: Final = frozenset(["FORMAT", "MOUNT", "LETTER", "KIND", "AREA"])
_HEADS: Final = frozenset(["LENS", "BODY", "FRAME"])
_BESIDE: Final = frozenset(["DET", "NUMBER", "LENGTH", "FILLER", "VERB", "UNKNOWN", "PREP"])


def with_brackets_told(tokens: list[Token]) -> list[Token]:
    """The camera in such brackets as a TRAIT of the mount, with nothing else of them; no body, nor a lens's length."""
    tokens = _without_origins(_out_of_rings(_framed(_without_asides(tokens))))
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


def _without_asides(tokens: list[Token]) -> list[Token]:
    """'an APS-C ("crop") lens', 'MFT (small) body': a word in brackets before what is described names nothing."""
    for at in range(1, len(tokens) - 3):
        opened, word, closed, head = tokens[at : at + 4]
        within = (opened.text, closed.text) == (_OPEN, _CLOSE) and word.kind in _WORDS and not word.numbers
        if within and tokens[at - 1].kind in _DESCRIBES and head.kind in _HEADS:
            return _without_asides([*tokens[:at], *tokens[at + 3 :]])
    return tokens


def _framed(tokens: list[Token]) -> list[Token]:
    """'C camera (1 inch)', 'cs cam (1/3")': the size of its sensor, and no focal length."""
    out: list[Token] = []
    for at, token in enumerate(tokens):
        within = [one.text for one in (*tokens[max(0, at - 1) : at], *tokens[at + 1 : at + 2])] == [_OPEN, _CLOSE]
        sized = token.unit == "in" and "format" in token.implies
        behind = at > 1 and tokens[at - 2].kind == "BODY"
        out.append(token.as_("FORMAT") if within and sized and behind else token)
    return out


def _without_origins(tokens: list[Token]) -> list[Token]:
    """'CS zoom (old dome camera) to E': a camera of no mount in brackets behind a lens is where that came from."""
    for at, token in enumerate(tokens[:-1]):
        if token.kind not in _LENSES or tokens[at + 1].text != _OPEN:
            continue
        end = next((n for n in range(at + 2, min(at + 3 + _LONGEST, len(tokens))) if tokens[n].text == _CLOSE), None)
        within = tokens[at + 2 : end] if end is not None else []
        camera = any(one.kind == "BODY" and not one.ids for one in within)
        goes_on = end is not None and any(one.kind in ("MOUNT", "LETTER") for one in tokens[end:])
        if end is not None and goes_on and camera and not any(one.kind in _OF_ITS_OWN for one in within):
            return [*tokens[: at + 1], *_without_origins(tokens[end + 1 :])]
    return tokens


def _out_of_rings(tokens: list[Token]) -> list[Token]:
    """'an R (the 47 register one) to M ring' is an R to M ring; a length with its measure is told behind all else."""
    out: list[Token] = []
    told: list[Token] = []
    at = 0
    while at < len(tokens):
        token = tokens[at]
        out.append(token)
        end = _closes(tokens, at) if token.kind == "MOUNT" else None
        if end is not None and (_ends_name(tokens, at, end) or _leads_to_mount(tokens, end + 1)):
            within = tokens[at + 1 : end]
            if any(one.kind == "MEASURE" for one in within) and any(map(_is_figure, within)):
                told += [one for one in within if one.kind == "MEASURE" or _is_figure(one)]
            at = end
        at += 1
    return [*out, Token("STOP", ".", tokens[-1].column, "."), *told] if told else out


def _closes(tokens: list[Token], at: int) -> int | None:
    """Where brackets close that open right behind a mount, or within its name as that was found: 'F (46.5', ')'."""
    opened = at + 1 if at + 1 < len(tokens) and tokens[at + 1].text == _OPEN else None
    if opened is None and tokens[at].text.count(_OPEN) <= tokens[at].text.count(_CLOSE):
        return None
    first = at + 1 if opened is None else opened
    row = tokens[first : first + _LONGEST + 2]
    return next((first + n for n, one in enumerate(row) if one.text == _CLOSE), None)


def _is_figure(token: Token) -> bool:
    return token.kind in ("LENGTH", "NUMBER") and not token.text.isalpha()


def _ends_name(tokens: list[Token], at: int, end: int) -> bool:
    """Whether what stands before the end of brackets only goes on with a name that opened them: 'R (47 register)'."""
    row = tokens[at + 1 : end]
    opened = tokens[at].text.count(_OPEN) > tokens[at].text.count(_CLOSE)
    return opened and all(one.kind in ("NUMBER", "MEASURE", "FILLER", "MOUNTWORD") for one in row)


def _leads_to_mount(tokens: list[Token], at: int) -> bool:
    """Whether a ring goes on from here: 'to M ring', '-M adapter'."""
    row = tokens[at : at + 3]
    return len(row) == 3 and row[0].text in _LINKS and row[1].kind in ("MOUNT", "LETTER") and row[2].kind == "PIECE"


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
