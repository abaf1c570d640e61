"""The format that stands on a lens, told after whether it covers: 'it's marked 1" actually', 'it says 2/3" on it'."""

from __future__ import annotations

import re
from typing import Final

from grammar.hearing import Heard
from grammar.kinds import CHAIN, COVERAGE, CROP_EQUIVALENT, FOCUS_VERDICT, IDENTIFY_MOUNT
from grammar.questions import Question

_OF_LENS: Final = frozenset([COVERAGE, CROP_EQUIVALENT, CHAIN, FOCUS_VERDICT, IDENTIFY_MOUNT])
# no distance of a scale is so near, and no mark of one is told in parts of an inch
_MARKED: Final = re.compile(
    r"\b(?:marked|engraved|stamped|printed|says|reads|labelled)\s+(?:as\s+|for\s+)?"
    r"(1|2/3|1/2|1/3|1/4|4/3|1\.1|1\.2|1/1\.8|1/2\.5|1/1\.2)\s?(?:\"|''|\u201d|inch\b|in\b)",
    re.IGNORECASE,
)
_LED: Final = re.compile(r"\b(?:it|lens|which|that)(?:'s|’s| is| was)?\s*$", re.IGNORECASE)  # before that it is marked


def engraved_now(heard: Heard, before: Question) -> str | None:
    """'made for 1" ' in its place; None where no lens is spoken of, or another is named."""
    told = _MARKED.search(heard.text)
    if told is None or before.lens is None or before.intent not in _OF_LENS or heard.cast.bodies:
        return None
    lens = f'lens made for {told[1]}"'
    if not heard.weighed.is_plain:
        return lens
    # 'it is engraved 1/2". how much of APS-C is lit': what else is asked stays
    led = _LED.search(heard.text, 0, told.start())
    return f"{heard.text[: led.start() if led is not None else told.start()]}{lens}{heard.text[told.end() :]}"
