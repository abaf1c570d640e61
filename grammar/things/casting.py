"""What each description is of: a lens, a body, an adapter, a format, or a mount that may stand for any of them."""

from __future__ import annotations

from typing import Final

from engine.base.compact import compact, field
from grammar.questions import RING, Thing
from grammar.things.phrases import Noun
from grammar.words.tokens import Token, is_plural

# pieces that are told apart by a factor rather than by a length
MOUNTLESS: Final = frozenset(["enlarger", "projector"])  # kinds whose thread tells nothing of their register
OPTICAL: Final = frozenset(["focal-reducer", "teleconverter", "corrective-glass"])
MAY_REDUCE: Final = frozenset(["thread-reducer", "corrective-glass"])  # names under which reducers go as well
DRAWN: Final = frozenset(["helicoid", "bellows", "extension-tube"])  # what stretches, so that a range is of its length
MADE_REDUCING: Final = frozenset([0.58, 0.64, 0.71, 0.72])  # factors that reducers are made with
SPACER: Final = "extension-tube"
_BUSH: Final = "thread-reducer"
_FALLS: Final = "wont-go"
_RANGED: Final = DRAWN | {"adapter", "recessed"}
_TIMES: Final = "times:"  # before the factor that a word for a piece has by itself
_BODY_WORDS: Final = frozenset(["dslr", "body"])
_WHOLE_FOCAL: Final = (2.0, 3000.0)


@compact(frozen=False)
class Part:
    """One thing of the question while it is put together. Lengths in mm."""

    sort: str  # lens, body, piece, frame, mount, length, strange, nothing
    noun: Noun
    mounts: list[Token] = field(default_factory=list)
    kinds: list[str] = field(default_factory=list)
    traits: list[str] = field(default_factory=list)
    formats: list[Token] = field(default_factory=list)
    focal: float | None = None
    zoom: tuple[float, float] | None = None
    f_number: float | None = None
    thickness: tuple[float, float] | None = None
    factor: float | None = None
    crop: float | None = None
    count: int | None = None
    named: Token | None = None
    strange: Token | None = None
    implied: tuple[str, ...] = ()  # mount ids that the kind of lens has unless told
    piece: str = ""
    steps: tuple[float, float] | None = None  # a step ring's two threads
    inches: bool = False
    is_host: bool = False  # its mount is one that mostly means a body
    by_camera: bool = False  # told by the camera it came off: 'a zoom off a 16 mm reflex'
    by_piece: bool = False  # not named itself: known by the mount of an adapter alone
    was_mount: bool = False  # only a mount by its own words: its role came from those around it
    subject: Part | None = None  # itself by its own words alone, where more was told of it: 'the C one' is 25 mm

    @property
    def has_mount(self) -> bool:
        return bool(self.mounts) or self.named is not None

    @property
    def has_mount_or_kind(self) -> bool:
        """Whether its mount is told, by name or by the kind of lens that has one."""
        return self.has_mount or bool(self.implied)

    @property
    def is_several(self) -> bool:
        """Whether it tells of more than one."""
        head = self.noun.head
        return bool(self.count and self.count > 1) or (head is not None and is_plural(head))

    @property
    def is_stop_alone(self) -> bool:
        """Whether it says nothing but a stop."""
        told = (self.mounts, self.kinds, self.traits, self.formats, self.focal, self.zoom, self.named, self.noun.head)
        return self.f_number is not None and not any(told)

    @property
    def is_bare(self) -> bool:
        """Whether it says nothing but its head noun."""
        told = (self.mounts, self.kinds, self.traits, self.formats, self.focal, self.zoom, self.f_number, self.named,
                self.thickness, self.factor, self.steps, self.strange, self.crop)  # fmt: skip
        return not any(told)

    def is_at_hand(self, told: frozenset[str]) -> bool:
        """Whether what is gone through is there: 'through a 0.5 mm plate', 'an M42-E ring', 'via the flush bush'.

        Nothing stands in a ring that it drops through. `told`: what the cues of the line tell.
        """
        joins = self.piece == _BUSH or (self.piece == RING and len(self.mounts) > 1)
        return self.thickness is not None or (joins and _FALLS not in told)

    def thing(self) -> Thing:
        """The thing as the question keeps it."""
        kind = ""
        ids: tuple[str, ...] = ()
        if self.named is not None:
            kind, ids = self.named.unit, self.named.ids
        elif self.mounts and self.sort != "piece":
            kind, ids = "mount", self.mounts[0].ids
        elif self.implied and self.sort == "lens":
            kind, ids = "mount", self.implied
        elif self.sort == "frame" and self.formats:
            kind, ids = "format", self.formats[0].ids
        traits = [*self.traits, *self.kinds[1:]] if self.sort == "lens" else [*self.traits, *self.kinds]
        if self.implied and not self.mounts and self.sort == "lens":
            traits.append("assumed mount")
        if self.zoom and not self.kinds:
            self.kinds.append("zoom")
        piece = self.piece if self.sort == "piece" else ""
        joins = [mount.ids for mount in self.mounts] if piece else []
        factor = self.factor if self.factor is None or self.factor > 0 else None  # no glass multiplies by less
        return Thing(
            kind, ids, self.noun.text, self.noun.column,
            self.focal or None, self.f_number or None,  # no lens has a focal length of nought, or opens to f/0
            self.formats[0].ids[0] if self.formats else None,
            (self.kinds[0] if self.kinds else None) if self.sort == "lens" else None,
            tuple(dict.fromkeys(trait.replace("-", " ") for trait in traits)),
            self.thickness, factor, self.count,
            front=joins[0] if joins else (), rear=joins[-1] if len(joins) > 1 else (), piece=piece or None,
            steps=self.steps,
            format_too=self.formats[-1].ids[0] if self.sort == "lens" and len(self.formats) > 1 else None,
            said_too=tuple(id_ for mount in self.mounts[1:] for id_ in mount.ids) if self.sort == "lens" else (),
        )  # fmt: skip


