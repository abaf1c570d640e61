"""A bare reply to what the last answer asked for: 'e mount', '58', 'about 45.5' -> the question before, completed.

Only a line that says nothing else is such a reply; it goes on with what was asked, whatever a mount or a number alone
would otherwise ask.
"""

from __future__ import annotations

from typing import Final

from engine.base.compact import replace
from engine.base.units import MM_PER_METRE
from grammar.hearing import Heard
from grammar.kinds import DEFINITION, IDENTIFY_MOUNT, LIST_FITS, LOOK_ALIKE, WHY
from grammar.questions import OFF, Question, Thing
from grammar.readings.kept_readings import mm
from grammar.things.casting import Part
from grammar.things.letters_by_numbers import ARTICLES
from grammar.turns.number_roles import is_one_of_several
from grammar.words.groups import FOCAL_NAMED, OPENS_QUESTION, OWN, RATHER, TALL, WE
from grammar.words.tokens import Token

# cues that a reply may hold without asking anything: 'it is ok, i can do E'
_IDLE: Final = frozenset(
    ["ok", "right", "will", "can", "sure", "means", "calipers", "it-is", "engraved", "drawn-marks"]
)
_PASSED: Final = frozenset(["FILLER", "VERB", "DET", "MARK", "STOP", "UNKNOWN", "CUE", "JOIN"])
_SIZED: Final = "size"  # of 'measured 66.5': what was asked for was measured
BODY_MOUNT: Final = "body-mount"
_ASIDE: Final = frozenset([IDENTIFY_MOUNT, LOOK_ALIKE, DEFINITION, WHY])
_AT_MOST: Final = 10  # words of a reply
_PITCHES: Final = (0.2, 3.0)  # mm
_THEY: Final = "they"
_TEN: Final = 10.0  # pitches that are read at once
_TENS: Final = (3.4, 11.0)  # mm, how long those are
_NEAREST: Final = "close_focus"
_OF_ANOTHER: Final = frozenset(["flange_to_image", "barrel"])  # told by name, whatever was asked for
_FAR_UNITS: Final = frozenset(["m", "ft"])
_OF_ITSELF: Final = frozenset(["barrel", "frame_rate"])
_PIXELS: Final = "pixels"
_CIRCLE: Final = "circle"
# what is asked for -> between which numbers an answer to it lies, in mm; and how many mm a bare number counts
_LENGTHS: Final = {
    "focal": (2.0, 3000.0, 1.0), "flange_to_image": (3.0, 400.0, 1.0), "circle": (2.0, 400.0, 1.0),
    _NEAREST: (20.0, 30000.0, MM_PER_METRE), "diameter": (5.0, 150.0, 1.0), "barrel": (15.0, 130.0, 1.0),
    "rear_reach": (0.5, 60.0, 1.0), _PIXELS: (1200.0, 20000.0, 1.0),
}  # fmt: skip


def completed(heard: Heard, before: Question, hosts: frozenset[str]) -> Question | None:
    """The question before with the fact that it lacked; None where the text is anything else than that fact.

    `hosts`: mounts that, named alone, are those of a body.
    """
    if len([token for token in heard.line.tokens if token.kind not in ("MARK", "STOP")]) > _AT_MOST:
        return None
    if before.wants.split()[:1] != ["focal"] and any(FOCAL_NAMED in token.groups for token in heard.line.tokens):
        return None  # 'focal length 85' where the flange to image was asked for
    if (asks(heard) and not _is_on_paper(heard, before)) or "?" in heard.text or heard.cast.pieces or heard.cast.frames:
        return None
    if any(TALL in token.groups for token in heard.line.tokens):
        return None  # 'she is 1.2 m tall' is no mark of a scale
    if _picks_tube(heard, before):
        return None
    for wants in before.wants.split():
        done = _measured(heard, before, wants)
        if done is not None:
            return done
    return _mounted(heard, before) or _lettered(heard, before, hosts)


