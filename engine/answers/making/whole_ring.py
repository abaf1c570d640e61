"""A length told beside 'too short?' that is about as long as the whole ring must be: the ring's, and no error of it."""

from __future__ import annotations

import re
from typing import Final

from engine.answers.parts.answer import Line, RingToMake, Told
from engine.answers.parts.near_enough import ring_made_mm
from engine.answers.parts.said import number, numbers
from engine.answers.parts.wording import small_mm
from engine.base.compact import replace
from engine.base.units import MM_PER_INCH
from engine.facts.catalogue import Catalogue
from grammar.questions import OFF_KEY, RING, Question, Thing

REGISTERS: Final = "registers"  # key of numbers that only say the registers of the mounts named again
_THICKNESS: Final = "thickness"
_LEAST_MM: Final = 2.0  # a ring that is thinner may be off by as much as it is thick
_SAME_MM: Final = 0.06  # a difference as it is rounded
_SHORTEST_LENS: Final = 3.0  # mm
_MOST_INCHES: Final = 2.5  # that a ring is long
_TOO_LITTLE: Final = frozenset(["too thin", "too short", "too close"])
_HEARD_THIN: Final = frozenset(["came-short", "sits-too-close", "sheet-laid", "shim-added", "shim-effect"])
_HEARD_THICK: Final = "sits-too-far"
_EACH_OFF: Final = {"each-off-2": 2, "each-off-3": 3, "each-off-4": 4}  # rings that are each off by as much
_IN_MM: Final = r"\d ?mm\b"


def with_difference_told(question: Question, right_mm: float) -> Question:
    """'is 2.3 mm all there is between M and NX', 'P6 to V, 0.8 short': what the registers differ by, told again.

    As a focal length no lens is so told; where the lens is the shorter, it is no error of a ring either.
    """
    lens, told = question.lens, numbers(question, _THICKNESS)
    focal = lens.focal_length_mm if lens is not None else None
    if lens is not None and focal is not None and _is_difference(focal, right_mm) and question.mentions("between"):
        return question.with_(
            lenses=(replace(lens, focal_length_mm=None), *question.lenses[1:]),
            values=(*question.values, (_THICKNESS, f"{focal:g} mm")) if not told else question.values,
        )
    over = question.off_word == "too thick" or bool(
        question.places("beyond-by") or question.places("sits-too-far")
    )  # 'half a mm too much' is no difference
    if right_mm < 0 and len(told) == 1 and abs(told[0] + right_mm) <= _SAME_MM and not over:
        bare = not question.adapters  # 'OM on F, half a mm short they say': with nothing between
        if bare or question.off_word:
            again = ((REGISTERS, f"{told[0]:g} mm"),) if bare else ()
            values = question.rest(_THICKNESS)
            return question.with_(values=(*values, *again))
    return question


def with_each_off(question: Question, facts: Catalogue) -> Question:
    """'two adapters, each 0.06 too long': what they are off by in all."""
    told, count = numbers(question, _THICKNESS), next((n for key, n in _EACH_OFF.items() if question.mentions(key)), 0)
    if not count or len(told) != 1 or not question.off_word or not 0 < told[0] <= ring_made_mm(0.0, facts):
        return question
    return question.with_(values=(*question.rest(_THICKNESS), (_THICKNESS, f"{count * told[0]:g} mm")))


def with_shim_laid(question: Question) -> Question:
    """'the adapter is 0.1 thin but i added a .25 shim': what it is off by with that under it."""
    told, off = numbers(question, _THICKNESS), [one for one in question.mentioned if one.key.startswith(OFF_KEY)]
    laid = next((one.number for one in question.places("sheet-laid") if one.number not in (None, *told)), None)
    thin = question.off_word in _TOO_LITTLE and question.mentions("shim-in") and not question.follows
    if laid is None or not (thin and off) or len(told) != 1 or not 0 < max(told[0], laid) <= 1:
        return question
    net = round(laid - told[0], 4)
    values = (*question.rest(_THICKNESS, "numbers"), (_THICKNESS, f"{abs(net):g} mm"))
    pieces = tuple(one for one in question.adapters if one.thickness_mm != (laid, laid))
    question = question.with_(values=values, adapters=pieces)
    if net <= 0:
        return question
    kept = tuple(one for one in question.mentioned if one not in off and one.key not in _HEARD_THIN)
    heard = (off[0]._replace(key=f"{OFF_KEY}too-thick"), off[0]._replace(key=_HEARD_THICK))
    return question.with_(mentioned=(*kept, *heard))


def is_told_alone(question: Question, told_mm: float, right_mm: float) -> bool:
    """'QBM on EF, 0.46 they say': what the registers leave, too little for most rings, where no ring is spoken of."""
    ring = bool(question.adapters) or question.mentions("ring-word")
    return 0 < right_mm < _LEAST_MM and not ring and abs(told_mm - right_mm) <= _SAME_MM


def _is_difference(told: float, right_mm: float) -> bool:
    return abs(told - right_mm) <= _SAME_MM and (told != int(told) or told < _SHORTEST_LENS)


def in_inches(question: Question, right_mm: float, facts: Catalogue) -> Question:
    """'caliper reads 0.441' for a ring of 11.1 mm: as so many millimetres it is none, in inches it nearly is.

    `right_mm`: the seat that is right, lens register less body register.
    """
    rings = [one for one in question.adapters if one.piece == RING and not one.ids and one.thickness_mm is not None]
    size = rings[0].thickness_mm[0] if len(rings) == len(question.adapters) == 1 and rings[0].thickness_mm else 0.0
    fine = 0 < size < _MOST_INCHES and size != int(size) and re.search(_IN_MM, question.text, re.IGNORECASE) is None
    told = round(size * MM_PER_INCH, 4)
    as_told = abs(size - right_mm) <= ring_made_mm(0.0, facts)
    if not fine or as_told or abs(told - right_mm) > ring_made_mm(right_mm, facts):
        return question
    ring = replace(rings[0], thickness_mm=(told, told), words=f"{told:g} mm ring")
    return question.with_(adapters=(ring,))


def with_whole_ring(question: Question, right_mm: float, made_mm: float) -> Question:
    """'OM to E, 28.1 flat. too short?': with that as the length of a ring between the mounts told.

    `right_mm`: the seat that is right, lens register less body register.
    """
    told, lens, body = numbers(question, _THICKNESS), question.lens, question.body
    if question.adapters or lens is None or body is None or len(told) != 1 or not question.off_word:
        return question
    if right_mm < _LEAST_MM or abs(told[0] - right_mm) > made_mm:
        return question
    ring = Thing(
        kind="", ids=(), words=lens.words, column=lens.column, piece=RING, front=lens.ids, rear=body.ids,
        thickness_mm=(told[0], told[0]),
    )  # fmt: skip
    values = question.rest(_THICKNESS)
    return replace(question, adapters=(ring,), values=values)


def stock_left(question: Question, ring: RingToMake | None) -> Told:
    """'have 25 mm of bar, long enough?': what comes off the stock that the ring is turned from, or how short it is."""
    stock = number(question, "stock")
    if stock is None or ring is None or ring.thickness_mm is None or ring.possible != "plain":
        return Told()
    left = stock - ring.thickness_mm.nominal
    if left < 0:
        text = f"{small_mm(stock)} of stock is {small_mm(-left)} too short for the seat: take a longer piece, or two."
    else:
        text = (
            f"{small_mm(stock)} of stock is enough for the seat: {small_mm(left)} comes off. What reaches past the "
            "seats, lugs and threads, needs its own length or its own parts."
        )
    return Told((Line("head", text),))
