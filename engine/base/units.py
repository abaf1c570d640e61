"""What a unit of length is in mm, as they are written in short. Source: the inch is 25.4 mm by definition."""

from __future__ import annotations

from typing import Final

MM_PER_INCH: Final = 25.4
MM_PER_FOOT: Final = 304.8
MM_PER_METRE: Final = 1000.0
# units that a distance to the subject is told in
FAR_UNITS: Final = {"m": MM_PER_METRE, "cm": 10.0, "ft": MM_PER_FOOT, "in": MM_PER_INCH}
UNITS: Final = {"mm": 1.0, "um": 0.001, "thou": MM_PER_INCH / 1000.0} | FAR_UNITS
