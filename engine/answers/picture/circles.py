"""The image circles that the lenses of a question throw, ahead of any glass, and what glass makes of them."""

from __future__ import annotations

from collections.abc import Sequence

from engine.answers.parts.resolve import LensSide, lens_side
from engine.answers.parts.said import interval, mentions
from engine.answers.picture.frames import FULL, frames_named
from engine.base.compact import compact, replace
from engine.base.interval import Interval, Measure, is_known
from engine.chains.setup import class_row, usual_circle
from engine.facts.catalogue import Catalogue
from engine.facts.kinds import GLASS_KINDS
from engine.facts.records import Circle, Format
from grammar.questions import Question, Thing

PROJECTOR = "projector"
SHEETS, ROLLS = "large-format", "medium-format"
CLASSES = frozenset({"enlarger", PROJECTOR, SHEETS, ROLLS})
MICROSCOPE, FINITE, OBJECTIVE = "microscope", "finite-conjugate", "finite objective"
POWERED = "close-up-lens"  # what is told of it is its power in dioptres, no factor
LEAST_FACTOR, MOST_FACTOR = 0.2, 5.0
SLR = "slr"  # the trait of a lens for film cameras with a mirror: for full frame, where nothing else is told
LARGEST_CIRCLE = "largest-usual-circle"  # of the facts
CINE_NORMAL = "usual-normal-share-cine"  # and how many diagonals long lenses for film and video are
_FILMS = {"16mm": "16-projector", "35-full": "35-projector", "35mm-full-frame": "slide-projector"}
# what the lens may be made for where nothing of it is told
USUAL_MADE_FOR = ("aps-c-1.5", "35mm-full-frame")
# and where it is told to be off a movie or a video camera, or to be a cine lens of whatever age
FILMED_FOR = {
    "movie-camera-said": ("8mm", "16mm"),
    "video-camera-said": ("1-3-type", "v12", "v23"),
    "cine-lens-said": ("8mm", "16mm", "35-full", "full-frame-cine"),
}


@compact
class Thrown:
    """A circle at infinity in mm, ahead of any glass: for which lens, and whether it is only the usual one."""

    case: str
    circle_mm: Interval
    typical: bool = True
    said: str = ""
    focal_mm: float | None = None
    f_number: float | None = None
    extension_mm: float = 0.0
    thing: Thing | None = None  # the lens as the question names it
    made_for: str = ""  # the format it is known to cover, where how much more it covers is not known
    at_work: bool = False  # at the magnification that it works at, and not at infinity

    @property
    def words(self) -> str:
        return self.said or self.case


def circles_of(question: Question, facts: Catalogue) -> list[Thrown]:
    """The circle told, else those of the lenses named, else those of lenses made for the usual formats."""
    told = interval(question, "circle")
    if told is not None:
        lens = question.lens
        focal, stop = (lens.focal_length_mm, lens.f_number) if lens is not None else (None, None)
        return [
            Thrown(
                "circle told", told, typical=False, said="the circle told", focal_mm=focal, f_number=stop, thing=lens
            )
        ]
    out = [
        replace(thrown, focal_mm=thing.focal_length_mm, f_number=thing.f_number, thing=thing)
        for thing in (_surely_for(lens, facts) for lens in question.lenses)
        if (thrown := _of_lens(thing, facts)) is not None
    ]
    if out or any(thing.ids for thing in question.lenses) or _is_large(question, facts):
        return out
    formats = facts.formats
    filmed = next((names for key, names in FILMED_FOR.items() if mentions(question, key) and question.lenses), ())
    if filmed:
        films = (_made_for(replace(question.lenses[0], format=name), facts) for name in filmed)
        return [film for film in films if film is not None]
    return [
        Thrown(f"lens made for {form.name}", Interval.exact(form.diagonal_mm), made_for=form.name)
        for form in (formats[name] for name in USUAL_MADE_FOR)
    ]


def _is_large(question: Question, facts: Catalogue) -> bool:
    """Whether the frame is larger than lenses made for the usual formats ever light: what is not told is asked for."""
    frames = frames_named(question, facts)
    largest = facts.assumptions[LARGEST_CIRCLE].value.greatest
    return bool(frames) and all(form.diagonal_mm > largest for form in frames)


def _surely_for(lens: Thing, facts: Catalogue) -> Thing:
    """Of two formats told of one lens it surely lights the smaller alone: a 'Super 16' zoom of the 16 mm era."""
    told = [facts.formats[name] for name in (lens.format, lens.format_too) if name and name in facts.formats]
    least = min(told, key=lambda form: form.diagonal_mm, default=None)
    return lens if least is None or least.id == lens.format else replace(lens, format=least.id)


