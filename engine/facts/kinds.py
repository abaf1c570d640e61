"""The closed lists of the facts: which kinds, couplings, traits and verdicts there are."""

from __future__ import annotations

from typing import Final

CONFIDENCES: Final = ("own-measured", "standard", "two-sources", "one-source", "memory")
STRONG: Final = frozenset({"own-measured", "standard", "two-sources"})
MOUNT_KINDS: Final = (
    "slr", "rangefinder", "mirrorless", "medium-format", "cine", "video", "industrial", "still",
    "enlarger", "microscope", "projector", "astro", "bellows", "filter", "board",
)  # fmt: skip
ACCESSORIES: Final = frozenset(["filter", "bellows", "board"])  # whose mounts are those of accessories
COUPLINGS: Final = ("screw", "bayonet", "breech-lock", "push-in", "clamp", "spider", "unknown")
IRIS_DRIVES: Final = ("ring", "lever", "electronic", "mixed", "none", "unknown")
TRAITS: Final = (
    "no-focusing",  # the lens has no focusing of its own: the adapter must add it
    "shutter-in-lens",  # shuts when uncocked or without power
    "needs-tube-lens",  # forms no image without a second lens
    "finite-conjugate",  # made for one magnification, not for infinity
    "no-shoulder",  # does not stop by itself when screwed in
    "prism-behind",  # corrected for the glass of a prism behind the lens
    "deep-rear",  # rears commonly reach well behind the flange
    "auto-pin",  # a pin must be pressed for the blades to close
    "shutter-behind-lens",  # cameras of it have a leaf shutter in the body
    "camera-iris",  # the iris was in the body: the lens has none
    "focus-drive-in-body",  # focus is turned by the body or the adapter
    "lens-side-only",  # no camera body carries it
    "thread-only",  # a thread of accessories, without a register of its own
    "jams",  # a pin or lug can lock the lens on a body
    "shutters-in-own-lenses",  # bodies of it have no shutter of their own but an electronic one
    "usual-hub",  # what most is adapted to, and from: one ring for each lens, one for each body
    "usual-of-its-format",  # what lenses made for its format mostly have
    "iris-by-cable",  # security cameras have lenses of it whose iris a cable works
    "usual-tubes",  # whose tubes and bellows are taken where no mount is told
)
FORMAT_TRAITS: Final = ("small-gauge",)  # of cine film no wider than 16 mm: what lenses of small cine cameras are for
READ_TRAITS: Final = frozenset(["small-gauge", "iris-by-cable"])  # that a question is read by
LENS_TRAITS: Final = ("fixed-iris", "leaf-shutter")  # what a question may say of a lens, and advice be for
ADAPTER_KINDS: Final = (
    "plain", "recessed", "extension-tube", "helicoid", "bellows", "thread-reducer", "corrective-glass",
    "focal-reducer", "teleconverter", "tilt", "shift", "reverse-ring", "coupling-ring", "step-ring", "turret",
)  # fmt: skip
GLASS_KINDS: Final = frozenset(["corrective-glass", "focal-reducer", "teleconverter"])
DRAWN_OUT: Final = frozenset(["helicoid", "bellows"])  # of a length that can be set
TUBELIKE: Final = DRAWN_OUT | {"extension-tube"}  # of one mount, told by their length
FLAT_KINDS: Final = frozenset(["plain", "recessed", "thread-reducer"])  # what is mostly called a ring
ADAPTER_IRIS: Final = ("none", "lever-ring", "own-iris", "electronic")
COMMONNESS: Final = ("everyday", "specialist", "made-to-order", "own")
LENS_IRIS: Final = ("ring", "lever", "electronic", "fixed", "unknown")
FOCUSING: Final = ("unit", "front-cell", "internal", "zoom", "none", "unknown")
NEAR_TURNS: Final = ("clockwise", "counter-clockwise", "push-pull", "unknown")
EXAMPLES: Final = ("far-limits", "marks", "tubes", "light-lost", "framing")
ASKED_AS: Final = ("why", "hazard", "gear-setting", "compare", "out-of-scope", "other")
PER_FORMAT: Final = ("allowed_blur_mm", "crop_factor", "format_diagonal_mm")  # what tells a term of a format
SEVERITIES: Final = ("note", "caution", "danger")
VERDICTS: Final = ("infinity", "macro-only", "unusable")  # best first
