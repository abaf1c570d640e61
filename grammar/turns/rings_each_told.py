"""One of several rings of a talk measured anew, or all made thinner: 'the second is really 11.9', 'the p6 one is 27.8'.

The others stay as they stood. Which one is meant is told by its place, by a mount it was named by, or as 'the other'.
"""

from __future__ import annotations

import re
from typing import Final

from engine.base.compact import compact, replace
from grammar.kinds import FOCUS_VERDICT, MACRO_DISTANCE, SEATED, SHIM_CALIBRATION
from grammar.questions import OFF, RING, Question, Thing
from grammar.things.casting import SPACER
from grammar.turns.answer_told import MEASURED_WITHIN_MM
from grammar.turns.rings_in_row import in_row
from grammar.turns.standing_ring import ASKS_CLOSE, CUP, are_named, is_other_body, length_of
from grammar.words.clauses import Clause, clauses_of
from grammar.words.grouping import Groups
from grammar.words.groups import LIPPED, OF_ANY_RING
from grammar.words.mentioned import outside

_OF_SEAT: Final = SEATED | {SHIM_CALIBRATION}
_REMEDY, _FLAT = "remedy", "no-recess"
_STEP: Final = "step-ring"
_PIECES: Final = (RING, CUP, SPACER, _STEP)
_LIPLESS: Final = "lipless"  # phrases that are mentioned
_ONE_OUT: Final = "one-of-them-out"
_ALL_OUT: Final = "all-of-them-out"
_THIN_MM: Final = 3.0  # of a washer or shim
_LIP_MM: Final = 6.0  # a bush between two screws is hardly thicker
_SUM: Final = "summed-up"
_WHOLE: Final = re.compile(r"(\d+(?:\.\d+)?)(?: mm)?")
_FINE: Final = re.compile(r"(?<![\w./-])(\d*\.\d+|\d+(?= ?mm\b))(?: ?mm)?(?![\w/])", re.IGNORECASE)
_PLACES: Final = (("placed-first", 0), ("placed-second", 1), ("placed-third", 2), ("placed-last", -1))
_BACK: Final = "back-to-another"
_RING_SAID: Final = "ring-said"
_STANDS_ON: Final = "on-the"
_OTHER: Final = "other-one"
_EACH: Final = "each-of-both"
_THINNER, _THICKER, _OFF = "by-so-much-thinner", "by-so-much-thicker", "by-so-much-off"
_TOO: Final = ("too", "if-both-are")
_OFF_BY: Final = "amiss-by-any"
_THIN_OR_THICK: Final = "thin-or-thick"
_THIN_ONE, _THICK_ONE = "the-thin-one", "the-thick-one"
_POINTED_AT: Final = (_THIN_ONE, _THICK_ONE, "thin-or-thick-rings")
_LAPPED: Final = "worked-on"
_REMADE_MM: Final = 0.75  # and one that is not pointed at
_WIDTHS: Final = re.compile(r"\b(?:m ?)?\d\d ?(?:-|to|/) ?(?:m ?)?\d\d\b", re.IGNORECASE)
_FEW: Final = 8  # words of a line that asks for a sum
_LENGTHS: Final = ("numbers", "thickness", "length", "nominal", "total", "thread", "mark", "field", OFF)
_WORDS: Final = re.compile(r"[a-z]+\d*|\d+[a-z]+")


