"""What can be worked out without a mount: extension, error or limit on lenses of told, or of usual, focal lengths."""

from __future__ import annotations

from engine.answers.parts.answer import Line, ListedChain, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.nearby import MOST_ERROR_MM
from engine.answers.parts.owned import known_focals
from engine.answers.parts.said import FAR_MM, distance_mm, focals, mentions, number, number_beside, stop
from engine.answers.parts.wording import article, trimmed
from engine.answers.picture.frames import frames_judged, frames_named
from engine.answers.seat.chain_numbers import principal_numbers
from engine.answers.seat.described import CUP, TUBE
from engine.answers.seat.distances import Distances
from engine.answers.seat.spacing import (
    FAR_AT_A_MARK,
    USUAL_FORMAT,
    errors_of_limit,
    errors_of_mark,
    far_limits,
    marks,
    normal_focal,
    usual_focals,
)
from engine.answers.seat.standin import as_listed, judged_alone
from engine.answers.seat.telling import focus_lines, life_line, margin_line, seat_line
from engine.answers.shims.other_seats_off import SENSOR_OFF, off_in_depth, sensor_off
from engine.answers.shims.readings import is_told_by_how_much
from engine.answers.shims.scale_pair import by_scale_pair
from engine.answers.shims.targets import is_target
from engine.base.compact import compact
from engine.base.interval import is_known
from engine.facts.catalogue import Catalogue
from engine.facts.records import Format
from grammar.kinds import MACRO_DISTANCE
from grammar.questions import BODY_OFF, OFF, Question, Thing

TUBES = frozenset({"extension-tube", "helicoid", "bellows", "adapter", "ring", "shim", "spacer", ""})
_ENDS = ("stops-at", "far-limit")  # of what is mentioned
ASK_FOCAL = "What is the focal length of that lens? A mark tells nothing without it."
MOST_OFF_MM = 6.0  # what a ring may be off by; more is how long it is
RIGHT_BEHIND = 6  # columns: an article between
NEAREST = "usual-nearest"  # of the facts: as near as lenses focus by themselves, in focal lengths


@compact
class Loose:
    chains: tuple[ListedChain, ...] = ()
    told: Told = Told()

    @property
    def is_empty(self) -> bool:
        return not (self.chains or self.told.lines)


def off_by_mm(question: Question) -> float | None:
    """How much too long (above 0) or too short (below 0) the question says a seat is, in mm."""
    if question.said(BODY_OFF) is not None:
        return number(question, BODY_OFF)
    depth = off_in_depth(question)
    if depth is not None:
        return depth
    if question.mentions(*SENSOR_OFF):
        return sensor_off(question)
    told_before = question.follows and question.said(OFF) is not None
    if mentions(question, "on-one-side") or (question.asks_which_way and not told_before):
        return None  # that is a tilt
    sized = any(one.thickness_mm and (question.follows or _is_what_is_left(one, question)) for one in question.adapters)
    sized = sized or told_before  # what is left of that is reckoned already
    thinned = None if sized else number_beside(question, "thinned-by")
    thinned = number_beside(question, "shim-pulled") if thinned is None and not question.follows else thinned
    if thinned is not None and not mentions(question, "sits-too-far") and question.said("nominal") is None:
        return -thinned
    size = number(question, "thickness", "length")
    if mentions(question, "or-another-thickness"):
        return None
    told = size is not None
    size = size if size is not None else next((low for low, high in _pieces(question) if low == high), None)
    if size is None:
        return _signed(question)
    if not told and _is_seated(question) and sum(one.is_of_one_length for one in question.adapters) > 1:
        return None  # 'rings of 1.02 and 10.05, does it go past infinity': how thick each is
    if not told and size > MOST_ERROR_MM and _is_of_before(question):
        return None  # 'it goes past infinity' after a ring of 3.1 mm: that is how thick it is
    if not told and question.follows and any(question.laid):
        return None  # 'shim 0.05 under it' after a ring of 2.45 mm: what it then comes to was reckoned
    if not told and size <= 0:
        return None  # 'a flat disc, 0 thick': level with the flange, and a cup by how deep it is
    right = number(question, "nominal")
    if right is not None:
        # what is told of a cup is how deep it is: too shallow sets the lens too far out
        deeper = any(one.piece == CUP for one in question.adapters)
        return round(right - size if deeper else size - right, 4)
    if not told and right is None and _is_seated(question) and any(one.front and one.rear for one in question.adapters):
        return None  # 'so my M42-EF of 1.0 is too thin?' tells how long it is
    asked = question.adapters and ("?" in question.text or _is_seated(question))
    asked = asked and question.said(OFF) not in ("too close", "too far out")  # as reckoned from the turns before
    if size > MOST_OFF_MM and asked and not is_told_by_how_much(size, question):
        return None  # 'the ring came 22.62. too long?' tells its length
    if mentions(question, "sits-too-close"):
        return -size
    if mentions(question, "sits-too-far"):
        return size
    spacer = any(one.piece == TUBE and one.thickness_mm == (size, size) for one in question.adapters)
    if not 0 < size <= MOST_ERROR_MM or spacer:
        return None  # 'a 0.3 shim under the ring' is so much more, and no ring that came out under its length
    # no ring is as thin as that: 'came out 0.03 long', '0.08 over'
    # 'the ring is 0.1 off': the way that costs infinity is judged, and the other is told beside it
    came = [
        one for one in question.places("came-long") if one.at not in {of.at for of in question.places("made-out-of")}
    ]
    longer = bool(came) or mentions(question, "off-either-way")
    return -size if mentions(question, "came-short") else size if longer else None


