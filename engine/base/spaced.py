"""What stands between a corrector and the sensor, and how long all of it is to be."""

from __future__ import annotations

from engine.base.compact import compact


@compact
class Spaced:
    """Lengths in mm. `there`: those told, each with the words it was told in; `glass`: of a filter in between.

    `chosen`: the last was put in to make it up; `t_ring`: it is on the body's T ring. `asked`: whether what is said
    now is about it, and not only said in the same talk. `first`: how many were told with what is wanted.
    """

    wanted: float
    there: tuple[tuple[float, str], ...] = ()
    glass: float = 0.0
    chosen: bool = False
    t_ring: bool = False
    first: int = 0
    asked: bool = True
