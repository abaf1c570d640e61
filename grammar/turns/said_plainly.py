"""Words that mean something only after the question before, said plainly and heard anew.

'take the tube off' after a tube is 'without the tube', 'and inside?' after an exposure 'and indoors?'.
"""

from __future__ import annotations

from typing import Final

from grammar.hearing import Heard, hear
from grammar.kinds import (
    BUY_PLAN,
    CHAIN,
    EXPOSURE_ND,
    FOCUS_VERDICT,
    HAZARD,
    LOOK_ALIKE,
    MACRO_DISTANCE,
    WHY,
)
from grammar.questions import RING, Question
from grammar.things.letters_by_numbers import ARTICLES
from grammar.turns.answer_told import RIGHT, told_as
from grammar.turns.engraved_now import engraved_now
from grammar.turns.glass_joined import plate_again
from grammar.turns.metered_bare import metered_bare
from grammar.turns.nearest_told import nearest_told
from grammar.turns.others_on_ring import others_on_ring
from grammar.turns.picture_plainly import (
    crop_of_frame,
    field_wanted,
    filter_more,
    fronts_again,
    native_again,
    native_speed,
    scene_there,
)
from grammar.turns.ring_of_one import ring_of_one, ring_owned, shimmed_ring
from grammar.turns.rings_for_it import ring_of_length
from grammar.turns.size_again import size_again
from grammar.turns.spaced_by import draw_again, drawn_by, spaced_by
from grammar.turns.tube_is import opens_to, tube_is
from grammar.turns.view_plainly import (
    crop_body,
    deep_at,
    frame_of_body,
    glass_told,
    light_without,
    looks_on_full,
    lost_by_glass,
    of_full_frame,
)
from grammar.words.groups import (
    AWAY,
    DOER,
    GONE,
    INSIDE,
    MADE,
    TAKEN_AWAY,
    TAKEN_OFF,
)
from grammar.words.lexicon import Lexicon
from grammar.words.tokens import Token

_WITHOUT: Final = "without"
_PLACING: Final = frozenset([CHAIN, FOCUS_VERDICT, HAZARD, WHY, BUY_PLAN, MACRO_DISTANCE, LOOK_ALIKE])
_SAME_MM: Final = 0.06
_NAMED: Final = frozenset(["PIECE", "ADAPTER", "NUMBER", "LENGTH", "TIMES", "ND", "FOCAL", "UNKNOWN"])
_AROUND: Final = frozenset(["DET", "LETTER", "FILLER", "JOIN", "STOP", "MARK", "VERB", "CUE", "PREP"])
_HEADS: Final = frozenset(["LENS", "BODY", "MOUNTWORD", "NUMBER"])
_ASKED: Final = ("how", "which", "exposure")
_GOING: Final = frozenset([TAKEN_AWAY, TAKEN_OFF, AWAY, GONE])
_BE: Final = "be"
_NOT: Final = "not"  # of 'not' and 'forget the'
_NO: Final = "no"
_THAT: Final = ("it", "that")
_OF_ONE: Final = ("harm-word", "why", "why-not")  # 'why not the FD' asks of just that one
_FEWEST: Final = 4  # words of 'make it a 135'
_LETTER_ALONE: Final = "a"  # which is an article here
_ALONE: Final = frozenset(["LETTER", "NUMBER", "LENGTH"])  # what alone is no lens yet


def said_plainly(heard: Heard, before: Question, lexicon: Lexicon) -> Heard:
    """The line heard anew in plain words; the same where it holds none that the question before gives a meaning."""
    ways = (
        engraved_now,
        nearest_told, ring_of_one, shimmed_ring, ring_owned, tube_is, opens_to, others_on_ring, size_again,
        metered_bare, light_without, draw_again, drawn_by,
        ring_of_length, _ring_left, _taken_off, _left_out, _inside, crop_body,
        frame_of_body, spaced_by, field_wanted, native_again, fronts_again, filter_more, native_speed, scene_there,
        crop_of_frame, _made,
        deep_at, plate_again, glass_told, lost_by_glass, of_full_frame, looks_on_full,
    )  # fmt: skip
    text = next((told for way in ways if (told := way(heard, before)) is not None), None)
    if text is None:
        return heard
    return hear(text, lexicon, before.intent)