def _is_of_before(question: Question) -> bool:
    """Whether the pieces are those of the turn before, and this one tells no size of them."""
    prior = question.prior
    stands = question.follows and prior is not None and prior.adapters == question.adapters
    return stands and not any(one.isdigit() for one in question.text)


def _is_what_is_left(ring: Thing, question: Question) -> bool:
    """'filed 0.3 off my 27.8 ring': the ring that stands right behind is told with what is left of it."""
    if ring.is_of_one_length and ring.thickness_mm is not None and f"{ring.thickness_mm[0]:g}" not in question.text:
        return True  # 'ring 27.5, took 0.1 off': it was reckoned
    ends = [row.end for row in question.mentioned if row.key == "thinned-by"]
    return any(0 < ring.column - end <= RIGHT_BEHIND for end in ends)


def _signed(question: Question) -> float | None:
    """'my ring is -0.1', 'measures +0.15': written with its sign."""
    told = number(question, "numbers")
    if told is None or not 0 < abs(told) <= MOST_ERROR_MM:
        return None
    signed = mentions(question, "came-short") if told < 0 else mentions(question, "came-long") and "+" in question.text
    return told if signed else None


def off_by_limit(question: Question, facts: Catalogue) -> float | None:
    """How much too far out a seat is by which the one lens told ends at a distance: 'a 28 stops at 6 m', in mm."""
    limit, lenses = distance_mm(question), known_focals(question, facts)
    far = FAR_MM if len(lenses) != 1 else min(FAR_MM, facts.assumptions[NEAREST].value.nominal * lenses[0])
    if question.intent == MACRO_DISTANCE and limit == number(question, "close_focus"):
        return None  # 'how near, if the lens stops at 45 cm': its own nearest mark, and nothing of the seat
    if limit is None or limit < far or len(lenses) != 1 or not _tells_limit(question, facts):
        return None
    error = Distances(lenses[0], facts).extension_at(limit)
    return round(error.nominal, 3) if is_known(error) else None


def _tells_limit(question: Question, facts: Catalogue) -> bool:
    """Whether it is told where focus ends; before, where only the focal length was lacking and is told now."""
    if mentions(question, *_ENDS):
        return True
    before = question.prior if question.follows else None
    if before is None or before.distance_mm != question.distance_mm or known_focals(before, facts):
        return False
    return mentions(before, *_ENDS) and before.adapters == question.adapters and before.bodies == question.bodies


def _is_seated(question: Question) -> bool:
    """Whether lens and body are both known, so that the length of a ring tells by itself what it is off by."""
    return all(things and things[0].ids for things in (question.lenses, question.bodies))


def loose(question: Question, knowledge: Knowledge) -> Loose:
    """Every part of it that the question's numbers allow; nothing where it holds none."""
    by_tape, chains = by_scale_pair(question, knowledge)
    if by_tape.lines:
        return Loose(chains, by_tape)
    off = off_by_mm(question)
    if off is not None and off < 0:
        return _too_close(question, -off, knowledge)
    extension = off if off is not None else _extension(question)
    if extension is not None:
        return _extended(question, extension, knowledge)
    error = _error_alone(question)
    if error is not None:
        return Loose((), far_limits(_lenses(question, knowledge), error, knowledge.catalogue, question.feet, 1))
    mark = number(question, "mark") if is_target(question) else None
    if mark is not None:
        told = errors_of_mark(_lenses(question, knowledge), mark, knowledge.catalogue, question.feet, 1)
        return Loose((), told if focals(question) else told + Told((Line("ask", ASK_FOCAL, wants="focal"),)))
    limit = distance_mm(question)
    if limit is not None and limit >= 100:
        return _limited(question, limit, knowledge)
    return Loose()


