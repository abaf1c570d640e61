"""A shim that is put in, or taken out, after by how much a seat is off: what is left of the error then."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Final

from engine.base.compact import replace
from grammar.kinds import FOCUS_VERDICT, SHIM_CALIBRATION
from grammar.questions import OFF, RING, Question
from grammar.readings.bench_work import times_of
from grammar.things.casting import SPACER
from grammar.turns.answer_told import ERROR, ERROR_IF_MEANT, told_as
from grammar.turns.way_asked import with_way_held
from grammar.words.mentioned import Mention
from grammar.words.wordlist import WordList

_IN: Final = "shim-in"
_OUT: Final = "shim-out"
_HAS_ONLY: Final = "has-only"
_ONE_OUT: Final = "one-out"  # one of several that were put in
_MORE: Final = "so-much-more"
_PUT: Final = "what-is-put-under"
_REMEDY: Final = "remedy"
_UNTOUCHED: Final = "as-it-was"  # that the ring is meant as it was before
_ASKED: Final = "how-many-asked"
_METHOD: Final = "method-asked"
_SEATED: Final = frozenset([SHIM_CALIBRATION, FOCUS_VERDICT])
_EXTENSION: Final = "extension"
_NUMBER: Final = re.compile(r"(?<![\w./])\d*\.?\d+(?![\w/]*\d)")
_POINT_OR_UNIT: Final = re.compile(r"\.\d|\d ?mm")
_STOPS: Final = ("stops-at", "ends-at", "no-farther")
_BEFORE: Final = "before-shims"
_LARGEST_ERROR: Final = 3.0  # mm; what is longer is a ring
_MOST_WRONG: Final = 15.0  # mm, where it is told right by these words
_THICKEST: Final = 2.0  # mm, of a shim
_LENGTHS: Final = frozenset(["layer", "numbers", "length", "thickness", "mark", "shim", "thread", "at_hand", OFF])
_SIZES: Final = ("thickness", "length", "layer")  # keys under which a length told in words may have been read
_CLOSE: Final = frozenset(["too close", "too thin", "too short", "thinner"])


def with_shim_put(got: Question, before: Question, words: WordList) -> Question:
    """'i put a 0.1 shim in' after 0.15 mm too close: 0.05 mm is left, or a ring that was measured is so much thicker.

    'put three 0.1 in' puts in three times as much, and 'take one out' after it a third of that away.
    """
    phrases = words.mentions
    got = _with_mark_anew(got, before)
    as_it_was = _as_it_was(got, before, phrases)
    if as_it_was is not None:
        return as_it_was
    spaced = _with_spacer(got, before, phrases)
    if spaced is not None:
        return spaced
    if got.follows and before.laid[2] and got.places(_ONE_OUT) and before.intent in _SEATED:
        return _by(got, before, -before.laid[2], before.laid[2], phrases)
    sizes = [float(one) for one in _NUMBER.findall(got.text) if _POINT_OR_UNIT.search(got.text)]
    sizes = sizes or _in_words(got, before)
    outs = got.places(_OUT)
    ins = [one for one in got.places(_IN) if not any(of.at <= one.at and one.end <= of.end for of in outs)]
    only = bool(got.places(_HAS_ONLY)) and got.said("layer") is None  # 'only have 0.2': that is put in
    put, out = bool(ins) or only, bool(outs)  # 'another 0.2 off' puts nothing in
    if _is_more_of_it(got, before):
        put, out = bool(before.places(_IN)), bool(before.places(_OUT))  # 'and 0.05 more' after so much was lapped off
        done = Mention(_IN if put else _OUT, len(got.text) + 1, len(got.text) + 2)
        got = got.with_(mentioned=(*(one for one in got.mentioned if one.key not in (_IN, _OUT)), done))
    seated = before.intent in _SEATED or before.topic == _REMEDY  # 'and to fix that'
    told = got.follows and seated and put != out and len(sizes) == 1
    told = told and not got.places(_METHOD)  # 'how do i take 0.2 off' has taken nothing off yet
    told = told and not got.places(_ASKED)  # 'with tape of 0.05 how many layers': of what is still to be put in
    if not told or not 0 < sizes[0] <= _THICKEST or _tells_more(got, before):
        return got
    times = max((times_of(got.text[: one.start()], words) for one in _NUMBER.finditer(got.text)), default=0) or 1
    size = times * (sizes[0] if put else -sizes[0])
    return _by(got, before, size, sizes[0], phrases)


def _by(got: Question, before: Question, size: float, one: float, phrases: Mapping[str, tuple[str, ...]]) -> Question:
    """The ring of before so much thicker, or what is then left of its error. `one`: how thick each sheet is."""
    laid = (round(before.laid[0] + size, 4), 0.0, one) if before.laid[0] + size > 0 else (0.0, 0.0, 0.0)
    rest = got.rest(*_LENGTHS)
    rings = before.adapters
    ring = (rings[0].thickness_mm or _ring_told(before)) if len(rings) == 1 and rings[0].piece == RING else None
    if ring is not None and ring[0] == ring[1]:
        thick = round(ring[0] + size, 4)
        pieces = (replace(rings[0], words=f"{thick:g} mm ring", thickness_mm=(thick, thick)),)
        kind = SHIM_CALIBRATION
        return got.with_(
            intent=kind, topic=None, lenses=before.lenses, bodies=before.bodies, adapters=pieces, values=rest,
        )  # fmt: skip
    error = _error(before)
    if error is None:
        return got
    return _left(got, before, round(error + size, 4), phrases).with_(laid=laid)


def _left(got: Question, before: Question, left: float, phrases: Mapping[str, tuple[str, ...]]) -> Question:
    """The ring of before with so much of its error left, mm; with none it is judged as it should be."""
    way = "too close" if left < 0 else "too far out" if left > 0 else ""
    values = (("thickness", f"{abs(left):g} mm"), (OFF, way)) if left else ()
    changed = got.with_(
        intent=SHIM_CALIBRATION if left else FOCUS_VERDICT, topic=None, lenses=before.lenses, bodies=before.bodies,
        adapters=before.adapters, values=(*got.rest(*_LENGTHS), *values), distance_mm=None,
    )  # fmt: skip
    return with_way_held(changed, way, phrases)


def _with_spacer(got: Question, before: Question, phrases: Mapping[str, tuple[str, ...]]) -> Question | None:
    """'and with a 2 mm spacer under it?' after a ring 2 mm too thin: none of that is left.

    Of a longer tube, how near is asked, it is so much less.
    """
    error = _error_told(before)
    tubes = [one for one in got.adapters if one.piece == SPACER and one not in before.adapters]
    sized = [one for one in before.adapters if one.thickness_mm is not None]
    same = got.lenses in ((), before.lenses) and got.bodies in ((), before.bodies)
    if error is None or len(tubes) != 1 or not tubes[0].is_of_one_length or sized or not (same and got.follows):
        return None
    left = round((tubes[0].thickness_mm or (0.0,))[0] + error, 4)
    if left <= _LARGEST_ERROR or got.intent == FOCUS_VERDICT:
        asked = SHIM_CALIBRATION if before.intent == SHIM_CALIBRATION else FOCUS_VERDICT
        return _left(got, before, left, phrases).with_(intent=asked)
    if error > 0:
        return None  # it is added to the tube as it is
    size = (tubes[0].thickness_mm or (0.0,))[0]
    told = (("thickness", f"{-error:g} mm"), (OFF, "too close"), (_EXTENSION, f"{size:g} mm"))
    return with_way_held(
        got.with_(adapters=before.adapters, values=(*got.rest(*_LENGTHS, _EXTENSION), *told)), "too close", phrases
    )


def _is_more_of_it(got: Question, before: Question) -> bool:
    """Whether so much more is told of what was done to the ring before, and not what is done."""
    worked = bool(before.places(_IN)) != bool(before.places(_OUT))
    return worked and bool(got.places(_MORE)) and not any(map(got.places, (_PUT, _OUT)))


def _as_it_was(got: Question, before: Question, phrases: Mapping[str, tuple[str, ...]]) -> Question | None:
    """'as it was, would f8 hide it' after 0.1 mm was taken off: with the ring, or the error, of before that."""
    prior = before.prior
    worked = bool(before.places(_IN)) != bool(before.places(_OUT)) and before.intent in _SEATED
    if prior is None or not worked or not got.follows or not got.places(_UNTOUCHED):
        return None
    rest = tuple(row for row in got.values if row[0] not in _LENGTHS)
    if any(one.thickness_mm is not None for one in prior.adapters):
        return got.with_(adapters=prior.adapters, values=rest)
    error = _error(prior)
    if error is None:
        return None
    way = "too close" if error < 0 else "too far out"
    values = (*rest, ("thickness", f"{abs(round(error, 4)):g} mm"), (OFF, way))
    return with_way_held(got.with_(adapters=before.adapters, values=values), way, phrases)


def _in_words(got: Question, before: Question) -> list[float]:
    """'sanded off a tenth', 'took two tenths off': the length that is told now, where no figure is."""
    if any(sign.isdigit() for sign in got.text):
        return []
    told = {got.said(key) for key in _SIZES if got.said(key) not in (None, before.said(key))}
    found = [_NUMBER.match(one or "") for one in told]
    return [float(one[0]) for one in found if one is not None]


def _ring_told(before: Question) -> tuple[float, float] | None:
    """'my ring is too thick, 28.15': what is longer than any error is the ring itself."""
    told = _NUMBER.match(before.said("thickness") or "")
    return (float(told[0]), float(told[0])) if told is not None and float(told[0]) > _LARGEST_ERROR else None


def _with_mark_anew(got: Question, before: Question) -> Question:
    """'now its at 10 m' after an error in mm: where infinity falls now is what counts, and not that error."""
    kept = got.said("thickness") == before.said("thickness") is not None
    anew = _tells_more(got, before) and got.intent == before.intent == SHIM_CALIBRATION and kept
    if not (got.follows and anew and before.said(OFF) is not None):
        return got
    return got.without("thickness", OFF)


def _tells_more(got: Question, before: Question) -> bool:
    """Whether where infinity falls, or how far it focuses, is told anew."""
    return got.said("mark") != before.said("mark") or got.distance_mm not in (None, before.distance_mm)


def _error_told(before: Question) -> float | None:
    """By how much a ring is off by its maker's word, mm: '10 too thin' is more than any shim makes up."""
    size = _NUMBER.match(before.said("thickness") or "")
    if size is None or before.off_word is None:
        return None
    if float(size[0]) <= _LARGEST_ERROR:
        return _error(before)
    by = re.search(rf"\b{float(size[0]):g} ?(mm )?too ", before.text.casefold())
    if by is None or float(size[0]) > _MOST_WRONG:
        return None
    return -float(size[0]) if before.off_word in _CLOSE else float(size[0])


def _error(before: Question) -> float | None:
    """By how much it was off before, mm, above 0 too far out."""
    size = _NUMBER.match(before.said("thickness") or "")
    if size is None or before.off_word is None or float(size[0]) > _LARGEST_ERROR:
        error = _of_answer(before, ERROR)
        error = _by_where_it_stops(before) if error is None else error
        error = error if error is not None or before.prior is None else _by_where_it_stops(before.prior)
        # where infinity fell before the sheets that lie there
        return error + before.laid[0] if error is not None and before.places(_BEFORE) else error
    return -float(size[0]) if before.off_word in _CLOSE else float(size[0])


def _by_where_it_stops(before: Question) -> float | None:
    """By how much too far out a lens sits that stops at a distance on a ring that was not measured, mm."""
    if not any(map(before.places, _STOPS)) or before.adapters:
        return None
    error = _of_answer(before, ERROR_IF_MEANT)
    return error if error is not None and 0 < error <= _LARGEST_ERROR else None


def _of_answer(before: Question, name: str) -> float | None:
    """What the answer before told of that quantity, mm."""
    return next(iter(told_as(before, name)), None)
