"""An answer as the JSON object that other programs read: numbers in the unit of their key, unknown said as such."""

from __future__ import annotations

import json
from math import inf, isinf
from typing import Any, Final

from engine.answers.parts.answer import Answer, ListedChain, RingToMake
from engine.answers.parts.knowledge import Knowledge
from engine.answers.seat.iris import iris_text
from engine.answers.seat.telling import finding_text, variants_text
from engine.base.interval import Interval, Unknown, is_known
from engine.base.span import Span
from engine.chains.ring_map import Joint
from engine.chains.walk import Seat
from engine.physics.trace import Trace, Value
from engine.render.terminal import plain_text

FORMAT: Final = 1
DIGITS: Final = 9  # decimals kept: far below a micrometre, so that sums read as they were written


def as_length(value: Value) -> Any:
    """LEN of the contract: least, greatest and state; null where it does not apply."""
    if value is None:
        return None
    if isinstance(value, Span):
        value = value.hull()
    if isinstance(value, Interval):
        infinite = isinf(value.least) or isinf(value.greatest)
        return {
            "least": _number(value.least),
            "greatest": _number(value.greatest),
            "state": "infinite" if infinite else "finite",
        }
    return {"least": None, "greatest": None, "state": "unknown"}


def _number(value: float) -> float | None:
    if value in (inf, -inf):
        return None
    rounded = round(value, DIGITS)
    return 0.0 if rounded == 0 else rounded


def _plain_number(value: Value) -> float | None:
    return _number(value.nominal) if isinstance(value, Interval) else None


def _longest(trace: Trace) -> Any:
    """The longest extension; where the lens's own travel is not known, its least is what the chain alone gives."""
    extension = trace.value("extension_mm")
    if not isinstance(extension, Span):
        return as_length(extension)
    if isinstance(extension.longest, Unknown):
        error = trace.value("register_error_mm")
        if isinstance(error, Span) and is_known(error.longest):
            return {"least": _number(error.longest.least), "greatest": None, "state": "unknown"}
    return as_length(extension.longest)


def piece(seat: Seat) -> dict[str, Any]:
    """One piece of a chain as the record has it: lengths in mm, price in dollars, null where unknown."""
    link = seat.link
    if isinstance(link, Joint):
        kind = "thread-alike" if link.kind == "thread" else "shared-bayonet"
        return {
            "id": f"{link.front}>{link.rear}", "kind": kind, "front": link.front, "rear": link.rear,
            "thickness_mm": as_length(Interval.exact(0.0)), "seat_error_mm": as_length(seat.error_mm),
            "owned": True, "price": [0, 0],
        }  # fmt: skip
    return {
        "id": link.id, "kind": link.kind, "front": link.front, "rear": link.rear,
        "thickness_mm": as_length(seat.thickness_mm), "seat_error_mm": as_length(seat.error_mm),
        "owned": link.owned > 0, "price": list(link.price_usd) if link.price_usd else None,
    }  # fmt: skip


def chain_record(chain: ListedChain, knowledge: Knowledge, feet: bool = False) -> dict[str, Any]:
    """One chain as the record has it, distances in mm; `feet`: its sentences tell them in feet."""
    judged = chain.listed.judged
    trace = judged.trace
    extension = trace.value("extension_mm")
    worked_by, iris = iris_text(judged)
    coverage = {
        "image_circle_mm": as_length(trace.value("image_circle_at_far_mm")),
        "lit": as_length(trace.value("lit_share")),
        "crop_factor": _plain_number(trace.value("crop_factor")),
        "equivalent_focal_mm": _plain_number(trace.value("equivalent_focal_mm")),
    }
    return {
        "rank": chain.number,
        "verdict": judged.verdict, "best": judged.best, "worst": judged.worst, "certainty": judged.certainty,
        "glass": any(adapter.has_glass for adapter in judged.chain.adapters),
        "pieces": [piece(seat) for seat in judged.seats],
        "register_error_mm": as_length(trace.value("register_error_mm")),
        "extension_mm": {
            "shortest": as_length(extension.shortest if isinstance(extension, Span) else extension),
            "longest": _longest(trace),
        },
        "focus": {
            "far_from_sensor_mm": as_length(trace.value("far_from_sensor_mm")),
            "near_from_sensor_mm": as_length(trace.value("near_from_sensor_mm")),
            "far_from_front_glass_mm": as_length(trace.value("far_from_front_glass_mm")),
            "near_from_front_glass_mm": as_length(trace.value("near_from_front_glass_mm")),
            "far_magnification": as_length(trace.value("far_magnification")),
            "near_magnification": as_length(trace.value("near_magnification")),
            "infinity_from_f_number": _plain_number(trace.value("infinity_from_f_number")),
        },
        "iris": {"worked_by": worked_by, "text": iris},
        "clearance": {
            "overhang_mm": as_length(trace.value("overhang_mm")),
            "allowed_mm": as_length(trace.value("clear_depth_mm")),
        },
        "coverage": coverage,
        "variants": variants_text(judged),
        "findings": [
            {
                "rule": finding.rule.id, "severity": finding.severity, "limits": finding.limits,
                "decided": finding.decided, "text": finding_text(finding, judged, knowledge, feet),
            }
            for finding in judged.findings
        ],
    }  # fmt: skip


def ring_record(ring: RingToMake) -> dict[str, Any]:
    thickness = as_length(ring.thickness_mm) if ring.thickness_mm else as_length(Unknown())
    return {"thickness_mm": thickness, "possible": ring.possible, "why": ring.why}


def record_of(answer: Answer, knowledge: Knowledge | None) -> dict[str, Any]:
    """The whole answer; chains only where the question was about one."""
    out: dict[str, Any] = {
        "format": FORMAT, "question": answer.text, "reading": answer.reading, "intent": answer.intent,
        "entities": dict(answer.entities), "text": plain_text(answer),
    }  # fmt: skip
    if answer.unread is not None:
        unread = answer.unread
        out["problem"] = {
            "found": unread.found, "expected": unread.expected, "nearest": unread.nearest, "column": unread.column,
        }  # fmt: skip
        out["guesses"] = list(unread.guesses)
        return out
    if answer.ring is not None:
        out["ring_to_make"] = ring_record(answer.ring)
    if answer.chains is not None and knowledge is not None:
        feet = answer.question.feet if answer.question else False
        out["chains"] = [chain_record(chain, knowledge, feet) for chain in answer.chains]
    if answer.drawings is not None:
        out["drawings"] = [{"kind": row.kind, "path": row.path, "chain": row.number} for row in answer.drawings]
    if answer.quantities or answer.chains is None:
        out["quantities"] = quantities_record(answer)
    if answer.document is not None:
        count = len(answer.cards.cards) if answer.cards else None
        out["document"] = {"path": answer.saved, "cards": count}
    return out


def quantities_record(answer: Answer) -> dict[str, Any]:
    """Name -> LEN, or a list of LEN with its case where there are several."""
    rows: dict[str, list[dict[str, Any]]] = {}
    for quantity in answer.quantities:
        length = as_length(quantity.value)
        if quantity.case:
            length["case"] = quantity.case
        told = rows.setdefault(quantity.name, [])
        if length not in told:
            told.append(length)
    return {name: row[0] if len(row) == 1 and "case" not in row[0] else row for name, row in rows.items()}


def as_json(answer: Answer, knowledge: Knowledge | None) -> str:
    return json.dumps(record_of(answer, knowledge), ensure_ascii=False, allow_nan=False)
