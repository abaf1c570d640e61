"""What is added to an answer of some kinds where the question tells more than it asks; each is loaded only then."""

from __future__ import annotations

from typing import Final

from engine.answers.beside_fronts import ELSE_OF_FRONTS, OF_ONE_FRONT, front_asked, fronts, takers
from engine.answers.beside_heard import (
    AFTER_ALL,
    NAMING,
    NOTED,
    OF_A_RING,
    OF_A_SIZE,
    OF_FAR_THINGS,
    OF_PICTURES,
    OF_SCREWS,
    OF_THREADS,
    ON_A_BODY,
    REACHING,
    READ_RINGS,
    TURNED_OUT,
    WAYS,
    WHOLLY,
    Beside,
    heard,
    named,
    where,
    where_named,
)
from engine.answers.parts.answer import Answer
from engine.answers.parts.knowledge import Knowledge
from grammar import kinds
from grammar.questions import BODY_REGISTER, Question


def _glass_asked() -> Beside:
    """Whether glass is needed, before the answer."""
    from engine.answers.ways.glass_asked import with_glass_asked

    return with_glass_asked


def _room_asked() -> Beside:
    """Which of two mounts leaves room on the other, before the answer."""
    from engine.answers.ways.room_asked import with_room_asked

    return with_room_asked


def _size_wanted() -> Beside:
    """What a magnification that is told asks of the lens, before the answer."""
    from engine.answers.closeup import with_size_wanted

    return lambda answer, question, knowledge: (
        with_size_wanted(answer, question, knowledge) if answer.intent in WAYS else answer
    )


def _stacked() -> Beside:
    """How long the stack must be behind a lens whose flange to image was measured, before the answer."""
    from engine.answers.ways.told_stack import with_stack

    return with_stack


def _forgiven() -> Beside:
    """Whether an error that is told matters, at the stop told and either way, before the answer."""
    from engine.answers.shims.either_way import with_error_weighed

    return with_error_weighed


def _readings() -> Beside:
    """What several readings of a ring tell, before the answer."""
    from engine.answers.shims.readings import with_readings

    return with_readings


def _chosen() -> Beside:
    """Which of several rings to take, in place of an answer about one of them."""
    from engine.answers.ways.ring_chosen import with_ring_chosen

    return with_ring_chosen


def _threads() -> Beside:
    """Whether two threads that are named go into one another, before the answer, where they do not."""
    from engine.answers.found.threads_meet import with_threads_apart

    return with_threads_apart


def _by_thread() -> Beside:
    """The way of a lens that is told by its thread alone, onto the body whose mount is named."""
    from engine.answers.identified_on import by_thread

    return by_thread


