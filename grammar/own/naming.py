"""What a word means to the user: 'by S I mean M12', 'when I say 42 mm screw I mean T2', 'forget what I mean by S'."""

from __future__ import annotations

import re
from typing import Final

from grammar.questions import Question, Taught, Unread
from grammar.words.atoms import key_of
from grammar.words.lexicon import Lexicon
from grammar.words.tokens import tokens_of

SECTION: Final = "shared"
_SAYS: Final = re.compile(
    r"(?:by|with|when(?:ever)? i say|if i say)\s+['\"]?(?P<word>[\w .,/-]{1,30}?)['\"]?,?\s+"
    r"i (?:always )?mean\s+(?:an? |the )?(?P<mount>.+)",
    re.IGNORECASE,
)
_FORGETS: Final = re.compile(r"forget what i mean by\s+['\"]?(?P<word>[\w .,/-]{1,30}?)['\"]?", re.IGNORECASE)


def tells_a_meaning(text: str) -> bool:
    """Whether the line has the form of such a statement, whatever word and mount stand in it."""
    line = text.strip()
    return _SAYS.fullmatch(line) is not None or _FORGETS.fullmatch(line) is not None


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
    word = said["word"].strip(" ,")
    for part in re.split(r",\s*", word):
        why = _read_as(part, lexicon)
        if why is not None:
            found = f"{part or said['word']}, {why}"
            return Unread(text, said.start("word") + 1, found, "a word that nothing else reads")
    fields = (("says", word), ("mounts", hit[2]))
    return Question(text, "teach", taught=Taught(SECTION, f"my-{key_of(word)}", word, fields))


def _read_as(word: str, lexicon: Lexicon) -> str | None:
    """What else the word is read as, so that it cannot be given a meaning; None where it can."""
    key, words = key_of(word), lexicon.words
    hit = lexicon.names.get(key)
    if hit is not None and hit[2] in lexicon.own:
        return f"{'an' if hit[1] == 'adapter' else 'a'} {hit[1]} of your own"
    if hit is not None and hit[1] == "mount" and key in lexicon.several:
        return None
    if hit is not None:
        return f"the name of one {hit[1]}"
    if not word[:1].isalpha():
        return "no word that begins with a letter"
    line = tokens_of(word, lexicon)
    spoken = line.cues or line.spoken or key in words.teaching or key in words.orders or key in words.sifting
    known = any(part in words.sift_words for part in word.casefold().split())
    if spoken or known or any(token.kind != "UNKNOWN" for token in line.tokens if token.kind != "MARK"):
        return "a word that questions are put in"
    return None
