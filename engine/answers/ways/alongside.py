"""What stands beside the chains of one pair: what is forced or held straight on, traps, remedies, examples."""

from __future__ import annotations

from engine.answers.making.whole_ring import REGISTERS
from engine.answers.parts.answer import Line, ListedChain, RingToMake, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.nearby import nearest
from engine.answers.parts.resolve import TELESCOPE
from engine.answers.parts.said import mentions, number
from engine.answers.parts.wording import SEAT_READS_MM, small_mm
from engine.answers.seat.cautioning import warnings_of
from engine.answers.seat.elsewhere import elsewhere
from engine.answers.seat.forced import forced_chain
from engine.answers.seat.making import ring_to_make
from engine.answers.seat.open_lens import MEASURE, is_assumed, needed, needs_register, no_shoulder
from engine.answers.seat.others import traps
from engine.answers.seat.spacing import far_limits, marks, usual_focals
from engine.answers.seat.standin import as_listed
from engine.answers.seat.telling import CERTAINTY_WORDS, chain_title, life_line, seat_line
from engine.answers.seat.unsold import flush_chain, is_free, lacks_the_step, made_chain, off_ring
from engine.answers.shims.loose import off_by_limit, off_by_mm
from engine.answers.ways.as_asked import as_asked
from engine.answers.ways.plain_first import without_glass
from engine.answers.ways.room_told import is_only_apart, is_only_reckoned
from engine.answers.words.advice import advice_lines, is_of_body
from engine.base.compact import compact, replace
from engine.base.interval import Interval, is_known
from engine.base.span import Span
from engine.chains.setup import Setup
from engine.chains.walk import Chain
from engine.judging.judge import Judged
from grammar.kinds import BUY_PLAN, WHY
from grammar.questions import RING, Question

FLUSH = "flush-of-use"  # of the facts: how far out a lens held flush is of use
MOUNT_ADVICE = 7.0  # what advice for this very mount must share with the question
ON_TELESCOPE = "camera on a telescope"
REACHED = "infinity"


@compact
class Alongside:
    """Further chains, numbered on after the best ones, and what is said of them and of other bodies."""

    chains: tuple[ListedChain, ...] = ()
    told: Told = Told()


def _held_flush(question: Question) -> bool:
    """Whether something is flush that is no piece: a flush ring is one."""
    return bool({one.at for one in question.places("flush")} - {one.at for one in question.places("flush-piece")})


def straight_or_forced(question: Question, setup: Setup, knowledge: Knowledge) -> list[ListedChain]:
    """What the question itself describes though nobody would advise it: it is answered first."""
    lacks = question.intent == BUY_PLAN or mentions(question, "lens-lacks-its-ring", "ring-of-focus", "ring-not-yet")
    lacks = lacks or (mentions(question, "only-no-ring") and mentions(question, "iris-asked", "stops-it-down"))
    lacks = lacks or (question.intent == WHY and mentions(question, "no-ring-made"))
    bare = (mentions(question, "held-direct") or RING in question.limits.without) and not lacks
    direct = bare or _held_flush(question) or lacks_the_step(question.limits, setup, knowledge)
    direct = direct and not question.limits.without_glass and question.topic != "one-ring"
    pieces = question.adapters
    between = any((question.follows and one.ids) or (one.front and one.rear) or one.thickness_mm for one in pieces)
    if direct and not between:
        for joint in knowledge.joints.onward(setup.lens_mount.id):
            if joint.rear == setup.body_mount.id:
                judged = knowledge.judge_chain(Chain((joint,), {}), setup)
                return [as_listed(judged, chain_title(judged, knowledge))]
        if setup.lens_mount.id != setup.body_mount.id:
            return [flush_chain(setup, knowledge)]
    room = ring_to_make(setup, knowledge.catalogue)
    reckoned = (question.said(REGISTERS) is not None and not question.adapters) or is_only_reckoned(
        question, room, knowledge
    )
    asked = made_chain(room, setup, knowledge) if reckoned else None  # of the ring they leave room for, sold or not
    if asked is not None and asked.listed.judged.verdict == "unusable":
        return [asked]
    if is_only_apart(question, room, knowledge):
        return [flush_chain(setup, knowledge)]
    # a ring told by what it measures is judged as it is, whatever it should be
    off = off_by_mm(question) if question.said("nominal") is None else None
    ends = off_by_limit(question, knowledge.catalogue) if off is None else None
    if ends is not None and (told_off := off_ring(ends, setup, knowledge)) is not None:
        return [told_off]
    supposed = _supposed(question, off, setup, knowledge)
    if supposed is not None:
        return [supposed]
    if off is not None and (question.adapters or question.said("thickness")):
        told_off = off_ring(off, setup, knowledge, bool(question.places("metal-off")))
        return [told_off] if told_off is not None else []
    if question.adapters and setup.lens_mount.coupling == "screw":
        forced = forced_chain(question, setup, knowledge)
        if forced is not None:
            return [forced]
    return []


