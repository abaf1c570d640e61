"""Numbers as people type them into a question: lengths, f-numbers, shutter times, threads ... -> kind and values."""

from __future__ import annotations

import re
from functools import cache
from typing import Final

from grammar.words import written as made
from grammar.words import written_light as lit
from grammar.words.written import Literal, Make

_REACH: Final = 32  # characters from its first that a literal has a digit within
_NUM: Final = r"(?:\d+(?:\.\d+)?|\.\d+)"
_ISH: Final = r"(?:-?ish)?"
_END: Final = r"(?![^\W_])"
_TURNED: Final = r"\s?-?(?:turn|deg|rev|°)"
_PITCH: Final = r"(?:[0-3]?\.\d+|[1-3](?:\.0+)?(?![\d.]))"  # mm
_TPI: Final = r"(?:1[68]|2[0246-8]|3[0268]|40)(?![\d.])"
_GAUGED: Final = (
    r"(?:pitch|(?:screw|thread)(?:\spitch)?\sgau?ge)(?:\sgau?ge|\s(?:on|by|from|with)\s(?:the|my|a)\s(?:\w+\s)?gau?ge)?"
    r"(?:\s(?:leaf|says|reads|shows|fits|tells|gives|matches|at)){0,3}"
)  # 'pitch', 'pitch on the gauge', 'my thread gauge fits at'
_IS: Final = r"\s?(?:of|is|=|:|looks like|seems)?\s?(?:approx\.?|about|around|roughly|ca\.?|circa|maybe|nearly|~)?\s?"
_UNIT: Final = (
    r"(?:(?P<mm>mms?|mil|millimet(?:er|re)s?)|(?P<cm>cms?|centimet(?:er|re)s?)|(?P<um>um|microns?|micrometers?)|"
    r"(?P<ft>ft|foot|feet|')|(?P<thou>thou(?:s|sandths?)?(?:\sof\san\sinch)?)|(?P<m>m|met(?:er|re)s?)|(?P<in>inch(?:es)?|in|\"|''))"
)
# 'in' set apart from its number is a unit only where the phrase ends or what is so long follows
_NOT_PLACE: Final = (
    r"(?!(?<=\sin)\s+(?!(?:wide|thick|long|deep|high|tall|across|dia\w*|extensions?|tubes?|rings?|spacers?|bellows|barrels?|threads?|"
    r"filters?|sensors?|chips?|circles?|pipes?|lens(?:es)?|telescopes?|from|away|at|by|x|of|on|off|or|and|to|is|behind|before|more|less)\b)\w)"
)
# 'M' set apart from its number is the mount where what is mounted follows, 'a 50 M lens', or an arrow or a hyphen leads
# on to another: 'the 7.8 M-L ring', 'a 9.8 m>e'
_NOT_MOUNT: Final = (
    r"(?!(?<=\sm)[ -](?:mount|lens(?:es)?|bayonet|body|bodies|glass|ring|primes?|rangefinder)\b)"
    r"(?!(?<=\sm)-\d)(?!(?<=\sm)(?:-|\s?(?:-?>|=>))\s?[a-z]{1,4}\b)(?!(?<=\s(?-i:M))\s(?:-\s?[a-z]{1,4}|(?:to|on)\s[a-z]\w{0,3})\b)"
    # '40/2 M' is a lens and its stop; '35 M goes to 0.7': no distance goes anywhere
    r"(?!(?<=\d\d/\d\sm)\b)(?!(?<=\d\d/\d\.\d\sm)\b)"
    r"(?!(?<=\d\s(?-i:M))\s(?:goes|focus+es|gets|reaches|close\w*|mfd|with|f/?\d)\b)"
)


def literal_at(line: str, at: int) -> Literal | None:
    """The literal that begins at character `at` of a smoothed line, or None. Earlier patterns win over later ones."""
    if not any(map(str.isdigit, line[at : at + _REACH])):
        return None
    first = "0" if line[at].isdigit() else line[at].lower()
    for starts, pattern, make in _WRITTEN:
        match = _compiled(pattern).match(line, at) if first in starts else None
        if match:
            literal = make(match)
            if literal is not None:
                return literal
    return None


