"""Ways to a view set against each other, each with lens, frame and glass: '28 on a 1.6 crop or 20 on MFT, wider?'."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Final, TypeVar

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import mentions, numbers
from engine.answers.parts.wording import f_number, trimmed
from engine.answers.picture.crop_factors import Crop, crop_of
from engine.answers.picture.matching import verdict, widest
from engine.answers.picture.same_depth import formats_told
from engine.base.compact import compact
from engine.base.interval import Interval
from engine.facts.catalogue import Catalogue
from grammar.questions import Question

PAIR: Final = 2
T = TypeVar("T")


@compact
class _Way:
    """One of the ways: a focal length in mm, the crop of its frame, and the factor of the glass behind the lens."""

    focal_mm: float
    crop: Crop
    factor: float | None
    f_number: float | None

    @property
    def view_mm(self) -> float:
        """What it frames like on full frame: f x factor x crop by diagonal."""
        return self.focal_mm * (self.factor or 1.0) * self.crop.by_diagonal

    @property
    def depth(self) -> float | None:
        """The f-number of that depth of field on full frame: N x factor x crop by diagonal."""
        return None if self.f_number is None else self.f_number * (self.factor or 1.0) * self.crop.by_diagonal

    @property
    def name(self) -> str:
        glass = f" with {self.factor:g}x" if self.factor else ""
        return f"{trimmed(self.focal_mm, 1)} mm{glass} on {self.crop.name}"


def views_apart(question: Question, facts: Catalogue) -> Told:
    """What each way frames like, and which sees more; nothing where they are not told each on a frame of its own."""
    ways = _ways(question, facts) if mentions(question, "which-wider", "views-alike") else []
    if len(ways) < PAIR or (len({way.crop.name for way in ways}) < PAIR):
        return Told()
    out, rows = [], []
    for way in ways:
        rows.append(Quantity("equivalent_focal_mm", Interval.exact(way.view_mm), way.name))
        rows.append(Quantity("crop_factor", Interval.exact(way.crop.by_diagonal), way.crop.name))
        made = ""
        if way.factor:
            behind = way.focal_mm * way.factor
            rows.append(
                Quantity("focal_length_mm", Interval.exact(behind), f"{trimmed(way.focal_mm, 1)} mm with glass")
            )
            made = f" is {trimmed(behind, 1)} mm and"
        text = f"{way.name}{made} frames like {way.view_mm:.0f} mm on full frame"
        if way.f_number is not None and way.depth is not None:
            case = f"f/{way.f_number:g}, {way.crop.name}"
            rows.append(Quantity("equivalent_f_number", Interval.exact(way.depth), case))
            text += f", f/{f_number(way.f_number)} with the depth of field of f/{trimmed(way.depth, 2)}"
        out.append(Line("fact", text))
    views, names = [way.view_mm for way in ways], [way.name for way in ways]
    depths = [way.depth for way in ways if way.depth is not None]
    return Told((Line("head", verdict(views, depths) + widest(views, names)), *out), tuple(rows))


def _ways(question: Question, facts: Catalogue) -> list[_Way]:
    """The ways in their order: what is told once and stands in no one's part is that of all."""
    lenses = [(lens.column - 1, lens) for lens in question.lenses if lens.focal_length_mm]
    told = formats_told(question, facts)
    placed = [row for row in told if row[0] not in question.lenses]  # 'an 80 for 645 on 44x33' is on that frame
    told = placed if len(placed) >= PAIR else told
    crops = [(thing.column - 1, crop_of(form)) for thing, form in told]
    crops += _crops_by_number(question)
    if len(lenses) == 1 and (question.said("numbers") or not mentions(question, "which-wider")):
        return []  # another number may be the lens of one of them; 'which lens has the same view' wants one
    glass = [(piece.column - 1, piece.factor) for piece in question.adapters if piece.factor]
    ends = [one.at for one in question.places("parts-ways")]
    ways: list[_Way] = []
    for begin, end in zip((0, *ends), (*ends, len(question.text)), strict=True):
        framed = _within(crops, begin, end)
        if len(framed) != 1:
            if framed or any(begin <= at < end for at, _ in lenses):
                return []
            continue
        own = _within(lenses, begin, end)
        lens = own[0] if own and len(lenses) > 1 else lenses[0][1] if len(lenses) == 1 else None
        if lens is None or lens.focal_length_mm is None:
            return []
        worn = _within(glass, begin, end)
        ways.append(_Way(lens.focal_length_mm, framed[0], worn[0] if worn else None, lens.f_number))
    return ways


def _crops_by_number(question: Question) -> list[tuple[int, Crop]]:
    """Crop factors told as such, with where they stand."""
    out = []
    for crop in numbers(question, "crop") if ":" not in (question.said("crop") or "") else ():
        found = re.search(rf"(?<![\d.]){crop:g}(?![\d.]*\d)", question.text)
        if found is not None:
            out.append((found.start(), Crop(f"a {crop:g}x crop", crop)))
    return out


def _within(rows: Iterable[tuple[int, T]], begin: int, end: int) -> list[T]:
    return [value for at, value in rows if begin <= at < end]
