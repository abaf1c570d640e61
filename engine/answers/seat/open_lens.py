"""A lens whose flange-to-image distance is not told: what hangs on it, what to measure, and what it must exceed."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from engine.answers.parts.answer import ANSWERED, NO, Answer, Line, ListedChain, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import BodySide, unknown_register
from engine.answers.parts.said import mentions, number
from engine.answers.parts.usual_mounts import PROJECTOR
from engine.answers.parts.wording import SEAT_READS_MM, article, f_number, listed, ranged, small_mm, trimmed
from engine.answers.seat.held import held_at
from engine.answers.seat.standin import as_listed, judged_alone
from engine.base.interval import Interval, is_known
from engine.base.span import Span
from engine.chains.lens_and_body import likely_register_of_lens
from engine.chains.setup import Facts, Setup
from engine.facts.records import Mount
from engine.judging.judge import Judged
from grammar.questions import Question, Thing
from grammar.things.casting import DRAWN

# kinds of lens that have no helicoid of their own, and how their flange-to-image distance goes with focal length
UNFOCUSED: Final = {
    "projector": "", "enlarger": "flange-to-image-enlarger", "large-format": "flange-to-image-large-format",
    "process": "flange-to-image-large-format", "copy": "", "view-camera": "flange-to-image-large-format",
}  # fmt: skip
AS_MEASURED: Final = "as measured"
ON_FLANGE: Final = "held on the flange"
MEDIUM: Final = "medium-format"  # the kind of mount
NOT_TOLD: Final = "how far behind its flange the image forms at infinity is not told."
MEASURE: Final = (
    "Measure it first: with the lens at infinity, throw a far window on paper, and take the distance from its flange "
    "(or the shoulder that will rest on the ring) to the sharp image."
)

CLAMP: Final = "proj-clamp"  # the advice on what holds a projection lens


def depends(question: Question, thing: Thing | None, body: BodySide, knowledge: Knowledge) -> Answer:
    """What can be said of a lens without a known mount on this body; the question back is the answer's last line."""
    told = needed(thing, body.mount, knowledge)
    measured = number(question, "flange_to_image")
    head = Line("head", f"It depends on {_noun(thing)}: {NOT_TOLD}")
    own = _own_thread(thing, knowledge)
    threaded = bool(own) or question.said("thread") is not None
    if measured is not None and is_known(body.mount.register_mm):
        head, told = left_over(measured, body.mount, body.mount.register_mm)
    else:
        told = _of_its_format(thing, body.mount, knowledge) + told
    held = held_at(measured, thing, body, knowledge) if measured is not None else None
    held = held or _on_flange(thing, body, told, knowledge)
    first = [*_clamped(thing, question, knowledge), *_spanned(question, body.mount, measured)]
    lines = [*first, head, *own, *told.lines, *focusing_lines(thing, question), *_iris(thing, question)]
    if measured is None:
        ask = MEASURE if threaded else f"{MEASURE} And which mount or thread has it?"
        lines.append(Line("ask", ask, wants="flange_to_image thread" if not threaded else "flange_to_image"))
    elif not threaded:
        lines.append(Line("ask", "Which mount or thread has it?", wants="thread"))
    register = body.mount.register_mm
    rows = [Quantity("register_mm", register, body.mount.id)] if is_known(register) else []
    return Answer(
        question.text, question.intent, ANSWERED if held is not None else NO, tuple(lines), question=question,
        chains=(held,) if held is not None else None, quantities=(*rows, *told.quantities),
    )  # fmt: skip


def _clamped(thing: Thing | None, question: Question, knowledge: Knowledge) -> list[Line]:
    """What holds a projection lens, first where that is asked."""
    asked = thing is not None and thing.lens_kind == PROJECTOR and mentions(question, "how-held")
    held = knowledge.catalogue.advice.get(CLAMP) if asked else None
    return [Line("head", f"{held.topic}: {held.says}")] if held is not None else []


def _spanned(question: Question, body: Mount, measured: float | None) -> list[Line]:
    """Which lenses what is drawn out makes far things sharp with, by where their image lies."""
    ends = [one.thickness_mm for one in question.adapters if one.piece in DRAWN and one.thickness_mm is not None]
    register = body.register_mm
    if len(ends) != 1 or measured is not None or not is_known(register) or ends[0][0] == ends[0][1]:
        return []
    least, most = (trimmed(register.nominal + end, 1) for end in ends[0])
    text = (
        f"Far things come sharp on it where the image of a far window lies {least} to {most} mm behind where the lens"
        " is held: farther than that it needs a tube too, nearer it is close-up only."
    )
    return [Line("head", text)]


def _on_flange(thing: Thing | None, body: BodySide, told: Told, knowledge: Knowledge) -> ListedChain | None:
    """A lens measured too short for the body, judged where it then sits."""
    error = next((row.value for row in told.quantities if row.name == "register_error_mm"), None)
    form = body.format or knowledge.catalogue.formats.get(body.body.format or "")
    if error is None or not is_known(error) or form is None or thing is None or thing.focal_length_mm is None:
        return None
    off = (("extension-tube", error.nominal, error.nominal),)
    return as_listed(judged_alone(thing.focal_length_mm, thing.f_number, off, form, knowledge), ON_FLANGE)


