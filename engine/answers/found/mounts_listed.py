"""Mounts listed by what is asked of them alone: a name that several carry, no aperture ring, a shutter in the lens."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from engine.answers.parts.answer import ANSWERED, Answer, Line
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.mount_line import how_rare, mount_line, mount_numbers
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import listed
from engine.facts.catalogue import Catalogue
from engine.facts.kinds import ACCESSORIES
from engine.facts.records import Mount
from grammar.kinds import LIST_FITS
from grammar.questions import Question, Thing

MOST: Final = 24
PLURAL: Final = "mounts"  # 'the X mounts', not what mounts an X lens goes on
MODERN: Final = "mirrorless"
APPARATUS: Final = frozenset(["microscope", "projector", "industrial", "astro", "accessory"])  # no cameras of one's own
BY_BODY: Final = frozenset(["electronic"])
LISTED: Final = "mounts-listed"  # key of phrases that ask for mounts as such
# what is asked of the lenses of a mount: by key of the phrases, in words, and whether a mount has it
_ASKED: Final[tuple[tuple[str, str, Callable[[Mount], bool]], ...]] = (
    ("listed-electronic-iris", "an iris that only the body drives", lambda one: one.iris == "electronic"),
    ("listed-no-iris-ring", "no aperture ring on the lens", lambda one: one.iris in ("lever", "none", "electronic")),
    ("listed-leaf-shutter", "a shutter in the lens", lambda one: "shutter-in-lens" in one.traits),
    ("listed-no-focusing", "no focusing in the lens", lambda one: "no-focusing" in one.traits),
)


def mounts_listed(question: Question, knowledge: Knowledge) -> Answer | None:
    """The mounts of the one name typed, or with what is asked of their lenses; None where neither is asked."""
    if not mentions(question, LISTED) or question.adapters or question.follows or mentions(question, "takes-it"):
        return None
    facts = knowledge.catalogue
    things = [thing for thing in (*question.lenses, *question.bodies, *question.things) if thing.ids]
    if len(things) == 1 and things[0].kind == "mount" and things[0].words.casefold().split()[-1:] == [PLURAL]:
        ids = _of_name(things[0], facts)
        rows = [facts.mounts[name] for name in ids]
        return _answer(question, f"{len(rows)} mounts go by that name:", rows, knowledge) if len(rows) > 1 else None
    asked = next((row for row in _ASKED if mentions(question, row[0])), None) if not things else None
    if asked is None:
        return None
    _, words, has = asked
    rows = [one for one in facts.mounts.values() if one.kind not in ACCESSORIES and has(one)]
    rows = [one for one in rows if one.kind != MODERN] if mentions(question, "film-days") else rows
    return _answer(question, f"{len(rows)} mounts have {words}:", rows, knowledge)


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
