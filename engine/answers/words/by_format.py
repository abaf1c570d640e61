"""A term told in numbers of the formats named beside it: the allowed blur of full frame and MFT, their crop factors."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Final

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import listed
from engine.base.interval import Interval, Measure, is_known
from engine.facts.records import Format
from engine.physics import coverage, focus
from grammar.questions import Question, Thing

Worked = Callable[[Format, Knowledge], Measure]


def _blur(form: Format, knowledge: Knowledge) -> Measure:
    divisor = knowledge.catalogue.assumptions["blur-divisor"].value
    return focus.allowed_blur_mm(Interval.exact(form.width_mm), Interval.exact(form.height_mm), divisor)


def _crop(form: Format, knowledge: Knowledge) -> Measure:
    return coverage.crop_factor(Interval.exact(form.width_mm), Interval.exact(form.height_mm))


def _diagonal(form: Format, knowledge: Knowledge) -> Measure:
    return Interval.exact(form.diagonal_mm)


# quantity -> how it is worked out, its digits and its unit
_WORKED: Final[Mapping[str, tuple[Worked, int, str]]] = {
    "allowed_blur_mm": (_blur, 3, " mm"),
    "crop_factor": (_crop, 2, ""),
    "format_diagonal_mm": (_diagonal, 1, " mm"),
}


WORKED: Final = frozenset(_WORKED)


def _format_of(thing: Thing, knowledge: Knowledge) -> str:
    """The format that a thing is or has; of a mount the largest that is made for it."""
    if thing.format:
        return thing.format
    name = thing.ids[0] if thing.ids else ""
    if thing.kind == "format":
        return name
    mount = knowledge.catalogue.mounts.get(name) if thing.kind == "mount" else None
    return (mount.format or "") if mount is not None else ""


def by_format(question: Question, knowledge: Knowledge) -> Told:
    """For each term that has a number by format, that of every format that is named; nothing where none is."""
    facts = knowledge.catalogue
    named = [_format_of(thing, knowledge) for thing in (*question.things, *question.lenses, *question.bodies)]
    forms = [facts.formats[name] for name in dict.fromkeys(named) if name in facts.formats]
    told = Told()
    for thing in question.things:
        term = facts.terms.get(thing.ids[0]) if thing.kind == "term" and thing.ids else None
        if term is None or not term.per_format or not forms:
            continue
        work, digits, unit = _WORKED[term.per_format]
        rows = [(form, work(form, knowledge)) for form in forms]
        known = [(form, value) for form, value in rows if is_known(value)]
        parts = [f"{form.name} {value.nominal:.{digits}f}{unit}" for form, value in known]
        told += Told(
            (Line("head", f"{term.names[0][:1].upper()}{term.names[0][1:]}: {listed(parts)}."),),
            tuple(Quantity(term.per_format, value, form.name) for form, value in known),
        )
    return told
