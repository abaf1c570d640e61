"""What a question says of an exposure: scene, f-number that counts, shutter, ISO, filters, and what is assumed."""

from __future__ import annotations

import re
from math import inf
from typing import Final

from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.near_enough import same_light_stops
from engine.answers.parts.said import interval, number, stop
from engine.answers.parts.wording import about, f_number, figures, listed, ranged, small_mm, trimmed
from engine.answers.picture.circles import glass_factor
from engine.answers.picture.moved_out import extension_mm
from engine.answers.seat.distances import distances_of
from engine.base.compact import compact
from engine.base.interval import UNKNOWN, Interval, Measure, is_known
from engine.physics import density, exposure, focus
from grammar.questions import Question

BASE_ISO = 100.0
HALF_A_FRAME: Final = "a shutter of half a frame"
SLOWEST_FRACTION_S = 0.4  # shutter times from here up are told in seconds, not as fractions
FAST_S = 1 / 1000  # below it two figures tell enough
MARK = re.compile(r"ND\s*[\d.]+", re.IGNORECASE)
TIME = re.compile(r"(?:(\d+(?:\.\d+)?)\s*/\s*)?(\d+(?:\.\d+)?)")
UP_TO: Final = "up to "  # of a variable filter whose strongest alone is told
ZERO = Interval.exact(0.0)
_TRAVEL = "travel"  # the key of how far a helicoid could be drawn out


@compact
class Light:
    """What a question says of an exposure. `counted`: the f-number that counts, close up the effective one."""

    scene: Interval
    scene_name: str
    counted: Interval | None
    counted_name: str
    shutter: Measure
    iso: float | None
    filters: tuple[str, ...]  # named in the question, by their marks
    assumed: tuple[str, ...]
    owned: tuple[str, ...] = ()  # in the gear file
    variable: Interval | None = None  # a variable filter: stops at its weakest and its strongest
    at_hand: float | None = None  # stops of density that are told without a mark: 'only have 6 stops'


def light_of(question: Question, knowledge: Knowledge) -> Light:
    """All that is said of an exposure, and what is assumed where a part is not told; the scene in EV at ISO 100."""
    assumed: list[str] = []
    scene, name, told = scene_of(question, knowledge)
    shift = number(question, "brighter")
    if shift:
        scene = scene + Interval.exact(shift)
    if shift and abs(shift) >= same_light_stops(knowledge.catalogue):
        name = f"{name}, {trimmed(abs(shift), 1)} stops {_way(shift)}"
    if not told:
        assumed.append(name)
    iso = number(question, "iso") or None
    if iso is None:
        assumed.append(f"ISO {BASE_ISO:g}")
    counted, words = _counted(question, knowledge)
    time = shutter_s(question, knowledge)
    if question.said("shutter") is None and question.said("angle") is None and is_known(time):
        assumed.append(HALF_A_FRAME)
    filters = tuple(MARK.findall(question.said("factor") or ""))
    owned = tuple(row.mark for row in knowledge.catalogue.filters.values())
    at_hand = number(question, "stops") if question.follows and told and not filters else None
    return Light(
        scene, name, counted, words, time, iso, filters, tuple(assumed), owned, variable_stops(question), at_hand
    )


def _way(shift: float) -> str:
    return "brighter" if shift > 0 else "darker"


def shutter_still(question: Question) -> bool:
    """'with ND1000' after which shutter in the sun: that is asked still, behind the filter."""
    prior, untold = question.prior, question.said("shutter") is None and question.said("frame_rate") is None
    scene = question.said("light") is not None and question.said("factor") is not None
    asked = prior is not None and (prior.mentions("which-shutter") or prior.said("factor") is not None)
    return question.follows and untold and scene and asked and not question.mentions("which-filter")


def variable_stops(question: Question) -> Interval | None:
    """The range of a variable filter that is told: 'ND2-ND400', '2-5 stops'; None where none is.

    'Up to 5 stops': from nought, since its weakest is not told.
    """
    said = question.said("variable") or ""
    if said.startswith(UP_TO):
        return Interval.between(0.0, float(said.removeprefix(UP_TO).removesuffix(" stops")))
    low, _, high = said.removesuffix(" stops").partition("-")
    if not high:
        return None
    if said.endswith(" stops"):
        return Interval.between(float(low), float(high))
    ends = [density.stops_of_name(mark) for mark in (low, high)]
    return Interval.between(ends[0].nominal, ends[1].nominal) if is_known(ends[0]) and is_known(ends[1]) else None


