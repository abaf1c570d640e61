"""A fragment and the question before it, made one: 'and on the full frame body?', 'at f/8?', 'without it'."""

from __future__ import annotations

from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard
from grammar.questions import ALL, Limits, Question, Thing
from grammar.telling import built
from grammar.tokens import Token

# intents that need nothing from before once they are plainly asked
_FREE: Final = frozenset(
    ["definition", "out-of-scope", "identify-mount", "buy-plan", "list-fits", "look-alike", "hazard", "compare"]
)
_OF_BODY: Final = frozenset(["compare", "buy-plan"])
# what is asked anew where a follow-up only supposes something: 'what if I stop down', 'what if the ring is thinner'
_SUPPOSED: Final = frozenset(["chain", "focus-verdict", "macro-distance", "coverage", "depth-of-field", "exposure-nd"])
_MADE: Final = frozenset(["draw", "card"])  # they are made of the chain that was pointed at last
_ASIDE: Final = frozenset(["why", "identify-mount", "look-alike", "definition"])
_ALIKE: Final = frozenset(["look-alike"])
_IDENTIFY: Final = "identify-mount"
_FLANGES: Final = (5.0, 120.0)  # mm, between which a bare number may be a flange to image distance
# what was measured of a lens
_OF_LENS: Final = frozenset(["flange_to_image", "rear_reach", "barrel", "circle", "thread", "pitch"])
_OF_SEAT: Final = frozenset(
    ["too_thick", "too_thin", "thicker", "thinner", "thickness", "spigot"]
)  # what was found of the rings
_OF_SHOT: Final = frozenset(["extension", "magnification", "field", "close_focus"])  # how near the lens is set up
_NEAR: Final = frozenset(["macro-distance", "depth-of-field", "exposure-nd", "focus-verdict", "chain"])
# of each group only what was told last holds
_ONE_OF: Final = (_OF_SEAT, frozenset(["magnification", "field"]), frozenset(["light"]))
_ANY_RING: Final = "adapter"
_ITS: Final = frozenset(["the", "its", "my"])
_PLAIN: Final = 4.0  # the weight from which an intent is plainly asked
_TALK: Final = frozenset(["help", "quit", "start-over", "show-memory", "list-gear"])


def leans(heard: Heard, before: Question) -> bool:
    """Whether the text leaves something out that the question before can give."""
    if before.intent in _TALK:
        return False
    cast, best = heard.cast, heard.weighed.best
    lens = any(part.has_mount or part.implied for part in cast.lenses)
    if lens and any(part.has_mount for part in cast.bodies):
        return False
    if best == "card" and before.bodies and not cast.bodies:
        return True  # a card is of a lens on a body, however long the question
    plain = best is not None and heard.weighed.weight(best) >= _PLAIN
    if best == "list-fits" and lens and not heard.tells("body-mount"):
        return False  # 'where does a C-mount lens fit' asks for all bodies, not for the one of before
    if best == "definition" and plain:
        return _of_what_was_named(heard, before)
    if best == "out-of-scope" and plain:
        return False
    if best in _OF_BODY and not (lens and heard.tells("body")):
        return True  # 'M42 or FD, which is better': on the body of before; 'bellows or helicoid?': for its lens
    if best == "hazard" and not (lens or heard.tells("focal")):
        return True  # 'the lens weighs 900 g, is that safe'
    if best == "list-fits" and not lens and not heard.tells("body-mount"):
        return True  # 'which other bodies take them'
    if best in _FREE and plain and (heard.tells("thing") or heard.tells("thread-said")):
        return False
    words = [token for token in heard.line.tokens if token.kind not in ("STOP", "MARK", "JOIN")]
    return not (plain and lens and len(words) > 6)


def _of_what_was_named(heard: Heard, before: Question) -> bool:
    """'what is the register' asks of the lens spoken of, 'what is a register' of the word."""
    if before.lens is None or not before.lens.ids or heard.cast.lenses or heard.cast.bodies:
        return False
    columns = {spoken.column for spoken in heard.line.spoken if spoken.kind == "term"}
    return any(
        token.kind == "DET" and token.text.casefold() in _ITS and _after(token, columns) for token in heard.line.tokens
    )


def _after(token: Token, columns: set[int]) -> bool:
    return token.column + len(token.text) + 1 in columns


