"""Why a question could not be read: where it stops making sense, what could stand there, what may be meant."""

from __future__ import annotations

from typing import Final

from grammar.echo.echo import canonical
from grammar.hearing import Heard
from grammar.kinds import (
    CARD,
    CHAIN,
    COMPARE,
    COVERAGE,
    CROP_EQUIVALENT,
    DIY_DIMENSION,
    DRAW,
    FOCUS_VERDICT,
    HAZARD,
    LIST_FITS,
    MACRO_DISTANCE,
    OUT_OF_SCOPE,
    WHY,
)
from grammar.questions import ALL, Question, Thing, Unread
from grammar.telling import built
from grammar.words.atoms import key_of
from grammar.words.lexicon import Lexicon
from grammar.words.strangers import is_thread_width
from grammar.words.tokens import LONGEST

# intents that cannot be answered without a lens, or without a body
_LENS: Final = frozenset([CHAIN, FOCUS_VERDICT, COVERAGE, MACRO_DISTANCE, CROP_EQUIVALENT, DRAW])
_BODY: Final = frozenset([CHAIN, FOCUS_VERDICT, DRAW])
_LEANING: Final = _LENS | {WHY, COMPARE, LIST_FITS, CARD}
_ASKS: Final = (
    "a question, such as 'can I put a C lens on my E-mount body', 'can M42 reach infinity on EF', "
    "'what looks like M42' or 'what is a helicoid'; 'help' shows more"
)
_OF_SOMETHING: Final = frozenset([HAZARD, DIY_DIMENSION])
_SPOKEN: Final = frozenset(["thing", "term", "advice", "thread-said", "circle-said", "weight-said", "strange"])
_DESCRIBES: Final = frozenset(["FOCAL", "FNUM", "COMBO", "LENGTH", "NUMBER", "LENS", "KIND", "MOUNTWORD", "RANGE"])
_BESIDE: Final = 2  # words between a name and what describes the same lens
_FEW: Final = 6  # words of a fragment
_NAMES: Final = ("mount", "lens", "body")


def too_long(text: str) -> Unread:
    return Unread(text, LONGEST + 1, f"{len(text)} characters", f"one question of at most {LONGEST} characters")


def empty(text: str) -> Unread:
    return Unread(text, 1, "nothing", _ASKS)


def refused(heard: Heard, question: Question | None, lexicon: Lexicon) -> Unread | None:
    """What makes the question impossible or leaves a needed name unknown; None where nothing does."""
    for token, expected in heard.readings.faults:
        return Unread(heard.text, token.column, token.text, expected)
    if question is None:
        return _strange_name(heard, None, lexicon)
    if heard.cast.swapped and question.intent in _BODY:
        return _swapped(heard, question, lexicon)
    return _strange_name(heard, question, lexicon)


def not_alone(heard: Heard, question: Question) -> Unread | None:
    """A fragment that leans on a question that was never put."""
    words = [token for token in heard.line.tokens if token.kind not in ("STOP", "MARK", "JOIN")]
    first = next((token for token in heard.line.tokens if token.kind not in ("STOP", "MARK")), None)
    begun = first is not None and (first.kind == "JOIN" or (first.kind == "PREP" and first.value == "without"))
    leaning = begun and question.intent != OUT_OF_SCOPE  # 'and where is the nearest shop' is answered by itself
    if leaning and len(words) <= _FEW and not heard.tells("lens-mount"):
        return _which(heard)
    told = heard.features & _SPOKEN or heard.readings.values
    if heard.tells("one-word") and heard.tells("limits") and not told:
        return _which(heard)  # 'cheaper'
    if question.intent in _OF_SOMETHING and len(words) <= _FEW + 1 and not told:
        return _which(heard)  # 'will it scratch anything in there?'
    if question.intent not in _LEANING or len(words) > _FEW or heard.readings.values or question.said(ALL):
        return None
    if question.intent == LIST_FITS and heard.tells("thing"):
        return None
    if any(not part.is_bare for part in (*heard.cast.lenses, *heard.cast.pieces)) or heard.readings.distance_mm:
        return None
    if len(words) > 2 and any(part.has_mount for part in heard.cast.bodies):
        return None  # 'I have an E-mount camera'
    if question.intent in (COMPARE, COVERAGE, LIST_FITS, WHY, CROP_EQUIVALENT, MACRO_DISTANCE) and (
        heard.tells("thing") or len(words) > 3
    ):
        return None
    return _which(heard)


def unheard(heard: Heard, lexicon: Lexicon) -> Unread:
    """Nothing says what is wanted."""
    words = [token for token in heard.line.tokens if token.kind not in ("STOP", "MARK")]
    if not words:
        return empty(heard.text)
    strange = _strange_name(heard, None, lexicon)
    if strange is not None:
        return strange
    missed = _near_miss(heard, lexicon)
    if missed is not None:
        return missed
    if heard.features & {"thing", "ordinal", "limits", "stop-said", "without-piece"} or not heard.shape.skipped:
        return _which(heard)
    token = heard.shape.skipped[0]
    near = lexicon.nearest(token.text)
    return Unread(heard.text, token.column, token.text, _ASKS, near[0] if near else None)


