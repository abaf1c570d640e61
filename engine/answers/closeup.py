"""How near a lens comes and how large things get: by tubes, helicoid, close-up lens, reversed, or a magnification."""

from __future__ import annotations

from collections.abc import Iterator

from engine.answers.by_stack import by_stack, held_by_rings
from engine.answers.close.close_alone import light_alone
from engine.answers.close.close_picture import shown_by, with_picture
from engine.answers.close.close_rows import Shown, assumed_note, at_extension, at_magnification, further
from engine.answers.close.converted import through_glass
from engine.answers.close.coupled import by_their_stops, coupled, is_turned, with_ring_turned
from engine.answers.close.dioptres import CLOSE_UP_LENS, with_close_up_lens
from engine.answers.close.drawn import draws, is_drawn
from engine.answers.close.draws_apart import draws_apart
from engine.answers.close.image_side import size_told
from engine.answers.close.least_of_all import least_of_all
from engine.answers.close.missing_extension import missing_extension
from engine.answers.close.nearest_set import asked_of_tubes, nearest_set
from engine.answers.close.objective import behind_tube_lens
from engine.answers.close.own_ring import by_its_ring, image_of
from engine.answers.close.taped import as_taped, front_focus_taped, taped_note
from engine.answers.close.tube_for import tube_for
from engine.answers.close.tube_sets import TUBE, sets_of, sets_told, tubes_told
from engine.answers.close.turned_round import reversed_alone
from engine.answers.howto import how_to
from engine.answers.making.stacks import length_of_all, stack_for
from engine.answers.parts.answer import ANSWERED, Answer, Line, ListedChain, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.nearby import nearest
from engine.answers.parts.owned import own_lens
from engine.answers.parts.resolve import BodySide, LensSide, body_side, lens_side
from engine.answers.parts.said import distance_mm, focals, mentions, number, numbers
from engine.answers.parts.wording import article, distance, small_mm, times, trimmed
from engine.answers.picture.filling import filling_told, fillings, motif_told
from engine.answers.seat.distances import PARTLY, Distances, distances_of, moves_in_part
from engine.answers.seat.ways_told import are_set_apart, ways_told
from engine.answers.shims.loose import loose
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.physics import closeup
from grammar.questions import Question

RING, HELICOID, MACRO = "adapter", "helicoid", "macro-distance"
MADE_WITHIN = 1.0  # mm, that a ring is off by at most: else it is rather a tube
LARGER = (0.5, 1.0, 2.0)  # magnifications that are spoken of


def macro(question: Question, knowledge: Knowledge) -> Answer:
    """Everything close up that the question's numbers give; the chain itself where lens and body are named."""
    question = with_ring_turned(question)
    objective = behind_tube_lens(question, knowledge.catalogue)
    if objective.lines:
        return _alone(objective, question)
    stack = by_stack(question, shown_by(question, knowledge), knowledge)
    if stack.lines and question.said("magnification") is None:
        return held_by_rings(stack, question, knowledge) or _alone(stack, question)
    if stack.lines:
        return _alone(stack + _at_size(question, knowledge), question)
    if are_set_apart(question):
        apart = draws_apart(ways_told(question, knowledge.catalogue), question, knowledge)
        if apart.lines:
            return _alone(apart, question)
    named = any(lens.ids for lens in question.lenses) and bool(question.bodies)
    named = named and motif_told(question, knowledge.catalogue) is None
    if named and _goes_by_chain(question, knowledge):
        return _with_table(how_to(question, knowledge, MACRO), question, knowledge)
    told = Told()
    for one in by_their_stops(question):
        for part in _parts(one, knowledge):
            new = tuple(line for line in part.lines if line.depth or line not in told.lines)
            told += Told(new, part.quantities)
    if named and not told.lines:
        return _with_table(how_to(question, knowledge, MACRO), question, knowledge)
    chains: tuple[ListedChain, ...] = loose(question, knowledge).chains if question.lenses else ()
    told = through_glass(told, question) + told
    lines = list(told.lines)
    if named and question.said("magnification"):
        part = stack_for(question, knowledge)
        lines += part.lines
        told = Told(told.lines, told.quantities + part.quantities)
    sized = question.said("magnification") or motif_told(question, knowledge.catalogue)
    if not _focals(question) and (not sized or any(thing.piece == TUBE for thing in question.adapters)):
        lines += _without_focal(question, knowledge, told)
    if not lines and _lenses(question, knowledge, []):
        nearest_of_all = least_of_all(_lenses(question, knowledge, []), question.feet)
        lines, told = list(nearest_of_all.lines), nearest_of_all
    if not lines:
        lines += [Line("text", f"{row.topic}: {row.says}") for row in nearest(question.text, knowledge.catalogue, 2)]
        lines.append(
            Line(
                "ask",
                "With which lens (focal length), and what stands behind it: which tubes, helicoid, close-up lens?",
            )
        )
    return Answer(
        question.text, MACRO, ANSWERED, tuple(lines), question=question, chains=chains or None,
        quantities=told.quantities,
    )  # fmt: skip