def _picks_tube(heard: Heard, before: Question) -> bool:
    """'just the 2.5' after spacers of 2.5 and 0.8 mm: one of them, and no reply."""
    numbers = [token.numbers[0] for token in heard.line.tokens if token.numbers]
    led = any(RATHER in token.groups or token.value == "the" for token in heard.line.tokens)
    return led and len(numbers) == 1 and is_one_of_several(numbers[0], before)


def _is_on_paper(heard: Heard, before: Question) -> bool:
    """'17.5 on the card', 'i get 72 mm' where the flange to the image was asked for: what it was caught on, and told.

    No card to carry is asked for then, nor how anything is got.
    """
    caught = {cue.tells for cue in heard.cues if cue.tells not in _IDLE}
    first = next((one for one in heard.line.tokens if one.kind not in ("MARK", "CUE")), None)
    mine = first is not None and WE in first.groups
    told = (bool(caught) and caught <= {"card", "foil"}) or (caught == {"get"} and mine)
    return told and "flange_to_image" in before.wants.split() and any(one.numbers for one in heard.line.tokens)


def asks(heard: Heard) -> bool:
    """Whether a word of the line asks for something; 'pitch' of '1 mm pitch' does not."""
    spans = [(token.column, token.column + len(token.text)) for token in heard.line.tokens if token.numbers]
    return any(
        cue.tells not in _IDLE and not any(start <= cue.column < end for start, end in spans) for cue in heard.cues
    )


def _mounted(heard: Heard, before: Question) -> Question | None:
    """'e mount', 'it's a z': the mount of the lens or of the body that was named without one."""
    parts = [part for part in (*heard.cast.lenses, *heard.cast.bodies) if not part.is_bare or part.noun.head is None]
    bare = [part for part in (*heard.cast.lenses, *heard.cast.bodies) if part not in parts]
    told = heard.readings
    more = told.values or told.f_number or told.limits or told.number or told.distance_mm is not None
    if len(parts) != 1 or not _is_mount_alone(parts[0]) or more:
        return None
    side = _side(parts[0], [part.sort for part in bare], before)
    if side is None or (before.intent == LIST_FITS and side == "lenses" and parts[0].is_host):
        return None  # 'ok and L mount' after what fits another body
    if side == "lenses" and parts[0].is_host and parts[0].noun.heads != "LENS" and not before.wants and before.bodies:
        return None  # 'and E mount' after a 28 mm on MFT: another body, and no lens that none has a ring for
    return _with_mount(heard, before, side, parts[0].mounts[0].ids, parts[0].noun.text)


def _lettered(heard: Heard, before: Question, hosts: frozenset[str]) -> Question | None:
    """'z', 'x i think': a letter alone, which elsewhere is none of a mount, where a mount was asked for."""
    told = [token for token in heard.line.tokens if token.kind not in _PASSED]
    if len(told) != 1 or told[0].kind != "LETTER" or told[0].text.casefold() in ARTICLES:
        return None
    lens, body = (not things or not things[0].ids for things in (before.lenses, before.bodies))
    if not lens and not body:
        return None
    side = _asked_of(before, told[0].ids[0] in hosts) if lens and body else "lenses" if lens else "bodies"
    return _with_mount(heard, before, side, told[0].ids, told[0].text)


def _with_mount(heard: Heard, before: Question, side: str, ids: tuple[str, ...], words: str) -> Question:
    things: tuple[Thing, ...] = getattr(before, side)
    counts = (token.numbers[0] for token in heard.line.tokens if token.kind == "NUMBER" and token.text.isalpha())
    every = any(token.text.casefold().split()[:1] == [_THEY] for token in heard.line.tokens)
    if len(things) > 1 and (every or len(things) in counts):  # 'both are M42', 'they are M42'
        each = tuple(thing if thing.ids else replace(thing, kind="mount", ids=ids) for thing in things)
        return before.with_(**{side: each}, text=heard.text, follows=True, wants="", instead=(), number=None)
    named = replace(things[0] if things else Thing(), kind="mount", ids=ids, traits=_kept(things))
    if not named.words:
        named = replace(named, words=words)
    given = {side: (named, *things[1:])}
    if side == "bodies":  # whose own frame it is now
        given["things"] = tuple(thing for thing in before.things if thing.kind != "format")
    return _with_off(before).with_(
        **given, intent=_going_on(side, before), text=heard.text, follows=True, wants="", instead=(), number=None
    )


