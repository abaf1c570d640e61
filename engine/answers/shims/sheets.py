"""How many layers of the sheet that is at hand make a shim."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions, numbers
from engine.answers.parts.wording import READS_MM, listed, ranged, small_mm, trimmed
from engine.base.interval import Interval, is_known
from engine.physics import calibration
from engine.physics.picking import Picked
from grammar.numbers.washers_summed import SHEETS_LAID
from grammar.questions import Question

THICKEST_MM: Final = 0.7  # of what is still called sheet
MOST_OF_EACH: Final = 12
MOST_MM: Final = 5.0  # that is still made up of sheets
# counts in words that are listened for, by key
_SPELLED: Final = {
    "layers-of-2": 2, "layers-of-3": 3, "layers-of-4": 4, "layers-of-5": 5, "layers-of-6": 6, "layers-of-7": 7,
    "layers-of-8": 8, "layers-of-9": 9, "layers-of-10": 10, "layers-of-12": 12, "layers-of-15": 15, "layers-of-20": 20,
}  # fmt: skip
SHEET: Final = "sheet-"  # begins the ids of the sheets that are usually at hand


def own_sheets(question: Question, wanted: float | None, *, is_told: bool = False) -> Told:
    """The layers of the sheets told that make what is wanted, and what is left; nothing where no sheet is told.

    A sheet as thick as what is wanted is one only where what is wanted is told beside it.
    """
    of_each = [one for one in numbers(question, "layer") if 0 < one <= THICKEST_MM]
    if not of_each and wanted is not None and mentions(question, "how-many-asked"):
        told = [one for one in numbers(question, "numbers") if f"{one:g}".lstrip("0") in question.text]
        of_each = [one for one in told if 0 < one <= THICKEST_MM and one != wanted]
    counted = layers_counted(question)
    if counted is not None and len(of_each) == 1:
        return _together(counted, of_each[0], next(iter(numbers(question, "total")), None) or wanted)
    sheets = [one for one in of_each if is_told or one != wanted]
    if wanted is None or not sheets:
        return Told()
    if mentions(question, "divisions"):
        count = Interval.exact(wanted / sheets[0])
        text = f"{small_mm(wanted)} is {trimmed(count.nominal, 2)} divisions of {small_mm(sheets[0])}."
        return Told((Line("head", text),), (Quantity("division_count", count),))
    if len(sheets) == 1:
        return of_one_sheet(sheets[0], wanted)
    stock = [Interval.exact(one) for one in sheets for _ in range(MOST_OF_EACH)]
    found = calibration.spacers_for_mm(Interval.exact(wanted), stock, Interval.exact(READS_MM))
    if not isinstance(found, Picked) or not found.pieces:
        return Told()
    used = [sheets[place // MOST_OF_EACH] for place in found.pieces]
    counts = {one: used.count(one) for one in sheets if one in used}
    rows = [
        Quantity("layer_count", Interval.exact(count), f"{trimmed(one, 3)} mm sheet") for one, count in counts.items()
    ]
    text = f"{small_mm(wanted)} is {listed([f'{count} x {trimmed(one, 3)} mm' for one, count in counts.items()])}"
    left = found.left.nominal if is_known(found.left) else 0.0
    if abs(left) > READS_MM:
        text += f", {small_mm(abs(left))} {'short' if left > 0 else 'too much'}"
    rows.append(Quantity("stack_mm", found.total, "of sheets"))
    return Told((Line("head", f"{text}."),), tuple(rows))


def sheets_summed(question: Question) -> Told:
    """'two 0.1 and a 0.05 washer, total': how thick they are together, which one shim does as well."""
    told = (question.said(SHEETS_LAID) or "").replace(" mm", "")
    if not told:
        return Told()
    counted = [one.split(" x ") for one in told.split(", ")]
    whole = round(sum(float(one[-1]) * (int(one[0]) if len(one) > 1 else 1) for one in counted), 4)
    text = f"Together {small_mm(whole)}: {told.replace(', ', ' + ')} mm. One shim of {small_mm(whole)} does the same."
    rows = (Quantity("shim_mm", Interval.exact(whole)), Quantity("stack_mm", Interval.exact(whole), "sheets"))
    return Told((Line("head", text),), rows)


def shim_corrected(question: Question) -> Told:
    """'the .3 shim overshoots by .08', 'a .1 and a .15 in, still .05 short': what should lie there instead."""
    over, short = question.places("shim-too-much"), question.places("shim-still-short")
    by = next((one.number for one in (*over, *short) if one.number is not None), None)
    there = [one for one in numbers(question, "numbers", "thickness", "layer", "length") if one != by]
    if bool(over) == bool(short) or by is None or not there or max(there) > MOST_MM:
        return Told()
    lies = sum(there)
    right = round(lies - by if over else lies + by, 4)
    if right <= 0:
        return Told()
    how = f"{small_mm(lies)} {'less' if over else 'and'} {small_mm(by)}"
    return Told((Line("head", f"A shim of {small_mm(right)}: {how}."),), (Quantity("shim_mm", Interval.exact(right)),))


def layers_counted(question: Question) -> int | None:
    """How many layers are told to lie there: '5 layers of foil', 'two sheets'; None where that is asked for."""
    if mentions(question, "how-many-asked") or mentions(question, "one-layer-asked"):
        return None
    told = [place.number for place in question.places("layers-counted") if place.number is not None]
    told += [count for key, count in _SPELLED.items() if question.places(key)]
    return int(told[0]) if len(told) == 1 and told[0] == int(told[0]) and told[0] > 0 else None


def usual_together(question: Question, knowledge: Knowledge) -> Told:
    """'5 layers of kitchen foil': how thick they are together, by how thick one of that kind usually is."""
    count = layers_counted(question)
    rows = [row for row in knowledge.catalogue.assumptions.values() if row.id.startswith(SHEET)]
    meant = [row for row in rows if mentions(question, row.id)]
    if count is None or question.laid[0] or len(meant) != 1 or not is_known(meant[0].value):
        return Told()
    each, name = meant[0].value, meant[0].id.removeprefix(SHEET).replace("-", " ")
    thick = calibration.layers_mm(count, each)
    if not is_known(thick):
        return Told()
    one = ranged(each, lambda value: f"{trimmed(value, 3)} mm")
    text = f"{count} layers of {name} ({one} each) are {ranged(thick, lambda value: f'{trimmed(value, 3)} mm')}"
    text += (
        "" if each.is_exact else f", about {trimmed(thick.nominal, 2)} mm; a caliper on the stack pressed flat tells"
    )
    return Told((Line("head", f"{text}."),), (Quantity("shim_mm", thick),))


def _together(count: int, sheet: float, wanted: float | None) -> Told:
    """'3 layers of 0.06 mm tape': how thick they are, and what that lacks of what is wanted."""
    thick = calibration.layers_mm(count, Interval.exact(sheet))
    if not is_known(thick):
        return Told()
    text = f"{count} x {trimmed(sheet, 3)} mm is {small_mm(thick.nominal)}"
    left = (wanted or sheet) - thick.nominal
    if wanted is not None and wanted != sheet and wanted <= MOST_MM:
        way = "just right" if abs(left) <= READS_MM else f"{small_mm(abs(left))} {'short' if left > 0 else 'too much'}"
        text += f": for {small_mm(wanted)} that is {way}"
    text += "."
    return Told((Line("head", text),), (Quantity("shim_mm", thick),))


def usual_sheets(question: Question, wanted: float | None, knowledge: Knowledge) -> Told:
    """The layers of each kind of sheet that is spoken of, else of every usual one; without a shim how thick one is."""
    usual = [row for row in knowledge.catalogue.assumptions.values() if row.id.startswith(SHEET)]
    meant = [row for row in usual if mentions(question, row.id)] or usual
    lines, rows = [], []
    for row in meant:
        name = row.id.removeprefix(SHEET).replace("-", " ")
        each = ranged(row.value, lambda value: f"{trimmed(value, 3)} mm")
        if wanted is None or wanted > MOST_MM:
            lines.append(f"{name} {each} a layer")
            rows.append(Quantity("shim_mm", row.value, f"one layer of {name}"))
            continue
        if row.value.least > wanted:
            lines.append(f"{name} ({each}) is thicker than that" if len(meant) < len(usual) else "")
            continue
        layers = calibration.layer_count(Interval.exact(wanted), row.value)
        if is_known(layers) and layers.greatest >= 1:
            rows.append(Quantity("layer_count", layers, name))
            lines.append(f"{ranged(layers, lambda value: f'{value:.0f}')} of {name} ({each})")
    lines = [line for line in lines if line]
    if not lines:
        return Told()
    lead = f"{small_mm(wanted)} in layers: " if wanted is not None and wanted <= MOST_MM else "Sheets at hand: "
    tail = ". Better one sheet of the right brass than many. Cover the whole seat, flat and deburred."
    return Told((Line("text", lead + ", ".join(lines) + tail),), tuple(rows))


def of_one_sheet(sheet: float, wanted: float) -> Told:
    """So many layers of one sheet, and by how much they miss."""
    layers = calibration.layer_count(Interval.exact(wanted), Interval.exact(sheet))
    if not is_known(layers) or layers.nominal < 1:
        return Told((Line("head", f"A sheet of {small_mm(sheet)} is more than the {small_mm(wanted)} wanted."),))
    left = wanted - layers.nominal * sheet
    text = f"{small_mm(wanted)} is {layers.nominal:.0f} x {trimmed(sheet, 3)} mm"
    if abs(left) > READS_MM:
        text += f", {small_mm(abs(left))} {'short' if left > 0 else 'too much'}"
    return Told((Line("head", f"{text}."),), (Quantity("layer_count", layers, f"{trimmed(sheet, 3)} mm sheet"),))
