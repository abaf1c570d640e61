"""A ring that is off between a lens and a body: what has to be taken off it, or shimmed, for infinity."""

from __future__ import annotations

from engine.answers.parts.answer import Line, ListedChain, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.near_enough import wrong_seat_mm
from engine.answers.parts.resolve import BodySide, LensSide, Missing, body_side, lens_side, setup_of
from engine.answers.parts.said import focals, mentions, number
from engine.answers.parts.wording import READS_MM, small_mm, trimmed
from engine.answers.seat.described import NEARLY, NEARLY_MM, TUBE
from engine.answers.seat.making import ring_to_make
from engine.answers.shims.bare_sensor import glass_told
from engine.answers.shims.forgiving import is_error
from engine.answers.shims.left_off import left_as_it_is, of_any_lens
from engine.answers.shims.loose import off_by_mm
from engine.answers.ways.pair import one_pair
from engine.answers.ways.pairs import as_measured, body_as_measured
from engine.base.interval import Interval, is_known
from engine.base.span import Span
from engine.chains.setup import Setup
from engine.chains.walk import ADDED_FOCUSING
from grammar.kinds import CHAIN, SEATED, SHIM_CALIBRATION
from grammar.questions import BODY_OFF, Question


def of_ring(question: Question, knowledge: Knowledge) -> tuple[Told, float | None]:
    """What mends the ring that was told, by its length or by how far it is off; and the shim in mm where one does."""
    gone = glass_told(question, knowledge)
    if gone.lines:
        return gone, None
    error = off_by_mm(question)
    if error is None:
        error = _error_by_depth(question, knowledge)
    if error is None:
        error = error_of_the_pair(question, knowledge)
    if error is not None and abs(error) < READS_MM and _is_worked_on(question):
        text = "Just right: the ring is now as thick as it has to be, and nothing is left to shim or to take off."
        return Told((Line("head", text),), (Quantity("register_error_mm", Interval.exact(0.0), "of the ring"),)), None
    if error is None or abs(error) < READS_MM:
        return Told(), None
    by, body = small_mm(abs(error)), number(question, "flange_to_image")
    if body is not None and question.said(BODY_OFF) is not None:
        text = _of_body(error, body)
    elif error > 0 and _is_sunk_already(error, question, knowledge):
        text = (
            f"The lens sits {by} too far out, less than it would on any ring there: its mount was changed. Take {by}"
            " off the seat of that mount, square to the axis, equal all round, and see that rear and levers clear the"
            " body."
        )
    elif error > 0 and (hopeless := _no_ring_does_it(error, question, knowledge)) is not None:
        told = Told((Line("head", hopeless),), (Quantity("register_error_mm", Interval.exact(error), "of the ring"),))
        return told + _right_ring(question, knowledge) + left_as_it_is(error, question, knowledge), None
    elif error > 0:
        off = _taken_off(error, knowledge)
        text = f"The lens sits {by} too far out: {off} A shim only makes it longer, which makes it worse."
        worse = mentions(question, "shim-added") and error - question.laid[0] > -READS_MM  # it was too far out before
        text = f"No, adding makes it worse, not better. {text}" if worse else text
    else:
        text = f"The lens sits {by} too close: add a shim of {by} under the ring's flange, on the whole seat."
    rows = (
        Quantity("shim_mm", Interval.exact(abs(error)), "to take off" if error > 0 else "to add"),
        Quantity("register_error_mm", Interval.exact(error), "of the ring"),
    )
    mended, left = Told((Line("head", text),), rows), left_as_it_is(error, question, knowledge)
    ring = _right_ring(question, knowledge)
    scale = question.follows and mentions(question, "where-on-scale")  # 'where's infinity on the lens then'
    first = question.intent in SEATED or ((scale or mentions(question, "infinity-falls-at")) and focals(question))
    told = left.as_heads() + mended + ring if first else mended + ring + left
    if not (question.lenses or focals(question)) and question.intent in SEATED:
        told = of_any_lens(error, question, knowledge) + told
    return told, abs(error) if error < 0 else None


