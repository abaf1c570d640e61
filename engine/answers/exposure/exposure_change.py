"""One exposure made into another: what a change of stop, shutter, ISO, filter or glass asks of the rest.

Nothing of the scene need be known: a metered setting stands for it.
"""

from __future__ import annotations

from math import log2

from engine.answers.exposure.holding_back import by_filters
from engine.answers.exposure.lighting import Light, held, light_of, seconds, shutters_s
from engine.answers.exposure.made_up import made_up
from engine.answers.exposure.stop_steps import stops_said
from engine.answers.exposure.two_stops import FIXED, metered_first, stops_told
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import is_led, mentions, number, numbers
from engine.answers.parts.wording import f_number, listed, trimmed
from engine.answers.picture.circles import glass_factor
from engine.base.compact import compact, replace
from engine.base.interval import Interval, is_known
from engine.physics import exposure
from grammar.questions import Question

_WAS = "was"  # a phrase that is mentioned
LEAST_CHANGE = 0.005  # stops; less is no change


@compact
class Change:
    """What changes, in words, and by how many stops it makes the picture brighter."""

    says: str
    brighter: float


def changed_exposure(question: Question, knowledge: Knowledge) -> Told | None:
    """What the change that is told asks for; None where none is, so that the scene decides."""
    times = shutters_s(question)
    off = _off_by(question, times, knowledge)
    if off is not None:
        return off
    light = light_of(question, knowledge)
    both = len(times) > 1 and _has_pair(question)  # one whole setting and another: the scene is only told beside
    settled = made_up(question, times, held(light)) if both or not question.said("light") else None
    if settled is not None:
        return settled
    changes = _changes(question, knowledge)
    if len(times) > 1:
        return _between_shutters(*_in_order(times, question), changes, question, knowledge)
    if question.said("light") and not _has_pair(question):
        return None
    if times and changes and _is_metered(question):
        filtered = Told((), (Quantity("nd_stops", held(light), "filters"),)) if light.filters else Told()
        opened = _stop_kept_at(times[0], changes, question)
        if opened.lines:
            return opened + filtered
        return _kept_shutter(times[0], changes, question, knowledge) + _new_shutter(times[0], changes) + filtered
    if not times and len(numbers(question, "iso")) > 1:
        first, last = _in_order(numbers(question, "iso"), question)
        stops = log2(last / first)
        had = number(question, "stops") or held(light).nominal
        if had and mentions(question, "filtered"):
            return _density_for(had, stops, f"ISO {first:g} to ISO {last:g}", knowledge, light)
        way = "more" if stops > 0 else "less"
        text = f"ISO {first:g} to ISO {last:g}: {trimmed(abs(stops), 2)} stops {way} sensitive"
        return Told((Line("head", f"{text}."),), (light_by(stops, "ISO"),))
    return (_between_stops(question, knowledge) or _new_stop(question, knowledge)) if not times else None


def _density_for(had: float, brighter: float, because: str, knowledge: Knowledge, light: Light) -> Told:
    """The density that was right, once something else is set that makes the picture so much brighter."""
    exact = Interval.exact(had + brighter)
    way = "brighter" if brighter > 0 else "darker"
    text = f"{because} is {trimmed(abs(brighter), 2)} stops {way}: {trimmed(had, 2)} stops of ND become"
    if exact.nominal <= 0:
        return Told((Line("head", f"{text} none."),), (light_by(brighter, "ISO"),))
    told = Told(
        (Line("head", f"{text} {trimmed(exact.nominal, 2)}."),),
        (Quantity("nd_stops", exact), light_by(brighter, "ISO")),
    )
    return told + by_filters(exact, replace(light, filters=()), knowledge)


def _between_stops(question: Question, knowledge: Knowledge) -> Told | None:
    """'ND to go from f/11 to f/2': the density that keeps the shutter while the lens is opened so far."""
    light = light_of(question, knowledge)
    stops = stops_told(question)
    if len(stops) != 2 or light.filters or not mentions(question, "filtered") or question.said("light"):
        return None
    closed, opened = max(stops), min(stops)
    exact = Interval.exact(2 * log2(closed / opened))
    if mentions(question, "between") or exact.nominal < LEAST_CHANGE:
        return None
    text = f"{trimmed(exact.nominal, 2)} stops of ND let f/{f_number(closed)} be opened to f/{f_number(opened)}."
    told = Told((Line("head", text),), (Quantity("nd_stops", exact, "the shutter kept"),))
    return told + by_filters(exact, light, knowledge)


