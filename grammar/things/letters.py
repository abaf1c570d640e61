"""Which single letters are mounts: 'C' in 'C lens' or 'C + LTM', never the 'a' of 'a lens'."""

from __future__ import annotations

from typing import Final

from grammar.things.standins import STANDIN
from grammar.words.groups import DIAL, F_NUMBER, SIDE
from grammar.words.nearest import distance
from grammar.words.tokens import Token
from grammar.words.written import STOPS

_HEADS: Final = frozenset(["LENS", "KIND", "BODY", "PIECE", "MOUNTWORD", "MADE", "TRAIT"])
_BEFORE: Final = frozenset(["on", "to", "from", "via", "for", "made-for", "of", "behind"])
ARTICLES: Final = frozenset(["a", "i"])
_AMONG: Final = frozenset(["and", "or", "vs", "+", "&", "/", "-", "to", "versus", ","])
_BEFORE_MADE: Final = frozenset(["DET", "VERB", "PREP", "BODY", "COMBO", "FNUM", "LENGTH"])
_OPENERS: Final = frozenset(["DET", "JOIN", "STOP", "FILLER", "VERB", "MARK"])
_FIGURES: Final = frozenset(["NUMBER", "LENGTH", "COMBO"])
_SMALL: Final = frozenset(["FILLER", "JOIN", "STOP", "VERB", "CUE"])
_UNITS: Final = frozenset("fmst")  # what may as well be a stop or a unit
_STOPLIKE: Final = frozenset("fst")  # before a number it is that of a stop or of a time
_MOUNT: Final = "mount"
_SHORTEST: Final = 3.0  # mm, of a lens for a small sensor
_LEAST_FOCAL, _MOST_FOCAL = 8.0, 1200.0  # mm


def settled(tokens: tuple[Token, ...]) -> list[Token]:
    """The tokens with every LETTER decided: MOUNT where it stands as a mount does, else a word that is passed over."""
    out = [_word(token) if _is_article(tokens, at) else token for at, token in enumerate(tokens)]
    changed = True
    while changed:
        changed = False
        for at, token in enumerate(out):
            if token.kind == "LETTER" and _stands_as_mount(out, at):
                out[at] = token.as_("MOUNT")
                changed = True
    return [_word(token) if token.kind == "LETTER" else token for token in out]


def _is_article(tokens: tuple[Token, ...], at: int) -> bool:
    """A small 'a' that no hyphen joins to what follows."""
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    return tokens[at].kind == "LETTER" and tokens[at].text == "a" and (after is None or after.text != "-")


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
    if token.text.casefold() == "f" and after is not None and F_NUMBER in after.groups:
        return False
    if any(DIAL in one.groups for one in tokens[at + 1 : at + 4]):
        return False  # 'A or M mode'
    if token.text in ("a", "i", "I"):
        return token.text == "a" and hyphened and follows is not None and follows.kind == "MOUNTWORD"
    if token.text == "A":
        named = headed and follows is not None and follows.kind in ("MOUNTWORD", "LENS", "BODY")
        opened = before is not None and (before.kind == "DET" or before.value in _BEFORE)
        return (
            (named and (opened or hyphened) and not _shouted(tokens)) or _among(tokens, at) or _in_brackets(tokens, at)
        )
    if before is not None and before.text in ("'", "’"):
        return False
    if len(token.text) == 1 and token.text.isupper() and not _shouted(tokens):
        return True
    if headed and not (before is not None and before.kind == "NUMBER" and not token.gap):
        return token.text.casefold() not in ("s", "t", "d") or before is None or before.kind != "FILLER" or token.gap
    stands = (
        _among,
        _in_row,
        _placed,
        _in_brackets,
        _in_which,
        _before_focal,
        _made,
        _told,
        _alone,
        _ends_a_phrase,
        _behind_format,
        _on_a_body,
        _set_against,
        _behind_comma,
        _before_comma,
        _of_lens,
        _ends_a_row,
    )
    return any(one(tokens, at) for one in stands)


