"""Numbers that follow what they describe: 'projector lens, 85/2.8', 'tubes 7, 14 and 28 mm'."""

from __future__ import annotations

from math import inf
from typing import Final

from grammar.questions import RING
from grammar.things.casting import DRAWN, MAY_REDUCE, OPTICAL, SPACER
from grammar.things.lens_behind_ring import is_lens_behind_sized_ring
from grammar.things.marked_lens import is_marked_lens
from grammar.words.groups import OWN_OR_ANY
from grammar.words.token_kinds import HEADS, METRES
from grammar.words.tokens import Token, is_plural

MODIFIERS: Final = frozenset(
    ["MOUNT", "FORMAT", "LENGTH", "RANGE", "FNUM", "COMBO", "TIMES", "FOCAL", "COUNT", "KIND", "TRAIT", "DIOPTRE",
     "STRANGE", "HEADMOD", "NAMED", "CROP"]
)  # fmt: skip
_WITH_FACTOR: Final = OPTICAL | MAY_REDUCE  # 'booster 0.71 MD to MFT'
_KNOWN: Final = frozenset(["same", "one-ring"])  # told of a piece that was spoken of: it has its length
# between a piece and its length: 'a tube of 60', 'a helicoid adds 8 mm', 'ring is 1mm, 135mm lens'
_ITS: Final = frozenset(["of", "added", "be"])
_FOCALS: Final = frozenset(["FOCAL", "COMBO", "RANGE", "LENGTH"])
_SHORTEST_LENS_MM: Final = 20
_WIDER_THAN_FRONTS_MM: Final = 100.0
_THINNEST_MM: Final = 3.0  # of what is put under a ring, and no lens
_LEAST_LENS: Final = {"bellows": 20.0, "helicoid": 28.0, SPACER: 40.0}  # mm, of what is no length of such a piece
_NO_FRAME: Final = frozenset(["mm", "cm", "m", "ft"])  # units that no frame is told in
_LONGEST_TUBE: Final = 80.0  # mm, of one in a set
_TWO: Final = 2  # tokens back, over the article
_LEAST_FOCAL: Final = 8.0  # mm; what is shorter may be a ring
_EXTENTS: Final = frozenset(["LENGTH", "RANGE"])
TAILS: Final = frozenset(["LENGTH", "RANGE", "FNUM", "COMBO", "TIMES", "FOCAL", "DIOPTRE"])
_TAIL: Final = "TAIL"  # what a number becomes that follows its head


def without_articles(tokens: list[Token]) -> list[Token]:
    """The tokens without articles, but for one that begins a lens: 'a 12mm tube my 24 cant focus'."""
    out: list[Token] = []
    for at, token in enumerate(tokens):
        if token.kind != "DET":
            out.append(token)
            continue
        after = tokens[at + 1] if at + 1 < len(tokens) else None
        lens = after is not None and after.kind in ("FOCAL", "COMBO")
        begins = lens and bool(out) and out[-1].kind == "PIECE" and at > 1 and tokens[at - 2].kind in _EXTENTS
        behind = lens and len(out) > 1 and out[-1].kind == "RANGE" and out[-2].kind == "PIECE"
        if begins or behind:  # 'the helicoid 25-55 the 105 ...'
            out.append(token.as_("CUE"))
    return out


def with_lens_behind_ring(tokens: list[Token]) -> list[Token]:
    """The tokens with a focal length right behind a ring as one, and what leads to it as no measure of a stack."""
    lenses = [at for at in range(len(tokens)) if _is_lens_behind_ring(tokens, at)]
    out = list(tokens)
    for at in lenses:
        out[at] = tokens[at].as_("FOCAL", unit="")
        if out[at - _TWO].kind == "MEASURE":
            out[at - _TWO] = out[at - _TWO].as_("CUE")
    return out


def _is_lens_behind_ring(tokens: list[Token], at: int) -> bool:
    """'what will a flush ring let a 13mm do': with an article of its own it is no length of the ring told before it."""
    token = tokens[at]
    if token.kind != "LENGTH" or at < _TWO or token.unit != "mm" or token.numbers[0] < _LEAST_FOCAL:
        return False
    makes = at > _TWO and (tokens[at - _TWO].kind, tokens[at - _TWO].value) == ("MEASURE", "total")
    led = tokens[at - 1].kind == "DET" and OWN_OR_ANY in tokens[at - 1].groups
    led = led and _is_ring(tokens, at - _TWO - makes)
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    return led and (after is None or after.kind in ("CUE", "STOP", "JOIN", "PREP", "AT"))


