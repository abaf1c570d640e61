"""What a question says besides its things: settings, light, threads, marks, limits; as plain values."""

from __future__ import annotations

from math import inf
from typing import Final

from engine.base.units import MM_PER_FOOT, MM_PER_METRE
from grammar.numbers.drawn_so_far import INFINITY_SETTING
from grammar.numbers.filters_stacked import TAKEN
from grammar.numbers.free_depths import FREE_DEPTH
from grammar.numbers.motifs import IMAGE_SIZE, MOTIF, SIDES
from grammar.numbers.objectives_told import APERTURE
from grammar.numbers.pupils import ENTRANCE, EXIT
from grammar.numbers.squeezes import SQUEEZE
from grammar.numbers.tilts_told import TILT
from grammar.numbers.washers_summed import SHEETS_LAID, listed
from grammar.questions import BODY_REGISTER, CLEAR_DEPTH, Limits
from grammar.readings.kept_readings import FEET, Readings, far, mm
from grammar.readings.settled_readings import READINGS, settle
from grammar.things.cast import Cast
from grammar.things.casting import DRAWN
from grammar.things.phrases import Between, Phrase
from grammar.words.tokens import Token

# kinds of literal whose number is kept as it stands, and the key it is kept under
GLASS_OUT: Final = "glass-out"  # that glass which is in the ring is taken out of it
_PLAIN: Final = {
    "FPS": "frame_rate", "TURNS": "turns", "STOPS": "stops", "DEGREES": "angle", "PERCENT": "transmission",
    "PRICE": "price",
}  # fmt: skip
# lengths by what they measure -> key of the value; all in mm
_KEYED: Final = {
    "mark": "mark", "thickness": "thickness", "bore": "bore", "rear-reach": "rear_reach", "travel": "travel",
    "flange-to-image": "flange_to_image", "extension": "extension", "circle": "circle", "distance": "distance",
    "barrel": "barrel", "depth": "depth", "shift": "shift", "blur": "blur",
    "close-focus": "close_focus", "layer": "layer", "total": "total", "lip": "lip", "spigot": "spigot",
    "field": "field", "reading": READINGS, "glass": "glass", "thread-length": "thread_length", "socket": "socket",
    "image-distance": "image_distance", IMAGE_SIZE: IMAGE_SIZE,
    "diagonal": "diagonal", "stock": "stock", "front-principal": "front_principal",
    "front-glass": "front_glass", "nominal": "nominal", "at-hand": "at_hand", "ring-choice": "ring_choice",
    "throat": "throat", "filter-thread": "filter_thread", "filter-size": "filter_size", "other-pitch": "other_pitch",
    INFINITY_SETTING: "infinity_setting", EXIT: "exit_pupil", ENTRANCE: "entrance_pupil",
    "body-register": BODY_REGISTER, TILT: TILT, FREE_DEPTH: CLEAR_DEPTH,
}  # fmt: skip
_LEAST_SIDE, _MOST_SIDE = 1.5, 130.0  # mm, the sides that a frame may have
# lengths in front of the lens, or on its scale: spoken in feet, distances are answered in feet
_AWAY: Final = frozenset(["mark", "distance", "depth", "close-focus", "field", "width", "zone"])
# where one of these is told, a width is that of what is photographed; else it is that of a thread
_PICTURED: Final = frozenset(
    ["frame-filling", "how-big", "macro", "how-close", "working-distance", "subject-word", "after-macro-distance"]
)
_SCREWED: Final = frozenset(["pitch", "calipers", "identify", "no-name"])
_MARKED: Final = frozenset(["past-infinity", "infinity-at"])  # what tells that a number is of the focus scale
_SHIMMED: Final = frozenset(["infinity", "shim"])  # 'hills sharp at 8, what shim'
_SETTING_STOPS: Final = frozenset(["which-stop", "dof", "exposure"])  # and what that it is rather a stop
_MEASURED_FOR: Final = frozenset(["identify", "no-name"])  # and what that it tells of a mount
_REGISTERS: Final = (5.0, 120.0)  # mm, that mounts have
_LEAST_MARK, _MOST_MARK = 0.3, 500.0  # m, that a scale has
WIDEST_THREAD: Final = 150.0  # mm