def left_over(measured_mm: float, body: Mount, register: Interval) -> tuple[Line, Told]:
    """What a measured distance leaves between lens and body."""
    over = Interval.exact(measured_mm) - register
    head = f"{small_mm(measured_mm)} from flange to image, less {small_mm(register.nominal)}, the register of "
    ring = Quantity("ring_thickness_mm", over, "lens as measured")
    if over.nominal < 0:
        text = f"{head}{body.designation}: {small_mm(-over.nominal)} too short. Close-up only, unless it sinks in."
        return Line("head", text), Told((), (Quantity("register_error_mm", -over, ON_FLANGE), ring))
    room = f"{small_mm(over.nominal)} for ring, helicoid or holder"
    text = f"{head}{body.designation}, leaves {room}: held so, it reaches infinity."
    return Line("head", text), Told((), (Quantity("stack_mm", over, AS_MEASURED), ring))


def _of_its_format(thing: Thing | None, body: Mount, knowledge: Knowledge) -> Told:
    """'a 645 lens': the mounts of the SLRs for that format, with the ring that each of them asks for."""
    facts = knowledge.catalogue
    form = facts.formats.get(thing.format or "") if thing is not None and not thing.ids else None
    mounts = [one for one in facts.mounts.values() if form and one.format == form.id and one.kind == MEDIUM]
    register = body.register_mm
    if form is None or not mounts or not is_known(register):
        return Told()
    seats = [(one, one.register_mm - register) for one in mounts if is_known(one.register_mm)]
    rings = tuple(Quantity("ring_thickness_mm", seat, one.id) for one, seat in seats)
    each = [f"{one.designation} {ranged(seat, small_mm)}" for one, seat in seats]
    lead = f"Lenses for {form.name} come in several mounts; the ring to {body.designation} would be: "
    return Told((Line("text", f"{lead}{listed(each)}."),), rings)


def _own_thread(thing: Thing | None, knowledge: Knowledge) -> list[Line]:
    """The thread or barrel that it is held by, and what is sold for that."""
    mounts = knowledge.catalogue.mounts
    mount = next((mounts[id_] for id_ in (thing.ids if thing else ()) if id_ in mounts), None)
    if mount is None:
        return []
    thread = knowledge.catalogue.threads.get(mount.thread or "")
    text = f"It is held by {mount.designation}"
    if thread is not None and is_known(thread.pitch_mm):
        text += f": {thread.designation}, pitch {trimmed(thread.pitch_mm.nominal, 3)} mm; check that pitch on the lens"
    rings = [ring for row in knowledge.rings.onward.get(mount.id, {}).values() for ring in row]
    names = list(dict.fromkeys(knowledge.catalogue.adapters[ring.id].name for ring in rings))[:6]
    return [Line("text", f"{text}." + (f" Sold for it: {listed(names)}." if names else ""))]


def needed(thing: Thing | None, body: Mount, knowledge: Knowledge, stack_mm: float | None = None) -> Told:
    """The number that the lens's flange-to-image distance must exceed on this body, and what it usually is."""
    register = body.register_mm
    if not is_known(register):
        return Told((Line("text", f"The register of {body.designation} is not established either."),))
    must = trimmed(register.nominal, 3)
    text = (
        f"It must exceed {must} mm, the register of {body.designation}, by whatever ring, helicoid or holder stands "
        "between; what is over is the seat to fill. Less: only if the lens sinks into the throat, else close-up only."
    )
    if stack_mm is not None and stack_mm > SEAT_READS_MM:
        whole = register.nominal + stack_mm
        text += f" With the pieces named first it must be {small_mm(whole)}."
    lines, rows = [Line("text", text)], []
    usual = usual_flange_to_image(thing, knowledge) if thing else None
    focal = thing.focal_length_mm if thing else None
    if usual is not None and focal is not None:
        over = usual - register
        lines.append(Line("text", (
            f"For such a lens of {trimmed(focal, 1)} mm it is usually {usual.least:.0f} to {usual.greatest:.0f} mm, "
            f"which leaves {over.least:.0f} to {over.greatest:.0f} mm for rings and helicoid."
        )))  # fmt: skip
        rows.append(Quantity("stack_mm", over, "usual flange-to-image distance"))
    return Told(tuple(lines), tuple(rows))


def usual_flange_to_image(thing: Thing, knowledge: Knowledge) -> Interval | None:
    """How far behind its flange such a lens usually forms its image at infinity, in mm, by its focal length."""
    mount = knowledge.catalogue.mounts.get(thing.id or "") if thing.kind == "mount" else None
    name = UNFOCUSED.get(thing.lens_kind or (mount.kind if mount is not None else ""), "")
    if not name or thing.focal_length_mm is None:
        return None
    return knowledge.catalogue.assumptions[name].value * thing.focal_length_mm


