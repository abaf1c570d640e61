"""The words that numbers are told in, by what each is in a number: units, tens, parts, shares of a second."""

from __future__ import annotations

from typing import Final

from engine.base.compact import compact, field

UNIT: Final = "unit"
TEN: Final = "ten"
PART: Final = "part"  # what divides: 'three eighths'
SHARE: Final = "share"  # of a second: 'a fiftieth'
CLASSES: Final = (UNIT, TEN, PART, SHARE)


@compact(frozen=False)
class Numerals:
    """Each word with its number, by class, the words in the order of the word list."""

    of_class: dict[str, dict[str, int]] = field(default_factory=lambda: {name: {} for name in CLASSES})

    def add(self, name: str, number: int, words: tuple[str, ...]) -> None:
        self.of_class[name].update(dict.fromkeys(words, number))

    @property
    def words(self) -> frozenset[str]:
        return frozenset(word for words in self.of_class.values() for word in words)

    def counted(self, word: str) -> int | None:
        """The count that one word or figure tells: 'three', '3'."""
        return int(word) if word.isdecimal() else self.of_class[UNIT].get(word)
