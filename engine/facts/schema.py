"""The keys of each kind of record: how it is read, into which field, within which limits, and which must be there."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from engine.base.compact import compact
from engine.facts import kinds
from engine.facts.fields import (
    Read,
    choice,
    count,
    flag,
    listed,
    nested,
    or_word,
    parsed,
    quantity,
    reference,
    single,
    text,
    texts,
)
from engine.facts.records import Cup
from grammar import values

DIFFERENCE: Final = "register difference"
SEATS: Final = ("derived", "nominal", "measured")
GREATEST_REGISTER_MM: Final = 200.0  # beyond any camera's; a lens without a mount's register may bring a longer one


@compact
class Key:
    read: Read
    required: bool = False
    field: str = ""  # of the record; '' where the key's own name with its unit is the field


def mm(least: float, greatest: float, above: bool = False, known: bool = False) -> Read:
    return quantity(values.length_mm, least, greatest, "mm", above, known)


def plain_number(least: float, greatest: float) -> Read:
    return quantity(values.number, least, greatest, "")


NOTE: Final = {"note": Key(text)}
# read of every record, whatever its kind; `overrides` is the loader's
BASIS: Final = {
    "confidence": Key(choice(kinds.CONFIDENCES)),
    "sources": Key(listed(reference("sources"))),
}
CALLED: Final = {"aliases": Key(texts)} | NOTE | BASIS
CUP: Final = {"bore": ("bore_mm", mm(0, 300, above=True)), "depth": ("depth_mm", mm(0, 100))}
STOP: Final = quantity(values.f_number, 0.5, 128, "")

KEYS: Final[Mapping[str, Mapping[str, Key]]] = {
    "sources": {"title": Key(text, required=True)},
    "threads": {
        "designation": Key(text, required=True),
        "major": Key(mm(0, 300, above=True, known=True), required=True, field="major_mm"),
        "pitch": Key(mm(0, 10, above=True), field="pitch_mm"),
        "tpi": Key(plain_number(2, 200)),
        "male_major": Key(mm(0, 300, above=True), field="male_major_mm"),
        "female_minor": Key(mm(0, 300, above=True), field="female_minor_mm"),
        "form_angle": Key(quantity(values.angle_deg, 0, 120, "", above=True), field="form_angle_deg"),
        "engagement": Key(mm(0, 50, above=True), field="engagement_mm"),
        "used_for": Key(text),
        "standard": Key(text),
    } | CALLED,
    "formats": {
        "name": Key(text, required=True),
        "width": Key(single(mm(0, 600, above=True, known=True)), required=True, field="width_mm"),
        "height": Key(single(mm(0, 600, above=True, known=True)), required=True, field="height_mm"),
        "traits": Key(listed(choice(kinds.FORMAT_TRAITS))),
    } | CALLED,
    "mounts": {
        "designation": Key(text, required=True),
        "kind": Key(choice(kinds.MOUNT_KINDS), required=True),
        "coupling": Key(choice(kinds.COUPLINGS)),
        "register": Key(or_word("adjustable", mm(0, GREATEST_REGISTER_MM, above=True)), field="register_mm"),
        "thread": Key(reference("threads")),
        "throat": Key(mm(0, 300, above=True), field="throat_mm"),
        "collar": Key(mm(0, 300, above=True), field="collar_mm"),
        "clear_depth": Key(mm(0, 300), field="clear_depth_mm"),
        "cover_glass": Key(mm(0, 20), field="cover_glass_mm"),
        "mechanical": Key(mm(1, 300), field="mechanical_mm"),
        "longest_thread": Key(mm(0, 100, above=True), field="longest_thread_mm"),
        "mirror": Key(flag),
        "iris": Key(choice(kinds.IRIS_DRIVES)),
        "f_number": Key(STOP),
        "format": Key(reference("formats")),
        "formats": Key(listed(reference("formats"))),
        "smallest_format": Key(reference("formats")),
        "shares_bayonet": Key(listed(reference("mounts"))),
        "traits": Key(listed(choice(kinds.TRAITS))),
        "look_alikes": Key(listed(reference("mounts"))),
        "register_note": Key(text),
    } | CALLED,
    "bodies": {
        "name": Key(text, required=True),
        "mount": Key(reference("mounts"), required=True),
        "format": Key(reference("formats"), required=True),
        "crops": Key(listed(reference("formats"))),
        "pixels": Key(parsed(values.size_px)),
        "clear_depth": Key(mm(0, 300), field="clear_depth_mm"),
        "register": Key(mm(0, GREATEST_REGISTER_MM, above=True), field="register_mm"),
        "cover_glass": Key(mm(0, 20), field="cover_glass_mm"),
        "first_obstruction": Key(text),
        "stabilised": Key(flag),
        "generic": Key(flag),
    } | CALLED,
    "lenses": {
        "name": Key(text, required=True),
        "mount": Key(reference("mounts"), required=True),
        "focal_length": Key(mm(1, 3000), field="focal_length_mm"),
        "f_number": Key(STOP),
        "smallest_f_number": Key(STOP),
        "iris": Key(choice(kinds.LENS_IRIS)),
        "focusing": Key(choice(kinds.FOCUSING)),
        "made_for": Key(reference("formats")),
        "image_circle": Key(mm(0, 1000, above=True), field="image_circle_mm"),
        "travel": Key(mm(0, 500), field="travel_mm"),
        "near_turn": Key(choice(kinds.NEAR_TURNS)),
        "throw": Key(quantity(values.angle_deg, 0, 1500, "", above=True), field="throw_deg"),
        "close_focus": Key(mm(0, 100_000, above=True), field="close_focus_mm"),
        "register": Key(mm(0, 1000, above=True), field="register_mm"),
        "front_vertex": Key(mm(-200, 1000), field="front_vertex_mm"),
        "hiatus": Key(mm(-500, 500), field="hiatus_mm"),
        "pupil_magnification": Key(plain_number(0.02, 50)),
        "front_focal_offset": Key(mm(-3000, 3000), field="front_focal_offset_mm"),
        "collar": Key(mm(0, 300, above=True), field="collar_mm"),
        "rear_reach": Key(mm(-200, 300), field="rear_reach_mm"),
        "rear_diameter": Key(mm(0, 300, above=True), field="rear_diameter_mm"),
        "thread_length": Key(mm(0, 100, above=True), field="thread_length_mm"),
        "front_thread": Key(reference("threads")),
        "weight": Key(quantity(values.weight_g, 0, 50_000, "g", above=True), field="weight_g"),
        "thoriated": Key(flag),
        "price_paid": Key(single(plain_number(0, 1_000_000))),
    } | CALLED,
    "adapters": {
        "name": Key(text, required=True),
        "front": Key(reference("mounts"), required=True),
        "rear": Key(reference("mounts"), required=True),
        "kind": Key(choice(kinds.ADAPTER_KINDS), required=True),
        "thickness": Key(
            or_word(DIFFERENCE, quantity(values.settable_mm, -30, 400, "mm")), required=True, field="thickness_mm"
        ),
        "seat_basis": Key(choice(SEATS)),
        "cup": Key(nested(Cup, CUP)),
        "factor": Key(single(plain_number(0.2, 5))),
        "converter_focal": Key(mm(-5000, 5000), field="converter_focal_mm"),
        "clear_diameter": Key(mm(0, 300, above=True), field="clear_diameter_mm"),
        "iris": Key(choice(kinds.ADAPTER_IRIS)),
        "electronics": Key(flag),
        "price": Key(quantity(values.price_usd, 0, 1_000_000, ""), field="price_usd"),
        "common": Key(choice(kinds.COMMONNESS)),
        "owned": Key(count),
        "frame_lines": Key(texts),
    } | CALLED,
    "filters": {
        "name": Key(text, required=True),
        "mark": Key(text, required=True),
        "thread": Key(reference("threads")),
    } | NOTE | BASIS,
    "observations": {
        "lens": Key(reference("lenses"), required=True),
        "body": Key(reference("bodies"), required=True),
        "with": Key(listed(reference("adapters")), field="pieces"),
        "infinity": Key(flag),
        "far": Key(mm(0, 10_000_000, above=True), field="far_mm"),
        "near": Key(mm(0, 10_000_000, above=True), field="near_mm"),
        "f_number": Key(STOP),
        "date": Key(text),
    } | NOTE | BASIS,
    "circles": {
        "made_for": Key(text, required=True),
        "lens_class": Key(text),
        "focal_length": Key(mm(1, 3000, known=True), required=True, field="focal_length_mm"),
        "image_circle": Key(mm(0, 1000, above=True, known=True), required=True, field="image_circle_mm"),
    } | NOTE | BASIS,
    "motifs": {
        "name": Key(text, required=True),
        "long": Key(single(mm(0, 100_000, above=True, known=True)), required=True, field="long_mm"),
        "short": Key(single(mm(0, 100_000, above=True, known=True)), field="short_mm"),
    } | CALLED,
    "terms": {
        "names": Key(texts, required=True),
        "means": Key(text, required=True),
        "known_as": Key(texts),
        "about": Key(texts),
        "per_format": Key(choice(kinds.PER_FORMAT)),
    } | BASIS,
    "advice": {
        "topic": Key(text, required=True),
        "names": Key(texts),
        "says": Key(text, required=True),
        "defer_to": Key(text),
        "severity": Key(choice(kinds.SEVERITIES), required=True),
        "example": Key(choice(kinds.EXAMPLES)),
        "mounts": Key(listed(reference("mounts"))),
        "bodies": Key(listed(reference("mounts"))),
        "about": Key(texts),
        "traits": Key(listed(choice((*kinds.TRAITS, *kinds.LENS_TRAITS)))),
        "plainly": Key(text),
        "measures": Key(text),
        "happened": Key(flag),
        "cue": Key(text),
        "asked_as": Key(choice(kinds.ASKED_AS)),
    } | BASIS,
    "rules": {
        "when": Key(text, required=True),
        "because": Key(text, required=True),
        "severity": Key(choice(kinds.SEVERITIES), required=True),
        "limits": Key(choice(kinds.VERDICTS)),
        "measure": Key(text),
        "undecided": Key(text),
        "provided": Key(text),
        "advice": Key(reference("advice")),
        "remedy": Key(text),
        "brief": Key(text),
        "hangs_on": Key(text),
        "stands_when_longer": Key(flag),
    },
    "settings": {"when": Key(text, required=True), "says": Key(text, required=True)},
    "assumptions": {"value": Key(parsed(values.measured), required=True), "says": Key(text, required=True)} | BASIS,
    "words": {"means": Key(text), "says": Key(texts, required=True)},
    "shared": {
        "says": Key(texts, required=True),
        "mounts": Key(listed(reference("mounts")), required=True),
        "likely": Key(reference("mounts")),
        "across": Key(mm(0, 300, above=True), field="across_mm"),
    } | NOTE,
}  # fmt: skip
