"""Heads that stand apart from what they head: 'two bodies (L and MFT)', 'bodies are L and Z', 'EF now, Z later'."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token, is_plural

_HEADS: Final = frozenset(["BODY", "LENS"])
_WITHIN: Final = frozenset(["MOUNT", "DET", "JOIN", "FILLER"])  # what such a list is made of
_LEADS: Final = frozenset(["FILLER", "DET"])
_SO_FAR: Final = frozenset(["FILLER", "DET", "CUE", "VERB", "WHEN"])  # what may stand before the colon
_ASIDE: Final = 5  # tokens
_COUNTS: Final = frozenset(["NUMBER", "COUNT"])
_WHEN: Final = "WHEN"
_FRAMED: Final = frozenset(["MOUNT", "FORMAT", "AREA"])
_OPEN, _CLOSE = "(", ")"
_GLASS: Final = "glass"
_PLURAL: Final = {"LENS": "es", "BODY": "s"}


def with_group_heads(tokens: list[Token]) -> list[Token]:
    """Each mount of a list that a word for several lenses or bodies opens gets that word behind it."""
    tokens, out = _without_mount_words(tokens), list[Token]()
    at = 0
    while at < len(tokens):
        end = _list_end(tokens, at)
        if end is None and _is_before_counted(tokens, at):
            out += [tokens[at + 1], tokens[at]]
            at += 2
            continue
        if end is None:
            out.append(tokens[at])
            at += 1
            continue
        while out and out[-1].kind in ("NUMBER", "DET"):
            out.pop()  # the count of what is listed one by one
        for one in tokens[at + 1 : end]:
            if one.kind == "MOUNT":
                out += [one, tokens[at].as_(tokens[at].kind, text=_single(tokens[at]), column=one.column)]
            elif one.kind in _COUNTS:
                out.append(one)
            elif _joins(one):
                out.append(one.as_("JOIN", value="and"))
        at = end
    return out


def _without_mount_words(tokens: list[Token]) -> list[Token]:
    """'four lens mounts (M42, FD)', 'camera mounts: E, Z' are lenses and cameras, each of a mount in that list."""
    out: list[Token] = []
    for at, token in enumerate(tokens):
        head, after = out[-1] if out else None, tokens[at + 1] if at + 1 < len(tokens) else None
        of_list = token.kind == "MOUNTWORD" and is_plural(token) and after is not None and after.text in (_OPEN, ":")
        if head is not None and head.kind in _HEADS and of_list:
            out[-1] = head.as_(head.kind, text=head.text if is_plural(head) else f"{_single(head)}{_PLURAL[head.kind]}")
        else:
            out.append(token)
    return out


def _is_before_counted(tokens: list[Token], at: int) -> bool:
    """'body E and seven OM lenses': its mount stands behind it, before others that are counted."""
    kinds = [one.kind for one in tokens[at : at + 4]]
    alone = at == 0 or tokens[at - 1].kind not in ("MOUNT", "FORMAT")
    return alone and kinds[:3] == ["BODY", "MOUNT", "JOIN"] and kinds[3:] in (["COUNT"], ["NUMBER"])


def _list_end(tokens: list[Token], at: int) -> int | None:
    """Where the list ends that the word at `at` opens; None where it opens none."""
    head = tokens[at]
    if head.kind not in _HEADS or not _is_of_several(tokens, at) or (at and tokens[at - 1].kind == "MOUNT"):
        return None
    start = at + 1
    while start < len(tokens) and tokens[start].kind in _LEADS:
        start += 1
    colon = next((n for n in range(start, min(start + _ASIDE, len(tokens))) if tokens[n].text == ":"), None)
    if colon is not None and all(one.kind in _SO_FAR for one in tokens[start:colon]):
        start = colon  # 'lenses so far: K, C/Y'
    if start >= len(tokens) or not (_opens(tokens[start]) or tokens[start].kind == "MOUNT"):
        return None
    aside = tokens[start].text == _OPEN
    end = start if tokens[start].kind == "MOUNT" else start + 1
    while end < len(tokens) and (tokens[end].kind in _WITHIN or _joins(tokens[end]) or _is_count(tokens, end)):
        end += 1
    mounts = sum(one.kind == "MOUNT" for one in tokens[start:end])
    if mounts < 2:
        return None
    after = tokens[end] if end < len(tokens) else None
    if aside:
        return end + 1 if after is not None and after.text == _CLOSE else None
    if after is None or after.kind == "STOP" or after.text == "-":
        return end
    return _end_before_others(tokens, start, end)


def _is_of_several(tokens: list[Token], at: int) -> bool:
    """'lenses', and 'kinds of glass (M42 MD F)': where a list in brackets follows."""
    opened = at + 1 < len(tokens) and tokens[at + 1].text == _OPEN
    return is_plural(tokens[at]) or (opened and tokens[at].text.casefold() == _GLASS)


def _end_before_others(tokens: list[Token], start: int, end: int) -> int | None:
    """'2 bodies E and Z, 1 FD lens': behind the last comma something else is told."""
    commas = [n for n in range(start, end) if tokens[n].kind == "JOIN" and tokens[n].value == ","]
    told = sum(one.kind == "MOUNT" for one in tokens[start : commas[-1]]) if commas else 0
    return commas[-1] if told > 1 else None


def _opens(token: Token) -> bool:
    """'(', ':', 'are'."""
    return token.text in (_OPEN, ":", "-") or (token.kind == "VERB" and token.value == "be")


def _is_count(tokens: list[Token], at: int) -> bool:
    """'one K, two C/Y': how many of a mount, in words."""
    counted = at + 1 < len(tokens) and tokens[at + 1].kind == "MOUNT"
    return counted and tokens[at].kind in _COUNTS and tokens[at].text.isalpha()


def _joins(token: Token) -> bool:
    """'and', and what is mostly 'with': 'and a'."""
    return token.kind == "JOIN" or (token.kind == "PREP" and token.text.casefold().startswith("and"))


def with_times_told(tokens: list[Token]) -> list[Token]:
    """'EF now, 44x33 later': what one has at one time and at another are bodies; else such words say nothing."""
    told = any(token.kind == _WHEN and token.value == "later" for token in tokens)
    out: list[Token] = []
    for token in tokens:
        if token.kind == _WHEN:
            if told and out and out[-1].kind in _FRAMED:
                out.append(token.as_("BODY", text="body", value=""))
            token = token.as_("FILLER", value="")
        out.append(token)
    return out


def _single(head: Token) -> str:
    if head.text.casefold() == _GLASS:
        return "lens"
    return head.text[:-1] if head.text.casefold() != "bodies" else "body"