def _supposed(question: Question, off_mm: float | None, setup: Setup, knowledge: Knowledge) -> ListedChain | None:
    """The one ring that is named, were it thinner, thicker or as thick as is supposed; None where nothing is."""
    adapters = knowledge.catalogue.adapters
    named = [adapters[id_] for thing in question.adapters for id_ in thing.ids[:1] if id_ in adapters]
    told = number(question, "thickness")
    if len(named) != 1 or told is None or (off_mm is not None and mentions(question, "too")):
        return None
    ring = named[0]
    if (ring.front, ring.rear) != (setup.lens_mount.id, setup.body_mount.id) or not is_known(
        ring.thickness_mm.shortest
    ):
        return None
    now = ring.thickness_mm.shortest.nominal
    seat = told if off_mm is None else now + off_mm
    if abs(seat - now) < SEAT_READS_MM:
        return None
    name = f"{ring.name}, were it {small_mm(seat)} thick instead of {small_mm(now)}"
    piece = replace(
        ring, id="described-1", name=name, thickness_mm=Span.fixed(Interval.exact(seat)), seat_basis="measured"
    )
    judged = knowledge.judge_chain(Chain((piece,), {}), setup)
    return as_listed(judged, name)


def alongside(
    question: Question, setup: Setup, ring: RingToMake, chains: tuple[ListedChain, ...], knowledge: Knowledge
) -> Alongside:
    """Traps beside a chain that reaches infinity; remedies, examples and the ring to make where none does."""
    feet = question.feet
    if not chains:
        if not is_free(question.limits):
            return Alongside((), _remedies(setup, knowledge) + _of_mount(question, setup, knowledge))
        made = made_chain(ring, setup, knowledge)
        warned = warnings_of(made.listed.judged, knowledge, feet) if made is not None else ()
        told = Told((_short(made, feet, "nobody sells it"), *warned)) if made is not None else Told()
        told += _remedies(setup, knowledge) + _of_mount(question, setup, knowledge)
        return Alongside((made,) if made is not None else (), told)
    best = chains[0].listed.judged
    told = Told()
    rows: tuple[ListedChain, ...] = ()
    plain, bare = without_glass(chains, ring, setup, knowledge), _without_ring(question, chains, setup, knowledge)
    if bare is not None:
        rows = (bare,)
        told += Told((_short(bare, feet, "without what you put between"),))
    elif plain is not None and is_free(question.limits):
        plain = replace(plain, number=len(chains) + 1)
        rows = (plain,)
        told += Told((_short(plain, feet, "without glass"),))
    elif is_free(question.limits):
        rows = tuple(traps(chains, knowledge, question.limits.pieces))
    if rows and plain is None and bare is None:
        told += Told((Line("caution", "Not to be taken for these, which pass under the same names:"),))
        told += Told(tuple(_short(row, feet) for row in rows))
    told += _never_straight(setup, knowledge) + as_asked(question, knowledge)
    if best.verdict != "infinity" or best.certainty == "unknown" or question.topic == "remedy":
        told += _remedies(setup, knowledge)
    if len(best.chain.adapters) > 1 or mentions(question, "stack-of-rings"):
        told += Told(
            (Line("text", "Errors of thickness add: each ring may be a few hundredths off, and wides show it first."),)
        )
    told += _examples(best, setup, knowledge, feet) + _open(question, setup, best, knowledge)
    return Alongside(rows, told + _of_mount(question, setup, knowledge))


def _of_mount(question: Question, setup: Setup, knowledge: Knowledge) -> Told:
    """What is to be known of lenses of this mount, and the advice for it that the question's words are about.

    In a talk it was told with the first answer.
    """
    mount = setup.lens_mount
    if question.follows or mount.id == setup.body_mount.id:
        return Told()
    text = question.text
    for thing in question.lenses:
        text = text.replace(thing.words, " ") if thing.words and thing.kind == "mount" else text  # no name is a matter
    rows = nearest(
        text, knowledge.catalogue, 1, MOUNT_ADVICE,
        among=lambda one: mount.id in one.mounts and is_of_body(one, question),
    )  # fmt: skip
    if any(thing.lens_kind == TELESCOPE for thing in question.lenses):
        rows = nearest(ON_TELESCOPE, knowledge.catalogue, 1, mounts=frozenset([mount.id]))
    note = (Line("text", f"{mount.designation} lenses: {mount.note}"),) if mount.note else ()
    return Told((*advice_lines(rows), *note))


