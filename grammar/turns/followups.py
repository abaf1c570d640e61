"""A fragment and the question before it, made one: 'and on the full frame body?', 'at f/8?', 'without it'."""

from __future__ import annotations

from typing import Final

from engine.base.compact import compact, replace
from grammar import kinds
from grammar.hearing import Heard
from grammar.questions import ALL, RING, Limits, Question, Thing
from grammar.telling import built
from grammar.turns.about_lenses import lenses_of, one_of_several, with_one_turned
from grammar.turns.adding import added, put_on_top, resized, shimmed, with_rings_joined, with_stacked
from grammar.turns.aside_seen import sets_it_anew
from grammar.turns.asked_on import intent_of
from grammar.turns.circles_told import circle_measured
from grammar.turns.ends_measured import ends_measured
from grammar.turns.flanges_told import flange_measured, is_unseated, with_flange_first
from grammar.turns.going_on import LEFT, WANTED, asks_remedy, is_close, is_left_so, ranked_by, went_on
from grammar.turns.kept_settings import kept_distance, kept_stop, kept_topic, stop_held
from grammar.turns.left_away import (
    bodies_left,
    keeps_rings,
    lenses_left,
    limits_left,
    with_filters_swapped,
    without_filters,
    without_pieces,
)
from grammar.turns.lengths_again import lengths_again
from grammar.turns.lip_told import OF_RING
from grammar.turns.measured_anew import (
    DEPTH,
    depth_wanted,
    distance_again,
    mark_again,
    piece_measured,
    ring_measured,
    with_light_changed,
    with_stop_set,
)
from grammar.turns.odd_glass import topic_of, with_portrait
from grammar.turns.on_what import bodies_of, pair_of_ring, without_body_number
from grammar.turns.one_of_two import is_likened
from grammar.turns.only_told import without_lent
from grammar.turns.put_back import put_back
from grammar.turns.put_close import as_put_behind
from grammar.turns.rate_told import without_old_shutter
from grammar.turns.rings_for_it import with_ring_for_it
from grammar.turns.same_pieces import same_pieces
from grammar.turns.seat_held import all_of_mount, same_mounts
from grammar.turns.setting_again import with_stops_again
from grammar.turns.spans import set_in_place
from grammar.turns.sticking import (
    kept_limits,
    kept_pieces,
    pieces_now,
    set_against,
    set_against_plain,
    without_close_rings,
)
from grammar.turns.taking_back import left_out, swapped, taken_back, without_last
from grammar.turns.told_before import fills_gap, piece_offered, with_ring_offered, without_number_told, without_view
from grammar.turns.tubes_added import meant_still, tubes_changed
from grammar.turns.values_now import values_now
from grammar.turns.whom import Meant, known_with, meant, side_by_side
from grammar.turns.zoomed_to import zoomed_to

REMEDY: Final = "remedy"  # the topic of what would put a chain right
_MADE: Final = frozenset([kinds.DRAW, kinds.CARD])  # they are made of the chain that was pointed at last
_PLACING: Final = frozenset([kinds.CHAIN, kinds.FOCUS_VERDICT, kinds.DIY_DIMENSION, kinds.BUY_PLAN])
_ON_BODY: Final = _PLACING | {kinds.COVERAGE, kinds.CROP_EQUIVALENT}
_OF_CIRCLE: Final = frozenset(["thread", "numbers", "field"])  # keys that a circle may have been read under
_SET_SO: Final = frozenset(["how-far", "what-if", "what", "will", "can", "ok"])  # they ask nothing of a zoom
_OF_LENGTHS: Final = frozenset(["numbers", "length", "zoom"])  # keys of lengths that turn out to be those of pieces


@compact
class _Aim:
    """What is asked, and which lens is meant; what of before is compared, or told anew by how long or wide it is."""

    intent: str
    found: Meant | None
    compared: tuple[Thing, ...]
    ring: Thing | None
    circle: str | None
    zoomed: tuple[Thing, ...] | None


