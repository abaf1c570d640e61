"""Which single letters are mounts: 'C' in 'C lens' or 'C + LTM', never the 'a' of 'a lens'."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from grammar.things.letters_by_numbers import ARTICLES, UNITS, is_put_on_mount, is_told_by_numbers
from grammar.things.standins import STANDIN
from grammar.words.groups import ADDED, DIAL, F_NUMBER, FITTING, LIKENING, SIDE
from grammar.words.nearest import distance
from grammar.words.tokens import Token

_HEADS: Final = frozenset(["LENS", "KIND", "BODY", "PIECE", "MOUNTWORD", "MADE", "TRAIT"])
_BEFORE: Final = frozenset(["on", "to", "from", "via", "for", "made-for", "of", "behind"])
_AMONG: Final = frozenset(["and", "or", "vs", "+", "&", "/", "-", "to", "versus", ","])
_BEFORE_MADE: Final = frozenset(["DET", "VERB", "PREP", "BODY", "COMBO", "FNUM", "LENGTH"])
_SMALL: Final = frozenset(["FILLER", "JOIN", "STOP", "VERB", "CUE"])
_STOPS: Final = frozenset(["f", "t"])  # letters of stops
_NO_MOUNT: Final = ARTICLES | UNITS | {"d"}  # small words and units, whatever stands behind
_PLURALS: Final = frozenset(["s", "t"])  # 'm42 s': the end of a word that was parted
_NOT: Final = "not"
_MOUNT: Final = "mount"
_SAYS: Final = "says"


def settled(tokens: tuple[Token, ...]) -> list[Token]:
    """The tokens with every LETTER decided: MOUNT where it stands as a mount does, else a word that is passed over."""
    out = [_word(token) if _is_article(tokens, at) else token for at, token in enumerate(tokens)]
    out = [token.as_("JOIN", value="vs") if _is_against(tokens, at) else token for at, token in enumerate(out)]
    out = [_word(token) if _is_of_model(tokens, at) else token for at, token in enumerate(out)]
    changed = True
    while changed:
        changed = False
        for at, token in enumerate(out):
            if token.kind == "LETTER" and _stands_as_mount(out, at):
                out[at] = token.as_("MOUNT")
                changed = True
    return [_word(token) if token.kind == "LETTER" else token for token in out]


def is_row(tokens: Sequence[Token], column: int, length: int) -> bool:
    """'F, FD lenses': what stands there are mounts side by side, though together they spell a term."""
    within = [token for token in tokens if column <= token.column < column + length and token.kind != "JOIN"]
    return len(within) > 1 and all(token.kind in ("LETTER", "MOUNT") for token in within)


def _is_against(tokens: tuple[Token, ...], at: int) -> bool:
    """'m42 v t2': a small 'v' between two mounts sets one against the other."""
    beside = (tokens[at - 1], tokens[at + 1]) if 0 < at < len(tokens) - 1 else ()
    return tokens[at].text == "v" and tokens[at].kind == "LETTER" and [one.kind for one in beside] == ["MOUNT"] * 2


def _is_article(tokens: tuple[Token, ...], at: int) -> bool:
    """A small 'a' that no hyphen joins to what follows."""
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    return tokens[at].kind == "LETTER" and tokens[at].text == "a" and (after is None or after.text != "-")


def _is_of_model(tokens: tuple[Token, ...], at: int) -> bool:
    """'a kestrel x-t something': behind a maker's name and a letter with a hyphen, the next letter is of a model."""
    led = [one.kind for one in tokens[at - 3 : at]] if at > 2 else []
    joined = led == ["UNKNOWN", "LETTER", "MARK"] and not tokens[at].gap and tokens[at - 1].text == "-"
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    return joined and tokens[at].kind == "LETTER" and (after is None or after.kind not in ("PIECE", "LENS"))


def _word(token: Token) -> Token:
    return token.as_("DET" if token.text.casefold() == "a" else "FILLER", ids=())


