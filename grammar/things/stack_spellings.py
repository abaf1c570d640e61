"""Short spellings of what stands beside a draw: 'helicoid 15-26 (m42)', 'm39-42 1', 'bush 1'."""

from __future__ import annotations

from typing import Final

from grammar.things.rings_in_rows import leads
from grammar.words.tokens import Token, is_plural

_DRAWN: Final = frozenset(["helicoid", "bellows"])
_RINGS: Final = frozenset(["adapter", "step-ring", "thread-reducer"])
_BUSH: Final = "thread-reducer"
_ENDS: Final = frozenset(["JOIN", "STOP", "CUE", "VERB", "PREP", "MARK", "AT"])
_LINKS: Final = frozenset(["-", "/"])
_THICKEST: Final = 6.0  # mm, of a ring told by a bare number behind its word
_WIDTHS: Final = (24.0, 62.0)  # mm, of the screw of a lens for a stack


def with_stacks_spelled(tokens: list[Token]) -> list[Token]:
    """The tokens as if each were written out, where something with two ends is drawn out between."""
    drawn = any(one.kind == "PIECE" and one.value in _DRAWN for one in tokens)
    if not drawn or not any(one.kind in ("RANGE", "FRACTION") for one in tokens):
        return tokens
    return _with_sizes_behind(_with_widths_joined(_with_mounts_before(tokens)))


def _with_mounts_before(tokens: list[Token]) -> list[Token]:
    """'helicoid 15-26 (m42)': its mount, told in brackets behind it."""
    for at in range(len(tokens) - 4):
        piece, ends, opened, mount, closed = tokens[at : at + 5]
        drawn = piece.kind == "PIECE" and piece.value in _DRAWN and ends.kind == "RANGE"
        if drawn and (opened.text, closed.text) == ("(", ")") and mount.kind == "MOUNT":
            return [*tokens[:at], mount.as_("MOUNT", column=piece.column), piece, ends, *tokens[at + 5 :]]
    return tokens


def _with_widths_joined(tokens: list[Token]) -> list[Token]:
    """'m39-42', 'm39 to 42': two widths, of a bush."""
    for at in range(len(tokens) - 2):
        thread, link, width = tokens[at : at + 3]
        screw = thread.text[1:] if thread.kind == "MOUNT" and thread.text[:1].casefold() == "m" else ""
        linked = leads(link) or link.text in _LINKS
        if not (screw.isdigit() and linked and width.kind in ("NUMBER", "COMBO") and width.text[:1].isdigit()):
            continue
        ends = (float(screw), width.numbers[0])
        if _WIDTHS[0] <= ends[0] < ends[1] <= _WIDTHS[1]:
            text = f"{screw}-{ends[1]:g}"
            spanned = width.as_("RANGE", text=text, numbers=ends, column=thread.column, unit="")
            headed = at + 3 < len(tokens) and tokens[at + 3].kind == "PIECE"
            bush = [] if headed else [Token("PIECE", "bush", width.column, _BUSH)]
            if len(width.numbers) > 1:  # 'm39-42 1.5': no lens of f/1.5
                size = f"{width.numbers[1]:g}"
                bush.append(Token("LENGTH", size, width.column, size, (width.numbers[1],), unit="mm"))
            return [*tokens[:at], spanned, *bush, *_with_widths_joined(tokens[at + 3 :])]
    return tokens


def _with_sizes_behind(tokens: list[Token]) -> list[Token]:
    """'bush 1', 'plate 1.5': so thick it is."""
    out = list(tokens)
    for at in range(len(tokens) - 1):
        ring, size = tokens[at : at + 2]
        named = ring.kind == "PIECE" and ring.value in _RINGS and not is_plural(ring)
        bare = size.kind == "NUMBER" and not size.text.isalpha() and 0 < size.numbers[0] <= _THICKEST
        if named and bare and (at + 2 >= len(tokens) or tokens[at + 2].kind in _ENDS):
            out[at + 1] = size.as_("LENGTH", unit="mm")
    return out
