"""Tokens -> tokens of the grammar: what each number belongs to, which words head a description, what is passed over."""

from __future__ import annotations

from typing import Final

from engine.base.compact import compact
from grammar.bare_numbers import with_numbers_told
from grammar.casting import DRAWN, OPTICAL
from grammar.formats import with_formats_told
from grammar.group_heads import with_group_heads, with_times_told
from grammar.lens_rows import with_lens_rows
from grammar.letters import settled
from grammar.measures import with_measures_told
from grammar.near_marks import with_near_marks_told
from grammar.piece_rows import with_piece_rows
from grammar.senses import with_rest_told, with_senses_told
from grammar.small_words import with_small_words
from grammar.standins import with_standins
from grammar.strangers import with_strangers
from grammar.tokens import Line, Token
from grammar.zones import with_zones_told

HEADS: Final = frozenset(["LENS", "BODY", "PIECE", "FRAME", "MOUNTWORD"])
MODIFIERS: Final = frozenset(
    ["MOUNT", "FORMAT", "LENGTH", "RANGE", "FNUM", "COMBO", "TIMES", "FOCAL", "COUNT", "KIND", "TRAIT", "DIOPTRE",
     "STRANGE", "HEADMOD", "NAMED", "CROP"]
)  # fmt: skip
TAILS: Final = frozenset(["LENGTH", "RANGE", "FNUM", "COMBO", "TIMES", "FOCAL", "DIOPTRE"])
VALUES: Final = frozenset(
    ["ISO", "SHUTTER", "FPS", "EV", "ND", "PRICE", "TURNS", "STOPS", "RATIO", "WEIGHT", "DEGREES", "PERCENT", "PITCH",
     "THREAD", "ORDINAL", "LIGHT", "TARGET", "NUMBER", "ASPECT", "AREA", "FRACTION", "TSTOP", "KEYED", "MEASURE",
     "FILE", "PIXELS"]
)  # fmt: skip
# the last word of a name that heads the description all the same: 'projector lens', 'F body'
_ENDING: Final = {
    "lens": "LENS", "lenses": "LENS", "prime": "LENS", "primes": "LENS", "body": "BODY",
    "bodies": "BODY", "camera": "BODY", "dslr": "BODY", "slr": "BODY", "dslrs": "BODY",
}  # fmt: skip
_LEADS_KIND: Final = frozenset(["MOUNTWORD", "BODY"])  # before a kind of lens: 'reflex zoom' is no camera
_SETTING: Final = frozenset(["FNUM", "LENGTH", "RATIO", "TIMES", "NUMBER", "SHUTTER", "TSTOP"])


@compact
class Shaped:
    """Tokens as the grammar takes them, and the unknown words that were passed over."""

    tokens: tuple[Token, ...]
    skipped: tuple[Token, ...]


def shaped(line: Line, told: frozenset[str], hosts: frozenset[str] = frozenset()) -> Shaped:
    """The tokens of `line` with each in its part.

    `told`: what the cues of the line tell. `hosts`: mounts that, named alone, are those of a body.
    """
    tokens = with_times_told(with_group_heads(settled(with_small_words(_within_cues(line)))))
    tokens = _ringed([one for token in tokens for one in _named(token)])
    tokens = _linked(_hyphened(_denied(tokens)))
    tokens, skipped = with_strangers(tokens)
    tokens = [token for token in _of_times(tokens) if token.kind not in ("FILLER", "MARK")]
    tokens = [token.as_("CUE") if token.kind == "VERB" else token for token in tokens]
    tokens = with_standins(tokens)
    tokens = with_formats_told(tokens)
    tokens = with_zones_told(tokens, line.cues, told)
    tokens = with_near_marks_told(tokens, told)
    tokens = with_senses_told(tokens)
    tokens = with_piece_rows(tokens, told)
    tokens = with_measures_told(tokens)
    tokens = with_lens_rows(tokens, hosts)
    tokens = with_numbers_told(tokens, told)
    tokens = with_rest_told(with_measures_told(tokens), told)
    tokens = _headed(tokens)
    tokens = [token for token in tokens if token.kind != "DET"]
    tokens = _limited(tokens)
    tokens = _settings(tokens)
    tokens = _tailed(tokens)
    tokens = _placed(tokens)
    tokens = _joined(tokens)
    return Shaped(tuple(tokens), tuple(skipped))