def _with_off(before: Question) -> Question:
    """The question with the way in which a thickness of it is off, which else its own words alone tell."""
    if before.off_word is None or before.said(OFF) is not None:
        return before
    return before.with_(values=(*before.values, (OFF, before.off_word)))


def _going_on(side: str, before: Question) -> str:
    """What is asked now: of what was only to be named, or of a list of what fits, how the two go together."""
    paired = before.intent in _ASIDE and side == "bodies"
    return "chain" if paired or before.intent == LIST_FITS else before.intent


def _kept(things: tuple[Thing, ...]) -> tuple[str, ...]:
    return tuple(trait for trait in (things[0].traits if things else ()) if trait != "assumed mount")


def _is_mount_alone(part: Part) -> bool:
    told = (part.focal, part.f_number, part.zoom, part.kinds, part.formats, part.named, part.crop, part.strange)
    return len(part.mounts) == 1 and not any(told) and part.noun.role not in ("from", "without", "via")


def _side(part: Part, bare: list[str], before: Question) -> str | None:
    """Which of the two the mount is of: the one the reply names, else the one that lacks a mount, the lens first."""
    lens = not before.lenses or not before.lenses[0].ids
    body = not before.bodies or not before.bodies[0].ids
    on = part.noun.role in ("on", "to")
    if part.noun.heads == "BODY" or "body" in bare or on:
        return "bodies" if body else None
    if part.noun.heads == "LENS" or "lens" in bare:
        return "lenses" if lens else None
    if lens and body:
        return _asked_of(before, part.is_host)
    return "bodies" if body else "lenses" if lens else None


def _asked_of(before: Question, is_host: bool) -> str:
    """Whose mount a reply tells where neither is known: that of a body where it mostly is one, else what was asked."""
    return "bodies" if is_host or not before.lenses or before.wants.split()[:1] == [BODY_MOUNT] else "lenses"


def _measured(heard: Heard, before: Question, wants: str) -> Question | None:
    """'58', 'f2', 'about 45.5 mm', '42mm, 1mm pitch': the number that was asked for."""
    tokens = [token for token in heard.line.tokens if token.kind not in _PASSED]
    if _is_on_paper(heard, before):
        tokens = [token for token in tokens if token.numbers]
    if wants == _NEAREST:  # 'the lens says 0.45 m'
        tokens = [token for token in tokens if token.kind not in ("LENS", "MEASURE")]
    if any((token.kind, token.value) == ("MEASURE", _SIZED) for token in tokens[:1]):  # 'measured at 66'
        tokens = [token for token in tokens[1:] if token.kind not in ("PREP", "AT")]
    elif len(tokens) == 2:  # 'mine measures 20'
        tokens = [token for token in tokens if (token.kind, token.value) != ("MEASURE", _SIZED)]
    if wants in ("thread", "pitch") and not _OF_ANOTHER & heard.readings.values.keys():
        return _threaded(tokens, before, wants)
    if len(tokens) == 2 and tokens[-1].kind == "PREP":
        tokens = tokens[:1]  # '45 and a hair'
    if len(tokens) != 1 or not tokens[0].numbers:
        return None
    token = tokens[0]
    if _OF_ITSELF & heard.readings.values.keys():
        return None  # '62.5 mm outside', 'slow motion 120': it is told of what it is
    if wants == "stop":
        fits = token.kind in ("FNUM", "NUMBER", "TSTOP") and 0.5 <= token.numbers[0] <= 64
        return _went_on(before, heard, f_number=token.numbers[0]) if fits else None
    if wants not in _LENGTHS or token.kind not in ("NUMBER", "LENGTH"):
        return None
    least, most, unit = _LENGTHS[wants]
    number = token.numbers[0] * (unit if token.kind == "NUMBER" else 1.0)
    if not least <= number <= most:
        return None
    if wants == _CIRCLE and _is_named_thing(token, heard):
        return None
    if wants == "focal":
        if not before.lenses or token.unit in _FAR_UNITS:
            return None  # 'it says 1.2 m' is no focal length
        lens = replace(before.lenses[0], focal_length_mm=number)
        return _went_on(before, heard, lenses=(lens, *before.lenses[1:]))
    rest = before.rest(wants)
    told = f"{number:g} pixels across" if wants == _PIXELS else mm(number)
    return _went_on(before, heard, values=(*rest, (wants, told)))


