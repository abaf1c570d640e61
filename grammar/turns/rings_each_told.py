"""One of several rings of a talk measured anew, or all made thinner: 'the second is really 11.9', 'the p6 one is 27.8'.

The others stay as they stood. Which one is meant is told by its place, by a mount it was named by, or as 'the other'.
"""

from __future__ import annotations

import re
from typing import Final

from engine.base.compact import replace
from grammar.kinds import FOCUS_VERDICT, MACRO_DISTANCE, SEATED, SHIM_CALIBRATION
from grammar.questions import OFF, RING, Question, Thing
from grammar.things.casting import SPACER
from grammar.turns.standing_ring import ASKS_CLOSE, CUP, are_named, is_other_body, length_of

_OF_SEAT: Final = SEATED | {SHIM_CALIBRATION}
_REMEDY, _FLAT = "remedy", "no-recess"
_STEP: Final = "step-ring"
_PIECES: Final = (RING, CUP, SPACER, _STEP)
_LIPLESS: Final = re.compile(r"\b(?:without (?:a |the |its |any )?(?:lip|rim)|lipless|no lip|not lipped|flush)\b")
_ONE_OUT: Final = re.compile(
    r"\bone (?:of (?:them|those) )?(?:out|off|gone|removed)\b|\bwithout one\b|\bonly one\b|\bjust one\b"
)
_ALL_OUT: Final = re.compile(
    r"\b(?:both|all|them|either) (?:of them )?(?:out|off|gone|removed)\b|\bwithout (?:both|either|them)\b"
)
_THIN_MM: Final = 3.0  # of a washer or shim
_LIP_MM: Final = 6.0  # a bush between two screws is hardly thicker
_SUM: Final = re.compile(
    r"\b(?:come|comes|adds?|add) (?:it |that |they )?(?:all )?(?:to|up)\b|\b(?:sum|in total|total|in all|altogether)\b"
    r"|\bcancel|\b(?:even|balance) out\b"
)
_WHOLE: Final = re.compile(r"(\d+(?:\.\d+)?)(?: mm)?")
_CLAUSES: Final = re.compile(r"[,;]\s|\.\s|\band\b|\bbut\b|\bwhile\b")
_FINE: Final = re.compile(r"(?<![\w./-])(\d*\.\d+|\d+(?= ?mm\b))(?: ?mm)?(?![\w/])")
_PLACES: Final = (
    (re.compile(r"\b(?:first|1st|front|lens side|lens-side)\b"), 0),
    (re.compile(r"\b(?:second|2nd)\b"), 1),
    (re.compile(r"\b(?:third|3rd)\b"), 2),
    (re.compile(r"\b(?:last|rear|back|body side|camera side|body-side|camera-side)\b"), -1),
)
_LENGTH_WORDS: Final = (
    (re.compile(r"\b(?:thin|thinner|thinnest|short|shorter|small|smaller) (?:one|ring|adapter)\b"), 0),
    (re.compile(r"\b(?:thick|thicker|thickest|long|longer|big|bigger) (?:one|ring|adapter)\b"), -1),
)
_BACK: Final = re.compile(
    r"\b(?:to|on|with|and|about) the (?:first|other|earlier|previous|old|one before)(?: (?:one|ring|adapter))?\b"
)
_OTHER: Final = re.compile(r"\b(?:other)\b")
_EACH: Final = re.compile(r"\b(?:both|each|all)\b")
_BY: Final = re.compile(r"\b(thinner|shorter|thicker|longer|thick|thin|over|under|off)\b")
_LESS: Final = frozenset(["thinner", "shorter", "thin", "under", "off"])
_TOO: Final = re.compile(r"\btoo\b|\bif both are\b")
_OFF_BY: Final = re.compile(
    r"\b(?:too|over|under|oversize|undersize|off)\b|(?:short|thin|thick|long)(?:er)?\b(?! (?:one|ring))"
)
_LAPPED: Final = re.compile(r"\b(?:file|filed|sand|sanded|lap|lapped|turn|turned|cut|shave|shaved|mill|milled)\b")
_REMADE_MM: Final = 0.75  # and one that is not pointed at
_WIDTHS: Final = re.compile(r"\b(?:m ?)?\d\d ?(?:-|to|/) ?(?:m ?)?\d\d\b", re.IGNORECASE)
_FEW: Final = 8  # words of a line that asks for a sum
_NEAR_MM: Final = 1.5  # so much at most does a ring differ from what it was told to be
_LENGTHS: Final = ("numbers", "thickness", "length", "nominal", "total", "thread", "mark", "field", OFF)
_WORDS: Final = re.compile(r"[a-z]+\d*|\d+[a-z]+")
_IDLE: Final = frozenset(
    ["mm", "ring", "adapter", "tube", "the", "a", "an", "to", "and", "my", "one", "it", "is", "on"]
)