def with_rings_each_told(got: Question, before: Question, groups: Groups) -> Question:
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
    alone = got.adapters[0].thickness_mm if len(got.adapters) == 1 and not _joins(got.adapters[0]) else None
    whole = _WHOLE.fullmatch(got.said("total") or got.said("numbers") or "")
    alone = (float(whole[1]), float(whole[1])) if whole is not None and got.adapters == stood else alone  # 'make it'
    changed = _without_lip(got, stood, groups) or _all_by(got, stood, rings) or _sheet_out(got, stood)
    each = _Each(stood, rings, before, groups).told_by(got, alone)
    in_order = () if all(one in each and one not in stood for one in each) and each else in_row(got, stood, rings)
    changed = changed or in_order or each or _summed(got, stood)
    if not changed and _names_one(got, stood, rings, groups):
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
    plain = bool(got.places(_RING_SAID)) or len(lenses) == 1 or (bool(got.places(_STANDS_ON)) and not before.elsewhere)
    if not got.places(_BACK) or not plain or len(rings) != 1 or len(others) != 1:
        return None
    sized = others[0].is_of_one_length and rings[0].is_of_one_length and others[0] != rings[0]
    ends = [(one.front, one.rear) for one in (others[0], rings[0]) if one.front and one.rear]
    told = any(one.thickness_mm is not None for one in got.adapters) and got.adapters != before.adapters
    if not sized or len(set(ends)) > 1 or told or is_other_body(got, before):
        return None
    own = len(got.lenses) == 1 and f"{got.lenses[0].focal_length_mm or 0:g}" in got.text
    return got.with_(
        intent=FOCUS_VERDICT, topic=None, number=None, follows=True, lenses=got.lenses if own else before.lenses,
        bodies=before.bodies, adapters=before.stood, values=got.rest(*_LENGTHS),
    )  # fmt: skip


def _is_sheeted(got: Question) -> bool:
    """Whether a ring between two mounts stands there with no more than thin sheets beside it."""
    sheets = [length_of(one) for one in got.adapters if one.piece == SPACER and one.is_of_one_length]
    rings = [one for one in got.adapters if _joins(one)]
    return bool(sheets) and bool(rings) and len(sheets) + len(rings) == len(got.adapters) and sum(sheets) < _THIN_MM


def _names_one(got: Question, stood: tuple[Thing, ...], rings: list[int], groups: Groups) -> bool:
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
    words = _telling(named.words, groups)
    meant = [n for n in rings if words and words <= _telling(stood[n].words, groups)]
    return len(meant) == 1


def _telling(text: str, groups: Groups) -> frozenset[str]:
    """The words of a text that tell one ring from another."""
    return frozenset(one for one in _WORDS.findall(text.casefold()) if OF_ANY_RING not in groups.of(one))


def _joins(piece: Thing) -> bool:
    return piece.piece == RING and bool(piece.front and piece.rear) and piece.factor is None


def _sized(piece: Thing, size: float) -> Thing:
    return replace(piece, kind="", ids=(), thickness_mm=(round(size, 4), round(size, 4)))


def _without_lip(got: Question, stood: tuple[Thing, ...], groups: Groups) -> tuple[Thing, ...]:
    """'and the kind without a lip' after a bush of 1 mm before another ring: one of no thickness."""
    at = [n for n, one in enumerate(stood) if _is_bush(one, groups)]
    if len(at) != 1 or not got.places(_LIPLESS) or _FINE.search(got.text):
        return ()
    bush = replace(_sized(stood[at[0]], 0.0), words=f"flush {stood[at[0]].words}")
    return (*stood[: at[0]], bush, *stood[at[0] + 1 :])


def _sheet_out(got: Question, stood: tuple[Thing, ...]) -> tuple[Thing, ...]:
    """'take one out' of two washers alike, 'both out': the rings stay."""
    thin = [
        n for n, one in enumerate(stood) if one.piece == SPACER and one.is_of_one_length and length_of(one) < _THIN_MM
    ]
    alike = len({length_of(stood[n]) for n in thin}) == 1
    if not thin or len(thin) == len(stood) or _FINE.search(got.text):
        return ()
    if got.places(_ALL_OUT):
        return tuple(one for n, one in enumerate(stood) if n not in thin)
    return (*stood[: thin[-1]], *stood[thin[-1] + 1 :]) if alike and got.places(_ONE_OUT) else ()


def _is_bush(piece: Thing, groups: Groups) -> bool:
    """A ring of a told thickness between two screws, as it may be sold with a lip."""
    thin = piece.is_of_one_length and 0 < length_of(piece) <= _LIP_MM
    lipped = any(LIPPED in groups.of(one) for one in piece.words.split())
    return thin and (piece.steps is not None or lipped or _WIDTHS.search(piece.words) is not None)


def _summed(got: Question, stood: tuple[Thing, ...]) -> tuple[Thing, ...]:
    """'so what does it come to': all of them, as they stand."""
    return stood if got.places(_SUM) and len(got.text.split()) <= _FEW and not _FINE.search(got.text) else ()


