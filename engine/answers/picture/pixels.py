"""What is left of a sensor's pixels in a crop, and whether the recording that is wanted still comes out of it."""

from __future__ import annotations

import re
from math import ceil, sqrt

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import percent
from engine.answers.picture.frames import whole_of
from engine.base.interval import Interval
from engine.facts.catalogue import Catalogue
from engine.facts.records import Format
from engine.physics import coverage
from grammar.questions import Question

LEFT = "pixels left"  # how the line of what is left is known
NEEDED = "is left: "  # and that of what is needed, where the body's pixels are not known
# what people call a recording, its assumption, and the key of the words for it; the widest first
_RECORDINGS = (
    ("DCI 4K", "recording-dci-4k"), ("UHD", "recording-uhd"), ("HD", "recording-hd"), ("720p", "recording-720"),
)  # fmt: skip
# those that are called by the thousands of pixels that they are wide, where they are not just so wide
_BY_THOUSANDS = {8.0: "recording-8k", 4.0: "recording-uhd", 2.7: "recording-2-7k", 2.0: "recording-2k"}
_THOUSANDS = re.compile(r"(?<![\w./])(\d{1,2}(?:\.\d)?)( ?)k\b", re.IGNORECASE)
_MOST_THOUSANDS = 16.0
_OF_EDGE = frozenset(["vignette", "disc", "cover", "image-circle"])  # topics of whether the frame is lit
_USUAL = ("recording-uhd", "recording-hd")
_SAME = 2  # pixels


def asks_pixels(question: Question) -> bool:
    """Whether pixels are told or asked for, or a recording that takes so many."""
    return question.said("pixels") is not None or mentions(question, "in-pixels") or asks_recording(question)


def asks_recording(question: Question) -> bool:
    return any(mentions(question, key) for _, key in _RECORDINGS) or bool(_in_thousands(question))


def leads_with_pixels(question: Question) -> bool:
    """Whether the pixels are what is asked now; not where those of before are kept and the edge is asked about."""
    asked = mentions(question, "in-pixels") or asks_recording(question)
    return asked or (question.said("pixels") is not None and not (question.follows and question.topic in _OF_EDGE))


def _in_thousands(question: Question) -> list[float]:
    """'4k', '2.8k', '6 K': by how many thousands of pixels it is wide; '35 2.8 K lens' tells a stop, and a mount."""
    text, stops = f"{question.text} {question.asked}", {lens.f_number for lens in question.lenses}
    found = _THOUSANDS.findall(text) if not mentions(question, "recording-dci-4k") else []
    told = [float(number) for number, gap in found if not (gap and float(number) in stops)]
    return [one for one in dict.fromkeys(told) if 1 <= one <= _MOST_THOUSANDS]


def pixels_lines(
    form: Format, wide: Interval, high: Interval, tag: str, question: Question, knowledge: Knowledge
) -> Told:  # fmt: skip
    """Pixels left of a crop and the recordings that they still give; how many it takes where they are not known.

    What is claimed is claimed on the least crop, and what a greater one would give is told to be possible.
    """
    facts = knowledge.catalogue
    whole = pixels_of(question, form, facts)
    if whole is None:
        needed = _needed(form, wide.least, question, facts) if asks_pixels(question) else ""
        return Told((Line("fact", needed, 3),)) if needed else Told()
    across, down = coverage.pixels_left(whole, form.width_mm, form.height_mm, wide.least, high.least)
    most, _ = coverage.pixels_left(whole, form.width_mm, form.height_mm, wide.greatest, high.greatest)
    count = f"{across} x {down} {LEFT}" if most <= across + _SAME else f"at least {across} x {down} {LEFT}"
    if mentions(question, "in-megapixels"):
        count = f"{across * down / 1e6:.1f} megapixels, {count}"
    rows = (
        Quantity("pixels_across", Interval.exact(across), tag), Quantity("pixels_down", Interval.exact(down), tag)
    )  # fmt: skip
    return Told((Line("fact", f"{count}: {_given(across, most, question, facts)}", 3),), rows)


def _given(across: int, most: int, question: Question, facts: Catalogue) -> str:
    """Which recordings so many pixels across still give: those asked for, and the usual ones where they do not."""
    asked, usual = _asked(question, facts), _usual(facts)
    kept = [name for name, least in asked or usual if across >= least]
    kept = kept or [name for name, least in usual if across >= least]
    lost = [(name, least) for name, least in asked or usual[:1] if across < least]
    text = f"{kept[0]} remains" if kept else "not even HD remains"
    for name, least in lost if kept or asked else ():
        text += f", {name} {'may, where the circle is larger' if most >= least else 'does not'}"
    return text


