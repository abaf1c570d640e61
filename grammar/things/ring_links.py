"""Rings told by their two mounts alone: 'the M to E at 9.8', 'onto my M42>EF (1.46)', 'i already own FD to M'."""

from __future__ import annotations

from typing import Final

from grammar.questions import RING
from grammar.things.bodies_by_mounts import with_bodies_by_mounts
from grammar.things.casting import MADE_REDUCING, OPTICAL
from grammar.things.ends_drawn import with_ends_drawn
from grammar.things.rings_for_listed import with_rings_for_listed
from grammar.things.rings_in_rows import goes_on, is_piece, leads, leads_on, without_slrs
from grammar.things.shut_and_travel import with_shut_and_travel
from grammar.things.standins import STANDIN
from grammar.words.groups import BY_MEANS, GLAZED, OWN
from grammar.words.tokens import Token, is_plural
from grammar.words.written import STOPS

_GLASS: Final = "corrective-glass"
_VIA: Final = "via"  # value of 'through'
_OFF: Final = "thickness"  # value of 'too thick'
_MOST_OFF: Final = 0.6  # mm; no ring between two mounts is so thin
_THICKEST: Final = 120.0  # mm
_LEAST_LENS: Final = 20.0  # mm
_SHORTEST: Final = 8.0  # mm, of a lens that is told by its focal length alone
_PASSED: Final = frozenset(["MARK", "VERB", "FILLER", "CUE", "DET"])
_MOUNTS: Final = frozenset(["MOUNT", "LETTER"])
_TOLD_BY: Final = frozenset(["VERB", "CUE", "MEASURE", "JOIN", "FILLER", "MARK", "PREP"])  # up to how long it is
_WORDS: Final = 4  # tokens at most between the second mount and the ring's thickness
_HEADS: Final = frozenset(["BODY", "LENS", "KIND", "PIECE", "MOUNTWORD", "FORMAT", "FRAME", "LINK", "MOUNT"])
_ENDS: Final = frozenset(["STOP", "JOIN", "MARK", "CUE", "FILLER", "VERB", "PREP"])  # behind such a length
_WANTED: Final = "wanted"  # value of 'need'
_OWN: Final = "own"  # value of words for what one has
_THING: Final = "thing"  # value of words for what one has no word for
_HAS: Final = 3  # tokens at most from such a word to what is owned
_OF_LENS: Final = frozenset(["LENS", "KIND", "LENGTH", "FNUM", "COMBO"])
_PUT_ON: Final = frozenset(["on", "with"])
_PAIR: Final = 2
_SIZES: Final = frozenset(["size", "thickness"])  # values of measuring words that may stand between


def with_ring_links(tokens: list[Token], hosts: frozenset[str] = frozenset()) -> list[Token]:
    """The tokens with a word for a ring behind each pair of mounts that tells one, and its thickness before that.

    `hosts`: mounts that, named alone, are those of a body.
    """
    tokens = with_ends_drawn(with_shut_and_travel(_with_lens_parted(_of_either_kind(without_slrs(tokens)), hosts)))
    tokens = with_rings_for_listed(with_bodies_by_mounts(tokens), hosts)
    out = _between_mounts(_heads_behind(_without_bodies(_by_rings(_for_lenses(tokens, hosts)))))
    at = 0
    while at + 2 < len(out):
        link = out[at + 1]
        if out[at].kind == out[at + 2].kind == "MOUNT" and out[at].ids != out[at + 2].ids:
            if _is_headed(out, at) and at and out[at - 1].value == _VIA:
                out[at - 1] = out[at - 1].as_("PREP", value="with")  # 'through an OM-EF ring and an EF-E one'
            if _is_headed(out, at) and _is_error(out, at):
                out.insert(at + 3, out.pop(at - 1))  # '0.5 M42-E ring too thick': by so much it is off
            elif _is_headed(out, at) and _is_thickness(out, at - 1):
                made = out[at - 1].numbers[0] in MADE_REDUCING  # 'a 0.64 CY-E booster': no ring is so thin
                out[at - 1] = out[at - 1].as_("TIMES") if made else out[at - 1].as_("LENGTH", unit="mm")
            elif goes_on(out, at):
                rest = out[at + 3 :]
                out[at + 3 :] = [Token("PIECE", "ring", out[at + 2].column, RING), *rest[:4]]
                out += [*([] if is_piece(rest[4:5]) else [Token("PIECE", "ring", rest[3].column, RING)]), *rest[4:]]
            elif leads_on(out, at):
                out.insert(at + 3, Token("PIECE", "ring", out[at + 2].column, RING))  # 'om-ef and ef-e rings'
                if at and out[at - 1].value == _VIA:
                    out[at - 1] = out[at - 1].as_("PREP", value="with")
            elif leads(link) or (link.text == "-" and _thickness(out, at + 3) is not None):
                at += _as_ring(out, at)
        at += 1
    return _with_lengths_behind(out)