def _is_denied_ring(out: list[Token], at: int) -> bool:
    """'no ring', 'without adapter': what is not there has no length."""
    return _is_ring(out, at) and at > 0 and (out[at - 1].text.casefold() == "no" or out[at - 1].value == "without")


def _ends_drawn(out: list[Token]) -> bool:
    """Whether the last thing told is a piece that spaces, with its lengths behind it."""
    at = len(out) - 1
    while at > 0 and out[at].kind == _TAIL:
        at -= 1
    return out[at].kind == "PIECE" and out[at].value in DRAWN


def _is_lens_behind_tubes(tokens: list[Token], at: int) -> bool:
    """'tubes 7 and 14, 135 on X': longer than any tube, and put on a body, where no lens is told."""
    token, after = tokens[at], [one.kind for one in tokens[at + 1 : at + 3]]
    long = token.kind in _EXTENTS and len(token.numbers) == 1 and token.numbers[0] >= _LONGEST_TUBE
    lens = any(one.kind in ("FOCAL", "COMBO", "LENS") for one in tokens)
    return long and at > 1 and after == ["PREP", "MOUNT"] and not lens


def tailed(tokens: list[Token], told: frozenset[str] = frozenset()) -> list[Token]:
    """Numbers that follow their head: '85/2.8' in 'projector lens, 85/2.8'."""
    out: list[Token] = []
    for at, token in enumerate(tokens):
        behind_tubes = _is_lens_behind_tubes(tokens, at) and out[-1].kind == "JOIN" and _ends_drawn(out[:-1])
        if behind_tubes or is_lens_behind_sized_ring(out, tokens, at):
            out.append(token.as_("FOCAL", unit=""))
            continue
        back = _place_of_head(out, tokens, at)
        if back is not None:
            token = _behind_head(out, back, tokens, at, told)
            if token.kind == _TAIL:
                del out[back + 1 :]
        out.append(token)
    return out


def _is_sized_piece(out: list[Token]) -> bool:
    """Whether the last thing told is a piece with its length behind it."""
    return (
        len(out) > 1
        and out[-1].kind == _TAIL
        and next(one for one in reversed(out) if one.kind != _TAIL).kind == "PIECE"
    )


def _place_of_head(out: list[Token], tokens: list[Token], at: int) -> int | None:
    """Where the head stands that the number may follow; None where it leads on to what comes."""
    token, last = tokens[at], out[-1] if out else None
    if last is None or token.kind not in TAILS:
        return None
    if token.kind == "LENGTH" and any(one.kind == "LENS" for one in out[-2:]) and _leads_row(tokens, at):
        return None  # '50mm lens, 10 or 16 mm tube': the first of the tubes
    if token.kind == "LENGTH" and token.unit in METRES and last.kind == "JOIN" and _is_sized_piece(out[:-1]):
        return None  # 'ring 25.6 mm, all past 3 m is soft': how far off something is
    drawn = last.kind == "PIECE" and last.value in DRAWN
    stretched = drawn and (token.kind == "RANGE" or _is_before_pair(tokens, at))
    factor = token.kind == "TIMES" and last.kind == "PIECE" and last.value in _WITH_FACTOR
    behind = last.kind == "LENS" and _is_turned(tokens[at + 1 : at + 3])
    if not (stretched or factor or behind) and leads_on(tokens, at):
        return None
    back = len(out) - 1
    if back and token.kind in ("LENGTH", "RANGE") and out[back].value in _ITS and out[back - 1].kind == "PIECE":
        if _is_front_of_lens(out, back, tokens, at):
            return None
        back -= 1  # 'a tube of 60 mm' is a 60 mm tube
    if out[back].kind == "JOIN" and back and (out[back].value == "," or _lists(out, back - 1, token)):
        back -= 1
    return back


def _is_front_of_lens(out: list[Token], back: int, tokens: list[Token], at: int) -> bool:
    """'a 50 flipped, on the filter thread of a 135': wider than fronts are, or where one lens is turned on another."""
    front = out[back - 1].value == "filter" and out[back].value == "of" and tokens[at].is_mm
    turned = any(one.kind == "TRAIT" and one.value == "reversed" for one in tokens)
    return front and (turned or tokens[at].numbers[0] >= _WIDER_THAN_FRONTS_MM)