@compact
class _Placed:
    """The lenses, the bodies they are on, and what else is named."""

    lenses: tuple[Thing, ...]
    bodies: tuple[Thing, ...]
    things: tuple[Thing, ...]


def follow(heard: Heard, before: Question) -> Question:
    """The question before with what the text says instead; `follows` is set."""
    heard = with_flange_first(without_lent(with_ring_for_it(heard, before), before), before)
    heard = with_ring_offered(without_view(without_number_told(heard, before), before), before)
    if (back := taken_back(heard, before) or swapped(heard, before) or without_last(heard, before)) is not None:
        return back
    said, aim = _told(heard, before, _aimed(heard, before))
    again = put_back(heard, said, before) or tubes_changed(heard, before) or lengths_again(heard, before)
    unseated = is_unseated(before) and said.said("numbers") is not None
    said, before, those_left = _changed(heard, said, before)
    said, aim = _measured(heard, said, before, aim, None if aim.ring else again, unseated)
    said, aim, placed = _placed(heard, said, before, aim, those_left)
    return with_one_turned(heard, _joined(heard, said, before, aim, placed), before)


def _aimed(heard: Heard, before: Question) -> _Aim:
    """What is asked, and of which lens, by what is heard after the question before."""
    found, compared = meant(heard, before), side_by_side(heard, before)
    likened = kinds.LOOK_ALIKE if is_likened(heard, before) else kinds.COMPARE
    intent = likened if compared else intent_of(heard, before, found)
    on_top = shimmed(heard, before) if put_on_top(heard) is not None else None
    ring = on_top or ring_measured(heard, before) or shimmed(heard, before)
    intent = "focus-verdict" if ring is not None or fills_gap(heard, before) else intent
    sized = resized(heard, before) if ring is None else None
    ring, intent = sized or ring, before.intent if sized is not None else intent
    intent = before.intent if (circle := circle_measured(heard, before)) is not None else intent
    zoomed = zoomed_to(heard, before)
    if zoomed is not None:
        found = Meant(zoomed, known_with(before.known, zoomed), told=True)
        intent = intent if is_asked(heard, _SET_SO) else before.intent
    if intent == kinds.IDENTIFY_MOUNT and found is not None and found.told:
        found = None  # 'how do I know if it is CS' tells nothing
    return _Aim(intent, found, compared, ring, circle, zoomed)


def _told(heard: Heard, before: Question, aim: _Aim) -> tuple[Question, _Aim]:
    """The question by its own words; one that names nothing to be defined goes on with what was asked."""
    said = _topical(heard, same_pieces(heard, with_portrait(heard, aim.intent), before), before, aim.intent)
    part = heard.features & {"part-asked", "part-named"} or said.said("magnification")
    if aim.intent == kinds.DEFINITION and not (part or said.things or said.lenses or said.bodies or said.adapters):
        aim = replace(aim, intent=went_on(heard, before))  # 'so what is it'
        return built(heard, aim.intent), aim
    return said, aim


def _measured(
    heard: Heard, said: Question, before: Question, aim: _Aim, again: tuple[Thing, ...] | None, unseated: bool
) -> tuple[Question, _Aim]:
    """What is said, with lengths as those of the pieces or of the circle that they turn out to be of."""
    if aim.zoomed is not None:  # 'and at 25' tells no stop
        said = said.without(*(_OF_LENGTHS - {"zoom"}))
        said = said.with_(f_number=None) if said.f_number == aim.zoomed[0].focal_length_mm else said
    end = ends_measured(heard, before)
    if end is not None:
        said = _with_drawn(said, before, end).without(*_OF_LENGTHS, "thickness", "flange_to_image")
        return said, replace(aim, intent=before.intent, found=None, ring=None)
    drawn = again or (None if unseated else piece_offered(heard, before) or piece_measured(heard, before))
    if drawn is not None:
        said, aim = _with_drawn(said, before, drawn), replace(aim, found=meant_still(heard, before, aim.found))
    if again is not None:
        said = _drawn_again(said, before, again, aim.intent)
        aim = replace(aim, intent=said.intent)
    if aim.circle is not None:
        said, aim = said.without(*_OF_CIRCLE).with_(lenses=()), replace(aim, found=None)
        said = said.with_(values=(*said.values, ("circle", aim.circle)))
    return said, aim


