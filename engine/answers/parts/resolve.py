"""The lens and the body that a question names or describes, as records: what the answer is worked out for."""

from __future__ import annotations

from engine.answers.parts.constructions import planes_told
from engine.answers.parts.wording import article, trimmed
from engine.base.compact import compact, replace
from engine.base.interval import UNKNOWN, Interval, is_known
from engine.chains.setup import Setup
from engine.facts.basis import Basis
from engine.facts.catalogue import Catalogue
from engine.facts.records import Body, Format, Lens, Mount
from grammar.echo.thing_words import before_lens
from grammar.questions import TO_ITS_OWN, Question, Thing

AS_TOLD = Basis("own-measured", ("asked",))
HEAVY, THORIATED = "heavy", "thoriated"  # traits of a lens
TELESCOPE = "telescope"  # a kind of lens, which has no iris


@compact
class Missing:
    """A fact that the answer needs and the question does not hold: what, why, and how to find it."""

    what: str
    ask: str
    wants: str = ""  # what a bare reply may be, besides a name


@compact
class LensSide:
    lens: Lens
    mount: Mount
    alone: bool  # a mount stands for the lens
    words: str
    others: tuple[str, ...] = ()  # other mounts that the same words may mean


@compact
class BodySide:
    body: Body
    mount: Mount
    alone: bool
    words: str
    format: Format | None = None
    others: tuple[str, ...] = ()


def goes_on(question: Question, lens: LensSide, body: BodySide) -> bool:
    """Whether the lens is to go on the body, where each is told to go on its own: 'K to Z and M42 to E'."""
    told = question.said(TO_ITS_OWN)
    return told is None or f"{lens.mount.id} {body.mount.id}" in told.split(", ")


def lens_side(thing: Thing | None, catalogue: Catalogue) -> LensSide | Missing:
    """The lens meant: one from the gear file, or one described by its mount, focal length and stop."""
    if thing is None:
        return Missing("lens", "Which lens? Name its mount (C-mount, M42 ...) or a lens from your gear file.", "lens")
    if thing.kind == "lens" and thing.id is not None and thing.id in catalogue.lenses:
        lens = catalogue.lenses[thing.id]
        lens = _told(lens, thing)
        return LensSide(lens, catalogue.mounts[lens.mount], False, lens.name)
    mount_id = thing.id if thing.kind == "mount" else None
    if mount_id is None or mount_id not in catalogue.mounts:
        what = f"your {thing.words.strip()}" if thing.words.strip() else "that lens"
        return Missing(
            "lens mount",
            f"Which mount is on {what}? Measure the width across the thread or bayonet, and the thread pitch.",
            "thread",
        )
    mount = catalogue.mounts[mount_id]
    made_up = Lens(id="", name="", mount=mount.id, basis=AS_TOLD)
    lens = _with_planes(_told(made_up, thing), thing, catalogue)
    words = described(lens, mount, thing.lens_kind)
    alone = not is_known(lens.focal_length_mm)
    others = tuple(catalogue.mounts[other].designation for other in thing.ids[1:] if other in catalogue.mounts)
    return LensSide(replace(lens, name=words), mount, alone, words, others)


def _told(lens: Lens, thing: Thing) -> Lens:
    """The lens with what the question says of it."""
    if thing.focal_length_mm is not None:
        lens = replace(lens, focal_length_mm=Interval.exact(thing.focal_length_mm))
    if thing.f_number is not None:
        lens = replace(lens, f_number=Interval.exact(thing.f_number))
    if thing.format is not None:
        lens = replace(lens, made_for=thing.format)
    if thing.lens_kind == "zoom":
        lens = replace(lens, focusing="zoom")
    if HEAVY in thing.traits or THORIATED in thing.traits:
        lens = replace(lens, heavy=HEAVY in thing.traits, thoriated=lens.thoriated or THORIATED in thing.traits)
    if "no aperture ring" in thing.traits:
        lens = replace(lens, iris="lever")
    if "fixed iris" in thing.traits or thing.lens_kind == TELESCOPE:
        lens = replace(lens, iris="fixed")
    return lens