def _is_slip_of_mount(word: str) -> bool:
    """'e-mont': what is joined to the letter was meant to say that it is a mount."""
    return distance(word.casefold(), _MOUNT) <= 1


def _ends_a_row(tokens: list[Token], at: int) -> bool:
    """'my 16 and 25 c': behind the last of several bare numbers, where a phrase ends."""
    if at < 3 or tokens[at].text.casefold() in _UNITS or not tokens[at].gap:
        return False
    one, join, other = tokens[at - 3 : at]
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    figures = all(n.kind == "NUMBER" and not n.text.isalpha() and n.numbers[0] >= _LEAST_FOCAL for n in (one, other))
    return figures and join.kind == "JOIN" and (after is None or after.kind in ("STOP", "JOIN", "PREP"))


def _of_lens(tokens: list[Token], at: int) -> bool:
    """'25mm c on m43', '50 1.4 k': right behind the numbers of a lens, where a phrase ends."""
    token, before, focal = tokens[at], tokens[at - 1] if at else None, tokens[at - 2] if at > 1 else None
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    if before is None or before.kind not in ("LENGTH", "FNUM", "COMBO", "NUMBER", "TIMES") or not token.gap:
        return False
    if token.text.casefold() in _UNITS and before.kind != "TIMES":
        return False
    if after is not None and after.kind in ("NUMBER", "FNUM") and before.kind in ("LENGTH", "NUMBER"):
        return after.numbers[0] in STOPS and not after.text.isalpha() and not before.text.isalpha()
    if before.kind == "NUMBER":
        ends = after is None or after.kind in ("STOP", "JOIN", "PREP")
        whole = focal is not None and focal.kind == "LENGTH" and focal.unit == "mm"  # '35mm 2 k'
        return ("." in before.text or whole) and before.numbers[0] in STOPS and ends
    return after is None or after.kind in ("STOP", "PREP", "JOIN", "VERB", "CUE", "MEASURE")


def _behind_comma(tokens: list[Token], at: int) -> bool:
    """'28 2.8, m on z', '85/1.8 k work on z': behind the numbers of a lens, and put on something."""
    parted = at > 1 and tokens[at - 1].text == ","
    before = tokens[at - 1 - parted] if at > parted else None
    if before is None or before.kind not in ("LENGTH", "FNUM", "COMBO") or not tokens[at].gap:
        return False
    if not parted and tokens[at].text.casefold() in _UNITS:
        return False
    after = next((one for one in tokens[at + 1 :] if one.kind != "FILLER"), None)
    return after is not None and after.kind == "PREP" and after.value in ("on", "to")


def _before_comma(tokens: list[Token], at: int) -> bool:
    """'c, 75 2.5 on e': what a line begins with, before the numbers of a lens."""
    after = tokens[at + 1 : at + 3]
    if at or len(after) < 2 or after[0].text != "," or after[1].text.isalpha():
        return False
    return after[1].kind in _FIGURES and after[1].numbers[0] >= _LEAST_FOCAL


def _on_a_body(tokens: list[Token], at: int) -> bool:
    """'12.5 c on mft': behind a bare number, before the body that such a lens is put on."""
    before, rest = tokens[at - 1] if at else None, [one for one in tokens[at + 1 : at + 4] if one.kind != "DET"]
    if before is None or before.kind != "NUMBER" or before.text.isalpha() or not tokens[at].gap:
        return False
    if tokens[at].text.casefold() in _UNITS or before.numbers[0] < _SHORTEST:
        return False
    return len(rest) > 1 and rest[0].value in ("on", "to") and rest[1].kind in ("MOUNT", "LETTER", "BODY", "FORMAT")


def _set_against(tokens: list[Token], at: int) -> bool:
    """'12.5 d vs 13 c': behind a number, where another letter behind a number is set against it."""

    def told(where: int) -> bool:
        number = tokens[where - 1] if where > 0 else None
        lettered = tokens[where].kind in ("LETTER", "MOUNT") and tokens[where].text.casefold() not in ARTICLES
        return lettered and number is not None and number.kind == "NUMBER" and number.numbers[0] >= _SHORTEST

    others = [where for where in (at - 3, at + 3) if 0 <= where < len(tokens) and told(where)]
    joins = [tokens[min(at, other) + 1] for other in others]
    return told(at) and any(join.kind == "JOIN" and join.value in ("vs", "or") for join in joins)