def _all_by(got: Question, stood: tuple[Thing, ...], rings: list[int]) -> tuple[Thing, ...]:
    """'make both 0.1 thinner': each of them by so much."""
    told = _FINE.findall(got.text)
    ways = sorted((one.at, one.key) for key in (_THINNER, _THICKER, _OFF) for one in got.places(key))
    known = all(stood[n].is_of_one_length for n in rings)
    if not (got.places(_EACH) and known and ways and len(told) == 1) or any(map(got.places, _TOO)):
        return ()
    _, way = ways[0]
    if way == _OFF and not got.places(_LAPPED):
        return ()
    by = float(told[0]) * (1 if way == _THICKER else -1)
    return tuple(_sized(one, length_of(one) + by) if n in rings else one for n, one in enumerate(stood))


@compact
class _Each:
    """The rings that stand there, by their places in `stood`, of which clauses may each tell one."""

    stood: tuple[Thing, ...]
    rings: list[int]
    before: Question
    groups: Groups

    def told_by(self, got: Question, alone: tuple[float, float] | None) -> tuple[Thing, ...]:
        """All of them, as every clause says that tells one length. `alone`: of the one ring read in their place."""
        out, done = list(self.stood), list[int]()
        for clause in clauses_of(got.text, got.mentioned):
            told = [float(one) for one in _FINE.findall(clause.text)]
            meant = self._meant(clause, out, done) if len(told) == 1 and not _is_off(clause) else None
            if meant is None and len(told) == 1 and (alone == (told[0], told[0]) or clause.mentions(_LAPPED)):
                meant = _nearest(told[0], out, self.rings)  # 'file that down to 11.75', 'it is really 9.9'
            if meant is None or (
                out[meant].is_of_one_length and abs(length_of(out[meant]) - told[0]) > MEASURED_WITHIN_MM
            ):
                continue
            out[meant] = _sized(out[meant], told[0])
            done.append(meant)
        return tuple(out) if done else ()

    def _meant(self, clause: Clause, stood: list[Thing], done: list[int]) -> int | None:
        """Which ring a clause tells of; None where it tells of none, or not of which."""
        rings = self.rings
        by_place = [n for key, n in _PLACES if clause.mentions(key)]
        if len(by_place) == 1 and -len(rings) <= by_place[0] < len(rings):
            return rings[by_place[0]]
        if clause.mentions(_OTHER):
            said = self.before.text.casefold()
            last = done or [n for n in rings if stood[n].is_of_one_length and f"{length_of(stood[n]):g}" in said]
            others = [n for n in rings if n not in last]
            return others[0] if len(others) == 1 else None
        thin, thick = clause.mentions(_THIN_ONE), clause.mentions(_THICK_ONE)
        if thin != thick and all(stood[n].is_of_one_length for n in rings):
            return sorted(rings, key=lambda n: length_of(stood[n]))[0 if thin else -1]
        words = _telling(clause.text, self.groups)
        shared = {n: len(words & _telling(stood[n].words, self.groups)) for n in rings}
        most = [n for n in rings if shared[n] == max(shared.values()) > 0]
        unsized = [n for n in most if not stood[n].is_of_one_length]
        most = unsized if len(most) > 1 else most  # 'and the ef one' after the other of an OM-EF and an EF-E ring
        return most[0] if len(most) == 1 else None


def _is_off(clause: Clause) -> bool:
    """Whether it tells by how much a ring is off: '0.1 too thick', and no length of 'the thick one'."""
    return clause.mentions(_OFF_BY) or bool(outside(clause.places(_THIN_OR_THICK), clause.places(*_POINTED_AT)))


def _nearest(told: float, stood: list[Thing], rings: list[int]) -> int | None:
    """The one ring that is nearly so long, where all together are not nearer to it."""
    known = [n for n in rings if stood[n].is_of_one_length]
    whole = sum(length_of(stood[n]) for n in known)
    near = [n for n in known if 0 < abs(length_of(stood[n]) - told) <= min(_REMADE_MM, abs(whole - told))]
    return near[0] if len(near) == 1 else None