def _taken_off(heard: Heard, before: Question) -> str | None:
    """'take the 2x out', 'lose the tube', 'tube off' after a piece that stands between: without it."""
    tokens, rest = _first_clause(heard)
    verb = next((at for at, one in enumerate(tokens) if {TAKEN_OFF, TAKEN_AWAY} & set(one.groups)), None)
    off = next((at for at, one in enumerate(tokens) if AWAY in one.groups), None)
    none = verb is None and len(tokens) > 1 and tokens[0].text.casefold() == _NO and _is_piece(tokens, before)
    verb = 0 if none else verb  # 'no reducer'
    surely = verb is not None and (none or TAKEN_AWAY in tokens[verb].groups)
    led = tokens[:verb] if verb is not None else ()
    is_so = verb is None and off is not None and off > 0 and tokens[off - 1].value == _BE  # 'which one is off'
    asked = is_so or any(heard.tells(cue) for cue in _ASKED)  # 'does that 36 lose light'
    asks = asked or any(DOER in one.groups for one in led)  # 'what do i lose with the 2x'
    if not before.adapters or not (surely or off is not None) or asks or (heard.tells("drawn-out") and not surely):
        return None
    named = [at for at, one in enumerate(tokens) if one.kind in _NAMED]
    if verb is not None and not named and len(before.adapters) == 1 and _is_it_alone(tokens, verb, off):
        kind = before.adapters[0].piece or ""
        return f"{_WITHOUT} the {kind.replace('-', ' ')}{rest}" if rest and kind not in ("", RING) else None
    if not named or (verb is None and (off is None or off < named[-1])) or not _is_plain(tokens, verb, off):
        return None
    said = tokens[named[0] : named[-1] + 1]
    start, end = said[0].column - 1, said[-1].end or said[-1].column - 1 + len(said[-1].text)
    return f"{_WITHOUT} the {heard.text[start:end]}{rest}"


def _is_piece(tokens: tuple[Token, ...], before: Question) -> bool:
    """'no reducer', 'no 10 mm' after a tube of so much; 'no 2.0' puts another number right."""
    token = tokens[1]
    if token.kind not in ("NUMBER", "LENGTH", "TIMES") or any(one.kind in _NAMED for one in tokens[2:]):
        return token.kind in _NAMED
    told = [end for one in before.adapters for end in (*(one.thickness_mm or ()), one.factor)]
    return token.numbers[0] in told


def _is_it_alone(tokens: tuple[Token, ...], verb: int, off: int | None) -> bool:
    """'drop it', 'take that off'."""
    rest = [
        one for at, one in enumerate(tokens) if at not in (verb, off) and one.kind not in ("STOP", "FILLER", "JOIN")
    ]
    return len(rest) == 1 and rest[0].text.casefold() in _THAT


def _first_clause(heard: Heard) -> tuple[tuple[Token, ...], str]:
    """The words up to the first comma, and the text from there where it asks: 'take the tube off, equiv'."""
    tokens = heard.line.tokens
    at = next((n for n, one in enumerate(tokens) if n and (one.text in (",", ":", ";") or one.kind == "STOP")), None)
    if at is None or not any(one.column > tokens[at].column for one in heard.cues):
        return tokens, ""
    return tokens[:at], heard.text[tokens[at].column - 1 :]


def _ring_left(heard: Heard, before: Question) -> str | None:
    """'and if i leave the 5 out', 'skip the ring', 'without it?' after a lens on a body: with nothing that seats it."""
    tokens = [one for one in heard.line.tokens if one.kind not in ("STOP", "MARK")]
    placed = before.intent in _PLACING and any(one.ids for one in before.lenses) and before.bodies
    verb = next((at for at, one in enumerate(tokens) if one.value == _WITHOUT or TAKEN_AWAY in one.groups), None)
    away = next((at for at, one in enumerate(tokens) if AWAY in one.groups), None)
    taken = next((at for at, one in enumerate(tokens) if TAKEN_OFF in one.groups), None)
    verb = taken if verb is None and away is not None else verb
    if not placed or verb is None or heard.tells("retract") or any(heard.tells(cue) for cue in _ASKED):
        return None
    named = [one for at, one in enumerate(tokens) if at not in (verb, away) and one.kind not in _AROUND]
    it = not named and any(one.text.casefold() in _THAT for one in tokens[verb + 1 :]) and not before.adapters
    ring = it or (bool(named) and all(_is_ring_told(one, before) for one in named))
    idle = all(one.kind in _AROUND or one in named or at in (verb, away) for at, one in enumerate(tokens))
    return f"{_WITHOUT} the ring" if ring and idle else None


