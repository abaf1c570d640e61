"""What a word means to the user: 'by S I mean M12', 'when I say 42 mm screw I mean T2', 'forget what I mean by S'."""

from __future__ import annotations

import re
from typing import Final

from grammar.atoms import key_of
from grammar.lexicon import Lexicon
from grammar.questions import Question, Taught, Unread

SECTION: Final = "shared"
_SAYS: Final = re.compile(
    r"(?:by|with|when(?:ever)? i say|if i say)\s+['\"]?(?P<word>[\w .,/-]{1,30}?)['\"]?,?\s+"
    r"i (?:always )?mean\s+(?:an? |the )?(?P<mount>.+)",
    re.IGNORECASE,
)
_FORGETS: Final = re.compile(r"forget what i mean by\s+['\"]?(?P<word>[\w .,/-]{1,30}?)['\"]?", re.IGNORECASE)


def named(text: str, line: str, lexicon: Lexicon) -> Question | Unread | None:
    """The statement that a word means a mount, or that it no longer does; None where the line says neither."""
    forgotten = _FORGETS.fullmatch(line)
    if forgotten is not None:
        word = forgotten["word"]
        return Question(text, "forget", taught=Taught(SECTION, f"my-{key_of(word)}", word))
    said = _SAYS.fullmatch(line)
    if said is None:
        return None
    name = re.sub(r"\s+(?:lens|body|mount|one)$", "", said["mount"].strip(), flags=re.IGNORECASE)
    hit = next((lexicon.names[key] for key in (key_of(said["mount"]), key_of(name)) if key in lexicon.names), None)
    if hit is None or hit[1] != "mount":
        near = lexicon.nearest(name, ("mount",))
        return Unread(text, line.find(name) + 1, name, "the name of a mount", near[0] if near else None)
    word = said["word"]
    fields = (("says", word), ("mounts", hit[2]))
    return Question(text, "teach", taught=Taught(SECTION, f"my-{key_of(word)}", word, fields))
