"""What was heard, put into one question: its intent, its things in their roles, its topic and settings."""

from __future__ import annotations

from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard
from grammar.kinds import (
    BUY_PLAN,
    CARD,
    CHAIN,
    CLOSE_UPS,
    COVERAGE,
    CROP_EQUIVALENT,
    DEFINITION,
    DEPTH_OF_FIELD,
    DIY_DIMENSION,
    DRAW,
    EXPOSURE_ND,
    GEAR_SETTING,
    HAZARD,
    IDENTIFY_MOUNT,
    LIST_FITS,
    LOOK_ALIKE,
    MACRO_DISTANCE,
    OUT_OF_SCOPE,
    SHIM_CALIBRATION,
    WHY,
)
from grammar.questions import ALL, AND, DRAWINGS, TO_ITS_OWN, Question, Thing
from grammar.readings.readings import limits_of, stops_told
from grammar.things.casting import Part

UNKNOWN: Final = "UNKNOWN"
BELLOWS: Final = "bellows"
_LEAST_DRAW: Final = 20.0  # mm, of a bellows shut
_SPEAKING: Final = frozenset(
    [
        DEFINITION,
        HAZARD,
        GEAR_SETTING,
        OUT_OF_SCOPE,
        WHY,
        COVERAGE,
        EXPOSURE_ND,
        SHIM_CALIBRATION,
        DIY_DIMENSION,
    ]
)
_SIDE_BY_SIDE: Final = frozenset([LOOK_ALIKE, IDENTIFY_MOUNT, DEFINITION])
_FLANGE: Final = "flange_to_image"  # the key of where the image of a lens falls
_TOWARDS: Final = frozenset(["on", "to", "for"])
# kinds of question that may be about all of one's own lenses or bodies
_AT_STOP: Final = frozenset([CARD, DRAW])
_BESIDE: Final = frozenset(["and", "or", "vs"])
_OF_ALL: Final = frozenset([CARD, BUY_PLAN])
_SEEN: Final = ("infinity", "vignette", "disc", "cover", "iris", "colour", "smear", "damage")  # what a why is of
_ON_FRAMES: Final = frozenset([DEPTH_OF_FIELD, CROP_EQUIVALENT, MACRO_DISTANCE])
_OPEN_WIDE: Final = frozenset([EXPOSURE_ND, DEPTH_OF_FIELD])
# evidence that the reader sees for itself is not a topic
_NO_TOPIC: Final = frozenset(
    ["lens", "lens-mount", "by-width", "lenses", "many-lenses", "focal", "mount-only", "body", "body-mount", "bodies",
     "pair", "need-adapter", "figure-alone", "harm-word",
     "pieces-join", "piece", "pieces", "piece-length", "piece-pair", "same-mount", "factor", "format", "lens-format",
     "versus",
     "thing", "brief", "one-word", "term", "advice", "stop-said", "at-stop", "limits", "what-is", "can", "will",
     "how", "which", "what", "ok", "compare-word", "what-if", "get", "asked", "right", "where", "steps", "body-crop",
     "means", "scale-row", "is-it", "talking", "short", "pieces-or", "about-why", "about-hazard", "about-gear-setting",
     "about-compare", "about-out-of-scope", "surely-compare", "surely-why", "surely-hazard", "surely-gear-setting",
     "surely-out-of-scope", "wholly-why", "wholly-hazard", "wholly-gear-setting", "wholly-compare",
     "wholly-out-of-scope", "buy-or-not", "spend-little", "parts-asked", "buy-first", "price-of", "another-one",
     "part-asked", "part-named", "named-only", "which-stop-set", "sun-kept-off", "what-lens-now"]
)  # fmt: skip


def question_of(heard: Heard) -> Question | None:
    """The question, or None where nothing in the text says what is wanted."""
    intent = heard.weighed.best or _by_things(heard)
    return built(heard, intent) if intent else None


