"""Reads a drawing back: its lettering as boxes, its lines as lengths, by nothing but the SVG."""

from __future__ import annotations

import re
from dataclasses import dataclass
from itertools import combinations
from math import hypot
from xml.etree import ElementTree

from engine.render.lettering import ASCENT, DESCENT, text_width

SVG = "{http://www.w3.org/2000/svg}"


@dataclass(frozen=True)
class Box:
    text: str
    left: float
    top: float
    right: float
    bottom: float

    def meets(self, other: Box) -> bool:
        return (
            self.left < other.right - 1e-6
            and other.left < self.right - 1e-6
            and self.top < other.bottom - 1e-6
            and other.top < self.bottom - 1e-6
        )


@dataclass(frozen=True)
class Drawn:
    """A measured element: what it stands for, and how long it is on paper."""

    quantity: str
    of: str
    mm: float
    scale: float
    paper: float
    wide_mm: float | None = None
    wide_paper: float | None = None


class Paper:
    def __init__(self, document: str) -> None:
        self.document = document
        self.root = ElementTree.fromstring(document)
        _, _, self.width, self.height = (float(n) for n in self.root.attrib["viewBox"].split())

    def all(self, name: str) -> list[ElementTree.Element]:
        """The elements of this kind that are drawn: those of patterns and clips are not."""
        hidden = {
            id(part) for tag in ("defs", "clipPath") for part in self.root.iter(SVG + tag) for part in part.iter()
        }
        return [row for row in self.root.iter(SVG + name) if id(row) not in hidden]

    def words(self) -> list[str]:
        return ["".join(row.itertext()) for row in self.all("text")]

    def boxes(self) -> list[Box]:
        out = []
        for row in self.all("text"):
            text, size = "".join(row.itertext()), float(row.attrib["font-size"])
            wide = text_width(text, size, row.attrib.get("font-weight") == "bold")
            x, y = float(row.attrib["x"]), float(row.attrib["y"])
            left = x - {"start": 0.0, "middle": wide / 2, "end": wide}[row.attrib["text-anchor"]]
            out.append(Box(text, left, y - ASCENT * size, left + wide, y + DESCENT * size))
        return out

    def points(self) -> list[tuple[float, float]]:
        """Every place that a line, a shape or a circle reaches."""
        out = []
        for row in self.root.iter():
            at = row.attrib
            if "points" in at:
                out += [tuple(map(float, pair.split(","))) for pair in at["points"].split()]
            elif row.tag == SVG + "line" and row in self.all("line"):
                out += [(float(at["x1"]), float(at["y1"])), (float(at["x2"]), float(at["y2"]))]
        for row in self.all("rect"):
            x, y = float(row.attrib.get("x", 0)), float(row.attrib.get("y", 0))
            out += [(x, y), (x + float(row.attrib["width"]), y + float(row.attrib["height"]))]
        for row in self.all("circle"):
            if "clip-path" not in row.attrib:
                x, y, r = (float(row.attrib[name]) for name in ("cx", "cy", "r"))
                out += [(x - r, y - r), (x + r, y + r)]
        return out

    def drawn(self) -> list[Drawn]:
        out = []
        for row in self.root.iter():
            at = row.attrib
            if "data-quantity" not in at:
                continue
            wide_mm = wide = None
            if row.tag == SVG + "line":
                paper = hypot(float(at["x2"]) - float(at["x1"]), float(at["y2"]) - float(at["y1"]))
            elif row.tag == SVG + "circle":
                paper = 2 * float(at["r"])
            else:
                paper = float(at["height"])
                if "data-wide-mm" in at:
                    wide_mm, wide = float(at["data-wide-mm"]), float(at["width"])
            rest = (float(at["data-mm"]), float(at["data-scale"]), paper, wide_mm, wide)
            out.append(Drawn(at["data-quantity"], at.get("data-of", ""), *rest))
        return out

    def one(self, quantity: str, of: str | None = None) -> Drawn:
        found = [row for row in self.drawn() if row.quantity == quantity and of in (None, row.of)]
        assert found, quantity
        assert len({(row.mm, round(row.paper, 3)) for row in found}) == 1
        return found[0]

    def has(self, quantity: str) -> bool:
        return any(row.quantity == quantity for row in self.drawn())


def faults(document: str) -> list[str]:
    """What is wrong with a drawing as a drawing; empty where nothing is."""
    paper = Paper(document)
    out = []
    boxes = paper.boxes()
    for one, other in combinations(boxes, 2):
        if one.meets(other):
            out.append(f"'{one.text}' overlaps '{other.text}'")
    for box in boxes:
        if box.left < 0 or box.top < 0 or box.right > paper.width or box.bottom > paper.height:
            out.append(f"'{box.text}' leaves the page")
    for x, y in paper.points():
        if not (0 <= x <= paper.width and 0 <= y <= paper.height):
            out.append(f"({x}, {y}) leaves the page of {paper.width} x {paper.height}")
    for row in paper.drawn():
        if abs(row.paper - row.mm * row.scale) > 0.002 + 1e-5 * row.paper:
            out.append(f"{row.quantity} of {row.mm} mm at {row.scale} is {row.paper} long")
        if row.wide_mm is not None and abs((row.wide_paper or 0.0) - row.wide_mm * row.scale) > 0.002:
            out.append(f"{row.quantity} is {row.wide_paper} wide for {row.wide_mm} mm")
    if re.search(r"<script|href|\bon\w+=|url\((?!#)|@import|javascript", document):
        out.append("it holds a script or points elsewhere")
    if document.replace("http://www.w3.org/2000/svg", "").count("http"):
        out.append("it names an outside address")
    for tag in ("title", "desc"):
        if not (paper.root.findtext(SVG + tag) or "").strip():
            out.append(f"it has no {tag}")
    return out
