"""Which rings stood between the lens and the body in what the user saw: by name, by the chains listed, by mounts."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from engine.answers.parts.resolve import Missing
from engine.answers.parts.wording import listed
from engine.base.interval import is_known
from engine.facts.catalogue import Catalogue
from engine.facts.kinds import FLAT_KINDS
from engine.facts.records import Adapter
from engine.judging.ranking import Listed
from grammar.questions import Question, Thing
from grammar.words.atoms import key_of

_ANY: Final = frozenset(["", "adapter", "electronic-adapter"])  # what is only called a ring may be any piece
_MOST_NAMES: Final = 4


def pieces_meant(
    question: Question, lens: str, body: str, rows: Sequence[Listed], catalogue: Catalogue
) -> tuple[str, ...] | Missing:
    """The ids of the pieces, from the lens; none where the words tell of none that can be known."""
    things = question.adapters
    if things and all(_own_id(thing) for thing in things):
        return tuple(_own_id(thing) for thing in things)
    mine = _own_meant(question, lens, body, catalogue)
    if mine:
        return (mine,)
    chain = _chain_meant(question, lens, body, rows)
    if chain:
        return chain
    out = []
    for thing in things:
        if not _own_id(thing) and not thing.front and (thing.piece or "") in _ANY:
            continue  # 'with a ring': that there was one is no news
        one = _own_id(thing) or _of_catalogue(thing, lens, body, catalogue)
        if isinstance(one, Missing):
            return one
        out.append(one)
    return tuple(out)


def _own_id(thing: Thing) -> str:
    return thing.id or "" if thing.kind == "adapter" else ""


def _own_meant(question: Question, lens: str, body: str, catalogue: Catalogue) -> str:
    """The one ring of one's own between that lens and that body that the words tell; empty where it is not one."""
    if len(question.adapters) != 1 or question.number is not None:
        return ""
    mount, host = catalogue.lenses[lens].mount, catalogue.bodies[body].mount
    piece = question.adapters[0]
    owned = [one for one in catalogue.adapters.values() if one.id in catalogue.gear_ids and one.kind == piece.piece]
    mine = [one.id for one in owned if one.front == mount and one.rear == host and _is(one, piece)]
    return mine[0] if len(mine) == 1 else ""


def _chain_meant(question: Question, lens: str, body: str, rows: Sequence[Listed]) -> tuple[str, ...]:
    """The adapters of the chain listed last that the words may mean: by its number, by its mounts, or the first."""
    mine = [row.judged for row in rows if row.judged.setup.lens.id == lens and row.judged.setup.body.id == body]
    if question.number is not None:
        mine = mine[question.number - 1 : question.number]
    for thing in question.adapters:
        mine = [judged for judged in mine if any(_is(one, thing) for one in judged.chain.adapters)]
    return tuple(adapter.id for adapter in mine[0].chain.adapters) if mine else ()


def _is(adapter: Adapter, thing: Thing) -> bool:
    """Whether the words may mean the adapter: its id, or its mounts, its kind and its thickness where they are told."""
    if _own_id(thing):
        return adapter.id == thing.id
    joins = not thing.front or (adapter.front in thing.front and (not thing.rear or adapter.rear in thing.rear))
    piece = thing.piece or ""
    # one who says 'cup' of the pair of mounts may have a flat ring before them, and the other way round
    alike = piece in _ANY or adapter.kind == piece or (bool(thing.front) and {piece, adapter.kind} <= FLAT_KINDS)
    return joins and alike and _as_thick(adapter, thing)


def _as_thick(adapter: Adapter, thing: Thing) -> bool:
    if thing.thickness_mm is None:
        return True
    short, long = adapter.thickness_mm.shortest, adapter.thickness_mm.longest
    low, high = thing.thickness_mm
    return is_known(short) and is_known(long) and short.least <= low and high <= long.greatest


def _of_catalogue(thing: Thing, lens: str, body: str, catalogue: Catalogue) -> str | Missing:
    """The one adapter of the facts that the words tell: by its name, or by its mounts, told or those of the pair."""
    mount, host = catalogue.lenses[lens].mount, catalogue.bodies[body].mount
    fit = [
        one
        for one in catalogue.adapters.values()
        if _is(one, thing) and (thing.front or (one.front == mount and one.rear == host))
    ]
    for closer in (
        [one for one in fit if key_of(one.name) == key_of(thing.words)],
        [one for one in fit if one.front == mount and one.owned],
        [one for one in fit if one.front == mount and one.kind in FLAT_KINDS],
        [one for one in fit if one.kind in FLAT_KINDS],
        fit,
    ):
        if len(closer) == 1:
            return closer[0].id
        if closer:
            fit = closer
            break
    names = [one.name for one in fit[:_MOST_NAMES]]
    which = (
        f"{listed(names, 'or')}{', or another' if len(fit) > len(names) else ''}?" if names else "Name one of yours,"
    )
    rest = " Name it so." if names else " or first ask how the lens gets on."
    return Missing("adapter", f"Which ring is '{thing.words}'? {which}{rest}")