def _of_either_kind(tokens: list[Token]) -> list[Token]:
    """'ring with glass or without?': a ring of which that is asked, and none with glass."""
    tokens = _glazed(tokens)
    for at in range(len(tokens) - 2):
        ring, join, without = tokens[at : at + 3]
        either = (ring.kind, ring.value) == ("PIECE", _GLASS) and join.value == "or" and without.value == "without"
        ends = at + 3 >= len(tokens) or tokens[at + 3].kind in ("STOP", "JOIN")
        if either and ends:
            return [*tokens[:at], ring.as_("PIECE", value=RING), join.as_("CUE", value=""), *tokens[at + 3 :]]
    return tokens


def _glazed(tokens: list[Token]) -> list[Token]:
    """'a glass FD to EF adapter': a ring with glass in it, and no lens."""
    for at in range(len(tokens) - 4):
        glass, front, link, rear, ring = tokens[at : at + 5]
        named = front.kind == rear.kind == "MOUNT" and leads(link) and (ring.kind, ring.value) == ("PIECE", RING)
        if glass.kind == "LENS" and GLAZED in glass.groups and named:
            return [*tokens[:at], front, link, rear, ring.as_("PIECE", value=_GLASS), *tokens[at + 5 :]]
    return tokens


def _with_lens_parted(tokens: list[Token], hosts: frozenset[str]) -> list[Token]:
    """'500mm mirror lens T2, the E ring is 36.8 thick': the mount of the lens heads no ring in a row with it."""
    out = list(tokens)
    for at in range(1, len(tokens) - 3):
        lens, mount, comma = tokens[at - 1 : at + 2]
        rest = [one for one in tokens[at + 2 : at + 5] if one.kind != "DET"][:2]
        if lens.kind not in _OF_LENS or mount.kind not in _MOUNTS or comma.text != "," or len(rest) < _PAIR:
            continue
        host = rest[0].kind == "LETTER" or (rest[0].kind == "MOUNT" and bool(hosts & set(rest[0].ids[:1])))
        if host and (rest[1].kind, rest[1].value) == ("PIECE", RING) and not is_plural(rest[1]):
            out[at + 1] = comma.as_("STOP", value=".")
    return out


def _with_lengths_behind(tokens: list[Token]) -> list[Token]:
    """'M to Z ring of 11.8': told finer than a focal length, what one ring is 'of' is its length."""
    for at in range(len(tokens) - 2):
        ring, of, size = tokens[at : at + 3]
        after = tokens[at + 3] if at + 3 < len(tokens) else None
        named = (ring.kind, ring.value) == ("PIECE", RING) and not is_plural(ring) and of.value == "of"
        bare = size.kind == "NUMBER" and "." in size.text and size.numbers[0] <= _THICKEST
        if named and bare and (after is None or after.kind in _ENDS):
            tokens[at + 2] = size.as_("LENGTH", unit="mm")
    return tokens


def _for_lenses(tokens: list[Token], hosts: frozenset[str]) -> list[Token]:
    """'my E ring for K is 27.4', 'Z ring for F lenses, 30.4': told as 'K to E 27.4 mm ring'; no 'T ring for F'."""
    for at in range(len(tokens) - 4):
        rear, ring, prep, front = tokens[at : at + 4]
        named = rear.kind in _MOUNTS and (ring.kind, ring.value) == ("PIECE", RING) and front.kind in _MOUNTS
        named = named and prep.value == "for" and not is_plural(ring)
        if not named or set(rear.ids) == set(front.ids):
            continue
        if not hosts & set(rear.ids[:1]):
            rear, front = front, rear  # 'the T2 ring for K is 9.3'
        place = at + 4 + (tokens[at + 4].kind == "LENS")
        while place < len(tokens) and tokens[place].kind in _TOLD_BY:
            place += 1
        size = tokens[place] if place < len(tokens) else None
        if size is not None and _is_fine(size):
            told = [front, prep.as_("PREP", value="to", text="to"), rear, size.as_("LENGTH", unit="mm"), ring]
            if size.numbers[0] <= _MOST_OFF:  # 'k ring for E, 0.1 too thick': by so much it is off
                return [*tokens[:at], *told[:3], ring, *_for_lenses(tokens[at + 4 :], hosts)]
            return [*tokens[:at], *told, *_for_lenses(tokens[place + 1 :], hosts)]
    return tokens