def built(heard: Heard, intent: str) -> Question:
    """The question of a known intent."""
    cast, readings = heard.cast, heard.readings
    lenses, bodies = cast.lenses, cast.bodies
    if intent in _SIDE_BY_SIDE:
        lenses = [*lenses, *cast.denied]
    if intent == WHY:
        bodies = [*bodies, *(part for part in cast.denied if part.noun.role in _TOWARDS)]  # '... on E but not on MFT'
    settled = intent == IDENTIFY_MOUNT and any(part.focal and part.has_mount_or_kind for part in lenses)
    if intent in _SIDE_BY_SIDE and not settled and not any(part.noun.head for part in bodies):
        goal = [part for part in bodies if intent == IDENTIFY_MOUNT and lenses and part.noun.role in _TOWARDS]
        lenses, bodies = [*lenses, *(part for part in bodies if part not in goal)], goal  # '..., into MFT' is where to
    if intent == LIST_FITS:
        lenses, bodies = _for_list(heard, lenses, bodies)
    if intent == DIY_DIMENSION and _FLANGE in readings.values and not bodies:
        # 'its image falls 78 mm behind the board, a tube for EF': what is to seat that lens on it
        bodies = [part for part in lenses if part.has_mount and not part.focal and part.noun.role in _TOWARDS]
        lenses = [part for part in lenses if part not in bodies]
    stop = readings.f_number
    widest = {part.f_number for part in lenses if part.f_number is not None}
    told = stops_told(heard.phrases)
    if stop is None and intent in _OPEN_WIDE and len(widest) == 1:
        stop = lenses[0].f_number  # of several each keeps its own
    elif stop is None and intent in _OPEN_WIDE and not widest and len(told) == 1:
        stop = told[0]  # 'MFT, 35 mm, f/11'
    if stop is None:
        lenses, stop = _with_stop_set(lenses, bodies, intent in _AT_STOP, intent in CLOSE_UPS)
    values = dict(readings.values)
    for part in lenses:
        if part.zoom:
            values["zoom"] = f"{part.zoom[0]:g}..{part.zoom[1]:g} mm"
    if heard.cast.apart:
        values[TO_ITS_OWN] = ", ".join(" ".join(pair) for pair in heard.cast.apart)
    if intent in _OF_ALL:
        lenses, bodies = _all_of_mine(heard, lenses, bodies, values)
    lens_things, frames = _off_frames(heard, intent, lenses, bodies)
    pieces = tuple(part.thing() for part in cast.pieces if intent != DEFINITION)
    pieces = _with_bellows_set(pieces, values) if bodies else pieces
    return Question(
        heard.text,
        intent,
        lens_things,
        tuple(_body(part) for part in bodies),
        pieces,
        (*frames, *things_of(heard, intent)),
        limits_of(readings),
        stop,
        readings.distance_mm,
        readings.number,
        topic_of(heard, intent),
        tuple(values.items()),
        feet=readings.feet or heard.tells("feet") or any(part.inches for part in cast.pieces),
        skipped=tuple(token.text for token in heard.shape.skipped),
        stops=told,
    )


def _with_bellows_set(pieces: tuple[Thing, ...], values: dict[str, str]) -> tuple[Thing, ...]:
    """'bellows at 120 mm draw': how far it is drawn is its length, and no tube beside it."""
    open_yet = [one for one in pieces if one.piece == BELLOWS and one.thickness_mm is None and not one.ids]
    key = next((one for one in ("extension", "thickness") if one in values), "")
    told = values.get(key, "").removesuffix(" mm")
    number = told.replace(".", "", 1).isdecimal()
    if len(open_yet) != 1 or len(pieces) != 1 or not number or float(told) < _LEAST_DRAW:
        return pieces
    del values[key]
    return (replace(open_yet[0], thickness_mm=(float(told), float(told))),)


def _with_stop_set(
    lenses: list[Part], bodies: list[Part], at_stop: bool, set_to: bool
) -> tuple[list[Part], float | None]:
    """The lenses, and the stop that is set and not engraved: 'avocet on skiff f/4', 'a 58 f/2 on MFT, card f/8'.

    How far a lens of one's own opens is known, or was told ('28 f/2.8 on MFT, depth 2 m f/4'), and no body has a stop.
    `at_stop`: whether what is asked for is made for one stop; `set_to`: whether a second one is what is set.
    """
    alone = [part for part in lenses if part.is_stop_alone]
    rest = [part for part in lenses if part not in alone]
    beside = any(part.noun.join in _BESIDE for part in alone)  # 'f2 and f4': of both, and none is what is set
    told_so = set_to and not beside and len(rest) == 1 and rest[0].f_number is not None
    if len(rest) != 1 or (rest[0].named is None and not (told_so or at_stop)):
        return lenses, None
    told = [*alone, *(part for part in bodies if part.f_number is not None)]
    told += [part for part in rest if part.named is not None and part.f_number is not None]
    stops = {part.f_number for part in told}
    if len(stops) != 1:
        return lenses, None
    for part in told:
        part.f_number = None
    return rest, stops.pop()


def _off_frames(
    heard: Heard, intent: str, lenses: list[Part], bodies: list[Part]
) -> tuple[tuple[Thing, ...], tuple[Thing, ...]]:
    """'50mm f/2.8 aps-c depth of field': the format beside bare numbers is that of the frame, not of the lens."""
    things = tuple(replace(_thing(part), called=called(heard, part)) for part in lenses)
    told = [part for part in lenses if part.formats]
    of_lens = any(part.noun.head is not None or part.noun.role or part.kinds for part in told)
    if intent not in _ON_FRAMES or bodies or heard.cast.frames or not told or of_lens:
        return things, ()
    frames = tuple(Thing("format", part.formats[0].ids, part.formats[0].text, part.formats[0].column) for part in told)
    return tuple(replace(thing, format=None) for thing in things), frames