def readings_of(phrases: list[Phrase], cast: Cast, told: frozenset[str]) -> Readings:
    """The readings of a question. `told`: what its cues tell."""
    out = Readings()
    if any(isinstance(phrase, Between) and phrase.token.kind == "TARGET" for phrase in phrases):
        told = told | {"infinity-at"} if "cover" not in told else told  # 'the moon is sharp at 20 m' tells a mark
    for phrase in phrases:
        if not isinstance(phrase, Between):
            continue
        if phrase.sort == "limit":
            _limit(out, phrase.token)
        elif phrase.sort == "setting":
            _setting(out, phrase.token, told)
        elif phrase.sort == "value":
            _value(out, phrase.token, told)
    _marked(out, phrases, cast, told)
    if "plain-piece" in told:
        out.limits["without_glass"] = True
    if GLASS_OUT in told:
        out.limits.pop("with_glass", None)  # the glass told of is taken out
    settle(out, cast, told)
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


def _setting(out: Readings, token: Token, told: frozenset[str]) -> None:
    if token.kind == "FNUM":
        _stop(out, token)
    elif token.kind == "TSTOP":
        out.keep("aperture", f"T{token.numbers[0]:g}")
    elif token.kind in ("RATIO", "TIMES"):
        out.keep("magnification", f"{abs(token.numbers[0]):g}")  # a minus says that the image stands on its head
    elif token.kind == "SHUTTER":
        out.keep("shutter", token.value)
    elif token.kind == "LENGTH":
        far(out, token, told)


def _marked(out: Readings, phrases: list[Phrase], cast: Cast, told: frozenset[str]) -> None:
    """'infinity at 7', 'the moon is sharp at 7': a bare number there is a mark of the scale, in metres."""
    drawn = any(part.piece in DRAWN and part.thickness is not None for part in cast.pieces)
    marked = told & _MARKED or told >= _SHIMMED
    if drawn or "mark" in out.values or not marked or (told & _SETTING_STOPS):
        return
    for phrase in phrases:
        if isinstance(phrase, Between) and phrase.sort == "setting" and phrase.token.kind == "NUMBER":
            number = phrase.token.numbers[0]
            if _MEASURED_FOR & told and _REGISTERS[0] <= number <= _REGISTERS[1] and not (cast.bodies or cast.pieces):
                out.keep("flange_to_image", mm(number))  # 'focus to infinity at 45.4, what mount': by the caliper
            elif _LEAST_MARK <= number <= _MOST_MARK:
                out.keep("mark", mm(number * (MM_PER_FOOT if "feet" in told else MM_PER_METRE)))
            return


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


def _value(out: Readings, token: Token, told: frozenset[str]) -> None:
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
        key = "light" if out.values.get("light", token.value) == token.value else "other_light"
        out.values.setdefault(key, token.value)
    elif kind == "ND" and len(numbers) > 1:
        out.values["variable"] = token.value
    elif kind == "ND":
        out.keep("factor_taken" if token.unit == TAKEN else "factor", token.value)
    elif kind == "TSTOP":
        out.keep("aperture", f"T{numbers[0]:g}")
    elif kind == "RATIO":
        out.keep("magnification", f"{abs(numbers[0]):g}")
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
        out.keep("and_number", f"{numbers[0]:.0f}")
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
    out.feet = out.feet or (token.unit in FEET and token.value in _AWAY)
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
    elif token.value == MOTIF:
        out.keep(MOTIF, token.ids[0])
    elif token.value == SIDES:
        out.keep(SIDES, f"{max(token.numbers):g} x {min(token.numbers):g} mm")
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
    elif token.value == SHEETS_LAID:
        out.keep(SHEETS_LAID, listed(token.numbers))
    elif token.value == SQUEEZE:
        out.keep(SQUEEZE, f"{token.numbers[0]:g}x")
    elif token.value == APERTURE:
        out.keep(APERTURE, f"{token.numbers[0]:g}")
    elif token.value in _KEYED:
        out.keep(_KEYED[token.value], mm(token.numbers[0]))
