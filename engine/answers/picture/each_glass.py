"""Two lenses to choose from, one of them behind glass: what each is, the glass with the one that wears it."""

from __future__ import annotations

from collections.abc import Sequence
from math import inf, log2

from engine.answers.parts.answer import Answer, Line, Quantity, Told
from engine.answers.parts.near_enough import same_light_stops
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import f_number, trimmed
from engine.answers.picture.crop_factors import Crop
from engine.base.compact import replace
from engine.base.interval import Interval
from engine.facts.catalogue import Catalogue
from grammar.questions import Question, Thing

PAIR = 2


def each_with_its_glass(question: Question, crops: list[Crop], facts: Catalogue) -> Told:
    """Nothing where the glass is not with one alone, or where the two are not set against each other."""
    lenses = [lens for lens in question.lenses if lens.focal_length_mm]
    glass = [piece for piece in question.adapters if piece.factor]
    if len(lenses) != PAIR or len(glass) != 1 or not mentions(question, "either-or"):
        return Told()
    framed = bool(question.bodies or question.things or question.said("crop"))  # else the crops are but the usual ones
    columns = [lens.column for lens in lenses]
    factors = [worn_by(lens.column, columns, glass) for lens in lenses]
    if sum(factor is not None for factor in factors) != 1:
        return Told()
    told, stops = Told(), []
    for lens, factor in zip(lenses, factors, strict=True):
        focal, at = (lens.focal_length_mm or 0.0) * (factor or 1.0), lens.f_number
        name = f"{trimmed(lens.focal_length_mm or 0.0, 1)} mm" + (f" with {factor:g}x" if factor else "")
        text, rows = f"{name} is {trimmed(focal, 1)} mm", [Quantity("focal_length_mm", Interval.exact(focal), name)]
        if at is not None:
            stops.append((at * (factor or 1.0), name))
            text += f" f/{trimmed(at * (factor or 1.0), 2)}"
            rows.append(Quantity("f_number", Interval.exact(stops[-1][0]), name))
        for crop in crops[:1] if framed else ():
            text += f", framing like {focal * crop.by_diagonal:.0f} mm on full frame ({crop.name})"
            rows.append(
                Quantity("equivalent_focal_mm", Interval.exact(focal * crop.by_diagonal), f"{name}, {crop.name}")
            )
        told += Told((Line("head", f"{text}."),), tuple(rows))
    return told + _brighter(stops, same_light_stops(facts))


def behind_either(question: Question, crops: list[Crop]) -> Told:
    """The one lens behind each of two kinds of glass to choose from; nothing where they stand one behind the other."""
    lenses = [lens for lens in question.lenses if lens.focal_length_mm]
    glass = [piece for piece in question.adapters if piece.factor]
    either = len(lenses) == 1 and are_either(glass, question)
    return _behind_each(lenses[0], glass, crops, question) if either else Told()


def are_either(glass: Sequence[Thing], question: Question) -> bool:
    """'1.4x or 2x for my 300': two kinds of glass to choose from, and not one behind the other."""
    if len(glass) != PAIR or glass[0].factor == glass[1].factor:
        return False
    first, last = sorted(piece.column for piece in glass)
    return any(first <= one.at + 1 and one.end <= last for one in question.places("or-between"))


def of_each(question: Question) -> tuple[Question, ...]:
    """The question with each of two kinds of glass to choose from alone; none where they are not."""
    glass = [piece for piece in question.adapters if piece.factor]
    if not are_either(glass, question):
        return ()
    rest = [piece for piece in question.adapters if piece not in glass]
    return tuple(question.with_(adapters=(*rest, piece)) for piece in glass)


def joined(question: Question, either: Sequence[Question], answers: Sequence[Answer]) -> Answer:
    """One answer of those for each, every number with the factor that it is of."""
    lines: list[Line] = []
    rows: list[Quantity] = []
    for one, answer in zip(either, answers, strict=True):
        factor = next(piece.factor for piece in one.adapters if piece.factor)
        lines += [Line("head", f"With {factor:g}x:"), *answer.lines]
        rows += [replace(row, case=f"{row.case}, {factor:g}x".strip(", ")) for row in answer.quantities or ()]
    return replace(answers[0], question=question, lines=tuple(dict.fromkeys(lines)), quantities=tuple(rows))


def _behind_each(lens: Thing, glass: Sequence[Thing], crops: list[Crop], question: Question) -> Told:
    """The one lens behind each glass: focal length, stop, what it costs, and what it is like on the frame told."""
    framed = bool(question.bodies or question.things or question.said("crop"))
    told, at = Told(), lens.f_number or question.f_number
    for factor in (piece.factor or 1.0 for piece in glass):
        focal, stops = (lens.focal_length_mm or 0.0) * factor, 2 * log2(factor)
        name = f"{trimmed(lens.focal_length_mm or 0.0, 1)} mm with {factor:g}x"
        rows = [Quantity("focal_length_mm", Interval.exact(focal), name)]
        rows.append(Quantity("light_difference_stops", Interval.exact(abs(stops)), f"{factor:g}x"))
        text = f"{name} is {trimmed(focal, 1)} mm" + (f" f/{trimmed(at * factor, 2)}" if at else "")
        rows += [Quantity("f_number", Interval.exact(at * factor), name)] if at else []
        text += f": {trimmed(abs(stops), 2)} stops {'slower' if stops > 0 else 'faster'}"
        for crop in crops[:1] if framed else ():
            like = focal * crop.by_diagonal
            text += f", framing like {like:.0f} mm on full frame ({crop.name})"
            rows.append(Quantity("equivalent_focal_mm", Interval.exact(like), f"{name}, {crop.name}"))
        told += Told((Line("head", f"{text}."),), tuple(rows))
    return told


def bare_beside(question: Question) -> frozenset[float]:
    """The focal lengths told to be used plain, beside one that wears glass: 'a 58 with 0.71x, a 50 without'."""
    lenses = [lens for lens in question.lenses if lens.focal_length_mm]
    glass = [piece for piece in question.adapters if piece.factor]
    if len(lenses) != PAIR or len(glass) != 1 or not mentions(question, "without-glass-too"):
        return frozenset()
    columns = [lens.column for lens in lenses]
    worn = [worn_by(lens.column, columns, glass) is not None for lens in lenses]
    bare = (lens.focal_length_mm for lens, wears in zip(lenses, worn, strict=True) if not wears)
    return frozenset(focal for focal in bare if focal) if sum(worn) == 1 else frozenset()


def worn_by(column: int, columns: Sequence[int], glass: Sequence[Thing]) -> float | None:
    """The factor of the glass told right behind the lens in this column, before the next of them."""
    end = min((other for other in columns if other > column), default=inf)
    return next((piece.factor for piece in glass if column < piece.column < end), None)


def _brighter(stops: list[tuple[float, str]], least: float) -> Told:
    if len(stops) != PAIR:
        return Told()
    (one, first), (other, second) = sorted(stops)
    apart = 2 * log2(other / one)
    text = f"{first} is the brighter by {trimmed(apart, 2)} stops, f/{f_number(one)} against f/{f_number(other)}"
    text = text if apart > least else f"{first} and {second} are as bright as each other"
    row = Quantity("light_difference_stops", Interval.exact(apart), f"{first} against {second}")
    return Told((Line("head", f"{text}."),), (row,))
