"""What focuses a lens that has no focusing of its own: the cheapest chains with a helicoid, and tubes beside."""

from __future__ import annotations

from engine.answers.making.stacks import stack_for
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge, choose
from engine.answers.parts.resolve import BodySide, LensSide, setup_of
from engine.answers.parts.said import number
from engine.answers.parts.usual_mounts import TUBES, usual_mount
from engine.answers.parts.wording import money, trimmed
from engine.answers.seat.chain_numbers import price_of
from engine.answers.seat.open_lens import MEASURE, left_over, needed
from engine.answers.seat.telling import chain_title
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from grammar.questions import Question


def focusing_kit(question: Question, lens: LensSide, body: BodySide, knowledge: Knowledge) -> Told:
    """The cheapest chain with a helicoid for a lens that has no focusing of its own."""
    facts = knowledge.catalogue
    setup = setup_of(lens, body, facts, question.f_number)
    limits = replace(question.limits, using=(*question.limits.using, "helicoid"), cheapest=True, without_glass=True)
    choice = choose(knowledge, setup, limits, 2)
    lines, rows = [], []
    for row in choice.listed:
        band = price_of(row.judged)
        price = f" [{money((band.least, band.greatest))}]" if band else ""
        lines.append(Line("fact", f"{chain_title(row.judged, knowledge)}{price}", 1))
        if band is not None:
            rows.append(Quantity("price", band, "with a helicoid"))
    tubes = tube_set(knowledge)
    if not lines:
        return Told()
    head = Line(
        "head", f"{lens.mount.designation} lenses have no focusing of their own: rings with a helicoid between."
    )
    more = [Line("text", f"Add a set of tubes for longer lenses and close-ups: {tubes[0]}.")] if tubes else []
    rows += [tubes[1]] if tubes else []
    measured, register = number(question, "flange_to_image"), body.mount.register_mm
    asked = () if measured else (Line("ask", MEASURE, wants="flange_to_image"),)
    room = stack_for(question, knowledge)
    if not room.lines and measured and is_known(register):
        line, left = left_over(measured, body.mount, register)
        room = Told((line,)) + left
    room = room if room.lines else needed(question.lens, body.mount, knowledge)
    between = (line for line in room.lines if line.kind != "ask")
    return Told((head, *lines, *between, *more, *asked), (*rows, *room.quantities))


def tube_set(knowledge: Knowledge) -> tuple[str, Quantity] | None:
    """The usual screw tubes, and what a set of them costs."""
    usual = usual_mount(TUBES, knowledge.catalogue)
    tubes = [
        row for row in knowledge.catalogue.adapters.values()
        if row.kind == "extension-tube" and row.front in usual and row.common == "everyday" and row.price_usd
    ]  # fmt: skip
    if not tubes:
        return None
    band = (
        sum(row.price_usd[0] for row in tubes if row.price_usd),
        sum(row.price_usd[1] for row in tubes if row.price_usd),
    )
    sizes = "/".join(
        trimmed(row.thickness_mm.shortest.nominal, 1) for row in tubes if is_known(row.thickness_mm.shortest)
    )
    return f"M42 tubes {sizes} mm, {money(band)}", Quantity("price", Interval.between(*band), f"tube set {sizes}")