def _which(heard: Heard) -> Unread:
    first = next((token for token in heard.line.tokens if token.kind != "MARK"), None)
    return Unread(
        heard.text, first.column if first else 1, heard.text.strip(),
        "which lens and which body? There is no question before this one that it could lean on: put it whole, such as "
        "'how close can a 50 mm M42 lens focus on an E-mount body'",
    )  # fmt: skip


def _strange_name(heard: Heard, question: Question | None, lexicon: Lexicon) -> Unread | None:
    """An unknown word where a mount, lens or body should stand, if the question cannot do without that one."""
    cast = heard.cast
    intent = question.intent if question else (heard.weighed.best or "chain")
    described = any(part.focal or part.zoom or part.kinds or part.formats for part in cast.lenses)
    lens_open = intent in _LENS and not any(part.has_mount or part.implied for part in cast.lenses)
    lens_open = lens_open and (intent in _BODY or not described)
    body_open = intent in _BODY and not any(part.has_mount or part.formats for part in cast.bodies)
    for part in (*cast.lenses, *cast.bodies, *cast.strange):
        token = part.strange
        if token is None or part.has_mount or part.implied:
            continue
        is_body = part in cast.bodies or part.noun.role in ("on", "to")
        placed = question is None and part in cast.strange and is_body  # 'and on the kestrel?': what is asked about
        if (body_open or placed) if is_body else lens_open:
            wanted = "body" if is_body else "lens"
            expected = f"the mount or the name of a {wanted}, such as 'M42', 'C-mount' or 'E-mount'"
            near = lexicon.nearest(token.text, ("mount", wanted))
            word = token.text.rstrip("0123456789. ")
            if not near and not is_body and word and word != token.text:  # 'my old exacta 50': its length stands behind
                near = lexicon.nearest(word, ("mount", wanted))
                if near:
                    mended = _mended(heard.text, word, near[:1])
                    return Unread(heard.text, token.column, word, expected, near[0], mended)
            if is_body and not near:
                expected += f"; once told, 'my {token.text} is an E-mount APS-C body', the name is known"
            if is_body and not near and not lens_open:
                continue  # the name of a camera: which mount that one has is asked for
            return Unread(
                heard.text,
                token.column,
                token.text,
                expected,
                near[0] if near else None,
                _guesses(heard, intent, near, is_body, lexicon),
            )
    if question is None or not (lens_open or body_open):
        return None
    return _near_miss(heard, lexicon, beside_lens=described and not body_open)


def _near_miss(heard: Heard, lexicon: Lexicon, beside_lens: bool = False) -> Unread | None:
    """An unknown word that looks like a name, by itself or with the words before it: 'e-mont', 'micro four thirs'.

    `beside_lens`: only one that stands beside what describes the lens, where nothing but its mount is missing.
    """
    tokens = heard.line.tokens
    named = [part.strange for part in (*heard.cast.lenses, *heard.cast.bodies) if part.strange is not None]
    spans = [(one.column, one.column + len(one.text)) for one in named if " " in one.text]
    for at, token in enumerate(tokens):
        if token.kind != "UNKNOWN" or len(token.text) < 3 or any(a <= token.column < b for a, b in spans):
            continue
        if lexicon.subjects.knows(token.text) or is_thread_width(tokens, at):
            continue  # an ordinary word: no slip of a name
        if at + 1 < len(tokens) and tokens[at + 1].kind == "MOUNT":
            continue  # whoever made it: the mount stands there
        if beside_lens and not any(one.kind in _DESCRIBES for one in tokens[max(0, at - _BESIDE) : at + _BESIDE + 1]):
            continue
        for back in range(min(3, at), -1, -1):
            first = tokens[at - back]
            if first.kind in ("STOP", "PREP", "JOIN", "MARK"):
                continue
            said = heard.text[first.column - 1 : token.column - 1 + len(token.text)]
            near = lexicon.slipped(said, _NAMES if said.isalpha() else (*_NAMES, "adapter"))
            if near:
                expected = "the name of a mount, a lens or a body"
                return Unread(heard.text, first.column, said, expected, near[0], _mended(heard.text, said, near))
    return None


def _mended(text: str, said: str, near: list[str]) -> tuple[str, ...]:
    return tuple(text.replace(said, name, 1).strip() for name in near)


def _guesses(heard: Heard, intent: str, near: list[str], is_body: bool, lexicon: Lexicon) -> tuple[str, ...]:
    out = []
    for name in near[:3]:
        hit = lexicon.names.get(key_of(name))
        if hit is None:
            continue
        question = built(heard, intent)
        thing = Thing(hit[1], (hit[2],))
        if is_body:
            question = question.with_(bodies=(thing,))
        else:
            lens = question.lenses[0] if question.lenses else Thing()
            question = question.with_(
                lenses=(Thing(thing.kind, thing.ids, focal_length_mm=lens.focal_length_mm, f_number=lens.f_number),)
            )
        out.append(canonical(question, lexicon.name_for))
    return tuple(dict.fromkeys(out))


def _swapped(heard: Heard, question: Question, lexicon: Lexicon) -> Unread:
    body = heard.cast.bodies[0] if heard.cast.bodies else heard.cast.lenses[0]
    meant = canonical(question, lexicon.name_for)
    return Unread(
        heard.text, body.noun.column, body.noun.text,
        "the lens first and the body second: a lens goes on a body, here the two are the other way round",
        None, (meant,),
    )  # fmt: skip