def _in_row(tokens: list[Token], at: int) -> bool:
    """'m42 k om fd': right between two mounts."""
    return 0 < at < len(tokens) - 1 and tokens[at - 1].kind == tokens[at + 1].kind == "MOUNT" and tokens[at].gap


def _placed(tokens: list[Token], at: int) -> bool:
    """'on e', 'onto my k': after a word of place, perhaps with an article or a maker's name between."""
    back = at - 1
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    ends = after is None or after.kind == "STOP" or after.text == ","
    if ends and back > 0 and tokens[back].text == "/" and tokens[back].gap and tokens[at].gap:
        return any(one.kind == "LENS" or one.value.endswith("mount") for one in tokens[:back])  # '50 M42 lens / z'
    ends = ends and tokens[at].text.casefold() not in _UNITS
    made = back >= 0 and tokens[back].kind == "UNKNOWN"
    if made:
        back -= 1  # a maker's name before a designation is passed over
    while back >= 0 and tokens[back].kind == "DET" and (made or ends or tokens[back].text.casefold() not in ARTICLES):
        back -= 1
    return back >= 0 and tokens[back].kind == "PREP" and tokens[back].value in _BEFORE


def _in_which(tokens: list[Token], at: int) -> bool:
    """'85 f1.8 in k': the mount that a lens told by its numbers is in, where a phrase ends."""
    if at < 2 or tokens[at - 1].kind != "PREP" or tokens[at - 1].value != "in":
        return False
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    ends = after is None or after.kind in ("STOP", "JOIN", "PREP")
    return ends and tokens[at - 2].kind in ("FNUM", "COMBO", "LENGTH", "NUMBER")


def _before_focal(tokens: list[Token], at: int) -> bool:
    """'my m 35', 'k 50 on e', 'and k 135/2.8': opened as a thing is, and right before the focal length of a lens."""
    before, after = tokens[at - 1] if at else None, tokens[at + 1] if at + 1 < len(tokens) else None
    if after is None or not after.gap:
        return False
    if before is None and after.kind == "COMBO":
        return True  # 'k 135/2.5 on ...' begins with its lens, and so does 'f 35/2 on e'
    made = before is not None and before.kind == "UNKNOWN"  # a maker's name before a designation is passed over
    if tokens[at].text.casefold() in _STOPLIKE and (not made or after.numbers[:1] == () or after.numbers[0] in STOPS):
        return False
    opened = before is None or made or before.kind in _OPENERS
    opened = opened and (before is None or before.text.casefold() not in ("x", "/"))
    number = after.kind in _FIGURES and not after.text.isalpha() and after.unit in ("", "mm")
    return opened and number and _LEAST_FOCAL <= after.numbers[0] <= _MOST_FOCAL


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
    return (after is None or after.kind in ("STOP", "JOIN", "VERB")) and bool(passed) and _is_be(passed[-1])


def _alone(tokens: list[Token], at: int) -> bool:
    """'how about d', 'and z?': all that a line of small words ends in."""
    if not 0 < at <= 3 or tokens[at].text.casefold() in _UNITS or tokens[at - 1].kind not in ("FILLER", "JOIN"):
        return False
    return all(one.kind == "STOP" for one in tokens[at + 1 :]) and all(one.kind in _SMALL for one in tokens[:at])


def _behind_format(tokens: list[Token], at: int) -> bool:
    """'and aps-c e?', 'on full frame z': right behind a format, at the end of a phrase."""
    before, after = tokens[at - 1] if at else None, tokens[at + 1] if at + 1 < len(tokens) else None
    return before is not None and before.kind == "FORMAT" and (after is None or after.kind in ("STOP", "PREP", "JOIN"))


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