def _is_worked_on(question: Question) -> bool:
    """Whether this turn tells what was laid under the ring, or taken off it, or the ring is that of a talk."""
    held = question.follows and any(one.is_of_one_length for one in question.adapters)
    return held or any(question.places(key) for key in ("sheet-laid", "metal-off", "sheet-out", "sheet-back"))


def _taken_off(error: float, knowledge: Knowledge) -> str:
    """How so much is taken off a ring: some tenths by hand, more on a lathe."""
    by = small_mm(error)
    if not is_error(error, knowledge):
        return f"taking {by} off the ring is work for a lathe; one of the right length is the easier way."
    return (
        f"take {by} off one seat of the ring, flat and parallel: lap it on wet abrasive paper on glass, a quarter turn"
        " at a time, and check it at four points."
    )


def _is_sunk_already(error: float, question: Question, knowledge: Knowledge) -> bool:
    """Whether a lens of the shorter register is off by less than held flush: only a changed mount brings it so near."""
    setup = _setup(question, knowledge)
    ring = ring_to_make(setup, knowledge.catalogue) if setup is not None else None
    flush = -ring.thickness_mm.nominal if ring is not None and ring.thickness_mm is not None else 0.0
    return flush > 0 and error < flush - READS_MM and not question.adapters


def _no_ring_does_it(error: float, question: Question, knowledge: Knowledge) -> str | None:
    """Why nothing that is taken off a ring puts the lens right, where the registers leave no room for any."""
    setup = _setup(question, knowledge)
    ring = ring_to_make(setup, knowledge.catalogue) if setup is not None else None
    if ring is None or ring.possible != "no" or ring.thickness_mm is None:
        return None
    return (
        f"The lens sits {small_mm(error)} too far out, and nothing taken off the ring puts that right: the seat would"
        f" have to be {small_mm(ring.thickness_mm.nominal)}; {ring.why}. Glass in the ring, a changed mount or another"
        " body does it; else it is for close-ups."
    )


def _setup(question: Question, knowledge: Knowledge) -> Setup | None:
    lens, body = lens_side(question.lens, knowledge.catalogue), body_side(question.body, knowledge.catalogue)
    if not isinstance(lens, LensSide) or not isinstance(body, BodySide):
        return None
    return setup_of(_measured(lens, question), body_as_measured(body, question), knowledge.catalogue)


def _of_body(error: float, measured: float) -> str:
    """What mends a body whose own register is off, for every lens of its mount."""
    by = small_mm(abs(error))
    right = trimmed(measured - error, 3)
    text = (
        f"This body measures {trimmed(measured, 3)} mm where its mount has {right} mm. Every lens of its own sits {by}"
    )
    if error < 0:
        return (
            f"{text} too close. Add a shim of {by} between lens and body, or under the body's mount, on the whole seat."
        )
    return f"{text} too far out. No shim mends that: its mount or sensor must come {by} nearer, work for a service."


def _right_ring(question: Question, knowledge: Knowledge) -> Told:
    """How thick the ring ought to be, where lens and body are known."""
    setup = _setup(question, knowledge)
    ring = ring_to_make(setup, knowledge.catalogue) if setup is not None else None
    if ring is None or ring.thickness_mm is None:
        return Told()
    seat = ring.thickness_mm.nominal
    right = small_mm(seat) if seat >= 0 else f"a seat {small_mm(-seat)} inside the body's flange"
    text = f"Right is {right}, lens register less body register."
    return Told((Line("fact", text, 1),), (Quantity("ring_thickness_mm", ring.thickness_mm, "what is right"),))