def _as_it_is(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """Beside a shim: what the ring that was measured makes of the pair as it is."""
    measured = any(thing.thickness_mm is not None for thing in question.adapters)
    return _pair(answer, question, knowledge) if measured else answer


def _turned() -> Beside:
    """What it tells that a screw got tight after so many turns, before the answer."""
    from engine.answers.found.turned_in import with_turns_told

    return with_turns_told


def _on_body(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """What becomes of a lens that is identified on the body told beside it."""
    if not (question.bodies or question.lenses):
        return answer
    from engine.answers.identified_on import with_body

    return with_body(answer, question, knowledge)


def _reach(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """How far a measured rear stands from the sensor, before the answer, where that gap is spoken of."""
    from engine.answers.parts.said import mentions

    if question.said("rear_reach") is None or not mentions(question, "gap-to-sensor"):
        return answer
    from engine.answers.seat.reaching_in import with_reach

    return with_reach(answer, question, knowledge)


def _so_far(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """Whether a distance that alone is needed is reached, before the answer."""
    from engine.answers.parts.said import mentions

    asked = mentions(question, "only-so-far")
    if not asked and question.intent == kinds.FOCUS_VERDICT and answer.intent == kinds.FOCUS_VERDICT:
        before = question.prior
        asked = mentions(question, "focus-at") or (before is not None and mentions(before, "only-so-far"))
    from engine.answers.shims.only_so_far import asks_so_far, with_so_far

    return with_so_far(answer, question, knowledge) if asked or asks_so_far(question) else answer


def _pair(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """How the lens gets on the body, behind the answer, where both are told by their mounts."""
    named = any(thing.kind == "mount" for thing in question.lenses) and bool(question.bodies)
    if not named or question.said("magnification") is not None:
        return answer
    from engine.answers.ways.pair_beside import with_pair

    return with_pair(answer, question, knowledge)


def _strange(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """That a name is none of the facts', before the answer; its module is loaded only where a word was passed over."""
    if not question.skipped:
        return answer
    from engine.answers.found.unknown_name import with_unknown_name

    return with_unknown_name(answer, question, knowledge)


def _angle(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """Which focal length sees an angle is no question of mounts, though a lens for a body is asked for."""
    if question.said("angle") is None or any(lens.ids for lens in question.lenses):
        return answer
    from engine.answers.picture.equivalent import equivalent

    return equivalent(question, knowledge)


def _registers() -> Beside:
    """The ring between two registers that are told without a mount, in place of the answer."""
    from engine.answers.seat.two_registers import with_two_registers

    return with_two_registers


def _stops(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """What two stops are to each other that differ as the crop factor does."""
    from engine.answers.picture.stops_by_crop import with_stops_by_crop

    return with_stops_by_crop(answer, question, knowledge)


def _through() -> Beside:
    """Whether what is so wide goes through the opening told, in place of the answer."""
    from engine.answers.seat.bores import with_going_through

    return with_going_through


def _thread_lengths() -> Beside:
    """How long the thread of the one mount named may be, before the answer."""
    from engine.answers.making.thread_lengths import with_thread_length

    return with_thread_length


def _squeezed() -> Beside:
    """The shape that an anamorphic lens gives, before the answer."""
    from engine.answers.picture.squeezed import with_squeeze

    return with_squeeze


def _glass_held() -> Beside:
    """Where a bare glass is held, in place of the answer."""
    from engine.answers.making.bare_glass import with_glass_held

    return with_glass_held


def _registers_apart() -> Beside:
    """By how much two registers differ, before what they are."""
    from engine.answers.found.registers_apart import with_registers_apart

    return with_registers_apart


def _any_lens(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """What fits a body, where nothing is told of the lens."""
    from engine.answers.ways.any_lens import with_what_fits

    return with_what_fits(answer, question, knowledge)


def _size() -> Beside:
    """How large the one frame named is, in place of the answer."""
    from engine.answers.picture.sizes_apart import with_size

    return with_size


_RIGHTNESS = named("ways.thickness_asked", "with_thickness_asked")  # whether a length is right
TOO_THICK = ("off-too-thick", "off-too-thin", "off-too-long", "off-too-short", "which-way-off", "length-confirmed")
OF_REGISTERS = (*WAYS, "diy-dimension", "why", "list-fits", "look-alike", "hazard")  # kinds asked of two registers
# what a plate of glass does to the focus, and the hole of a stop that is wanted, before the answer
_plate: Final = named("shims.bare_sensor", "with_plate_told")
_apart: Final = named("shims.frames_apart", "with_frames_apart")
_sheet: Final = named("shims.glass_in_sheet", "with_glass_in_sheet")
_hole: Final = named("exposure.holes", "with_hole_for_stop")
# which way a lens sits off, and from which stop that is hidden, before the answer
_way_off: Final = named("seat.way_off", "with_way_off")
_way_of_focus: Final = named("shims.way_of_focus", "with_way_of_focus")
_hidden: Final = named("picture.hidden_by_stop", "with_hiding_stop")
# what it tells that infinity is missed with a ring that should reach it, before the answer
_missed: Final = named("shims.missed", "with_infinity_missed")
# lengths in inches too, before the answer
_inches: Final = named("parts.in_inches", "with_inches")
# what is noted of the mounts that are named and the rings between them
_notes: Final = where_named(named("words.noted", "with_notes"))
_check: Final = named("seat.check_first", "with_check_first")  # how a way is tried out
_moon: Final = named("picture.moon", "with_moon")  # how large the moon is on the sensor
_not_home: Final = named("found.turned_in", "with_not_home_told")  # which screws begin in that hole and bind
_SCREWING: Final = (kinds.HAZARD, kinds.LOOK_ALIKE, kinds.WHY, kinds.IDENTIFY_MOUNT, *WAYS, kinds.SHIM_CALIBRATION)
BESIDE: Final[tuple[tuple[tuple[str, ...], Beside], ...]] = (
    (WAYS, where(_stacked, "flange_to_image")), (WAYS, where(_forgiven, "thickness")),
    (WAYS, where(_size_wanted, "magnification")), (READ_RINGS, where(_readings, "readings", "tilt")),
    (ON_A_BODY, _pair), (OF_THREADS, where(_threads, "thread", "pitch")),
    ((kinds.HAZARD,), heard(_threads, "starts-in")),
    ((kinds.IDENTIFY_MOUNT,), _on_body), (ELSE_OF_FRONTS, fronts), (OF_ONE_FRONT, where(lambda: fronts, "filter_size")),
    ((*OF_ONE_FRONT, *ELSE_OF_FRONTS, kinds.OUT_OF_SCOPE), heard(front_asked, "filter-size-asked")),
    ((kinds.LIST_FITS,), heard(takers, "which-lenses")), ((kinds.LIST_FITS,), _angle), ((kinds.BUY_PLAN,), _any_lens),
    ((kinds.WHY,), _stops), (REACHING, _reach), (OF_PICTURES, where(_squeezed, "squeeze")),
    ((*OF_PICTURES, kinds.EXPOSURE_ND), heard(_moon, "moon-size")),
    ((*NAMING, kinds.HAZARD, kinds.DIY_DIMENSION), heard(_through, "goes-through")),
    ((kinds.HAZARD, kinds.CHAIN, kinds.IDENTIFY_MOUNT, kinds.WHY), where(_thread_lengths, "thread_length")),
    ((kinds.CHAIN, kinds.HAZARD, kinds.WHY), heard(_thread_lengths, "thread-length-asked")),
    ((kinds.CHAIN,), where(_by_thread, "thread")), (OF_A_RING, where(_chosen, "ring_choice")),
    ((*WAYS, kinds.SHIM_CALIBRATION), heard(_forgiven, "does-it-matter", "left-over")),
    ((kinds.SHIM_CALIBRATION,), _as_it_is), (NAMING, _strange), ((*ON_A_BODY, *WAYS), TURNED_OUT),
    ((kinds.HAZARD, kinds.LOOK_ALIKE, kinds.WHY), where(_turned, "turns")),
    (_SCREWING, heard(_not_home, "not-home")), ((*WAYS, kinds.BUY_PLAN), heard(_glass_asked, "glass-asked")),
    ((*WAYS, kinds.LOOK_ALIKE, kinds.COMPARE, kinds.WHY), heard(_room_asked, "who-has-room")),
    ((*WAYS, kinds.MACRO_DISTANCE), heard(_glass_held, "bare-glass")),
    *OF_SCREWS, ((kinds.IDENTIFY_MOUNT,), heard(_threads, "do-they-meet")),
    ((kinds.DEFINITION,), heard(_size, "by-size")), ((kinds.DEFINITION,), heard(_registers_apart, "register-spoken")),
    (WAYS, heard(_RIGHTNESS, *TOO_THICK)), (WAYS, heard(_missed, "infinity-missed", "far-missed")),
    *OF_FAR_THINGS, (WAYS, where(named("seat.refitted", "with_refit_told"), "refit")),
    (WAYS, heard(_hidden, "which-stop")), (WAYS, heard(_apart, "stop-hides")),
    (WAYS, heard(_check, "check-asked")), (OF_A_SIZE, heard(_inches, "by-inch")),
    ((kinds.COVERAGE, kinds.HAZARD, kinds.DIY_DIMENSION, kinds.WHY, kinds.DEFINITION), heard(_plate, "index-of-glass")),
    ((kinds.COVERAGE, kinds.CROP_EQUIVALENT, kinds.DIY_DIMENSION, kinds.EXPOSURE_ND, kinds.SHIM_CALIBRATION,
      kinds.HAZARD), heard(_plate, "glass-in-path", "plate-stands")),
    ((*WAYS, kinds.WHY, kinds.MACRO_DISTANCE, kinds.DEFINITION), heard(_plate, "plate-stands")),
    ((*WAYS, kinds.HAZARD, kinds.SHIM_CALIBRATION), where(lambda: heard(_plate, "glass-in-front"), "glass")),
    ((*WAYS, kinds.WHY, kinds.SHIM_CALIBRATION), where(_sheet, "flange_to_image")),
    ((kinds.HAZARD,), heard(named("found.threads_meet", "with_threads_crossed"), "stuck-fast")),
    ((*WAYS, kinds.DEPTH_OF_FIELD, kinds.EXPOSURE_ND, kinds.GEAR_SETTING, kinds.HAZARD),
     heard(_hole, "no-iris", "stops-it-down")),
    ((*WAYS, kinds.SHIM_CALIBRATION, kinds.HAZARD, kinds.COMPARE), heard(_way_off, "way-asked", "rings-off")),
    ((*WAYS, kinds.SHIM_CALIBRATION, kinds.WHY, kinds.MACRO_DISTANCE), heard(_way_of_focus, "way-of-focus")),
    ((*NAMING, *OF_A_RING, *OF_PICTURES, kinds.EXPOSURE_ND, kinds.OUT_OF_SCOPE, kinds.DEPTH_OF_FIELD), WHOLLY),
    ((*WAYS, kinds.SHIM_CALIBRATION), _so_far), (NOTED, _notes),
    (OF_REGISTERS, heard(_registers, "register-spoken")), (OF_REGISTERS, where(_registers, BODY_REGISTER)), *AFTER_ALL,
)  # fmt: skip
