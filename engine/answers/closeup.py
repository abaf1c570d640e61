"""How near a lens comes and how large things get: by tubes, helicoid, close-up lens, reversed, or a magnification."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product

from engine.answers.by_stack import by_stack, held_by_rings
from engine.answers.close.asked_first import sensor_told, with_asked_first
from engine.answers.close.by_chain import goes_by_chain, with_tube_on_ring
from engine.answers.close.close_alone import light_alone
from engine.answers.close.close_picture import shown_by, with_picture
from engine.answers.close.close_rows import assumed_note, at_extension, at_magnification, further
from engine.answers.close.converted import through_glass
from engine.answers.close.coupled import by_their_stops, coupled, is_turned, with_ring_turned
from engine.answers.close.dioptres import powers_of, whatever_lens, with_close_up_lens
from engine.answers.close.draw_wanted import draw_wanted
from engine.answers.close.drawn import draws, is_told_by_kind
from engine.answers.close.draws_apart import draws_apart
from engine.answers.close.finite_objective import on_its_tube
from engine.answers.close.image_side import size_told
from engine.answers.close.least_of_all import least_of_all
from engine.answers.close.missing_extension import (
    beyond_nearest_mark,
    missing_extension,
    own_and_wanted,
    sizes_each,
)
from engine.answers.close.nearest_set import asked_of_tubes, nearest_set
from engine.answers.close.objective import behind_tube_lens
from engine.answers.close.own_ring import by_its_ring, image_of
from engine.answers.close.taped import as_taped, taped_note
from engine.answers.close.tube_for import tube_for
from engine.answers.close.tube_sets import TUBE, left_beyond_infinity, sets_told, tubes_told
from engine.answers.close.tubes_apart import tubes_apart
from engine.answers.close.turned_round import reversed_alone
from engine.answers.close.ways_closer import led_by_ways
from engine.answers.close.with_tubes import as_marked, focals_of, lenses_of, own_nearest, with_tubes
from engine.answers.howto import how_to
from engine.answers.making.stacks import length_of_all, stack_for
from engine.answers.parts.answer import ANSWERED, Answer, Line, ListedChain, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.nearby import nearest
from engine.answers.parts.said import distance_mm, mentions, number, numbers
from engine.answers.picture.field_there import focal_for_field, seen_there
from engine.answers.picture.filling import Filling, filling_told, fillings, motif_told
from engine.answers.seat.distances import PARTLY, Distances, moves_in_part
from engine.answers.seat.ways_told import are_set_apart, ways_told
from engine.answers.shims.loose import loose, off_by_mm
from engine.answers.sits_too_close import sits_too_close
from engine.base.compact import replace
from grammar.kinds import MACRO_DISTANCE
from grammar.questions import CLOSE_UP_LENS, OFF, Question

LARGER = (0.5, 1.0, 2.0)  # magnifications that are spoken of
FOCAL_ASKED = "How near it comes hangs on the focal length: what is engraved on the lens?"
LARGE_ASKED = "How large it then comes hangs on the focal length: what is engraved on the lens?"
ASKED_BACK = "With which lens (focal length), and what stands behind it: which tubes, helicoid, close-up lens?"


def macro(question: Question, knowledge: Knowledge) -> Answer:
    """Everything close up that the question's numbers give; the chain itself where lens and body are named."""
    question = with_ring_turned(question)
    return with_asked_first(_of_a_kind(question, knowledge) or _by_numbers(question, knowledge), question, knowledge)


def _of_a_kind(question: Question, knowledge: Knowledge) -> Answer | None:
    """A microscope objective, a stack of rings, ways set apart: what needs nothing beside it; None where it is none."""
    objective = behind_tube_lens(question, knowledge.catalogue)
    if objective.lines:
        return _alone(objective, question)
    finite = on_its_tube(question, knowledge)
    if finite.lines:
        return _alone(finite, question)
    alone = sits_too_close(question, knowledge) + sensor_told(question, knowledge) + tubes_apart(question)
    if alone.lines:
        return _alone(alone, question)
    framed = motif_told(question, knowledge.catalogue) is not None  # what fills the frame is asked, not how it seats
    stack = by_stack(question, shown_by(question, knowledge), knowledge) if not framed else Told()
    if stack.lines and question.said("magnification") is None:
        return held_by_rings(stack, question, knowledge) or _alone(stack, question)
    if stack.lines:
        return _alone(stack + _at_size(question, knowledge), question)
    if are_set_apart(question):
        apart = draws_apart(ways_told(question, knowledge.catalogue), question, knowledge)
        return _alone(apart, question) if apart.lines else None
    return None