def _behind_head(out: list[Token], back: int, tokens: list[Token], at: int, told: frozenset[str]) -> Token:
    """The number as a TAIL of the head at `back`, as a FOCAL where it is of a lens alone; else as it is."""
    token, head = tokens[at], out[back]
    if token.kind == "DIOPTRE" and head.kind != "PIECE":
        return token  # 'screwed a +2 on my 50': no thread has a strength
    if head.kind == "LENS" and is_plural(head):
        return token  # '2 M42 lenses, a 50 and a 135': each is one of them
    if back == len(out) - 1 and _is_denied_ring(out, back) and _is_of_lens(token):
        return token.as_("FOCAL", unit="mm")  # 'held on K, no ring 28mm'
    if token.kind == "FOCAL" and _ends_drawn(out[: back + 1]):
        return token  # 'which tube (7 14 28) puts my 85 ...': a tube has no focal length
    if back < len(out) - 1 and out[-1].value == ",":
        if _is_of_lens_alone(out, back, tokens, at):
            return token.as_("FOCAL", unit="mm")
        # 'same ring, 50mm', 'without the tc, 1.4x instead': another thing's
        known = head.kind == "PIECE" and (bool(told & _KNOWN) or out[back - 1].value == "without")
        if known or _has_its_own(out, back, tokens[at:]) or _is_rather_lens(out, back, tokens, at):
            return token  # 'a 10 mm tube, 50 mm': the lens's
    stopped = token.kind in ("FNUM", "COMBO") or _is_stopped(tokens, at)
    stop_of_piece = stopped and _is_of_piece(out, back)  # '20mm tube, f11'
    of_lens = _is_body(out, back) and (_is_of_lens(token) or token.unit in METRES)  # 'on an FF body, 28mm', 'at 3 m'
    of_lens = of_lens or (_is_ring(out, back) and is_marked_lens(token, told))
    heads = head.kind in HEADS or head.kind == _TAIL
    return token.as_(_TAIL, implies=(token.kind,)) if heads and not (stop_of_piece or of_lens) else token


def _leads_row(tokens: list[Token], at: int) -> bool:
    """Whether a length leads a row of those of tubes or the like."""
    while [one.kind for one in tokens[at : at + 2]] == ["LENGTH", "JOIN"]:
        at += 2
    ends = tokens[at : at + 2]
    row = [one.kind for one in ends] == ["LENGTH", "PIECE"] and at > 1 and tokens[at - 2].kind == "LENGTH"
    return row and ends[1].value in DRAWN


def _is_rather_lens(out: list[Token], back: int, tokens: list[Token], at: int) -> bool:
    """'with my OM ring, 50mm': as long as a lens, and no lens is told by its length; a ring's is told to the tenth.

    'A 0.3mm shim under the ring, 135mm', 'a 0.5 washer between lens and ring, 50mm': what is so thin is no lens.
    """
    token, ring = tokens[at], out[back]
    rest = [one for one in (*tokens[:at], *tokens[at + 1 :]) if one.kind in _FOCALS]
    thin = [one for one in rest if one.kind == "LENGTH" and one.numbers[0] <= _THINNEST_MM]
    of_mount = back > 0 and out[back - 1].kind == "MOUNT"
    sheet = any(one.kind in ("NUMBER", "TIMES") and one.numbers[0] <= _THINNEST_MM for one in tokens[:at])
    plain = ring.kind == "PIECE" and ring.value == "adapter" and (of_mount or bool(thin) or sheet)
    metric = token.is_mm and token.text[-1:].isalpha()
    others = len(rest) > len(thin)
    return plain and metric and not others and token.numbers[0] == int(token.numbers[0]) >= _SHORTEST_LENS_MM


def _is_before_pair(tokens: list[Token], at: int) -> bool:
    """'helicoid 6 mm M to E, 28 mm': the mounts behind are those of the ring; the lens is told by itself."""
    token, ahead = tokens[at], tokens[at + 1 : at + 4]
    pair = [one.kind for one in ahead] in (["MOUNT", "LINK", "MOUNT"], ["MOUNT", "PREP", "MOUNT"])
    lens = any(one.kind in _FOCALS and one.numbers[0] >= _SHORTEST_LENS_MM for one in tokens[at + 4 :])
    short = token.is_mm and token.numbers[0] < _SHORTEST_LENS_MM
    return pair and short and lens and ahead[1].value in ("to", "", "-")


