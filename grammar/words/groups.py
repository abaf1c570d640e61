"""Groups of words that readings tell apart by more than their class; which words those are stands in kb/words."""

from __future__ import annotations

from typing import Final

ANGLE: Final = "angle"
BEYOND: Final = "beyond"
CROP: Final = "crop"
DIAL: Final = "dial"
F_NUMBER: Final = "f-number"
FILM_LIKE: Final = "film-like"
LIT: Final = "lit"
NEAREST_ASKED: Final = "nearest-asked"
NEAREST_LED: Final = "nearest-led"
OF_SHAPE: Final = "of-shape"
OF_SIZE: Final = "of-size"
REALLY: Final = "really"
SCALE: Final = "scale"
SCREW: Final = "screw"
SCREW_CRESTS: Final = "screw-crests"
SEVERAL: Final = "several"
SIDE: Final = "side"
SINGLE: Final = "single"
SPAN: Final = "span"
VIDEO_TUBE: Final = "video-tube"

# every one that must have words
GROUPS: Final = frozenset(
    [ANGLE, BEYOND, CROP, DIAL, F_NUMBER, FILM_LIKE, LIT, NEAREST_ASKED, NEAREST_LED, OF_SHAPE, OF_SIZE, REALLY,
     SCALE, SCREW, SCREW_CRESTS, SEVERAL, SIDE, SINGLE, SPAN, VIDEO_TUBE]
)  # fmt: skip