def _by_numbers(question: Question, knowledge: Knowledge) -> Answer:
    """What tubes, sizes and distances give; the chain where lens and body are named; else what is asked for."""
    question = with_tube_on_ring(question, knowledge)
    by_kind = any(is_told_by_kind(lens, question) for lens in question.lenses)
    named = (by_kind or any(lens.ids for lens in question.lenses)) and bool(question.bodies)
    named = named and motif_told(question, knowledge.catalogue) is None
    if named and ((by_kind and size_told(question) is None) or goes_by_chain(question, knowledge)):
        return _with_table(how_to(question, knowledge, MACRO_DISTANCE), question, knowledge)
    told = Told()
    for one in by_their_stops(question):
        for part in _parts(one, knowledge):
            new = tuple(line for line in part.lines if line.depth or line not in told.lines)
            told += Told(new, part.quantities)
    if named and not told.lines:
        return _with_table(how_to(question, knowledge, MACRO_DISTANCE), question, knowledge)
    chains: tuple[ListedChain, ...] = loose(question, knowledge).chains if question.lenses else ()
    told = _of_field(question, knowledge) + through_glass(told, question) + told
    if not focals_of(question):
        told = sum(left_beyond_infinity(question), told)
    lines = list(told.lines)
    if question.said("magnification"):
        part = stack_for(question, knowledge)
        lines += part.lines
        told = Told(told.lines, told.quantities + part.quantities)
    sized = question.said("magnification") or motif_told(question, knowledge.catalogue)
    if not focals_of(question) and (not sized or any(thing.piece == TUBE for thing in question.adapters)):
        lines.append(Line("ask", LARGE_ASKED if lines and powers_of(question) else FOCAL_ASKED, wants="focal"))
    if not lines and (lenses := lenses_of(question, knowledge, [])):
        told = least_of_all(lenses, question.feet)
        lines = list(told.lines)
    if not lines:
        lines += [Line("text", f"{row.topic}: {row.says}") for row in nearest(question.text, knowledge.catalogue, 2)]
        lines.append(Line("ask", ASKED_BACK))
    return Answer(
        question.text, MACRO_DISTANCE, ANSWERED, tuple(lines), question=question, chains=chains or None,
        quantities=told.quantities,
    )  # fmt: skip


def _of_field(question: Question, knowledge: Knowledge) -> Told:
    """Where the view so far away is asked: how wide it is, or which focal length gives it."""
    asked = mentions(question, "how-wide-there")
    return focal_for_field(question, knowledge) + (seen_there(question, knowledge) if asked else Told())


def _at_size(question: Question, knowledge: Knowledge) -> Told:
    """What the magnification told asks of each lens."""
    told, shown = Told(), shown_by(question, knowledge)
    for lens in lenses_of(question, knowledge, []):
        for m in numbers(question, "magnification"):
            told += at_magnification(lens, m, shown)
    return told


def _alone(told: Told, question: Question) -> Answer:
    """What needs nothing beside it."""
    return Answer(question.text, MACRO_DISTANCE, ANSWERED, told.lines, question=question, quantities=told.quantities)


