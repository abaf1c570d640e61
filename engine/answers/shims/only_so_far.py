"""Whether a lens that sits too far out still reaches the distance that alone is needed: 'I only need it at 5 m'."""

from __future__ import annotations

from engine.answers.parts.answer import Answer, Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import distance_mm, mentions
from engine.answers.parts.wording import READS_MM, article, distance, small_mm, trimmed
from engine.answers.seat.distances import Distances, distances_of, moves_in_part
from engine.answers.seat.spacing import usual_focals
from engine.answers.shims.loose import off_by_mm
from engine.base.compact import replace
from engine.base.interval import Interval, Measure, is_known
from engine.base.span import Span
from grammar.questions import Question

OUT_OF_REACH = "is out of reach"


def asks_so_far(question: Question) -> bool:
    """'0.1 too thick, are birds at 50 m still fine': so far away is what is wanted, and not where it ends."""
    told = distance_mm(question) is not None and not mentions(question, "stops-at", "far-limit", "no-farther")
    wanted = (
        mentions(question, "is-it-fine", "fine-so", "does-it-matter", "harm-asked") and question.said("mark") is None
    )
    return told and wanted and off_by_mm(question) is not None


def with_so_far(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind what the distance needed allows, where no more than that is asked for."""
    away = distance_mm(question)
    if away is None:
        return answer
    facts = knowledge.catalogue
    if any(moves_in_part(thing, facts) for thing in question.lenses):
        return answer
    lenses = [lens for thing in question.lenses if (lens := distances_of(thing, facts)) is not None]
    off = off_by_mm(question)
    paired = all(thing is not None and thing.ids for thing in (question.lens, question.body))
    paired = paired and not mentions(question, "sits-too-far")  # by how much it is off was not told
    sits = Interval.exact(off) if off is not None else _of_chain(answer) if paired else None
    told = Told()
    for lens in lenses or [Distances(focal, facts) for focal in usual_focals(facts)]:
        told += _reached(lens, away, sits, question.feet, off is None and mentions(question, "not-reached"))
    if len(told.lines) == 1 and asks_so_far(question):
        first = told.lines[0]
        fine, harm = OUT_OF_REACH not in first.text, mentions(question, "harm-asked")
        yes = ("No, no harm there" if fine else "Yes, it matters there") if harm else "Yes" if fine else "No"
        told = Told((replace(first, text=f"{yes}: {first.text}"),), told.quantities)
    quantities = (*told.quantities, *(answer.quantities or ()))
    return replace(answer, lines=(*told.lines, *answer.lines), quantities=quantities)


def _of_chain(answer: Answer) -> Interval | None:
    """How far out the best chain sets the lens."""
    if not answer.chains:
        return None
    error = answer.chains[0].listed.judged.measured_trace.value("register_error_mm")
    return error.shortest if isinstance(error, Span) and is_known(error.shortest) else None


def _reached(lens: Distances, away: float, sits: Interval | None, feet: bool, missed: bool = False) -> Told:
    """Reached where it sits no farther out than it would be moved for that distance. `missed`: in truth it was not."""
    allowed: Measure = lens.extension_at(away)
    if not is_known(allowed):
        return Told()
    focal, there = f"{trimmed(lens.focal.nominal, 1)} mm", distance(away, feet)
    case = f"{focal}, to reach {there}"
    rows = [Quantity("register_error_mm", allowed, f"{case}, at most")]
    if sits is None:
        lens_words = f"{article(focal)} {focal} lens"
        text = f"To come sharp at {there}, {lens_words} may sit up to {small_mm(allowed.nominal)} too far out."
        return Told((Line("head", text),), tuple(rows))
    if sits.nominal < -READS_MM:
        return _made_up(lens, away, sits, allowed - sits, feet)
    if sits.nominal <= allowed.nominal + READS_MM:
        by = f"up to {small_mm(allowed.nominal)} too far out would do"
        text = f"{there} is reached with {focal}: {by}, and it sits {_where(sits.nominal)}."
        if missed:
            text = (
                f"A ring as thick as it should be reaches {there} with {focal}. Yours does not: it is more than "
                f"{small_mm(allowed.nominal)} too thick. Measure it, flange to flange, and take off what is over."
            )
        return Told((Line("head", text),), tuple(rows))
    far = lens.from_sensor(sits.nominal)
    over = sits - allowed
    if not is_known(far):
        return Told()
    rows += [Quantity("far_from_sensor_mm", far, focal), Quantity("shim_mm", over, f"{case}, to take off")]
    text = (
        f"{there} {OUT_OF_REACH}: {small_mm(sits.nominal)} too far out, {focal} stops at "
        f"{distance(far.nominal, feet)} from the sensor. For {there} it may be {small_mm(allowed.nominal)}: take "
        f"{small_mm(over.nominal)} off."
    )
    return Told((Line("head", text),), tuple(rows))


def _made_up(lens: Distances, away: float, sits: Interval, travel: Interval, feet: bool) -> Told:
    """Too close it comes sharp there as far as its own focusing makes up for it: where its ring then stands."""
    mark = lens.from_sensor(travel.nominal)
    if not is_known(mark):
        return Told()
    focal, there = f"{trimmed(lens.focal.nominal, 1)} mm", distance(away, feet)
    text = (
        f"{there} with {focal}: it sits {small_mm(-sits.nominal)} too close, so its focus ring stands near the "
        f"{distance(mark.nominal, feet)} mark there; it comes sharp if the ring turns so near."
    )
    return Told((Line("head", text),), (Quantity("scale_mark_mm", mark, f"{focal}, for {there}"),))


def _where(sits: float) -> str:
    return "just right" if sits <= READS_MM else f"{small_mm(sits)} too far out"