def _drawn_again(said: Question, before: Question, again: tuple[Thing, ...], intent: str) -> Question:
    """What is said of pieces that are drawn out or put between anew: how close it then comes."""
    stretched = any(one.thickness_mm and len(set(one.thickness_mm)) > 1 for one in again) and intent == before.intent
    still = stretched or all(one.ids and one.piece == RING for one in again)  # the C to CS ring is no tube
    intent = kinds.MACRO_DISTANCE if intent in _PLACING and not still else intent
    wanted, said = tuple(row for row in before.values if row[0] in WANTED), said.without(*_OF_LENGTHS, "extension")
    return said.with_(intent=intent, values=(*said.values, *(wanted if len(again) > 1 else ())))


def _placed(
    heard: Heard, said: Question, before: Question, aim: _Aim, those_left: tuple[Thing, ...]
) -> tuple[Question, _Aim, _Placed]:
    """The lenses and bodies that it is about now, those of before where no others are named."""
    lenses = lenses_of(heard, said, before, aim.found, aim.compared)
    bodies, things = bodies_of(heard, said, before, aim.found)
    said, bodies_here = bodies_left(without_body_number(heard, said, before), before)
    lenses, bodies = one_of_several(said, before, those_left or lenses, bodies_here or bodies)
    lenses, bodies = pair_of_ring(said, lenses, bodies or _body_of_before_last(aim.intent, before))
    more = added(heard, before)
    if more is not None:
        aim, (lenses, bodies) = replace(aim, intent=kinds.BUY_PLAN), more
    said = flange_measured(said, before, heard)
    if aim.ring is not None:
        said = said.without(*OF_RING, DEPTH).with_(lenses=(), adapters=(aim.ring,))
    known = any(one.ids for one in lenses) and any(one.ids for one in bodies)
    if known and aim.intent == before.intent == kinds.LIST_FITS:
        aim = replace(aim, intent=kinds.CHAIN)  # both are known now
    return said, aim, _Placed(lenses, bodies, things)


def _joined(heard: Heard, said: Question, before: Question, aim: _Aim, placed: _Placed) -> Question:
    """What is said of what it is about now, with what sticks of the question before."""
    intent, lenses, bodies = aim.intent, placed.lenses, placed.bodies
    same_lens = _ids(lenses) == _ids(before.lenses)
    mounts = all_of_mount(lenses, before.lenses), same_mounts(bodies, before.bodies)
    put = kept_pieces(said.with_(intent=intent), same_lens, *mounts, before)
    kept = without_close_rings(heard, said, set_against(heard, said, before) or put, before)
    put = as_put_behind(heard, said.adapters, intent, before.adapters)
    pieces = set_in_place(put, kept) or pieces_now(heard, kept, put, intent)
    seen = heard.tells("infinity") or heard.tells("stops-at")
    if intent in _PLACING and not seen and is_close(said, before, pieces):
        intent = kinds.MACRO_DISTANCE
    now = said.with_(intent=intent, lenses=lenses, bodies=bodies, adapters=kept)
    without = (heard.tells("without-piece") or left_out(heard)) and not said.adapters and not keeps_rings(heard, before)
    return replace(
        said.with_(intent=intent, lenses=lenses, bodies=bodies),
        adapters=() if without else pieces,
        things=placed.things,
        limits=kept_limits(limits_left(said.limits, before, without), said, before, intent),
        f_number=_stop(heard, said, intent, lenses, same_lens, before),
        distance_mm=said.distance_mm if said.distance_mm is not None else kept_distance(intent, before, said),
        number=_number(said, before, intent, aim.found),
        values=tuple(values_now(heard, said, now, before).items()),
        feet=said.feet or (before.feet and not heard.tells("metres")),
        follows=True,
        topic=said.topic or kept_topic(heard, intent, before),
        known=aim.found.known if aim.found else known_with(before.known or before.lenses, lenses),
    )