def _off_by(question: Question, times: tuple[float, ...], knowledge: Knowledge) -> Told | None:
    """'3 stops over at 1/50': what puts it right, each alone. None where nothing is said to be over or under."""
    stops = number(question, "stops")
    over = mentions(question, "overexposed") and not mentions(question, "split-over")
    under = mentions(question, "underexposed")
    measured = times or question.said("iso") or mentions(question, "filtered", "metered-so")
    if stops is None or over == under or not measured or len(times) > 1 or question.said("light"):
        return None
    off = stops if over else -stops
    cures, rows = [], [light_by(off, "over" if over else "under")]
    iso, at = number(question, "iso"), question.stops[0] if question.stops else question.f_number
    if times:
        right = exposure.shutter_behind_s(Interval.exact(times[0]), Interval.exact(-off))
        if is_known(right):
            cures.append(seconds(right.nominal))
            rows.append(Quantity("shutter_s", right, "put right"))
    if at is not None:
        right = exposure.f_number_after(Interval.exact(at), Interval.exact(off))
        if is_known(right):
            cures.append(f"f/{f_number(right.nominal)}")
            rows.append(Quantity("f_number", right, "put right"))
    if iso is not None:
        cures.append(f"ISO {iso / 2**off:.0f}")
        rows.append(Quantity("iso", Interval.exact(iso / 2**off), "put right"))
    cures = cures or ["the shutter, the stop or the ISO by as much"]
    if not over:
        return Told((Line("head", f"{stops_said(stops)} under: {' or '.join(cures)} puts it right."),), tuple(rows))
    light = light_of(question, knowledge)
    exact = Interval.exact(stops)
    text = f"{stops_said(stops)} over: ND of {stops_said(stops)} puts it right, or {' or '.join(cures)}."
    if light.filters and mentions(question, "is-it-enough"):
        left = stops - held(light).nominal
        enough = f"{listed(light.filters)}: {stops_said(held(light).nominal)} of ND for {stops_said(stops)} too many"
        lack = f"No, {enough}, still {stops_said(left)} over."
        text = f"Yes, {enough}." if left <= LEAST_CHANGE else lack
        return Told((Line("head", text),), (Quantity("nd_stops", exact), light_by(max(left, 0.0), "left over")))
    if light.filters:
        exact = exact + held(light)
        text = f"{stops_said(stops)} over with {listed(light.filters)} on: {stops_said(exact.nominal)} of ND in all."
        text += f" Or {' or '.join(cures)}."
    told = Told((Line("head", text),), (Quantity("nd_stops", exact), *rows))
    return told + by_filters(exact, replace(light, filters=()), knowledge)


