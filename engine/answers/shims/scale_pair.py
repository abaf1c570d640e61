"""The error of the seat that a distance scale shows, which says other than the tape."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Line, ListedChain, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.near_enough import wrong_seat_mm
from engine.answers.parts.said import distance_mm, focals, number, stop
from engine.answers.parts.wording import distance, small_mm, trimmed
from engine.answers.seat.distances import Distances
from engine.answers.seat.spacing import USUAL_FORMAT, usual_focals
from engine.answers.seat.standin import as_listed, judged_alone
from engine.base.interval import Interval, is_known
from engine.physics import focus
from grammar.kinds import FOCUS_VERDICT, SHIM_CALIBRATION
from grammar.questions import Question
from grammar.words.mentioned import Mention

MOST_SHARE: Final = 40.0  # per cent that a scale is off by


def by_scale_pair(question: Question, knowledge: Knowledge) -> tuple[Told, tuple[ListedChain, ...]]:
    """The error in mm for each lens named, else for usual ones, what mends it, and the first lens judged with it."""
    pair = question.scale_pair
    if pair is None:
        return _by_share(question, knowledge), ()
    mark, sharp = pair
    if question.mentions("taped-from-front"):
        return _from_front(mark, sharp, question.feet), ()
    facts, feet = knowledge.catalogue, question.feet
    named = tuple(focal for focal in focals(question) if focal * 1000.0 not in pair)
    rows: list[tuple[float, float]] = []
    most = wrong_seat_mm(facts)
    for focal in named or usual_focals(facts):
        lens = Distances(focal, facts)
        set_to, true = lens.extension_at(mark), lens.extension_at(sharp)
        if is_known(set_to) and is_known(true) and (named or abs(true.nominal - set_to.nominal) <= most):
            rows.append((focal, true.nominal - set_to.nominal))
    if not rows:
        return Told(), ()
    thin = rows[0][1] < 0
    way, mend = ("close", "add a shim of") if thin else ("far out", "take off")
    parts = ", ".join(f"{trimmed(focal, 1)} mm lens {small_mm(abs(error))}" for focal, error in rows)
    text = (
        f"Set to {distance(mark, feet)} it is sharp at {distance(sharp, feet)}: the lens sits too {way}, the ring is "
        f"too {'thin' if thin else 'thick'}, by: {parts}. All marks read {'short' if thin else 'long'}; {mend} "
        "that much, and the scale is right."
    )
    quantities: list[Quantity] = []
    if named:
        ends = [_end(focal, error, question, knowledge) for focal, error in rows]
        far = "".join(said for said, _ in ends)
        text = f"{far.strip()} {text}" if question.mentions("far-end-asked") else text + far
        quantities += [row for _, row in ends if row is not None]
    for focal, error in rows:
        case = "by the tape" if named else f"{trimmed(focal, 1)} mm lens"
        quantities.append(Quantity("register_error_mm", Interval.exact(error), case))
        quantities.append(Quantity("shim_mm", Interval.exact(abs(error)), case))
    chains: tuple[ListedChain, ...] = ()
    if named:
        focal, error = rows[0]
        pieces = (("extension-tube", error, error),)
        judged = judged_alone(focal, stop(question), pieces, facts.formats[USUAL_FORMAT], knowledge)
        chains = (as_listed(judged, f"a {trimmed(focal, 1)} mm lens that sits too {way}"),)
    return Told((Line("head", text),), tuple(quantities)), chains


def with_pair_as_mark(question: Question) -> Question:
    """As the next turn leans on it: a scale that says other than the tape tells where infinity falls, or focus ends."""
    pair, lenses = question.scale_pair, focals(question)
    if pair is None or len(lenses) != 1 or question.intent not in (SHIM_CALIBRATION, FOCUS_VERDICT):
        return question
    length, none = Interval.exact(lenses[0]), Interval.exact(0.0)
    at = [focus.travel_to_mark_mm(Interval.exact(one), length, none) for one in pair]
    if not (is_known(at[0]) and is_known(at[1])):
        return question
    error = Interval.exact(at[1].nominal - at[0].nominal)
    end = (focus.infinity_mark_mm if error.nominal < 0 else focus.from_sensor_mm)(length, none, error)
    if not is_known(end):
        return question
    rest = question.rest("mark", "length", "distance", "numbers", "close_focus")
    place = len(question.text) - 1
    told = question.with_(intent=SHIM_CALIBRATION, distance_mm=None, topic=None, values=rest, scale_pair=None)
    if error.nominal < 0:
        return told.with_(values=(*rest, ("mark", f"{end.nominal:.6g} mm")))
    ends = (*question.mentioned, Mention("stops-at", place, place), Mention("ends-at", place, place))
    return told.with_(distance_mm=end.nominal, mentioned=ends)


def _end(focal: float, error: float, question: Question, knowledge: Knowledge) -> tuple[str, Quantity | None]:
    """Where the far end of the focus ring then leaves that lens: short of infinity, or past it at a mark."""
    lens, name = Distances(focal, knowledge.catalogue), f"{trimmed(focal, 1)} mm"
    at = lens.from_sensor(error) if error > 0 else lens.mark(error)
    if at is None or not is_known(at):
        return "", None
    so_far = distance(at.nominal, question.feet)
    if error > 0:
        return f" Infinity is lost: the {name} stops at {so_far}.", Quantity("far_from_sensor_mm", at, name)
    return f" Infinity is reached, at the {so_far} mark of the {name}.", Quantity("scale_mark_mm", at, name)


def _by_share(question: Question, knowledge: Knowledge) -> Told:
    """'the scale is off by 10 % at 1 m': the error of the seat, whichever way the scale is off."""
    share, mark = number(question, "transmission"), number(question, "mark") or distance_mm(question)
    if not (share and mark and share <= MOST_SHARE and question.mentions("scale-spoken")):
        return Told()
    told = Told()
    for focal in focals(question):
        lens = Distances(focal, knowledge.catalogue)
        at, near, far = (lens.extension_at(mark * (1 + by / 100)) for by in (0.0, -share, share))
        if not (is_known(at) and is_known(near) and is_known(far)):
            continue
        out, close = near.nominal - at.nominal, at.nominal - far.nominal
        text = (
            f"{trimmed(share, 1)} % at {distance(mark, question.feet)} on a {trimmed(focal, 1)} mm lens: where the"
            f" scale says more than the tape it sits {small_mm(out)} too far out, take that off; where it says less,"
            f" {small_mm(close)} too close, add a shim of that. Zooms and front-cell focusing differ."
        )
        rows = (
            Quantity("register_error_mm", Interval.exact(out), "the scale reads long"),
            Quantity("register_error_mm", Interval.exact(-close), "the scale reads short"),
        )
        told += Told((Line("head", text),), rows)
    return told


def _from_front(mark: float, taped: float, feet: bool) -> Told:
    """What a tape from the front glass tells of a scale: nothing yet, for marks are counted from the sensor."""
    text = (
        f"Not by that: marks are counted from the sensor (the film plane), not from the front glass. The mark"
        f" {distance(mark, feet)} and {distance(taped, feet)} from the glass differ by {distance(mark - taped, feet)}:"
        " that is right where front glass and sensor are so far apart, else the rest is the error."
    )
    ask = "How far is the front glass from the sensor, set so? Or tape from the sensor's mark on the body."
    return Told((Line("head", text), Line("ask", ask)))