def _topical(heard: Heard, said: Question, before: Question, intent: str) -> Question:
    """What is said, with the topic that its words have only after the question before."""
    if intent == kinds.COMPARE:
        said = set_against_plain(said, before)
    if intent == kinds.GEAR_SETTING and (topic_of(heard, before) or sets_it_anew(heard, before)):
        return said.with_(topic=topic_of(heard, before) or before.topic)  # 'does it remember that' of the stabiliser
    if intent == kinds.COMPARE and ranked_by(heard, before):
        return said.with_(topic=ranked_by(heard, before))
    if intent == kinds.HAZARD and heard.tells("sun-kept-off") and before.said("light"):
        return said.with_(topic="sun")
    if intent == kinds.HAZARD and said.topic == REMEDY and heard.tells("touch"):
        return said.with_(topic="touch")  # 'it hit something, what now'
    if asks_remedy(heard, before):
        return said.with_(topic=REMEDY, adapters=())  # 'which spacer goes under it' names none
    return said.with_(topic=LEFT) if is_left_so(heard, before) else said


def _changed(heard: Heard, said: Question, before: Question) -> tuple[Question, Question, tuple[Thing, ...]]:
    """What is said with what comes to that of before, the question before without what goes, and the lenses left."""
    said = with_light_changed(heard, with_stop_set(heard, said, before), before)
    said = mark_again(heard, distance_again(depth_wanted(heard, said, before), before), before)
    said = with_rings_joined(with_stacked(heard, said, before), before)
    said, before = with_stops_again(heard, said, without_old_shutter(heard, said, before))
    said, before = without_pieces(heard, *without_filters(heard, with_filters_swapped(heard, said, before), before))
    said, lenses = lenses_left(heard, said, before)
    return said, before, lenses


def _body_of_before_last(intent: str, before: Question) -> tuple[Thing, ...]:
    """'so will it reach infinity' after the thread of a lens, or what it looks like: on the body told before that."""
    prior, aside = before.prior, before.intent in (kinds.IDENTIFY_MOUNT, kinds.LOOK_ALIKE)
    return prior.bodies if prior is not None and aside and not before.bodies and intent in _ON_BODY else ()


def _with_drawn(said: Question, before: Question, drawn: tuple[Thing, ...]) -> Question:
    """What is said, with lengths as those of pieces; what was taken off is no longer among the limits."""
    kept = said.lenses if before.lens is None else ()
    limits = replace(said.limits, without=())
    return said.without("numbers", "extension").with_(lenses=kept, adapters=drawn, number=None, limits=limits)


def is_asked(heard: Heard, but: frozenset[str]) -> bool:
    """Whether a cue other than those asks for something."""
    return any(cue.tells not in but for cue in heard.cues)


def _number(said: Question, before: Question, intent: str, found: Meant | None) -> int | None:
    if said.number is not None:
        return None if found is not None and not found.told else said.number
    return _kept_number(said, before) if intent in _MADE else None


def _ids(lenses: tuple[Thing, ...]) -> list[tuple[object, ...]]:
    return [(lens.ids, lens.focal_length_mm) for lens in lenses]


def _kept_number(said: Question, before: Question) -> int | None:
    """'a card for it' after 'the second one' means the second; not where another lens, body or way is asked for."""
    other = said.lenses or said.bodies or said.adapters or said.limits != Limits() or said.said(ALL)
    return None if other else before.number


def _stop(
    heard: Heard, said: Question, intent: str, lenses: tuple[Thing, ...], same_lens: bool, before: Question
) -> float | None:
    """The stop that is set now, or was before; wide open it is the lens's own."""
    closed = any(one.f_number is not None and (said.f_number or 0.0) > one.f_number for one in lenses[:1])
    held = stop_held(heard, intent, lenses, before) if said.lenses and not closed else said.f_number
    if held is not None or said.f_number is not None:
        return held if held is not None else said.f_number
    if heard.tells("wide-open"):
        widest = {one.f_number for one in lenses}
        return widest.pop() if len(widest) == 1 else None  # each at its own
    return kept_stop(intent, lenses, same_lens, before)
