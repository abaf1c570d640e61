"""What a question leaves for the one after it: values, pieces and limits stay while the same matter is pursued."""

from __future__ import annotations

import re
from collections.abc import Iterable
from itertools import pairwise
from math import log
from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard
from grammar.questions import ALL, OFF, Limits, Question, Thing
from grammar.readings.kept_readings import mm
from grammar.things.casting import DRAWN, OPTICAL
from grammar.words.written import STOPS

# what a chain does: here the pieces of before still stand between lens and body
_PLACED: Final = frozenset(
    ["chain", "focus-verdict", "macro-distance", "exposure-nd", "depth-of-field", "draw", "card", "why", "hazard",
     "shim-calibration", "compare"]
)  # fmt: skip
_LENS_SEEN: Final = frozenset(["coverage", "crop-equivalent", "gear-setting"])  # here only those with glass matter
_BOUGHT: Final = frozenset([*OPTICAL, "electronic-adapter", "helicoid"])  # kinds of ring that cost what others do not
_CLOSE: Final = frozenset(["macro-distance", "exposure-nd", "depth-of-field"])
_AT_A_STOP: Final = _PLACED | {"coverage", "crop-equivalent"}
# what was measured of a lens
_OF_LENS: Final = frozenset(["flange_to_image", "rear_reach", "barrel", "circle", "thread", "pitch", "zoom"])
# what a ring that is off by so much goes on to decide
_OF_SEAT: Final = frozenset(["chain", "focus-verdict", "shim-calibration", "why", "macro-distance", "depth-of-field"])
_OF_RING: Final = frozenset(["thickness", OFF, "nominal"])
_EXPOSURE: Final = "exposure-nd"
_STOPS: Final = "stops"
BRIGHTER: Final = "brighter"  # the key of the stops by which the scene is lighter than the light that is named
_CHANGED: Final = re.compile(r"\bstops? (brighter|lighter|darker|dimmer)\b", re.IGNORECASE)
_CIRCLES: Final = (3.5, 150.0)  # mm, that an image circle has
_CIRCLE: Final = "circle"
_THREAD: Final = "thread"
_DEEP: Final = "depth-of-field"
_SHIM: Final = "shim-calibration"
_FULL: Final = "35mm-full-frame"
_OF_FRAME: Final = frozenset(["coverage", "crop-equivalent", "depth-of-field"])  # what a crop bears on
_FRAME: Final = frozenset(["crop", "area"])
_SEATED: Final = frozenset(["chain", "focus-verdict", "draw", "card", "diy-dimension"])
_OF_CLOSE: Final = frozenset(["magnification", "extension", "field", "close_focus", "front_glass"])
_FILLED: Final = frozenset(["magnification", "field"])  # of these only what was told last holds
_FEW: Final = 8  # words of a line that tells one number
_TURNED: Final = frozenset(["frame_rate", "angle"])
_TAPED: Final = "front_glass"
_AT: Final = " at "
_COUNTED: Final = frozenset(["buy-plan", "shim-calibration", "exposure-nd", "diy-dimension", "depth-of-field"])


def lasting(question: Question) -> Question:
    """The question as it is leant on: without the ring that was only asked for, and numbers that meant nothing."""
    off = question.said("thickness") is not None  # the ring that is too thick is no ring asked for
    pieces = tuple(piece for piece in question.adapters if off or not _is_asked_for(piece))
    values = question.values
    if question.intent not in _COUNTED:
        values = tuple(row for row in values if row[0] != "numbers")
    return question.with_(adapters=pieces, values=values)


def _is_asked_for(piece: Thing) -> bool:
    """Whether nothing is told of it: 'which ring', 'do I need an adapter'."""
    return piece.piece == "adapter" and is_open(piece)


def is_open(piece: Thing) -> bool:
    """Whether it is told by its kind alone: 'which tube', 'a helicoid'."""
    told = (piece.ids, piece.thickness_mm, piece.factor, piece.steps, piece.front, piece.rear)
    return not any(told)


