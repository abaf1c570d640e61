"""Whose a mount is that stands alone: of the lens or of the body, by its preposition and by what stands beside it."""

from __future__ import annotations

from typing import Final

from grammar.things.beside_what_holds import is_held_by
from grammar.things.cast import Cast
from grammar.things.casting import Part
from grammar.things.phrases import TOWARDS
from grammar.words.token_kinds import CHOICES

AND: Final = frozenset(["and", "+", "&"])
USED: Final = frozenset(["via"])
_MADE_FOR: Final = "made-for"
_PUT: Final = frozenset([*TOWARDS, "for", _MADE_FOR])  # before what a lens is put on, or is to be
_OF: Final = frozenset(["of", "in", "for", "with", _MADE_FOR])


def place_mount(cast: Cast, part: Part, before: Part | None, parts: list[Part]) -> None:
    """A mount told by itself put where it belongs: with the lens, the body or the ring that it is of."""
    _Placing(cast, part, before, parts).place()


class _Placing:
    """One mount, with what was placed before it. Each step tells whether it has placed it; the first that does decides.

    `role`: the preposition before it. `near`: whether it follows on what stands before it.
    """

    def __init__(self, cast: Cast, part: Part, before: Part | None, parts: list[Part]) -> None:
        self.cast, self.part, self.before, self.parts = cast, part, before, parts
        self.role = part.noun.role
        self.lens = cast.lenses[-1] if cast.lenses else None
        said_of = part.noun.told or self.role == _MADE_FOR  # 'a 50 mm that was made for MFT'
        self.near = before is not None and (not part.noun.apart or said_of)

    def place(self) -> None:
        in_brackets = (self._ends_ring, self._told_again)
        steps = (self._through, self._by_thread, self._in_list, self._put_on, self._counted, self._of_focal)
        beside = (self._with_bodies, self._asked_of_lens, self._beside_body, self._where_to)
        all_steps = (*in_brackets, *steps, *beside, self._of_unmounted, self._of_lens)
        if not (is_held_by(self.cast, self.part, self.before) or any(step() for step in all_steps)):
            self._by_role()

    def _as(self, sort: str) -> bool:
        self.part.sort = sort
        (self.cast.bodies if sort == "body" else self.cast.lenses).append(self.part)
        return True

    def _ends_ring(self) -> bool:
        """'LTM-to-dslr rings (EF)': in brackets behind a ring that takes another mount, it is what the ring ends on."""
        part, ring = self.part, self.before
        if ring is None or ring.sort != "piece" or len(ring.mounts) != 1 or self.role or not part.noun.aside:
            return False
        if ring.mounts[0].ids[0] == part.mounts[0].ids[0]:
            return False
        ring.mounts.extend(part.mounts)
        part.sort = "nothing"
        return True

    def _told_again(self) -> bool:
        """'off a half frame SLR (the Pen F bayonet)': in brackets only the mount that the lens has already."""
        told = {mount.ids[0] for lens in self.cast.lenses for mount in lens.mounts}
        if not self.part.noun.aside or self.part.mounts[0].ids[0] not in told:
            return False
        self.part.sort = "nothing"
        return True

    def _through(self) -> bool:
        """'bodies L and X, through M': never one more of the list."""
        if self.role not in USED or self.lens is None:
            return False
        self.cast.using.append(self.part)
        return True

    def _by_thread(self) -> bool:
        """'a 100 mm enlarger lens on EF, M39 thread', 'no name lens, 42 mm screw'."""
        noun, lens = self.part.noun, self.lens
        by_width = self.part.mounts[0].text[:2].isdigit()
        screwed_on = (
            ("thread" in noun.text.casefold() or by_width) and not self.part.is_host and (not self.role or noun.join)
        )
        if not screwed_on or lens is None or lens.has_mount:
            return False
        lens.mounts.extend(self.part.mounts)
        self.part.sort = "lens"
        return True

    def _in_list(self) -> bool:
        """One of a list goes where the one before it went, unless two bare names can only be lens and body."""
        part, before, lens = self.part, self.before, self.lens
        in_list = before is not None and before.noun.listed == part.noun.listed and before.was_mount
        peer = before if in_list else None
        if peer and part.is_host and self.role in ("for", *TOWARDS) and peer.noun.role != self.role:
            peer = None  # 'in C and in CS, for MFT'
        if peer is not None and part.is_host and not peer.is_host and self.role == "with" and part.noun.join == ",":
            peer, self.role = None, ""  # 'a lens with C mount, MFT?'
        if peer is not None and part.is_host and not peer.is_host and part.noun.join == ",":
            placed = any(one is peer for one in (*self.cast.lenses, *self.cast.bodies))
            # 'my 50 mm FD & C mount, MFT', 'a 58 in SR mount, E'
            peer = peer if placed and peer.noun.join not in AND else None
        if peer is None or not part.noun.join:
            return False
        only_two = part.noun.join == "," and len(self.parts) == 2
        self._as("body" if peer.sort == "body" or only_two else "lens")
        numbered = peer.noun.first("LENGTH", "FOCAL", "COMBO") or part.focal
        if part.sort == peer.sort == "lens" and lens is not None and lens.focal and not numbered:
            # '50 mm lenses in FD, OM and K': the first was told of that lens, the others are more of the kind
            part.focal, part.f_number, part.kinds = lens.focal, lens.f_number, list(lens.kinds)
        return True

    def _put_on(self) -> bool:
        """'85 mm f/1.8, EF on K': the mount that is put on another is the lens's, though bodies have it as well."""
        part, lens = self.part, self.lens
        after = self.parts[self.parts.index(part) + 1 :][:1]
        if self.role or lens is None or lens.has_mount_or_kind or lens.named or self.cast.bodies or not after:
            return False
        other = after[0]
        if other.noun.role not in _PUT or not other.mounts or other.noun.sentence != part.noun.sentence:
            return False
        lens.mounts.extend(part.mounts)
        part.sort = "lens"
        return True

    def _counted(self) -> bool:
        """'3 MD lenses + 1 Exakta', 'two K lenses one OM'."""
        part, before = self.part, self.before
        if self.role or part.is_host or before is None or before.sort != "lens" or not before.has_mount:
            return False
        joined = part.noun.join in AND and before.noun.listed == part.noun.listed
        return (part.count is not None or joined) and self._as("lens")

    def _of_focal(self) -> bool:
        """'a 135 mm in M42': the length before it is a lens."""
        before, cast = self.before, self.cast
        if before is None or not self.near or self.role not in ("in", "of") or not is_focal(before):
            return False
        before.sort, before.focal = "lens", before.noun.mods[0].numbers[0]
        before.mounts.extend(self.part.mounts)
        cast.lengths.remove(before)
        cast.lenses.append(before)
        return True

    def _with_bodies(self) -> bool:
        part, before = self.part, self.before
        joined = self.role in ("", "with") and bool(part.noun.join)
        body = before is not None and before.sort == "body" and before.has_mount and part.is_host
        either = body and self.role == "" and part.noun.join in CHOICES  # 'E body or MFT for M42 lenses'
        return joined and (either or _told_of_bodies(part, self.parts)) and self._as("body")

    def _asked_of_lens(self) -> bool:
        """'cctv lens, 1-32 thread. is it C or CS?': the first of two between which it lies what the lens has."""
        part, lens = self.part, self.lens
        rest = self.parts[self.parts.index(part) + 1 :][:1]
        either = bool(rest) and rest[0].noun.join in CHOICES and bool(rest[0].mounts) and not rest[0].noun.role
        if not (part.noun.told and either) or self.role or part.is_host or lens is None or lens.has_mount:
            return False
        part.focal, part.f_number, part.kinds = lens.focal, lens.f_number, list(lens.kinds)
        if lens in self.cast.lenses:
            self.cast.lenses.remove(lens)
        return self._as("lens")

    def _beside_body(self) -> bool:
        """'a body for Exakta': that is what it is to take."""
        before = self.before
        bare_body = before is not None and before.sort == "body" and before.is_bare
        return bare_body and self.role == "for" and not self.part.is_host and self._as("lens")

    def _where_to(self) -> bool:
        """The mount of a body behind a lens whose own is told by what it is, or by what it was on."""
        before, lens = self.before, self.lens
        if self.role or not self.part.is_host:
            return False
        if lens is None and self._is_for_lenses():
            return self._as("body")
        others = any(one is not self.part and (one.sort == "body" or one.was_mount) for one in self.parts)
        if lens is None and self.part.noun.join == "," and not others and any(map(is_focal, self.cast.lengths)):
            return self._as("body")  # 'a 58 mm, 1.4 tc, MFT'
        implied = self.near and before is not None and before.sort == "lens" and bool(before.implied)
        by_camera = lens is not None and lens.by_camera
        if lens is not None and by_camera and not lens.has_mount and self._is_put_behind():
            lens.mounts.extend(self.part.mounts)  # 'from an AF rangefinder camera, G bayonet, on Z'
            self.part.sort = "lens"
            return True
        # 'a 100 enlarger lens, mft': its kind has a thread of its own; 'lens off a half frame slr, E mount'
        return (implied or by_camera) and self._as("body")

    def _is_for_lenses(self) -> bool:
        """'E or MFT for lenses from a 16 mm camera': what lenses without a mount are asked for is a body."""
        rest = self.parts[self.parts.index(self.part) + 1 :]
        told = [one for one in rest if one.noun.head is not None and one.noun.role == "for"]
        return bool(told) and told[0].sort == "lens" and not told[0].has_mount_or_kind

    def _is_put_behind(self) -> bool:
        """Whether a mount that it is to go on follows, so that this one is not that of the body."""
        rest = self.parts[self.parts.index(self.part) + 1 :]
        return any(one.is_host and one.noun.role in TOWARDS for one in rest)

    def _of_unmounted(self) -> bool:
        """What stands right before it, and has no mount yet, has this one."""
        part, before = self.part, self.before
        if before is None or not self.near or before.sort not in ("lens", "body") or before.has_mount:
            return False
        # 'a 2.8 mm cctv fisheye, CS. I want it on MFT' has no word for a lens but its kind
        headed = before.noun.head is not None or (before.kinds and self._is_put_behind())
        if (self.role not in _OF and (self.role or not headed)) or self._ends_several():
            return False
        if before.sort == "body" and before.noun.role == "from" and self.lens is not None and self.lens.by_camera:
            before = self.lens  # 'a 45 mm from a rangefinder camera with G bayonet': the lens came off that
        before.mounts.extend(part.mounts)
        before.traits.extend(part.traits)
        before.is_host = before.is_host or part.is_host
        part.sort = before.sort
        return True

    def _ends_several(self) -> bool:
        """'an M42 135 plus a projection lens, X': behind the last of several it is what they go on."""
        listed = self.before is not None and self.before.noun.join in (*AND, *CHOICES, ",")
        others = any(one.has_mount for one in self.cast.lenses[:-1])
        return self.part.is_host and self.part.noun.join == "," and listed and others

    def _of_lens(self) -> bool:
        """The lens spoken of last, which has no mount yet, has this one."""
        part, lens = self.part, self.lens
        if lens is None or lens.has_mount:
            return False
        if (part.noun.heads == "MOUNTWORD" or self._follows_word()) and self.role not in TOWARDS:
            lens.mounts.extend(part.mounts)
            part.sort = "lens"
            return True
        told = part.noun.told and not part.is_host  # 'does a 35 1.4 cover full frame, it is MD'
        if self.role or lens.implied or lens.strange or not (self.cast.pieces or told) or part.noun.join:
            return False
        lens.mounts.extend(part.mounts)  # 'lens stuck on the adapter, it is FD'
        lens.traits.extend(part.traits)
        part.sort = "lens"
        return True

    def _follows_word(self) -> bool:
        """'my 35 is screwmount LTM': right behind a word for mounts that is told of the lens."""
        at = self.parts.index(self.part)
        word = self.parts[at - 1] if at else None
        bare = word is not None and word.noun.heads == "MOUNTWORD" and not word.mounts
        return bare and not self.part.noun.apart and not self.role

    def _has_host(self) -> bool:
        """Whether a body is told of besides, by its mount; one that is a mount alone stands behind."""
        column = self.part.noun.column
        behind = any(one.was_mount and one.is_host and one.noun.column > column for one in self.parts)
        return (behind and self.lens is not None and self.lens.has_mount) or any(
            one.sort == "body" and one.has_mount for one in self.parts
        )

    def _by_role(self) -> None:
        cast, part, before, lens, role = self.cast, self.part, self.before, self.lens, self.role
        if role == "added" and part.is_host and cast.bodies and cast.bodies[-1] is before:
            self._as("body")  # 'I keep the EF dslr and add Z'
        elif role in TOWARDS:
            screwed = part.noun.head is not None and part.noun.head.text.casefold().startswith("thread")
            self._as("lens" if screwed and lens is None else "body")
        elif role in USED or (role == "behind"):
            cast.using.append(part)
        elif role == "without":
            cast.without.append(part)
        elif role == "from" or lens is None or (role == "for" and not lens.mounts and not lens.named):
            described = before is not None and (before.mounts or (lens is not None and not lens.is_bare))
            after_piece = before is not None and before.sort == "piece" and role == "for" and described
            self._as("body" if after_piece else "lens")
        elif role in ("", "with") and not part.is_host and lens.has_mount_or_kind and self._has_host():
            self._as("lens")  # 'MD lenses, an Exakta, and an L body', 'an 85 C/Y and a C mount, Z'
        elif role == "in" and not (part.is_host and part.noun.join == ","):
            self._as("lens")  # 'the same 8 mm lens is sold in C and in CS'
            part.focal, part.f_number = lens.focal, lens.f_number
        elif not cast.bodies or role == "for" or _told_of_bodies(part, self.parts):
            self._as("body")
        else:
            self._as("lens" if role == "with" else "body")


def _told_of_bodies(part: Part, parts: list[Part]) -> bool:
    """'the bodies are an RF and a Z': what follows several bodies of which nothing else is told, in their sentence."""
    heads = (one for one in parts if one.noun.heads == "BODY" and not one.noun.all("MOUNT") and one.is_several)
    return any(one.noun.sentence == part.noun.sentence and one.noun.column < part.noun.column for one in heads)


def is_focal(part: Part) -> bool:
    token = part.noun.mods[0] if part.sort == "length" and not part.noun.role and len(part.noun.mods) == 1 else None
    return token is not None and token.is_mm and token.numbers[0] >= 8


def has_lens(part: Part, before: Part | None, last_lens: Part | None) -> bool:
    """'the lens of an OM camera': what lens and body are told so is the lens, by what it came off."""
    open_ = last_lens is not None and last_lens is before and not (last_lens.has_mount_or_kind or last_lens.formats)
    return open_ and part.noun.role == "of" and bool(part.mounts or part.formats)


def is_focal_alone(part: Part) -> bool:
    rest = (part.mounts, part.kinds, part.traits, part.formats, part.zoom, part.f_number, part.named, part.strange)
    return not any(rest) and not part.count