def part_of(noun: Noun) -> Part:
    """The part that a description plays by its own words; where those do not tell, sort is 'mount' or 'length'."""
    part = Part(_sort(noun), noun)
    part.was_mount = part.sort == "mount"
    part.mounts = list(noun.pair) or noun.all("MOUNT")
    part.formats = noun.all("FORMAT")
    for token in noun.all("KIND"):
        part.kinds.append(token.value)
        part.implied = part.implied or tuple(one[1:] for one in token.implies if one.startswith("~"))
    part.traits = [token.value for token in noun.all("TRAIT")]
    count, crop, named, strange = (noun.first(kind) for kind in ("COUNT", "CROP", "NAMED", "STRANGE"))
    part.count = int(count.numbers[0]) if count else None
    part.crop = crop.numbers[0] if crop else None
    part.named, part.strange = named, strange
    if noun.heads == "BODY" and noun.head and noun.head.value:
        part.traits.append(noun.head.value)
    for token in noun.mods:
        if token.kind == "HEADMOD" and token.unit == "BODY" and token.value and part.sort != "piece":
            part.traits.append(token.value)
    if part.sort == "piece":
        _measure_piece(part)
    else:
        _measure_lens(part)
    return part


def names_body(token: Token) -> bool:
    """Whether the name of a mount says that it is a body's: 'EF DSLR'."""
    return token.kind == "MOUNT" and token.text.casefold().split()[-1] in _BODY_WORDS


def _sort(noun: Noun) -> str:
    named = noun.first("NAMED")
    if noun.heads == "PIECE" or (named and named.unit == "adapter") or noun.pair:
        return "piece"
    if noun.head is None and any(names_body(token) for token in noun.mods):
        return "body"
    if noun.heads == "BODY" or (named and named.unit == "body" and noun.heads != "LENS"):
        return "body"
    if noun.heads == "LENS" or noun.first("KIND") or (named and named.unit == "lens"):
        return "lens"
    if noun.heads == "FRAME":
        return "body" if noun.first("MOUNT") else "frame"
    if noun.headed_by("PIECE") or (noun.first("DIOPTRE") and not noun.head):
        return "piece"
    if noun.headed_by("LENS") and not noun.first("MOUNT"):
        return "lens"
    if noun.first("FNUM", "COMBO", "FOCAL"):
        return "lens"
    if noun.first("MOUNT"):
        return "lens" if noun.first("LENGTH", "RANGE") and not noun.headed_by("BODY") else "mount"
    if noun.first("FORMAT") and noun.first("LENGTH", "RANGE") and not noun.head:
        return "lens"  # 'a half frame 20 mm'
    if noun.first("FORMAT", "CROP"):
        metric = noun.first("LENGTH")
        return "lens" if metric and metric.unit == "mm" and not noun.head else "frame"  # '24mm aps-c'
    if noun.first("TIMES"):
        return "factor"
    if noun.first("LENGTH", "RANGE"):
        return "lens" if noun.first("TRAIT") else "length"
    if noun.first("TRAIT"):
        return "trait"
    return "strange" if noun.first("STRANGE") else "nothing"