def kept_pieces(intent: str, same_lens: bool, same_mount: bool, same_body: bool, before: Question) -> tuple[Thing, ...]:
    """The pieces of before: a ring stays with the lens that it was named for, tubes while they stand between."""
    pieces = before.adapters
    if not same_lens:
        pieces = tuple(one for one in pieces if one.piece in DRAWN or not (is_open(one) and before.follows))
    if not same_mount:
        pieces = tuple(one for one in pieces if not one.front)
    if not same_body:
        pieces = tuple(one for one in pieces if not (one.front or one.rear))
    if intent in _PLACED:
        return pieces
    matter = OPTICAL if intent in _LENS_SEEN else _BOUGHT if intent == "buy-plan" else frozenset()
    return tuple(one for one in pieces if one.ids or one.front or one.piece in matter)


def same_pieces(heard: Heard, said: Question, before: Question) -> Question:
    """'same tubes with the 45', 'same ring with a 100': pieces told as those of before are as long as they were."""
    if not (heard.tells("same") or heard.tells("one-ring") or _is_the_ring(heard)):
        return said
    out: list[Thing] = []
    others = {
        id_
        for part in (*heard.cast.bodies, *heard.cast.lenses)
        if part.is_host and part.mounts
        for id_ in part.mounts[0].ids
    }
    for piece in said.adapters:
        stood = [one for one in before.adapters if one.piece == piece.piece and not is_open(one)]
        stood = [one for one in stood if not one.rear or not others or set(one.rear) & others]
        out += stood if stood and is_open(piece) else [piece]
    return said.with_(adapters=tuple(out))


def _is_the_ring(heard: Heard) -> bool:
    """'a 28 on that ring': the piece is one that was spoken of."""
    tokens = [token for token in heard.line.tokens if token.kind not in ("FILLER", "MARK")]
    return any(one.kind == "DET" and one.value == "the" and other.kind == "PIECE" for one, other in pairwise(tokens))


def piece_measured(heard: Heard, before: Question) -> tuple[Thing, ...] | None:
    """'and with 20' after a 10 mm tube, 'will 17-31 do' after a helicoid: how long that piece is now."""
    cast = heard.cast
    counted = _counted_piece(heard, before)
    if counted is not None:
        return counted
    if cast.pieces or cast.bodies or len(cast.lenses) + len(cast.lengths) != 1:
        return None
    part = (*cast.lenses, *cast.lengths)[0]
    token = part.noun.mods[0] if len(part.noun.mods) == 1 and part.noun.head is None else None
    if token is not None and token.kind == "LENGTH" and part.noun.role == "added" and before.lenses:
        tube = Thing(words=token.text, thickness_mm=(token.numbers[0], token.numbers[0]), piece="extension-tube")
        return (*before.adapters, tube)  # 'what if I add 10 mm'
    at = next((n for n, one in enumerate(before.adapters) if one.piece in DRAWN), None)
    if token is None or at is None or token.kind not in ("FOCAL", "LENGTH", "RANGE"):
        return None
    held = before.adapters[at].thickness_mm
    if token.kind != "RANGE" and (part.noun.role != "with" or held is None):
        return None
    if token.kind != "RANGE" and held is not None and _is_rather_lens(token.numbers[0], held, before):
        return None  # 'and a 100' after a helicoid of 17 to 31 mm
    changed = replace(before.adapters[at], thickness_mm=(min(token.numbers), max(token.numbers)))
    return (*before.adapters[:at], changed, *before.adapters[at + 1 :])


def _is_rather_lens(number: float, held: tuple[float, float], before: Question) -> bool:
    """Whether a length is nearer in ratio to the focal length of before than to a piece that cannot be so long."""
    focal = before.lenses[0].focal_length_mm if before.lenses else None
    if held[0] < held[1] and held[0] <= number <= held[1]:
        return False
    return focal is not None and abs(log(number / focal)) < abs(log(number / max(held[1], 0.1)))


def _counted_piece(heard: Heard, before: Question) -> tuple[Thing, ...] | None:
    """'and if the second is 9.9' after a chain of rings that were each measured: how thick that one is."""
    cast, number, text = heard.cast, heard.readings.number, heard.readings.values.get("numbers", "")
    told = re.fullmatch(r"\d+(?:\.\d+)?", text)
    if told is None or cast.pieces or cast.bodies or cast.lenses or len(heard.readings.values) > 1:
        return None
    if number is None:  # 'and 20' after a 10 mm tube
        drawn = [n for n, one in enumerate(before.adapters, 1) if one.piece in DRAWN and one.thickness_mm is not None]
        number = drawn[0] if len(drawn) == 1 and heard.tells("brief") else 0
    if not 1 <= number <= len(before.adapters) or before.adapters[number - 1].thickness_mm is None:
        return None
    changed = replace(before.adapters[number - 1], thickness_mm=(float(text), float(text)))
    return (*before.adapters[: number - 1], changed, *before.adapters[number:])


