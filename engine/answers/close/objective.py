"""What an infinity objective gives behind a lens that serves as its tube lens: its mark, by their focal lengths."""

from __future__ import annotations

import re

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import focals, last_said, lengths_of_pieces, mentions, number, numbers
from engine.answers.parts.wording import ranged, times, trimmed
from engine.base.interval import Interval, is_known
from engine.facts.catalogue import Catalogue
from engine.physics import closeup
from grammar.questions import Question

USUAL = "usual-tube-lens"
NEEDS_TUBE_LENS = "needs-tube-lens"  # trait of mounts whose lenses form no picture by themselves
CORRECTED = "infinity corrected"  # trait of a lens that is told so
FIELD = "rms-objective"  # the row of circles that tells an objective's field behind the tube lens it means
_SHORTEST, _LONGEST = 50.0, 600.0  # mm, that a tube lens may have


def behind_tube_lens(question: Question, facts: Catalogue) -> Told:
    """The magnification of an infinity objective behind the lens told; nothing where none is spoken of."""
    marked = number(question, "magnification")
    if not _is_infinite(question, facts):
        return Told()
    told = _tubes(question)
    system = _of_system(question, told) or _usual_of_two(told, facts)
    tube = next((one for one in told if one != system), system)
    if tube is None or marked is None:
        return _by_itself(question, marked, facts) if tube is None else Told()
    assumed = facts.assumptions[USUAL].value
    meant = Interval.exact(system) if system is not None else assumed
    found = closeup.through_tube_lens(Interval.exact(marked), Interval.exact(tube), meant)
    own = closeup.objective_focal_mm(Interval.exact(marked), meant)
    if not is_known(found) or not is_known(own):
        return Told()
    by = ranged(meant, lambda value: f"{trimmed(value, 1)} mm")
    text = (
        f"{times(marked)} marked for a tube lens of {by}, behind {trimmed(tube, 1)} mm: {ranged(found, times)}. It"
        " grows and shrinks with the tube lens, and the image circle with it: a short one fills only a small sensor."
        " That lens stays at its infinity mark, focus by moving the whole."
    )
    lines = [Line("head", text), Line("fact", f"the objective itself has {ranged(own, lambda f: f'{f:.1f} mm')}", 1)]
    circle = closeup.through_tube_lens(facts.circles[FIELD].image_circle_mm, Interval.exact(tube), meant)
    rows = [Quantity("image_circle_mm", circle, f"behind {trimmed(tube, 1)} mm")] if is_known(circle) else []
    if is_known(circle):
        lines.append(Line("fact", f"image circle {ranged(circle, lambda d: f'{d:.0f} mm')} (typical of objectives)", 1))
    if system is None:
        says = facts.assumptions[USUAL].says
        lines.append(Line("ask", f"Which tube lens is its mark meant for? {says[:1].upper()}{says[1:]}."))
    case = f"behind {trimmed(tube, 1)} mm"
    return Told(tuple(lines), (Quantity("magnification", found, case), Quantity("objective_focal_mm", own), *rows))


def _by_itself(question: Question, marked: float | None, facts: Catalogue) -> Told:
    """That it forms no picture without a lens behind it, where none is told."""
    lens = question.lens
    own = facts.mounts.get(lens.ids[0]) if lens is not None and lens.ids else None
    of_mount = own is not None and NEEDS_TUBE_LENS in own.traits
    bare = lens is not None and own is None and CORRECTED in lens.traits
    if not (of_mount or bare) or mentions(question, "tube-lens-told"):
        return Told()
    by = ranged(facts.assumptions[USUAL].value, lambda value: f"{trimmed(value, 1)} mm")
    size = times(marked) if marked is not None else "its mark"
    text = (
        "By itself it forms no picture, however far it stands off: behind the infinity sign the light runs parallel."
        f" Put a tube lens between, which gives {size} at {by}, or a tele of such a length set to infinity."
    )
    return Told((Line("head", f"{text} {own.note}".rstrip() if own is not None else text),))


def _is_infinite(question: Question, facts: Catalogue) -> bool:
    """Whether an infinity objective is spoken of, by words for it or by its mount."""
    mounts = [facts.mounts[lens.ids[0]] for lens in question.lenses if lens.ids and lens.ids[0] in facts.mounts]
    return mentions(question, "infinity-objective") or any(NEEDS_TUBE_LENS in one.traits for one in mounts)


def _tubes(question: Question) -> tuple[float, ...]:
    """Every focal length told that a tube lens may have, of the lenses first."""
    pieces = tuple(high for _, high in lengths_of_pieces(question))
    found = (*focals(question), *pieces, *numbers(question, "numbers", "length", "thickness", "extension"))
    return tuple(dict.fromkeys(one for one in found if _SHORTEST <= one <= _LONGEST))


def _usual_of_two(told: tuple[float, ...], facts: Catalogue) -> float | None:
    """'4x, infinity 200 mm, on a 100 mm tube lens': of two the one that marks are meant for."""
    meant = facts.assumptions[USUAL].value
    usual = [one for one in told if meant.least <= one <= meant.greatest]
    return usual[0] if len(told) == len(usual) + 1 == 2 else None


def _of_system(question: Question, told: tuple[float, ...]) -> float | None:
    """The one of several that stands nearest to what tells the system's."""
    at = last_said(question, "tube-of-system")
    if at < 0 or not told:
        return None
    places = [(match.start(), float(match[0])) for match in re.finditer(r"\d+(?:\.\d+)?", question.text)]
    near = [(abs(place - at), value) for place, value in places if value in told]
    return min(near)[1] if near else None