def _pieces(question: Question) -> tuple[tuple[float, float], ...]:
    return tuple(
        thing.thickness_mm
        for thing in question.adapters
        if thing.thickness_mm is not None and (thing.piece or "") in TUBES
    )


def _extension(question: Question) -> float | None:
    said = number(question, "extension")
    if said is not None:
        return said
    fixed = [low for low, high in _pieces(question) if low == high]
    return sum(fixed) if fixed else None


def _error_alone(question: Question) -> float | None:
    """'why does 0.02 matter with a 6 mm lens': so little, of nothing that is named, is what a seat is off by."""
    alone = number(question, "numbers")
    return alone if alone is not None and 0 < alone <= MOST_ERROR_MM else None


def _lenses(question: Question, knowledge: Knowledge) -> tuple[float, ...]:
    return focals(question) or usual_focals(knowledge.catalogue)


def _form(question: Question, knowledge: Knowledge) -> Format:
    """The frame that was spoken of, which decides what is forgiven; else that of the lens's mount, else the usual."""
    judged = frames_judged(question, knowledge.catalogue)[0]
    made_for = any(lens.ids or lens.format for lens in question.lenses)
    return (
        judged if made_for or frames_named(question, knowledge.catalogue) else knowledge.catalogue.formats[USUAL_FORMAT]
    )


def _extended(question: Question, extension: float, knowledge: Knowledge) -> Loose:
    """The lenses named with this much between: judged each; without a lens a table of usual ones."""
    named = focals(question)
    if not named:
        return Loose((), far_limits(_lenses(question, knowledge), extension, knowledge.catalogue, question.feet, 1))
    chains: list[ListedChain] = []
    lines: list[Line] = []
    rows: list[Quantity] = []
    for focal in named:
        judged = judged_alone(
            focal, stop(question), (("extension-tube", extension, extension),), _form(question, knowledge), knowledge
        )
        words = f"{trimmed(focal, 1)} mm lens with {trimmed(extension, 3)} mm between"
        chains.append(as_listed(judged, words, len(chains) + 1))
        lines.append(Line("head", f"{article(words).capitalize()} {words}: {life_line(judged, question.feet)}."))
        lines += [
            Line("fact", text, 1)
            for text in (seat_line(judged), margin_line(judged), *focus_lines(judged, question.feet))
            if text
        ]
        rows += principal_numbers(judged)
    return Loose(tuple(chains), Told(tuple(lines), tuple(rows)))


def _too_close(question: Question, by: float, knowledge: Knowledge) -> Loose:
    """The lenses named that sit so much too close, judged each; and at which mark of its scale each has infinity."""
    told = marks(_lenses(question, knowledge), by, knowledge.catalogue, question.feet, 1)
    chains: list[ListedChain] = []
    for focal in focals(question):
        pieces = (("extension-tube", -by, -by),)
        judged = judged_alone(focal, stop(question), pieces, _form(question, knowledge), knowledge)
        words = f"{trimmed(focal, 1)} mm lens {trimmed(by, 3)} mm too close"
        chains.append(as_listed(judged, words, len(chains) + 1))
        lead = f"{article(words).capitalize()} {words}: {life_line(judged, question.feet)}."
        told = Told((Line("head", lead),)) + told if len(chains) == 1 else told + Told((Line("head", lead),))
    return Loose(tuple(chains), told)


def _limited(question: Question, limit: float, knowledge: Knowledge) -> Loose:
    """What it means that nothing beyond `limit` comes sharp, told as an error and judged for the first lens."""
    lenses = _lenses(question, knowledge)
    if mentions(question, FAR_AT_A_MARK):
        return Loose((), errors_of_mark(lenses, limit, knowledge.catalogue, question.feet, 1))
    told = errors_of_limit(lenses, limit, knowledge.catalogue, question.feet, 1)
    normal = lenses[0] if focals(question) else normal_focal(knowledge.catalogue)
    error = Distances(normal, knowledge.catalogue).extension_at(limit)
    if not told.lines or not is_known(error):
        return Loose()
    pieces = (("extension-tube", error.nominal, error.nominal),)
    judged = judged_alone(normal, stop(question), pieces, _form(question, knowledge), knowledge)
    words = f"a {trimmed(normal, 1)} mm lens that stops at this distance"
    return Loose((as_listed(judged, words),), told)