def _noun(thing: Thing | None) -> str:
    if thing is None or not (thing.words.strip() or thing.lens_kind):
        return "the lens"
    kind = f" {thing.lens_kind.replace('-', ' ')}" if thing.lens_kind else ""
    focal = f" {trimmed(thing.focal_length_mm, 1)} mm" if thing.focal_length_mm else ""
    return f"the{focal}{kind} lens"


def focusing_lines(thing: Thing | None, question: Question) -> Iterator[Line]:
    """What a lens of no focusing of its own, or of none that is told, is focused by."""
    kind = thing.lens_kind if thing else None
    sure = kind in UNFOCUSED or mentions(question, "no-focus-ring")
    lead = "It has no focusing of its own" if sure else "If it has no focusing of its own"
    yield Line(
        "text",
        f"{lead}: put a helicoid between (M42, or M65 for large ones), or a bellows. A plain "
        "barrel is held in a tube or clamp with grub screws.",
    )
    if thing and ("shutter" in " ".join((*thing.traits, thing.lens_kind or "")) or kind == "large-format"):
        yield Line("text", "A leaf shutter in it must be held open: T, a lock, or cocked, as its maker says.")


def _iris(thing: Thing | None, question: Question) -> Iterator[Line]:
    if thing and thing.lens_kind == "projector" and not mentions(question, "stop-wished"):
        at = f" f/{f_number(thing.f_number)}" if thing.f_number else " wide open"
        stopped = "a card with a round hole before the glass stops it down"
        yield Line("text", f"Iris: projection lenses have none, so it works at{at} always; {stopped}.")


def needs_register(setup: Setup, judged: Judged | None) -> bool:
    """Whether the lens's own flange-to-image distance is what the verdict hangs on: unknown, or only assumed."""
    if not unknown_register(setup):
        return False
    error = judged.measured_trace.value("register_error_mm") if judged else None
    return not isinstance(error, Span) or not is_known(error.shortest) or (judged is not None and is_assumed(judged))


def is_assumed(judged: Judged) -> bool:
    """Whether the lens's flange-to-image distance is only what is usual for a lens of its kind and length."""
    return judged.measured_trace.given["lens_register_mm"].assumed


def usual_room(setup: Setup, facts: Facts) -> Told:
    """What usually must stand between such a lens and the body for infinity; how to measure it where none is usual."""
    usual, body = likely_register_of_lens(setup, facts), setup.body_mount.register_mm
    if not (is_known(usual) and is_known(body)):
        return length_by_measure(setup.lens_mount, setup.body_mount)
    room, register = usual - body, small_mm(body.nominal)
    text = (
        f"For infinity usually {ranged(room, small_mm)} of rings and helicoid together: {ranged(usual, small_mm)} from "
        f"flange to image is usual for such a lens, less {register} of body register. Its own is not known."
    )
    return Told(
        (Line("head", text), Line("ask", MEASURE, wants="flange_to_image")), (Quantity("stack_mm", room, "usual"),)
    )


def usual_told(judged: Judged) -> tuple[Line, ...]:
    """What is reckoned with where the lens's flange-to-image distance is only what is usual."""
    usual = judged.trace.given["lens_register_mm"]
    if not usual.assumed or not isinstance(usual.value, Interval):
        return ()
    text = (
        f"Reckoned with {small_mm(usual.value.nominal)} from its flange to the image ({usual.value.least:.0f} to "
        f"{usual.value.greatest:.0f} mm is usual for such a lens); its own is not known."
    )
    return (Line("note", text),)


def no_shoulder(setup: Setup) -> Told:
    """A lens that is turned in until sharp: its back focus decides, and where it must be sunk."""
    body = setup.body_mount
    depth = f"{body.register_mm.nominal:g} mm" if is_known(body.register_mm) else "the register"
    text = (
        f"Such a lens has no flange and so no register: its back focus decides. Where that is less than {depth}, the "
        f"register of {body.designation}, a plain sleeve leaves it close-up only; an insert must carry it deep into "
        "the body, recessed by the difference and clear of filter and sensor. Screw in until sharp, then lock."
    )
    ask = "What is its back focus: how far behind the last glass is a far window sharp on paper?"
    return Told((Line("text", text), Line("ask", ask)))


def length_by_measure(lens: Mount, body: Mount) -> Told:
    """How long what holds a lens of no register must be: its shoulder to its image, less the body's register, in mm."""
    if is_known(lens.register_mm) or not is_known(body.register_mm):
        return Told()
    less = trimmed(body.register_mm.nominal, 2)
    text = (
        f"{lens.designation} lens on {article(body.designation)} {body.designation} body: the lens has no register of"
        f" its own. How far the image of a far window falls behind its shoulder, less the {less} mm of"
        f" {body.designation}, is how long it must be to its flange."
    )
    return Told((Line("head", text), Line("ask", MEASURE, wants="flange_to_image")))