def _is_ring_told(token: Token, before: Question) -> bool:
    """Whether it is the ring that the answer told, by its word or how thick it is."""
    right = [value for turn in (before, before.prior) if turn is not None for value in told_as(turn, RIGHT)]
    own = [end for piece in before.adapters if piece.thickness_mm for end in piece.thickness_mm]
    if token.may_be_mm:
        return token.numbers[0] not in own and any(abs(token.numbers[0] - one) < _SAME_MM for one in right)
    return (token.kind == "ADAPTER" or (token.kind == "PIECE" and token.value == RING)) and bool(right)


def _left_out(heard: Heard, before: Question) -> str | None:
    """'not the Z', 'i sold the FD', 'without the K', 'not the 28' after several: without that one."""
    tokens = heard.line.tokens
    goes = [one for one in tokens if _goes(one)]
    named = [one for one in tokens if (one.ids and one.text.casefold() not in ARTICLES) or _is_focal(one, before)]
    mounted = [one for one in named if any(set(one.ids) & ids for ids in _several(before))]
    if any(map(heard.tells, _OF_ONE)) or not goes or len(named) != 1 or not (mounted or _is_focal(named[0], before)):
        return None
    if not all(one in named or one.kind in _AROUND | _HEADS or _goes(one) for one in tokens):
        return None
    if goes[0].value == _WITHOUT and named[0].kind not in _ALONE:
        return None  # as plain as can be
    lens = " lens" if not any(set(named[0].ids) & set(body.ids) for body in before.bodies) else ""
    return f"{_WITHOUT} the {named[0].text}{lens if named[0].kind in _ALONE else ''}"


def _goes(token: Token) -> bool:
    return bool(_GOING & set(token.groups)) or token.value in (_NOT, _WITHOUT) or token.text.casefold() == _NO


def _is_focal(token: Token, before: Question) -> bool:
    """Whether it is the focal length of one of several lenses."""
    focals = {lens.focal_length_mm for lens in before.lenses} if len(before.lenses) > 1 else set()
    return token.kind in ("NUMBER", "LENGTH") and bool(token.numbers) and token.numbers[0] in focals


def _several(before: Question) -> list[set[str]]:
    """The mounts of the lenses, and of the bodies, where there are several."""
    sides = ([id_ for one in things for id_ in one.ids] for things in (before.lenses, before.bodies) if len(things) > 1)
    return [set(ids) for ids in sides]


def _is_plain(tokens: tuple[Token, ...], verb: int | None, off: int | None) -> bool:
    """Whether nothing beside the piece, and that it goes, is told."""
    return all(
        at in (verb, off) or one.kind in _NAMED or (one.kind in _AROUND and not one.ids) or one.text == _LETTER_ALONE
        for at, one in enumerate(tokens)
    )


def _inside(heard: Heard, before: Question) -> str | None:
    """'and inside?' after an exposure: in a lit room."""
    tokens = [one for one in heard.line.tokens if one.kind not in ("STOP", "MARK", "JOIN")]
    told = [one for one in tokens if INSIDE in one.groups]
    alone = len(told) == 1 and all(one in told or one.kind in ("FILLER", "CUE", "VERB", "PREP") for one in tokens)
    if before.intent != EXPOSURE_ND or not alone or "light" in heard.readings.values:
        return None
    start = told[0].column - 1
    return f"{heard.text[:start]}indoors{heard.text[start + len(told[0].text) :]}"


def _made(heard: Heard, _: Question) -> str | None:
    """'make it a 135', 'make that the Z': what is put in another's place, and nothing that is to be made."""
    tokens = [one for one in heard.line.tokens if one.kind not in ("MARK", "FILLER")]
    if len(tokens) < _FEWEST or MADE not in tokens[0].groups or tokens[1].text.casefold() not in _THAT:
        return None
    article = tokens[2].kind == "DET" or tokens[2].text.casefold() in ARTICLES
    return heard.text[tokens[2].column - 1 :] if article else None
