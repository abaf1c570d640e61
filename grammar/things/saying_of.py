"""What is said of a thing named before it: 'the enlarger lens is 39 mm thread', 'the body has Z'."""

from __future__ import annotations

from engine.base.compact import replace
from grammar.things.casting import Part
from grammar.things.standins import LEAST_FOCAL
from grammar.words.tokens import Token

_SPOKEN_OF = (["DET", "NUMBER", "VERB"], ["DET", "LENGTH", "VERB"], ["DET", "FOCAL", "VERB"])
_NAMED = ("mount", "lens", "body")


def with_sayings_parted(tokens: list[Token]) -> list[Token]:
    """'the 50 is F mount the 135 is M42': a comma where, right behind a mount, the next lens is spoken of."""
    out: list[Token] = []
    for at, token in enumerate(tokens):
        told = [one.kind for one in tokens[at : at + 3]] in _SPOKEN_OF and token.value == "the"
        if told and out and out[-1].kind in ("MOUNT", "MOUNTWORD") and tokens[at + 2].value == "be":
            out.append(Token("JOIN", ",", token.column, value=","))
        out.append(token)
    return out


def with_said(parts: list[Part]) -> list[Part]:
    """The parts with what is said of a thing taken into that one; its `subject` keeps the words it was meant by."""
    out: list[Part] = []
    for at, part in enumerate(parts):
        after = parts[at + 1] if at + 1 < len(parts) else None
        beside = after is not None and after.noun.listed == part.noun.listed and after.noun.head is None
        listed = beside and after is not None and bool(after.noun.join)
        if part.noun.told and out and not listed and _is_register(out[-1], part):
            continue
        if not (part.noun.told and out and not listed and _take(out[-1], part)):
            out.append(part)
    return out


def _is_register(subject: Part, more: Part) -> bool:
    """'RF is 20 mm': what is told of the mount of a body is its register, and no focal length."""
    return subject.sort == "mount" and subject.is_host and subject.noun.head is None and more.sort == "length"


def _has_another_mount(subject: Part, more: Part) -> bool:
    """Whether both tell a mount, and none that the other's name may stand for."""
    told, told_too = ({id_ for mount in part.mounts for id_ in mount.ids} for part in (subject, more))
    return bool(told and told_too) and not told & told_too


def _take(subject: Part, more: Part) -> bool:
    """Whether `more` is said of `subject`, which then holds it."""
    of_mount = subject.sort == "nothing" and subject.noun.heads == "MOUNTWORD"
    bare = subject.noun.first("LENGTH") if subject.sort == "length" and more.sort == "mount" else None
    if bare is not None and bare.unit == "mm" and bare.numbers[0] >= LEAST_FOCAL:
        subject.sort, subject.focal = "lens", bare.numbers[0]
    if more.sort not in ("mount", "length", "lens") or not (subject.sort in ("lens", "body") or of_mount):
        return False
    if more.noun.head is not None and more.noun.heads not in ("MOUNTWORD", subject.noun.heads):
        return False
    if more.named and (subject.named or subject.sort != more.sort):
        return False
    if subject.noun.headed_by("BODY") and more.sort != "mount":
        return False
    if subject.sort == "lens" and subject.noun.heads == "LENS" and _has_another_mount(subject, more):
        return False  # 'a T2 lens, is that M42' asks of two
    if subject.focal and more.focal and subject.focal != more.focal:
        return False  # 'my 16 is unusable and the 100 is fine' are two
    token = more.noun.first("LENGTH")
    if more.sort == "length":
        if of_mount or token is None or token.unit != "mm" or token.numbers[0] < 4:
            return False
        more.focal = token.numbers[0]
    subject.subject = replace(subject)
    if of_mount:
        subject.sort = "lens"
    subject.named = subject.named or more.named  # 'my lens is fogged, it's the teal'
    if more.mounts:
        subject.mounts, subject.implied = list(more.mounts), ()
        subject.was_mount, subject.is_host = False, more.is_host
    subject.kinds = [*subject.kinds, *(kind for kind in more.kinds if kind not in subject.kinds)]
    subject.traits = [*subject.traits, *(trait for trait in more.traits if trait not in subject.traits)]
    subject.formats = list(more.formats or subject.formats)
    subject.focal = more.focal or subject.focal
    subject.f_number = more.f_number or subject.f_number
    subject.zoom = more.zoom or subject.zoom
    subject.implied = subject.implied or (more.implied if not subject.mounts else ())
    return True


def without_denied(parts: list[Part]) -> tuple[list[Part], list[Part]]:
    """The parts without the mounts that something is said not to have, where it is said what it has; and those."""
    denied = [part for part in parts if part.noun.denied and part.mounts and part.sort in _NAMED]
    if not any(part.mounts for part in parts if part not in denied):
        return parts, []
    return [part for part in parts if part not in denied], denied