def error_of_the_pair(question: Question, knowledge: Knowledge) -> float | None:
    """How far the lens is off its register on the ring that was described by its length, mm."""
    chains = chain_on_ring(question, knowledge)
    error = chains[0].listed.judged.trace.value("register_error_mm") if chains else None
    if not isinstance(error, Span) or not error.is_fixed or not is_known(error.shortest):
        return None
    return error.shortest.nominal


def chain_on_ring(question: Question, knowledge: Knowledge) -> tuple[ListedChain, ...]:
    """The lens on the body by the ring that was described by its length: one chain at most."""
    lens, body = lens_side(question.lens, knowledge.catalogue), body_side(question.body, knowledge.catalogue)
    spaced = any(thing.piece == TUBE for thing in question.adapters)
    if any(thing.piece in ADDED_FOCUSING for thing in question.adapters) or (
        spaced and not _seat(question, lens, body, wrong_seat_mm(knowledge.catalogue))
    ):
        return ()  # what is drawn out has no one length, and a tube is put between on purpose
    described = any(thing.thickness_mm is not None for thing in question.adapters) or number(question, "thickness")
    described = described or _is_asked_of(question)
    described = described or (question.intent == SHIM_CALIBRATION and question.said("flange_to_image") is not None)
    if not described or not isinstance(lens, LensSide) or not isinstance(body, BodySide):
        return ()
    asked = question.with_(intent=CHAIN, topic=None)
    return (one_pair(asked, _measured(lens, question), body_as_measured(body, question), knowledge).chains or ())[:1]


def _seat(question: Question, lens: LensSide | Missing, body: BodySide | Missing, thin_mm: float) -> bool:
    """Whether rings that are stacked, or a ring with a thin sheet under it, are what holds the lens."""
    if not (isinstance(lens, LensSide) and isinstance(body, BodySide)):
        return False
    one, other = lens.mount.register_mm, body.mount.register_mm
    joining = any(thing.front and thing.rear for thing in question.adapters)
    sizes = [(thing.thickness_mm or (0.0,))[0] for thing in question.adapters if not thing.front]
    if not (is_known(one) and is_known(other)) or not all(
        thing.is_of_one_length or thing.front for thing in question.adapters
    ):
        return False
    between = one.nominal - other.nominal
    return sum(sizes) < thin_mm if joining else abs(between - sum(sizes)) <= max(NEARLY_MM, NEARLY * between)


def _is_asked_of(question: Question) -> bool:
    """'so turn off how much' after what rings named by their mounts come to: of the stack that was told."""
    named = bool(question.adapters) and all(one.front or one.ids for one in question.adapters)
    rings = named or bool(question.limits.using)
    seated = question.prior is not None and question.prior.intent in SEATED
    return question.intent == SHIM_CALIBRATION and question.follows and rings and seated


def _measured(lens: LensSide, question: Question) -> LensSide:
    """The lens with the register that was measured on it, where it is not that of a body or of a whole stack."""
    return lens if question.said(BODY_OFF) is not None or is_gauged(question) else as_measured(lens, question)


def is_gauged(question: Question) -> bool:
    """Whether a depth was gauged from a seat down to the sensor: metal to metal, not where an image lies."""
    return question.said("flange_to_image") is not None and mentions(question, "gauged-depth")


def _error_by_depth(question: Question, knowledge: Knowledge) -> float | None:
    """'from the M42 seat through the ring to the sensor 45.60': what was gauged less the register of the lens, mm."""
    gauged, lens = number(question, "flange_to_image"), lens_side(question.lens, knowledge.catalogue)
    if gauged is None or not is_gauged(question) or not isinstance(lens, LensSide):
        return None
    register = lens.mount.register_mm
    error = gauged - register.nominal if is_known(register) else None
    return round(error, 4) if error is not None and (error == 0 or is_error(abs(error), knowledge)) else None


def off_right(question: Question, knowledge: Knowledge) -> Told:
    """What mends a ring that was described by its length and is off; nothing where it is right or was not described."""
    told, _ = of_ring(question, knowledge)
    return told
