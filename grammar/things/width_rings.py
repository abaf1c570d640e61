"""'the lipped 39-42 ring, then M42 to E': a ring told by the widths of two screws, one of which a mount named has."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

_PIECES: Final = frozenset(["adapter", "thread-reducer"])
_PAIRS: Final = frozenset(["RANGE", "FRACTION", "LENGTH"])
_LINKS: Final = frozenset(["to", "-", "/", ">"])
_LEADING: Final = frozenset(["to", "on", "for"])
_SPAN: Final = 3  # tokens: two widths, and what links them
_SCREWED: Final = "screwed"
_INTO: Final = frozenset(["into", "on", "onto", "to", "in"])


def with_width_rings(tokens: list[Token]) -> list[Token]:
    """Such a ring as one between the mount of the lens and the one whose screw is so wide."""
    out = _with_screwing(tokens)
    for at, token in enumerate(out):
        if token.kind != "PIECE" or token.value not in _PIECES:
            continue
        start, wide = _widths(out, at)
        if wide is None:
            continue
        rear = next((one for one in out if one.kind == "MOUNT" and one.text.casefold() == f"m{wide:g}"), None)
        front = _of_lens(out, rear) if rear is not None else None
        if rear is None or front is None:
            continue
        place = out[start].column
        ring = [
            front.as_("MOUNT", column=place),
            Token("MARK", "-", place, "-"),
            rear.as_("MOUNT", column=place),
        ]
        return [*out[:start], *ring, *out[at:]]
    return out


def _of_lens(tokens: list[Token], rear: Token) -> Token | None:
    """The first other mount that nothing leads to: that of the lens."""
    for at, token in enumerate(tokens):
        led = at > 0 and (tokens[at - 1].value in _LEADING or tokens[at - 1].text in _LINKS)
        if token.kind == "MOUNT" and token.ids != rear.ids and not led:
            return token
    return None


def _widths(tokens: list[Token], at: int) -> tuple[int, float | None]:
    """Where the two widths before a piece begin, and the second of them: '39-42', '39/42', '39 to 42', 'm39-42'."""
    before = tokens[at - 1] if at else None
    if before is not None and before.kind in _PAIRS and len(before.numbers) > 1:
        return at - 1, before.numbers[1]
    if before is None or before.kind != "NUMBER" or at < _SPAN:
        return at, None
    link, first = tokens[at - 2], tokens[at - 3]
    linked = link.value in _LINKS or link.text in _LINKS
    sized = first.kind == "NUMBER" or (first.kind == "MOUNT" and first.text[1:].isdigit())
    return (at - 3, before.numbers[0]) if linked and sized else (at, None)


def _with_screwing(tokens: list[Token]) -> list[Token]:
    """'ltm 50 screwed into the ring': what is done with a lens, and no word for a screw."""
    return [
        token.as_("VERB")
        if token.kind == "MOUNTWORD" and token.text.casefold() == _SCREWED and _goes_in(tokens, at)
        else token
        for at, token in enumerate(tokens)
    ]  # fmt: skip


def _goes_in(tokens: list[Token], at: int) -> bool:
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    return after is not None and after.kind == "PREP" and after.text.casefold() in _INTO
