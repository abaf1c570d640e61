"""A scale that says other than the tape: by how much the seat is off, whether infinity is there, and what goes on."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from engine.talk import Talk
from tests.desks import desk_of


@pytest.fixture(scope="module")
def desk() -> Desk:
    return desk_of()


def _off(focal: float, mark: float, sharp: float) -> float:
    """By how much the seat is off, mm: x of what is so less x of the mark, x = (S - sqrt(S*S - 4f*f))/2, S = D - 2f."""

    def travel(away: float) -> float:
        rest = away - 2 * focal
        return (rest - (rest * rest - 4 * focal * focal) ** 0.5) / 2

    return travel(sharp) - travel(mark)


@pytest.mark.parametrize(
    ("said", "focal", "mark", "sharp"),
    [
        ("the 28 at the 2m mark actually shows 2.4m sharp, is infinity still on", 28, 2000, 2400),
        ("85mm reads 10 m when the post stands at 8.5. will it get to infinity?", 85, 10000, 8500),
        ("my 50 with the ring at 3 m focuses at 3.6 m by the laser. does it still reach infinity", 50, 3000, 3600),
        ("35mm on 1.5 m is really at 1.7m (tape from the film plane). horizon lost?", 35, 1500, 1700),
    ],
)
def test_the_error_and_infinity(desk: Desk, said: str, focal: float, mark: float, sharp: float) -> None:
    answer, error = desk.ask(said), _off(focal, mark, sharp)
    told = [row.value.nominal for row in answer.quantities if row.name == "register_error_mm"]
    assert told == [pytest.approx(error, abs=0.004)]
    (chain,) = answer.chains or ()
    assert chain.listed.judged.verdict == ("infinity" if error < 0 else "macro-only")
    ends = {row.name: row.value.nominal for row in answer.quantities}
    at = 2 * focal + focal**2 / abs(error) + abs(error)
    assert ends["scale_mark_mm" if error < 0 else "far_from_sensor_mm"] == pytest.approx(at, rel=0.01)


@pytest.mark.parametrize(("sharp", "at_one"), [(4600, 1030), (3500, 969)])
def test_the_talk_goes_on_with_that_error(desk: Desk, sharp: float, at_one: float) -> None:
    talk = Talk()
    desk.ask(f"35mm set to the 4 m mark is sharp at {sharp / 1000:g} m from the sensor. infinity ok?", talk)
    then = desk.ask("set at 1m then, where is it really", talk)
    real = [row.value.nominal for row in then.quantities if row.name == "focus_from_sensor_mm"]
    assert pytest.approx(at_one, rel=0.005) in real
    other = desk.ask("85mm on the very same ring", talk)
    off = _off(35, 4000, sharp)
    name = "scale_mark_mm" if off < 0 else "far_from_sensor_mm"
    ends = [row.value.nominal for row in other.quantities if row.name == name]
    assert ends == [pytest.approx(170 + 85**2 / abs(off) + abs(off), rel=0.02)]


def test_infinity_found_at_a_mark_is_infinity(desk: Desk) -> None:
    answer = desk.ask("the moon is sharp at the 20 m mark of my 50. is that infinity or am i wrong")
    (chain,) = answer.chains or ()
    assert chain.listed.judged.verdict == "infinity"
    assert answer.lines[0].text.startswith("Infinity is there")