def _within_cues(line: Line) -> tuple[Token, ...]:
    """'the full frame equivalent': a format that is only part of what is asked is not that of the body."""
    spans = [(cue.column, cue.end) for cue in line.cues if cue.tells == "equiv"]

    def inside(token: Token) -> bool:
        end = token.column + len(token.text) - 1
        return any(
            start <= token.column and end <= last and (start, last) != (token.column, end) for start, last in spans
        )

    return tuple(token.as_("CUE") if token.kind == "FORMAT" and inside(token) else token for token in line.tokens)


def _named(token: Token) -> list[Token]:
    if token.kind in ("LENS", "BODY", "ADAPTER") and token.ids:
        return [token.as_("NAMED", unit=token.kind.lower())]
    words = token.text.split()
    if token.kind in ("KIND", "MOUNT") and len(words) > 1 and words[-1].casefold() in _ENDING:
        column = token.column + len(token.text) - len(words[-1])
        head = Token(_ENDING[words[-1].casefold()], words[-1], column)
        return [token.as_(token.kind, text=token.text[: column - token.column].rstrip()), head]
    return [token]


def _ringed(tokens: list[Token]) -> list[Token]:
    """'a T ring', 'EF T-ring': a ring that has its front by its name has that mount before all that describes it."""
    out: list[Token] = []
    for token in tokens:
        front = next((one[1:] for one in token.implies if one.startswith("~")), "") if token.kind == "PIECE" else ""
        if front:
            at = len(out)
            while at and out[at - 1].kind in ("MOUNT", "NUMBER", "LENGTH"):
                at -= 1
            out.insert(at, Token("MOUNT", token.text, token.column, value=front, ids=(front,)))
        out.append(token)
    return out


def _denied(tokens: list[Token]) -> list[Token]:
    """'not rangefinder', 'not a zoom': what the lens is said not to be is no word for it."""
    out: list[Token] = []
    for token in tokens:
        behind = [one for one in out[-2:] if one.kind not in ("DET", "MARK")]
        word = behind[-1].text.casefold() if behind else ""
        denied = word == "not" or (word == "how" and token.text.casefold() == "wide")
        out.append(token.as_("FILLER") if denied and token.kind in ("KIND", "TRAIT") else token)
    return out


def _of_times(tokens: list[Token]) -> list[Token]:
    """'C-mount, 16 mm film camera era': the camera tells of what times the lens is, not what it is put on.

    Nor does 'only' of 'an APS-C-only lens' stand between the two.
    """
    out = []
    for at, token in enumerate(tokens):
        before = tokens[at - 1].text if at else ""
        after = tokens[at + 1].text.casefold() if at + 1 < len(tokens) else ""
        if token.text == ":" and at and tokens[at - 1].kind in ("MOUNT", "FORMAT"):
            token = token.as_("CUE")  # 'better on MFT: the 25 mm or the 28 mm'
        elif token.text == ":" and at and tokens[at - 1].kind == "LENS" and _headed_by_piece(tokens, at + 1):
            token = token.as_("CUE")  # '90mm lens: tube length'
        aside = (
            token.text.casefold() == "era" and at > 0 and tokens[at - 1].kind == "FORMAT" and after not in ("", "lens")
        )
        aside = (
            aside or (token.kind == "BODY" and after == "era") or (token.text.casefold() == "only" and before == "-")
        )
        out.append(token.as_("FILLER") if aside else token)
    return out


def _headed_by_piece(tokens: list[Token], at: int) -> bool:
    return at < len(tokens) and tokens[at].kind == "PIECE"


def _hyphened(tokens: list[Token]) -> list[Token]:
    """'d-to-c': the hyphens make the 'to' a link between two mounts."""
    out: list[Token] = []
    for at, token in enumerate(tokens):
        around = [tokens[one] for one in (at - 1, at + 1) if 0 <= one < len(tokens)]
        if token.text == "-" and any(one.kind == "PREP" and one.value == "to" for one in around):
            continue
        if token.text == "/" and not token.gap and out and out[-1].kind == "PREP":
            continue  # 'w/ a 2x'
        if token.kind == "PREP" and token.value == "to" and any(one.text == "-" for one in around):
            token = token.as_("MARK", text="-")
        out.append(token)
    return out


