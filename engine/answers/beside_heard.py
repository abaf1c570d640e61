"""When something is added to an answer: in which kinds, where a value is told, where a phrase is heard."""

from __future__ import annotations

from collections.abc import Callable
from importlib import import_module

from engine.answers.parts.answer import Answer
from engine.answers.parts.knowledge import Knowledge
from grammar.kinds import (
    BUY_PLAN,
    CHAIN,
    COMPARE,
    COVERAGE,
    CROP_EQUIVALENT,
    DEFINITION,
    DEPTH_OF_FIELD,
    DIY_DIMENSION,
    DRAW,
    EXPOSURE_ND,
    FOCUS_VERDICT,
    GEAR_SETTING,
    HAZARD,
    IDENTIFY_MOUNT,
    LIST_FITS,
    LOOK_ALIKE,
    MACRO_DISTANCE,
    OUT_OF_SCOPE,
    SHIM_CALIBRATION,
    WHY,
)
from grammar.questions import Question

Beside = Callable[[Answer, Question, Knowledge], Answer]  # what is added to an answer

ON_A_BODY = (COVERAGE, CROP_EQUIVALENT, BUY_PLAN)  # beside these it is told how the lens gets there
OF_THREADS = (CHAIN, DIY_DIMENSION, HAZARD, WHY)  # kinds that may be asked of a thread in another
NAMING = (CHAIN, FOCUS_VERDICT, IDENTIFY_MOUNT, LOOK_ALIKE, COVERAGE, LIST_FITS)  # kinds that need a name
OF_A_RING = (CHAIN, FOCUS_VERDICT, DIY_DIMENSION, SHIM_CALIBRATION, COMPARE, BUY_PLAN, LIST_FITS)
READ_RINGS = (CHAIN, FOCUS_VERDICT, DIY_DIMENSION, IDENTIFY_MOUNT, WHY, HAZARD)  # may be asked of a measured ring
# kinds that may be asked of the gap behind a lens (where it may touch, the answer tells of it by itself)
REACHING = (CHAIN, FOCUS_VERDICT, DIY_DIMENSION, COVERAGE, SHIM_CALIBRATION, IDENTIFY_MOUNT, LIST_FITS)
OF_PICTURES = (
    COVERAGE, CROP_EQUIVALENT, GEAR_SETTING, DEFINITION, MACRO_DISTANCE, CHAIN, FOCUS_VERDICT, DRAW,
)  # of the shape of an anamorphic picture  # fmt: skip
WAYS = (CHAIN, FOCUS_VERDICT)  # kinds about how a lens gets on a body, which may tell what it shall do there
# kinds beside which it is told what is noted of the mounts and rings
NOTED = (
    *WAYS, HAZARD, WHY, LOOK_ALIKE, GEAR_SETTING, COVERAGE, LIST_FITS, COMPARE, IDENTIFY_MOUNT, DIY_DIMENSION,
    BUY_PLAN, OUT_OF_SCOPE,
)  # fmt: skip
# kinds that a size in inches may stand in
OF_A_SIZE = (*WAYS, DEFINITION, DIY_DIMENSION, COVERAGE, SHIM_CALIBRATION, COMPARE)


def named(module: str, name: str) -> Callable[[], Beside]:
    """What is added, by the module of this room and the name in it; the module is loaded only when it is called for."""

    def load() -> Beside:
        add: Beside = getattr(import_module(f"engine.answers.{module}"), name)
        return add

    return load


