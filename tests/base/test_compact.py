"""Small value classes do what the standard dataclass does, for their first values and for later ones."""

from __future__ import annotations

from dataclasses import dataclass
from dataclasses import field as standard_field
from typing import Any

import pytest

from engine.base import compact as module
from engine.base.compact import compact, field, fields, replace


def pair() -> tuple[Any, Any]:
    """The same class made by ours and by the standard decorator."""

    @compact
    class Ours:
        first: int
        second: str = "b"
        third: list[int] = field(default_factory=list)
        aside: int = field(default=0, compare=False)

        def __post_init__(self) -> None:
            if self.first < 0:
                raise ValueError("below 0")

    @dataclass(frozen=True, slots=True)
    class Standard:
        first: int
        second: str = "b"
        third: list[int] = standard_field(default_factory=list)
        aside: int = standard_field(default=0, compare=False)

        def __post_init__(self) -> None:
            if self.first < 0:
                raise ValueError("below 0")

    return Ours, Standard


CALLS: list[tuple[tuple[Any, ...], dict[str, Any]]] = [
    ((1,), {}), ((1, "x"), {}), ((1,), {"aside": 3}), ((), {"second": "y", "first": 2}), ((1, "x", [4], 5), {}),
    ((), {}), ((1, 2, 3, 4, 5), {}), ((1,), {"first": 2}), ((1,), {"fourth": 2}), ((), {"second": "y"}), ((-1,), {}),
]  # fmt: skip


def outcome(cls: Any, given: tuple[Any, ...], named: dict[str, Any]) -> Any:
    try:
        one = cls(*given, **named)
    except (TypeError, ValueError) as error:
        return type(error)
    return one.first, one.second, one.third, one.aside


@pytest.mark.parametrize(("given", "named"), CALLS)
@pytest.mark.parametrize("made_before", [0, 1, 500])
def test_values_are_made_as_the_standard_makes_them(
    made_before: int, given: tuple[Any, ...], named: dict[str, Any]
) -> None:
    ours, standard = pair()
    for number in range(made_before):
        assert ours(number).first == number
    assert (ours.__init__ is not module._first_init) == (made_before == 500)
    assert outcome(ours, given, named) == outcome(standard, given, named)
    assert ours(3) == ours(3)


def test_a_refused_value_leaves_the_class_as_good_as_before() -> None:
    ours, _ = pair()
    with pytest.raises(TypeError, match="missing 1 required positional argument: 'first'"):
        ours()
    assert ours(1).third is not ours(1).third
    assert replace(ours(1, "x"), first=2) == ours(2, "x")


def test_values_are_frozen_slotted_and_compared_by_what_counts() -> None:
    ours, _ = pair()
    one = ours(1, aside=2)
    with pytest.raises(AttributeError, match="cannot assign to 'first'"):
        one.first = 3
    assert not hasattr(one, "__dict__")
    assert one == ours(1, aside=5)
    assert [row.name for row in fields(ours)] == ["first", "second", "third", "aside"]
    assert repr(one).endswith("(first=1, second='b', third=[], aside=2)")


def test_a_class_that_is_not_frozen_can_be_changed_from_its_first_value_on() -> None:
    @compact(frozen=False)
    class Loose:
        first: int = 1

    one = Loose()
    one.first = 2
    assert one == Loose(2)