def _changes(question: Question, knowledge: Knowledge) -> list[Change]:
    """Every change told but that of the shutter."""
    out: list[Change] = []
    stops = metered_first(question)
    if len(stops) > 1:
        first, last = stops[0], stops[-1]
        out.append(Change(f"f/{f_number(first)} to f/{f_number(last)}", 2 * log2(first / last)))
    isos = numbers(question, "iso")
    isos = _in_order(isos, question) if len(isos) > 1 else isos
    if len(isos) > 1:
        out.append(Change(f"ISO {isos[0]:g} to ISO {isos[-1]:g}", log2(isos[-1] / isos[0])))
    light = light_of(question, knowledge)
    if light.filters:
        off = mentions(question, "time-without")  # '10 minutes with ND1000, what was it without'
        says = f"{'Without ' if off else ''}{listed(light.filters)}, {trimmed(held(light).nominal, 2)} stops"
        out.append(Change(says, held(light).nominal if off else -held(light).nominal))
    told = number(question, "stops")
    opened = mentions(question, "opened-so-far")
    if told is not None and light.filters and question.follows and opened != mentions(question, "closed-so-far"):
        # 'and if I open up two stops', with the filter on
        way = "opened up" if opened else "stopped down"
        out.append(Change(f"{stops_said(told)} {way}", told if opened else -told))
    elif told is not None and light.filters and mentions(question, "polariser"):
        out.append(Change(f"the polariser, {stops_said(told)}", -told))  # beside the grey one
    if told is not None and not light.filters:
        taken_off = mentions(question, "filtered") and mentions(question, "time-without")
        shorter = mentions(question, "faster-now") or taken_off
        way = "of ND" if mentions(question, "filtered") else "less light"
        way = "of ND off" if taken_off else "more light" if shorter else way
        out.append(Change(f"{stops_said(told)} {way}", told if shorter else -told))
    factor = glass_factor(question, knowledge.catalogue)
    if factor is not None:
        out.append(Change(f"glass of {factor:g}x", -2 * log2(factor)))
    return [one for one in out if abs(one.brighter) > LEAST_CHANGE]


def _in_order(told: tuple[float, ...], question: Question) -> tuple[float, float]:
    """The value before and the one after; what is told first of 'this instead of that' comes after."""
    was = is_led(told[-1], _WAS, question)  # 'now 800, was 100'
    return (told[-1], told[0]) if was or mentions(question, "instead-of") else (told[0], told[-1])


def _has_pair(question: Question) -> bool:
    """Whether two stops or two ISOs are told: one setting and another."""
    return len(stops_told(question)) > 1 or len(numbers(question, "iso")) > 1


def _is_metered(question: Question) -> bool:
    """Whether the shutter told belongs to the setting before the change, and not to one that is wanted of a scene."""
    alone = not question.said("iso") and not question.stops and question.lens is None
    # 'ND1000 on 1/250 f/8': a whole setting, and nothing of the scene or of the film's speed
    alone = alone or not any(question.said(key) for key in ("iso", "light", "frame_rate"))
    return _has_pair(question) or alone or mentions(question, "metered")


def _new_shutter(time: float, changes: list[Change]) -> Told:
    brighter = sum(one.brighter for one in changes)
    after = exposure.shutter_behind_s(Interval.exact(time), Interval.exact(-brighter))
    if not is_known(after):
        return Told()
    way = "shorter" if brighter > 0 else "longer"
    if abs(brighter) < LEAST_CHANGE:
        text = f"{listed([one.says for one in changes])} make up for one another: {seconds(time)} stays."
        return Told((Line("head", text),), (Quantity("shutter_s", Interval.exact(time)),))
    because = listed([one.says for one in changes])
    text = f"{because}: {seconds(time)} becomes {seconds(after.nominal)}, {trimmed(abs(brighter), 2)} stops {way}."
    return Told((Line("head", text),), (Quantity("shutter_s", after), light_by(brighter, "change")))


def _kept_shutter(time: float, changes: list[Change], question: Question, knowledge: Knowledge) -> Told:
    """'f/8 metered, stuck at f/2.8, which ND': what is to be held back for the shutter to stay, where density is."""
    light, brighter = light_of(question, knowledge), sum(one.brighter for one in changes)
    filtered = bool(light.filters) or (question.said("stops") is not None and not _has_pair(question))
    wanted = mentions(question, "filtered") or any(FIXED in lens.traits for lens in question.lenses)
    if filtered or abs(brighter) < LEAST_CHANGE or not wanted:
        return Told()
    if brighter < 0:
        text = f"No ND: {listed([one.says for one in changes])} is {trimmed(-brighter, 2)} stops darker already."
        return Told((Line("head", text),))
    exact = Interval.exact(brighter)
    text = f"{trimmed(brighter, 2)} stops of ND keep {seconds(time)}: {listed([one.says for one in changes])}."
    told = Told((Line("head", text),), (Quantity("nd_stops", exact, "the shutter kept"),))
    return told + by_filters(exact, light, knowledge)


