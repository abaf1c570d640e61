"""A size told after whether a lens covers: that of its image circle."""

from __future__ import annotations

import re
from typing import Final

from grammar.hearing import Heard
from grammar.kinds import COVERAGE, OF_FRAMES
from grammar.questions import Question
from grammar.things.letters_by_numbers import ARTICLES
from grammar.turns.answer_told import MADE_WITHIN_MM, RIGHT, told_as
from grammar.turns.told_before import asks_whence
from grammar.words.tokens import Token

_MM: Final = re.compile(r"(\d+(?:\.\d+)?) mm")
_TAKEN_FOR: Final = ("thread", "field")  # keys of a size that stands alone, by the words beside it
_CIRCLE: Final = "circle"
_THREAD: Final = "thread"
_LEAST_CIRCLE, _MOST_CIRCLE = 3.0, 150.0  # mm


def circle_measured(heard: Heard, before: Question) -> str | None:
    """'say it's 16 mm, largest 16:9 then' after the circle was asked for: that length is the circle's."""
    if asks_whence(heard, before) or _is_of_ring(heard, before):
        return None
    cast, sized = heard.cast, _circle_by_size(heard, before)
    if sized is not None:
        return sized
    alone = not (cast.bodies or cast.pieces) and len(cast.lenses) + len(cast.lengths) == 1
    part = (*cast.lenses, *cast.lengths)[0] if alone else None
    estimated = before.intent == COVERAGE and heard.tells("estimate")
    asked = estimated or _CIRCLE in before.wants.split()
    known = before.intent == COVERAGE and bool(before.lenses) and before.lenses[0].focal_length_mm is not None
    if part is None or not (asked or known) or part.has_mount_or_kind or part.f_number:
        return None
    token = part.noun.first("LENGTH", "FOCAL", "RANGE")
    shown = heard.tells("crop-said") or heard.tells("it-is") or heard.tells("image-circle") or heard.tells("crop")
    if token is None or not (shown or estimated) or part.noun.head is not None or _is_a_thing(heard, token):
        return None
    low, high = min(token.numbers), max(token.numbers)
    return f"{low:g} mm" if low == high else f"{low:g}..{high:g} mm"


def _is_of_ring(heard: Heard, before: Question) -> bool:
    """'i bought one, caliper 23.7' where the ring of the pair is 23.5 mm: a number told finer than a circle is."""
    right = [one for one in told_as(before, RIGHT) if one > 0]
    sizes = [one.numbers[0] for one in heard.line.tokens if one.numbers and not one.text.isalpha()]
    told = sizes[0] if len(sizes) == 1 and not heard.tells("image-circle") else 0.0
    return told != int(told) and any(abs(told - one) <= MADE_WITHIN_MM for one in right)


def _is_a_thing(heard: Heard, token: Token) -> bool:
    """'what if its a 35mm': another lens, by the article before its length."""
    led = heard.led_by(token)
    article = led is not None and led.kind == "DET" and led.value != "its"  # 'its 16 mm' is said of it
    return article or (led is not None and led.text.casefold() in ARTICLES)


def _circle_by_size(heard: Heard, before: Question) -> str | None:
    """'I measured 20 mm', 'reckon 15' after whether a lens covers: a size of nothing else, where no thread is told."""
    cast, values = heard.cast, heard.readings.values
    others = cast.bodies or cast.pieces or cast.lenses or cast.lengths
    told = next((one for key in _TAKEN_FOR if (one := _MM.fullmatch(values.get(key, "")))), None)
    if told is None and heard.tells("estimate"):
        told = re.fullmatch(r"(\d+(?:\.\d+)?)", values.get("numbers", ""))
    of_circles = before.intent in OF_FRAMES and bool(before.lenses) and _THREAD not in heard.text.casefold()
    if told is None or others or not of_circles:
        return None
    return f"{told[1]} mm" if _LEAST_CIRCLE <= float(told[1]) <= _MOST_CIRCLE else None
