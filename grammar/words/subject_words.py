"""What a text is about, as a set of stems: words that say nothing left out, words that mean the same made one."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from typing import Final

# words of the language that say nothing of a subject
_EMPTY: Final = (
    "a about after all also am an and any anyone anything are as at be because been before being both but by can cant",
    "could did do does doing dont each even ever for from get gets getting give go goes going got had has have he help",
    "her here hi his how i if im in into is isnt it its ive just know like made make me mine more most much my need no",
    "not now of ok on one only onto or other our out over please put same say says she should so some still such",
    "take than thanks that the their them then there these they thing things this those though thru to too try u up us",
    "use used using very want was way we well were what whats when where which while who why will with without wont",
    "would yes you your lens lenses camera cameras body bodies mount mounts mm full f small old new use works work",
    "come comes hows whys reason cause causes anyway really look looks seems every everything always never bit",
    "set sets setting settings",
    "risk risky risks safe safely safety danger dangerous worry worried problem problems trouble idea happen happens",
    "explain mean means meaning tell anybody somebody okay alright",
    "good bad nice two three first last time since whenever w ur dont doesnt didnt thought around ones",
    "must may might shall off cam cams right something nothing somehow whatever enough many few instead else again",
    "already later soon today rather quite sure thats theres youre ive hes shes whos came went gave gives giving",
    "makes making made keep keeps takes taken took wants wanted needs needed asks asked asking told telling saying",
    "people nobody man guy guys folks friend friends strange strangely odd weird funny honest honestly anyhow anyway",
    "ready certain certainly offer offers offered across along toward towards until till next own ago day days",
)
EMPTY: Final = frozenset(word for line in _EMPTY for word in line.split())
_WORD: Final = re.compile(r"[a-z0-9]+(?:[./][0-9]+)*")
_STOP: Final = re.compile(r"[ft]/?[0-7](?:\.\d+)?")  # f/1.4 says nothing of a subject, as f/22 does
# '9 meters' is a distance, and nothing that meters
_LENGTH: Final = re.compile(r"(?<![a-z0-9])(\d+(?:\.\d+)?) ?(?:met(?:er|re)s?|feet|foot)(?![a-z])")
_LETTER: Final = re.compile(r"[a-z]")
# endings that change nothing of what a word is about, longest first
_ENDINGS: Final = ("ations", "ation", "ingly", "iness", "ings", "ment", "ness", "ions", "ing", "ion", "ies", "ers",
                   "est", "ed", "es", "er", "ly", "s", "y", "e")  # fmt: skip

Classes = Mapping[str, str]  # a word -> the stem that stands for all that mean the same


def stem(word: str) -> str:
    """A word without its ending, so that 'stuck', 'sticking' differ but 'shims', 'shimming' do not."""
    for ending in _ENDINGS:
        if word.endswith(ending) and len(word) - len(ending) >= 3:
            word = word[: -len(ending)]
            break
    return word[:-1] if len(word) > 3 and word[-1] == word[-2] else word


def classes_of(rows: Iterable[tuple[str, ...]]) -> dict[str, str]:
    """The first word of each row stands for the others; a stem stands as its word does."""
    out: dict[str, str] = {}
    for row in rows:
        first = stem(row[0])
        for word in row:
            out[word] = first
        for word in row:
            out.setdefault(stem(word), first)
    return out


def stems(text: str, classes: Classes) -> frozenset[str]:
    """The stems of the words that say something."""
    return frozenset(stem_of(word, classes) for word in words_of(text))


def stem_of(word: str, classes: Classes) -> str:
    return classes.get(word) or classes.get(stem(word)) or stem(word)


def words_of(text: str) -> list[str]:
    """The words that say something, apostrophes dropped."""
    flat = text.casefold().replace("'", "").replace("’", "").replace("-", " ")
    flat = _LENGTH.sub(r"\1", flat)
    words = (word for word in _WORD.findall(flat) if word not in EMPTY and len(word) > 1)
    return [word for word in words if _LETTER.search(word) and not _STOP.fullmatch(word)]