def things_of(heard: Heard, intent: str) -> tuple[Thing, ...]:
    """Formats spoken of, and the terms and advice where the question is about those."""
    out = [part.thing() for part in heard.cast.frames if part.formats]
    if intent in _SPEAKING:
        for spoken in heard.line.spoken:
            thing = Thing(spoken.kind, (spoken.id,), spoken.text, spoken.column)
            if (spoken.kind == "term") == (intent == DEFINITION) and thing not in out:
                out.append(thing)
    return tuple(out)


def topic_of(heard: Heard, intent: str) -> str | None:
    """The cue that spoke loudest for the intent; for a why, the quantity or the word it asks about."""
    if intent == WHY:
        for cue in heard.cues:
            if cue.tells.startswith("quantity:"):
                return cue.tells.split(":", 1)[1]
        if heard.tells("sure") or (heard.tells("doubt") and not heard.tells("why")):
            return "sure"
        seen = next((one for one in _SEEN if heard.tells(one)), "iris" if heard.tells("iris-idle") else None)
        # 'why does it not cover' asks of that, and 'why not' of infinity
        return "not" if heard.tells("why-not") and seen in (None, "infinity") else seen
    if intent == LIST_FITS:
        return "infinity" if heard.tells("infinity") or heard.readings.limits.get("at_least") else None
    if intent == DRAW:
        return AND.join(one for one in DRAWINGS if heard.tells(f"drawn-{one}")) or None
    if intent == CROP_EQUIVALENT and (heard.tells("match") or _wants_lens_like(heard)):
        return "match"
    if intent == CHAIN:
        return next((one for one in ("remedy", "tilt") if heard.tells(one)), None)
    spoke = heard.weighed.spoke.get(intent, ())
    named = {"remedy"} if heard.tells("stop-said") else set()  # 'does f/11 rescue that' names what shall help
    topics = (one for one in spoke if one not in _NO_TOPIC | named and not one.startswith(("after-", "named-")))
    return next((one for one in topics if not one.endswith("-said")), None)


def _wants_lens_like(heard: Heard) -> bool:
    """'what lens on MFT looks like a 35 on full frame': a lens is asked for, and two frames are told."""
    frames = heard.tells("formats") or (heard.tells("format") and heard.tells("body-mount"))
    return heard.tells("fits") and heard.tells("focal") and frames


def _by_things(heard: Heard) -> str | None:
    """With no cue at all, two things named together ask how the one goes on the other, and one where it may go."""
    cast = heard.cast
    if cast.lenses and cast.bodies:
        return "chain"
    if heard.tells("lens-mount") and heard.tells("brief") and not cast.pieces and not heard.tells("focal"):
        return "definition"
    named = any(part.has_mount_or_kind or part.focal for part in cast.lenses)
    return "chain" if named or any(part.has_mount for part in cast.bodies) else None


def _for_list(heard: Heard, lenses: list[Part], bodies: list[Part]) -> tuple[list[Part], list[Part]]:
    """'what lenses fit E': a mount alone after 'fit' or before 'take' is the body's; else the lens's."""
    bodies = [part for part in bodies if not part.is_bare]
    lenses = [part for part in lenses if not part.is_bare]
    if (
        not lenses
        and len(bodies) == 1
        and any(one.kind == "HEADMOD" and one.unit == "LENS" for one in bodies[0].noun.mods)
    ):
        bodies[0].sort = "lens"
        return bodies, []  # 'CS lens bodies': those that take one
    mount_alone = len(lenses) == 1 and not bodies and not lenses[0].focal
    if mount_alone and heard.tells("fits") and not heard.tells("takes"):
        lens = lenses[0]
        if lens.noun.head is None or lens.noun.heads == "MOUNTWORD":
            lens.sort = "body"
            return [], [lens]
    return lenses, bodies


def _all_of_mine(
    heard: Heard, lenses: list[Part], bodies: list[Part], values: dict[str, str]
) -> tuple[list[Part], list[Part]]:
    """'all my lenses': kept as a value, and the empty description that they leave behind is dropped."""
    every = []
    if heard.tells("all-lenses") and not any(part.has_mount or part.named for part in lenses):
        every.append("lenses")
        lenses = []
    if heard.tells("all-bodies") and not any(part.has_mount or part.named for part in bodies):
        every.append("bodies")
        bodies = []
    if every:
        values[ALL] = ", ".join(every)
    return lenses, bodies


def called(heard: Heard, part: Part) -> tuple[str, ...]:
    """The unknown words right before a description and within it: 'zorbex' of 'a zorbex 50 mm'."""
    start, end = part.noun.column, part.noun.column + len(part.noun.text)
    before = [token for token in heard.line.tokens if token.column < start]
    names = [token for token in heard.line.tokens if start <= token.column < end and token.kind == UNKNOWN]
    while before and before[-1].kind == UNKNOWN:
        names.insert(0, before.pop())
    return tuple(token.text.casefold() for token in names)


def _thing(part: Part) -> Thing:
    part.sort = "lens"
    return part.thing()


def _body(part: Part) -> Thing:
    part.sort = "body"
    return part.thing()
