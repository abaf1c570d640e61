"""What is added to an answer of how far a lens comes: yes or no to a distance told, what else an error spoils."""

from __future__ import annotations

from typing import Final

from engine.answers.beside_heard import WAYS, Beside, heard, named
from grammar.kinds import MACRO_DISTANCE, SHIM_CALIBRATION, WHY

# whether a subject is within focus with tubes between
_in_reach: Final = named("close.in_reach", "with_in_reach")
# what a seat that is off does to a floating group
_floating: Final = named("shims.floating", "with_floating")
# that its own lenses fall short on a body too, in place of the answer
_body: Final = named("shims.body_at_fault", "with_body_at_fault")
# how much more extension brings a lens nearer than it comes by itself, before the answer
_nearer: Final = named("close.brought_nearer", "with_more_extension")
REACHED: Final[tuple[tuple[tuple[str, ...], Beside], ...]] = (
    ((*WAYS, MACRO_DISTANCE), heard(_in_reach, "in-reach")),
    ((*WAYS, MACRO_DISTANCE), heard(_nearer, "more-extension-asked")),
    ((*WAYS, SHIM_CALIBRATION, WHY), heard(_floating, "floating-said")),
    ((*WAYS, SHIM_CALIBRATION, WHY), heard(_body, "own-lens-short")),
)
