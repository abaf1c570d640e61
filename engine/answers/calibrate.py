"""Setting infinity: the shim from a mark, a limit or turns of a thread, what to cut it from, and what to test on."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product

from engine.answers.howto import how_to
from engine.answers.parts.answer import ANSWERED, Answer, Line, Quantity, Told
from engine.answers.parts.in_inches import converted
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.nearby import LEAST, ONLY_NAMED
from engine.answers.parts.owned import with_own_facts
from engine.answers.parts.pitch_drift import OTHER_PITCH, drift
from engine.answers.parts.said import distance_mm, focals, mentions, number, numbers
from engine.answers.parts.wording import distance, small_mm, trimmed
from engine.answers.picture.filter_effects import rear_filter
from engine.answers.remarking import remarked
from engine.answers.seat.distances import Distances
from engine.answers.seat.spacing import usual_focals
from engine.answers.shims.after_shim import after_shim
from engine.answers.shims.bare_sensor import plate_alone
from engine.answers.shims.by_end import as_seen, shim_by
from engine.answers.shims.carried import SHIM, goes_past, is_limit, looked_up
from engine.answers.shims.error_told import Judgement, error_judged
from engine.answers.shims.infinity_doubted import doubted, said_first
from engine.answers.shims.loose import off_by_mm
from engine.answers.shims.only_so_far import asks_so_far
from engine.answers.shims.plate_changed import plate_changed
from engine.answers.shims.readings import readings_told
from engine.answers.shims.remark_carried import with_mark_asked
from engine.answers.shims.ring_of_mark import ring_of_mark
from engine.answers.shims.scale_pair import by_scale_pair
from engine.answers.shims.screwed_in import screwed_in
from engine.answers.shims.several_marks import end_of_one, of_another, of_each
from engine.answers.shims.sheets import SHEET, own_sheets, sheets_summed, shim_corrected, usual_sheets, usual_together
from engine.answers.shims.shim_effect import shim_effect
from engine.answers.shims.spacers import by_spacers
from engine.answers.shims.targets import is_target, is_tested_on, target_told
from engine.answers.shims.turning import (
    as_turns,
    asks_turns,
    lead_told,
    mark_before_turning,
    shim_for_travel,
    to_layer,
    turned,
    turns_for_travel,
)
from engine.answers.ways.ring_off import chain_on_ring, of_ring
from engine.answers.ways.told_stack import held_on_tube, is_drawn_out, with_stack
from engine.answers.where_on_scale import where_on_scale
from engine.answers.words.advice import advice_lines, named_or_near, of_shims
from engine.base.interval import Interval, is_known
from engine.base.units import MM_PER_INCH
from grammar.kinds import FOCUS_VERDICT, SHIM_CALIBRATION
from grammar.questions import Question

# where one of these is told no mark is asked for
SETTLED = frozenset({"shim_mm", "glass_shift_mm", "stack_mm", "layer_count", "thread_turns", "infinity_allowance_mm",
                     "ring_thickness_mm", "remarked_mm", "advance_per_turn_mm", "division_count",
                     "pitch_drift_mm", "tilt_mm"})  # fmt: skip
ONE_LAYER = "one layer of"  # tells how thick a sheet is, and not how thick the shim
ONE_OFF = "one-lens-off"  # the advice where the others are right
ALL_OFF = "ring-off-for-all"  # the advice where all fall short on one ring
ASK_MARK = "At which mark of the focus scale does infinity fall, and on what focal length? Then the shim can be told."
ASK_FOCAL = "What is the focal length of that lens? A mark or a far end tells nothing without it."
THICKEST = 3.0  # mm; what is more is no shim


def calibrated(question: Question, knowledge: Knowledge) -> Answer:
    """The shim by whatever was told of it, its layers and turns, and the advice that the words are about."""
    if is_drawn_out(question):
        asked = question.with_(intent=FOCUS_VERDICT)
        return with_stack(how_to(asked, knowledge), asked, knowledge)
    if question.follows and question.places("overdone"):
        question = question.with_(distance_mm=None)  # where it stopped before is no longer so
    effect = shim_effect(question, knowledge) + after_shim(question, knowledge)
    effect = effect if effect.lines else _put_back(question, knowledge)
    effect = effect if effect.lines else sheets_summed(question)
    other = converted(question) + shim_corrected(question)
    effect = effect if effect.lines else other if other.lines else where_on_scale(question, knowledge)
    if effect.lines:
        told_of = effect.quantities
        return Answer(question.text, SHIM_CALIBRATION, ANSWERED, effect.lines, question=question, quantities=told_of)
    found = plate_changed(question, knowledge) or held_on_tube(question, SHIM_CALIBRATION, knowledge)
    if found is not None:
        return found
    question = with_mark_asked(looked_up(question, knowledge.catalogue))
    stacked = by_spacers(question, "shim-calibration", knowledge)
    if stacked is not None:
        return stacked
    matters = error_judged(question, knowledge) if not mentions(question, "on-one-side") else Judgement()
    told = matters.told
    for part in _parts(with_own_facts(question, knowledge.catalogue), knowledge):
        told += part
    alone = mentions(question, "one-alone-off")  # a ring that is right for the others is not too thin
    past = Told() if alone else _past(question)
    near = ONLY_NAMED if past.lines and any(lens.ids for lens in question.lenses) else LEAST
    rows = named_or_near(question, knowledge, 2, ONLY_NAMED if told.lines else near)
    settling = [row for row in told.quantities if not (row.case or "").startswith(ONE_LAYER)]
    only_sheets = bool(told.quantities) and not settling
    told = (past + told if only_sheets or not told.lines else told) + _in_thou(told, question)
    told = said_first(question, told) + told
    early = past.lines or goes_past(question) or mentions(question, "past-infinity", "infinity-early")
    every = not (alone or early or told.lines) and mentions(question, "all-short-on-one")
    rows = of_shims(question, rows, ONE_OFF if alone else ALL_OFF if every else None, knowledge)
    lines = [*advice_lines(rows), *told.lines] if alone or _was_told(question) else [*told.lines, *advice_lines(rows)]
    if not every and not any(row.name in SETTLED for row in settling) and not (only_sheets and not goes_past(question)):
        lines += _asked_back(question)
    elif not focals(question) and (question.said("mark") or sum(row.name == "shim_mm" for row in settling) > 1):
        lines.append(Line("ask", ASK_FOCAL, wants="focal"))
    return Answer(
        question.text, "shim-calibration", ANSWERED, tuple(lines), question=question,
        chains=matters.chains or chain_on_ring(question, knowledge) or doubted(question, told, knowledge) or None,
        quantities=told.quantities,
    )  # fmt: skip


def _put_back(question: Question, knowledge: Knowledge) -> Told:
    """'if i sand too much': the way back is a shim, by the mark where infinity falls then."""
    if not mentions(question, "overdone") or any(one.isdigit() for one in question.text):
        return Told()
    text = "Too much taken off: the lens then sits too close, infinity falls before its mark. Put a shim back there."
    ask = "At which mark of the scale is a far thing sharp then, and on what focal length? That tells the shim."
    lead, tail = Told((Line("head", text),)), Told((Line("ask", ask),))
    return lead + usual_sheets(question, None, knowledge) + tail


def _past(question: Question) -> Told:
    """'the 28 goes over infinity': which way that is off, though not by how much."""
    early = mentions(question, "infinity-early") and distance_mm(question) is None
    if not early and not (goes_past(question) and mentions(question, "past-infinity")):
        return Told()
    text = "Past infinity the lens sits too close: the ring is too thin, unless it does so on its own body too."
    return Told((Line("head", f"{text} A shim cures it."),))


def _was_told(question: Question) -> bool:
    """'where does it go' after a shim: the number was told, so what else is asked of it comes first."""
    return question.follows and question.prior is not None and question.prior.intent == SHIM_CALIBRATION


_THICKEST_SHIM = 2.0  # mm


def _in_thou(told: Told, question: Question) -> Told:
    """The shim in thousandths of an inch, where they are asked for."""
    shims = [row.value.nominal for row in told.quantities if row.name == "shim_mm"]
    bare = number(question, "numbers", "length", "thickness") if not shims else None
    shims += [bare] if bare is not None and 0 < bare <= _THICKEST_SHIM else []
    if not shims or not mentions(question, "thou-or-inch"):
        return Told()
    text = f"{small_mm(shims[0])} is {trimmed(shims[0] / MM_PER_INCH * 1000, 1)} thou."
    return Told((Line("head" if bare is not None else "text", text),))


def _parts(question: Question, knowledge: Knowledge) -> Iterator[Told]:
    asked = mentions(question, "target-place") and question.follows  # 'then check at what distance' is answered first
    if asked:
        yield target_told(question, knowledge)
    if _asks_of_mark(question):
        yield remarked(question, knowledge)
        return
    if question.said("glass") is not None and not mentions(question, "glass-gone"):
        behind = rear_filter(question, knowledge)
        yield behind if behind.lines else plate_alone(question, knowledge)
    read = readings_told(question, knowledge)
    told, shim = _shims(question, knowledge) if not read.lines else (read, None)
    if shim is None and not told.lines:
        told, shim = of_ring(question, knowledge)
    sheets = _sheets(told, question, knowledge, shim if shim is not None else to_layer(question, knowledge))
    first = mentions(question, "layers-asked", "sheet-owned") and not asks_turns(
        question
    )  # what was asked for stands first
    wanted = shim if shim is not None else _told_alone(told) if told.lines else _needed(question)
    in_turns = as_turns(question, wanted, knowledge) if wanted is not None and asks_turns(question) else Told()
    after = question.follows  # 'in turns?' after how far it is off
    if first:
        yield sheets
    yield in_turns + told if after else told
    yield mark_before_turning(question, knowledge)
    yield ring_of_mark(question, told, knowledge)
    yield screwed_in(question, knowledge)
    yield turned(question, knowledge) + drift(question, knowledge) + lead_told(question) + shim_for_travel(question)
    yield in_turns if not after else Told()
    if wanted is None:
        yield turns_for_travel(question, knowledge)
    if not first:
        yield sheets
    if not asked and question.scale_pair is None:
        yield target_told(question, knowledge)


def _told_alone(told: Told) -> float | None:
    """By how much a lens is off on a ring, where that is told of one alone."""
    off = [row.value.nominal for row in told.quantities if row.name == "shim_mm" and isinstance(row.value, Interval)]
    return off[0] if len(off) == 1 else None


def _asks_of_mark(question: Question) -> bool:
    """'0.3 too thin, where does the 1 m mark go': how far it is off is told, so it is not that of infinity."""
    found = question.said("target") is not None or mentions(question, "infinity-falls-at")
    told = question.said("mark") or (question.distance_mm is not None and mentions(question, "mark-meaning"))
    return bool(told) and off_by_mm(question) is not None and not found


def _sheets(told: Told, question: Question, knowledge: Knowledge, shim: float | None) -> Told:
    """What the shim is cut from; what sits too far out is not set right by adding to it."""
    too_far = any(row.name == "register_error_mm" and row.value.least > 0 for row in told.quantities)
    return Told() if too_far or question.said(OTHER_PITCH) else _layers(question, knowledge, shim)


def _shims(question: Question, knowledge: Knowledge) -> tuple[Told, float | None]:
    """What is told for each lens, and the first shim, in mm."""
    taped = _against_tape(question, knowledge)
    if taped is not None:
        return taped
    at = number(question, "mark") if not is_tested_on(question) else None
    at = at or (distance_mm(question) if not (is_target(question) or asks_so_far(question)) else None)
    carried_mm = number(question, SHIM)
    if at is None:
        by_sight = as_seen(question, knowledge) if carried_mm is None else Told()
        return (_carried(question, carried_mm, knowledge) if carried_mm is not None else by_sight), carried_mm
    limit = is_limit(question)
    told_at = (at, *numbers(question, "distance")) if limit else numbers(question, "mark")
    each = of_each(question, told_at, knowledge.catalogue, ends=limit)
    of_other = each or (end_of_one if limit else of_another)(question, at, knowledge.catalogue)
    if of_other is not None:
        return of_other
    told, first = Told(), None
    named = focals(question)
    between = not limit and len(named) == 1 and mentions(question, "between")  # 'infinity sits between 5 and 7 m'
    ends = numbers(question, "mark") if between else (at,)
    for focal, end in product(named or usual_focals(knowledge.catalogue), ends or (at,)):
        x = Distances(focal, knowledge.catalogue).extension_at(end)
        if is_known(x):
            first = x.nominal if named and first is None else first  # of usual lengths none is that of the lens
            told += shim_by(focal, end, x, limit, question.feet, several=len(named) != 1 or len(ends) > 1)
    return told, first


def _needed(question: Question) -> float | None:
    """A shim told by its size alone: 'it needs 0.1 more'."""
    told = number(question, "total", "thickness", "numbers", "length")
    return told if told is not None and told <= THICKEST else None


def _against_tape(question: Question, knowledge: Knowledge) -> tuple[Told, float | None] | None:
    """'the scale says 2 m, the tape 2.6': the error in mm, and the shim where one is lacking of the lens named."""
    told, _ = by_scale_pair(question, knowledge)
    if not told.lines:
        return None
    error = next((row.value.least for row in told.quantities if row.name == "register_error_mm"), None)
    if error is None:
        return told, None  # taped from the front glass
    return told, -error if error < 0 and focals(question) else None


def _carried(question: Question, error: float, knowledge: Knowledge) -> Told:
    """The same ring on another lens: the same shim, and the mark where infinity should then fall."""
    by = small_mm(error)
    text = f"If the ring is the cause it is the same {by} for this lens: a shim of {by} between lens and ring, or"
    lines = [Line("head", f"{text} ring and body, on the whole seat.")]
    rows = [Quantity("shim_mm", Interval.exact(error)), Quantity("register_error_mm", Interval.exact(-error))]
    for focal in focals(question):
        mark = Distances(focal, knowledge.catalogue).mark(-error)
        if is_known(mark):
            rows.append(Quantity("scale_mark_mm", mark, f"{trimmed(focal, 1)} mm lens"))
            text = (
                f"infinity should then fall at the {distance(mark.nominal, question.feet)} mark of the"
                f" {trimmed(focal, 1)} mm lens"
            )
            lines.append(Line("fact", f"{text}; if it does not, the lens itself is off by the rest", 1))
    return Told(tuple(lines), tuple(rows))


def layers(question: Question, knowledge: Knowledge) -> Told:
    """How thick the sheets are that a shim is usually cut from, where the question speaks of a shim or of such one."""
    spoken = mentions(question, "shim", *(id_ for id_ in knowledge.catalogue.assumptions if id_.startswith(SHEET)))
    return _layers(question, knowledge, None) if spoken else Told()


def _layers(question: Question, knowledge: Knowledge, shim: float | None) -> Told:
    """How many layers of what is at hand make the shim."""
    if not mentions(question, "shim-layers") and shim is None and question.said("layer") is None:
        return Told()
    told = number(question, "total", "thickness", "numbers", "length")
    wanted = next((one for one in (shim, told, number(question, "layer")) if one is not None), None)
    if shim is None and mentions(question, "one-layer-asked"):
        return usual_sheets(question, None, knowledge)  # 'is one layer 0.1 or more'
    together = usual_together(question, knowledge) if shim is None and question.said("layer") is None else Told()
    own = together if together.lines else own_sheets(question, wanted, is_told=told is not None or shim is not None)
    return own if own.lines else usual_sheets(question, wanted, knowledge)


def _asked_back(question: Question) -> list[Line]:
    if is_target(question) or (mentions(question, "shim-layers") and not goes_past(question)):
        return []
    return [Line("ask", ASK_MARK)]
