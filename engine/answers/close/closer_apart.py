"""A tube or a close-up lens for a lens whose focal length is told: what each magnifies to, and which goes farther."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from engine.answers.close.dioptres import USUAL, powers_of
from engine.answers.close.image_side import size_told
from engine.answers.close.lengths_apart import lengths_apart
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import distance_mm, focals, number
from engine.answers.parts.wording import distance, figures, listed, times, trimmed
from engine.base.interval import Interval, is_known
from engine.base.units import MM_PER_METRE
from engine.facts.catalogue import Catalogue
from engine.facts.kinds import TUBELIKE
from engine.physics import closeup, focus
from grammar.questions import CLOSE_UP_LENS, Question

ROOM: Final = "front_glass"  # key of the distance before the lens
Way = tuple[str, Interval]  # what it is, and the magnification with the lens at infinity


def closer_apart(question: Question, facts: Catalogue) -> Told:
    """For each focal length told; where neither kind is named, the lengths against each other."""
    kinds = {thing.piece for thing in question.adapters}
    if not kinds & {CLOSE_UP_LENS, *TUBELIKE}:
        return lengths_apart(question, facts)
    if size_told(question) or CLOSE_UP_LENS not in kinds or not kinds & TUBELIKE:
        return Told()
    told = Told()
    room = number(question, ROOM) or distance_mm(question)
    for focal in focals(question):
        f, name = Interval.exact(focal), f"{trimmed(focal, 1)} mm"
        told += _for_room(name, f, room) if room is not None else Told()
        tubes = [(f"{trimmed(length, 1)} mm of tube", size) for length in _lengths(question, facts)
                 if is_known(size := focus.magnification(f, Interval.exact(length)))]  # fmt: skip
        glasses = [(f"a +{figures(power, 3)} close-up lens", closeup.close_up_magnification(
            f, Interval.exact(power), Interval.exact(0.0))) for power in _powers(question, facts)]  # fmt: skip
        told += _set_apart(name, tubes, [(text, size) for text, size in glasses if is_known(size)], facts)
    return told


def _for_room(name: str, focal: Interval, room: float) -> Told:
    """The tube and the close-up lens that bring the lens, at its infinity mark, to a subject so far before it."""
    tube = closeup.extension_for_subject_mm(focal, Interval.exact(room))
    if not is_known(tube):
        return Told()
    power = MM_PER_METRE / room
    text = (
        f"For {distance(room)} before the {name} lens at infinity: {trimmed(tube.nominal, 1)} mm of tube, or a close-up"
        f" lens of +{figures(power, 2)} dioptre."
    )
    rows = (Quantity("extension_mm", tube, name), Quantity("dioptres", Interval.exact(power), name))
    return Told((Line("head", text),), rows)


def _lengths(question: Question, facts: Catalogue) -> list[float]:
    told = [one.thickness_mm[1] for one in question.adapters if one.piece in TUBELIKE and one.thickness_mm]
    return told or [facts.assumptions["tube-to-show-by"].value.nominal]


def _powers(question: Question, facts: Catalogue) -> list[float]:
    usual = (row.value.nominal for row in facts.assumptions.values() if row.id.startswith(USUAL))
    return powers_of(question) or sorted(usual)


def _set_apart(name: str, tubes: Sequence[Way], glasses: Sequence[Way], facts: Catalogue) -> Told:
    if not tubes or not glasses:
        return Told()
    tube, glass = max(size.nominal for _, size in tubes), max(size.nominal for _, size in glasses)
    if max(tube, glass) <= facts.assumptions["tube-or-close-up-lens"].value.nominal * min(tube, glass):
        which = "a tube and a close-up lens come to about the same"
    elif tube > glass:
        which = "rather a tube: it gives its length over the focal length"
    else:
        which = "rather a close-up lens: what it gives grows with the focal length, what a tube gives shrinks"
    sizes = listed([f"{text} {times(size.nominal)}" for text, size in (*tubes, *glasses)])
    text = (
        f"For a {name} lens {which}. With the lens at infinity: {sizes}. The tube costs light and adds "
        "no glass; the close-up lens costs no light and adds its own faults."
    )
    return Told((Line("head", text),), tuple(_numbers(name, (*tubes, *glasses))))


def _numbers(name: str, ways: Sequence[Way]) -> Iterator[Quantity]:
    for text, size in ways:
        yield Quantity("magnification", size, f"{name}, {text}")