def _is_turned(after: list[Token]) -> bool:
    """'an M42 lens 85 mm reversed on ...': the quality that ends what is told of the lens before."""
    return [one.kind for one in after[:1]] == ["TRAIT"] and (len(after) == 1 or after[1].kind not in HEADS | MODIFIERS)


def _is_body(out: list[Token], at: int) -> bool:
    """No body has a focal length, and no sensor: 'on a 2/3 inch chip, my 35', 'APS-C frame 50'."""
    framed = out[at].kind == "FRAME" and at > 0 and out[at - 1].kind == "FORMAT"
    return framed or _headed_by(out, at).kind in ("BODY", "FRAME")


def _is_of_piece(out: list[Token], at: int) -> bool:
    """'tubes 12 20 36, 85/1.8': no piece has a stop, though its lengths stand between."""
    return _headed_by(out, at).kind == "PIECE"


def _is_of_lens_alone(out: list[Token], back: int, tokens: list[Token], at: int) -> bool:
    """'bellows, 50mm, want 2:1': behind the comma after a piece of no length, the one length told is the lens's."""
    piece, token = _headed_by(out, back), tokens[at]
    alone = token.kind in ("LENGTH", "FOCAL") and token.numbers[0] >= _LEAST_LENS.get(piece.value, inf)
    alone = alone and token.numbers[0] == int(token.numbers[0])
    lengths = [one for one in tokens if one.kind in ("LENGTH", "FOCAL", "COMBO", "RANGE") and one.unit in ("", "mm")]
    return alone and out[back] is piece and len(lengths) == 1 and not _names_lens(tokens)


def _names_lens(tokens: list[Token]) -> bool:
    return any(one.kind in ("NAMED", "FNUM") for one in tokens)


def _is_stopped(tokens: list[Token], at: int) -> bool:
    """'tubes 13, 21, 31, 100 f4': a length with a stop right behind is that of a lens."""
    behind = tokens[at + 1] if at + 1 < len(tokens) else None
    return tokens[at].kind in ("FOCAL", "LENGTH") and behind is not None and behind.kind == "FNUM"


def _headed_by(out: list[Token], at: int) -> Token:
    while at > 0 and out[at].kind == _TAIL:
        at -= 1
    return out[at]


def _is_ring(out: list[Token], at: int) -> bool:
    return out[at].kind == "PIECE" and out[at].value == RING


def _is_of_lens(token: Token) -> bool:
    """A number that no body has: a focal length, a stop, or how far off something is."""
    return token.kind in ("FOCAL", "COMBO", "FNUM") or (token.kind == "LENGTH" and token.unit in _NO_FRAME)


def _lists(out: list[Token], at: int, token: Token) -> bool:
    """'tubes 7mm, 14mm and 28mm': one more length of a list behind a piece."""
    lengths = out[at].kind == _TAIL and out[at].implies == ("LENGTH",) and token.kind == "LENGTH"
    while at > 0 and out[at].kind == _TAIL:
        at -= 1
    return lengths and out[at].kind == "PIECE"


def _has_its_own(out: list[Token], at: int, rest: list[Token]) -> bool:
    """Whether the piece at `at` has its length already, or is of a kind that has none: what follows is another's."""
    if rest[0].kind != "LENGTH" or [one.kind for one in rest[1:3]] == ["JOIN", "LENGTH"]:
        return False  # 'a 12 mm tube, 20 mm, 36 mm'
    tail = out[at].kind == _TAIL
    while at > 0 and out[at].kind == _TAIL:
        if out[at].implies == ("LENGTH",):
            return False  # 'tubes 7mm, 14mm'
        at -= 1
    if out[at].kind != "PIECE":
        return False
    optical = out[at].value in OPTICAL
    while at > 1 and out[at - 1].kind in ("MOUNT", "LINK"):
        at -= 1  # 'the 0.9 MD to EF plate, 58 mm'
    before = out[at - 1].kind if at else ""
    return tail or optical or before in ("LENGTH", "RANGE", "TIMES")


def leads_on(tokens: list[Token], at: int) -> bool:
    """Whether the run of describing words from `at` on ends in a head of its own."""
    for token in tokens[at:]:
        if token.kind in HEADS or token.kind in ("KIND", "MOUNT", "NAMED", "STRANGE", "TRAIT"):
            return True
        if token.kind not in MODIFIERS:
            return False
    return False
