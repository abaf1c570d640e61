"""Glass put behind a lens, or left out from behind it: whether infinity is there, and where."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from tests.desks import desk_of


@pytest.fixture(scope="module")
def desk() -> Desk:
    return desk_of()


_INDEX = (1.5, 1.5168)  # of plates: t(1 - 1/n)


@pytest.mark.parametrize(
    ("said", "glass", "focal", "gone"),
    [
        ("a 2 mm clear filter sits behind my 50 M42 now, in the ring. does it still get to infinity", 2.0, 50.0, False),
        ("rear gel holder with 2mm glass on my 85, stars still?", 2.0, 85.0, False),
        ("put a 1.5mm UV glass in the adapter behind my 28. infinity?", 1.5, 28.0, False),
        ("removed the 1mm glass filter that sits behind my 20mm, infinity lost?", 1.0, 20.0, True),
        ("28mm with the rear 1 mm clear glass left out, do I still reach far", 1.0, 28.0, True),
    ],
)
def test_infinity_with_the_glass_or_without(desk: Desk, said: str, glass: float, focal: float, gone: bool) -> None:
    answer = desk.ask(said)
    (chain,) = answer.chains or ()
    assert chain.listed.judged.verdict == ("macro-only" if gone else "infinity")
    told = {row.name: row.value.nominal for row in answer.quantities}
    least, most = (glass * (1 - 1 / n) for n in _INDEX)
    assert least - 0.01 <= told["register_error_mm"] * (1 if gone else -1) <= most + 0.01
    ends = [2 * focal + focal**2 / x + x for x in (most, least)]
    assert ends[0] * 0.99 <= told["far_from_sensor_mm" if gone else "scale_mark_mm"] <= ends[1] * 1.01


def test_glass_before_the_lens_moves_nothing(desk: Desk) -> None:
    answer = desk.ask("1 mm glass filter in front of the lens, 50 mm M42 on E. infinity?")
    assert not any(row.name == "glass_shift_mm" for row in answer.quantities or ())