def _stands_as_mount(tokens: list[Token], at: int) -> bool:
    token = tokens[at]
    before = tokens[at - 1] if at else None
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    hyphened = after is not None and after.text == "-" and not after.gap
    follows = tokens[at + 2] if hyphened and at + 2 < len(tokens) else after
    headed = follows is not None and (follows.kind in _HEADS or STANDIN in follows.implies or SIDE in follows.groups)
    if hyphened and follows is not None and follows.kind == "UNKNOWN" and _is_slip_of_mount(follows.text):
        return True
    if token.text.casefold() in _STOPS and after is not None and F_NUMBER in after.groups:
        return False  # 'f number', 'T stop'
    had = before is not None and before.value == "with" and at > 1 and tokens[at - 2].kind == "BODY"
    if had and token.text.casefold() not in ARTICLES and (after is None or after.kind in ("STOP", "JOIN")):
        return True  # 'if i get a mirrorless with z'
    near = tokens[at + 1 : at + 4]
    parted = next((n for n, one in enumerate(near) if one.text == "," or one.kind == "STOP"), len(near))
    if any(DIAL in one.groups for one in near[:parted]):
        return False  # 'A or M mode'
    if token.text in ("a", "i", "I"):
        return token.text == "a" and hyphened and follows is not None and follows.kind == "MOUNTWORD"
    if token.text == "A":
        named = headed and follows is not None and follows.kind in ("MOUNTWORD", "LENS", "BODY")
        numbered = after is not None and after.kind in ("NUMBER", "LENGTH", "COMBO")
        if numbered and before is not None and before.text.casefold() == "an" and not _shouted(tokens):
            return True  # 'an A 300': no word follows 'an' as an article
        opened = before is not None and (before.kind == "DET" or before.value in _BEFORE)
        return (
            (named and (opened or hyphened) and not _shouted(tokens)) or _among(tokens, at) or _in_brackets(tokens, at)
        )
    opening = before is not None and at > 1 and before.gap  # "'X to E adapter'" is set in quotes
    if before is not None and ((before.text in ("'", "’") and not (opening or at == 1)) or _is_of_a_name(tokens, at)):
        return False
    if len(token.text) == 1 and token.text.isupper() and not _shouted(tokens):
        return True
    if headed and not (before is not None and before.kind == "NUMBER" and not token.gap):
        return token.text.casefold() not in ("s", "t", "d") or before is None or before.kind != "FILLER" or token.gap
    stands = (
        _among, _in_row, _placed, _in_brackets, _made, _told, _alone, _ends_a_phrase, _behind_format, _likened,
        _put_instead, _fitting, _denied, _of_ring, _ends_pair, is_put_on_mount,
    )  # fmt: skip
    return is_told_by_numbers(tokens, at) or any(one(tokens, at) for one in stands)


def _is_of_a_name(tokens: list[Token], at: int) -> bool:
    """'a soandso R with RF mount': behind a word that nothing knows it is a part of that name, if a mount follows."""
    ahead = tokens[at + 1 : at + 5]
    led = at > 0 and tokens[at - 1].kind == "UNKNOWN" and bool(ahead) and ahead[0].value == "with"
    return led and any(one.kind in ("MOUNT", "LETTER") for one in ahead[1:])


def _fitting(tokens: list[Token], at: int) -> bool:
    """'does m42 fit z', 'will f fit rf': at one side of a word of fitting, a mount at the other."""
    before, after = tokens[at - 1] if at else None, tokens[at + 1] if at + 1 < len(tokens) else None
    if tokens[at].text.casefold() in ARTICLES:
        return False
    ends = (after is None or after.kind in ("STOP", "JOIN")) and before is not None and FITTING in before.groups
    if ends:
        return at > 1 and any(_may_be_mount(one) for one in tokens[max(0, at - 4) : at - 1])
    begins = after is not None and FITTING in after.groups and tokens[at].gap
    return begins and any(_may_be_mount(one) for one in tokens[at + 2 : at + 4])


def _of_ring(tokens: list[Token], at: int) -> bool:
    """'my z m42 ring': right before the other mount of a ring."""
    ring = [one.kind for one in tokens[at + 1 : at + 3]] == ["MOUNT", "PIECE"]
    opened = at == 0 or tokens[at - 1].kind in ("DET", "PREP", "STOP", "JOIN")
    return ring and opened and tokens[at].gap and tokens[at].text.casefold() not in _NO_MOUNT


def _ends_pair(tokens: list[Token], at: int) -> bool:
    """'right for m42 e?': right behind the one mount, where the phrase ends."""
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    ends = after is None or after.kind == "STOP"
    letter = tokens[at].text.casefold()
    behind = at > 0 and tokens[at - 1].kind == "MOUNT" and tokens[at].gap
    return ends and behind and letter not in _NO_MOUNT and letter not in _PLURALS


