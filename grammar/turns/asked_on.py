"""What a follow-up asks: the first of a row of things that may be seen in it tells."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from grammar.echo.echo import said_back
from grammar.hearing import Heard
from grammar.kinds import (
    BUY_PLAN,
    CHAIN,
    COMPARE,
    COVERAGE,
    CROP_EQUIVALENT,
    DEFINITION,
    DEPTH_OF_FIELD,
    DIY_DIMENSION,
    EXPOSURE_ND,
    FOCUS_VERDICT,
    GEAR_SETTING,
    HAZARD,
    IDENTIFY_MOUNT,
    LOOK_ALIKE,
    MACRO_DISTANCE,
    SHIM_CALIBRATION,
    WHY,
)
from grammar.questions import Question
from grammar.things.casting import DRAWN
from grammar.turns import aside_seen, asked_first, picture_next, ring_seen, thread_seen, what_ails, worded_so
from grammar.turns import turn_seen as seen
from grammar.turns.body_picked import picks_one_body, weighs_two
from grammar.turns.by_itself import asked_by_itself
from grammar.turns.going_on import (
    ASIDE,
    asks_depth,
    asks_field,
    asks_light,
    asks_remedy,
    asks_zone,
    ends_at,
    is_left_so,
    likened_to_tubes,
    mends_the_seat,
    sizes_anew,
    went_on,
)
from grammar.turns.left_away import leaves_the_ring
from grammar.turns.measured_anew import is_cup_off, turned_anew
from grammar.turns.of_another import (
    asks_how_long_it_is,
    doubts_by_crop,
    extends,
    is_on_another_frame,
    views_other_glass,
)
from grammar.turns.of_danger import is_of_reach, is_remedy
from grammar.turns.one_of_two import chooses_between
from grammar.turns.one_part import changes_one_part
from grammar.turns.only_told import names_the_pair
from grammar.turns.put_between import puts_a_washer, puts_between
from grammar.turns.same_matter import is_one_compared, laps_it_off, makes_sure, same_matter
from grammar.turns.told_before import asks_whence, likens_stop, wonders_why_same
from grammar.turns.turn_seen import Turn
from grammar.turns.whom import Meant
from grammar.turns.worded_so import plainest

# what is asked anew where a follow-up only supposes something: 'what if I stop down', 'what if the ring is thinner'
_SUPPOSED: Final = frozenset([CHAIN, FOCUS_VERDICT, MACRO_DISTANCE, COVERAGE, DEPTH_OF_FIELD, EXPOSURE_ND])
_OF_LIGHT: Final = frozenset([EXPOSURE_ND, GEAR_SETTING, DEPTH_OF_FIELD])  # where another body makes no difference


def intent_of(heard: Heard, before: Question, found: Meant | None) -> str:
    """What is asked: by the first of the row that is seen in it; else what its own words ask, or was asked before."""
    plainly = said_back(heard.text)
    if plainly is not None and heard.weighed.best == plainly and found is None:
        return plainly  # one of the readings that were offered, as it stands
    turn = Turn(heard, before, found, heard.weighed.best)
    for is_seen, asked in _ROW:
        if is_seen(turn):
            return asked if isinstance(asked, str) else asked(turn)
    supposed = turn.tells("what-if") and turn.was in _SUPPOSED and not turn.tells("force", "stuck", "wont-go")
    return went_on(heard, before) if supposed else plainest(turn) or went_on(heard, before)


# what is asked then, where it is not the same whatever was asked before


def _as_before(turn: Turn) -> str:
    return turn.was


def _asks_plainly(turn: Turn) -> bool:
    """'hole for f8', 'light lost by the converter': asked in so many words, whatever is named or set beside."""
    return turn.heard.weighed.is_plain


def _asks_by_itself(turn: Turn) -> bool:
    return asked_by_itself(turn.heard) is not None


def _unless_plain(is_seen: Callable[[Turn], bool]) -> Callable[[Turn], bool]:
    """What many a word may tell is seen only in a turn that asks nothing plainly by itself."""
    return lambda turn: is_seen(turn) and not _asks_by_itself(turn)


def _as_by_itself(turn: Turn) -> str:
    return asked_by_itself(turn.heard) or turn.was


def _as_worded(turn: Turn) -> str:
    return turn.best or turn.was


def _as_before_of_things(turn: Turn) -> str:
    # how it is put on, where before was only asked by the way, or lens and body are told now
    pair = all(any(part.mounts for part in side) for side in (turn.heard.cast.lenses, turn.heard.cast.bodies))
    return CHAIN if turn.was_aside or (pair and not turn.before.bodies) else turn.was


def _as_doubted(turn: Turn) -> str:
    if not turn.tells("thing") or turn.tells("sure"):
        return WHY
    return turn.best or went_on(turn.heard, turn.before)


def _as_same_matter(turn: Turn) -> str:
    return same_matter(turn.heard, turn.before, ASIDE) or turn.was


def _as_reach(turn: Turn) -> str:
    return turn.was if turn.was == HAZARD else DIY_DIMENSION


def _as_one_more(turn: Turn) -> str:
    seat = bool(turn.heard.cast.bodies) and turn.was in _OF_LIGHT
    return CHAIN if turn.was_aside or seat else turn.was


def _as_saved(turn: Turn) -> str:
    """From which stop an error is forgiven: of a lens on no body that is told beside the shim."""
    held = turn.before.bodies or turn.before.adapters
    return SHIM_CALIBRATION if turn.was == SHIM_CALIBRATION and not held else FOCUS_VERDICT


def _as_off(turn: Turn) -> str:
    """What a seat that is off still does, and behind tubes how close it then comes."""
    return MACRO_DISTANCE if any(one.piece in DRAWN for one in turn.before.adapters) else FOCUS_VERDICT


def _as_evidence(turn: Turn) -> str:
    """What most of the evidence speaks for, wherever wording leans."""
    ranked = turn.heard.weighed.ranked
    return ranked[0][0] if ranked else turn.was


def _as_spoken_for(turn: Turn) -> str:
    return aside_seen.spoken_for(turn) or turn.was


# what may be seen, and what is asked then; the first that is seen tells
_ROW: Final[tuple[tuple[Callable[[Turn], bool], str | Callable[[Turn], str]], ...]] = (
    (aside_seen.goes_on_by_the_way, aside_seen.by_the_way),
    (seen.is_lit_by_glass, _as_before),
    (seen.of(views_other_glass), CROP_EQUIVALENT),
    (seen.of(doubts_by_crop), _as_before),
    *what_ails.ROW,
    *asked_first.ROW,
    (seen.of(asks_how_long_it_is), CROP_EQUIVALENT),
    (seen.of(leaves_the_ring), FOCUS_VERDICT),
    (ring_seen.tells_an_error, _as_off),
    (ring_seen.is_told_in_turns, SHIM_CALIBRATION),
    (seen.of(wonders_why_same), WHY),
    (worded_so.asks_of_infinity, FOCUS_VERDICT),
    (aside_seen.tells_the_camera, GEAR_SETTING),
    (seen.of(aside_seen.sets_it_anew), GEAR_SETTING),
    (aside_seen.lights_another_frame, COVERAGE),
    (worded_so.asks_from_where, _as_before),
    (worded_so.asks_depth_at_tubes, DEPTH_OF_FIELD),
    (thread_seen.makes_sure_it_is_not, IDENTIFY_MOUNT),
    (picture_next.likens_to_full_frame, CROP_EQUIVALENT),
    (worded_so.takes_another_mount, CHAIN),
    (worded_so.asks_what_mount, DEFINITION),
    (worded_so.asks_stop_behind_glass, CROP_EQUIVALENT),
    (worded_so.asks_field_at, CROP_EQUIVALENT),
    (ring_seen.asks_how_far, FOCUS_VERDICT),
    (ring_seen.tries_a_lens_on_it, FOCUS_VERDICT),
    (thread_seen.binds_in_its_thread, LOOK_ALIKE),
    (seen.of(thread_seen.asks_of_a_thread), LOOK_ALIKE),
    (thread_seen.fits_in_a_ring, CHAIN),
    (worded_so.mends_its_error, SHIM_CALIBRATION),
    (worded_so.asks_if_it_is, IDENTIFY_MOUNT),
    (worded_so.doubts_by_fit, WHY),
    (worded_so.asks_what_proves_it, IDENTIFY_MOUNT),
    (worded_so.turns_a_thread, SHIM_CALIBRATION),
    (worded_so.exposes_for_a_target, EXPOSURE_ND),
    (worded_so.sets_an_exposure, EXPOSURE_ND),
    *picture_next.ROW,
    (worded_so.names_a_view, CROP_EQUIVALENT),
    (worded_so.forces_it_in, LOOK_ALIKE),
    (worded_so.sets_mounts_apart, LOOK_ALIKE),
    (seen.of(worded_so.asks_what_it_costs), BUY_PLAN),
    (worded_so.asks_how_large, MACRO_DISTANCE),
    (_unless_plain(worded_so.goes_back_to_light), EXPOSURE_ND),
    (worded_so.supposes_a_mode, _as_before),
    (worded_so.wants_it_lit, _as_before),
    (worded_so.views_a_frame, CROP_EQUIVALENT),
    (worded_so.asks_the_hole, DIY_DIMENSION),
    (ring_seen.wants_the_right_length, DIY_DIMENSION),
    (ring_seen.asks_how_long, DIY_DIMENSION),
    (ring_seen.asks_if_it_changes, CHAIN),
    (_unless_plain(worded_so.asks_for_the_ring), CHAIN),
    (seen.of(is_remedy), _as_before),
    (aside_seen.wants_the_right_part, CHAIN),
    (aside_seen.keeps_the_sun_off, HAZARD),
    (aside_seen.asks_on_of_a_fault, WHY),
    (aside_seen.asks_the_stop_set, GEAR_SETTING),
    (aside_seen.asks_of_a_part, DEFINITION),
    (aside_seen.checks_a_danger, HAZARD),
    (aside_seen.fears_a_danger, HAZARD),
    (aside_seen.asks_what_to_watch, HAZARD),
    (aside_seen.fears_for_focus, HAZARD),
    (aside_seen.measures_by_hand, _as_before),
    (aside_seen.asks_what_else, LOOK_ALIKE),
    (aside_seen.doubts_the_name, LOOK_ALIKE),
    (aside_seen.moves_to_another_body, CHAIN),
    (aside_seen.names_a_piece_only, _as_before),
    (aside_seen.asks_of_both_threads, LOOK_ALIKE),
    (aside_seen.asks_other_bodies, "list-fits"),
    (seen.weighs_too_much, HAZARD),
    (seen.turns_to_the_sun, HAZARD),
    (seen.stops_short, SHIM_CALIBRATION),
    (_unless_plain(seen.wants_it_closer), MACRO_DISTANCE),
    (seen.picks_stock, SHIM_CALIBRATION),
    (_unless_plain(seen.corrects), _as_before),
    (seen.of(turned_anew), _as_before),
    (seen.of(is_cup_off), FOCUS_VERDICT),
    (seen.of(asks_whence), WHY),
    (seen.of(laps_it_off), SHIM_CALIBRATION),
    (seen.of(weighs_two), COMPARE),
    (seen.of(likens_stop), CROP_EQUIVALENT),
    (seen.of(makes_sure), _as_before),
    (seen.doubts, _as_doubted),
    (seen.of(is_left_so), WHY),
    (seen.of(mends_the_seat), SHIM_CALIBRATION),
    (seen.is_same_matter, _as_same_matter),
    (seen.of(picks_one_body), CHAIN),
    (seen.wants_an_order, COMPARE),
    (seen.tells_of_the_unknown, _as_before),
    (seen.of(chooses_between), _as_before),
    (_unless_plain(seen.tells_of_a_thing), _as_before_of_things),
    (seen.picks_one_compared, CHAIN),
    (_unless_plain(seen.sets_a_limit), _as_before),
    (seen.wants_it_seated, CHAIN),
    (seen.takes_it_off, SHIM_CALIBRATION),
    (_unless_plain(seen.wants_it_mended), CHAIN),
    (seen.wants_it_set_right, SHIM_CALIBRATION),
    (seen.of(asks_remedy), CHAIN),
    (seen.of(ends_at), SHIM_CALIBRATION),
    (seen.puts_a_tube, MACRO_DISTANCE),
    (seen.of(asks_depth), DEPTH_OF_FIELD),
    (seen.of(asks_light), EXPOSURE_ND),
    (ring_seen.harms_another_lens, _as_before),
    (ring_seen.goes_by_rings, CHAIN),
    (ring_seen.wants_foil, SHIM_CALIBRATION),
    (ring_seen.takes_off_a_measured_ring, SHIM_CALIBRATION),
    (seen.of(asks_field), MACRO_DISTANCE),
    (ring_seen.tells_its_ring, FOCUS_VERDICT),
    (_asks_plainly, _as_worded),
    (seen.of(asks_zone), DEPTH_OF_FIELD),
    (seen.of(sizes_anew), _as_before),
    (seen.of(likened_to_tubes), MACRO_DISTANCE),
    (seen.rather_stops_down, _as_before),
    (seen.is_saved_by_stop, _as_saved),
    (_asks_by_itself, _as_by_itself),
    (seen.of(is_of_reach), _as_reach),
    (seen.sets_one_more_beside, _as_one_more),
    (seen.of(extends), CROP_EQUIVALENT),
    (seen.asks_the_view, CROP_EQUIVALENT),
    (seen.tells_a_shape, CROP_EQUIVALENT),
    (seen.leaves_the_crop, _as_before),
    (seen.asks_pixels_left, "coverage"),
    (seen.wants_that_view, CROP_EQUIVALENT),
    (seen.of(puts_between), MACRO_DISTANCE),
    (seen.of(puts_a_washer), FOCUS_VERDICT),
    (seen.of(changes_one_part), _as_before),
    (seen.of(is_one_compared), CHAIN),
    (seen.asks_of_another, _as_before),
    (seen.sets_for_another, _as_before),
    (seen.of(names_the_pair), lambda turn: FOCUS_VERDICT if turn.was == SHIM_CALIBRATION else turn.was),
    (ring_seen.goes_by_tubes, _as_evidence),
    (ring_seen.measures_the_ring, FOCUS_VERDICT),
    (seen.of(is_on_another_frame), _as_before),
    (seen.tells_only, _as_before),
    (aside_seen.asks_by_evidence, _as_before),
    (aside_seen.speaks_for_else, _as_spoken_for),
)
