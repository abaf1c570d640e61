"""Judged chains to draw: three very different ones, and any other made of the facts."""

from __future__ import annotations

from functools import cache
from math import inf

from engine.answers.parts.knowledge import Knowledge
from engine.base.compact import replace
from engine.base.interval import UNKNOWN, Interval, Measure
from engine.chains.setup import Setup
from engine.chains.walk import Chain, Link
from engine.facts.basis import Basis
from engine.facts.catalogue import load_catalogue
from engine.facts.records import Body, Lens
from engine.judging.judge import Judged

MEASURED = Basis("own-measured", ("own",))
exact = Interval.exact


@cache
def knowledge() -> Knowledge:
    catalogue, _ = load_catalogue()
    return Knowledge.of(catalogue)


@cache
def names() -> dict[str, str]:
    return {name: mount.designation for name, mount in knowledge().catalogue.mounts.items()}


def link(name: str) -> Link:
    """An adapter by its id, or 'front>rear' for two mounts that meet with nothing between."""
    if ">" not in name:
        return knowledge().catalogue.adapters[name]
    front, rear = name.split(">")
    return next(joint for joint in knowledge().joints.onward(front) if joint.rear == rear)


def judged(lens: Lens, body: Body, links: tuple[str, ...], stop: float | None = None) -> Judged:
    facts = knowledge().catalogue
    form = facts.formats.get(body.format)
    setup = Setup(lens, facts.mounts[lens.mount], body, facts.mounts[body.mount], form, form, f_number=stop)
    return knowledge().judge_chain(Chain(tuple(link(name) for name in links), {}), setup)


def lens_of(mount: str, focal: float | None = None, stop: float | None = None, **more: object) -> Lens:
    known: dict[str, object] = {
        "focal_length_mm": _or_unknown(focal),
        "f_number": _or_unknown(stop),
        "focusing": "unit",
    }
    known |= {name: exact(value) if isinstance(value, float) else value for name, value in more.items()}
    return replace(Lens("bird", "the wren", mount, MEASURED), **known)


def _or_unknown(value: float | None) -> Measure:
    return UNKNOWN if value is None else exact(value)


def cine() -> Judged:
    """An 8 mm cine lens in a recessed ring, on an industrial camera with a tiny sensor."""
    lens = lens_of("d", 8.0, 1.9, name="the wren, an 8 mm f/1.9 cine lens", made_for="8mm", collar_mm=18.0,
                   rear_reach_mm=2.6, rear_diameter_mm=11.0, travel_mm=0.35, front_vertex_mm=17.0)  # fmt: skip
    body = Body("coracle", "the coracle", "c", "v13", MEASURED, clear_depth_mm=exact(9.0), first_obstruction="filter")
    return judged(lens, body, ("d-c-recessed",))


def long_slr() -> Judged:
    """A 300 mm lens of a medium-format SLR on a smaller one of another mount."""
    lens = lens_of("p6-mount", 300.0, 4.0, name="the heron, a 300 mm f/4", made_for="6x6", collar_mm=82.0,
                   rear_reach_mm=7.5, rear_diameter_mm=58.0, close_focus_mm=4000.0, front_vertex_mm=198.0)  # fmt: skip
    body = Body("barge", "the barge", "p645", "645", MEASURED)
    return judged(lens, body, ("p6-p645",))


def enlarger() -> Judged:
    """A 50 mm enlarger lens on three tubes and a helicoid."""
    lens = lens_of("enl39", 50.0, 2.8, name="the dunlin, a 50 mm f/2.8 enlarger lens", made_for="35mm-full-frame",
                   register_mm=Interval(43.1, 43.5, 43.3))  # fmt: skip
    body = Body("skiff", "the skiff", "e-mount", "aps-c-1.5", MEASURED)
    links = (
        "enl39>ltm",
        "ltm-m42-macro",
        "m42-tube-7",
        "m42-tube-14",
        "m42-tube-28",
        "m42-helicoid-12-17",
        "m42-e-thin",
    )
    return judged(replace(lens, focusing="none"), body, links, 8.0)