def _denied(tokens: list[Token], at: int) -> bool:
    """'why not c', 'not z?': all that stands behind the word that denies it."""
    ends = at + 1 == len(tokens) or tokens[at + 1].kind == "STOP"
    denied = at > 0 and tokens[at - 1].kind == "VERB" and tokens[at - 1].value == _NOT
    return ends and denied and tokens[at].text.casefold() not in ARTICLES


def _may_be_mount(token: Token) -> bool:
    return token.kind == "MOUNT" or (token.kind == "LETTER" and token.text.casefold() not in ARTICLES)


def _put_instead(tokens: list[Token], at: int) -> bool:
    """'my e instead', 'z instead': put in another's place by itself."""
    before, after = tokens[at - 1] if at else None, tokens[at + 1] if at + 1 < len(tokens) else None
    ends = at + 2 >= len(tokens) or tokens[at + 2].kind in ("STOP", "MARK")
    opened = before is None or before.kind in ("DET", "UNKNOWN", "FILLER", "JOIN")
    put = after is not None and after.kind == "CUE" and after.text.casefold() == "instead"
    return put and ends and opened and tokens[at].text.casefold() not in ARTICLES


def _is_slip_of_mount(word: str) -> bool:
    """'e-mont': what is joined to the letter was meant to say that it is a mount."""
    return distance(word.casefold(), _MOUNT) <= 1


def _likened(tokens: list[Token], at: int) -> bool:
    """'is cs just c', 'can ltm be confused with m', 'k = sa?': likened to another mount, at an end of the phrase."""
    before, after = tokens[at - 1] if at else None, tokens[at + 1] if at + 1 < len(tokens) else None
    ends = (after is None or after.kind == "STOP") and before is not None and LIKENING in before.groups
    begins = (before is None or before.kind == "VERB") and after is not None and LIKENING in after.groups
    rest = (*tokens[:at], *tokens[at + 1 :])
    return (ends or begins) and any(token.kind == "MOUNT" for token in rest)


def _in_row(tokens: list[Token], at: int) -> bool:
    """'m42 k om fd': right between two mounts."""
    return 0 < at < len(tokens) - 1 and tokens[at - 1].kind == tokens[at + 1].kind == "MOUNT" and tokens[at].gap


def _placed(tokens: list[Token], at: int) -> bool:
    """'on e', 'onto my k': after a word of place, perhaps with an article or a maker's name between."""
    back = at - 1
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    ends = after is None or after.kind == "STOP" or after.text == "," or ADDED in after.groups
    if ends and back > 0 and tokens[back].text == "/" and tokens[back].gap and tokens[at].gap:
        return any(one.kind == "LENS" or one.value.endswith("mount") for one in tokens[:back])  # '50 M42 lens / z'
    ends = ends and tokens[at].text.casefold() not in UNITS
    made = back >= 0 and tokens[back].kind == "UNKNOWN"
    if made:
        back -= 1  # a maker's name before a designation is passed over
    while back >= 0 and tokens[back].kind == "DET" and (made or ends or tokens[back].text.casefold() not in ARTICLES):
        back -= 1
    return back >= 0 and tokens[back].kind == "PREP" and tokens[back].value in _BEFORE


def _made(tokens: list[Token], at: int) -> bool:
    """'i have a kestrel z', 'body is kestrel z': behind an unknown name that is opened, at the end of a phrase."""
    if at < 2 or tokens[at - 1].kind != "UNKNOWN" or not tokens[at].gap:
        return False
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    ends = after is None or after.kind in ("STOP", "JOIN", "PREP", "VERB")
    if tokens[at - 2].kind == "JOIN" and _of_bodies(tokens[: at - 2]):
        return ends or (after is not None and after.kind == "FILLER")  # 'bodies: kestrel e now, avocet z later'
    alone = tokens[at - 2].kind == "STOP" and (after is None or after.kind == "STOP")  # '... a ring. kestrel e. ok?'
    return alone or (ends and tokens[at - 2].kind in _BEFORE_MADE)