def _is_fine(token: Token) -> bool:
    metric = token.kind in ("NUMBER", "LENGTH") and token.unit in ("", "mm") and "." in token.text
    return metric and len(token.numbers) == 1 and 0 < token.numbers[0] <= _THICKEST


def _by_rings(tokens: list[Token]) -> list[Token]:
    """'every mount that goes on E by a plain ring': what it is done by is no ring of that mount."""
    out = list(tokens)
    for at, token in enumerate(tokens):
        by = token.kind == "FILLER" and BY_MEANS in token.groups and at and tokens[at - 1].kind in ("MOUNT", "BODY")
        rest = [one for one in tokens[at + 1 : at + 4] if not (one.kind == "DET" or one.text.casefold() == "a")]
        if by and rest and rest[0].kind == "PIECE":
            out[at] = token.as_("PREP", value="with")
    return out


def _without_bodies(tokens: list[Token]) -> list[Token]:
    """'K to X body ring', 'FD to Z camera adapter': the word for a body only tells whose mount the second is."""
    out: list[Token] = []
    for at, token in enumerate(tokens):
        row = [one.kind for one in tokens[max(0, at - 3) : at + 2]]
        named = row[:1] + row[2:] == ["MOUNT", "MOUNT", "BODY", "PIECE"] and at > 2
        if named and leads(tokens[at - 2]) and tokens[at + 1].value == RING and not token.ids:
            continue
        out.append(token)
    return out


def _between_mounts(tokens: list[Token]) -> list[Token]:
    """'is 2.3 mm all there is between M and NX': what lies between two mounts is no lens."""
    for at in range(len(tokens) - 3):
        link, row = tokens[at], tokens[at + 1 : at + 4]
        if link.value != "between" or [one.kind for one in row] != ["MOUNT", "JOIN", "MOUNT"]:
            continue
        place = at - 1
        while place >= 0 and tokens[place].kind in _PASSED:
            place -= 1
        size = tokens[place] if place >= 0 else None
        fine = size is not None and (size.kind == "NUMBER" or size.is_mm)
        wanted = any(one.value == _WANTED for one in tokens[:at])  # 'i need 9.54 between T2 and M42, only have ...'
        if size is not None and fine and not wanted and "." in size.text and size.numbers[0] <= _THICKEST:
            tokens[place] = size.as_("KEYED", value="thickness", unit="mm")
    return tokens


def _heads_behind(tokens: list[Token]) -> list[Token]:
    """'ring k -> x', 'adapter: M42 to E': the word for the ring goes behind its mounts."""
    for at in range(len(tokens) - 3):
        if _parts_its_mounts(tokens, at):
            tokens[at + 1 : at + 4] = [tokens[at + 2], tokens[at + 3], tokens[at + 1]]
        if tokens[at].kind != "PIECE" or tokens[at].value != RING or is_plural(tokens[at]):
            continue
        first = at + 1 + (tokens[at + 1].kind == "MARK")
        pair = tokens[first : first + 3]
        after = tokens[first + 3] if first + 3 < len(tokens) else None
        told = at > 0 and tokens[at - 1].kind in ("MOUNT", "NUMBER", "RANGE", "THREAD")
        if [one.kind for one in pair[::2]] != ["MOUNT", "MOUNT"] or not leads(pair[1]) or told:
            continue
        if after is None or after.kind not in _HEADS:
            tokens[at : first + 3] = [*pair, tokens[at].as_("PIECE", column=pair[2].column)]
    return tokens


def _parts_its_mounts(tokens: list[Token], at: int) -> bool:
    """'my P6 ring to M42': the word for the ring stands between its two mounts."""
    row, after = tokens[at : at + 4], tokens[at + 4] if at + 4 < len(tokens) else None
    kinds = [one.kind for one in row] == ["MOUNT", "PIECE", "PREP", "MOUNT"]
    ring = kinds and row[1].value == RING and leads(row[2]) and row[0].ids != row[3].ids
    return ring and (after is None or after.kind not in _HEADS) and not (at and tokens[at - 1].kind == "PREP")