def crop_that_gives(question: Question, facts: Catalogue) -> Told:
    """How far a sensor may be cropped for a recording, where its pixels alone are told."""
    across = re.match(r"\d+", question.said("pixels") or "")
    lens = any(one.ids or one.format or one.focal_length_mm for one in question.lenses) or question.said("circle")
    if across is None or lens or not asks_recording(question) or "megapixels" in (question.said("pixels") or ""):
        return Told()
    whole = int(across[0])
    parts = []
    for name, least in _wanted(question, facts):
        if least > whole:
            parts.append(f"{name} takes {least:.0f} pixels across, more than there are")
        else:
            share = ceil(100 * least / whole - 1e-6)
            parts.append(
                f"{name} takes {least:.0f} of the {whole} across, so a crop to {share} % of the width gives it"
            )
    ask = "How much of the width is lit hangs on the lens and the body: which, or what image circle?"
    return Told((Line("head", f"{'; '.join(parts)}."), Line("ask", ask, wants="lens circle")))


def pixels_of_frame(form: Format, question: Question, knowledge: Knowledge) -> Told:
    """What a mode or a crop leaves of the pixels told, first of all; nothing where they are not asked for or known."""
    if not leads_with_pixels(question) or pixels_of(question, form, knowledge.catalogue) is None:
        return Told()
    sides = Interval.exact(form.width_mm), Interval.exact(form.height_mm)
    told = pixels_lines(form, *sides, form.id, question, knowledge)
    text = told.lines[0].text
    return Told((Line("head", f"{form.name[:1].upper()}{form.name[1:]}: {text}."),), told.quantities)


def pixels_first(lines: list[Line], question: Question) -> list[Line]:
    """The lines that tell what is asked of pixels; of a recording that of the shape which films have, told last."""
    found = [line for line in lines if LEFT in line.text or NEEDED in line.text]
    return found[-1:] if asks_recording(question) else found


def count_asked(left: list[Line]) -> list[Line]:
    """What is asked for where the lines tell no count of pixels."""
    ask = "How many pixels are left hangs on the body: how many has it across and down?"
    return [] if any(LEFT in line.text for line in left) else [Line("ask", ask, wants="pixels")]


def _wanted(question: Question, facts: Catalogue) -> list[tuple[str, float]]:
    """Each recording asked for, else the usual ones, with how many pixels it is wide."""
    return _asked(question, facts) or _usual(facts)


def _asked(question: Question, facts: Catalogue) -> list[tuple[str, float]]:
    """The recordings asked for, the widest first."""
    found = dict(_wide(facts, [row for row in _RECORDINGS if mentions(question, row[1])]))
    names = {row: name for name, row in _RECORDINGS}
    for one in _in_thousands(question):
        row = _BY_THOUSANDS.get(one)
        found[names.get(row or "", f"{one:g}K")] = one * 1000 if row is None else _wide(facts, [("", row)])[0][1]
    return sorted(found.items(), key=lambda pair: -pair[1])


def _usual(facts: Catalogue) -> list[tuple[str, float]]:
    return _wide(facts, [row for row in _RECORDINGS if row[1] in _USUAL])


def _wide(facts: Catalogue, rows: list[tuple[str, str]]) -> list[tuple[str, float]]:
    """Each recording with how many pixels it is wide."""
    return [(name, facts.assumptions[row].value.nominal) for name, row in rows]


def _needed(form: Format, wide: float, question: Question, facts: Catalogue) -> str:
    """How many pixels the whole sensor must have across, so that a recording comes out of the crop."""
    whole = whole_of(question, form, facts).width_mm
    needs = [(name, ceil(least * whole / wide - 1e-6)) for name, least in _wanted(question, facts)]
    rest = [f"{name} {count}" for name, count in needs[1:]]
    first = f"{needs[0][0]} takes {needs[0][1]} pixels across all of it"
    return f"{percent(wide / whole)} of the sensor's width {NEEDED}{', '.join([first, *rest])}"


def pixels_of(question: Question, form: Format, facts: Catalogue) -> tuple[int, int] | None:
    """The pixels told, else those that a body named has on this area: all of them, or in a crop mode its share."""
    told = question.said("pixels") or ""
    whole = whole_of(question, form, facts)  # what is told is of all the sensor, not of a mode
    if match := re.match(r"(\d+) x (\d+)", told):
        wide, high = form.width_mm / whole.width_mm, form.height_mm / whole.height_mm
        return int(int(match[1]) * wide + 0.5), int(int(match[2]) * high + 0.5)
    if match := re.match(r"[\d.]+", told):
        # so many square pixels fill the area, or its width
        square = sqrt(float(match[0]) * 1e6 / whole.width_mm / whole.height_mm)
        across = (float(match[0]) / whole.width_mm if told.endswith("across") else square) * form.width_mm
        return int(across + 0.5), int(across * form.height_mm / form.width_mm + 0.5)
    for thing in question.bodies:
        body = facts.bodies.get(thing.id or "") if thing.kind == "body" else None
        if body is None or body.pixels is None or body.format not in facts.formats:
            continue
        whole = facts.formats[body.format]
        if form.id != whole.id and form.id not in body.crops:
            continue
        across = body.pixels[0] / whole.width_mm * form.width_mm
        down = body.pixels[1] / whole.height_mm * form.height_mm
        return min(int(across + 0.5), body.pixels[0]), min(int(down + 0.5), body.pixels[1])
    return None
