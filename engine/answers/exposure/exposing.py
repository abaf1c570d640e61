"""Exposure of a scene: the shutter, ISO or stop that is asked for, else the density; angles; loss by extension."""

from __future__ import annotations

from collections.abc import Iterator
from math import log2

from engine.answers.close.close_alone import between_sizes, light_alone
from engine.answers.close.close_picture import shown_by
from engine.answers.close.coupled import TURNED, coupled_light, pair_of
from engine.answers.close.dioptres import light_behind
from engine.answers.close.turned_round import light_reversed
from engine.answers.exposure.any_stop import EXPOSURE, at_any_stop, shutters_at_any_stop
from engine.answers.exposure.density_with_glass import density_with_glass
from engine.answers.exposure.drawn_longer import lost_by_extension
from engine.answers.exposure.each_lens import others_held_back
from engine.answers.exposure.exposure_change import changed_exposure
from engine.answers.exposure.holding_back import held_back
from engine.answers.exposure.lighting import (
    BASE_ISO,
    HALF_A_FRAME,
    Light,
    held,
    light_of,
    seconds,
    setting,
    shutter_s,
    shutter_still,
    usual_shutter_s,
)
from engine.answers.exposure.lowest_iso import below_any_body
from engine.answers.exposure.scene_of_setting import scene_of_setting
from engine.answers.exposure.since_before import since_before
from engine.answers.exposure.wide_open import goes_on_with_density, stop_or_density
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions, number, numbers, stop
from engine.answers.parts.usual_glass import with_usual_factor
from engine.answers.parts.wording import f_number, figures, ranged
from engine.answers.picture.circles import glass_factor
from engine.answers.picture.glass_light import light_of_glass
from engine.answers.picture.moved_out import extension_mm
from engine.base.compact import replace
from engine.base.interval import UNKNOWN, Interval, is_known
from engine.physics import exposure
from grammar.questions import FILTER, Question
from grammar.turns.sticking import is_open


def exposed_parts(question: Question, knowledge: Knowledge) -> Iterator[Told]:
    """The setting asked for, else the density; then what extension costs."""
    light = light_of(question, knowledge)
    asked = _asked(question, light)
    changed = changed_exposure(question, knowledge)
    of_isos = _which_iso(light, question, knowledge)
    in_ev = scene_of_setting(light, question)
    of_rate = _shutter_of_rate(light, question, knowledge)
    of_rate = of_rate if of_rate.lines else _angle_asked(question, knowledge)
    yield of_rate
    if in_ev is not None:
        yield in_ev
    elif of_isos is not None:
        yield of_isos
    elif changed is not None:
        yield changed
    elif asked == "shutter" and not of_rate.lines:
        yield _shutter(light) + _rule_of_thumb(light, question)
    elif asked == "iso":
        yield _iso(light, knowledge)
    elif asked == "stop":
        yield stop_or_density(_stop(light), light, question, knowledge)
    elif light.counted is not None and is_known(light.shutter):
        yield held_back(light, question, knowledge) + others_held_back(question, knowledge)
        yield since_before(question, knowledge.catalogue)
    elif light.counted is not None and not light.filters and _wants_density(question):
        yield held_back(_at_usual_rate(light, knowledge), question, knowledge)
    elif light.counted is None and not light.filters and _wants_density(question):
        usual = light if is_known(light.shutter) else _at_usual_rate(light, knowledge)
        still = question.topic == EXPOSURE and not mentions(question, "filtered") and usual is not light
        yield shutters_at_any_stop(light) if still else at_any_stop(usual)
    yield shutter_and_angle(question, knowledge) if not of_rate.lines else Told()
    yield coupled_light(question)
    turned = pair_of(question) is None and any(TURNED in lens.traits for lens in question.lenses)
    yield light_reversed(question, knowledge) if turned else lost_by_extension(question, knowledge)
    yield light_behind(question, knowledge)
    yield _lost_at_magnification(question, knowledge)
    if changed is not None and stop(question) is not None and glass_factor(question, knowledge.catalogue) is not None:
        yield light_of_glass(question, knowledge)
    if changed is None and (light.counted is None or not is_known(light.shutter)):
        density = density_with_glass(question, knowledge)
        yield density if density.lines else _of_glass(question, knowledge)