def _as_ring(tokens: list[Token], at: int) -> int:
    """Puts the word for a ring behind the pair at `at`, and its thickness before; gives how many were put in."""
    end = at + 3
    after = tokens[end] if end < len(tokens) else None
    if after is not None and after.kind in _HEADS:
        return 0
    if after is not None and after.value == _THING:
        tokens[end] = after.as_("PIECE", value=RING)  # 'the C to E thing'
        return 0
    if after is not None and STANDIN in after.implies and at and (tokens[at - 1].kind == "DET"):
        tokens[end] = after.as_("PIECE", value=RING)  # 'the C to E one i got'
        return 0
    size = _thickness(tokens, end)
    if size is None and not _is_owned(tokens, at):
        return 0
    ring = Token("PIECE", "ring", tokens[end - 1].column, RING)
    if size is None:
        tokens.insert(end, ring)
        return 1
    told = tokens.pop(size)
    tokens[end:end] = [ring]
    tokens.insert(at, told.as_("LENGTH", unit="mm", column=tokens[at].column))
    return 1


def _is_headed(tokens: list[Token], at: int) -> bool:
    """Whether a word for a ring without glass stands behind the pair at `at`."""
    linked = leads(tokens[at + 1]) or tokens[at + 1].text == "-"
    return linked and at + 3 < len(tokens) and tokens[at + 3].kind == "PIECE" and tokens[at + 3].value not in OPTICAL


def _is_error(tokens: list[Token], at: int) -> bool:
    """Whether what stands before the mounts is by how much the ring behind them is too thick, or too thin."""
    row = tokens[at + 3 : at + 5]
    off = [one.kind for one in row] == ["PIECE", "MEASURE"] and row[1].value == _OFF
    small = at > 0 and tokens[at - 1].may_be_mm
    return off and small and 0 < tokens[at - 1].numbers[0] <= _MOST_OFF


def _is_thickness(tokens: list[Token], at: int) -> bool:
    """'the 7.8 M-L ring': told finer than a focal length, or shorter than one."""
    token = tokens[at] if at >= 0 else None
    if token is None or token.kind != "NUMBER" or token.text.isalpha():
        return False
    if at and tokens[at - 1].kind in ("LENGTH", "FOCAL", "NUMBER") and token.numbers[0] in STOPS:
        return False  # '50mm 1.8 M42 to E ring': the stop of a lens
    return ("." in token.text and token.numbers[0] <= _THICKEST) or 1 < token.numbers[0] < _SHORTEST


def _thickness(tokens: list[Token], at: int) -> int | None:
    """Where the thickness stands that is told right behind a pair: '(28.64)', 'at 9.8', 'is 27.40'."""
    for place in range(at, min(at + _WORDS, len(tokens))):
        token = tokens[place]
        if token.kind in ("NUMBER", "LENGTH"):
            after = tokens[place + 1] if place + 1 < len(tokens) else None
            own = after is not None and after.kind in ("LENS", "KIND", "MOUNT", "FNUM", "MEASURE", "PIECE")
            own = own and not (after is not None and after.kind == "MEASURE" and after.value in _SIZES)  # 'by caliper'
            bare = token.kind == "NUMBER" and "." in token.text
            metric = token.is_mm and not _is_lens(token, place == at)
            return place if (bare or metric) and 0 <= token.numbers[0] <= _THICKEST and not own else None
        between = token.kind in _PASSED or (token.kind == "PREP" and token.value in ("at", "of"))
        if not (between or (token.kind == "MEASURE" and token.value in _SIZES)):
            return None
    return None


def _is_lens(token: Token, right_behind: bool) -> bool:
    """'M42-E 50mm': a whole length, as long as a lens, right behind the two mounts with nothing between."""
    return right_behind and "." not in token.text and token.numbers[0] >= _LEAST_LENS


def _is_owned(tokens: list[Token], at: int) -> bool:
    """'i already own FD to M', 'a 39-42 bush and M42 to E': what one has that leads from mount to mount is a ring."""
    before = [token for token in tokens[max(0, at - _HAS) : at] if token.kind != "DET" and token.text != "a"]
    beside = [token.kind for token in before[-2:]] == ["PIECE", "JOIN"]
    led = [token for token in tokens[:at] if token.kind != "DET" and OWN not in token.groups and token.text != "a"]
    on = bool(led) and led[-1].kind == "PREP" and led[-1].value in _PUT_ON  # 'an LTM 50 on my LTM to E'
    again = on and any(one.kind == "MOUNT" and one.ids[:1] == tokens[at].ids[:1] for one in led)
    return again or (bool(before) and (before[-1].value == _OWN or beside))
