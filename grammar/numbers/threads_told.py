"""Numbers that tell of a thread without saying so: 'ten come to 7.5', 'mic says 20.2, 36 to the inch', '42ish'."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

_WIDTHS: Final = (10.0, 130.0)  # mm, that a thread may be wide
_PITCHES: Final = (0.3, 2.0)  # mm
_COUNTS: Final = (5.0, 10.0, 20.0)  # crests that are counted along a rule
_SCREWS: Final = frozenset(["thread", "threads", "threaded", "screw", "screw thread", "screw mount", "screwmount"])
_WIDE: Final = "wide"
_ROUGHLY: Final = "ish"  # so is told what was held against a rule; no focal length is
_BETWEEN: Final = frozenset(["CUE", "DET", "PREP", "MOUNTWORD", "MEASURE"])
_OWN: Final = frozenset(["LENS", "KIND", "PIECE", "MOUNT", "BODY", "FNUM", "TRAIT"])
_REACH: Final = 5  # tokens


def with_threads_told(tokens: list[Token]) -> list[Token]:
    """A total of so many crests becomes a PITCH, and the bare number beside a pitch the width of the thread."""
    out = list(tokens)
    for at, token in enumerate(out):
        counted = _counted(out, at)
        if counted is not None:
            pitch = token.numbers[0] / out[counted].numbers[0]
            out[at] = token.as_("PITCH", value=f"{pitch:.6g} mm", numbers=(pitch,), unit="mm")
            out[counted] = out[counted].as_("CUE")
    told = any(token.kind == "THREAD" or (token.kind == "KEYED" and token.value == "diameter") for token in out)
    wide = None if told else _width(out)
    if wide is not None:
        out[wide] = out[wide].as_("KEYED", value="diameter", unit="mm")
        if wide + 1 < len(out) and out[wide + 1].text.casefold() == _WIDE:
            out[wide + 1] = out[wide + 1].as_("CUE")
    return out


def _counted(tokens: list[Token], at: int) -> int | None:
    """Where the count of crests stands that the total at `at` is of: 'ten of them make 7.9'."""
    token = tokens[at]
    if token.kind != "KEYED" or token.value != "total" or any(one.kind == "PIECE" for one in tokens):
        return None
    for back in range(at - 1, max(-1, at - 1 - _REACH), -1):
        before = tokens[back]
        if before.kind == "NUMBER":
            count = before.numbers[0]
            fits = count in _COUNTS and _PITCHES[0] <= token.numbers[0] / count <= _PITCHES[1]
            return back if fits else None
        if before.kind not in _BETWEEN:
            return None
    return None


def _width(tokens: list[Token]) -> int | None:
    """The first bare number that is as wide as threads are, where a pitch is told or it is roughly that of a screw."""
    pitch = any(token.kind == "PITCH" for token in tokens)
    screw = any(token.kind in ("MOUNTWORD", "HEADMOD") and token.text.casefold() in _SCREWS for token in tokens)
    for at, token in enumerate(tokens):
        if token.kind != "NUMBER" or token.text.isalpha() or not _WIDTHS[0] <= token.numbers[0] <= _WIDTHS[1]:
            continue
        roughly = screw and token.text.casefold().endswith(_ROUGHLY)
        after = tokens[at + 1] if at + 1 < len(tokens) else Token("STOP", "", 0)
        if (pitch or roughly) and (after.kind not in _OWN or after.text.casefold() == _WIDE):
            return at
    return None