def follow(heard: Heard, before: Question) -> Question:
    """The question before with what the text says instead; `follows` is set."""
    best = heard.weighed.best
    if heard.tells("sure"):
        best = "why"
    supposed = heard.tells("what-if") and before.intent in _SUPPOSED
    intent = best if best is not None and not supposed else _went_on(heard, before)
    said = built(heard, intent)
    if intent == "definition" and not (said.things or said.lenses or said.bodies or said.adapters):
        intent = _went_on(heard, before)  # 'so what is it'
        said = built(heard, intent)
    lenses = _beside(said, before) if intent in _ALIKE else _lenses(said, before)
    bodies, things = _bodies(said, before)
    said = _measured(said, before, heard)
    without = heard.tells("without-piece") or _without_it(heard)
    adapters = () if without and not said.adapters else _adapters(said, before)
    return replace(
        said,
        lenses=lenses,
        bodies=bodies,
        adapters=adapters,
        things=things,
        limits=_limits(said.limits, before.limits),
        f_number=said.f_number if said.f_number is not None else before.f_number,
        distance_mm=said.distance_mm if said.distance_mm is not None else _kept_distance(intent, before),
        number=said.number if said.number is not None or intent not in _MADE else _kept_number(said, before),
        values=tuple({**_held(_kept_values(intent, lenses, before, said), said), **dict(said.values)}.items()),
        feet=said.feet or (before.feet and not heard.tells("metres")),
        follows=True,
    )


def _measured(said: Question, before: Question, heard: Heard) -> Question:
    """'yes, about 12.5' after the mount was in doubt: the flange to image distance that was asked for."""
    number, length = said.said("numbers"), said.said("length")
    text = length or (f"{number} mm" if number else "")
    if before.intent != _IDENTIFY or not heard.tells("brief") or "," in text or not text.endswith(" mm"):
        return said
    if not _FLANGES[0] <= float(text.removesuffix(" mm")) <= _FLANGES[1]:
        return said
    rest = tuple(row for row in said.values if row[0] not in ("numbers", "length"))
    return said.with_(values=(*rest, ("flange_to_image", text)))


def _adapters(said: Question, before: Question) -> tuple[Thing, ...]:
    """'the ring is 1 mm too thick': the ring is the one that was spoken of."""
    bare = all(not _is_told(thing) and thing.piece == _ANY_RING for thing in said.adapters)
    spoken_of = any(
        thing.kind == "adapter" or (thing.piece == _ANY_RING and _is_told(thing)) for thing in before.adapters
    )
    return before.adapters if bare and (spoken_of or not said.adapters) else said.adapters


def _is_told(thing: Thing) -> bool:
    """Whether a piece is more than a word for any."""
    return bool(thing.ids or thing.front or thing.rear or thing.factor or thing.steps) or thing.thickness_mm is not None


def _held(kept: dict[str, str], said: Question) -> dict[str, str]:
    """What was told before, but for what is now told otherwise: a ring is not too thick and too thin."""
    keys = {key for key, _ in said.values}
    gone = {one for group in _ONE_OF if group & keys for one in group}
    if any(thing.thickness_mm is not None for thing in said.adapters):
        gone |= {"extension", "field", "magnification", *_OF_SEAT}  # another ring or tube
    return {key: text for key, text in kept.items() if key not in gone}


def _beside(said: Question, before: Question) -> tuple[Thing, ...]:
    """'same thread as C?' asks of that mount and of the one spoken of before."""
    old = before.lenses[:1]
    named = tuple(thing for thing in said.lenses if thing.ids)
    if len(named) != 1 or not old or not old[0].ids or old[0].ids == named[0].ids or len(named) != len(said.lenses):
        return _lenses(said, before)
    return (*old, *named)


def _kept_number(said: Question, before: Question) -> int | None:
    """'a card for it' after 'the second one' means the second; not where another lens, body or way is asked for."""
    other = said.lenses or said.bodies or said.adapters or said.limits != Limits() or said.said(ALL)
    return None if other else before.number


def _went_on(heard: Heard, before: Question) -> str:
    """What a fragment without an intent of its own goes on with: after a reason or a name, the chain it was about."""
    if before.sought is not None:
        return "chain"  # 'and the knot?' after all of one's lenses asks of that one
    changed = heard.cast.bodies or heard.cast.pieces or heard.cast.without or heard.readings.limits
    return "chain" if before.intent in _ASIDE and changed else before.intent