@cache
def _compiled(pattern: str) -> re.Pattern[str]:
    # when it is first needed: all of them take longer than the rest of a question's reading
    return re.compile(pattern, re.IGNORECASE)


_ANGLE: Final = r"(?:45|72|90|120|144|150|172\.8|172|180|216|270|360)"  # of shutters, degrees
_LINES: Final = r"(?:480|576|720|1080|1440|2160|4320)"  # of a recording
_FRACTION: Final = r"(?:\d{1,2}[\s-])?\d{1,2}(?:\.\d)?/\d{1,2}(?:\.\d{1,2})?"
# the characters that a literal may begin with, 0 for any digit; its pattern; and what is made of it
_WRITTEN: Final[tuple[tuple[str, str, Make], ...]] = (
    ("m", rf"m\s?(?P<d>{_NUM})\s?(?:mm)?\s?[x*]\s?(?P<p>{_NUM})(?:\s?mm)?{_END}", made.thread_metric),
    (
        "0.",
        r"(?P<n>\d/\d{1,2}|1|0?\.\d+)\s?(?P<inch>inch|in|\"|'')?(?P<sep>\s?(?:-|x|by)\s?|\s)(?P<t>\d\d)"
        rf"(?:\s?(?:tpi|unf?|un2a))?{_END}", made.thread_inch,
    ),
    ("m0.", rf"m?(?P<d>{_NUM})\s?(?:mm)?\s?[x*-]?\s?(?P<t>\d\d)\s?(?:tpi|threads per inch){_END}", made.thread_mixed),
    ("m", rf"m(?P<d>\d\d)\s?x\s?(?P<t>2[4678]|3[26]|40){_END}", made.thread_mixed),
    ("0", rf"(?P<d>\d\d(?:\.\d+)?)\s?(?:mm)?\s?[x*]\s?(?P<p>1|[012]?\.\d+)(?:\s?mm)?{_END}", made.thread_metric),
    ("0t", r"(?:(?P<n>\d+)\s?(?:tpi|(?:threads? |turns? )?(?:to the|to an|per|an|/)\s?inch|threads/inch)"
     rf"|tpi\s?(?:of|is|=)?\s?(?P<n2>\d+)){_END}", made.per_inch),
    # what a turn moves, told before the pitch pattern would take '3 mm' of it
    (
        "0lp",
        r"(?:(?P<n>\d{1,2}(?:\.\d+)?)\s?mm\slead"
        rf"|lead{_IS}(?P<n2>\d{{1,2}}(?:\.\d+)?)\s?mm"
        rf"|(?:pitch{_IS})?(?P<n3>\d{{1,2}}(?:\.\d+)?)\s?mm\s?(?:a|per|each|every|/)\s?(?:full |whole )?(?:turn|rev\w*)"
        rf"|(?P<n4>(?:[3-9]|[1-4]\d)(?:\.\d+)?)\s?mm\s(?:of )?pitch(?!{_IS}\.?\d)){_END}",
        made.lead,
    ),
    # 'dia 38.9 pitch .98': the number behind the word, where it may be one and tells no turns: '0.5 pitch, 2 turns'
    ("0.pst", rf"(?:(?P<n>{_PITCH})\s?(?:mm)?\s?pitch(?!{_IS}{_PITCH}{_END}(?!\.\d|\s?/|{_TURNED}))|{_GAUGED}{_IS}"
     rf"(?:(?P<n2>{_PITCH})(?!\s?tpi|\s?[/-]\s?\d|\.?\d|{_TURNED})(?: ?mm)?|(?P<t>{_TPI})(?:\s?tpi)?))"
     rf"{_END}", made.pitch),
    ("0.", rf"(?P<n>[1-9]\d{{1,5}})iso{_END}", made.one("ISO")),
    ("iae", rf"(?:iso\s?[/:=]?|asa|ei)\s?(?P<n>[1-9]\d*){_END}(?!\s?/\s?\d|\s?fps|\sframes)", made.one("ISO")),
    ("el", rf"[el]v\s?(?P<n>-?\d+(?:\.\d+)?){_END}", made.one("EV")),
    (
        "n",
        r"nd[\s.-]?(?P<a>\d+(?:\.\d+)?)\s?(?:-|to|\.\.)\s?(?:nd\s?)?(?P<b>\d+(?:\.\d+)?)"
        rf"(?!\s?(?:mm|stop)){_END}", lit.nd_range,
    ),
    (
        "v",
        r"(?:variable|vari|vnd)\s(?:nd\s?|filter\s)?"
        r"(?P<a>\d+(?:\.\d+)?)\s?(?:-|to|\.\.)\s?(?:nd\s?)?(?P<b>\d+(?:\.\d+)?)"
        rf"(?!\s?-?(?:mm|stop)){_END}", lit.nd_range,
    ),
    (
        "v", r"(?:variable|vari|vnd)(?:\snd|\sfilter|\sone)?\s(?:only\s)?"
        r"(?:(?:maxes|max|tops|goes|ends|stops|does|is)\s(?:out\s|up\s|only\s)?(?:at\s|to\s)?|(?:up\s)?to\s)(?P<n>\d{1,2}(?:\.\d)?)(?:\s?-?stops?)?(?:\smax)?"
        rf"(?!\s?(?:-|to|\.\.)\s?\d){_END}", lit.nd_up_to,
    ),
    # what one division of a dial or a ring is worth
    (
        "01oea", r"(?:1|one|each|a)\s(?:division|graduation|tick|click)(?:\s[a-z]+){0,5}?\s?"
        rf"(?:is|=|equals|of|moves it|moves|of the \w+)\s(?P<n>0?\.\d+)\s?(?:mm)?{_END}", made.division,
    ),
    # the blur that is allowed: 'c = 0.02', 'coc of 0.015 mm', 'blur circle .03', '20 micron blur'
    (
        "abcp", r"(?:c\s?=|(?:coc|circles? of confusion|confusion circle|(?:allowed |permitted |acceptable )?blur"
        r"(?: circle| disc| spot)?)(?:\s(?:of|is|at|size))?\s?[=:]?)\s?(?P<n>0?\.\d+)(?:\s?mm)?"
        rf"(?!\s?(?:x|m|cm|inch|in)\b){_END}", made.blur,
    ),
    (
        "0.", r"(?P<n>0?\.0\d+|\d{1,3}(?=\s?(?:um|mic)))\s?(?P<u>mm|um|microns?|micrometers?)?\s(?:of\s)?(?:allowed\s)?"
        rf"(?:blur(?: circle)?|coc|circle of confusion|confusion){_END}", made.blur,
    ),
    ("m", rf"m\s?=\s?(?P<n>{_NUM})x?{_END}", made.magnified),
    (
        "n",
        rf"nd[\s.-]?(?P<n>\d+(?:\.\d+)?|\.\d+)(?:x|'?s)?{_END}(?!\.\d|\s?(?:/\s?\d|(?:fps|frames|mm)\b))"
        r"(?!(?<!\d\.[03689])\s?-?stops?\b|\s?(?:-|to)\s?\d+(?:\.\d+)?\s?-?stops?\b)",
        lit.nd,
    ),
    (
        "0.",
        r"(?P<n>\d?\.\d{1,2}|4|8|16|32|64|100|128|200|256|400|500|1000)x?\s?nd"
        rf"{_END}(?!\s?(?:filters|s\b|needed\b|\?))",
        lit.nd_behind,
    ),
    ("t", rf"t(?:[\s-]?stop(?:\s(?:of|is))?\s|\s?/?\s?)(?P<n>\d+(?:\.\d+)?){_END}(?!\.\d)", lit.t_stop),
    (
        "f", rf"f\s?[/:.-]?\s?(?!00)(?P<n>\d+(?:[.,]\d+)?|\.\d+)(?!\s?(?:mm\b|cm\b|\"|x\d)|in\b|[.,]?\d|:\d){_END}",
        lit.stop,
    ),
    (
        "m", r"(?:meter(?:ed)?(?:\sreading)?\s(?:says|reads|shows|gives|said|read|gave|showed|wants|is\sat|is)|"
        r"metered(?:\sat)?|metering)\s"
        rf"(?P<n>\d+(?:\.\d+)?)(?![.\d/:]|\s?(?:mm|cm|m\b|x|%|iso|ev|lv|stop|sec|s\b)){_END}", lit.stop_metered,
    ),
    ("a", rf"aperture\s(?:of\s|is\s)?(?P<n>\d+(?:\.\d+)?)(?!\s?(?:mm|cm|x)\b|[.\d]){_END}", lit.stop_named),
    (
        "f", rf"f\s?=\s?(?P<n>{_NUM})\s?(?P<u>mm|cm|inch|(?<=\d)in|in(?=\s*(?:$|[,.;?]))){_END}", made.engraved_focal,
    ),
    ("f", rf"f\s?(?P<e>=)\s?(?P<a>\d{{2,4}})(?:\s?mm)?,?\s1\s?:\s?(?P<b>\d(?:[.,]\d+)?){_END}", lit.engraved),
    ("f", rf"f\s?=\s?(?P<n>[1-9]\d{{1,2}}){_END}", made.engraved_mm),  # 'f=35': no stop is so small a hole
    ("f", rf"f\s?(?:=\s?(?:1\s?:\s?)?|1\s?:\s?)(?P<n>{_NUM})(?![\d.:/]|\s?(?:mm|cm|\"|x\d)){_END}", lit.stop_named),
    (
        "as", rf"(?:shutter\s)?angle\s(?:of\s|at\s|is\s)?(?P<n>{_ANGLE})(?!\s?(?:mm|fps|p\b|deg|°)|[.\d]){_END}",
        made.one("DEGREES"),
    ),
    (
        "irva", rf"(?:instead of|rather than|versus|vs|against)\s(?P<n>{_ANGLE})"
        rf"(?!\s?(?:mm|fps|p\b|deg|°|iso|m\b)|[.\d]){_END}", lit.other_angle,
    ),
    (
        "s", r"shutter(?:\s?speed|\sat|\stime)?\s?(?:of\s|is\s|at\s|on\s|set\sto\s|to\s|[=:]\s?)?(?P<b>\d{2,4})"
        rf"(?!\s?(?:deg|°|angle|mm|p\b|fps|s\b|sec|x\b|%)|[/\d:]|\.\d){_END}", lit.shutter_named,
    ),
    (
        "0", r"(?P<b>\d{1,4})(?:th|st|nd|rd)(?:\sof\sa\ssec(?:ond)?\b|(?<=0th)(?!\s(?:of\b|anniv|inch|mm|gen|cent))"
        rf"|(?<=125th)){_END}", lit.part_of_second,
    ),
    ("$£€", r"[$£€]\s?(?P<n>\d+(?:\.\d+)?)(?!\d)", made.one("PRICE")),
    ("0", rf"(?:{_NUM}\s?-\s?)?(?P<n>{_NUM})\s?(?:[$£€]|usd|dollars?|bucks?|quid|eur(os?)?)(?!\w)", made.one("PRICE")),
    (
        "0",
        r"(?P<n>\d+(?:\.\d+)?)\s?(?P<u>kgs?|kilos?|kilograms?|lbs?|pounds?|oz|ounces|grams?|g(?!\s?(?:-|mount|lens)))"
        rf"{_END}", made.weight,
    ),
    ("0", r"(?P<n>[4-9]\d\d)\s?(?P<u>(?-i:g))(?=\slens)", made.weight),  # no G lens is so long
    (
        "vfrst", r"(?:video|filming|filmed|rolling|recording|timeline|(?P<any>shooting))\s(?:it\s)?(?:at|in|is)\s"
        rf"(?P<n>2[45]|30|48|50|60|1[0268]0)(?!\s?(?:mm|cm|m\b|x|p|%|deg|fps|frames)|[./\d]\d|(?(any)\s?(?:iso|f/?\d)|(?!))){_END}",
        made.one("FPS"),
    ),
    # 'outside in 4k 25, bright sun'; '4k 50 f/1.4' may be a lens
    ("0", rf"(?<=(?:[468]k|hd)\s)(?P<n>2[45]|30|50|60|1[02]0)(?!\s?(?:mm|cm|[mxpf%]|deg)|[./]){_END}", made.one("FPS")),
    # '1080p': how many lines are recorded, and behind it how many frames
    ("0", rf"{_LINES}[pi]\s?(?:[@/]\s?|at\s|in\s)?(?P<n>2[345]|30|48|50|60|100|120)(?:p|fps)?{_END}", made.one("FPS")),
    ("0", rf"(?!{_LINES}p)(?P<n>\d+)\s?(?:fps|frames? (?:per|a) second|p(?<=\dp)){_END}", made.one("FPS")),
    ("0", rf"(?P<n>\d+(?:\.\d+)?)\s?[el]v{_END}(?!\s?-?\d)", lit.exposure_value),
    (
        "0",
        r"(?:(?P<a>\d{4,5})\s?(?:x|by|\*)\s?(?P<b>\d{4,5})(?:\s?(?:px|pix|pixels?))?"
        r"|(?P<w>\d{4,5})\s?(?:(?:horizontal|sensor)\s)?(?:px|pix|pixels?)(?:\s(?:wide|across|horizontally|in width))?"
        rf"|(?P<n>\d+(?:\.\d+)?)\s?(?:mp|mpx|mpix|megapix|megapixels?)(?:\s?sensor)?){_END}", made.pixels,
    ),
    ("0", r"(?P<n>\d+(?:\.\d+)?)\s?(?:°|degrees?|deg)(?![^\W_])", made.one("DEGREES")),
    ("0", r"(?P<n>\d+(?:\.\d+)?)\s?(?:%|per\s?cent\b|pct\b)", made.one("PERCENT")),
    (
        "0.",
        rf"(?P<n>{_NUM}|(?:[1-7][\s-])?\d{{1,2}}/\d{{1,2}})\s?(?:of (?:a|the|one|full)?\s?|full\s)?-?"
        rf"(?:turns?|revs?|revolutions?){_END}(?!\s(?:in)?to an?\s\d|\sinto(?:\s(?!the|a|my)|\W*$)|\sto\s\d)",
        made.turn,
    ),
    ("0.", rf"(?<!/)(?P<n>{_FRACTION}|{_NUM})\s?(?:x\s?|times\s)?-?life[\s-]?size{_END}", made.life_size),
    ("0.", rf"(?P<a>{_NUM})(?:\s?stops)?\s?(?:-|to)\s?(?P<b>{_NUM})\s?-?stops?{_END}", lit.stop_range),
    (
        "0.",
        rf"(?P<n>{_FRACTION}|{_NUM})\s?(?:of an?\s)?-?(?:full\s)?stop(?:s|pers?)?{_END}(?!\s?(?:at|short\b|there|here)|"
        r"\s?in\s(?:the|a|my|front|there|here)\b)",
        lit.stops,
    ),
    (
        "0.",
        rf"(?P<a>{_NUM})\s?(?:mm\s?)?(?:\.\.|-(?:to-)?|to)\s?(?P<b>{_NUM})\s?{_UNIT}{_END}{_NOT_PLACE}{_NOT_MOUNT}",
        made.spread,
    ),
    ("0", rf"1\s?:\s?(?P<b>\d(?:[.,]\d+)?)(?P<e>\s?/|,?\sf\s?[=:]?)\s?(?P<a>\d{{2,4}})(?:\s?mm)?{_END}", lit.engraved),
    ("0", rf"1\s?:\s?(?P<n>\d,\d{{1,2}}){_END}", lit.engraved_stop),  # with the comma of most of the continent
    ("0", rf"(?P<b>\d,\d{{1,2}})\s?/\s?(?P<a>\d{{2,4}})(?:\s?mm)?{_END}", lit.engraved),
    ("0", rf"(?P<a>\d{{1,4}})(?P<m>\s?mm)?\s?/\s?(?P<b>(?(m)(?:(?!0\D[0-7])\d[.,]\d\d?|[2-9]|1[16])|\d,\d\d?)){_END}"
     r"(?!\.\d|\s?(?:mm|pitch|x|tubes?|rings?)\b)", lit.engraved),  # '25mm/1.4'
    ("0", r"1\s?:\s?1(?=\s(?:crop|square|format|aspect|shape|cut)\b)|(?<=crop\s)1\s?:\s?1(?!\d)", made.square),
    ("0.", rf"(?P<a>{_NUM})(?:\s?:|:(?P<after>\s)|\s:\s)(?P<b>{_NUM})(?!\d|:\d|\.\d)(?!\s?mm)", made.ratio),
    (
        "0.",
        rf"(?P<n>{_NUM})\s?(?P<p>tenths?|hundredths?)(?:\sof\sa)?(?:\s?(?:mm|millimet(?:er|re)s?))?{_END}"
        r"(?!\sof\san?\sinch)", made.parts_of_mm,
    ),
    (
        "0",
        rf"(?P<f>\d+)\s?(?:ft\.?|feet|foot|')\s?(?:"
        rf"(?:and\s)?(?P<i>\d{{1,2}}(?:\.\d)?)\s?(?:inch(?:es)?|in|\"|'')|(?P<b>\d{{1,2}})(?!\s?(?:mm|cm|m|ft|feet|foot|')))"
        rf"{_END}(?!\s?[/.x-]\s?\d)", made.feet_and_inches,
    ),
    # 'a hill 2 km off', '70 yards'; in capitals, or with more of them, it is a mount
    # a greater number is one where what lies so far off is told of: 'a ridge 40 km away'
    (
        "0", r"(?P<n>(?:1\d|\d)(?:[.,]\d+)?(?=\s?k)|\d{1,4}(?:[.,]\d+)?(?=\s?y(?:ar)?ds?\b|\smiles?\b)|\d{1,3}"
        r"(?=\s?kilo|\s?kms?\s(?:off|away|out|distant|down|from|up|across|ahead|further)\b))"
        r"\s?(?P<u>(?-i:kms?|kilomet(?:er|re)s?)|y(?:ar)?ds?|miles?)(?![^\W_])", made.far_off,
    ),
    (
        "0.",
        r"(?P<b>\d?\.\d{1,2}|\d)\s?/\s?(?P<a>\d{1,4}(?:\.\d)?)(?:\s?mm)?"
        rf"(?!\s?(?:cm|\"|'|x|s|sec|th|fps)\b|\s?[/\"]){_END}(?!\.\d)", lit.stop_first,
    ),
    # '36mm x 24mm': with its unit twice it is no row of two lengths
    ("0.", rf"(?P<a>{_NUM})\s?mm\s?(?:x|\*|by)\s?(?P<b>{_NUM})(?P<mm>\s?mm){_END}", made.area),
    (
        "0.",
        rf"(?P<n>{_FRACTION}|{_NUM}|\d+,\d+(?=\s?mm))\s?-?{_UNIT}{_ISH}(?![^\W_]){_NOT_PLACE}{_NOT_MOUNT}",
        made.length,
    ),
    (
        "0",
        r"(?P<a>\d{1,4}(?:\.\d+)?)(?P<sep>\s?/\s?|\s)(?P<b>\d{1,2}(?:\.\d+)?|\.\d+)"
        r"(?!\s?(?:mm\b|cm\b|\"|pitch|x(?!\s?-?(?:mount|body|lens|camera)|\s?[0-3]?\.\d)|%|turn(?!s?\sinto|ed\b)|/(?!\s[a-z])))"
        rf"{_END}(?!\.\d)", lit.combo,
    ),
    # '135, 2.8': no further number of a row before or behind
    (
        "0",
        r"(?<!\d,\s)(?P<a>\d{2,3}(?:\.5)?)(?:\s?mm)?(?P<sep>,\s)(?P<b>\d\.\d{1,2})"
        r"(?!\s?(?:mm|cm|m|x|in|ft|pitch)\b|,\s\d|\s?[%\"/x])(?![^\W_]|\.\d)", lit.combo,
    ),
    ("0", rf"1\s?/\s?(?P<b>\d+)(?P<s>\s?(?:seconds?|secs?|s|th)\b)?{_END}(?!\s?/|\.\d)", lit.shutter),
    # years: '1950s', 'from the 60s'
    (
        "0",
        rf"(?:(?P<n>(?:18|19|20)\d0)|(?<=the\s)(?P<d>[2-9]0))'?s{_END}(?!\s(?:exposure|shutter))", made.decade,
    ),
    ("0", rf"(?P<n>\d+(?:\.\d+)?)\s?(?:seconds?|secs?|(?<!\bthe \d\.\d)s){_END}", lit.seconds),
    # '4 min with nd1000'; 'min focus' is no time, nor is 'a few minutes walk'
    (
        "0", rf"(?P<n>\d{{1,2}}(?:\.\d+)?)\s?(?:minutes?|mins?)(?:\s(?:exposure|long))?{_END}"
        r"(?!\s?(?:focus|dist|far|near|clos|walk|away|ago|\d))", lit.minutes,
    ),
    ("+0.", rf"\+?(?P<n>{_NUM})\s?(?:diopt(?:er|re)s?|dpt){_END}", made.one("DIOPTRE")),
    ("+", rf"(?<!\S)\+(?P<n>[1-9](?:\.\d+)?|0?\.(?:25|50?|75))(?!\.?\d|\s?(?:mm|cm|x)){_END}", made.one("DIOPTRE")),
    ("+", rf"(?<!\S)\+(?P<n>1\d|2[05]){_END}(?!\s?(?:mm|cm|x)|\.\d)", made.strong_power),
    ("+", r"(?<!\S)\+(?P<n>1\d|2[05])(?=\s(?:on|in front|before|achromat|close|lens|screwed)\b)", made.one("DIOPTRE")),
    ("x", rf"x(?P<n>{_NUM}){_END}", made.one("TIMES")),
    # 'x 5' is how many times, 'X 50' a lens for X: a capital, or more than any such lens is enlarged by
    ("x", rf"(?-i:x)\s(?P<n>1?\d(?:\.\d+)?){_END}(?!\s?mm)", made.one("TIMES")),
    ("0.", rf"(?P<a>{_NUM})\s?(?:mm)?\s?(?:x|\*|by(?=\s?\d))\s?(?P<b>{_NUM})(?P<mm>\s?mm)?{_END}", made.area),
    ("0.", rf"(?P<n>{_NUM})x?(?P<tc>tcs?){_END}", made.teleconverter),
    ("0.", rf"(?P<n>{_NUM})\s?(?:x|times)(?![^\W_])(?!(?<=\sx)[ -]mount)", made.one("TIMES")),
    (
        "0", rf"(?P<a>\d+(?:\.\d+)?)\s?(?:\.\.|-(?:to-)?)\s?(?P<b>\d+(?:\.\d+)?)(?:\s?ring)?(?<!ring){_END}(?!\.\d)",
        made.bare_range,
    ),
    ("0", r"(?P<n>\d{1,2})\s?o\W?\s?clock(?![^\W_])", made.one("FILLER")),  # where on a ring it was read
    ("#", rf"#\s?(?P<n>\d+){_END}", made.one("ORDINAL")),
    ("ncow", rf"(?:number|no\.|chain|option|way)\s?(?P<n>\d){_END}(?!\.\d)", made.one("ORDINAL")),
    ("0", rf"(?P<a>\d+(?:\.\d+)?)\s?/\s?(?P<b>\d+(?:\.\d+)?){_END}", made.fraction),
    ("-0.", rf"(?P<n>-?{_NUM}){_ISH}{_END}(?!\.\d)", made.one("NUMBER")),
)  # fmt: skip
