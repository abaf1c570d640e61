"""A fragment and the question before it, made one: 'and on the full frame body?', 'at f/8?', 'without it'."""

from __future__ import annotations

from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard
from grammar.questions import ALL, Limits, Question, Thing
from grammar.telling import built

# intents that need nothing from before once they are plainly asked
_FREE: Final = frozenset(
    ["definition", "out-of-scope", "identify-mount", "buy-plan", "list-fits", "look-alike", "hazard", "compare"]
)
_ASIDE: Final = frozenset(["why", "identify-mount", "look-alike", "definition"])
_PLAIN: Final = 4.0  # the weight from which an intent is plainly asked
_OWN: Final = 1.5  # the weight from which a fragment has an intent of its own
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
    if best in _FREE and plain and (heard.tells("thing") or best in ("definition", "out-of-scope")):
        return False
    words = [token for token in heard.line.tokens if token.kind not in ("STOP", "MARK", "JOIN")]
    return not (plain and lens and len(words) > 6)


def follow(heard: Heard, before: Question) -> Question:
    """The question before with what the text says instead; `follows` is set."""
    best = heard.weighed.best
    own = best is not None and heard.weighed.weight(best) >= _OWN
    intent = best if own and best is not None else _went_on(heard, before)
    said = built(heard, intent)
    lenses = _lenses(said, before)
    bodies, things = _bodies(said, before)
    without = heard.tells("without-piece") or _without_it(heard)
    adapters = () if without and not said.adapters else said.adapters or before.adapters
    return replace(
        said,
        lenses=lenses,
        bodies=bodies,
        adapters=adapters,
        things=things,
        limits=_limits(said.limits, before.limits),
        f_number=said.f_number if said.f_number is not None else before.f_number,
        distance_mm=said.distance_mm if said.distance_mm is not None else _kept_distance(intent, before),
        number=said.number if said.number is not None or intent != "card" else _kept_number(said, before),
        values=tuple({**_kept_values(intent, before, said), **dict(said.values)}.items()),
        feet=said.feet or (before.feet and not heard.tells("metres")),
        follows=True,
    )


def _kept_number(said: Question, before: Question) -> int | None:
    """'a card for it' after 'the second one' means the second; not where another lens, body or way is asked for."""
    other = said.lenses or said.bodies or said.adapters or said.limits != Limits() or said.said(ALL)
    return None if other else before.number


def _kept_values(intent: str, before: Question, said: Question) -> dict[str, str]:
    """What was said of light, shutter and the like: kept by the same kind of question, and for a card by every one."""
    if intent != "card":
        return dict(before.values) if intent == before.intent else {}
    kept = {key: text for key, text in before.values if key != "file"}
    if said.lenses or said.bodies:
        kept.pop(ALL, None)
    return kept


def _went_on(heard: Heard, before: Question) -> str:
    """What a fragment without an intent of its own goes on with: after a reason or a name, the chain it was about."""
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
    told = old.focal_length_mm is not None
    return bool(mount_only and told and before.bodies and len(said.lenses) == 1 and not said.bodies)


def _without_it(heard: Heard) -> bool:
    return any(token.kind == "PREP" and token.value == "without" for token in heard.line.tokens)


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