def _of_bodies(tokens: list[Token]) -> bool:
    """Whether bodies are spoken of, and no lens since."""
    told = [token.kind for token in tokens if token.kind in ("BODY", "LENS", "COMBO", "LENGTH")]
    return bool(told) and told[-1] == "BODY"


def _in_brackets(tokens: list[Token], at: int) -> bool:
    """'my body (z)': alone in brackets behind what it is told of."""
    if not 1 < at < len(tokens) - 1 or (tokens[at - 1].text, tokens[at + 1].text) != ("(", ")"):
        return False
    return any(token.kind in ("BODY", "LENS", "UNKNOWN", "STRANGE") for token in tokens[at - 3 : at - 1])


def _told(tokens: list[Token], at: int) -> bool:
    """'the body is a z', 'if it really is c and not cs': said of something, at the end of a phrase."""
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    passed = tokens[:at]
    while passed and not _is_be(passed[-1]) and passed[-1].kind in ("FILLER", "DET", "VERB"):
        passed = passed[:-1]
    engraved = bool(passed) and passed[-1].text.casefold() == _SAYS  # 'the next says d on it'
    ends = after is None or after.kind in ("STOP", "JOIN", "VERB") or (engraved and after.kind in ("PREP", "MEASURE"))
    return ends and bool(passed) and _is_be(passed[-1])


def _alone(tokens: list[Token], at: int) -> bool:
    """'how about d', 'and z?': all that a line of small words ends in."""
    if not 0 < at <= 3 or tokens[at].text.casefold() in UNITS or tokens[at - 1].kind not in ("FILLER", "JOIN"):
        return False
    return all(one.kind == "STOP" for one in tokens[at + 1 :]) and all(one.kind in _SMALL for one in tokens[:at])


def _behind_format(tokens: list[Token], at: int) -> bool:
    """'and aps-c e?', 'body e and om lenses', 'a kestrel z full frame': beside a format, behind a body."""
    before, after = tokens[at - 1] if at else None, tokens[at + 1] if at + 1 < len(tokens) else None
    ends = after is None or after.kind in ("STOP", "PREP", "JOIN")
    named = before is not None and before.kind in ("FORMAT", "BODY") and tokens[at].text.casefold() not in ARTICLES
    opened = before is not None and before.kind in ("DET", "UNKNOWN", "BODY") and after is not None
    framed = opened and after is not None and after.kind == "FORMAT" and tokens[at].text.casefold() not in _NO_MOUNT
    return ((named and ends) or framed) and tokens[at].gap


def _is_be(token: Token) -> bool:
    return (token.kind == "VERB" and token.value == "be") or (token.kind == "DET" and token.value == "its")


def _ends_a_phrase(tokens: list[Token], at: int) -> bool:
    """'... just got a z.': after an article at the end of a phrase, where another mount is spoken of."""
    before, after = tokens[at - 1] if at else None, tokens[at + 1] if at + 1 < len(tokens) else None
    opened = before is not None and (before.kind == "DET" or before.value == "not")
    if not opened or not (after is None or after.kind in ("STOP", "JOIN")):
        return False
    return any(token.kind in ("MOUNT", "BODY", "LENS", "MOUNTWORD") for token in tokens) or _only_one(tokens)


def _only_one(tokens: list[Token]) -> bool:
    """'it's a z': nothing but small words beside it."""
    rest = [token for token in tokens if token.kind not in ("DET", "VERB", "FILLER", "STOP", "JOIN", "MARK")]
    return len(rest) == 1


def _among(tokens: list[Token], at: int) -> bool:
    """'C + LTM', 'd-to-c', 'C or CS': a mount stands beside it, joined by a mark or a small word."""
    for step in (1, -1):
        one = at + step
        seen = False
        while 0 <= one < len(tokens) and (tokens[one].text.casefold() in _AMONG or tokens[one].value == "to"):
            seen = True
            one += step
        if seen and 0 <= one < len(tokens):
            other = tokens[one]
            if other.kind == "MOUNT" or (other.kind == "LETTER" and other.text.casefold() not in ARTICLES):
                return True
    return False


def _shouted(tokens: list[Token]) -> bool:
    """Whether the whole line is in capitals, so that a capital tells nothing."""
    words = [token.text for token in tokens if token.text.isalpha() and len(token.text) > 2]
    return bool(words) and all(word.isupper() for word in words)
