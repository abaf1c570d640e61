"""Close up without a focal length: the light, field and depth of a magnification."""

from __future__ import annotations

from engine.answers.close.close_rows import Shown, light_rows
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import mentions, stop
from engine.answers.parts.wording import area, depth_words, f_number, times, trimmed
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.physics import depth
from grammar.questions import Question

EVEN = "taking the pupils for even (p = 1)"  # told of what no ratio of the pupils was told for


def light_alone(question: Question, magnification: float, shown: Shown) -> Told:
    """The f-number that counts at a magnification, where no lens is told."""
    at = stop(question)
    told = light_rows(magnification, at, f"m = {trimmed(magnification, 2)}")
    values = {row.name: row.value.nominal for row in told.quantities}
    lost = f"{values['light_difference_stops']:.1f} stops of light are lost"
    longer = f"{trimmed((1 + magnification) ** 2, 2)} times the exposure"
    text = f"At {times(magnification)} {lost}, {longer}, {EVEN}."
    if at is not None:
        effective = f"f/{trimmed(at, 1)} counts as f/{trimmed(values['effective_f_number'], 1)}: N(1 + m)."
        text = f"At {times(magnification)} {effective} {lost}, {longer}, {EVEN}; N(1 + m/p) where p is known."
    told = Told((Line("head", text),), told.quantities)
    if shown.form is None or magnification <= 0:
        return told
    wide, high = shown.form.width_mm / magnification, shown.form.height_mm / magnification
    case = f"m = {trimmed(magnification, 2)}, {shown.form.id}"
    sides = (("field_width_mm", wide), ("field_height_mm", high))
    rows = tuple(Quantity(name, Interval.exact(side), case) for name, side in sides)
    text = f"field {area(wide, high, shown.feet)} on {shown.form.name}"
    if at is None and mentions(question, "by-size"):
        text = f"At {times(magnification)} {shown.form.name} takes in {area(wide, high, shown.feet)}."
        return Told((Line("head", text), replace(told.lines[0], kind="text")), (*rows, *told.quantities))
    deep = _depth(magnification, at, shown)
    if deep is not None and at is not None:
        text += f"; {depth_words(deep.nominal, shown.feet)} deep at f/{f_number(at)}"
        rows += (Quantity("dof_mm", deep, case),)
    return told + Told((Line("fact", text, 1),), rows)


def between_sizes(one: float, other: float) -> Told:
    """'from 1:10 to 1:1': by how many stops the light differs, pupils taken for even."""
    first, second = (light_rows(size, None, f"m = {trimmed(size, 2)}").quantities for size in (one, other))
    lost = [next(row.value for row in rows if row.name == "light_difference_stops") for rows in (first, second)]
    if not (is_known(lost[0]) and is_known(lost[1])):
        return Told()
    apart = lost[1] - lost[0]
    way = "more" if apart.nominal >= 0 else "fewer"
    case = f"{times(one)} to {times(other)}"
    text = (
        f"From {times(one)} to {times(other)} {abs(apart.nominal):.1f} stops {way} are lost: {lost[0].nominal:.1f} at"
        f" {times(one)}, {lost[1].nominal:.1f} at {times(other)}, {EVEN}."
    )
    return Told((Line("head", text),), (Quantity("light_difference_stops", abs(apart), case),))


def _depth(magnification: float, at: float | None, shown: Shown) -> Interval | None:
    """What is sharp in all at a magnification and a stop, pupils taken for even."""
    blur = shown.blur()
    if at is None or blur is None:
        return None
    found = depth.close_up_depth_mm(Interval.exact(magnification), Interval.exact(at), blur, Interval.exact(1.0))
    return found if is_known(found) else None
