"""What readings come to once all of a question is read: means, leftover lengths, a field, a thread, pieces used."""

from __future__ import annotations

from typing import Final

from grammar.readings.kept_readings import FEET, Readings, far, first, mm
from grammar.things.cast import Cast

READINGS: Final = "readings"  # several of one thing, mm, each as often as it was read
_LONGEST_LIP: Final = 12.0  # mm, of what reaches into a body
_CLOSE: Final = frozenset(["extension-tube", "bellows", "close-up-lens", "reverse-ring"])  # what close-ups are made by


def settle(out: Readings, cast: Cast, told: frozenset[str]) -> None:
    """Puts each reading that stands for something else in its place. `told`: what the cues of the question tell."""
    _averaged(out, cast)
    _leftovers(out, cast, told)
    _without_lip(out, cast)
    _field(out, cast, told)
    _barrel(out, cast)
    _thread(out)
    out.limits.update(_used(cast))


def _averaged(out: Readings, cast: Cast) -> None:
    """Readings of one thing stand for it by their mean: of a ring its thickness, else the width of a thread."""
    told = out.values.get(READINGS)
    if told is None:
        return
    values = [first(one) for one in told.split(", ")]
    mean = round(sum(values) / len(values), 4)
    if cast.pieces or cast.using:
        out.values.setdefault("thickness", mm(mean))
    elif out.diameter is None:
        out.diameter = mean


def _leftovers(out: Readings, cast: Cast, told: frozenset[str]) -> None:
    """Lengths and factors that belong to no thing: a distance in front of the camera, or a magnification."""
    for part in cast.lengths:
        times, length = part.noun.first("TIMES"), part.noun.first("LENGTH")
        if times is not None:
            out.keep("magnification", f"{times.numbers[0]:g}")
        elif length is not None and length.unit in ("m", "cm", "ft", "in") and length.numbers[0] >= 20:
            far(out, length, told)
        elif length is not None:
            out.feet = out.feet or length.unit in FEET
            out.keep("length", mm(length.numbers[0]))
    for part in cast.lenses:
        factor = part.noun.first("TIMES")
        if factor is not None and part.noun.head is None:
            out.keep("magnification", f"{factor.numbers[0]:g}")  # 'dof 0.33x f8'
        distances = [one for one in part.noun.all("LENGTH") if one.unit in ("m", "ft") and one.numbers[0] != part.focal]
        if distances and part.focal and out.distance_mm is None:
            far(out, distances[0], told)  # '50mm f/2.8 10 feet'
    for part in cast.pieces:
        if part.piece == "filter" and part.thickness is not None:
            out.keep("filter_thread", mm(part.thickness[0]))
            part.thickness = None
    for part in (*cast.frames, *cast.bodies):
        if part.crop:
            out.keep("crop", f"{part.crop:g}")


def _without_lip(out: Readings, cast: Cast) -> None:
    """'27.1 over all, incl. 0.7 mm spigot': what reaches into the body is no part of the length from seat to seat."""
    lip = out.values.pop("lip", None)
    if lip is None:
        return
    size = first(lip)
    if size > _LONGEST_LIP:
        return  # 'a lipped 39-42': the width of a screw
    for part in cast.pieces:
        if part.thickness is not None:
            part.thickness = (round(part.thickness[0] - size, 4), round(part.thickness[1] - size, 4))
    if "thickness" in out.values:
        out.values["thickness"] = mm(round(first(out.values["thickness"]) - size, 4))
    out.keep("spigot", mm(size))


def _field(out: Readings, cast: Cast, told: frozenset[str]) -> None:
    """'fill the frame with a 3 cm flower', 'a coin 24 mm across to fill the frame': how wide the subject is."""
    seen = "how-big" in told and not cast.lenses and not cast.pieces  # 'i see 60mm across, what magnification'
    # 'a thing 40 mm wide, 50 mm lens, how much tube'
    near = out.wide and any(part.focal for part in cast.lenses) and any(part.piece in _CLOSE for part in cast.pieces)
    seen = seen or (told >= {"macro", "cover"} and not cast.lenses)  # 'bug 8 mm, fill aps-c'
    if not ("frame-filling" in told or seen or near) or "field" in out.values or out.pitch is not None:
        return
    if out.diameter is not None:
        out.keep("field", mm(out.diameter))
        out.diameter = None
    elif "length" in out.values:
        out.keep("field", out.values.pop("length").split(", ")[0])


def _barrel(out: Readings, cast: Cast) -> None:
    """'a cup for a 22 mm wide D lens on X': a lens whose mount is named is so wide at its barrel, not at its thread."""
    seated = any(part.mounts for part in cast.lenses) and any(part.mounts or part.named for part in cast.bodies)
    if out.wide and seated and out.diameter is not None and out.pitch is None and "barrel" not in out.values:
        out.keep("barrel", mm(out.diameter))
        out.diameter = None


def _thread(out: Readings) -> None:
    if out.diameter is not None and out.pitch is not None:
        pitch = out.pitch.value if "tpi" in out.pitch.value else mm(out.pitch.numbers[0])
        out.keep("thread", f"{mm(out.diameter)} x {pitch}")
    elif out.diameter is not None:
        out.keep("thread", mm(out.diameter))
    elif out.pitch is not None:
        out.keep("pitch", out.pitch.value)


def _used(cast: Cast) -> dict[str, object]:
    """'without the helicoid', 'via M': kinds of pieces, or ids of mounts and of adapters."""
    out: dict[str, object] = {}
    for key, parts in (("without", cast.without), ("using", cast.using)):
        named = []
        for part in parts:
            thing = part.thing()
            first = thing.id or (part.mounts[0].ids[0] if part.mounts else None)
            named.append(first or part.piece)
        if named:
            out[key] = tuple(dict.fromkeys(name for name in named if name))
    return out