def _at_size(question: Question, knowledge: Knowledge) -> Told:
    """What the magnification told asks of each lens."""
    told, shown = Told(), shown_by(question, knowledge)
    for lens in _lenses(question, knowledge, []):
        for m in numbers(question, "magnification"):
            told += at_magnification(lens, m, shown)
    return told


def _alone(told: Told, question: Question) -> Answer:
    """What needs nothing beside it."""
    return Answer(question.text, MACRO, ANSWERED, told.lines, question=question, quantities=told.quantities)


def with_size_wanted(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer about a way, behind what the magnification that was told asks of the lens: its extension, and room."""
    told = Told()
    for part in _parts(question, knowledge):
        told += part
    told += stack_for(question, knowledge)
    quantities = (*told.quantities, *(answer.quantities or ()))
    return replace(answer, lines=(*told.lines, *answer.lines), quantities=quantities)


def _parts(question: Question, knowledge: Knowledge) -> Iterator[Told]:
    reverse = next((lens for lens in question.lenses if is_turned(lens)), None)
    pair = coupled(question, shown_by(question, knowledge))
    if pair.lines:
        yield pair
        return
    wanted, tubes = size_told(question), list(tubes_told(question, knowledge))
    rows = fillings(question, knowledge.catalogue) if wanted is None else []
    sizes = [row.magnification for row in rows]
    if wanted is not None and tubes and asked_of_tubes(question):
        sizes, wanted = [wanted], None  # what the tubes shall give, not what the lens has by itself
    if any(moves_in_part(thing, knowledge.catalogue) for thing in question.lenses):
        yield Told((Line("note", PARTLY),))
        if wanted is not None:
            yield light_alone(question, wanted, shown_by(question, knowledge))
        return
    lenses = _lenses(question, knowledge, tubes)
    shown = shown_by(question, knowledge)
    if reverse is not None and lenses:
        yield reversed_alone(lenses[0], question, shown, knowledge)
        return
    seen = motif_told(question, knowledge.catalogue)
    if seen is not None and tubes and mentions(question, "image-size-asked"):
        sizes = []  # how large it comes is asked, and not what would fill the frame
        for lens in lenses:
            yield image_of(seen, lens, sum(tubes))
    if wanted is None and not sizes:
        yield length_of_all(question)
    if sizes:
        yield filling_told(rows, question, knowledge.catalogue)
        framed = [(m, replace(shown, form=rows[n].form) if rows else shown) for n, m in enumerate(sizes)]
        for lens in lenses:
            yield nearest_set(lens, sizes[0], tubes, framed[0][1])
            for m, on_frame in framed:
                yield at_magnification(lens, m, on_frame)
            yield by_its_ring(lens, sizes[0], shown)
        for m, on_frame in framed if not lenses else ():
            yield light_alone(question, m, on_frame)
        return
    if wanted is not None and not tubes:
        for lens in lenses:
            yield missing_extension(lens.focal.nominal, question, knowledge.catalogue)
            yield at_magnification(lens, wanted, shown)
        if not lenses:
            yield missing_extension(None, question, knowledge.catalogue)
        for m in numbers(question, "magnification") if not lenses else ():
            yield light_alone(question, m, shown)
    for lens in lenses:
        yield from _drawn(lens, question, shown, knowledge)
        yield from tube_for(lens, tubes, question, shown)
        yield from _with_tubes(lens, tubes, wanted if tubes else None, question, knowledge)
        near = distance_mm(question) or number(question, "close_focus") or _own_nearest(question, knowledge)
        yield from with_close_up_lens(lens, question, shown, near)
        if tubes and mentions(question, "near-enough"):
            for m in LARGER:
                yield further(lens, m, tubes)
        if sets_told(tubes, question) or wanted is not None:
            yield taped_note(lens, question, tubes) or assumed_note(lens)
        if not tubes and wanted is None and not any(thing.piece == CLOSE_UP_LENS for thing in question.adapters):
            yield from _as_marked(lens, question, shown)
            yield from as_taped(lens, question, shown)


def _goes_by_chain(question: Question, knowledge: Knowledge) -> bool:
    """Whether a lens on a body is looked at with what is put between, so that the seat counts too."""
    asks = size_told(question) is None and not any(thing.piece == CLOSE_UP_LENS for thing in question.adapters)
    lens = lens_side(question.lens, knowledge.catalogue)
    seated = isinstance(lens, LensSide) and is_known(lens.mount.register_mm)
    drawn = seated and any(is_drawn(thing) for thing in question.adapters)
    reversed_ = any(is_turned(lens) for lens in question.lenses)
    own = any(lens.kind == "lens" for lens in question.lenses)
    return asks and (own or drawn or _is_its_ring(question, lens, knowledge)) and not reversed_


def _is_its_ring(question: Question, lens: LensSide | object, knowledge: Knowledge) -> bool:
    """Whether the one ring told is about as long as that of this lens on this body: it seats the lens, no tube."""
    body = body_side(question.body, knowledge.catalogue)
    told = question.adapters[0].thickness_mm if len(question.adapters) == 1 else None
    if told is None or question.adapters[0].piece != RING or told[0] != told[1]:
        return False
    if not (isinstance(lens, LensSide) and isinstance(body, BodySide)):
        return False
    one, other = lens.mount.register_mm, body.mount.register_mm
    return is_known(one) and is_known(other) and abs(told[0] - (one.nominal - other.nominal)) <= MADE_WITHIN


def _lenses(question: Question, knowledge: Knowledge, tubes: list[float]) -> list[Distances]:
    """The lenses told, each by what is known of it; a bare number that can be a focal length where none is."""
    facts = knowledge.catalogue
    found = [
        lens
        for thing in question.lenses
        if (lens := distances_of(thing, facts, front_focus_taped(thing, question, tubes))) is not None
    ]
    return found or [Distances(focal, facts) for focal in _focals(question)]


def _focals(question: Question) -> tuple[float, ...]:
    """The focal lengths told; a bare number that can be one counts where no lens has any."""
    return focals(question) or tuple(value for value in numbers(question, "numbers") if 8 <= value <= 1000)


def _drawn(optics: Distances, question: Question, shown: Shown, knowledge: Knowledge) -> Iterator[Told]:
    """A bellows at both ends of its draw: told, or that of those for the mount."""
    for lead, length in draws(question, knowledge):
        yield at_extension(optics, length, shown, lead, lead=lead)


def _with_tubes(
    optics: Distances, tubes: list[float], present: float | None, question: Question, knowledge: Knowledge
) -> Iterator[Told]:
    """Each tube, and all together: at the infinity mark and at the nearest mark of the lens."""
    feet, focal, shown = question.feet, optics.focal.nominal, shown_by(question, knowledge)
    sets = list(sets_of(tubes, question, knowledge))
    nearest_mark = number(question, "close_focus") or distance_mm(question) or _own_nearest(question, knowledge)
    own = optics.extension_at(nearest_mark) if nearest_mark else None
    lens = f"{trimmed(focal, 1)} mm lens"
    if not sets:
        return
    yield Told(
        (Line("head", f"{article(lens).capitalize()} {lens}, from the sensor, focus ring at infinity unless told:"),)
    )
    for length in sets:
        case = f"{trimmed(length, 2)} mm" if len(_focals(question)) == 1 else f"{lens}, {trimmed(length, 2)} mm"
        yield at_extension(optics, length, shown, case, lead=f"{trimmed(length, 2)} mm of tube")
        if any(thing.piece == HELICOID for thing in question.adapters):
            # drawn out so far it is as near as it gets
            yield Told((), at_extension(optics, length, shown, case, end="near").quantities)
        if present is not None:
            grown = closeup.magnification_with_tube(
                Interval.exact(present), Interval.exact(focal), Interval.exact(length)
            )
            if is_known(grown):
                text = f"with the {times(present)} it has by itself: {times(grown.nominal)}"
                yield Told((Line("fact", text, 2),), (Quantity("magnification", grown, f"{case} tube"),))
        if own is not None and is_known(own):
            near = f"{lens}, {distance(nearest_mark or 0, feet)} mark"
            lead = f"at its {distance(nearest_mark or 0, feet)} mark ({small_mm(own.nominal)} out by itself)"
            yield at_extension(optics, own.nominal + length, shown, near, end="near", lead=lead, level=2)


def _own_nearest(question: Question, knowledge: Knowledge) -> float | None:
    """The nearest mark of a lens of one's own, in mm."""
    lens = own_lens(question.lens, knowledge.catalogue)
    return lens.close_focus_mm.nominal if lens is not None and is_known(lens.close_focus_mm) else None


def _as_marked(optics: Distances, question: Question, shown: Shown) -> Iterator[Told]:
    """What the lens does by itself at a distance told."""
    at = distance_mm(question)
    own = optics.extension_at(at) if at else None
    if at is not None and own is not None and is_known(own):
        case = f"{trimmed(optics.focal.nominal, 1)} mm lens, {distance(at, question.feet)}"
        yield at_extension(optics, own.nominal, shown, case, end="focus")


def _without_focal(question: Question, knowledge: Knowledge, told: Told) -> list[Line]:
    return [Line("ask", "How near it comes hangs on the focal length: what is engraved on the lens?", wants="focal")]


def _with_table(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The same with the helicoid that would bring it nearer."""
    text = (
        "To come nearer: a helicoid in the ring's place, or between; magnification grows by its travel over the focal"
        " length."
    )
    answer = with_picture(answer, question, knowledge)
    return replace(answer, lines=(*answer.lines, Line("text", text)))
