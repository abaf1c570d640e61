"""Mounts listed by what is asked of them alone: a name that several carry, no aperture ring, a shutter in the lens."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from engine.answers.found.thread_told import ASSUMED
from engine.answers.parts.answer import ANSWERED, Answer, Line
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.mount_line import how_rare, mount_line, mount_numbers
from engine.answers.parts.said import mentions, number, numbers
from engine.answers.parts.wording import listed, small_mm
from engine.answers.seat.seen import is_coupled_so, kinds_said
from engine.base.interval import is_known
from engine.facts.catalogue import Catalogue
from engine.facts.kinds import ACCESSORIES
from engine.facts.records import Mount
from grammar.kinds import LIST_FITS
from grammar.questions import Question, Thing

MOST: Final = 24
BY_CALIPER: Final = "throat-by-caliper"
BY_PAPER: Final = "register-by-paper"  # of the facts: how near a register is told
# kinds of mounts that may be asked for, by the kind of lens or by words for their cameras
_KINDS: Final = frozenset(["enlarger", "microscope", "projector", "cine", "rangefinder", "medium-format"])
_SPOKEN: Final = ("cine", "medium-format", "rangefinder")
PLURALS: Final = (["mounts"], ["threads"], ["barrels"])  # 'the X mounts', not what mounts an X lens goes on
MODERN: Final = "mirrorless"
APPARATUS: Final = frozenset(["microscope", "projector", "industrial", "astro", "accessory"])  # no cameras of one's own
BY_BODY: Final = frozenset(["electronic"])
LISTED: Final = "mounts-listed"  # key of phrases that ask for mounts as such
# what is asked of the lenses of a mount: by key of the phrases, in words, and whether a mount has it
_ASKED: Final[tuple[tuple[str, str, Callable[[Mount], bool]], ...]] = (
    ("listed-electronic-iris", "an iris that only the body drives", lambda one: one.iris == "electronic"),
    ("listed-no-iris-ring", "no aperture ring on the lens", lambda one: one.iris in ("lever", "none", "electronic")),
    ("listed-leaf-shutter", "a shutter in the lens", lambda one: "shutter-in-lens" in one.traits),
    ("coupled-breech", "a breech lock", lambda one: one.coupling == "breech-lock"),
    ("listed-no-focusing", "no focusing in the lens", lambda one: "no-focusing" in one.traits),
)


def mounts_listed(question: Question, knowledge: Knowledge) -> Answer | None:
    """The mounts of the one name typed, or with what is asked of their lenses; None where neither is asked."""
    if not mentions(question, LISTED) or question.adapters or question.follows or mentions(question, "takes-it"):
        return None
    facts = knowledge.catalogue
    things = [thing for thing in (*question.lenses, *question.bodies, *question.things) if thing.ids]
    if len(things) == 1 and things[0].kind == "mount" and things[0].words.casefold().split()[-1:] in PLURALS:
        rows = [facts.mounts[name] for name in _of_name(things[0], facts)]
        if len(rows) > 1:
            return _answer(question, f"{len(rows)} mounts go by that name:", rows, knowledge)
    named = [thing for thing in things if ASSUMED not in thing.traits]
    asked = next((row for row in _ASKED if mentions(question, row[0])), None) if not named else None
    if asked is None:
        return _of_kind(question, knowledge) if not named else None
    _, words, has = asked
    rows = [one for one in facts.mounts.values() if one.kind not in ACCESSORIES and has(one)]
    rows = [one for one in rows if one.kind != MODERN] if mentions(question, "film-days") else rows
    return _answer(question, f"{len(rows)} mounts have {words}:", rows, knowledge)


def _of_kind(question: Question, knowledge: Knowledge) -> Answer | None:
    """'which enlarger threads exist', 'what cine mounts are 52 mm deep': those of a trade, of the register told."""
    trades = {_trade(lens, knowledge.catalogue) for lens in question.lenses}
    kinds = (trades & _KINDS) | kinds_said(question, _SPOKEN)
    told = number(question, "flange_to_image", "depth") or next(iter(numbers(question, "length", "numbers")), None)
    if len(kinds) != 1 or question.bodies:
        return None
    mounts = knowledge.catalogue.mounts
    apart = {mounts[name].thread or name for name in question.limits.without if name in mounts}  # 'besides RMS'
    rows = [one for one in mounts.values() if one.kind in kinds and not {one.id, one.thread} & apart]
    rows = [one for one in rows if is_coupled_so(one, question)]
    if told is not None:
        good = knowledge.catalogue.assumptions[BY_PAPER].value.greatest
        rows = [one for one in rows if is_known(one.register_mm) and abs(one.register_mm.nominal - told) <= good]
    wide = number(question, "bore", "throat")
    if wide is not None:
        good = knowledge.catalogue.assumptions[BY_CALIPER].value.greatest
        rows = [one for one in rows if is_known(one.throat_mm) and abs(one.throat_mm.nominal - wide) <= good]
    of = f"{next(iter(kinds))} mounts"
    of += f" of {small_mm(told)} from flange to image" if told is not None else ""
    of += f" with an opening of {small_mm(wide)}" if wide is not None else ""
    return _answer(question, f"{len(rows)} {of}:", rows, knowledge) if rows else None


def _trade(lens: Thing, facts: Catalogue) -> str | None:
    """The kind of mount that lenses of its kind are made with; of an apparatus, by the mount that is assumed."""
    mount = facts.mounts.get(lens.id or "") if ASSUMED in lens.traits else None
    return mount.kind if mount is not None and mount.kind in APPARATUS else lens.lens_kind


def _of_name(thing: Thing, facts: Catalogue) -> tuple[str, ...]:
    """The mounts of the name that is typed, where several carry it."""
    rows = [row for row in facts.shared.values() if set(thing.ids) <= set(row.mounts)]
    said = (thing.words.casefold(), thing.words.split(" ")[0].casefold())
    named = (row.mounts for row in rows if any(one.casefold() in said for one in row.says))
    return rows[0].mounts if thing.ambiguous and rows else next(named, ())


def _answer(question: Question, head: str, rows: list[Mount], knowledge: Knowledge) -> Answer:
    rows = sorted(rows, key=lambda mount: (mount.kind in APPARATUS, mount.iris in BY_BODY, how_rare(mount, knowledge)))
    lines = [Line("head", head)]
    lines += [Line("fact", f"{mount.designation}: {mount_line(mount, knowledge)}", 1) for mount in rows[:MOST]]
    if len(rows) > MOST:
        rest = listed([mount.designation for mount in rows[MOST:]])
        lines.append(Line("note", f"And {len(rows) - MOST} more: {rest}."))
    quantities = tuple(one for mount in rows for one in mount_numbers(mount, knowledge))
    return Answer(question.text, LIST_FITS, ANSWERED, tuple(lines), question=question, quantities=quantities)
