"""A ring with what was done to it: so much thicker by the sheet under it, so much thinner by what was taken off."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Final

from engine.base.compact import replace
from grammar.kinds import FOCUS_VERDICT, MACRO_DISTANCE, SEATED, SHIM_CALIBRATION
from grammar.numbers.tilts_told import TILT
from grammar.questions import OFF, RING, Question, Thing
from grammar.readings.bench_work import SUMMED, Work, with_sheets_summed, work_of
from grammar.things.casting import SPACER
from grammar.turns.draw_set import with_draw_set
from grammar.turns.ring_asked_of import with_ring_asked_of
from grammar.turns.ring_on_top import with_ring_kept, with_ring_on_top
from grammar.turns.rings_as_told import with_rings_as_told
from grammar.turns.rings_each_told import with_rings_each_told
from grammar.turns.side_measured import with_side_measured
from grammar.turns.standing_ring import ASKS_CLOSE, ASKS_VERDICT, CUP, is_same_body, length_of
from grammar.turns.way_asked import with_way_held
from grammar.words.wordlist import WordList

_DEPTH: Final = "depth"
_HAS_ONLY: Final = "has-only"
_WHICH: Final = "which-sheet"
_REMEDY: Final = "remedy"
_SIZED: Final = (RING, CUP, SPACER)  # what sheet may lie under, the first that is there
_ANEW: Final = "sheet-anew"
_WORKED_ON: Final = SEATED | {SHIM_CALIBRATION, MACRO_DISTANCE}
_NUMBER: Final = re.compile(r"(?<![\w.])-?\d*\.?\d+")
_LENGTHS: Final = (
    "layer", "numbers", "length", "thickness", "mark", "shim", "thread", "at_hand", "extension", "total", "field",
    "readings", OFF, _DEPTH, "nominal",
)  # fmt: skip
_ERRORS: Final = ("thickness", "mark", "shim", "turns", "angle", "readings", "flange_to_image", "target")
_OF_INFINITY: Final = "infinity-alone"
_FEW: Final = 5  # words at most of what only asks again
_SHEETS: Final = "sheets-at-hand"
_THICKEST_SHEET: Final = 0.7  # mm
_SUPPOSED: Final = "supposed-so"
_NEEDED: Final = "shim-needed"
_NONE: Final = (0.0, 0.0, 0.0)


def with_ring_worked(got: Question, before: Question | None, words: WordList) -> Question:
    """'add 0.1 of tape under it' after a ring of 12.71 mm: one of 12.81 mm; 'tape off again': as it was.

    What lies under it is kept in `laid`, with what was taken out last.
    """
    if got.said(TILT) is not None:
        return got  # of a ring that is thicker on one side only
    got = with_sheets_summed(got, words)
    told = got if before is None else with_rings_each_told(got, before, words.groups)
    if told is not got:
        return told
    if before is not None and (sided := with_side_measured(got, before)) is not got:
        return sided
    got = got if before is None else with_ring_asked_of(got, before)
    got = got if before is None else with_draw_set(with_ring_kept(with_ring_on_top(got, before), before), before)
    got = with_rings_as_told(got, before, words)
    before = before if before is not None and got.follows else None
    if before is not None and (stock := _of_stock(got, before)) is not None:
        return stock
    lay, gone, one = before.laid if before is not None else _NONE
    # 'with the 0.2 i have' after what would set it right, 'only have 0.25' after which shim that is
    awaited = before is not None and before.intent == SHIM_CALIBRATION and bool(got.places(_HAS_ONLY))
    mended = awaited or (before is not None and before.topic == _REMEDY)
    work = work_of(got, words, lies=lay > 0 or mended)
    pieces = _told(got, work)
    fresh = bool(pieces)
    if fresh:
        lay = 0.0
    elif before is not None and before.intent in _WORKED_ON and _is_same_pair(got, before):
        left = got.adapters and set(got.adapters) < set(before.adapters) and _rings(got) == _rings(before)
        pieces = got.adapters if left else before.adapters  # 'tube out, tape off too'
    at = _place(pieces, got)
    if lay and at is not None and work.is_none and not fresh and got.places(_WHICH):
        ring = pieces[at]  # 'which shim would be right' after one that was put in: it takes the place of that
        thick = round(length_of(ring) + (lay if ring.piece == CUP else -lay), 4)
        bare = replace(ring, thickness_mm=(thick, thick), words=f"{thick:g} mm ring")
        return got.with_(
            intent=SHIM_CALIBRATION, topic=None, lenses=got.lenses or before.lenses if before else got.lenses,
            adapters=(*pieces[:at], bare, *pieces[at + 1 :]), laid=_NONE, values=got.rest(*_LENGTHS), number=None,
        )  # fmt: skip
    if at is None and work.amounts and not work.is_none:
        return _with_error(got, before, work, words.mentions)
    if work.is_none or at is None:
        held = before is not None and _rings(got) == _rings(before) and not fresh
        got = got.with_(laid=(lay, gone, one) if held else _NONE)
        return got.with_(intent=FOCUS_VERDICT) if held and work.is_none and _asks_again(got, before, words) else got
    by, under, gone = _changed(work, lay, gone, one, anew=work.instead or bool(got.places(_ANEW)))
    one = work.amounts[0] if work.laid else one
    if not by and not work.amounts:
        return got.with_(laid=(under, gone, one))
    ring = pieces[at]
    was = (ring.thickness_mm or (0.0,))[0]
    thick = round(was - by if ring.piece == CUP else was + by, 4)
    noun = "cup" if ring.piece == CUP else "tube" if ring.piece == SPACER else "ring"
    ring = replace(ring, thickness_mm=(thick, thick), words=f"{thick:g} mm {noun}")
    told = _with_things(got, before, work)
    return told.with_(
        intent=_asked(got, before, work), topic=None if before is not None else got.topic, laid=(under, gone, one),
        limits=got.limits if before is None else replace(got.limits, without=before.limits.without),
        adapters=(*pieces[:at], ring, *pieces[at + 1 :]), values=got.rest(*_LENGTHS), number=None,
    )  # fmt: skip


def with_shim_needed(got: Question, words: WordList) -> Question:
    """'om 50 on E needs a 0.25 shim': its seat is so much too close."""
    needed = next((one.number for one in got.places(_NEEDED) if one.number is not None), None)
    known = any(got.said(key) is not None for key in _ERRORS) or any(one.thickness_mm for one in got.adapters)
    if needed is None or known or not 0 < needed <= _THICKEST_SHEET or not got.lenses:
        return got
    pieces = tuple(one for one in got.adapters if one.piece != SPACER)
    values = (*got.rest(*_LENGTHS), ("thickness", f"{needed:g} mm"), (OFF, "too close"))
    changed = got.with_(intent=SHIM_CALIBRATION, topic=None, adapters=pieces, values=values)
    return with_way_held(changed, "too close", words.mentions)


def _of_stock(got: Question, before: Question) -> Question | None:
    """'my shim set has .01 .02 .05, what do i add' after a ring that was measured: sheets, and no readings of it."""
    told = [
        one
        for one in (got.said("readings") or "").split(", ")
        if one and got.said("readings") != before.said("readings")
    ]
    thin = all(0 < float(one.split(" ")[0]) <= _THICKEST_SHEET for one in told)
    if not told or not thin or not _rings(before) or not got.places(_SHEETS):
        return None
    values = (*got.rest(*_LENGTHS), ("layer", ", ".join(told)))
    return got.with_(
        intent=SHIM_CALIBRATION, topic=None, lenses=before.lenses, bodies=before.bodies, adapters=before.adapters,
        values=values, laid=before.laid,
    )  # fmt: skip


def _asks_again(got: Question, before: Question | None, words: WordList) -> bool:
    """'now?', 'infinity', 'so does it reach' after what was done to a ring of a known length: whether it does."""
    if before is None or not before.intent == got.intent == SHIM_CALIBRATION or not _rings(got):
        return False
    few = len(got.text.split()) <= _FEW and got.values == before.values
    digits = any(sign.isdigit() for sign in got.text)
    done = not work_of(before, words).is_none and not digits and bool(got.places(ASKS_VERDICT))
    return few and (done or bool(got.places(_OF_INFINITY)))


def _changed(work: Work, lay: float, gone: float, one: float, anew: bool) -> tuple[float, float, float]:
    """By how much the ring is thicker now, what lies under it then, and what was taken out last."""
    if work.out and lay:
        return work.laid - lay - work.cut, work.laid, lay
    if work.back and gone and not lay:
        return gone, gone, 0.0
    if work.times and lay:
        return (one or lay) * work.times - lay, (one or lay) * work.times, gone
    if anew and work.laid:
        return work.laid - lay - work.cut, work.laid, lay
    return work.laid - work.cut, lay + work.laid, gone


def _with_error(got: Question, before: Question | None, work: Work, phrases: Mapping[str, tuple[str, ...]]) -> Question:
    """'LTM to E ring with 0.15 of tape, infinity?': a ring of no told length, taken as cut right, is off by so much."""
    intent = _asked(got, before, work)
    intent = FOCUS_VERDICT if intent == SHIM_CALIBRATION and got.places(_SUPPOSED) else intent
    pair = any(one.ids for one in got.lenses) and any(one.ids for one in got.bodies)
    amounts = {f"{one:g} mm" for one in work.amounts}
    told = {got.said(key) for key in _ERRORS} - {None}
    known = got.distance_mm is not None or bool(told - amounts)  # what was taken off is the error itself
    known = known or (before is not None and any(before.said(key) is not None for key in _ERRORS))
    by = round(work.laid - work.cut, 4)
    rings = all(one.piece == RING and length_of(one) in {0.0, *work.amounts} for one in got.adapters)
    if intent != FOCUS_VERDICT or not pair or known or not by or not rings:
        return got.with_(laid=(work.laid, 0.0, 0.0) if got.places(SUMMED) and not known else _NONE)
    way = "too far out" if by > 0 else "too close"
    pieces = tuple(one for one in got.adapters if one.piece == RING) or (Thing(words="adapter", piece=RING),)
    pieces = tuple(replace(one, thickness_mm=None) for one in pieces)
    values = (*got.rest(*_LENGTHS), ("thickness", f"{abs(by):g} mm"), (OFF, way))
    changed = _with_things(got, before, work).with_(
        intent=intent, adapters=pieces, values=values, laid=(work.laid, 0.0, 0.0), number=None
    )
    return with_way_held(changed, way, phrases)


def _told(got: Question, work: Work) -> tuple[Thing, ...]:
    """The pieces that this text tells the lengths of, without what is only the sheet; none where it tells none."""
    written = {float(one) for one in _NUMBER.findall(got.text)}
    sheets = {*work.amounts, work.laid, work.cut}
    pieces = tuple(_deep(one, got) for one in got.adapters)
    pieces = tuple(one for one in pieces if not (one.is_of_one_length and length_of(one) in sheets))
    pieces = tuple(one for one in pieces if one.factor is None or one.factor not in sheets)  # '+ 0.5 shim'
    kinds = (RING, CUP) if any(one.piece in (RING, CUP) for one in pieces) else _SIZED
    told = [one for one in pieces if one.piece in kinds and one.is_of_one_length and length_of(one) in written]
    return pieces if told else ()


def _deep(piece: Thing, got: Question) -> Thing:
    """A cup with the depth that was told beside it."""
    told = _NUMBER.match(got.said(_DEPTH) or "")
    if piece.piece != CUP or piece.thickness_mm is not None or told is None:
        return piece
    return replace(piece, thickness_mm=(float(told[0]), float(told[0])), words=f"{told[0]} mm cup")


def _rings(question: Question) -> list[tuple[float, float] | None]:
    return [one.thickness_mm for one in question.adapters if one.piece in (RING, CUP)]


def _is_same_pair(got: Question, before: Question) -> bool:
    """Whether the ring of before still stands between the same two mounts."""
    lenses = [one.ids for one in got.lenses if one.ids] in ([], [one.ids for one in before.lenses])
    return is_same_body(got, before) and lenses


def _place(pieces: tuple[Thing, ...], got: Question) -> int | None:
    """Which of the pieces it is done to: the one that is named, else the last of those whose length is known."""
    for kind in _SIZED:
        sized = [n for n, one in enumerate(pieces) if one.piece == kind and one.is_of_one_length]
        named = {(one.front, one.rear) for one in got.adapters if one.front and one.rear}
        meant = [n for n in sized if (pieces[n].front, pieces[n].rear) in named]
        if meant or sized:
            return (meant or sized)[-1]
    return None


def _with_things(got: Question, before: Question | None, work: Work) -> Question:
    """The question without a lens or a stop that was only made of how thick the sheet is."""
    if before is None:
        return got
    focals = {one.focal_length_mm for one in got.lenses} - {one.focal_length_mm for one in before.lenses} - {None}
    misread = not got.lenses or bool(focals & {*work.amounts})
    stop = got.f_number if got.f_number not in work.amounts else before.f_number
    return got.with_(
        lenses=before.lenses if misread else got.lenses, bodies=got.bodies or before.bodies, f_number=stop,
        distance_mm=None if before.distance_mm is None else got.distance_mm,
    )  # fmt: skip


def _asked(got: Question, before: Question | None, work: Work) -> str:
    """Whether it still reaches, where that is asked, or was and this only supposes; else what is left of the error."""
    if before is None:
        return got.intent
    if got.places(ASKS_VERDICT):
        return FOCUS_VERDICT
    if got.intent == MACRO_DISTANCE and got.places(ASKS_CLOSE):
        return got.intent
    return FOCUS_VERDICT if before.intent in SEATED and not work.cut else SHIM_CALIBRATION
