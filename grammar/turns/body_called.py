"""A body by the word that it was told of with: 'and on the board camera?', 'does it cover on the silver one'."""

from __future__ import annotations

from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard, hear
from grammar.questions import Question, Thing
from grammar.words.lexicon import Lexicon
from grammar.words.tokens import Token, tokens_of

_STRANGE, _SMALL, _BODY = "UNKNOWN", "FILLER", "BODY"
_OF_ELSE: Final = frozenset(["LENS", "LENGTH", "FNUM", "COMBO", "KIND", "PIECE", "STOP"])  # what a word before is of
_NEAR: Final = 4  # tokens beside the body, among which the word is that it is called by
_LEAST: Final = 3  # letters of a word that is a name


def with_called(before: Question, lexicon: Lexicon) -> Question:
    """The question with the words that its bodies were called by, besides those of the questions before it."""
    body = before.bodies[0] if len(before.bodies) == 1 else None
    if body is None or not body.ids or not body.words or not _stands_in(body, before.text):
        return before
    frames = before.frames
    kept = replace(body, format=frames[0].id) if body.format is None and len(frames) == 1 else body
    names = _names_beside(tokens_of(before.text, lexicon).tokens, body.column)
    rest = tuple(row for row in before.called if row[0] not in names)
    return before.with_(called=(*rest, *((name, kept) for name in names)))


def with_body_called(heard: Heard, before: Question, lexicon: Lexicon) -> Heard:
    """The line with the mount of the body that is called so; the same where no such word is said."""
    if not before.called or any(part.has_mount for part in heard.cast.bodies):
        return heard
    tokens = heard.line.tokens
    found = next((at for at in range(len(tokens)) if _is_called(tokens, at, before)), None)
    if found is None:
        return heard
    body = dict(before.called)[tokens[found].text.casefold()]
    headed = found + 1 < len(tokens) and tokens[found + 1].kind == _BODY
    here = bool(before.bodies) and before.bodies[0].ids == body.ids
    if here and tokens[found].kind == _SMALL:
        return heard
    first, last = tokens[found].column - 1, tokens[found + headed].column - 1 + len(tokens[found + headed].text)
    name = "camera" if here else f"{lexicon.name_for(body.kind, body.id or '')} body"
    said = f"{heard.text[:first]}{name}{heard.text[last:]}"
    again = hear(said, lexicon, before.intent)
    return replace(again, line=replace(again.line, text=heard.text))


def with_its_frame(got: Question, before: Question) -> Question:
    """The question with the format that the body called so was told with."""
    body = got.bodies[0] if len(got.bodies) == 1 else None
    if body is None or body.format is not None or not before.called:
        return got
    words = set(got.text.casefold().replace("?", " ").replace(",", " ").split())
    called = next((thing for name, thing in before.called if name in words and thing.ids == body.ids), None)
    if called is None or called.format is None or got.frames:
        return got
    return got.with_(bodies=(replace(body, format=called.format),))


def _stands_in(body: Thing, text: str) -> bool:
    """Whether the body is told in that very text."""
    return text[body.column - 1 : body.column - 1 + len(body.words)] == body.words


def _names_beside(tokens: tuple[Token, ...], column: int) -> tuple[str, ...]:
    """Words that stand before the body, or behind it where nothing knows them: 'my camera is a SOANDSO'."""
    at = next((n for n, token in enumerate(tokens) if token.column >= column), len(tokens))
    names: list[str] = []
    beside = True  # nothing stands between it and the body but other such words
    for token in reversed(tokens[max(0, at - _NEAR) : at]):
        if token.kind in _OF_ELSE:
            break
        beside = beside and token.kind in (_STRANGE, _SMALL)
        if token.kind == _STRANGE or beside:
            names.append(token.text.casefold())
    for token in tokens[at + 1 : at + 1 + _NEAR]:
        if token.kind in _OF_ELSE:
            break
        if token.kind == _STRANGE:
            names.append(token.text.casefold())
    return tuple(name for name in names if name.isalpha() and len(name) >= _LEAST)


def _is_called(tokens: tuple[Token, ...], at: int, before: Question) -> bool:
    """Whether it is a word that a body was called by: one that nothing knows, or a small one right before a body."""
    token = tokens[at]
    if token.text.casefold() not in dict(before.called):
        return False
    led = at > 0 and tokens[at - 1].kind == "DET"
    headed = at + 1 < len(tokens) and tokens[at + 1].kind == _BODY
    return token.kind == _STRANGE or (token.kind == _SMALL and led and headed)