def _of_lens(thing: Thing, facts: Catalogue) -> Thrown | None:
    focal = f"{thing.focal_length_mm:g} mm " if thing.focal_length_mm else ""
    objective = _of_objective(thing, facts)
    if objective is not None:
        return objective
    row = _of_class(thing, facts)
    if row is not None:
        return Thrown(f"{focal}{thing.lens_kind} lens", row.image_circle_mm)
    side = lens_side(thing, facts)
    if isinstance(side, LensSide):
        circle, found = usual_circle(facts, side.lens, side.mount)
        if is_known(circle):
            own = thing.kind == "lens"
            typical, said = found is not None, side.words if own else f"{focal}{side.mount.designation} lens"
            more = facts.formats[found.id].name if found is not None and found.id in facts.formats else ""
            return Thrown(f"{focal}{side.mount.id} lens", circle, typical, said, made_for=more)
        return None
    if thing.format in facts.formats:
        return _made_for(thing, facts)
    if SLR in thing.traits and FULL in facts.formats:
        form = facts.formats[FULL]
        return Thrown(f"{focal}SLR lens", Interval.exact(form.diagonal_mm), made_for=form.name)
    film = facts.formats.get(f"{thing.focal_length_mm:g}mm") if thing.focal_length_mm else None
    if film is not None and thing.kind == "" and not thing.lens_kind and thing.f_number is None:
        # '8mm lens': a lens for that film rather than of that focal length
        rows = [row for row in facts.circles.values() if row.made_for == film.id and not row.lens_class]
        if rows:
            return Thrown(f"{film.name} lens", rows[0].image_circle_mm)
    return None


def _of_objective(thing: Thing, facts: Catalogue) -> Thrown | None:
    """That of a microscope objective, at the distance that it works at: whatever frame is told, it is made for none."""
    mount = facts.mounts.get(thing.id or "")
    if mount is None or mount.kind != MICROSCOPE or FINITE not in mount.traits:
        return None
    rows = (row for row in facts.circles.values() if row.lens_class == OBJECTIVE)
    return next(
        (Thrown("objective", row.image_circle_mm, said="microscope objective", at_work=True) for row in rows), None
    )


def _made_for(thing: Thing, facts: Catalogue) -> Thrown | None:
    from engine.answers.parts.resolve import AS_TOLD, _told
    from engine.facts.records import Lens

    lens = _told(Lens("", "", "", AS_TOLD), thing)
    form = facts.formats[thing.format or ""]
    rows = [row for row in facts.circles.values() if row.made_for == form.id and not row.lens_class]
    if _are_shorter(rows, lens.focal_length_mm, form, facts):
        rows = []  # what is known of shorter ones tells nothing of it but that it covers its frame
    elif is_known(lens.focal_length_mm):
        rows = [row for row in rows if row.focal_length_mm.holds(lens.focal_length_mm.nominal)] or rows
    elif thing.lens_kind == "zoom" or "wide" in (*thing.traits, thing.lens_kind or ""):
        rows = rows[:1]  # the wide end decides, and the rows begin with it
    circle = rows[0].image_circle_mm if rows else Interval.exact(form.diagonal_mm)
    for row in rows[1:]:
        circle = circle.hull(row.image_circle_mm)
    return Thrown(f"lens made for {form.name}", circle, made_for="" if rows else form.name)


def _are_shorter(rows: Sequence[Circle], focal: Measure, form: Format, facts: Catalogue) -> bool:
    """Whether all rows are of lenses shorter than this one; where no length is told, of none as long as is normal."""
    longest = max((row.focal_length_mm.greatest for row in rows), default=0.0)
    normal = facts.assumptions[CINE_NORMAL].value.nominal * form.diagonal_mm
    return bool(rows) and longest < (focal.nominal if is_known(focal) else normal)


def _of_class(thing: Thing, facts: Catalogue) -> Circle | None:
    """The row for lenses of a class (enlarger, projector) by focal length, or by the negative they are made for."""
    kind, focal = thing.lens_kind or "", thing.focal_length_mm
    form = facts.formats.get(thing.format or "")
    if kind not in CLASSES or (kind in (SHEETS, ROLLS) and form is not None):
        return None  # what is told of the negative says more than the class
    rows = [row for row in facts.circles.values() if kind in row.lens_class.split()]
    if kind == PROJECTOR:
        film = _FILMS.get(thing.format or "", None if form is not None else "slide-projector")
        return next((row for row in rows if row.made_for == film), None)  # of other film what is made for it is told
    if focal is None:
        wide = [row for row in rows if form is None or row.image_circle_mm.greatest >= form.diagonal_mm]
        return min(wide, key=lambda row: row.image_circle_mm.greatest, default=None)
    return class_row(rows, focal)


def glass_factor(question: Question, facts: Catalogue) -> float | None:
    """The factor of all glass named, multiplied; None where none is named."""
    factor, seen = 1.0, False
    for thing in question.adapters:
        value = thing.factor if thing.piece != POWERED and (thing.factor or 0) > 0 else None
        if value is None and thing.piece in GLASS_KINDS and thing.thickness_mm is not None:
            low = thing.thickness_mm[0]  # a bare number beside a reducer is its factor
            value = low if LEAST_FACTOR <= low <= MOST_FACTOR else None
        if value is None and thing.kind == "adapter" and thing.id in facts.adapters:
            value = facts.adapters[thing.id or ""].factor
        if value is not None:
            factor, seen = factor * value, True
    return factor if seen else None