def ring_measured(heard: Heard, before: Question) -> Thing | None:
    """'mine measures 29.62' after a lens on a body: the ring between, where no thread is spoken of."""
    seated = before.intent in _SEATED and any(lens.ids for lens in before.lenses) and any(b.ids for b in before.bodies)
    told = re.fullmatch(r"(\d+(?:\.\d+)?) mm", heard.readings.values.get("thread", "")) or _bare_ring(heard, before)
    others = (*heard.cast.lenses, *heard.cast.bodies, *heard.cast.pieces)
    if not seated or told is None or others or _THREAD in heard.text.casefold():
        return None
    length = float(told[1])
    return Thing(words=f"{length:g} mm ring", thickness_mm=(length, length), piece="adapter")


def _bare_ring(heard: Heard, before: Question) -> re.Match[str] | None:
    """'12.75 it is', 'and if it was 12.9': a decimal alone that is no stop, of a ring of which no more was told."""
    values, pieces = heard.readings.values, before.adapters
    told = re.fullmatch(r"(\d+(?:\.\d+)?)", values.get("numbers", ""))
    if told is None or len(values) != 1 or len(heard.line.tokens) > _FEW or heard.readings.f_number is not None:
        return None
    if len(pieces) > 1 or (pieces and pieces[0].piece != "adapter") or "." not in heard.text:
        return None
    return told if float(told[1]) not in STOPS or pieces else None


def depth_wanted(heard: Heard, said: Question, before: Question) -> Question:
    """'want 20 cm at least, what stop' after a depth at 3 m: so much shall be sharp, no nearer subject is told."""
    away, told = before.distance_mm, said.distance_mm
    if before.intent != _DEEP or away is None or told is None or not heard.tells("which-stop") or told > away / 2:
        return said
    return said.with_(distance_mm=None, values=(*said.values, ("depth", mm(told))))


def circle_measured(heard: Heard, before: Question) -> str | None:
    """'say it's 16 mm, largest 16:9 then' after the circle was asked for: that length is the circle's."""
    cast = heard.cast
    alone = not (cast.bodies or cast.pieces) and len(cast.lenses) + len(cast.lengths) == 1
    part = (*cast.lenses, *cast.lengths)[0] if alone else None
    sized = _sized_alone(heard)
    if sized is not None and before.intent == "coverage" and before.lenses and not cast.lenses:
        return sized  # 'i measured 20 mm'
    asked = _CIRCLE in before.wants.split()
    known = before.intent == "coverage" and bool(before.lenses) and before.lenses[0].focal_length_mm is not None
    if part is None or not (asked or known) or part.has_mount_or_kind or part.f_number:
        return None
    token = part.noun.first("LENGTH", "FOCAL", "RANGE")
    shown = heard.tells("crop-said") or heard.tells("it-is") or heard.tells("image-circle") or heard.tells("crop")
    if token is None or not shown or part.noun.head is not None:
        return None
    low, high = min(token.numbers), max(token.numbers)
    return f"{low:g} mm" if low == high else f"{low:g}..{high:g} mm"


def with_stop_set(said: Question, before: Question) -> Question:
    """'f2.8' in a talk of an 85 mm f/1.8: it is stopped down so far, and opens as wide as before."""
    old, new = before.lens, said.lens
    if old is None or new is None or len(said.lenses) != 1 or new.f_number is None or old.focal_length_mm is None:
        return said
    alone = not (new.ids or new.focal_length_mm or new.lens_kind or new.format or new.traits or new.count)
    if not alone or old.f_number is None or new.f_number <= old.f_number:
        return said
    return said.with_(lenses=(), f_number=new.f_number)


def _sized_alone(heard: Heard) -> str | None:
    """A width that was measured of no thread: 'mine measures 20'."""
    values = heard.readings.values
    told = re.fullmatch(r"(\d+(?:\.\d+)?) mm", values.get(_THREAD, ""))
    others = heard.cast.bodies or heard.cast.pieces or len(values) != 1 or _THREAD in heard.text.casefold()
    return told[0] if told is not None and not others and _CIRCLES[0] <= float(told[1]) <= _CIRCLES[1] else None


