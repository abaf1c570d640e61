"""What a question says besides its things: settings, light, threads, marks, limits; as plain values."""

from __future__ import annotations

from math import inf
from typing import Final

from engine.base.compact import compact, field
from grammar.cast import Cast
from grammar.casting import DRAWN
from grammar.phrases import Between, Phrase
from grammar.questions import Limits
from grammar.tokens import Token

# kinds of literal whose number is kept as it stands, and the key it is kept under
_PLAIN: Final = {
    "FPS": "frame_rate", "TURNS": "turns", "STOPS": "stops", "DEGREES": "angle", "PERCENT": "transmission",
    "PRICE": "price",
}  # fmt: skip
READINGS: Final = "readings"  # several of one thing, mm, each as often as it was read
# lengths by what they measure -> key of the value; all in mm
_KEYED: Final = {
    "mark": "mark", "thickness": "thickness", "bore": "bore", "rear-reach": "rear_reach", "travel": "travel",
    "flange-to-image": "flange_to_image", "extension": "extension", "circle": "circle", "distance": "distance",
    "barrel": "barrel", "depth": "depth", "shift": "shift", "blur": "blur",
    "close-focus": "close_focus", "layer": "layer", "total": "total", "lip": "lip", "spigot": "spigot",
    "field": "field", "reading": READINGS, "glass": "glass", "thread-length": "thread_length", "socket": "socket",
    "image-distance": "image_distance",
    "front-glass": "front_glass", "nominal": "nominal", "throat": "throat", "filter-thread": "filter_thread",
}  # fmt: skip
_LEAST_SIDE, _MOST_SIDE = 1.5, 130.0  # mm, the sides that a frame may have
_FEET: Final = frozenset(["in", "ft"])
# lengths in front of the lens, or on its scale: spoken in feet, distances are answered in feet
_AWAY: Final = frozenset(["mark", "distance", "depth", "close-focus", "field", "width"])
# where one of these is told, a width is that of what is photographed; else it is that of a thread
_PICTURED: Final = frozenset(
    ["frame-filling", "how-big", "macro", "how-close", "working-distance", "subject-word", "after-macro-distance"]
)
_SCREWED: Final = frozenset(["pitch", "calipers", "identify", "no-name"])
_CLOSE: Final = frozenset(["extension-tube", "bellows", "close-up-lens", "reverse-ring"])  # what close-ups are made by
_MARKED: Final = frozenset(["past-infinity", "infinity-at"])  # what tells that a number is of the focus scale
_SETTING_STOPS: Final = frozenset(["which-stop", "dof", "exposure"])  # and what that it is rather a stop
_FOOT_MM, _METRE_MM = 304.8, 1000.0
_LEAST_MARK, _MOST_MARK = 0.3, 500.0  # m, that a scale has
WIDEST_THREAD: Final = 150.0  # mm


@compact(frozen=False)
class Readings:
    """Values by key as text, in the order read, and what has a field of its own in a question."""

    values: dict[str, str] = field(default_factory=dict)
    f_number: float | None = None
    f_numbers: list[float] = field(default_factory=list)
    distance_mm: float | None = None
    number: int | None = None
    limits: dict[str, object] = field(default_factory=dict)
    diameter: float | None = None
    wide: bool = False  # whether that was told as a width: 'a thing 40 mm wide'
    pitch: Token | None = None
    feet: bool = False
    faults: list[tuple[Token, str]] = field(default_factory=list)  # what cannot be meant, and why

    def keep(self, key: str, text: str) -> None:
        """Several readings under one key are kept side by side: '0.1 mm, 0.2 mm'."""
        if key in self.values and text not in self.values[key].split(", "):
            self.values[key] += f", {text}"
        else:
            self.values[key] = text


def readings_of(phrases: list[Phrase], cast: Cast, told: frozenset[str]) -> Readings:
    """The readings of a question. `told`: what its cues tell."""
    out = Readings()
    if any(isinstance(phrase, Between) and phrase.token.kind == "TARGET" for phrase in phrases):
        told = told | {"infinity-at"} if "cover" not in told else told  # 'the moon is sharp at 20 m' tells a mark
    for at, phrase in enumerate(phrases):
        if not isinstance(phrase, Between):
            continue
        if phrase.sort == "limit":
            _limit(out, phrase.token)
        elif phrase.sort == "setting":
            _setting(out, phrase.token, told)
        elif phrase.sort == "value":
            _value(out, phrase.token, phrases[at - 1] if at else None, told)
    _marked(out, phrases, cast, told)
    if "plain-piece" in told:
        out.limits["without_glass"] = True
    _averaged(out, cast)
    _leftovers(out, cast, told)
    _without_lip(out, cast)
    _field(out, cast, told)
    _thread(out, told)
    out.limits.update(_used(cast))
    return out