def _measure_lens(part: Part) -> None:
    combo, stop, focal, zoom = (part.noun.first(kind) for kind in ("COMBO", "FNUM", "FOCAL", "RANGE"))
    if combo:
        part.focal, part.f_number = combo.numbers
    if stop:
        part.f_number = stop.numbers[0]
    lengths = [token for token in part.noun.all("LENGTH") if _WHOLE_FOCAL[0] <= token.numbers[0] <= _WHOLE_FOCAL[1]]
    metric = [token for token in lengths if token.unit in ("mm", "cm")] or lengths
    if part.focal is None and focal:
        part.focal = focal.numbers[0]
    if part.focal is None and metric and metric[0].unit != "m":
        part.focal = metric[0].numbers[0]
        part.inches = metric[0].unit == "in"
    if zoom and part.sort in ("lens", "mount") and not combo and min(zoom.numbers) > 0:
        part.zoom = (zoom.numbers[0], zoom.numbers[1])


def _measure_piece(part: Part) -> None:
    noun = part.noun
    mods = [token for token in noun.mods if token.kind == "HEADMOD" and token.unit == "PIECE"]
    head = noun.head.value if noun.head and noun.heads == "PIECE" else ""
    special = [token.value for token in mods if token.value != "adapter"]
    if noun.first("DIOPTRE"):
        head = "close-up-lens"
    part.piece = head if head and head != "adapter" else (special[0] if special else head or "adapter")
    lengths, ranges = noun.all("LENGTH"), noun.all("RANGE")
    if ranges and (
        part.piece == "step-ring" or part.piece not in _RANGED or (part.piece not in DRAWN and _steps(ranges[0]))
    ):
        part.steps = (ranges[0].numbers[0], ranges[0].numbers[1])
        part.piece = "step-ring" if part.piece == "adapter" else part.piece
        if lengths:
            part.thickness = (lengths[0].numbers[0], lengths[0].numbers[0])  # 'the 1 mm 39-42 ring'
    elif ranges:
        part.thickness = (min(ranges[0].numbers), max(ranges[0].numbers))
    if lengths and part.thickness is None:
        part.thickness = (lengths[0].numbers[0], lengths[0].numbers[0])
        part.inches = lengths[0].unit == "in"
    times, dioptre = noun.first("TIMES"), noun.first("DIOPTRE")
    if times:
        part.factor = times.numbers[0] or None  # glass of 0x is none that there is
        if part.piece == "adapter" and part.factor not in (None, 1):
            part.piece = glass_of(part.factor)  # 'a 2x converter'
        elif part.piece in MAY_REDUCE and part.factor is not None and part.factor < 1:
            part.piece = glass_of(part.factor)  # 'the 0.71 one with glass', 'a 0.71 reducer ring'
    elif noun.head and noun.head.implies and noun.head.implies[0].startswith(_TIMES):
        part.factor = float(noun.head.implies[0].removeprefix(_TIMES))  # 'a doubler'
    if dioptre and part.piece == "close-up-lens":
        part.factor = dioptre.numbers[0]


def glass_of(factor: float) -> str:
    """The kind of piece that has such a factor."""
    return "focal-reducer" if factor < 1 else "teleconverter"


def _steps(token: Token) -> bool:
    """'40.5-42' of a plain ring is a pair of threads, not a range: rings do not stretch."""
    return (not token.unit and min(token.numbers) > 24 and "ring" in token.text.casefold()) or min(token.numbers) > 35
