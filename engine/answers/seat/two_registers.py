"""Two registers told as bare numbers, without a mount: the ring between them, or how far out the lens sits."""

from __future__ import annotations

import re
from typing import Final

from engine.answers.parts.answer import ANSWERED, Answer, Line, Quantity, RingToMake, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import focals, mentions, numbers
from engine.answers.parts.wording import small_mm
from engine.answers.seat.spacing import far_limits, usual_focals
from engine.base.compact import replace
from engine.base.interval import UNKNOWN, Interval, is_known
from engine.facts.catalogue import Catalogue
from grammar.kinds import WHY
from grammar.questions import BODY_REGISTER, Question, Thing

_NUMBER: Final = re.compile(r"(?<![\w./-])(\d+(?:\.\d+)?)( ?mm)?(?![\w/]|\.\d)")
_LENGTH_OF: Final = re.compile(r" ?(?:f ?/? ?\d[\d.]* )?(?:[a-z-]+ )?lens\b", re.IGNORECASE)  # behind a focal length
_PAUSE: Final = re.compile(r"[,;:?]|\.(?=\s)|(?<=\.)\s")  # the end of a sentence counts twice
_AS_FAR: Final = 10.0  # letters by which that is hardly nearer
_FAR_APART: Final = 20  # letters that a comma between counts for
_PLAUSIBLE_MM: Final = (6.0, 130.0)  # of registers, from the least of 8 mm film to a view camera's