def stops_told(phrases: list[Phrase]) -> tuple[float, ...]:
    """Every f-number told by itself, as a setting and not as what a lens opens to, in the order told."""
    out: list[float] = []
    for phrase in phrases:
        if isinstance(phrase, Between):
            out += phrase.token.numbers if phrase.sort == "setting" and phrase.token.kind == "FNUM" else ()
        elif phrase.head is None and not phrase.pair and phrase.mods and all(t.kind == "FNUM" for t in phrase.mods):
            out += [token.numbers[0] for token in phrase.mods]
        else:
            # '75 mm f/3.5: want 5.6 8 11': one opens the lens, the others are what it is to be stopped down to
            out += [token.numbers[0] for token in phrase.mods if token.kind == "FNUM"][1:]
    return tuple(one for one in out if one > 0)  # an opening of nought is none


def limits_of(readings: Readings) -> Limits:
    return Limits(**readings.limits)  # type: ignore[arg-type]


def mm(value: float) -> str:
    return f"{value:.6g} mm"


def _setting(out: Readings, token: Token, told: frozenset[str]) -> None:
    if token.kind == "FNUM":
        _stop(out, token)
    elif token.kind == "TSTOP":
        out.keep("aperture", f"T{token.numbers[0]:g}")
    elif token.kind in ("RATIO", "TIMES"):
        out.keep("magnification", f"{token.numbers[0]:g}")
    elif token.kind == "SHUTTER":
        out.keep("shutter", token.value)
    elif token.kind == "LENGTH":
        _far(out, token, told)


def _marked(out: Readings, phrases: list[Phrase], cast: Cast, told: frozenset[str]) -> None:
    """'infinity at 7', 'the moon is sharp at 7': a bare number there is a mark of the scale, in metres."""
    drawn = any(part.piece in DRAWN and part.thickness is not None for part in cast.pieces)
    if drawn or "mark" in out.values or not told & _MARKED or (told & _SETTING_STOPS):
        return
    for phrase in phrases:
        if isinstance(phrase, Between) and phrase.sort == "setting" and phrase.token.kind == "NUMBER":
            number = phrase.token.numbers[0]
            if _LEAST_MARK <= number <= _MOST_MARK:
                out.keep("mark", mm(number * (_FOOT_MM if "feet" in told else _METRE_MM)))
            return


def _far(out: Readings, token: Token, told: frozenset[str]) -> None:
    """A distance in front of the camera; where infinity is said to be at it, a mark of the scale."""
    out.feet = out.feet or token.unit in _FEET
    if (
        told & {"past-infinity", "infinity-at"}
        or {"draw", "drawn-marks"} <= told
        or ("infinity" in told and "shim" in told)
    ):
        out.keep("mark", mm(token.numbers[0]))
    elif out.distance_mm is None:
        out.distance_mm = token.numbers[0]


def _stop(out: Readings, token: Token) -> None:
    value = token.numbers[0]
    if not 0.3 <= value <= 512:
        out.faults.append((token, "an f-number between f/0.5 and f/256"))
        return
    out.f_numbers.append(value)
    out.f_number = out.f_number if out.f_number is not None else value


def _limit(out: Readings, token: Token) -> None:
    value, number = token.value, token.numbers[0] if token.numbers else 0.0
    if value == "pieces":
        if number < 1 or number != int(number):
            out.faults.append((token, "a whole number of adapters, 1 or more"))
        out.limits["pieces"] = int(number)
    elif value == "price":
        if number <= 0:
            out.faults.append((token, "a price above 0"))
        out.limits["price_usd"] = number
    elif value == "best":
        out.limits["best"] = max(1, int(number))
    elif value == "without-glass":
        out.limits["without_glass"] = True
    elif value == "with-glass":
        out.limits["with_glass"] = True
    elif value == "owned-only":
        out.limits["owned_only"] = True
    elif value == "cheapest":
        out.limits["cheapest"] = True
    elif value == "infinity":
        out.limits["at_least"] = "infinity"
    if out.limits.get("without_glass") and out.limits.get("with_glass"):
        out.faults.append((token, "one of 'with glass' and 'without glass', not both"))


