"""Drawings that an answer wants are made and saved; the answer then says where they are, and what keeps the others."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import Final

from engine.answers.parts.answer import NO, Answer, Drawing, Line
from engine.answers.parts.wording import listed
from engine.base.compact import replace
from engine.base.newfile import save_new
from engine.base.plain import plain
from engine.base.problem import Problem
from engine.facts.catalogue import Catalogue
from engine.render.lacking import broken, lacking
from engine.render.sheets import sheet

ENDING: Final = ".svg"
# what a quantity is called, and the advice that says how to measure it
CALLED: Final = {
    "image_circle_mm": ("the image circle of the lens", "measure-circle"),
    "focal_length_mm": ("the focal length", "measure-focal-length"),
    "lens_register_mm": ("the register of the lens", "measure-register"),
    "body_register_mm": ("the register of the body", ""),
    "seat_mm": ("the thickness of a ring", "measure-seat"),
    "rear_reach_mm": ("how far the rear reaches", "measure-rear"),
    "travel_mm": ("how far the ring moves the lens", "measure-travel"),
    "clear_depth_mm": ("the free depth in the body", ""),
    "front_vertex_mm": ("where the front glass is", ""),
}
KIND: Final = {"section": "the stack in section", "frame": "the frame", "distances": "the distances in focus"}


def drawn(answer: Answer, catalogue: Catalogue, folder: Path | None) -> Answer:
    """The answer with its drawings saved in `folder`; None: nothing may be saved here."""
    if folder is None:
        text = "Nothing is drawn here: there is no folder to save it in."
        return replace(answer, status=NO, lines=(*answer.lines, Line("ask", text)), sketches=())
    names = {name: mount.designation for name, mount in catalogue.mounts.items()}
    lines: list[Line] = []
    saved: list[Drawing] = []
    needed: dict[str, None] = {}
    unknown: dict[str, None] = {}
    fault: Problem | None = None
    for sketch in answer.sketches:
        missing = lacking(sketch)
        if missing is not None:
            facts = ", ".join(f"{CALLED[name][0]} is not known" for name in missing.facts)
            lines.append(Line("note", f"Not drawn: {KIND[sketch.kind]}; {facts or missing.why}."))
            needed.update(dict.fromkeys(missing.facts))
            continue
        made = save_new(folder, sketch.stem or sketch.kind, ENDING, sheet(sketch, names), again=False)
        if isinstance(made, Problem):
            fault = made
            break
        saved.append(Drawing(sketch.kind, str(made), sketch.number))
        lines.append(Line("fact", f"{KIND[sketch.kind]}: {plain(str(made))}", 1))
        unknown.update(dict.fromkeys(broken(sketch)))
    if saved:
        lines.insert(0, Line("text", f"Saved in {_shown(folder)}:"))
    if unknown:
        told = listed([CALLED[name][0] for name in unknown])
        lines.append(Line("note", f"Drawn broken, since not known: {told}."))
    lines += _how(needed | unknown, catalogue)
    if fault is not None:
        lines.append(Line("ask", f"Not saved in {_shown(folder)}: {plain(fault.found)}."))
    return replace(
        answer, status=answer.status if saved and fault is None else NO, lines=(*answer.lines, *lines),
        sketches=(), drawings=tuple(saved),
    )  # fmt: skip


def _how(facts: Iterable[str], catalogue: Catalogue) -> Iterator[Line]:
    """How to measure what is not known."""
    for name in facts:
        advice = catalogue.advice.get(CALLED[name][1])
        if advice is not None:
            yield Line("fact", f"to find {CALLED[name][0]}: {advice.says[:1].lower()}{advice.says[1:]}", 1)


def _shown(folder: Path) -> str:
    return "this folder" if folder == Path() else plain(str(folder))
