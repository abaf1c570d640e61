"""How much each full stop makes sharp at the distance told, where it is asked which stop and not how deep it is."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import depth_words, distance, f_number, trimmed
from engine.answers.picture.blur import blur_of
from engine.answers.seat.distances import Distances
from engine.base.interval import Interval, is_known
from engine.facts.records import Format
from engine.physics import depth
from engine.physics.exposure import FULL_STOPS
from grammar.questions import Question

FACE: Final = "face-depth"  # the assumption of how deep a face is
_STOPS: Final = tuple(stop for stop in FULL_STOPS if 1.4 <= stop <= 16)  # those most lenses are marked with
_AS_WIDE: Final = 1.1  # a full stop no further than this from the widest one tells nothing more
_LIFE_SIZE_FOCALS: Final = 4  # object to image at life size, in focal lengths; no picture of a face is nearer
_PEOPLE: Final = ("head", "head-and-shoulders")  # motifs of which a face shall be sharp


def deep_at_stops(
    subject: float,
    lenses: Sequence[tuple[Distances, float | None]],
    frames: Sequence[Format],
    question: Question,
    knowledge: Knowledge,
) -> Iterator[Told]:
    """`lenses`: each with the widest stop it opens to, where that is known."""
    face = knowledge.catalogue.assumptions[FACE].value.nominal
    wanted = face if question.said("motif") in _PEOPLE else None
    for form in frames:
        for lens, widest in lenses:
            rows = list(_rows(lens, widest, subject, form, question, knowledge))
            if not rows:
                continue
            case = f"{trimmed(lens.focal.nominal, 1)} mm at {distance(subject, question.feet)} on {form.name}"
            enough = next((stop for stop, wide in rows if wanted is not None and wide.nominal >= wanted), None)
            if wanted is not None and enough is not None:
                deep = depth_words(wanted, question.feet)
                yield Told((Line("head", f"{case}: f/{f_number(enough)} for a face, some {deep} from nose to ear."),))
            each = "; ".join(f"f/{f_number(stop)} {depth_words(wide.nominal, question.feet)}" for stop, wide in rows)
            kind = "fact" if enough is not None else "head"
            told = tuple(Quantity("dof_mm", wide, f"f/{f_number(stop)}, {case}") for stop, wide in rows)
            yield Told((Line(kind, f"{case}, sharp in all: {each}."),), told)


def _rows(
    lens: Distances, widest: float | None, subject: float, form: Format, question: Question, knowledge: Knowledge
) -> Iterator[tuple[float, Interval]]:
    f, far_at = lens.focal, Interval.exact(subject)
    if subject < _LIFE_SIZE_FOCALS * f.nominal:
        return
    blur = Interval.exact(blur_of(question, form, knowledge))
    front = depth.front_principal_to_subject_mm(far_at, f, lens.hiatus)
    for stop in (
        *((widest,) if widest is not None else ()),
        *(one for one in _STOPS if one > (widest or 0.0) * _AS_WIDE),
    ):
        whole = depth.total_depth_mm(front, f, Interval.exact(stop), blur, lens.likely_pupil)
        if is_known(whole):
            yield stop, whole
