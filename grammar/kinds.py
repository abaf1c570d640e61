"""The kinds of question there are, each named once."""

from __future__ import annotations

from typing import Final

CHAIN: Final = "chain"
FOCUS_VERDICT: Final = "focus-verdict"
MACRO_DISTANCE: Final = "macro-distance"
WHY: Final = "why"
LOOK_ALIKE: Final = "look-alike"
DEFINITION: Final = "definition"
LIST_FITS: Final = "list-fits"
HAZARD: Final = "hazard"
OUT_OF_SCOPE: Final = "out-of-scope"
COVERAGE: Final = "coverage"
CROP_EQUIVALENT: Final = "crop-equivalent"
EXPOSURE_ND: Final = "exposure-nd"
DEPTH_OF_FIELD: Final = "depth-of-field"
COMPARE: Final = "compare"
GEAR_SETTING: Final = "gear-setting"
IDENTIFY_MOUNT: Final = "identify-mount"
SHIM_CALIBRATION: Final = "shim-calibration"
DIY_DIMENSION: Final = "diy-dimension"
BUY_PLAN: Final = "buy-plan"
DRAW: Final = "draw"
CARD: Final = "card"
# kinds that go together
SEATED: Final = frozenset([CHAIN, FOCUS_VERDICT])  # how a lens sits on a body
BY_SEAT: Final = SEATED | {MACRO_DISTANCE}  # what hangs on how far it sits from the sensor
CLOSE_UPS: Final = frozenset([MACRO_DISTANCE, EXPOSURE_ND, DEPTH_OF_FIELD])  # what a tube changes
# what an error of the seat that was told before goes on to decide
OFF_SEAT: Final = SEATED | {SHIM_CALIBRATION, WHY, DEPTH_OF_FIELD}
OF_FRAMES: Final = frozenset([COVERAGE, CROP_EQUIVALENT])  # what hangs on the size of the sensor
PICTURED: Final = OF_FRAMES | {DEPTH_OF_FIELD}
OF_PICTURE: Final = PICTURED | {EXPOSURE_ND, GEAR_SETTING}

# of things, then of what is said to the program itself
INTENTS: Final = (
    CHAIN, FOCUS_VERDICT, MACRO_DISTANCE, WHY, LOOK_ALIKE, DEFINITION, LIST_FITS, HAZARD, OUT_OF_SCOPE, COVERAGE,
    CROP_EQUIVALENT, EXPOSURE_ND, DEPTH_OF_FIELD, COMPARE, GEAR_SETTING, IDENTIFY_MOUNT, SHIM_CALIBRATION,
    DIY_DIMENSION, BUY_PLAN, DRAW, CARD,
    "help", "hello", "thanks", "noted", "quit", "show-memory", "start-over", "list-gear", "teach", "forget",
    "which-own", "all-on-all",
)  # fmt: skip