def with_size_wanted(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer about a way, behind what the magnification that was told asks of the lens: its extension, and room."""
    told = size_of(question, knowledge)
    told += stack_for(question, knowledge) if not told.lines else Told()
    quantities = (*told.quantities, *(answer.quantities or ()))
    return replace(answer, lines=(*told.lines, *answer.lines), quantities=quantities)


def size_of(question: Question, knowledge: Knowledge) -> Told:
    """What the size told asks of the lens, or gives with what stands behind it."""
    told = on_its_tube(question, knowledge)
    for part in _parts(question, knowledge) if not told.lines else ():
        told += part
    return told


def _parts(question: Question, knowledge: Knowledge) -> Iterator[Told]:
    reverse = next((lens for lens in question.lenses if is_turned(lens)), None)
    pair = coupled(question, shown_by(question, knowledge))
    if pair.lines:
        yield pair
        return
    wanted, tubes = size_told(question), _tubes(question, knowledge)
    rows = fillings(question, knowledge.catalogue) if wanted is None else []
    sizes = [row.magnification for row in rows]
    from_own = tubes and question.mentions("own-size") and own_and_wanted(question) is not None
    if from_own:
        wanted = min(numbers(question, "magnification"))
    elif wanted is not None and tubes and asked_of_tubes(question):
        sizes, wanted = [wanted], None  # what the tubes shall give, not what the lens has by itself
    if any(moves_in_part(thing, knowledge.catalogue) for thing in question.lenses):
        yield whatever_lens(question, shown_by(question, knowledge))
        yield Told((Line("note", PARTLY),))
        if any(thing.piece == CLOSE_UP_LENS for thing in question.adapters):
            for lens in lenses_of(question, knowledge, []):  # at its infinity mark it draws as any of its focal length
                yield from with_close_up_lens(lens, question, shown_by(question, knowledge))
        if wanted is not None:
            yield light_alone(question, wanted, shown_by(question, knowledge))
        return
    lenses = lenses_of(question, knowledge, tubes)
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
        yield from _filling(lenses, sizes, tubes, rows, question, knowledge)
        return
    before = any(thing.piece == CLOSE_UP_LENS for thing in question.adapters)
    if wanted is not None and not tubes and not (before and lenses):
        yield from _by_extension(lenses, wanted, question, knowledge)
    for lens in lenses:
        if from_own:
            yield missing_extension(lens.focal.nominal, question, knowledge.catalogue, sum(tubes))
        yield from _of_lens(lens, wanted, tubes, question, knowledge)
    if not lenses and not tubes and wanted is None:
        yield whatever_lens(question, shown)


def _tubes(question: Question, knowledge: Knowledge) -> list[float]:
    """The lengths of extension told; where a ring was said to be off all together with its error, which is no tube."""
    off = off_by_mm(question) if question.off_word is not None else None
    if off is None:
        return list(tubes_told(question, knowledge))
    values = question.rest(OFF, "thickness")
    length = sum(tubes_told(replace(question, values=values), knowledge)) + off
    return [length] if length > 0 else list(tubes_told(question, knowledge))  # '4 tenths under the mount' is no error


def _filling(
    lenses: list[Distances],
    sizes: list[float],
    tubes: list[float],
    rows: list[Filling],
    question: Question,
    knowledge: Knowledge,
) -> Iterator[Told]:
    """What fills the frame, or the magnification that tubes shall give, by each lens."""
    shown = shown_by(question, knowledge)
    yield filling_told(rows, question, knowledge.catalogue)
    framed = [(m, replace(shown, form=rows[n].form) if rows else shown) for n, m in enumerate(sizes)]
    for lens in lenses:
        yield draw_wanted(lens.focal * sizes[0], sizes[0], question, knowledge)
        yield nearest_set(lens, sizes[0], tubes, framed[0][1])
        for m, on_frame in framed:
            yield at_magnification(lens, m, on_frame)
        yield by_its_ring(lens, sizes[0], shown)
    for m, on_frame in framed if not lenses else ():
        yield light_alone(question, m, on_frame)


def _by_extension(lenses: list[Distances], wanted: float, question: Question, knowledge: Knowledge) -> Iterator[Told]:
    """What a magnification that is wanted asks of each lens; without one, what it asks of any."""
    shown = shown_by(question, knowledge)
    sizes = sizes_each(question)
    for lens, m in product(lenses, sizes):
        yield at_magnification(lens, m, shown)
    if lenses and sizes:
        return
    for lens in lenses:
        yield missing_extension(lens.focal.nominal, question, knowledge.catalogue)
        yield beyond_nearest_mark(lens, wanted, question, shown)
        yield draw_wanted(lens.focal * wanted, wanted, question, knowledge)
        yield at_magnification(lens, wanted, shown)
    if lenses:
        return
    yield missing_extension(None, question, knowledge.catalogue)
    for m in numbers(question, "magnification"):
        yield light_alone(question, m, shown)


def _of_lens(
    lens: Distances, wanted: float | None, tubes: list[float], question: Question, knowledge: Knowledge
) -> Iterator[Told]:
    """What one lens does with all that is put behind and before it, and by itself."""
    shown = shown_by(question, knowledge)
    near = distance_mm(question) or number(question, "close_focus") or own_nearest(question, knowledge)
    first = any(thing.piece == CLOSE_UP_LENS for thing in question.adapters)
    if first:
        yield from with_close_up_lens(lens, question, shown, near)
    for lead, length in draws(question, knowledge):  # both ends of a bellows: told, or those of one for the mount
        yield at_extension(lens, length, shown, lead, lead=lead)
    yield from tube_for(lens, tubes, question, shown)
    if tubes or wanted is None:  # where a size is wanted, what the usual tubes give is not asked
        yield from with_tubes(lens, tubes, wanted if tubes else None, question, knowledge)
    if tubes and mentions(question, "near-enough"):
        for m in LARGER:
            yield further(lens, m, tubes)
    if sets_told(tubes, question) or wanted is not None:
        yield taped_note(lens, question, tubes) or assumed_note(lens)
    if not tubes and wanted is None and not any(thing.piece == CLOSE_UP_LENS for thing in question.adapters):
        yield from as_marked(lens, question, shown)
        yield from as_taped(lens, question, shown)


def _with_table(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The same with the helicoid that would bring it nearer."""
    text = (
        "To come nearer: a helicoid in the ring's place, or between; magnification grows by its travel over the focal"
        " length."
    )
    answer = with_picture(answer, question, knowledge)
    led = led_by_ways(answer, question, knowledge)
    return led if led is not answer else replace(answer, lines=(*answer.lines, Line("text", text)))