def with_rings_each_told(got: Question, before: Question) -> Question:
    """The question with all rings of before, those of them changed that the text tells of; as it was where none is."""
    if got.number is not None and got.said("thickness") is not None and got.off_word is not None:
        got = got.with_(number=None)  # 'first one came out 0.1 too thick': a ring, and no way that was listed
    if got.intent == MACRO_DISTANCE and before.intent in _OF_SEAT and _is_sheeted(got) and not got.places(ASKS_CLOSE):
        got = got.with_(intent=FOCUS_VERDICT)  # 'two of them in fact' after a washer in a ring
    if got.topic == _REMEDY and got.places(_FLAT):
        got = got.with_(intent=FOCUS_VERDICT, topic=None, number=None)  # 'cheap ones are dead flat, what then'
    got = _exchanged(got, before)
    stood = before.adapters
    joined = _bush_joined(got, before)
    if joined is not None:
        return joined
    back = _back_on(got, before)
    if back is not None:
        return back
    rings = [n for n, one in enumerate(stood) if one.piece in _PIECES and (one.is_of_one_length or _joins(one))]
    seated = before.intent in SEATED | {SHIM_CALIBRATION} and are_named(before.lenses) and are_named(before.bodies)
    if len(rings) < 2 or not seated or len(before.lenses) > 1 or is_other_body(got, before):
        return got
    text = got.text.casefold()
    alone = got.adapters[0].thickness_mm if len(got.adapters) == 1 and not _joins(got.adapters[0]) else None
    whole = _WHOLE.fullmatch(got.said("total") or got.said("numbers") or "")
    alone = (float(whole[1]), float(whole[1])) if whole is not None and got.adapters == stood else alone  # 'make it'
    changed = _without_lip(text, stood) or _all_by(text, stood, rings) or _sheet_out(text, stood)
    changed = changed or _each(text, stood, rings, before, alone) or _summed(text, stood, rings)
    if not changed and _names_one(got, stood, rings):
        return got.with_(adapters=stood, lenses=got.lenses or before.lenses, bodies=before.bodies, number=None)
    if not changed:
        return got
    lenses = got.lenses if len(got.lenses) == 1 and are_named(got.lenses) and got.lenses[0].focal_length_mm else ()
    own = [one.ids for one in before.lenses] == [one.ids for one in lenses]
    return got.with_(
        intent=got.intent if got.intent == SHIM_CALIBRATION else FOCUS_VERDICT, topic=None, number=None, follows=True,
        lenses=lenses if own else before.lenses, bodies=before.bodies, adapters=changed, values=got.rest(*_LENGTHS),
        f_number=before.f_number, distance_mm=None, limits=before.limits,
    )  # fmt: skip


def _exchanged(got: Question, before: Question) -> Question:
    """'swap the 0.2 for a 0.1' beside another spacer: that is done, and nothing was measured against a right one."""
    told = _WHOLE.fullmatch(got.said("thickness") or "")
    new = [length_of(one) for one in got.adapters if one not in before.adapters and one.is_of_one_length]
    several = len(got.adapters) == len(before.adapters) > 1 and got.said("nominal") is not None
    if told is None or not several or new != [float(told[1])]:
        return got
    return got.with_(intent=before.intent, topic=None, values=got.rest("nominal", "thickness", OFF))


def _bush_joined(got: Question, before: Question) -> Question | None:
    """'i have a 39-42 ring with a 1 mm rim' after an M42 ring for the body: it stands before that one."""
    bush = got.adapters[0] if len(got.adapters) == 1 else None
    if bush is None or bush.steps is None or is_other_body(got, before) or not are_named(before.lenses):
        return None
    onto = [one for one in before.adapters if one.rear and any(f"{bush.steps[1]:g}" in name for name in one.front)]
    if len(onto) != 1 or len(before.adapters) != 1:
        return None
    sizes = [_WHOLE.fullmatch(got.said(key) or "") for key in ("length", "spigot", "lip", "thickness")]
    told = next((float(one[1]) for one in sizes if one is not None), None)
    if bush.thickness_mm is None and told is not None and told <= _LIP_MM:
        bush = replace(bush, thickness_mm=(told, told))
    return got.with_(
        intent=FOCUS_VERDICT, topic=None, lenses=before.lenses, bodies=before.bodies, adapters=(bush, *before.adapters),
        values=got.rest(*_LENGTHS, "spigot", "lip"), number=None,
    )  # fmt: skip


