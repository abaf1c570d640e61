"""How a lens gets on a body, whether it then reaches infinity, and from where to where it focuses."""

from __future__ import annotations

from engine.answers.answer import ANSWERED, NO, Answer, Line, ListedChain, Quantity, RingToMake
from engine.answers.knowledge import Choice, Knowledge, choose
from engine.answers.making import ring_to_make
from engine.answers.named_pieces import with_named_pieces
from engine.answers.resolve import BodySide, LensSide, Missing, body_side, lens_side, setup_of
from engine.answers.telling import (
    CERTAINTY_WORDS,
    chain_title,
    check_line,
    clearance_line,
    coverage_line,
    crop_line,
    finding_lines,
    focus_lines,
    iris_text,
    life_line,
    margin_line,
    price_text,
    seat_line,
    variants_text,
)
from engine.answers.wording import listed, small_mm
from engine.base.interval import Interval, Unknown, is_known
from engine.base.span import Span
from engine.chains.lens_and_body import register_of
from engine.chains.search import MOST_CHAINS
from engine.chains.setup import Setup
from engine.judging.ranking import Listed
from grammar.questions import Question

SHOWN = 3


def how_to(question: Question, knowledge: Knowledge, intent: str | None = None) -> Answer:
    """Answer a question about a chain for the first lens and body of the question; further pairs follow it."""
    lens = lens_side(question.lens, knowledge.catalogue)
    body = body_side(question.body, knowledge.catalogue)
    missing = [side for side in (lens, body) if isinstance(side, Missing)]
    if missing or isinstance(lens, Missing) or isinstance(body, Missing):
        return ask_for(question, tuple(missing))
    setup = setup_of(lens, body, knowledge.catalogue, question.f_number)
    most = question.limits.best or SHOWN
    knowledge, limits = with_named_pieces(question, lens.mount.id, body.mount.id, knowledge)
    choice = choose(knowledge, setup, limits, most)
    ring = ring_to_make(setup, knowledge.catalogue)
    chains = tuple(
        ListedChain(n, row, chain_title(row.judged, knowledge)) for n, row in enumerate(choice.listed, start=1)
    )
    lines = [*_opening(lens, body, chains, ring, question), *_notes(lens, body, choice)]
    for chain in chains:
        lines += chain_lines(chain, knowledge, question.feet, full=chain.number == 1)
    lines += ring_lines(ring, setup, chains, knowledge)
    if (intent or question.intent) == "macro-distance":
        lines += near_lines(chains)
    status = ANSWERED if chains and chains[0].listed.judged.verdict != "unusable" else NO
    return Answer(
        question.text, intent or question.intent, status, tuple(lines), question=question, chains=chains, ring=ring,
        quantities=seat_quantities(setup, ring, knowledge),
    )  # fmt: skip


def ask_for(question: Question, missing: tuple[Missing, ...]) -> Answer:
    """Ask for the one fact that is missing, first the lens, then the body."""
    return Answer(
        question.text, question.intent, NO, tuple(Line("ask", row.ask) for row in missing[:1]), question=question
    )


def _opening(
    lens: LensSide, body: BodySide, chains: tuple[ListedChain, ...], ring: RingToMake, question: Question
) -> list[Line]:
    subject = f"{lens.words} on {body.words}"
    if not chains:
        why = {
            "plain": "A ring for it could be made",
            "recessed": "A recessed ring for it could be made",
            "no": "No ring will do it",
        }
        extra = " within the limits you set" if question.limits != type(question.limits)() else ""
        return [Line("head", f"No way found from {subject}{extra}. {why[ring.possible]}: {ring.why}.")]
    first = chains[0].listed.judged
    certainty = CERTAINTY_WORDS[first.certainty]
    text = life_line(first, question.feet)
    told = text if first.certainty == "unknown" else f"{text} ({certainty})"
    return [Line("head", f"{subject[:1].upper()}{subject[1:]}: {told}.")]


def _notes(lens: LensSide, body: BodySide, choice: Choice) -> list[Line]:
    lines = []
    for side in (lens, body):
        if side.others:
            lines.append(
                Line("note", f"Taken for {side.mount.designation}; the name may also mean {listed(side.others, 'or')}.")
            )
    if choice.capped:
        lines.append(Line("note", f"The search stopped after {MOST_CHAINS} chains; there may be better ones."))
    return lines