def _value(out: Readings, token: Token, before: Phrase | None, told: frozenset[str]) -> None:
    kind, numbers = token.kind, token.numbers
    if kind in _PLAIN:
        out.keep(_PLAIN[kind], f"{numbers[0]:.3g}" if kind == "STOPS" else f"{numbers[0]:g}")
    elif kind == "ISO":
        out.keep("iso", f"{numbers[0]:g}")
    elif kind == "SHUTTER":
        out.keep("shutter", token.value)
    elif kind == "EV":
        _light_measured(out, f"EV {numbers[0]:g}")
    elif kind == "LIGHT":
        out.values.setdefault("light", token.value)
    elif kind == "ND" and len(numbers) > 1:
        out.values["variable"] = token.value
    elif kind == "ND":
        out.keep("factor", token.value)
    elif kind == "TSTOP":
        out.keep("aperture", f"T{numbers[0]:g}")
    elif kind == "RATIO":
        out.keep("magnification", f"{numbers[0]:g}")
    elif kind == "PIXELS":
        out.values["pixels"] = token.value
    elif kind == "ASPECT":
        out.keep("crop", token.value)
    elif kind == "AREA" and min(numbers) >= _LEAST_SIDE and max(numbers) <= _MOST_SIDE:
        out.keep("area", f"{numbers[0]:g} x {numbers[1]:g} mm")
    elif kind == "WEIGHT":
        out.keep("weight", f"{numbers[0]:g} g")
    elif kind == "TARGET":
        out.keep("target", token.value)
    elif kind == "ORDINAL" and out.number is not None and out.number != int(numbers[0]):
        out.keep("and_number", f"{numbers[0]:g}")
    elif kind == "ORDINAL":
        out.number = int(numbers[0])
    elif kind == "THREAD":
        out.keep("thread", token.value or (token.ids[0] if token.ids else token.text))
    elif kind == "PITCH":
        out.pitch = token
    elif kind == "FILE":
        out.values["file"] = token.value
    elif kind == "KEYED":
        _keyed(out, token, told)
    elif kind == "NUMBER" and not token.text.isalpha():
        out.keep("numbers", f"{numbers[0]:g}")


def _light_measured(out: Readings, value: str) -> None:
    """'shade at about EV 12': a value that was read is told more closely than by the name of the light."""
    if not out.values.get("light", "EV").startswith("EV"):
        del out.values["light"]
    out.keep("light", value)


def _keyed(out: Readings, token: Token, told: frozenset[str]) -> None:
    out.feet = out.feet or (token.unit in _FEET and token.value in _AWAY)
    if token.value == "width":
        pictured = bool(told & _PICTURED) and not told & _SCREWED
        key = "field" if pictured or token.numbers[0] > WIDEST_THREAD else ""
        if key:
            out.keep(key, mm(token.numbers[0]))
        else:
            out.diameter, out.wide = token.numbers[0], not told & _SCREWED
    elif token.value == "zone":
        near, distant = token.numbers
        out.keep("zone", f"{mm(near)} to {'infinity' if distant == inf else mm(distant)}")
    elif token.value == "diameter":
        out.diameter = token.numbers[0]
    elif token.value == "distance" and out.distance_mm is None:
        out.distance_mm = token.numbers[0]
    elif token.value == "rear-reach" and "image-lands" in told:
        out.keep("flange_to_image", mm(token.numbers[0]))  # what stands there is the image, not the lens's rear
    elif token.value == "flange-to-image" and "rear-stands" in told and "image-lands" not in told:
        out.keep("rear_reach", mm(token.numbers[0]))  # 'the rear is 12 mm behind flange'
    elif token.value == "share":
        out.keep("transmission", f"{token.numbers[0] * (1 if token.numbers[0] > 1 else 100):g}")
    elif token.value == "reading":
        out.values[READINGS] = (
            f"{out.values[READINGS]}, {mm(token.numbers[0])}" if READINGS in out.values else mm(token.numbers[0])
        )
    elif token.value in _KEYED:
        out.keep(_KEYED[token.value], mm(token.numbers[0]))


def _averaged(out: Readings, cast: Cast) -> None:
    """Readings of one thing stand for it by their mean: of a ring its thickness, else the width of a thread."""
    told = out.values.get(READINGS)
    if told is None:
        return
    values = [_first(one) for one in told.split(", ")]
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
            _far(out, length, told)
        elif length is not None:
            out.feet = out.feet or length.unit in _FEET
            out.keep("length", mm(length.numbers[0]))
    for part in cast.lenses:
        factor = part.noun.first("TIMES")
        if factor is not None and part.noun.head is None:
            out.keep("magnification", f"{factor.numbers[0]:g}")  # 'dof 0.33x f8'
        far = [one for one in part.noun.all("LENGTH") if one.unit in ("m", "ft") and one.numbers[0] != part.focal]
        if far and part.focal and out.distance_mm is None:
            _far(out, far[0], told)  # '50mm f/2.8 10 feet'
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
    size = _first(lip)
    for part in cast.pieces:
        if part.thickness is not None:
            part.thickness = (round(part.thickness[0] - size, 4), round(part.thickness[1] - size, 4))
    if "thickness" in out.values:
        out.values["thickness"] = mm(round(_first(out.values["thickness"]) - size, 4))
    out.keep("spigot", mm(size))


def _first(text: str) -> float:
    return float(text.split(" ")[0])


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


def _thread(out: Readings, told: frozenset[str]) -> None:
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