def with_two_registers(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer by the two registers, where they are told, and neither the lens's mount nor the body's is."""
    found = _by_mount(question, knowledge.catalogue) or two_registers(question)
    if found is None:
        return answer
    lens, body = found
    told, ring = ring_between(lens, body, question, knowledge)
    asked = question.intent == WHY  # the reasons stay behind the numbers
    lines = (*told.lines, *(answer.lines if asked and answer.status == ANSWERED else ()))
    return replace(
        answer, status=ANSWERED, lines=tuple(dict.fromkeys(lines)), chains=None, ring=ring,
        quantities=(*told.quantities, *((answer.quantities or ()) if asked else ())),
    )  # fmt: skip


def two_registers(question: Question) -> tuple[float, float] | None:
    """The registers of lens and body; None where other than two numbers may be one, or a mount is named."""
    sides = mentions(question, "word-of-lens") and mentions(question, "word-of-body")
    if not sides or _names_mount(question) or question.said("rear_reach"):
        return None
    least, most = _PLAUSIBLE_MM
    found = [one for one in _NUMBER.finditer(question.text) if least <= float(one[1]) <= most]
    if len(found) > 2:
        # 'a 50mm with 38 register on a 44 body': a focal length wears its unit more often than a register does
        found = [one for one in found if not (one[2] and float(one[1]) in focals(question))]
    # 'a 75mm lens, 38 from flange to image, which body': one measured, the other is its length
    found = [
        one for one in found if not (float(one[1]) in focals(question) and _LENGTH_OF.match(question.text, one.end()))
    ]
    told = [(one.start(), float(one[1])) for one in found]
    if len(told) != 2:
        return None
    (first_at, first), (second_at, second) = told
    # each number goes with the word that stands nearer to it; where none tells, the lens comes first
    if _leans_to_body(question, first_at) > _leans_to_body(question, second_at):
        first, second = second, first
    return first, second


def _by_mount(question: Question, facts: Catalogue) -> tuple[float, float] | None:
    """'an OM lens on a camera with a register of 30': that of the lens's mount, and the one told of the body."""
    told = body_register(question)
    mount = facts.mounts.get(question.lenses[0].id or "") if told is not None else None
    right = mount.register_mm if mount is not None else UNKNOWN
    return (right.nominal, told) if told is not None and is_known(right) else None


def body_register(question: Question) -> float | None:
    """The one register told, where it stands nearer to a body that no mount is told of than to the lens, which has one.

    None where that is not so. What was told of that body before holds still.
    """
    if len(question.bodies) != 1 or question.bodies[0].ids or not _one_named(question):
        return None
    held = numbers(question, BODY_REGISTER)
    return held[0] if held else told_of_body(question)


def told_of_body(question: Question) -> float | None:
    """The one register told, where it stands nearer to the body than to the lens, whose mount is named."""
    told = numbers(question, "flange_to_image")
    if len(told) != 1 or len(question.bodies) != 1 or not _one_named(question):
        return None
    at = next((one.start() for one in _NUMBER.finditer(question.text) if float(one[1]) == told[0]), None)
    spoken = mentions(question, "register-spoken", "gauged-depth")
    of_body = at is not None and spoken and _leans_to_body(question, at) > 0 and mentions(question, "word-of-body")
    return told[0] if of_body else None


def _one_named(question: Question) -> bool:
    return len(question.lenses) == 1 and _is_named(question.lenses[0])


def ring_between(
    lens: float, body: float, question: Question, knowledge: Knowledge
) -> tuple[Told, RingToMake]:  # fmt: skip
    """What a lens of one register needs on a body of the other: a ring, or what becomes of it without."""
    by = Interval.exact(round(lens - body, 4))
    room = by.nominal
    head = f"The lens needs {small_mm(lens)} to the sensor and the body is {small_mm(body)} deep: "
    rows = [Quantity("register_difference_mm", by, "lens less body"), Quantity("ring_thickness_mm", by, "ring to make")]
    least = _least_ring(knowledge.catalogue)
    if room <= 0:
        rows.append(Quantity("register_error_mm", -by, "flush"))
        lenses = [focal for focal in focals(question) if focal not in (lens, body)]
        return _too_deep(head, -room, rows, lenses, question.feet, knowledge), RingToMake(
            by, "no", "the body is deeper than the lens"
        )
    if room >= least:
        text = f"{head}a plain ring of {small_mm(room)}, and infinity is kept."
        return Told((Line("head", text),), tuple(rows)), RingToMake(by, "plain", "room for a ring")
    text = (
        f"{head}only {small_mm(room)} are left for a ring. Between two flanges it takes some {small_mm(least)}; "
        "thinner ones exist only where the lens's seat fits inside the throat of the body."
    )
    return Told((Line("head", text),), tuple(rows)), RingToMake(by, "no", "too little for a ring between the flanges")


def _too_deep(
    head: str, error: float, rows: list[Quantity], lenses: list[float], feet: bool, knowledge: Knowledge
) -> Told:  # fmt: skip
    """Too little room: the lens sits too far out with nothing between, and a ring adds to that."""
    if not error:
        text = f"{head}the two are alike, so it must seat as it is, and there is no room for a ring."
        return Told((Line("head", text),), tuple(rows))
    text = (
        f"{head}no plain ring gives infinity. Even with nothing between the lens is {small_mm(error)} too far out, as "
        "on an extension tube, and a ring adds its own thickness. Infinity needs glass in the ring, or a seat sunk so "
        "deep into the body."
    )
    facts = knowledge.catalogue
    limits = far_limits(lenses or usual_focals(facts), error, facts, feet, 1)
    return Told((Line("head", text),), tuple(rows)) + limits


def _names_mount(question: Question) -> bool:
    """Whether a mount of the lens or the body is named; a register alone makes a lens of some mount, and names none."""
    return any(map(_is_named, (*question.lenses, *question.bodies)))


def _is_named(thing: Thing) -> bool:
    others = [one for one in _NUMBER.findall(thing.words) if float(one[0]) != thing.focal_length_mm]
    return bool(thing.ids) and not others


def _leans_to_body(question: Question, at: int) -> float:
    """How much nearer to a word for the body than to one for the lens a number stands.

    Where it stands between the two, about as far from either, it goes with the one told before it.
    """
    nearer = _apart(question, at, "word-of-lens") - _apart(question, at, "word-of-body")
    bodies, lenses = question.places("word-of-body"), question.places("word-of-lens")
    between = bodies and lenses and max(one.at for one in bodies) < at < min(one.at for one in lenses)
    return 1.0 if between and abs(nearer) <= _AS_FAR else nearer


def _apart(question: Question, at: int, key: str) -> float:
    """Letters between a number and the nearest phrase of the key; what parts them counts for more."""
    found = [sorted((at, place.at)) for place in question.places(key)]
    gaps = [high - low + _FAR_APART * len(_PAUSE.findall(question.text[low:high])) for low, high in found]
    return float(min(gaps, default=len(question.text)))


def _least_ring(facts: Catalogue) -> float:
    return facts.assumptions["thinnest-ring"].value.nominal