def _with_planes(lens: Lens, thing: Thing, catalogue: Catalogue) -> Lens:
    """The lens with its planes where its construction was named."""
    planes = planes_told(thing, catalogue)
    if not is_known(planes.offset_mm):
        return lens
    return replace(
        lens, hiatus_mm=planes.hiatus_mm, front_focal_offset_mm=planes.offset_mm, pupil_magnification=planes.pupil
    )


def described(lens: Lens, mount: Mount, kind: str | None = None) -> str:
    """'a 25 mm f/1.4 C-mount lens'."""
    parts = []
    if is_known(lens.focal_length_mm):
        parts.append(f"{trimmed(lens.focal_length_mm.nominal, 1)} mm")
    if is_known(lens.f_number):
        parts.append(f"f/{trimmed(lens.f_number.nominal, 2)}")
    parts.append(mount_words(mount))
    if kind and kind not in parts[-1].casefold().split():  # 'M39x1 SLR' says it already
        parts.append(kind)
    noun = " ".join(parts)
    lead = "an" if noun[:2] in ("8 ", "8.", "80", "85", "11", "18") else article(noun)
    return f"{lead} {noun} lens"


def mount_words(mount: Mount) -> str:
    """A designation as it is spoken before 'lens' or 'body': 'C' becomes 'C-mount'."""
    return before_lens(mount.designation)


def body_side(thing: Thing | None, catalogue: Catalogue) -> BodySide | Missing:
    """The body meant: one from the gear file, a generic one, or a mount alone."""
    if thing is None:
        return Missing(
            "body", "On which body? Name its mount (E-mount, MFT ...) or a body from your gear file.", "body"
        )
    if thing.kind == "body" and thing.id is not None and thing.id in catalogue.bodies:
        body = catalogue.bodies[thing.id]
        form = catalogue.formats.get(thing.format or body.format)
        return BodySide(body, catalogue.mounts[body.mount], False, body.name, form)
    if not thing.ids and thing.format is not None:
        thing = replace(thing, kind="mount", ids=_mount_of_format(thing.format, catalogue))
    if thing.kind != "mount" or thing.id is None or thing.id not in catalogue.mounts:
        name = thing.words.strip()
        what = f"your {name}" if name else "that body"
        keep = f" Told once, 'my {name} is an E-mount APS-C body', the name is known." if name else ""
        ask = f"Which lens mount is on {what} (E-mount, MFT, M42 ...)? Its manual says.{keep}"
        return Missing("body mount", ask, "body-mount")
    mount = catalogue.mounts[thing.id]
    others = tuple(catalogue.mounts[other].designation for other in thing.ids[1:] if other in catalogue.mounts)
    noun = mount_words(mount)
    if thing.format and thing.format in catalogue.formats:
        form = catalogue.formats[thing.format]
        words = f"{article(noun)} {noun} body with {form.name}"
        body = Body(id="", name=words, mount=mount.id, format=form.id, basis=AS_TOLD, generic=True)
        return BodySide(body, mount, False, words, form, others)
    largest = catalogue.formats.get(mount.format or "")
    words = f"{article(noun)} {noun} body"
    body = Body(id="", name=words, mount=mount.id, format=largest.id if largest else "", basis=AS_TOLD, generic=True)
    return BodySide(body, mount, True, words, largest, others)


def _mount_of_format(form: str, catalogue: Catalogue) -> tuple[str, ...]:
    """The mount that bodies of a format are called by it for: '44x33 body'; none where nothing is called so."""
    return tuple(mount.id for mount in catalogue.mounts.values() if f"{form} body" in mount.aliases)[:1]


def setup_of(lens: LensSide, body: BodySide, catalogue: Catalogue, stop: float | None = None) -> Setup:
    """The two together. A body mount alone is judged on its smallest usual format and lit on its largest."""
    used = body.format or catalogue.formats.get(lens.lens.made_for or lens.mount.format or "")
    judged = used
    if body.alone:
        smallest = body.mount.smallest_format or body.mount.format or lens.mount.smallest_format
        judged = catalogue.formats.get(smallest or "") or used
    return Setup(
        lens.lens, lens.mount, body.body, body.mount, used, judged, lens.alone, body.alone, stop,
    )  # fmt: skip


def unknown_register(setup: Setup) -> bool:
    """Whether the lens's own flange-to-image distance is what is missing."""
    return not is_known(setup.lens.register_mm) and setup.lens_mount.register_mm == UNKNOWN
