"""Names that nobody has told of: runs of unknown words where a name stands, with the numbers of a model in them."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from grammar.words.groups import SINGLE
from grammar.words.tokens import Token
from grammar.words.written import STOPS

_PLACES: Final = frozenset(["on", "to"])
_OPENING: Final = frozenset(["on", "to", "with", "for", "from"])
_MARKS_NO_END: Final = frozenset(["FILLER", "MARK"])
_ENDS: Final = frozenset(["STOP", "LIMIT", "JOIN"])
_OWNED: Final = frozenset(["LENS", "BODY", "MOUNTWORD"])
_IN: Final = "in"
_METRIC: Final = re.compile(r"m\d{2,3}(?:\.\d)?")
_DIAMETER: Final = "diameter"
_THREAD: Final = "thread"
_OF: Final = "of"
_WORDED: Final = (2, 12)  # of a model told in a word
_AFTER_MODEL: Final = frozenset(["NUMBER", "FOCAL", "PREP", "STOP", "JOIN"])
_LEAST_FOCAL: Final = 12  # mm, of a bare number behind a name
_MODELS: Final = 10_000  # a bare number below this may be that of a model


def with_strangers(tokens: list[Token]) -> tuple[list[Token], list[Token]]:
    """The tokens with each unknown name as one STRANGE token, and the unknown words that are passed over."""
    tokens = _with_tenths(tokens)
    out: list[Token] = []
    skipped: list[Token] = []
    at = 0
    while at < len(tokens):
        if tokens[at].kind != "UNKNOWN" or is_thread_width(tokens, at):
            out.append(_width(tokens[at]) if tokens[at].kind == "UNKNOWN" else tokens[at])
            at += 1
            continue
        end = _run(tokens, at)
        if _is_name(tokens, at, end):
            out.append(_one(tokens[at:end]))
        else:
            end = _words(tokens, at)
            if [one.kind for one in out[-2:]] == ["FILLER", "PREP"] and out[-1].value == _IN:
                out[-1] = out[-1].as_("FILLER")  # 'made in' a place that is no name here
            for one in tokens[at:end]:
                if one.kind == "UNKNOWN" and is_model(one):
                    out.append(one.as_("STRANGE"))
                elif one.kind == "UNKNOWN" or _is_dashed(one) or one.text.isalpha():
                    skipped.append(one)
                else:
                    out.append(one)
        at = end
    return out, skipped


def _with_tenths(tokens: list[Token]) -> list[Token]:
    """'M30.5 thread': a width to the tenth as one word."""
    for at in range(len(tokens) - 1):
        one, rest = tokens[at : at + 2]
        tenths = rest.kind == "NUMBER" and not rest.gap and rest.text.startswith(".")
        text = f"{one.text}{rest.text}"
        if one.kind == "UNKNOWN" and tenths and _METRIC.fullmatch(text.casefold()):
            return [*tokens[:at], one.as_("UNKNOWN", text=text), *_with_tenths(tokens[at + 2 :])]
    return tokens


def is_thread_width(tokens: Sequence[Token], at: int) -> bool:
    """'m58 thread': a metric thread that is no mount's is told by its width all the same."""
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    named = after is not None and after.kind == "MOUNTWORD" and after.text.casefold().startswith(_THREAD)
    return named and _METRIC.fullmatch(tokens[at].text.casefold()) is not None


def _width(token: Token) -> Token:
    return token.as_("KEYED", value=_DIAMETER, numbers=(float(token.text[1:]),), unit="mm")


def _words(tokens: list[Token], at: int) -> int:
    """The token after the unknown words from `at` on, and after what is dashed to the last of them: 'kestrel 44-2'."""
    end = at
    while end < len(tokens) and (tokens[end].kind == "UNKNOWN" or (end > at and _is_of_model(tokens, end))):
        end += 1
    return end


def _is_of_model(tokens: list[Token], at: int) -> bool:
    """What belongs to the unknown word before it: 'kestrel 44-2', 'kestrel six 80'; never a count: 'six lenses'."""
    token = tokens[at]
    if _is_dashed(token):
        return True
    if token.kind != "NUMBER" or not token.text.isalpha() or not _WORDED[0] <= token.numbers[0] <= _WORDED[1]:
        return False
    after = next((one for one in tokens[at + 1 :] if one.kind not in _MARKS_NO_END), None)
    return after is None or after.kind in _AFTER_MODEL or SINGLE in after.groups


def _run(tokens: list[Token], at: int) -> int:
    """The same with the bare numbers that follow an unknown word, where the whole is opened as a name is."""
    end = _words(tokens, at)
    opened = _before(tokens, at, ("FILLER", "MARK"))
    named = opened is not None and (opened.kind == "DET" or (opened.kind == "PREP" and opened.value in _OPENING))
    while named and end < len(tokens) and (_is_number(tokens[end]) or tokens[end].kind == "UNKNOWN"):
        if _is_focal(tokens, end):
            break
        end += 1
    return end


def _is_focal(tokens: list[Token], at: int) -> bool:
    """'a curlew 58 f/2', 'a curlew 135 M42': the number is the lens's own and no model's."""
    kinds = [one.kind for one in tokens[at + 1 : at + 4] if one.kind not in _MARKS_NO_END]
    if tokens[at].kind != "NUMBER" or tokens[at].numbers[0] < _LEAST_FOCAL:
        return False
    stopped = tokens[at + 1 : at + 2] and tokens[at + 1].kind == "NUMBER" and tokens[at + 1].numbers[0] in STOPS
    return kinds[:1] in (["FNUM"], ["RATIO"]) or bool(stopped) or (kinds[:1] == ["MOUNT"] and "BODY" not in kinds)


def _is_number(token: Token) -> bool:
    return token.kind == "NUMBER" and token.text.isdecimal() and token.gap and token.numbers[0] < _MODELS


def _is_dashed(token: Token) -> bool:
    """'44-2': what falls is no range, and behind an unknown word no pair of threads."""
    return token.kind == "RANGE" and not token.unit and token.numbers[0] > token.numbers[1]


def is_model(token: Token) -> bool:
    """'k30', 'pl2': letters, then digits."""
    return token.text[0].isalpha() and any(char.isdigit() for char in token.text)


def _ends_a_model(token: Token) -> bool:
    """'5d' and '7' of 'kestrel 5d' and 'kestrel alfa 7'."""
    return _is_number(token) or (token.kind == "UNKNOWN" and token.text[0].isdigit())


def _is_name(tokens: list[Token], at: int, end: int) -> bool:
    """Whether the run stands where a name does: on something, before a head, or as letters and digits."""
    if any(map(is_model, tokens[at:end])) or any(map(_ends_a_model, tokens[at + 1 : end])):
        return True
    before = _before(tokens, at, ("FILLER", "DET", "MARK"))
    after = next((one for one in tokens[end:] if one.kind not in _MARKS_NO_END), None)
    if after is not None and after.kind in _OWNED:
        return not any(one.text.casefold() == _OF for one in tokens[end : end + 1])  # 'a crate of 2/3 inch lenses'
    placed = before is not None and before.kind == "PREP" and before.value in _PLACES
    return placed and (after is None or after.kind in _ENDS)


def _before(tokens: list[Token], at: int, passed: tuple[str, ...]) -> Token | None:
    return next((one for one in reversed(tokens[:at]) if one.kind not in passed), None)


def _one(run: list[Token]) -> Token:
    """The run as one token: its words as typed, a gap between them."""
    text = " ".join(one.text for one in run)
    return run[0].as_("STRANGE", text=text)