def _stop_kept_at(time: float, changes: list[Change], question: Question) -> Told:
    """'f/8 1/50, ND 0.9 on, what stop now': the f-number that makes up for the change while the shutter stays."""
    told, brighter = stops_told(question), sum(one.brighter for one in changes)
    timed = mentions(question, "which-shutter") and not mentions(question, "which-stop")  # 'what shutter now'
    if len(told) != 1 or timed or not mentions(question, "which-stop-now") or abs(brighter) < LEAST_CHANGE:
        return Told()
    at = exposure.f_number_after(Interval.exact(told[0]), Interval.exact(brighter))
    if not is_known(at):
        return Told()
    because = listed([one.says for one in changes])
    text = f"{because}: f/{f_number(told[0])} becomes f/{trimmed(at.nominal, 2)} while {seconds(time)} stays."
    return Told((Line("head", text),), (Quantity("f_number", at, "the shutter kept"), light_by(brighter, "change")))


def _new_stop(question: Question, knowledge: Knowledge) -> Told | None:
    """'f/8 without, ND8 on: what stop': the f-number that a filter asks for, where no shutter is spoken of."""
    light = light_of(question, knowledge)
    asks = mentions(question, "which-stop-now")
    if not light.filters or len(question.stops) != 1 or not asks or question.said("iso") or question.said("frame_rate"):
        return None
    opened = exposure.f_number_after(Interval.exact(question.stops[0]), -held(light))
    if not is_known(opened):
        return None
    text = (
        f"Behind {listed(light.filters)} f/{f_number(question.stops[0])} becomes f/{trimmed(opened.nominal, 2)}, at "
        "the same shutter and ISO."
    )
    return Told((Line("head", text),), (Quantity("f_number", opened, "behind the filter"),))


def _between_shutters(
    first: float, last: float, changes: list[Change], question: Question, knowledge: Knowledge
) -> Told:
    """Stops between two shutters; where density is asked for, what has to be held back to get the longer one."""
    light = light_of(question, knowledge)
    others = [one for one in changes if not light.filters or not one.says.startswith(light.filters[0])]
    others = [one for one in others if " to " in one.says]
    apart = log2(last / first)
    if mentions(question, "filtered", "is-wanted"):
        wanted = abs(apart) + sum(one.brighter for one in others)
        beside = f", {listed([one.says for one in others])}" if others else ""
        short, long = sorted((first, last))
        text = f"{seconds(short)} metered, {seconds(long)} wanted{beside}"
        if wanted <= 0:
            return Told((Line("head", f"No ND: {text}: {trimmed(-wanted, 2)} stops of light are lacking."),))
        exact = Interval.exact(wanted)
        head = Line("head", f"{trimmed(wanted, 2)} stops of ND to hold back: {text}.")
        told = Told((head,), (Quantity("nd_stops", exact), light_by(wanted, "between the shutters")))
        return told + by_filters(exact, light, knowledge)
    if light.filters and mentions(question, "by-how-much"):
        others = [Change(f"{listed(light.filters)}, {trimmed(held(light).nominal, 2)} stops", -held(light).nominal)]
    way = "more" if apart > 0 else "less"
    text = f"{seconds(first)} to {seconds(last)} is {trimmed(abs(apart), 2)} stops {way} light"
    rows = (light_by(apart, "between the shutters"),)
    if not others:
        return Told((Line("head", f"{text}."),), rows)
    net = apart + sum(one.brighter for one in others)
    in_all = f"In all the picture is {trimmed(abs(net), 2)} stops {'brighter' if net > 0 else 'darker'}."
    if abs(net) < LEAST_CHANGE:
        in_all = "In all nothing changes: the one makes up for the other."
    rest = [Line("fact", f"{one.says} is {trimmed(abs(one.brighter), 2)} stops {_way(one)}", 1) for one in others]
    return Told((Line("head", in_all), Line("fact", text, 1), *rest), (light_by(net, "in all"), *rows))


def _way(change: Change) -> str:
    return "brighter" if change.brighter > 0 else "darker"


def light_by(value: float, case: str) -> Quantity:
    """By how many stops the light differs, either way."""
    return Quantity("light_difference_stops", Interval.exact(abs(value)), case)