def _linked(tokens: list[Token]) -> list[Token]:
    """'M42-E', 'd to c ring', 'm42 mft ring': the two mounts of one adapter are linked."""
    out: list[Token] = []
    for at, token in enumerate(tokens):
        before = next((one for one in reversed(out) if one.text != "-"), None)
        after = next((one for one in tokens[at + 1 :] if one.text != "-"), None)
        if before is not None and after is not None and before.kind == after.kind == "MOUNT":
            if token.text == "-":
                out.append(token.as_("LINK"))
                continue
            if token.kind == "PREP" and token.value == "to" and _of_piece(tokens, at, out):
                out.append(token.as_("LINK"))
                continue
        out.append(token)
        if [one.kind for one in tokens[at : at + 3]] == ["MOUNT", "MOUNT", "PIECE"]:
            out.append(token.as_("LINK"))
    return out


def _of_piece(tokens: list[Token], at: int, before: list[Token]) -> bool:
    following = [token for token in tokens[at + 2 :] if token.kind not in ("FILLER", "UNKNOWN", "LETTER")][:2]
    if any(token.kind == "PIECE" for token in following[:1]):
        return True
    if (
        len(following) > 1
        and following[0].kind in ("LENGTH", "KIND", "TIMES", "MOUNTWORD")
        and following[1].kind == "PIECE"
    ):
        return True
    ahead = [token for token in before if token.kind not in ("FILLER", "UNKNOWN", "DET")][-2:]
    return len(ahead) == 2 and ahead[0].kind == "PIECE" and not any(token.kind == "BODY" for token in following)


def _headed(tokens: list[Token]) -> list[Token]:
    """A head noun right before another one only describes it: 'mount' in 'E mount body'."""
    out = []
    for at, token in enumerate(tokens):
        after = tokens[at + 1] if at + 1 < len(tokens) else None
        leads = after is not None and (after.kind in HEADS or (after.kind == "KIND" and token.kind in _LEADS_KIND))
        out.append(token.as_("HEADMOD", unit=token.kind) if token.kind in HEADS and leads else token)
    return out


def _limited(tokens: list[Token]) -> list[Token]:
    """'at most 2 adapters', 'under 40': the number goes with its limit."""
    out: list[Token] = []
    at = 0
    while at < len(tokens):
        token = tokens[at]
        if token.kind == "LIMIT" and token.value in ("at-most", "under", "best"):
            rest = tokens[at + 1 : at + 3]
            limit, used = _limit(token, rest)
            out.append(limit)
            at += 1 + used
            continue
        out.append(token)
        at += 1
    return out


def _limit(token: Token, rest: list[Token]) -> tuple[Token, int]:
    if rest and rest[0].kind in ("NUMBER", "COUNT", "PRICE", "FOCAL"):
        number, text = rest[0].numbers, f"{token.text} {rest[0].text}"
        counts = len(rest) > 1 and rest[1].kind == "PIECE"
        if token.value == "best":
            return token.as_("LIMIT", value="best", numbers=number, text=text), 1
        if counts or (rest[0].kind == "COUNT" and token.value == "at-most"):
            return token.as_("LIMIT", value="pieces", numbers=number, text=text), 2 if counts else 1
        return token.as_("LIMIT", value="price", numbers=number, text=text), 1
    return token.as_("CUE"), 0


def _settings(tokens: list[Token]) -> list[Token]:
    """'at f/8' is a setting; 'at' before anything else says nothing."""
    out: list[Token] = []
    for at, token in enumerate(tokens):
        if token.kind == "PREP" and token.value == "at":
            after = tokens[at + 1] if at + 1 < len(tokens) else None
            drawn = bool(out) and out[-1].kind == "PIECE" and out[-1].value in DRAWN
            if drawn and after is not None and after.kind == "LENGTH" and after.unit in ("mm", "cm"):
                continue  # 'bellows at 100 mm' is drawn so far
            if after is not None and after.kind in _SETTING:
                out.append(token.as_("AT"))
            continue
        out.append(token)
    return out