def _is_named_thing(token: Token, heard: Heard) -> bool:
    """'the 50', 'or 75', 'is 35 enough' where a circle was asked for: another lens, by what leads to it."""
    first = heard.line.tokens[0]
    if first is not token and (first.kind == "JOIN" or OPENS_QUESTION in first.groups):
        return True
    led = heard.led_by(token)
    return led is not None and led.kind == "DET" and (led.value == "the" or OWN in led.groups)


def _threaded(tokens: list[Token], before: Question, wants: str) -> Question | None:
    """A thread by its width and pitch, or the width alone, or the pitch of one whose width was told."""
    width = [token for token in tokens if token.kind in ("LENGTH", "NUMBER")]
    pitch = [token for token in tokens if token.kind == "PITCH"]
    known = [token for token in tokens if token.kind == "THREAD" and token.value]
    if len(known) == len(tokens) == 1:
        return _with_thread(before, known[0].value)
    rest = [token for token in tokens if token.kind not in ("LENGTH", "NUMBER", "PITCH", "MEASURE", "MOUNTWORD")]
    told = before.said("thread")
    if wants == "pitch" and not told and len(tokens) < 2 and not pitch:
        return _with_pitch(before, width)  # of a thread that its name tells, the width is known
    if wants == "pitch" and told and " x " not in told and len(tokens) == 1 and (width or pitch):
        number = _pitch_of(tokens[0].numbers[0])
        if not 0.2 <= number <= 3 and tokens[0].kind != "PITCH":
            return None
        given = tokens[0].value if "tpi" in tokens[0].value else mm(number)
        return _with_thread(before, f"{told} x {given}")
    if rest or not width or len(width) + len(pitch) > 2 or not 5 <= width[0].numbers[0] <= 150:
        return None
    text = mm(width[0].numbers[0])
    if pitch:
        text += f" x {pitch[0].value if 'tpi' in pitch[0].value else mm(pitch[0].numbers[0])}"
    elif len(width) > 1:
        if not 0.2 <= width[1].numbers[0] <= 3:
            return None
        text += f" x {mm(width[1].numbers[0])}"
    return _with_thread(before, text)


def _pitch_of(told: float) -> float:
    """'7.5' where the pitch was asked for, ten crests at once: a tenth of it."""
    return round(told / _TEN, 4) if _TENS[0] <= told <= _TENS[1] else told


def _with_pitch(before: Question, told: list[Token]) -> Question | None:
    """The question with the pitch of its thread, where so long a one is told."""
    size = _pitch_of(told[0].numbers[0]) if len(told) == 1 else 0.0
    if not _PITCHES[0] <= size <= _PITCHES[1]:
        return None
    values = tuple(row for row in before.values if row[0] != "pitch")
    pitch = ("pitch", mm(size))
    return before.with_(values=(*values, pitch), follows=True, wants="", instead=())


def _with_thread(before: Question, text: str) -> Question:
    """The question with its thread; of a lens without a mount that thread is what tells it."""
    values = before.rest("thread", "pitch")
    intent = before.intent if before.lenses and before.lenses[0].ids else "identify-mount"
    return before.with_(values=(*values, ("thread", text)), intent=intent, follows=True, wants="", instead=())


def _went_on(before: Question, heard: Heard, **changes: object) -> Question:
    return before.with_(**changes, text=heard.text, follows=True, wants="", instead=(), number=None)
