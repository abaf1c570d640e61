"""What has been read beside the things of a question, as it is kept: values by key, faults, a stop, a distance."""

from __future__ import annotations

from typing import Final

from engine.base.compact import compact, field
from grammar.words.tokens import Token

FEET: Final = frozenset(["in", "ft"])
_AT_HAND: Final = "at_hand"


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
        """Several readings under one key are kept side by side: '0.1 mm, 0.2 mm'; of pieces at hand two alike too."""
        held = self.values.get(key)
        if held is None:
            self.values[key] = text
        elif key == _AT_HAND or text not in held.split(", "):
            self.values[key] = f"{held}, {text}"


def mm(value: float) -> str:
    return f"{value:.6g} mm"


def first(text: str) -> float:
    return float(text.split(" ")[0])


def far(out: Readings, token: Token, told: frozenset[str]) -> None:
    """A distance in front of the camera; where infinity is said to be at it, a mark of the scale."""
    out.feet = out.feet or token.unit in FEET
    if (
        told & {"past-infinity", "infinity-at"}
        or {"draw", "drawn-marks"} <= told
        or ("infinity" in told and "shim" in told)
    ):
        out.keep("mark", mm(token.numbers[0]))
    elif out.distance_mm is None:
        out.distance_mm = token.numbers[0]
    elif out.distance_mm != token.numbers[0]:
        out.keep("distance", mm(token.numbers[0]))