def barely_known() -> Judged:
    """A lens of which only the mount is known, on a body of which no more is."""
    lens = Lens("", "an enlarger lens", "enl39", MEASURED)
    body = Body("", "an M42 body", "m42", "", MEASURED)
    return judged(lens, body, ("enl39>ltm", "ltm-m42-macro"))


def reduced() -> Judged:
    """A lens behind which stands glass that shortens its focal length."""
    lens = lens_of("m42", 55.0, 1.8, name="the teal", made_for="35mm-full-frame", travel_mm=7.0)
    return judged(lens, Body("punt", "the punt", "e-mount", "aps-c-1.5", MEASURED), ("m42-e-reducer-0.72",))


def nearly_right() -> Judged:
    """A lens seated three tenths of a millimetre too far out, the body's glass being known."""
    lens = lens_of("c", 25.0, 1.4, name="the avocet", made_for="16mm", travel_mm=1.6, rear_reach_mm=3.9,
                   register_mm=17.226)  # fmt: skip
    return judged(lens, Body("raft", "the raft", "cs", "v12", MEASURED), ("c-cs-5",))


def too_close() -> Judged:
    """A lens that a thin ring leaves too close, its focusing making up for it."""
    lens = lens_of("m42", 50.0, 1.8, name="the plover", made_for="35mm-full-frame", close_focus_mm=500.0,
                   rear_reach_mm=6.0, register_mm=47.46)  # fmt: skip
    body = Body("yawl", "the yawl", "e-mount", "35mm-full-frame", MEASURED, clear_depth_mm=exact(14.0))
    return judged(lens, body, ("m42-e",))


def dark() -> Judged:
    """A lens whose circle leaves the corners of the frame dark, its cup too narrow for the barrel."""
    lens = lens_of("d", 13.0, 1.9, name="the siskin", made_for="8mm", collar_mm=41.0, image_circle_mm=11.5)
    body = Body("dinghy", "the dinghy", "mft-mount", "four-thirds", MEASURED, pixels=(5200, 3900))
    return judged(lens, body, ("d-mft",))


def carried() -> Judged:
    """A lens a hair too far out, which its stop forgives."""
    lens = lens_of(
        "c",
        25.0,
        8.0,
        name="the bittern",
        made_for="16mm",
        travel_mm=2.0,
        register_mm=Interval(17.48, 17.50, 17.49),
    )
    return judged(lens, Body("raft", "the raft", "c", "16mm", MEASURED), ())


def bellows() -> Judged:
    """A lens on bellows that take it past life size, its seat being known only in part."""
    lens = lens_of("m42", 35.0, 2.8, name="the smew", made_for="35mm-full-frame", travel_mm=0.0, focusing="none")
    return judged(lens, Body("gig", "the gig", "e-mount", "aps-c-1.5", MEASURED), ("m42-bellows", "m42-e"))


ALL = {"cine": cine, "long-slr": long_slr, "enlarger": enlarger, "barely-known": barely_known, "reduced": reduced,
       "nearly-right": nearly_right, "too-close": too_close, "dark": dark, "carried": carried,
       "bellows": bellows}  # fmt: skip

# engraved marks in mm from the sensor
MARKS: dict[str, tuple[float, ...]] = {
    "cine": (inf, 1500.0, 900.0, 600.0, 450.0, 300.0),
    "long-slr": (inf, 30000.0, 15000.0, 10000.0, 7000.0, 5000.0, 4000.0),
    "too-close": (inf, 10000.0, 5000.0, 3000.0, 2000.0, 1000.0, 700.0, 500.0),
    "nearly-right": (inf, 3000.0, 1500.0, 1000.0, 700.0, 500.0, 450.0),
}
