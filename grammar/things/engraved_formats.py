"""The format that a lens is made for, read off the lens: '16 mm lens, says 1" on it', 'with 2/3" printed on it'."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

_SAYS: Final = "does"  # value of 'says', 'shows'
_NOMINAL: Final = "nominal"  # value of 'the box says', 'sold as'
_BEARS: Final = "bears"  # value of 'stamped', 'labelled'
_SAYING: Final = frozenset([_SAYS, _BEARS])
_READ: Final = frozenset(["mark", "size", "nominal"])  # 'marked', 'engraved', 'reads', 'the box says'
_WITH: Final = "with"
_BY_SENSOR: Final = frozenset(["cctv", "machine-vision"])  # kinds of lens that are called by the sensor they are for
_MADE_FOR: Final = "made-for"
_IT: Final = "it"
_HALF: Final = "1/2"
_OF_LENS: Final = frozenset(["LENS", "KIND", "MOUNT"])
_OF_CIRCLE: Final = frozenset(["cover", "vignette"])  # cues
_CIRCLE: Final = "circle"
_ITS: Final = ("its", "it's")
_LIT: Final = ("FRAME", "BODY")
_TO_CIRCLE: Final = frozenset([_CIRCLE, "be", "for", "of"])  # values of what leads from the word to its figure
_SAME: Final = 0.04  # '25 mm' and '1 inch' are one focal length
_FOCALS: Final = ("LENGTH", "COMBO", "RANGE", "FOCAL")


def with_formats_engraved(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """A figure of a sensor that stands on a lens becomes the FORMAT that it is made for; what led to it goes.

    `told`: what the cues of the line tell.
    """
    out: list[Token] = []
    skip = 0
    for at, token in enumerate(tokens):
        if skip:
            skip -= 1
            continue
        if (token.kind == "FORMAT" or _is_inch_type(token)) and _is_marked_for(out):
            del out[-2:]
            out += [Token("PREP", "for", token.column, value=_MADE_FOR), token.as_("FORMAT")]
            continue
        if lens_is := _lens_is(tokens, at):
            del out[-lens_is:]
            out += [Token("PREP", "for", token.column, value=_MADE_FOR), token.as_("FORMAT")]
            continue
        if _is_circle_for(tokens, at):
            lens: list[Token] = []
            while out and _leads_to_circle(out[-1]):
                lens += [out[-1]] if out[-1].kind == "LENS" else []
                out.pop()
            out += lens
            out += [Token("PREP", "for", token.column, value=_MADE_FOR), token.as_("FORMAT")]
            continue
        behind = _said_behind(tokens, at)
        led = bool(out) and (_leads(out[-1]) or (behind == 1 and out[-1].value == _WITH))
        engraved = (led or bool(behind)) and _is_engraved(tokens, at, told)
        if not (_is_figure(tokens, at) or engraved) or not (led or behind or _is_called_so(out)):
            out.append(token)
            continue
        said = out.pop() if led else token
        out += [said.as_("PREP", value=_MADE_FOR), token.as_("FORMAT")]
        skip = behind
    return out


def _is_marked_for(before: list[Token]) -> bool:
    """'50mm marked for 1 inch tv cameras': no mark of a scale."""
    return len(before) > 1 and before[-1].kind == "PREP" and before[-1].value == "for" and _leads(before[-2])


def _lens_is(tokens: list[Token], at: int) -> int:
    """'my lens is a 2/3 inch type, the sensor 1/2', 'its a 2/3 ...': how many tokens say that the lens is made for it.

    A sensor is told behind it.
    """
    part = "/" in tokens[at].value and (_is_inch_type(tokens[at]) or tokens[at].kind == "FORMAT")
    if not part or not any(one.kind in _LIT for one in tokens[at + 1 :]):
        return 0
    article = int(at > 0 and tokens[at - 1].kind == "DET" and tokens[at - 1].text == "a")
    before = tokens[max(0, at - article - 2) : at - article]
    if before and before[-1].text.casefold() in _ITS and article:
        return 1 + article
    is_said = len(before) > 1 and before[-1].kind == "CUE" and before[-1].value == "be"
    if is_said and before[0].kind == "LENS":
        return 1 + article
    return 2 + article if is_said and before[0].value == _IT else 0


def _is_called_so(before: list[Token]) -> bool:
    """'a cctv lens 1", 25 mm': right behind the kind of lens that is called by it."""
    named = [one for one in before[-2:] if one.kind == "KIND" and one.value in _BY_SENSOR]
    return bool(named) and (before[-1].kind == "LENS" or before[-1] is named[-1])


def _leads(token: Token) -> bool:
    said = token.value in _SAYING or token.value == _NOMINAL
    return (token.kind == "CUE" and said) or (token.kind == "MEASURE" and token.value in _READ)


def _is_figure(tokens: list[Token], at: int) -> bool:
    """Whether it is an inch type beside what tells a lens: a focal length in mm, or a kind that goes by it."""
    token = tokens[at]
    if not _is_inch_type(token):
        return False
    focals = [one.numbers[0] for one in tokens if one.kind in _FOCALS and one is not token and one.unit in ("", "mm")]
    told = any(abs(token.numbers[0] / focal - 1) > _SAME for focal in focals if focal > 0)
    told = told or (at > 0 and _leads(tokens[at - 1]) and any(one.kind == "FRAME" for one in tokens[:at]))
    return told or any(one.kind == "KIND" and one.value in _BY_SENSOR for one in tokens)


def _is_inch_type(token: Token) -> bool:
    inches = (token.kind == "LENGTH" and token.unit == "in") or token.kind == "FRACTION"
    return inches and "format" in token.implies


def _is_engraved(tokens: list[Token], at: int, told: frozenset[str]) -> bool:
    """'cs lens marked 1/3', 'it says 1 inch on the barrel, does that cover': of a lens, and no focal length.

    A fraction of an inch is none, but for the half; where one asks what is covered nothing else is meant.
    """
    before = tokens[:at]
    of_lens = any(one.kind in _OF_LENS or one.value == _IT for one in before)
    # 'lens says 1/2" and my cam is 1/1.8"'
    other = any(one.kind == "FORMAT" or _is_inch_type(one) for one in tokens if one is not tokens[at])
    fraction = "/" in tokens[at].text and (tokens[at].value != _HALF or other)
    return _is_inch_type(tokens[at]) and ((fraction and of_lens) or bool(told & _OF_CIRCLE))


def _is_circle_for(tokens: list[Token], at: int) -> bool:
    """'the circle is for 1/2 inch', 'its image circle is 2/3"': a size of sensor there is no width of the circle."""
    first = at
    while first and _leads_to_circle(tokens[first - 1]):
        first -= 1
    led = any(one.value == _CIRCLE and one.kind == "MEASURE" for one in tokens[first:at])
    return (
        led and tokens[at - 1].value in _TO_CIRCLE and "format" in tokens[at].implies and tokens[at].unit in ("", "in")
    )


def _leads_to_circle(token: Token) -> bool:
    return token.value in _TO_CIRCLE or token.kind in ("DET", "LENS")


def _said_behind(tokens: list[Token], at: int) -> int:
    """How many tokens behind say that it stands on the lens, as 'on it', 'on the side', 'it says' do."""
    ahead = tokens[at + 1 : at + 3]
    if ahead and ((ahead[0].kind == "MEASURE" and ahead[0].value in _READ) or ahead[0].value == _BEARS):
        return 1
    words = [one.text.casefold() for one in ahead]
    if words[:1] == ["it"] and at and tokens[at - 1].value == _WITH:
        return 1  # 'with 2/3" printed on it'
    if len(ahead) < 2:
        return 0
    it_says = words[0] == "it" and ahead[1].value == _SAYS
    on_it = ahead[0].kind == "PREP" and words[0] == "on" and (words[1] == "it" or _ends_with_article(tokens, at + 2))
    return 2 if it_says or on_it else 0


def _ends_with_article(tokens: list[Token], at: int) -> bool:
    """'on the side': of which the last word has gone as one that says nothing."""
    ends = at + 1 >= len(tokens) or tokens[at + 1].kind in ("STOP", "JOIN")
    return tokens[at].kind == "DET" and ends
