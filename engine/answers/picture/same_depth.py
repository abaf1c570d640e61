"""The f-number that gives the same depth of field on another format, and how much deeper one stop is than another."""

from __future__ import annotations

import re

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import focals
from engine.answers.parts.wording import f_number, trimmed
from engine.base.interval import Interval
from engine.facts.catalogue import Catalogue
from engine.facts.records import Format
from grammar.questions import Question, Thing

FULL_ID = "35mm-full-frame"
TWO = 2
NEARLY = 0.05  # of a number of times, no more than stops are rounded by


def same_depth(question: Question, at: float, facts: Catalogue) -> Told:
    """N times the ratio of the diagonals, from the format that stands beside the f-number to each other one told.

    Source: optics model, depth at the same field; blur allowed and aperture go with the diagonal.
    """
    told = formats_told(question, facts)
    if focals(question):
        return Told()
    number = re.escape(f"{at:g}")
    place = re.search(rf"\b(?:f ?/? ?|at ){number}(?![\d.])|(?<![\d.]){number}(?![\d.])", question.text, re.IGNORECASE)
    column = place.start() + 1 if place else 0
    near = {form.id: min(abs(thing.column - column) for thing, found in told if found is form) for _, form in told}
    if len(near) != 2:
        return Told()
    one, other = (facts.formats[name] for name in sorted(near, key=near.__getitem__))
    out = Told()
    for source, target in ((one, other), (other, one)):
        alike = at * target.diagonal_mm / source.diagonal_mm
        case = f"{target.name}, same field and depth of field as f/{f_number(at)} on {source.name}"
        text = f"f/{f_number(at)} on {source.name} looks like f/{f_number(alike)} on {target.name}"
        if source is one:
            text += ": same framing from the same place, same depth of field. The exposure stays that of the f-number."
        else:
            text = f"the other way round, {text}"
        kind, level = ("head", 0) if source is one else ("fact", 1)
        rows = [Quantity("f_number", Interval.exact(alike), case)]
        if target.id == FULL_ID:
            rows.append(Quantity("equivalent_f_number", Interval.exact(alike), f"f/{f_number(at)} on {source.name}"))
        out += Told((Line(kind, text, level),), tuple(rows))
    return out


def deeper_by(question: Question) -> Told:
    """How many times as deep the smaller of two stops is, where nothing else is told: as the f-numbers.

    Source: optics model, depth of field goes with N while the subject is well within the hyperfocal distance.
    """
    told = {*question.stops, question.f_number, *(thing.f_number for thing in question.lenses)}
    if len(told - {None}) != TWO:
        told |= {question.prior.f_number} if question.prior is not None and question.follows else set()
    stops = sorted(one for one in told if one is not None)
    if len(stops) != TWO:
        return Told()
    by = stops[1] / stops[0]
    text = f"f/{f_number(stops[1])} is {_so_much(by)} as deep as f/{f_number(stops[0])}"
    rest = "same lens, distance and frame; more than that where the far end nears infinity."
    rows = (Quantity("depth_ratio", Interval.exact(by), f"f/{f_number(stops[1])} by f/{f_number(stops[0])}"),)
    return Told((Line("head", f"{text}: {rest}"),), rows)


def _so_much(by: float) -> str:
    return "twice" if abs(by - TWO) < NEARLY else f"about {trimmed(by, 1)} times"


def formats_told(question: Question, facts: Catalogue) -> list[tuple[Thing, Format]]:
    """Every format told, by itself, by a lens or by a body and its mount."""
    found: list[tuple[Thing, Format]] = []
    for thing in (*question.things, *question.bodies, *question.lenses):
        id_ = thing.id or ""
        name = thing.format or (id_ if thing.kind == "format" else "")
        if not name and thing.kind == "mount" and thing in question.bodies and id_ in facts.mounts:
            name = facts.mounts[id_].format or ""
        elif not name and thing.kind == "body" and id_ in facts.bodies:
            name = facts.bodies[id_].format
        if name in facts.formats:
            found.append((thing, facts.formats[name]))
    return found
