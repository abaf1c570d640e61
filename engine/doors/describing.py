"""What an offer is, in a few words for the menu."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.wording import f_number, ranged, trimmed
from engine.base.interval import Interval, Measure
from engine.base.plain import plain
from engine.doors.offers import Offer
from engine.facts.catalogue import Catalogue

LONGEST: Final = 44  # letters of a description
_NARROW_MM: Final = 0.5  # a tolerance, not a range: one figure tells it
_WORDS: Final = {
    "ask": "asks", "limit": "limit", "prep": "where", "order": "a line of its own", "piece": "ring or adapter",
    "lens": "lens", "kind": "kind of lens", "trait": "trait of a lens", "body": "body", "frame": "what is lit",
    "mountword": "mount", "light": "light", "target": "what is shot", "measure": "what is measured",
    "own": "asks of all your gear", "condition": "condition", "sorting": "what comes first",
    "ordinal": "one of the last answer", "turns": "turns", "stops": "stops", "ratio": "magnification",
}  # fmt: skip


def described(offer: Offer, facts: Catalogue) -> str:
    """A short description: what it is, and the number one would tell it by."""
    say = _RECORDS.get(offer.sort)
    text = say(offer.id, facts) if say else _word(offer)
    return plain(" ".join(text.split()), LONGEST)


def _word(offer: Offer) -> str:
    sort = _WORDS.get(offer.sort, offer.sort)
    return f"{sort}, as '{offer.label}'" if offer.label else sort


def _mount(id_: str, facts: Catalogue) -> str:
    mount = facts.mounts[id_]
    if mount.adjustable:
        return "mount, no register of its own"
    known = isinstance(mount.register_mm, Interval)
    return f"mount, {_mm(mount.register_mm)} register" if known else "mount, register not known"


def _format(id_: str, facts: Catalogue) -> str:
    form = facts.formats[id_]
    return f"format, {trimmed(form.width_mm, 1)} x {trimmed(form.height_mm, 1)} mm"


def _thread(id_: str, facts: Catalogue) -> str:
    thread = facts.threads[id_]
    return f"thread, pitch {_mm(thread.pitch_mm)}"


def _lens(id_: str, facts: Catalogue) -> str:
    lens = facts.lenses[id_]
    size = _mm(lens.focal_length_mm) if isinstance(lens.focal_length_mm, Interval) else ""
    speed = f"f/{f_number(lens.f_number.nominal)}" if isinstance(lens.f_number, Interval) else ""
    whose = "your" if id_ in facts.gear_ids else "a"
    return f"{whose} {size} {speed} {_designation(lens.mount, facts)} lens"


def _body(id_: str, facts: Catalogue) -> str:
    body = facts.bodies[id_]
    form = facts.formats[body.format].name if body.format in facts.formats else body.format
    whose = "your" if id_ in facts.gear_ids else "any"
    return f"{whose} body, {_designation(body.mount, facts)}, {form}"


def _adapter(id_: str, facts: Catalogue) -> str:
    adapter = facts.adapters[id_]
    if id_ in facts.gear_ids:
        return f"your adapter, {_designation(adapter.front, facts)} to {_designation(adapter.rear, facts)}"
    price = adapter.price_usd
    cost = f", {trimmed(price[0], 0)} to {trimmed(price[1], 0)} dollars" if price else ""
    return f"{adapter.kind.replace('-', ' ')} adapter{cost}" if adapter.kind != "plain" else f"adapter{cost}"


def _designation(id_: str, facts: Catalogue) -> str:
    return facts.mounts[id_].designation if id_ in facts.mounts else id_


def _mm(value: Measure) -> str:
    if not isinstance(value, Interval):
        return "not known"
    return ranged(value, lambda one: f"{trimmed(one, 3)} mm", gap=_NARROW_MM)


def _term(id_: str, facts: Catalogue) -> str:
    if id_ in facts.terms:
        return f"word: {facts.terms[id_].means}"
    return f"advice: {facts.advice[id_].topic.replace('-', ' ')}" if id_ in facts.advice else "word"


_RECORDS: Final = {
    "mount": _mount, "format": _format, "thread": _thread, "my lens": _lens, "named lens": _lens, "my body": _body,
    "named body": _body, "my adapter": _adapter, "named adapter": _adapter, "term": _term,
}  # fmt: skip
