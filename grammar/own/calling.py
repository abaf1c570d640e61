"""A new thing of one's own with its name, in whatever order: 'got a 50mm f/2 M42 lens, calling it heron'."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from grammar.own.describing_own import Described, described
from grammar.own.stating import Mark, marks_of
from grammar.words.lexicon import Lexicon
from grammar.words.tokens import tokens_of

_NAME: Final = re.compile(r"[A-Za-z][A-Za-z0-9]*(?:-[A-Za-z0-9]+)*")
_SET_APART: Final = re.compile(r"\s*(?P<by>'?s\b|is\b|[=:,-])\s*")
_ENDS: Final = " \t,.;:!-"
# what the words beside a name and a description may do, all of them small
_LEADS: Final = frozenset(["own", "mine", "article", "dull", "new", "named", "call", "it", "is", "the"])
_NAMING: Final = frozenset(["named", "call"])
_TELLS: Final = frozenset(["own", "mine", "new", "named", "call"])  # of these one must be there, or a sign
_KINDS: Final = {"kind-lenses": "lens", "kind-bodies": "body", "kind-adapters": "ring"}
_SIGNS: Final = frozenset(["=", ":"])
_AS: Final = "as"


def called_so(line: str, lexicon: Lexicon) -> tuple[str, Described] | None:
    """The name and the thing that a line gives it to; None where it says anything else besides.

    The name is the one word of the line that nothing knows.
    """
    marks = marks_of(line, lexicon)
    if not any(mark.does in _TELLS for mark in marks) and not _SIGNS & set(line):
        return None
    strange = [token for token in tokens_of(line, lexicon).tokens if token.kind == "UNKNOWN"]
    name = strange[0].text.removesuffix("'s") if len(strange) == 1 else ""
    if not _NAME.fullmatch(name):
        return None
    start = strange[0].column - 1
    before, after = line[:start], line[start + len(name) :]
    what = _told_behind(before, after, lexicon) or _told_before(before, after, lexicon)
    if what is None or not {"mount", "like", "front"} & {key for key, _ in what.fields}:
        return None
    if what.section == "lenses" and "focal_length" not in dict(what.fields):
        return None
    return name, what


def _told_behind(before: str, after: str, lexicon: Lexicon) -> Described | None:
    """'my heron: 50/2 M42', 'heron = ...', 'heron is my 50 mm M42', 'a lens called heron, 50/2 M42'."""
    apart = _SET_APART.match(after)
    led = marks_of(before, lexicon)
    if apart is None or not _are_small(led):
        return None
    rest = after[apart.end() :]
    lead = _leading(rest, lexicon)
    told = [mark.does for mark in (*led, *lead)]
    if apart["by"] not in _SIGNS and not _TELLS & set(told):
        return None
    kind = next((_KINDS[mark.does] for mark in led if mark.does in _KINDS), "")
    return _as_kind(rest[lead[-1].end :] if lead else rest, kind, lexicon)


def _told_before(before: str, after: str, lexicon: Lexicon) -> Described | None:
    """'my 50 mm M42 is called heron', 'call my 50 mm M42 heron', 'save a 50 mm M42 as heron'."""
    if after.strip(_ENDS):
        return None
    marks, lead = marks_of(before, lexicon), _leading(before, lexicon)
    if not marks:
        return None
    does = {mark.does for mark in lead}
    last, end = marks[-1], len(before)
    is_named = last.does in _NAMING and last not in lead
    said_so = (last.does == "is" and "mine" in does) or (last.text.casefold() == _AS and "new" in does)
    if is_named or said_so:
        end = last.start
    elif not does & {"call", "new"}:
        return None
    if is_named and len(marks) > 1 and marks[-2].does == "is" and marks[-2] not in lead:
        end = marks[-2].start
    begin = lead[-1].end if lead else 0
    return _as_kind(before[begin:end], "", lexicon)


def _as_kind(text: str, kind: str, lexicon: Lexicon) -> Described | None:
    """What is described; a kind of thing that was told ahead of it heads it where it has no head of its own."""
    text = text.strip(_ENDS)
    if not text:
        return None
    headed = (f"{text} {kind}", f"{kind} {text}") if kind else ()
    return next((what for one in (*headed, text) if (what := described(one, lexicon)) is not None), None)


def _leading(text: str, lexicon: Lexicon) -> list[Mark]:
    """The small words that a text begins with."""
    out: list[Mark] = []
    for mark in marks_of(text, lexicon):
        if mark.does not in _LEADS and mark.does not in _KINDS:
            break
        if text[out[-1].end if out else 0 : mark.start].strip(_ENDS):
            break
        out.append(mark)
    while out and out[-1].does in _KINDS and len(out) == 1:
        out.pop()  # 'lens 50 mm M42': that is its head
    return out


def _are_small(marks: Sequence[Mark]) -> bool:
    return all(mark.does in _LEADS or mark.does in _KINDS for mark in marks)