def _shutter_of_rate(light: Light, question: Question, knowledge: Knowledge) -> Told:
    """'whats the shutter for 25 fps': where the shutter is what is asked, it comes before what the light needs."""
    rate = number(question, "frame_rate")
    angle = number(question, "angle") or knowledge.catalogue.assumptions["usual-shutter-angle"].value.nominal
    asked = question.mentions("shutter-of-rate") and not mentions(question, "nd-or-density", "filtered")
    if rate is None or question.said("shutter") is not None or light.filters or light.at_hand or not asked:
        return Told()
    if not is_known(light.shutter):
        return Told()
    text = f"{seconds(light.shutter.nominal)}: {angle:g} degrees at {rate:g} frames a second."
    return Told((Line("head", text),), (Quantity("shutter_s", light.shutter, "angle"),))


def _angle_asked(question: Question, knowledge: Knowledge) -> Told:
    """'what angle is that at 24 fps': where the angle of a shutter is what is asked, it comes first."""
    if not mentions(question, "angle-asked") or question.said("shutter") is None:
        return Told()
    told = shutter_and_angle(question, knowledge)
    return Told(
        tuple(Line("fact" if n else "head", line.text, n) for n, line in enumerate(told.lines)), told.quantities
    )


def _of_glass(question: Question, knowledge: Knowledge) -> Told:
    """What the glass named does to the light, by the usual factor where it is named without one."""
    glazed, note = with_usual_factor(question, knowledge.catalogue)
    told = light_of_glass(glazed, knowledge)
    return told + note if told.lines else told


def _wants_density(question: Question) -> bool:
    """Whether a density is asked for in some light, without a shutter: 'which ND for f/1.4 in full sun'."""
    fixed = question.lens is not None and "fixed iris" in question.lens.traits
    put = [piece for piece in question.adapters if piece.piece != FILTER or not is_open(piece)]  # not 'what filter'
    put = [] if mentions(question, "too-bright", "sun-outside") else put  # 'its too bright outside' behind a helicoid
    counted = question.said("stops") or question.said("variable") or put
    # 'and indoors' after something else: of a light that is told in a talk it is asked what it takes
    asked = mentions(question, "filtered") or fixed or question.follows
    return asked and question.said("light") is not None and not counted


def _at_usual_rate(light: Light, knowledge: Knowledge) -> Light:
    """The exposure with the shutter of the usual frame rate and angle, which are then assumed."""
    rows = knowledge.catalogue.assumptions
    shutter = exposure.shutter_of_angle_s(rate := rows["usual-frame-rate"].value, rows["usual-shutter-angle"].value)
    said = f"{rate.nominal:g} frames a second with a shutter of half a frame"
    return replace(light, shutter=shutter, assumed=(*light.assumed, said))


def _asked(question: Question, light: Light) -> str:
    """Which of shutter, ISO and stop is the unknown: the one that is asked for by name and not told."""
    # 'what shutter and nd'
    both = is_known(light.shutter) and not light.filters and mentions(question, "nd-or-density")
    if light.counted is not None and shutter_still(question):
        return "shutter"
    told = light.counted is not None and question.f_number is not None
    if mentions(question, "which-shutter") and told and not both:
        return "shutter"  # 'only got an ND64, what shutter then': that of the frame rate no longer holds
    if mentions(question, "nd-or-density", "my-filters"):
        nd_alone = not light.filters or not mentions(question, "shutter-or-iso")
        if nd_alone:
            return ""
    goes_on = not light.filters and not mentions(question, "exposure-time") and goes_on_with_density(question)
    if goes_on and light.counted is not None and not is_known(light.shutter):
        return ""
    # of scene, stop, shutter and ISO three are told: the fourth is what is asked for
    scene = question.said("light") or ""
    scene_and_iso = bool(scene) and (light.iso is not None or scene.startswith("EV"))  # an EV is told for ISO 100
    if light.counted is not None and not is_known(light.shutter):
        close = question.said("magnification") is not None and question.said("light") is None
        if scene and light.iso is None and mentions(question, "iso-asked"):
            return "iso"
        if scene_and_iso or (mentions(question, "exposure-time") and not close):
            return "shutter"
    elif mentions(question, "iso") and light.iso is None and light.counted:
        return "iso"
    unset = question.f_number is None and question.said("aperture") is None
    if unset and goes_on_with_density(question):
        return ""
    asks = mentions(question, "which-stop")
    return "stop" if unset and (asks or scene_and_iso) and is_known(light.shutter) else ""


def _shutter(light: Light) -> Told:
    assert light.counted is not None
    time = exposure.shutter_for_s(light.scene, light.counted, Interval.exact(light.iso or BASE_ISO), held(light))
    if not is_known(time):
        return Told()
    light = replace(light, assumed=tuple(said for said in light.assumed if said != HALF_A_FRAME))
    text = f"{ranged(time, seconds)}: {setting(light, without='shutter')}."
    return Told((Line("head", text),), (Quantity("shutter_s", time),))


