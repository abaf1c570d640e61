"""What was seen of a mount: how it couples, who works the iris of its lenses, of what kind of camera it is."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from engine.answers.parts.said import mentions
from engine.facts.records import Mount
from grammar.questions import Question

_SCREW: Final = "screw"
_SEEN: Final = "seen-"  # with the kind of a mount behind it, the key of the words for it
_OF_CAMERAS: Final = ("slr", "rangefinder", "medium-format", "cine", "video", "mirrorless", "industrial")
# what turns in by lugs, the lens or a ring of it; the trade calls either a bayonet, and a notch a plain sleeve may have
_BAYONETS: Final = ("bayonet", "breech")
_NOTCHED: Final = (*_BAYONETS, "push-in")
_COUPLINGS: Final = (_SCREW, *_BAYONETS)
# who works the iris where this is seen of the lens; 'mixed' mounts have lenses of both sorts
_WITHOUT_RING: Final = frozenset({"lever", "electronic", "none", "mixed"})
_WITH_CONTACTS: Final = frozenset({"electronic", "mixed", "lever"})
_WITH_LEVER: Final = frozenset({"lever", "mixed", "ring"})
_WITH_LEAVES: Final = frozenset({"shutter-behind-lens", "shutter-in-lens"})  # traits of mounts of such cameras
_WITH_RING: Final = frozenset({"ring", "mixed"})


def is_coupled_so(mount: Mount, question: Question) -> bool:
    """Whether the mount is of the coupling that the question names; of any where it names none."""
    named = {word for word in _COUPLINGS if mentions(question, f"coupled-{word}")}
    if mentions(question, "no-screw", "no-thread"):  # 'no screw' names what it has not
        named.discard(_SCREW)
        if mount.coupling.startswith(_SCREW):
            return False
    if named == {"bayonet"}:
        named.update(_BAYONETS)
    if not named and mentions(question, "coupled-lugs"):
        named.update(_NOTCHED)
    return not named or any(mount.coupling.startswith(word) for word in named)


def is_coupled_as_asked(mount: Mount, question: Question) -> bool:
    """Whether the mount is of the sort that alone is asked for: 'which screw mounts go on NX', 'bayonets only'."""
    if mentions(question, "screws-only"):
        return mount.coupling == _SCREW
    return not mentions(question, "bayonets-only") or mount.coupling.startswith(_BAYONETS)


LUGS = ("coupled-lugs", "coupled-bayonet", "coupled-breech")  # keys of what holds a mount that is no thread


def is_coupled_by_lugs(question: Question) -> bool:
    """Whether the question tells of a mount that turns in or is clamped, and of no thread."""
    denied = question.places("no-lugs")
    here = [one for key in LUGS for one in question.places(key)]
    if here and denied:
        return any(not any(no.at <= one.at < no.end for no in denied) for one in here)
    return mentions(question, *LUGS)


def as_seen(mounts: Iterable[Mount], question: Question) -> list[Mount]:
    """Those that are also otherwise as they were seen; all of them where none is, since one may have looked amiss."""
    kept = list(mounts)
    for test in (_has_iris_so, _is_of_kind):
        kept = [mount for mount in kept if test(mount, question)] or kept
    return kept


def looks_so(mount: Mount, question: Question) -> bool:
    """Whether nothing that was seen speaks against the mount."""
    return is_coupled_so(mount, question) and _has_iris_so(mount, question) and _is_of_kind(mount, question)


def _has_iris_so(mount: Mount, question: Question) -> bool:
    contacts = mentions(question, "seen-contacts") and not mentions(question, "seen-contacts-denied")
    lever = mentions(question, "seen-lever") and not mentions(question, "seen-lever-denied")
    ringless = mentions(question, "seen-no-iris-ring")  # 'no aperture ring on it' has none, whatever else is said of it
    seen = (
        (ringless, _WITHOUT_RING), (contacts, _WITH_CONTACTS), (lever, _WITH_LEVER),
        (mentions(question, "seen-iris-ring") and not ringless, _WITH_RING),
    )  # fmt: skip
    return all(mount.iris in irises for told, irises in seen if told)


def kinds_said(question: Question, kinds: Iterable[str]) -> frozenset[str]:
    """Which of these kinds of mounts the question has words of: those for the cameras or the lenses of the kind."""
    return frozenset(kind for kind in kinds if mentions(question, f"{_SEEN}{kind}"))


def _is_of_kind(mount: Mount, question: Question) -> bool:
    kinds = kinds_said(question, _OF_CAMERAS)
    leaf = not mentions(question, "seen-leaf-shutter") or bool(_WITH_LEAVES & set(mount.traits))
    return leaf and (not kinds or mount.kind in kinds)
