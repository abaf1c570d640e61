"""Which groups a word or a phrase is of, as they stand in kb/words; their names are in `groups.py`."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Final

from engine.base.compact import compact, field

_MOST_KNOWN: Final = 2000  # texts kept with their groups
_BEGINS: Final = "*"  # at the end of a word of a group: all that begins so


@compact(frozen=False)
class Groups:
    """Which groups a word or phrase is of: by itself, and by what it begins with."""

    words: dict[str, tuple[str, ...]] = field(default_factory=dict)
    begins: dict[str, tuple[str, ...]] = field(default_factory=dict)
    # of texts asked of before
    known: dict[str, tuple[str, ...]] = field(default_factory=dict, compare=False)

    def add(self, group: str, words: Iterable[str]) -> None:
        self.known.clear()
        for word in words:
            table = self.begins if word.endswith(_BEGINS) else self.words
            text = word.casefold().removesuffix(_BEGINS)
            table[text] = (*table.get(text, ()), group)

    def of(self, text: str) -> tuple[str, ...]:
        """The groups of a text as it is typed."""
        found = self.known.get(text)
        if found is None:
            if len(self.known) >= _MOST_KNOWN:
                self.known.clear()  # what is typed in a long talk does not pile up
            folded = text.casefold()
            begins = (groups for begin, groups in self.begins.items() if folded.startswith(begin))
            found = (*self.words.get(folded, ()), *(group for groups in begins for group in groups))
            self.known[text] = found
        return found

    def words_of(self, group: str) -> tuple[str, ...]:
        """The words and phrases of a group, the longest first; those that are told by their beginning left out."""
        return tuple(sorted((word for word, groups in self.words.items() if group in groups), key=len, reverse=True))

    def one_of(self, group: str) -> str:
        """The same as a part of a pattern."""
        return f"(?:{'|'.join(map(re.escape, self.words_of(group))) or '(?!)'})"

    def behind(self, group: str, text: str) -> str:
        """The text behind its first word, where that is one of the group; else the whole."""
        first, _, rest = text.partition(" ")
        return rest if group in self.of(first) else text

    def core(self, text: str, led: str, ends: str) -> str:
        """What is left of a text without the words of the one group that lead it, and of the other that end it."""
        held = re.fullmatch(rf"(?:{self.one_of(led)} )*(.*?)(?: {self.one_of(ends)})*", text)
        return held[1] if held is not None else text

    def __repr__(self) -> str:
        return "Groups(...)"  # they stand in every token, and tell nothing of it


NO_GROUPS: Final = Groups()