def _counted(question: Question, knowledge: Knowledge) -> tuple[Interval | None, str]:
    """The f-number or T-stop that counts, and how it is told: behind extension the effective one."""
    match = re.match(r"T(\d+(?:\.\d+)?)", question.said("aperture") or "")
    at = float(match[1]) if match else stop(question)
    if at is None:
        return None, ""
    name = f"T{match[1]}" if match else f"f/{f_number(at)}"
    factor = glass_factor(question, knowledge.catalogue)
    if factor is not None:
        at *= factor
        name += f" with {factor:g}x, f/{trimmed(at, 2)}"
    far = question.with_(  # what could be drawn out is not where the subject is far off
        values=tuple(row for row in question.values if row[0] != _TRAVEL),
        adapters=tuple(one for one in question.adapters if len(set(one.thickness_mm or ())) < 2),
    )
    x, lens = extension_mm(far, knowledge.catalogue), None
    if question.lens is not None:
        lens = distances_of(question.lens, knowledge.catalogue)
    if x is None or lens is None:
        return Interval.exact(at), name
    m = focus.magnification(lens.focal, Interval.exact(x))
    effective = focus.effective_f_number(Interval.exact(at), m, lens.likely_pupil)
    if not is_known(effective):
        return Interval.exact(at), name
    counts = about(effective, lambda n: f"f/{f_number(n)}")
    return effective, f"{name} behind {small_mm(x)} of extension, counting as {counts}"


def shutter_s(question: Question, knowledge: Knowledge) -> Measure:
    """The shutter time told, else the time of the usual shutter angle; unknown where neither is told."""
    told = shutters_s(question)
    if told:
        return Interval.exact(told[0])
    return usual_shutter_s(question, knowledge)


def shutters_s(question: Question) -> tuple[float, ...]:
    """Every shutter time told, in seconds, in the order told."""
    out = []
    for one in (question.said("shutter") or "").split(", "):
        match = TIME.search(one)
        if match:
            top, bottom = match.groups()
            out.append(float(top) / (float(bottom) or inf) if top else float(bottom))
    return tuple(one for one in out if one > 0)  # no shutter opens for nought


def usual_shutter_s(question: Question, knowledge: Knowledge) -> Measure:
    """The time of the shutter angle told, else of the usual one, at the frame rate told."""
    rate = number(question, "frame_rate")
    if rate is None:
        return UNKNOWN
    told = number(question, "angle")
    angle = Interval.exact(told) if told else knowledge.catalogue.assumptions["usual-shutter-angle"].value
    return exposure.shutter_of_angle_s(Interval.exact(rate), angle)


def scene_of(question: Question, knowledge: Knowledge) -> tuple[Interval, str, bool]:
    """The light told, as an exposure value, and its name; full sun where nothing is, which is then not told."""
    said = question.said("light")
    told = interval(question, "light") if said and said.startswith("EV") else None
    if told is not None:
        return told, said or "", True
    row = knowledge.catalogue.assumptions.get(f"scene-{said}") if said else None
    chosen = row or knowledge.catalogue.assumptions["scene-full-sun"]
    return chosen.value, chosen.id.removeprefix("scene-").replace("-", " "), row is not None


def setting(light: Light, *, without: str = "") -> str:
    """The exposure in words, with what is assumed; `without`: the part that is asked for (stop, shutter, iso)."""
    parts = [light.counted_name] if without != "stop" and light.counted_name else []
    if is_known(light.shutter) and without != "shutter":
        parts.append(seconds(light.shutter.nominal))
    if without != "iso":
        parts.append(f"ISO {light.iso or BASE_ISO:g}")
    ev = f"EV {ranged(light.scene, lambda value: trimmed(value, 1))}"
    parts.append(light.scene_name if light.scene_name == ev else f"{light.scene_name} ({ev})")
    behind = [*light.filters, *([f"{trimmed(light.at_hand, 1)} stops"] if light.at_hand else [])]
    if behind and without:
        parts.append("behind " + listed(behind))
    assumed = [one for one in light.assumed if not (without == "iso" and one.startswith("ISO"))]
    return ", ".join(parts) + (f"; assumed: {listed(assumed)}" if assumed else "")


def held(light: Light) -> Interval:
    """Stops that the filters told hold back together."""
    total = Interval.exact(light.at_hand or 0.0)
    for mark in light.filters:
        stops = density.stops_of_name(mark)
        total = total + stops if is_known(stops) else total
    return total


def seconds(value: float) -> str:
    """A shutter time as cameras show it."""
    if value < FAST_S:
        return f"1/{figures(1 / value, 2)} s"
    return f"1/{1 / value:.0f} s" if value < SLOWEST_FRACTION_S else f"{figures(value, 2)} s"