def _back_on(got: Question, before: Question) -> Question | None:
    """'back to the first ring, where does a 35 stop on it' after two that were measured one after the other."""
    rings, others = ([one for one in row if one.piece in _PIECES] for row in (before.adapters, before.stood))
    lenses = {one.focal_length_mm for one in (*before.known, *before.lenses)}
    text = got.text.casefold()
    plain = "ring" in text or len(lenses) == 1 or (" on the " in text and not before.elsewhere)
    if not _BACK.search(text) or not plain or len(rings) != 1 or len(others) != 1:
        return None
    sized = others[0].is_of_one_length and rings[0].is_of_one_length and others[0] != rings[0]
    ends = [(one.front, one.rear) for one in (others[0], rings[0]) if one.front and one.rear]
    told = any(one.thickness_mm is not None for one in got.adapters) and got.adapters != before.adapters
    if not sized or len(set(ends)) > 1 or told or is_other_body(got, before):
        return None
    own = len(got.lenses) == 1 and f"{got.lenses[0].focal_length_mm or 0:g}" in text
    return got.with_(
        intent=FOCUS_VERDICT, topic=None, number=None, follows=True, lenses=got.lenses if own else before.lenses,
        bodies=before.bodies, adapters=before.stood, values=got.rest(*_LENGTHS),
    )  # fmt: skip


def _is_sheeted(got: Question) -> bool:
    """Whether a ring between two mounts stands there with no more than thin sheets beside it."""
    sheets = [length_of(one) for one in got.adapters if one.piece == SPACER and one.is_of_one_length]
    rings = [one for one in got.adapters if _joins(one)]
    return bool(sheets) and bool(rings) and len(sheets) + len(rings) == len(got.adapters) and sum(sheets) < _THIN_MM


def _names_one(got: Question, stood: tuple[Thing, ...], rings: list[int]) -> bool:
    """'how much do i take off the E ring then' after that and another: both stand there still."""
    if got.adapters == stood:
        return False
    ends = [(one.front, one.rear) for one in stood]
    again = [one for one in got.adapters if one.thickness_mm is None and (one.front, one.rear) in ends and _joins(one)]
    if again and len(got.adapters) == len(stood) and len(set(ends)) == len(stood) and got.intent in _OF_SEAT:
        return {(one.front, one.rear) for one in got.adapters} == set(ends)
    named = got.adapters[0] if len(got.adapters) == 1 else None
    if named is None or named.piece != RING or named.thickness_mm or named.factor or got.intent not in _OF_SEAT:
        return False
    words = set(_WORDS.findall(named.words.casefold())) - _IDLE
    meant = [n for n in rings if words and words <= set(_WORDS.findall(stood[n].words.casefold()))]
    return len(meant) == 1


def _joins(piece: Thing) -> bool:
    return piece.piece == RING and bool(piece.front and piece.rear) and piece.factor is None


def _sized(piece: Thing, size: float) -> Thing:
    return replace(piece, kind="", ids=(), thickness_mm=(round(size, 4), round(size, 4)))


def _without_lip(text: str, stood: tuple[Thing, ...]) -> tuple[Thing, ...]:
    """'and the kind without a lip' after a bush of 1 mm before another ring: one of no thickness."""
    at = [n for n, one in enumerate(stood) if _is_bush(one)]
    if len(at) != 1 or not _LIPLESS.search(text) or _FINE.search(text):
        return ()
    bush = replace(_sized(stood[at[0]], 0.0), words=f"flush {stood[at[0]].words}")
    return (*stood[: at[0]], bush, *stood[at[0] + 1 :])


def _sheet_out(text: str, stood: tuple[Thing, ...]) -> tuple[Thing, ...]:
    """'take one out' of two washers alike, 'both out': the rings stay."""
    thin = [
        n for n, one in enumerate(stood) if one.piece == SPACER and one.is_of_one_length and length_of(one) < _THIN_MM
    ]
    alike = len({length_of(stood[n]) for n in thin}) == 1
    if not thin or len(thin) == len(stood) or _FINE.search(text):
        return ()
    if _ALL_OUT.search(text):
        return tuple(one for n, one in enumerate(stood) if n not in thin)
    return (*stood[: thin[-1]], *stood[thin[-1] + 1 :]) if alike and _ONE_OUT.search(text) else ()


