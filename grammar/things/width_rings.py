"""'the lipped 39-42 ring, then M42 to E': a ring told by the widths of two screws, one of which a mount named has."""

from __future__ import annotations

from typing import Final

from engine.base.compact import compact
from grammar.words.tokens import Token

_PIECES: Final = frozenset(["adapter", "thread-reducer", "step-ring"])
_PAIRS: Final = frozenset(["RANGE", "FRACTION", "LENGTH"])
_LINKS: Final = frozenset(["to", "-", "/", ">"])
_LEADING: Final = frozenset(["to", "on", "for"])
_SPAN: Final = 3  # tokens: two widths, and what links them
_SCREWED, _SCREW = "screwed", "screw"
_DOING: Final = frozenset(["VERB", "CUE", "PREP", "JOIN", "STOP"])  # what such a word follows: 'i', 'can you', 'to'
_NUMBERED: Final = frozenset(["NUMBER", "LENGTH", "COMBO", "FOCAL", "RANGE"])
_INTO: Final = frozenset(["into", "on", "onto", "to", "in"])


@compact
class _Pair:
    """Two widths told in a row: where they begin and end, and the second of them, mm."""

    start: int
    end: int
    wide: float


def with_width_rings(tokens: list[Token], hosts: frozenset[str] = frozenset()) -> list[Token]:
    """Such a ring as one between the mount of the lens and the one whose screw is so wide.

    `hosts`: mounts that, named alone, are those of a body, whose throat is no screw.
    """
    out = _with_screwing(tokens)
    for at, token in enumerate(out):
        if token.kind != "PIECE" or token.value not in _PIECES:
            continue
        pair = _widths_before(out, at) or (_widths_behind(out, at) if not _is_joined(out, at) else None)
        rear = _as_wide(out, pair.wide) if pair is not None else None
        front = _of_lens(out, rear, hosts) if rear is not None else None
        if pair is None or rear is None or front is None:
            row = out[pair.start : pair.end] if pair is not None else []
            if pair is not None and [one.kind for one in row] == ["NUMBER", "PREP", "NUMBER"] and row[0].numbers:
                ends = (row[0].numbers[0], pair.wide)  # '39 to 42', of a lens that was told before
                spanned = row[0].as_("RANGE", text=f"{ends[0]:g}-{ends[1]:g}", numbers=ends)
                return [*out[: pair.start], spanned, *out[pair.end :]]
            continue
        place = out[min(pair.start, at)].column
        ring = [
            front.as_("MOUNT", text=front.text.split()[0], column=place),
            Token("MARK", "-", place, "-"),
            rear.as_("MOUNT", text=rear.text.split()[0], column=place),
        ]
        return [*out[: min(pair.start, at)], *ring, out[at], *out[max(pair.end, at + 1) :]]
    return out


def _as_wide(tokens: list[Token], wide: float) -> Token | None:
    """The mount whose name is that of a screw so wide: 'M42', and 'M42 body'."""
    return next((one for one in tokens if one.kind == "MOUNT" and one.text.casefold().split()[0] == f"m{wide:g}"), None)


def _of_lens(tokens: list[Token], rear: Token, hosts: frozenset[str]) -> Token | None:
    """The first other mount that nothing leads to: that of the lens."""
    for at, token in enumerate(tokens):
        led = at > 0 and (tokens[at - 1].value in _LEADING or tokens[at - 1].text in _LINKS)
        if token.kind == "MOUNT" and token.ids != rear.ids and not led and not hosts & {*token.ids[:1]}:
            return token
    return None


def _widths_before(tokens: list[Token], at: int) -> _Pair | None:
    """The two widths right before a piece: '39-42', '39/42', '39 to 42', 'm39-42'."""
    if at and tokens[at - 1].kind in _PAIRS and len(tokens[at - 1].numbers) > 1:
        return _Pair(at - 1, at, tokens[at - 1].numbers[1])
    return _pair_at(tokens, at - _SPAN) if at >= _SPAN else None


def _is_joined(tokens: list[Token], at: int) -> bool:
    """'m42/mft adapter, m39/42': a ring told by both its mounts already."""
    row = tokens[max(0, at - _SPAN) : at]
    return [one.kind for one in row[::2]] == ["MOUNT", "MOUNT"] and (row[1].text in _LINKS or row[1].value in _LINKS)


def _widths_behind(tokens: list[Token], at: int) -> _Pair | None:
    """And right behind it: 'a bush 39 to 42', 'the ring, 39-42'."""
    first = at + 1
    while first < len(tokens) and (tokens[first].kind == "MARK" or tokens[first].text in (",", "from")):
        first += 1
    heads_next = first + 1 < len(tokens) and tokens[first + 1].kind == "PIECE"  # 'm42-mft ring, 39-42 bush'
    if first < len(tokens) and tokens[first].kind == "RANGE" and not tokens[first].unit and not heads_next:
        return _Pair(first, first + 1, tokens[first].numbers[1])
    return _pair_at(tokens, first)


def _pair_at(tokens: list[Token], first: int) -> _Pair | None:
    row = tokens[first : first + _SPAN]
    if len(row) < _SPAN or row[-1].kind != "NUMBER":
        return None
    linked = row[1].value in _LINKS or row[1].text in _LINKS
    sized = row[0].kind == "NUMBER" or (row[0].kind == "MOUNT" and row[0].text[1:].isdigit())
    return _Pair(first, first + _SPAN, row[-1].numbers[0]) if linked and sized else None


def _with_screwing(tokens: list[Token]) -> list[Token]:
    """'ltm 50 screwed into the ring', 'if i screw a 35 on': what is done with a lens, and no word for a screw."""
    return [
        token.as_("VERB")
        if token.kind == "MOUNTWORD" and (_goes_in(tokens, at) or _is_done(tokens, at))
        else token
        for at, token in enumerate(tokens)
    ]  # fmt: skip


def _is_done(tokens: list[Token], at: int) -> bool:
    """'i screw a 35 backwards onto ...', 'to screw my 28 mm on': a lens by its number is what someone screws."""
    if not at or tokens[at].text.casefold() != _SCREW or tokens[at - 1].kind not in _DOING:
        return False
    led = [one.kind for one in tokens[at + 1 : at + 3]]
    return len(led) > 1 and led[0] in ("DET", "LETTER") and led[1] in _NUMBERED


def _goes_in(tokens: list[Token], at: int) -> bool:
    if tokens[at].text.casefold() != _SCREWED:
        return False
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    return after is not None and after.kind == "PREP" and after.text.casefold() in _INTO