def where(load: Callable[[], Beside], *keys: str) -> Beside:
    """What is added where one of the values is told; its module is loaded only then."""

    def add(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
        told = any(question.said(key) is not None for key in keys)
        return load()(answer, question, knowledge) if told else answer

    return add


def where_named(load: Callable[[], Beside]) -> Beside:
    """What is added where a mount is named; its module is loaded only then."""

    def add(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
        things = (*question.lenses, *question.bodies, *question.things, *question.adapters)
        told = any(thing.kind == "mount" or thing.front for thing in things)
        return load()(answer, question, knowledge) if told else answer

    return add


def heard(load: Callable[[], Beside], *keys: str) -> Beside:
    """What is added where one of the phrases is heard; its module is loaded only then."""

    def add(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
        return load()(answer, question, knowledge) if question.mentions(*keys) else answer

    return add


def spaced(load: Callable[[], Beside]) -> Beside:
    """What is added where the stack before a corrector is told of; its module is loaded only then."""

    def add(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
        return load()(answer, question, knowledge) if question.spaced is not None else answer

    return add


def unheard(key: str, added: Beside) -> Beside:
    """What is added where that is not heard: a screw that stops two turns before its end focuses nothing."""
    return lambda answer, asked, knowledge: answer if asked.mentions(key) else added(answer, asked, knowledge)


def advised(name: str) -> Callable[[], Beside]:
    """What is added where it is heard: an advice of the facts, before the answer; loaded only when it is called for."""

    def load() -> Beside:
        behind = import_module("engine.answers.shims.missed").behind_advice
        return lambda answer, _, knowledge: behind(answer, name, knowledge)

    return load


FIGURES = ("register", "throat", "pitch", "thread", "angle", "male", "female", "diameter", "glass", "depth")
# what is added where these figures of a mount are asked, or threads that meet
OF_SCREWS = (
    (WAYS, heard(named("ways.spacers_each", "with_each_spacer"), "each-alone", "limits-asked")),  # one by one, first
    # what the screw of a lens does in a thread that is not its own, before the answer
    (WAYS, heard(named("found.screwed_in", "with_screw_told"), "goes-into", "drops-asked")),
    # how the iris of each is worked, before the answer
    ((COMPARE,), heard(named("seat.iris_apart", "with_iris_apart"), "iris-apart")),
    # which of several focal lengths leaves the more room close up, before the answer
    ((MACRO_DISTANCE,), heard(named("close.lengths_apart", "with_lengths_apart"), "more-room")),
    # what is so narrow that it drops through, in place of the answer
    (
        (*WAYS, LOOK_ALIKE, HAZARD, IDENTIFY_MOUNT, DEFINITION, WHY, LIST_FITS),
        heard(named("found.narrower_screws", "with_what_drops"), "drops-through"),
    ),
    # with which pitches a front thread is cut, before the answer
    ((WHY, LOOK_ALIKE, CHAIN), heard(named("found.screwed_in", "with_pitches_told"), "filter-binds")),
    # how far behind its flange a lens without a register forms its image, before the answer
    (
        (*WAYS, DEFINITION, IDENTIFY_MOUNT, DIY_DIMENSION, SHIM_CALIBRATION, MACRO_DISTANCE, COVERAGE),
        heard(named("seat.usual_flange", "with_usual_flange"), "image-behind"),
    ),
    # what goes between a corrector and the sensor, in place of the answer
    (
        (*WAYS, MACRO_DISTANCE, DIY_DIMENSION, SHIM_CALIBRATION, BUY_PLAN, DEFINITION, LIST_FITS),
        spaced(named("seat.corrector_spacing", "with_spacing")),
    ),
    # that the threads of the two named cross, where one does not go home in the other
    (
        (WHY, CHAIN, LIST_FITS, FOCUS_VERDICT),
        heard(named("found.threads_meet", "with_threads_crossed"), "filter-binds"),
    ),
    # the figure that is asked of a mount or thread, before the answer
    (
        (DEFINITION, DIY_DIMENSION, IDENTIFY_MOUNT),
        heard(
            named("words.figures", "with_figures"),
            *(f"figure-{of}" for of in FIGURES),
        ),
    ),
    # whether a thread measured a little under its name is as it should be, before the answer
    (
        (FOCUS_VERDICT, SHIM_CALIBRATION, IDENTIFY_MOUNT, HAZARD, WHY, DEFINITION, LOOK_ALIKE),
        heard(named("found.crests_measured", "with_crests_told"), "thread-told"),
    ),
    # how sure a figure of a mount is, before the answer
    (
        (*WAYS, DEFINITION, IDENTIFY_MOUNT, LOOK_ALIKE, COMPARE, LIST_FITS, WHY, HAZARD),
        heard(named("words.sureness", "with_sureness"), "figure-sure", "figure-either", "other-source"),
    ),
    # what lies behind the flange, which may be asked as other kinds too
    (
        (WHY, COVERAGE, COMPARE, CHAIN, FOCUS_VERDICT, LIST_FITS, SHIM_CALIBRATION),
        heard(named("words.figures", "with_figures"), "figure-glass", "figure-depth"),
    ),
    ((HAZARD,), heard(named("words.figures", "with_figures"), "figure-glass")),
)
# kinds that what follows from the numbers told, and from them alone, may be asked as
_WORKED_BACK = (
    *OF_A_SIZE, CROP_EQUIVALENT, MACRO_DISTANCE, EXPOSURE_ND, DEPTH_OF_FIELD, IDENTIFY_MOUNT, LIST_FITS, GEAR_SETTING,
)  # fmt: skip
BACK = (_WORKED_BACK, heard(
    named("worked_back", "with_worked_back"),
    "focal-wanted", "frame-wanted", "glass-factor-wanted", "circle-before-glass", "size-wanted", "pitch-wanted",
))  # fmt: skip
# the depth at the sensor, before a depth of field
AT_SENSOR = ((DEPTH_OF_FIELD,), heard(named("shims.how_exact", "with_depth_of_focus"), "depth-of-focus"))
# the seat of a ring with a reducer in it, in place of the answer
SEAT_OF_REDUCER = (
    (*OF_A_SIZE, EXPOSURE_ND, MACRO_DISTANCE, WHY),
    heard(named("making.reducer_seat", "with_reducer_seat"), "reducer-said"),
)
# what glass taken off, put before or exchanged at the sensor does to every seat, before the answer
GLASS_CHANGED = (
    (*WAYS, COMPARE, DIY_DIMENSION, SHIM_CALIBRATION, WHY, DEFINITION, HAZARD),
    heard(named("shims.bare_sensor", "with_glass_changed"), "glass-gone", "glass-added", "glass-exchanged"),
)
PUPIL = ((MACRO_DISTANCE, EXPOSURE_ND, DEPTH_OF_FIELD), heard(named("exposure.pupil_told", "with_pupil"), "pupil-told"))
# how far the lens has moved at a mark of its scale, before how near it comes
_moved = named("close.moved_at_mark", "with_move_at_mark")
MOVED_AT_MARK = ((MACRO_DISTANCE,), heard(_moved, "moved-out-asked", "span-to-near"))
_hole = heard(named("exposure.holes", "with_stop_of_hole"), "stop-of-hole", "hole-for-stop")
STOP_OF_HOLE = ((EXPOSURE_ND, CROP_EQUIVALENT, DIY_DIMENSION, MACRO_DISTANCE), _hole)
# what the stop counts as, before an answer that holds it among the rest
STOP_COUNTED = (
    (MACRO_DISTANCE, DEPTH_OF_FIELD),
    heard(named("close.stop_counted", "with_stop_counted"), "stop-counted"),
)
# how large a far point comes out where a lens sits off, before the answer
_OFF = (*WAYS, SHIM_CALIBRATION, DEPTH_OF_FIELD, WHY, DIY_DIMENSION, MACRO_DISTANCE)
FAR_BLUR = (_OFF, heard(named("shims.far_blur", "with_far_blur"), "blur-size-asked"))
# the stop that glass makes of another; whether one ring is enough
STOP_MADE = (
    (CROP_EQUIVALENT, EXPOSURE_ND, DEPTH_OF_FIELD, COMPARE),
    heard(named("picture.made_by_glass", "with_stop_made"), "stop-made"),
)
CUT_FOR = (
    (CHAIN, FOCUS_VERDICT, DIY_DIMENSION, LOOK_ALIKE, IDENTIFY_MOUNT, HAZARD, SHIM_CALIBRATION),
    heard(named("ways.cut_for", "with_ring_cut_for"), "cut-for-register"),
)
ONE_FOR_ALL = ((BUY_PLAN, CHAIN), heard(named("ways.one_for_all", "with_one_for_all"), "one-for-all"))
# that one tube is as long as several together, in place of the answer
TUBES_ALIKE = ((COMPARE, MACRO_DISTANCE), heard(named("close.tube_sets", "with_same_length"), "either-or"))
# which of tubes and extenders takes more light, before the answer
LIT_LESS = ((COMPARE,), heard(named("exposure.lit_less", "with_light_apart"), "light-apart"))
# what the pieces told come to, and what is left of an error with the sheets that lie there, before the answer
COME_TO = (
    (
        (*WAYS, MACRO_DISTANCE, SHIM_CALIBRATION, DIY_DIMENSION, DEFINITION, BUY_PLAN, LIST_FITS),
        heard(named("shims.come_to", "with_total"), "sum-asked", "flange-to-sensor"),
    ),
    ((SHIM_CALIBRATION,), heard(named("shims.come_to", "with_sheets_weighed"), "before-shims")),
    # to what a helicoid is set for infinity, before the answer
    (
        (CHAIN, FOCUS_VERDICT, MACRO_DISTANCE),
        heard(named("seat.infinity_setting", "with_setting_told"), "for-infinity"),
    ),
)
# how long so many threads of a screw that is named are, in place of the answer
PITCHES_OVER = (
    (*WAYS, IDENTIFY_MOUNT, LOOK_ALIKE, DEFINITION, DIY_DIMENSION, MACRO_DISTANCE, SHIM_CALIBRATION),
    heard(named("found.pitches_over", "with_pitches_over"), "pitches-over"),
)
AFTER_ALL = (
    PITCHES_OVER,
    ((*WAYS, MACRO_DISTANCE, DIY_DIMENSION), heard(named("ways.helicoid_rest", "with_helicoid_rest"), "helicoid-said")),
    TUBES_ALIKE,
    LIT_LESS,
    BACK,
    AT_SENSOR,
    SEAT_OF_REDUCER,
    GLASS_CHANGED,
    PUPIL,
    MOVED_AT_MARK,
    STOP_OF_HOLE,
    STOP_COUNTED,
    FAR_BLUR,
    STOP_MADE,
    ONE_FOR_ALL,
    CUT_FOR,
    *COME_TO,
)
# where a lens turns out to be of another mount than before
TURNED_OUT = heard(named("ways.ring_of_before", "with_ring_of_before"), "else-mount")


def _wholly(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The advice that a question is wholly about, before an answer that computes nothing."""
    if answer.chains or answer.quantities or question.follows:
        return answer
    add: Beside = named("words.wholly", "with_what_it_is_about")()
    return add(answer, question, knowledge)


WHOLLY: Beside = _wholly
# far things that come sharp too early, or nothing that does in a lens's own mount: what that tells, before the answer
OF_FAR_THINGS = (
    # with glass, and without it
    (
        (CROP_EQUIVALENT, DEPTH_OF_FIELD, MACRO_DISTANCE, EXPOSURE_ND),
        heard(named("each_way", "with_each_way"), "in-each-case"),
    ),
    ((*WAYS, MACRO_DISTANCE), where(named("close.tube_sets", "with_setting_told"), "infinity_setting")),
    ((COVERAGE, WHY), unheard("infinity-named", heard(advised("stopped-for-coverage"), "stopping-for-corners"))),
    ((*WAYS, HAZARD), unheard("counted-turns", heard(advised("past-infinity-advice"), "sharp-before-end"))),
    ((*WAYS, HAZARD), heard(advised("one-side-soft"), "one-half-sharp")),
    ((*WAYS, WHY, GEAR_SETTING), heard(advised("bayonet-not-home"), "never-locks")),
    ((IDENTIFY_MOUNT, DEFINITION, CHAIN, LOOK_ALIKE), heard(named("purposes", "with_purpose"), "purpose-asked")),
    ((*WAYS, LOOK_ALIKE), heard(advised("long-thread"), "thread-so-long")),
    ((WHY,), heard(advised("ring-or-lens"), "which-to-blame")),
    ((IDENTIFY_MOUNT, LOOK_ALIKE, COMPARE, WHY), heard(advised("ltm-in-m39"), "tpi-or-mm")),
    ((*WAYS, SHIM_CALIBRATION, WHY, EXPOSURE_ND), heard(advised("hidden-stopped-down"), "ok-stopped-down")),
    ((COMPARE,), heard(advised("thin-on-purpose"), "thick-or-thin")),
    (WAYS, heard(advised("thin-on-purpose"), "rather-thin")),
    ((COVERAGE,), heard(advised("hood-or-filter"), "hood-dark")),
    ((COVERAGE, WHY), heard(advised("corners-stopped-down"), "covers-more-close")),
    ((COVERAGE, GEAR_SETTING, WHY), heard(advised("stabiliser-edge"), "ibis-edge")),
    ((DEPTH_OF_FIELD, WHY), heard(advised("both-sides-depth"), "two-sides")),
    ((DEPTH_OF_FIELD, WHY, DIY_DIMENSION), heard(advised("print-and-depth"), "print-size")),
    ((*WAYS, WHY, LOOK_ALIKE), heard(named("shims.missed", "with_own_mount_soft"), "nothing-sharp")),
)