def _lenses(said: Question, before: Question) -> tuple[Thing, ...]:
    if not said.lenses:
        return () if "lenses" in (said.said(ALL) or "") else before.lenses
    if len(said.lenses) == 1 and before.lenses:
        lens, old = said.lenses[0], before.lenses[0]
        if not lens.ids and not lens.format and lens.lens_kind in (None, old.lens_kind):
            if lens.focal_length_mm is None:
                traits = tuple(dict.fromkeys((*old.traits, *lens.traits)))
                return (replace(old, traits=traits, f_number=lens.f_number or old.f_number), *before.lenses[1:])
            if old.kind == "lens":
                return (lens,)  # a lens of one's own has its focal length: this is another
            return (replace(lens, kind=old.kind, ids=old.ids),)
        if lens.ids and lens.focal_length_mm is None and lens.lens_kind is None and old.kind == "mount":
            if _is_a_body(lens, old, said, before):
                return before.lenses
            same_lens = replace(old, ids=lens.ids, kind=lens.kind, words=lens.words, column=lens.column)
            return (same_lens if lens.kind == "mount" and lens.ids != old.ids else lens,)
    return said.lenses


def _bodies(said: Question, before: Question) -> tuple[tuple[Thing, ...], tuple[Thing, ...]]:
    """A format alone is another body of the same mount."""
    if said.bodies and not (said.bodies[0].ids or said.bodies[0].kind) and before.bodies:
        changed = replace(before.bodies[0], format=said.bodies[0].format or before.bodies[0].format)
        if before.bodies[0].kind in ("mount", "body"):
            return (changed, *before.bodies[1:]), said.things
    if said.bodies or "bodies" in (said.said(ALL) or ""):
        return said.bodies, said.things
    if said.lenses and before.lenses and _is_a_body(said.lenses[0], before.lenses[0], said, before):
        return said.lenses, said.things
    formats = [thing for thing in said.things if thing.kind == "format"]
    if formats and before.bodies and before.bodies[0].kind in ("mount", "body"):
        rest = tuple(thing for thing in said.things if thing.kind != "format")
        return (replace(before.bodies[0], format=formats[0].id), *before.bodies[1:]), rest
    return before.bodies, said.things or tuple(thing for thing in before.things if thing.kind == "format")


def _is_a_body(named: Thing, old: Thing, said: Question, before: Question) -> bool:
    """'and MFT?' after a lens of a told focal length: that lens keeps its mount, so another body is meant."""
    mount_only = named.kind == "mount" and named.words.casefold().split()[-1:] not in (["lens"], ["lenses"])
    if named.ids == old.ids:
        return False
    told = old.focal_length_mm is not None or (said.topic == "not" and bool(old.ids))
    return bool(mount_only and told and before.bodies and len(said.lenses) == 1 and not said.bodies)


def _without_it(heard: Heard) -> bool:
    return any(token.kind == "PREP" and token.value == "without" for token in heard.line.tokens)


def _kept_values(intent: str, lenses: tuple[Thing, ...], before: Question, said: Question) -> dict[str, str]:
    """What was told before: all of it while the same is asked, else what was measured of the lens, while it is that.

    A card tells of light and shutter too, so it keeps those of every kind of question.
    """
    values = dict(before.values)
    if intent == "card":
        values.pop("file", None)
        if said.lenses or said.bodies:
            values.pop(ALL, None)
        return values
    if intent == before.intent:
        return values
    same = [thing.ids for thing in lenses] == [thing.ids for thing in before.lenses]
    stays = _OF_LENS if same else frozenset()
    if not said.bodies or [thing.ids for thing in said.bodies] == [thing.ids for thing in before.bodies]:
        stays |= _OF_SEAT if same else frozenset()
    if same and intent in _NEAR and before.intent in _NEAR:
        stays |= _OF_SHOT
    return {key: text for key, text in values.items() if key in stays}


def _kept_distance(intent: str, before: Question) -> float | None:
    return before.distance_mm if intent == before.intent else None


def _limits(new: Limits, old: Limits) -> Limits:
    return Limits(
        new.pieces if new.pieces is not None else old.pieces,
        new.without_glass or (old.without_glass and not new.with_glass),
        new.with_glass or (old.with_glass and not new.without_glass),
        new.owned_only or old.owned_only,
        new.price_usd if new.price_usd is not None else old.price_usd,
        tuple(dict.fromkeys((*old.without, *new.without))),
        tuple(name for name in dict.fromkeys((*old.using, *new.using)) if name not in new.without),
        new.at_least or old.at_least,
        new.best or old.best,
        new.cheapest or old.cheapest,
    )