def chain_lines(chain: ListedChain, knowledge: Knowledge, feet: bool, full: bool) -> list[Line]:
    """A chain as it is listed: in full for the best, in short for the others."""
    judged = chain.listed.judged
    tail = [text for text in (price_text(judged.chain),) if text]
    lines = [Line("chain", f"{chain.number}. {chain.title}" + (f"  [{'; '.join(tail)}]" if tail else ""))]
    if not full:
        sure = "" if judged.certainty == "unknown" else f" ({CERTAINTY_WORDS[judged.certainty]})"
        lines.append(Line("fact", f"{life_line(judged, feet)}{sure}; {seat_line(judged)}", 1))
        dangers = [line for line in finding_lines(judged, knowledge, feet) if line.kind == "danger"]
        if dangers:
            lines.append(Line("danger", "carries a danger; ask why it does before you mount it", 1))
        return lines
    facts = [
        seat_line(judged), margin_line(judged), *focus_lines(judged, feet), iris_text(judged)[1],
        clearance_line(judged), coverage_line(judged), crop_line(judged), variants_text(judged), _tubes(chain.listed),
        check_line(judged, feet),
    ]  # fmt: skip
    lines += [Line("fact", text, 1) for text in facts if text]
    lines += [Line(line.kind, line.text, 1) for line in finding_lines(judged, knowledge, feet)]
    return lines


def _tubes(row: Listed) -> str | None:
    if not row.tube_sets:
        return None
    return "tubes that also do: " + "; ".join(" + ".join(names) for names in row.tube_sets[:3])


def ring_lines(ring: RingToMake, setup: Setup, chains: tuple[ListedChain, ...], knowledge: Knowledge) -> list[Line]:
    """What a ring would have to be, where nothing that is sold reaches infinity."""
    if chains and chains[0].listed.judged.verdict == "infinity":
        return []
    if ring.thickness_mm is None:
        return [Line("text", f"A ring to make: {ring.why}.")]
    size = small_mm(ring.thickness_mm.nominal)
    if ring.possible == "no":
        return [Line("text", f"A ring for infinity would have to be {size} from seat to seat: {ring.why}.")]
    kind = "a plain ring" if ring.possible == "plain" else "a recessed ring (a cup)"
    return [Line("text", f"To make: {kind}, {size} from seat to seat: {ring.why}.")]


def near_lines(chains: tuple[ListedChain, ...]) -> list[Line]:
    """What decides how near it comes, where that is not known."""
    if not chains:
        return []
    trace = chains[0].listed.judged.measured_trace
    if trace.value("focal_length_mm") is None:
        return [Line("ask", "How near it comes hangs on the focal length: what is engraved on the lens?")]
    if isinstance(trace.value("travel_mm"), Unknown):
        return [
            Line("ask", "How near it comes hangs on the lens's own focusing: what is the nearest mark of its scale?")
        ]
    return []


def seat_quantities(setup: Setup, ring: RingToMake, knowledge: Knowledge) -> tuple[Quantity, ...]:
    """The numbers of the pair that do not depend on a chain."""
    facts = knowledge.catalogue
    rows = []
    lens = register_of(setup.lens_mount.id, setup, facts)
    body = register_of(setup.body_mount.id, setup, facts, rear=True)
    if is_known(lens):
        rows.append(Quantity("register_mm", lens, setup.lens_mount.id))
    if is_known(body):
        rows.append(Quantity("register_mm", body, setup.body_mount.id))
    if ring.thickness_mm is not None:
        rows.append(Quantity("ring_thickness_mm", ring.thickness_mm))
        rows.append(Quantity("register_difference_mm", ring.thickness_mm))
    return tuple(rows)


def close_up_quantities(row: Listed) -> tuple[Quantity, ...]:
    """Far and near end, magnification and extension of a chain, as far as they are known."""
    trace = row.judged.trace
    out = []
    for name in (
        "far_from_sensor_mm", "near_from_sensor_mm", "far_from_front_glass_mm", "near_from_front_glass_mm",
        "far_magnification", "near_magnification",
    ):  # fmt: skip
        value = trace.value(name)
        if isinstance(value, Interval):
            out.append(Quantity(name, value))
    extension = trace.value("extension_mm")
    if isinstance(extension, Span) and is_known(hull := extension.hull()):
        out.append(Quantity("extension_mm", hull))
    return tuple(out)
