"""A lens that was given another bayonet: in the plane of its old seat it is off by the difference of the registers."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from tests.desks import desk_of


@pytest.fixture(scope="module")
def desk() -> Desk:
    return desk_of()


@pytest.mark.parametrize(
    ("said", "error_mm"),
    [
        ("changed the mount of my MD 35 for a K bayonet, it sits where the MD one sat. infinity on K?", 1.96),
        ("glued an EF bayonet onto a QBM 50 in place of the old bayonet, same seat. how far does it see on EF", -0.46),
        ("the M42 thread on my 58 was replaced with an F bayonet without moving the plane, infinity on F dslr?", 1.04),
        ("my 35mm OM got an F bayonet put on in place of its own, seat at the same height. infinity?", 0.5),
        ("OM 50 with F bayonet bolted on in the plane of the old one, far on my F body?", 0.5),
        ("AR 40mm with an EF mount screwed on instead of its own, seat where the AR one was, landscapes on EF?", 3.5),
    ],
)  # fmt: skip
def test_in_the_plane_of_the_old_seat(desk: Desk, said: str, error_mm: float) -> None:
    answer = desk.ask(said)
    first = (answer.chains or ())[0].listed.judged
    assert first.trace.value("register_error_mm").shortest.nominal == pytest.approx(error_mm, abs=0.01)
    assert first.verdict == ("infinity" if error_mm < 0 else "macro-only")
    shims = [row.value.nominal for row in answer.quantities if row.name == "shim_mm"]
    assert shims == [pytest.approx(abs(error_mm), abs=0.01)]


@pytest.mark.parametrize(
    "said",
    [
        "my 50mm FD was converted to EF mount, does it hit infinity on an EF body",
        "had an EF bayonet fitted to my AR 50, nothing else told. landscapes on EF?",
    ],
)
def test_where_it_was_put_is_asked(desk: Desk, said: str) -> None:
    answer = desk.ask(said)
    assert not answer.chains
    assert any(line.kind == "ask" for line in answer.lines)


@pytest.mark.parametrize(
    "said",
    ["QBM 50 to EF, ring or is it a mount swap", "M42 lens 50 with its mount screwed on tight, E body, infinity?"],
)
def test_where_no_mount_was_changed_it_is_no_refit(desk: Desk, said: str) -> None:
    assert desk.ask(said).chains