def _without_ring(
    question: Question, chains: tuple[ListedChain, ...], setup: Setup, knowledge: Knowledge
) -> ListedChain | None:
    """A lens on a body of its own mount, where a ring between is what spoils infinity: straight on, as it was made."""
    between = chains[0].listed.judged.chain.adapters and question.adapters
    if not between or setup.lens_mount.id != setup.body_mount.id or chains[0].listed.judged.verdict == "infinity":
        return None
    judged = knowledge.judge_chain(Chain((), {}), setup)
    if judged.verdict != "infinity":
        return None
    return replace(as_listed(judged, chain_title(judged, knowledge)), number=len(chains) + 1)


def plainer(
    chains: tuple[ListedChain, ...], ring: RingToMake, setup: Setup, knowledge: Knowledge, bare: bool
) -> ListedChain | None:
    """The plain ring that could be made, where all that is sold has glass, or does not reach infinity.

    `bare`: no piece was named, so that the best that is sold need not be told first.
    """
    if not chains or ring.possible != "plain":
        return None
    glass = all(any(one.has_glass for one in row.listed.judged.chain.adapters) for row in chains)
    best = chains[0].listed.judged
    short = bare and best.best != REACHED and len(best.chain.adapters) > 1  # and no one ring is sold
    return made_chain(ring, setup, knowledge) if glass or short else None


def nearer(chains: tuple[ListedChain, ...], ring: RingToMake, setup: Setup, knowledge: Knowledge) -> ListedChain | None:
    """The lens held flush on the body, where nothing is sold, or what is carries it farther out yet."""
    if ring.possible != "no" or ring.thickness_mm is None or ring.thickness_mm.nominal >= 0:
        return None
    flush = flush_chain(setup, knowledge)
    if not chains:
        return flush if -ring.thickness_mm.nominal <= knowledge.catalogue.assumptions[FLUSH].value.greatest else None
    least, most = _error(flush.listed.judged), _error(chains[0].listed.judged)
    if least is None or most is None:
        return None
    return flush if most > least * knowledge.catalogue.assumptions["detour-times-as-far"].value.nominal else None


def _error(judged: Judged) -> float | None:
    """How far out a chain leaves the lens, in mm; None where that can be set, or is not known."""
    error = judged.measured_trace.value("register_error_mm")
    return error.shortest.nominal if isinstance(error, Span) and is_known(error.shortest) else None


def _never_straight(setup: Setup, knowledge: Knowledge) -> Told:
    """A danger where the lens would start in the body's thread, though it does not belong there."""
    male, female = setup.lens_mount.thread, setup.body_mount.thread
    if setup.lens_mount.coupling != "screw" or setup.body_mount.coupling != "screw" or not (male and female):
        return Told()
    mating = knowledge.joints.mating(male, female) if male != female else None
    if mating is None or mating.outcome != "binds" or mating.runs_home != "no" or mating.turns is None:
        return Told()
    threads = knowledge.catalogue.threads
    if mating.turns.greatest <= 0:
        return Told()
    text = (
        f"Do not screw it straight in: {threads[male].designation} starts in {threads[female].designation}, but the "
        "pitch differs and it binds. Stop at the first resistance."
    )
    return Told((Line("danger", text),))


def _short(row: ListedChain, feet: bool, why: str = "") -> Line:
    judged = row.listed.judged
    sure = "" if judged.certainty == "unknown" else f" ({CERTAINTY_WORDS[judged.certainty]})"
    more = f" [{why}]" if why else ""
    return Line("fact", f"{row.number}. {row.title}{more}: {life_line(judged, feet)}{sure}; {seat_line(judged)}", 1)


def _remedies(setup: Setup, knowledge: Knowledge) -> Told:
    return elsewhere(setup.lens_mount, knowledge, but=setup.body_mount.id)


def _examples(best: Judged, setup: Setup, knowledge: Knowledge, feet: bool) -> Told:
    """What the error does to usual focal lengths, where the lens's own is not told."""
    error = best.measured_trace.value("register_error_mm")
    if is_known(setup.lens.focal_length_mm) or not isinstance(error, Span) or not error.is_fixed:
        return Told()
    if not is_known(error.shortest) or best.verdict == "infinity" or abs(error.shortest.nominal) < SEAT_READS_MM:
        return Told()
    off = error.shortest.nominal
    lenses = usual_focals(knowledge.catalogue, None, setup.lens_mount)
    tell = far_limits if off > 0 else marks
    return tell(lenses, abs(off), knowledge.catalogue, feet, 1)


def _open(question: Question, setup: Setup, best: Judged, knowledge: Knowledge) -> Told:
    """What the lens's flange-to-image distance must exceed, where its mount has no register."""
    told = Told()
    if needs_register(setup, best):
        seat = best.measured_trace.value("seat_mm")
        least = seat.shortest.nominal if isinstance(seat, Span) and is_known(seat.shortest) else None
        told += needed(question.lens, setup.body_mount, knowledge, least)
        told += Told((Line("ask", MEASURE, wants="flange_to_image"),)) if is_assumed(best) else Told()
    if "no-shoulder" in setup.lens_mount.traits:
        told += no_shoulder(setup)
    return told
