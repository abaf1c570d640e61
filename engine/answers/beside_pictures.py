"""What is added where something seen in the picture is told; each is loaded only then."""

from __future__ import annotations

from typing import Final

from engine.answers.beside_heard import Beside, heard, named
from grammar.kinds import COVERAGE, WHY

# between which circles it lies that one shape of the picture has dark corners and another none, before the answer
_dark_in_one: Final = named("picture.dark_in_one", "with_circle_between")
SEEN: Final[tuple[tuple[tuple[str, ...], Beside], ...]] = (((COVERAGE, WHY), heard(_dark_in_one, "clean-in-one")),)