def _rule_of_thumb(light: Light, question: Question) -> Told:
    """'Sunny 16': at f/16 in full sun one over the ISO, a third of a stop kinder than EV 15."""
    if not mentions(question, "rule-of-thumb") or light.counted != Interval.exact(16.0):
        return Told()
    time = 1 / (light.iso or BASE_ISO)
    line = Line("fact", f"by the rule of thumb one over the ISO: {seconds(time)}", 1)
    return Told((line,), (Quantity("shutter_s", Interval.exact(time), "rule of thumb"),))


def _iso(light: Light, knowledge: Knowledge) -> Told:
    light = light if is_known(light.shutter) else _at_usual_rate(light, knowledge)
    assert light.counted is not None
    found = exposure.iso_for(light.scene, light.counted, light.shutter, held(light))
    if not is_known(found):
        return Told()
    text = f"ISO {ranged(found, lambda value: figures(value, 2))}: {setting(light, without='iso')}."
    told = Told((Line("head", text),), (Quantity("iso", found),))
    return below_any_body(found, told, knowledge) or told


def _which_iso(light: Light, question: Question, knowledge: Knowledge) -> Told | None:
    """'base 400 and 3200, which one': what the scene asks for, and the told one that is nearest to it."""
    isos = numbers(question, "iso")
    scene = question.said("light") is not None and light.counted is not None and is_known(light.shutter)
    if len(isos) < 2 or not scene or not mentions(question, "which-or"):
        return None
    assert light.counted is not None
    wanted = exposure.iso_for(light.scene, light.counted, light.shutter, held(light))
    if not is_known(wanted):
        return None
    best = min(isos, key=lambda iso: abs(log2(iso / wanted.nominal)))
    off, near = log2(wanted.nominal / best), knowledge.catalogue.assumptions["exposure-is-right"].value.nominal
    rest = "right" if abs(off) < near else f"{abs(off):.1f} stops {'dark' if off > 0 else 'bright'}"
    choice = Line("head", f"ISO {best:g}: nearest to what the scene asks for, {rest}.")
    return Told((choice,), (Quantity("iso", Interval.exact(best), "the nearest"),)) + _iso(
        replace(light, iso=None), knowledge
    )


def _stop(light: Light) -> Told:
    found = exposure.f_number_for(light.scene, light.shutter, Interval.exact(light.iso or BASE_ISO), held(light))
    if not is_known(found):
        return Told()
    text = f"f/{ranged(found, f_number)}: {setting(light, without='stop')}."
    return Told((Line("head", text),), (Quantity("f_number", found),))


def shutter_and_angle(question: Question, knowledge: Knowledge) -> Told:
    """The shutter of an angle told, or the angle of a shutter told, at a frame rate; and against the usual shutter."""
    rate = number(question, "frame_rate")
    if rate is None:
        return Told()
    usual = usual_shutter_s(question, knowledge)
    if question.said("shutter") is None:
        if not is_known(usual):
            text = "No shutter opens longer than its frame: an angle is at most 360 degrees"
            return Told((Line("text", f"{text}."),))
        angle = number(question, "angle") or knowledge.catalogue.assumptions["usual-shutter-angle"].value.nominal
        text = f"{angle:g} degrees at {rate:g} a second is {seconds(usual.nominal)}"
        return Told((Line("fact", text, 1),), (Quantity("shutter_s", usual, "angle"),))
    told = shutter_s(question, knowledge)
    angle_of = exposure.angle_of_shutter_deg(Interval.exact(rate), told)
    if not (is_known(told) and is_known(angle_of)):
        return Told()
    text = f"{seconds(told.nominal)} at {rate:g} a second is a shutter angle of {figures(angle_of.nominal, 3)} degrees"
    out = Told((Line("fact", text, 1),), (Quantity("shutter_angle_deg", angle_of),))
    stops = exposure.shutter_stops(usual, told) if is_known(usual) else UNKNOWN
    if is_known(stops) and is_known(usual) and abs(stops.nominal) > 0.05:
        way = "less" if stops.nominal < 0 else "more"
        text = f"against {seconds(usual.nominal)} that is {abs(stops.nominal):.1f} stops {way} light"
        out += Told((Line("fact", text, 1),), (Quantity("light_difference_stops", abs(stops), "shutter"),))
    return out


def _lost_at_magnification(question: Question, knowledge: Knowledge) -> Told:
    """What a magnification costs in light, and which f-number then counts."""
    wanted, both = number(question, "magnification"), numbers(question, "magnification")
    if wanted is None or extension_mm(question, knowledge.catalogue) is not None:
        return Told()
    if len(both) == 2:
        return between_sizes(*both)
    return light_alone(question, wanted, shown_by(question, knowledge))
