"""A chain as it is listed: in full for the best, in short for the others, and the ring to make where none is sold."""

from __future__ import annotations

from collections.abc import Sequence

from engine.answers.parts.answer import Line, ListedChain, Quantity, RingToMake
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import small_mm
from engine.answers.seat.chain_numbers import circle_of, fully_out_line, price_text
from engine.answers.seat.finder import finder_line
from engine.answers.seat.iris import iris_text
from engine.answers.seat.outcome_lines import check_line, coverage_line, crop_line, mark_line, typical_cover_line
from engine.answers.seat.telling import (
    CERTAINTY_WORDS,
    clearance_line,
    finding_lines,
    focus_lines,
    life_line,
    margin_line,
    seat_line,
    variants_text,
)
from engine.base.interval import Interval, Unknown, is_known
from engine.base.span import Span
from engine.chains.lens_and_body import register_of
from engine.chains.setup import Setup
from engine.judging.ranking import Listed


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
    cover = coverage_line(judged) or typical_cover_line(judged, circle_of(judged, knowledge.catalogue))
    out = fully_out_line(judged, knowledge.catalogue, feet)
    facts = [
        seat_line(judged), margin_line(judged), mark_line(judged, feet), *focus_lines(judged, feet), out,
        iris_text(judged)[1], clearance_line(judged), cover, crop_line(judged), variants_text(judged),
        finder_line(judged, knowledge), _tubes(chain.listed), check_line(judged, feet),
    ]  # fmt: skip
    lines += [Line("fact", text, 1) for text in facts if text]
    lines += [Line(line.kind, line.text, 1) for line in finding_lines(judged, knowledge, feet)]
    return lines


def _tubes(row: Listed) -> str | None:
    if not row.tube_sets:
        return None
    return "tubes that also do: " + "; ".join(" + ".join(names) for names in row.tube_sets[:3])


def ring_lines(ring: RingToMake, chains: Sequence[ListedChain]) -> list[Line]:
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


def near_lines(chains: Sequence[ListedChain]) -> list[Line]:
    """What decides how near it comes, where that is not known."""
    if not chains:
        return []
    trace = chains[0].listed.judged.measured_trace
    if trace.value("focal_length_mm") is None:
        return [
            Line("ask", "How near it comes hangs on the focal length: what is engraved on the lens?", wants="focal")
        ]
    if isinstance(trace.value("travel_mm"), Unknown):
        ask = "How near it comes hangs on the lens's own focusing: what is the nearest mark of its scale?"
        return [Line("ask", ask, wants="close_focus")]
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
        alike = any(joint.rear == setup.body_mount.id for joint in knowledge.joints.onward(setup.lens_mount.id))
        if alike and ring.thickness_mm.greatest < 0:
            rows.append(Quantity("register_difference_mm", -ring.thickness_mm, "the longer less the shorter"))
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
