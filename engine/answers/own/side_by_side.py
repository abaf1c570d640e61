"""Lenses or bodies side by side on what differs: where each is ahead, then a line for each quantity that differs."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from engine.answers.own.all_on_all import IS_MISSING, far_text
from engine.answers.own.own_cases import Case, alone, as_interval, on_body
from engine.answers.own.own_rulings import open_seat
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.own_words import OwnWords, told_value
from engine.answers.parts.resolve import BodySide, LensSide, body_side, lens_side
from engine.answers.parts.wording import listed
from engine.answers.seat.chain_numbers import price_text
from engine.answers.seat.iris import iris_text, iris_told
from engine.answers.seat.telling import CERTAINTY_WORDS, finding_text, life_line
from engine.base.interval import Interval
from grammar.questions import Question

MOST = 40
FEW = 3  # sides that are told in one line; more are a table
_ALIKE = frozenset({"infinity", "iris"})  # what is told even where it does not differ
_NO_MERIT = frozenset({"seat_mm"})  # a ring is no better for being thin
UNKNOWN_TOLD = "not known"
ALIKE: Final = "They do not differ in any number that is known."


def sides_of(question: Question, knowledge: Knowledge) -> list[Case]:
    """The lenses on the bodies of a question that sets them against each other; empty where it names fewer than two.

    A lens of which only the mount is told has nothing to set against another but its mount, which is told elsewhere.
    """
    facts = knowledge.catalogue
    things = question.lenses
    if question.sought is not None and question.sought.of == "lenses":
        from engine.answers.own.own_places import own

        things = own(facts, "lens")
    lenses = [side for thing in things if isinstance(side := lens_side(thing, facts), LensSide)]
    bodies = [body for thing in question.bodies if isinstance(body := body_side(thing, facts), BodySide)]
    by_mount = question.sought is None and any(lens.alone for lens in lenses)
    if by_mount or len(lenses) * max(1, len(bodies)) < 2:
        return []
    if not bodies:
        return [alone(lens, knowledge) for lens in lenses[:MOST]]
    names = {
        (n, m): lens.words if len(bodies) == 1 else body.words if len(lenses) == 1 else f"{lens.words} on {body.words}"
        for n, lens in enumerate(lenses)
        for m, body in enumerate(bodies)
    }
    pairs = [(n, m) for m in range(len(bodies)) for n in range(len(lenses))][:MOST]
    return [on_body(question, lenses[n], bodies[m], knowledge, _bare(names[n, m])) for n, m in pairs]


def _bare(name: str) -> str:
    """A described lens without its article: 'the 25 mm C lens' reads better in a row than 'a 25 mm ...'."""
    return name.removeprefix("a ").removeprefix("an ")


def side_by_side(sides: Sequence[Case], knowledge: Knowledge, feet: bool = False) -> Told:
    """What sets the sides apart. What is alike is left out; what is not known of one is said."""
    words = OwnWords.of(knowledge.catalogue)
    told = list(_rows(sides, words, feet))
    rows = [(label, texts) for label, texts in told if len(set(map(_bare_number, texts))) > 1]
    same = [(label, texts[0]) for label, texts in told if len(set(texts)) == 1]
    alike = [text if label == "infinity" else f"iris {text}" for label, text in same if label in _ALIKE and text]
    unknown = [label for label, text in same if text == UNKNOWN_TOLD]
    lines = [Line("head", line) for line in _ahead(sides, words)]
    if not rows:
        lines.append(Line("text", ALIKE))
    elif len(sides) <= FEW:
        for label, texts in rows:
            said = "; ".join(f"{side.name} {text}" for side, text in zip(sides, texts, strict=True))
            lines.append(Line("fact", f"{label}: {said}", 1))
    else:
        lines.append(Line("columns", "\t".join(["lens", *(label for label, _ in rows)])))
        for n, side in enumerate(sides):
            lines.append(Line("row", "\t".join([side.name, *(texts[n] for _, texts in rows)])))
        missing = f" {IS_MISSING}" if any("?" in line.text for line in lines) else ""
        lines.append(
            Line("text", f"Likeliest values; two or three compared by name are told with their ranges.{missing}")
        )
    lines += _dangers(sides, knowledge, feet)
    if alike:
        lines.append(Line("text", f"Alike: {'; '.join(alike)}."))
    if unknown:
        lines.append(Line("text", f"Not known of any: {listed(unknown)}."))
    return Told(tuple(lines), tuple(_quantities(sides, words)))


def _dangers(sides: Sequence[Case], knowledge: Knowledge, feet: bool) -> Iterator[Line]:
    for side in sides:
        for finding in side.judged.findings if side.judged is not None else ():
            if finding.severity == "danger" and side.judged is not None:
                yield Line("danger", f"{side.name}: {finding_text(finding, side.judged, knowledge, feet)}")


def _bare_number(text: str) -> str:
    """'50 cm' of '50 cm (48 to 53 cm)': what differs only in how surely it is known does not differ."""
    return text.split(" (")[0] if text[:1].isdigit() else text


def _rows(sides: Sequence[Case], words: OwnWords, feet: bool) -> Iterator[tuple[str, list[str]]]:
    """Every row, alike or not: how it focuses far, each named quantity in the order of the word list, iris and way."""
    placed = any(side.body is not None for side in sides)
    many = len(sides) > FEW
    if placed:
        told = [far_text(side, feet) if many else _far(side, feet) for side in sides]
        yield ("far limit" if many else "infinity"), told
    for quantity, label in words.labels.items():
        if quantity in words.aside or (many and quantity not in words.brief):
            continue
        if quantity == "lens_mount":
            yield label, [side.lens.mount.designation for side in sides]
        elif placed or quantity not in ("price_usd", "seat_mm", "pieces", "lit_share", "equivalent_focal_mm",
                                        "equivalent_f_number", "overhang_mm"):  # fmt: skip
            texts = [_text(side, quantity, feet) for side in sides]
            yield label, [_bare_number(text) for text in texts] if many else texts
    if placed and many:
        yield "iris", [iris_text(side.judged)[0].replace("-", " ") if side.judged else "" for side in sides]
    elif placed:
        yield "iris", [iris_told(side.judged)[1] if side.judged else "" for side in sides]
        yield "way", [
            f"{side.title}{_price(side)}" if side.judged is not None else "none found" for side in sides
        ]  # fmt: skip


def _price(side: Case) -> str:
    price = price_text(side.judged.chain) if side.judged is not None else ""
    return f" [{price}]" if price else ""


def _far(side: Case, feet: bool) -> str:
    judged = side.judged
    if judged is None:
        return "no way found"
    sure = "" if judged.certainty == "unknown" else f" ({CERTAINTY_WORDS[judged.certainty]})"
    return f"{life_line(judged, feet).split(', and ')[0]}{sure}"


def _text(side: Case, quantity: str, feet: bool) -> str:
    if side.has_no_way and quantity in ("price_usd", "seat_mm", "pieces", "overhang_mm", "near_from_sensor_mm"):
        return "no way found"
    return told_value(quantity, side.value(quantity), feet)


def _ahead(sides: Sequence[Case], words: OwnWords) -> Iterator[str]:
    """In what each side is surely ahead of all others: 'avocet: fastest, lightest'."""
    ahead: dict[str, list[str]] = {}
    view = words.bests.get("equivalent_focal_mm") and any(side.body is not None for side in sides)
    for quantity, (least, word) in words.bests.items():
        if quantity in words.aside or quantity in _NO_MERIT or (view and quantity == "focal_length_mm"):
            continue  # the view tells it
        values = [as_interval(side.value(quantity)) for side in sides if not side.has_no_way]
        if len(values) < len(sides) or any(value is None for value in values):
            continue
        if any(open_seat(quantity, side) is not None for side in sides):
            continue
        known = [(value if least else -value) for value in values if value is not None]
        best = min(range(len(known)), key=lambda n: known[n].greatest)
        if all(known[best].greatest < other.least for n, other in enumerate(known) if n != best):
            ahead.setdefault(sides[best].name, []).append(word)
    if ahead:
        yield ". ".join(f"{name[:1].upper()}{name[1:]}: {', '.join(said)}" for name, said in ahead.items()) + "."


def _quantities(sides: Sequence[Case], words: OwnWords) -> Iterator[Quantity]:
    for side in sides:
        for quantity in words.labels:
            value = as_interval(side.value(quantity))
            if isinstance(value, Interval) and not (side.has_no_way and quantity in _OF_WAY):
                yield Quantity(quantity, value, side.name)


_OF_WAY = frozenset({"price_usd", "seat_mm", "pieces", "overhang_mm"})