def _tailed(tokens: list[Token]) -> list[Token]:
    """Numbers that follow their head: '85/2.8' in 'projector lens, 85/2.8'."""
    out: list[Token] = []
    for at, token in enumerate(tokens):
        stretched = token.kind == "RANGE" and bool(out) and out[-1].kind == "PIECE" and out[-1].value in DRAWN
        if token.kind in TAILS and out and (stretched or not _leads_on(tokens, at)):
            back = len(out) - 1
            if back and token.kind in ("LENGTH", "RANGE") and out[back].value == "of" and out[back - 1].kind == "PIECE":
                back -= 1  # 'a tube of 60 mm' is a 60 mm tube
            if out[back].kind == "JOIN" and back and (out[back].value == "," or _lists(out, back - 1, token)):
                back -= 1
            if out[back].kind == "LENS" and out[back].text.casefold().endswith("s"):
                out.append(token)  # '2 M42 lenses, a 50 and a 135': each is one of them
                continue
            stop_of_piece = out[back].kind == "PIECE" and token.kind in ("FNUM", "COMBO")  # '20mm tube, f11'
            if back < len(out) - 1 and out[-1].value == "," and _has_its_own(out, back, tokens[at:]):
                out.append(token)  # 'a 10 mm tube, 50 mm': the lens's
                continue
            if (out[back].kind in HEADS or out[back].kind == "TAIL") and not stop_of_piece:
                del out[back + 1 :]
                out.append(token.as_("TAIL", implies=(token.kind,)))
                continue
        out.append(token)
    return out


def _lists(out: list[Token], at: int, token: Token) -> bool:
    """'tubes 7mm, 14mm and 28mm': one more length of a list behind a piece."""
    lengths = out[at].kind == "TAIL" and out[at].implies == ("LENGTH",) and token.kind == "LENGTH"
    while at > 0 and out[at].kind == "TAIL":
        at -= 1
    return lengths and out[at].kind == "PIECE"


def _has_its_own(out: list[Token], at: int, rest: list[Token]) -> bool:
    """Whether the piece at `at` has its length already, or is of a kind that has none: what follows is another's."""
    if rest[0].kind != "LENGTH" or [one.kind for one in rest[1:3]] == ["JOIN", "LENGTH"]:
        return False  # 'a 12 mm tube, 20 mm, 36 mm'
    tail = out[at].kind == "TAIL"
    while at > 0 and out[at].kind == "TAIL":
        if out[at].implies == ("LENGTH",):
            return False  # 'tubes 7mm, 14mm'
        at -= 1
    if out[at].kind != "PIECE":
        return False
    before = out[at - 1].kind if at else ""
    return tail or out[at].value in OPTICAL or before in ("LENGTH", "RANGE", "TIMES")


def _leads_on(tokens: list[Token], at: int) -> bool:
    """Whether the run of describing words from `at` on ends in a head of its own."""
    for token in tokens[at:]:
        if token.kind in HEADS or token.kind in ("KIND", "MOUNT", "NAMED", "STRANGE", "TRAIT"):
            return True
        if token.kind not in MODIFIERS:
            return False
    return False


def _joined(tokens: list[Token]) -> list[Token]:
    """Keep a join only between two descriptions; elsewhere it says nothing."""
    out: list[Token] = []
    for at, token in enumerate(tokens):
        if token.kind != "JOIN":
            out.append(token)
            continue
        if at + 1 < len(tokens) and tokens[at + 1].kind == "JOIN":
            continue  # ', and' is one join
        set_apart = len(out) > 1 and out[-2].kind == "AT"
        ends = (
            bool(out)
            and not set_apart
            and (out[-1].kind in HEADS or out[-1].kind in MODIFIERS or out[-1].kind == "TAIL")
        )
        after = tokens[at + 1] if at + 1 < len(tokens) else None
        begins = after is not None and (after.kind in HEADS or after.kind in MODIFIERS or after.kind == "PREP")
        out.append(token if ends and begins else token.as_("CUE"))
    return out


def _placed(tokens: list[Token]) -> list[Token]:
    """Keep a preposition only right before a description."""
    out: list[Token] = []
    for at, token in enumerate(tokens):
        after = tokens[at + 1] if at + 1 < len(tokens) else None
        begins = after is not None and (after.kind in HEADS or after.kind in MODIFIERS)
        if (token.kind == "PREP" and not begins) or (
            token.kind == "LINK" and not (out and out[-1].kind == "MOUNT" and after and after.kind == "MOUNT")
        ):
            out.append(token.as_("CUE"))
        else:
            out.append(token)
    return out