def _is_bush(piece: Thing) -> bool:
    """A ring of a told thickness between two screws, as it may be sold with a lip."""
    thin = piece.is_of_one_length and 0 < length_of(piece) <= _LIP_MM
    return thin and (
        piece.steps is not None or "lip" in piece.words.casefold() or _WIDTHS.search(piece.words) is not None
    )


def _summed(text: str, stood: tuple[Thing, ...], rings: list[int]) -> tuple[Thing, ...]:
    """'so what does it come to': all of them, as they stand."""
    return stood if _SUM.search(text) and len(text.split()) <= _FEW and not _FINE.search(text) else ()


def _all_by(text: str, stood: tuple[Thing, ...], rings: list[int]) -> tuple[Thing, ...]:
    """'make both 0.1 thinner': each of them by so much."""
    told, way = _FINE.findall(text), _BY.search(text)
    known = all(stood[n].is_of_one_length for n in rings)
    if not (_EACH.search(text) and known and way and len(told) == 1) or _TOO.search(text):
        return ()
    if way[1] == "off" and not _LAPPED.search(text):
        return ()
    by = float(told[0]) * (-1 if way[1] in _LESS else 1)
    return tuple(_sized(one, length_of(one) + by) if n in rings else one for n, one in enumerate(stood))


def _each(
    text: str, stood: tuple[Thing, ...], rings: list[int], before: Question, alone: tuple[float, float] | None
) -> tuple[Thing, ...]:
    """Every clause that tells one length of one of them. `alone`: that of the one ring that was read in their place."""
    out, done = list(stood), list[int]()
    for clause in _CLAUSES.split(text):
        told = [float(one) for one in _FINE.findall(clause)]
        meant = (
            _meant(clause, tuple(out), rings, done, before) if len(told) == 1 and not _OFF_BY.search(clause) else None
        )
        if meant is None and len(told) == 1 and (alone == (told[0], told[0]) or _LAPPED.search(clause)):
            meant = _nearest(told[0], out, rings)  # 'file that down to 11.75', 'it is really 9.9'
        if meant is None or (out[meant].is_of_one_length and abs(length_of(out[meant]) - told[0]) > _NEAR_MM):
            continue
        out[meant] = _sized(out[meant], told[0])
        done.append(meant)
    return tuple(out) if done else ()


def _nearest(told: float, stood: list[Thing], rings: list[int]) -> int | None:
    """The one ring that is nearly so long, where all together are not nearer to it."""
    known = [n for n in rings if stood[n].is_of_one_length]
    whole = sum(length_of(stood[n]) for n in known)
    near = [n for n in known if 0 < abs(length_of(stood[n]) - told) <= min(_REMADE_MM, abs(whole - told))]
    return near[0] if len(near) == 1 else None


def _meant(clause: str, stood: tuple[Thing, ...], rings: list[int], done: list[int], before: Question) -> int | None:
    """Which ring a clause tells of; None where it tells of none, or not of which."""
    by_place = [n for words, n in _PLACES if words.search(clause)]
    if len(by_place) == 1 and -len(rings) <= by_place[0] < len(rings):
        return rings[by_place[0]]
    if _OTHER.search(clause):
        said = before.text.casefold()
        last = done or [n for n in rings if stood[n].is_of_one_length and f"{length_of(stood[n]):g}" in said]
        others = [n for n in rings if n not in last]
        return others[0] if len(others) == 1 else None
    by_length = [n for words, n in _LENGTH_WORDS if words.search(clause)]
    if len(by_length) == 1 and all(stood[n].is_of_one_length for n in rings):
        return sorted(rings, key=lambda n: length_of(stood[n]))[by_length[0]]
    words = set(_WORDS.findall(clause)) - _IDLE
    shared = {n: len(words & (set(_WORDS.findall(stood[n].words.casefold())) - _IDLE)) for n in rings}
    most = [n for n in rings if shared[n] == max(shared.values()) > 0]
    unsized = [n for n in most if not stood[n].is_of_one_length]
    most = unsized if len(most) > 1 else most  # 'and the ef one' after the other of an OM-EF and an EF-E ring
    return most[0] if len(most) == 1 else None