def with_light_changed(said: Question, before: Question) -> Question:
    """'two stops brighter sky' in a talk of an exposure: the scene is so much lighter, and no filter holds it back."""
    stops, told = said.said(_STOPS), _CHANGED.search(said.text)
    if stops is None or told is None or before.intent != _EXPOSURE:
        return said
    sign = -1.0 if told[1].casefold().startswith("d") else 1.0
    shift = sign * float(stops.split(",")[0]) + float(before.said(BRIGHTER) or 0.0)
    rest = tuple(row for row in said.values if row[0] != _STOPS)
    return said.with_(values=(*rest, (BRIGHTER, f"{shift:g}")))


def kept_stop(intent: str, same_lens: bool, before: Question) -> float | None:
    """The stop that was set; the widest of a lens is not that of another."""
    widest = before.lens is not None and before.f_number == before.lens.f_number
    if widest and not same_lens:
        return None
    return before.f_number if intent in _AT_A_STOP or intent == before.intent else None


def kept_distance(intent: str, before: Question) -> float | None:
    return before.distance_mm if intent == before.intent else None


def kept_values(intent: str, lenses: tuple[Thing, ...], before: Question, said: Question) -> dict[str, str]:
    """What was told before: all of it while the same is asked, else what was measured of the lens, while it is that.

    A card tells of light and shutter too, so it keeps those of every kind of question.
    """
    values = dict(before.values)
    if intent == "card":
        values.pop("file", None)
        if said.lenses or said.bodies:
            values.pop(ALL, None)
        return values
    if "thickness" in values and before.off_word:
        values[OFF] = before.off_word
    if said.said("thickness"):
        values.pop(OFF, None)
    for key in _overtaken(said):
        values.pop(key, None)
    if _TAPED in values and _AT not in values[_TAPED]:
        # what was taped holds for the pieces it was taped with, whatever stands there now
        stood = sum(thing.thickness_mm[1] for thing in before.adapters[:1] if thing.thickness_mm is not None)
        values[_TAPED] += f"{_AT}{mm(stood)}" if stood else ""
    if intent == before.intent:
        return values
    off = _OF_RING if intent in _OF_SEAT else frozenset()
    same = [thing.ids for thing in lenses] == [thing.ids for thing in before.lenses]
    # a lens whose mount was not known is still that lens when a ring tells it
    same = same or _focals(lenses) == _focals(thing for thing in before.lenses if not thing.ids) != [None]
    close = intent in _CLOSE
    framed = {intent, before.intent} <= _OF_FRAME and not said.bodies
    framed = framed and all(thing.id == _FULL for thing in said.things if thing.kind == "format")  # 'in ff' likens it
    off = off | (_FRAME if framed else frozenset())
    kept = off | (_OF_LENS if same else frozenset()) | (_OF_CLOSE if close else frozenset())
    return {key: text for key, text in values.items() if key in kept}


def _focals(things: Iterable[Thing]) -> list[float | None]:
    return [thing.focal_length_mm for thing in things]


def _overtaken(said: Question) -> frozenset[str]:
    """What no longer holds: another tube makes another magnification, another field too."""
    if any(thing.thickness_mm is not None for thing in said.adapters):
        return _FILLED | {"extension"}
    keys = {key for key, _ in said.values}
    timed = frozenset(["shutter"]) if keys >= _TURNED else frozenset()  # the angle at a rate is the time
    if said.distance_mm is not None and said.intent == _SHIM:
        timed |= {"mark"}  # 'now it stops at 12 m' after infinity at the 8 m mark
    timed |= frozenset([BRIGHTER]) if "light" in keys else frozenset()
    return timed | (_FILLED if _FILLED & keys else frozenset())


def kept_limits(new: Limits, old: Limits, same: bool) -> Limits:
    """`same`: whether the same is asked; else neither the order nor the count of what was shown goes on."""
    old = old if same else replace(old, best=None, cheapest=False)
    return Limits(
        new.pieces if new.pieces is not None else old.pieces,
        new.without_glass or (old.without_glass and not new.with_glass),
        new.with_glass or (old.with_glass and not new.without_glass),
        new.owned_only or old.owned_only,
        new.price_usd if new.price_usd is not None else old.price_usd,
        tuple(dict.fromkeys((*old.without, *new.without))),
        tuple(name for name in dict.fromkeys((*old.using, *new.using)) if name not in new.without),
        new.at_least or old.at_least,
        new.best or old.best,
        new.cheapest or old.cheapest,
    )
