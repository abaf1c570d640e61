"""Which mount a lens has: by its thread, by what is seen, by flange to image; and which measurement settles it."""

from __future__ import annotations

from collections.abc import Iterator

from engine.answers.found import together
from engine.answers.found.all_measured import BY_PAPER, as_unnamed, combined, is_bayonet, not_of_the_ring
from engine.answers.found.barrels import barrels
from engine.answers.found.by_features import by_features, formats_told
from engine.answers.found.by_register import by_register, with_opening_as_throat
from engine.answers.found.dropped_through import dropped_through
from engine.answers.found.either_of import either_of
from engine.answers.found.not_by_thread import by_no_focus_ring, not_by_thread
from engine.answers.found.pitch_contradicts import against_pitch
from engine.answers.found.thread_told import ASSUMED, without_assumed
from engine.answers.found.threads_measured import (
    by_thread,
    ten_pitches,
    thread_measured,
    with_width_of_part,
)
from engine.answers.parts.answer import ANSWERED, NO, Answer, Line, Told
from engine.answers.parts.asking_back import DETAILS
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.mount_line import looks_line, mount_line, mount_numbers
from engine.answers.parts.nearby import nearest
from engine.answers.parts.resolve import LensSide, lens_side
from engine.answers.parts.said import mentions, number, numbers
from engine.answers.parts.usual_mounts import as_met
from engine.answers.parts.wording import listed, small_mm
from engine.answers.seat.seen import is_coupled_by_lugs, looks_so
from engine.answers.seat.told_register import TOLD_BY, against_name, with_mount_by_register
from engine.answers.ways.pair_beside import with_pair
from engine.base.compact import compact, replace
from engine.base.interval import is_known
from engine.facts.guidance import Advice
from engine.facts.records import Mount
from grammar.kinds import FOCUS_VERDICT, IDENTIFY_MOUNT
from grammar.questions import BY_MEASURES, BY_THREAD, Question, Thing
from grammar.turns.about_lenses import OF_CAMERAS

MOST = 6
MOST_MEANT = 4  # mounts that one thread may be, for what is asked next
WHAT_TO_MEASURE = (
    "Measure: 1. whether it screws or turns in by lugs; 2. of a thread the width across, by caliper, and the pitch, ten"
    " crests on paper; of a bayonet the lugs, the throat, pins and contacts; 3. flange to the sharp image of a far"
    " window, set to infinity. Thread pitch and that distance together mostly settle it."
)
MOST_SEEN = 8
SEEN_ALONE = "By what is seen it is most likely this one; flange to image makes it sure:"
SEEN_SO = "By what is seen it may be one of these, those met most first; flange to image tells most of them apart:"


def identify(question: Question, knowledge: Knowledge) -> Answer:
    """Which mounts the lens may have; and how it then gets on the body that was named with it, if any."""
    question = with_opening_as_throat(not_of_the_ring(as_unnamed(question), knowledge), knowledge)
    answer = _identified(question, knowledge)
    answer = replace(answer, lines=(*by_no_focus_ring(question, knowledge).lines, *answer.lines))
    if not question.bodies or answer.chains or mentions(question, "which-sense"):
        return answer
    asked = answer.learnt or with_mount_by_register(question, knowledge, sure=True)
    return with_pair(answer, asked.with_(bodies=question.bodies), knowledge)


@compact
class _Found:
    """What was found. `told`: by measures; `mounts`: those of the thread; `named`: those the question names.

    `rows`: what is known of such looks; `seen`: mounts that look so; `shown`: those that are shown, in order;
    `both`: those that looks and the throat both speak for, `rest`: those that the measures leave besides.
    """

    told: Told
    mounts: list[str]
    named: list[str]
    rows: list[Advice]
    seen: list[Mount]
    shown: list[str]
    both: list[str]
    rest: list[str]


def _identified(question: Question, knowledge: Knowledge) -> Answer:
    """The mounts that fit what was measured or seen, with thread and register of each, then what decides."""
    question = without_assumed(question, knowledge.catalogue)
    settled = _settled(question, knowledge)
    if settled is not None:
        return settled
    question = with_width_of_part(question, knowledge)
    found = _found(question, knowledge)
    told, rows, shown, seen = found.told, found.rows, found.shown, found.seen
    advice = list(_advice(rows, found.named))
    lines = [
        *_both(found.both, knowledge),
        *told.lines,
        *([Line("head", SEEN_SO if len(shown) > 1 else SEEN_ALONE)] if seen else advice),
    ]
    quantities = list(told.quantities)
    for name in shown[: MOST if not seen else MOST_SEEN]:
        mount = knowledge.catalogue.mounts[name]
        apart = looks_line(mount) if len(found.named) > 1 else ""
        lines.append(Line("fact", f"{mount.designation}: {mount_line(mount, knowledge)}{apart}", 1))
        quantities += mount_numbers(mount, knowledge)
    lines += advice if seen else []
    screws = not shown or any(knowledge.catalogue.mounts[name].thread for name in shown)
    if screws and mentions(question, "measure-thread") and not is_coupled_by_lugs(question):
        pitches = ten_pitches(knowledge)
        lines, quantities = [*lines, *pitches.lines], [*quantities, *pitches.quantities]
    if not told.lines and not found.mounts and not found.named and not seen:
        first = any(row.mounts for row in rows) or mentions(question, "how-measured")  # what was seen or asked
        lines = [*lines, Line("text", WHAT_TO_MEASURE)] if first and rows else [Line("head", WHAT_TO_MEASURE), *lines]
    lines += list(_asks(question, shown, knowledge))
    return Answer(
        question.text, "identify-mount", ANSWERED if shown or told.lines or rows else NO, tuple(lines),
        question=question, quantities=tuple(quantities),
        learnt=None if found.named else _narrowed(question, found, knowledge),
    )  # fmt: skip


def _both(both: list[str], knowledge: Knowledge) -> Iterator[Line]:
    """The mounts that what was measured and what was seen both speak for, ahead of all that either allows."""
    names = listed([knowledge.catalogue.mounts[name].designation for name in both], "or")
    if both:
        yield Line("head", f"By what was measured and what is seen together most likely {names}.")


def _settled(question: Question, knowledge: Knowledge) -> Answer | None:
    """The answer where measures taken together, a choice of two, a register or a smooth barrel tell all there is."""
    settled = (
        dropped_through(question, knowledge)
        or combined(question, knowledge)
        or either_of(question, knowledge)
        or _by_register(question, knowledge)
        or combined(question, knowledge, by_name=True)
    )
    if settled is not None:
        return settled
    smooth = barrels(question, knowledge)
    if not smooth.lines:
        return None
    return Answer(question.text, "identify-mount", ANSWERED, smooth.lines, question=question,
                  quantities=smooth.quantities)  # fmt: skip


def _found(question: Question, knowledge: Knowledge) -> _Found:
    """What thread, register, names and looks tell, each where the ones before it leave it open."""
    told, mounts = by_thread(question, knowledge) if not is_bayonet(question) else (Told(), [])
    told = against_name(question, knowledge) + not_by_thread(question, knowledge) + told
    named_lens = any(thing.ids for thing in question.lenses)
    registers = by_register(question, knowledge) if not mounts and not named_lens else Told()
    told += registers
    named = _named(question, knowledge)
    near = {quantity.case for quantity in registers.quantities}
    apart = [row for row in knowledge.catalogue.advice.values() if _tells_mounts(row) and _sets_apart(row, named)]
    rows = apart[:1] or _by_looks(question, knowledge)
    if registers.lines:
        rows = [row for row in rows if set(row.mounts) & near][:1]
    if mounts:
        rows = [row for row in rows if not row.mounts or set(row.mounts) & set(mounts)]
    seen = by_features(question, knowledge) if not (named or mounts or told.lines or apart) else []
    # not where the distance has told them already, or just those named are to be told apart
    of_format = {mount.id for mount in seen if formats_told(question) & set(mount.formats)}
    rows = [row for row in rows if not of_format or of_format & set(row.mounts)]
    looked = (row for row in rows if not named or set(named) & set(row.mounts))  # looks of others are no news of it
    by_looks = [name for row in looked for name in row.mounts if not (near or apart)]
    shown = list(dict.fromkeys([*named, *mounts, *by_looks]))
    if seen:  # of those told of such looks only what nothing seen speaks against
        shown = [name for name in shown if looks_so(knowledge.catalogue.mounts[name], question)]
        shown = list(dict.fromkeys([*shown, *(mount.id for mount in seen)]))
    both = [name for name in (rows[0].mounts if rows and registers.lines else ()) if name in near]
    both = both if len(both) < len(near) and question.said("flange_to_image") is None else []  # a register tells more
    rest = [row.case for row in registers.quantities if row.case and row.case not in both]
    return _Found(told, mounts, named, rows, seen, shown, both, rest if both else [])


def _narrowed(question: Question, found: _Found, knowledge: Knowledge) -> Question:
    """The question with the lens taken for one of the mounts that its thread or looks allow, for what is asked next."""
    lens, facts = question.lens or Thing(), knowledge.catalogue
    if found.both and not lens.ids and len(question.lenses) < 2:
        ids, traits = (*found.both, *found.rest), (*lens.traits, BY_MEASURES)
        return replace(question, lenses=(replace(lens, kind="mount", ids=ids, traits=traits),))
    ids = tuple(id_ for id_ in found.mounts if is_known(facts.mounts[id_].register_mm))
    ids = as_met(ids, facts)[:MOST_MEANT]
    if lens.ids or not ids or len(question.lenses) > 1 or mentions(question, "no-focus-ring"):
        return question  # what cannot be focused has no register of its own, whatever its thread
    meant = replace(lens, kind="mount", ids=ids, traits=(*lens.traits, BY_THREAD))
    return replace(question, lenses=(meant,))


def _tells_mounts(advice: Advice) -> bool:
    return bool(advice.asked_as == "other" and advice.mounts) or _is_measuring(advice)


def _by_looks(question: Question, knowledge: Knowledge) -> list[Advice]:
    """What is told of such looks, as far as nothing that was seen speaks against all the mounts that it is told of."""
    mounts = knowledge.catalogue.mounts

    def holds(row: Advice) -> bool:
        told = [mounts[name] for name in row.mounts if name in mounts]
        return _tells_mounts(row) and (not told or any(looks_so(mount, question) for mount in told))

    return list(nearest(question.text, knowledge.catalogue, 2, among=holds))


def _sets_apart(row: Advice, named: list[str]) -> bool:
    """Whether what is told of looks is of all the mounts named: 'FD or FL, how do I tell'."""
    return len(named) > 1 and set(named) <= set(row.mounts)


def _is_measuring(row: Advice) -> bool:
    return row.id.startswith("measure-")


def _advice(rows: list[Advice], named: list[str]) -> Iterator[Line]:
    for row in rows:
        if not named or not row.mounts or set(named) & set(row.mounts):
            yield Line("head" if row is rows[0] else "text", f"{row.topic[:1].upper()}{row.topic[1:]}: {row.says}")


def _named(question: Question, knowledge: Knowledge) -> list[str]:
    """The mounts named, and those whose parts go into their thread as if they were the same."""
    mounts, out = knowledge.catalogue.mounts, []
    for thing in (*question.lenses, *question.bodies, *question.things):
        if thing.kind == "mount":
            out += [id_ for id_ in thing.ids if id_ in mounts and "thread-only" not in mounts[id_].traits]
    if len(set(out)) > 1:
        # a mirrorless body beside the lens is what it goes on, but where senses are set apart: 'R as in RF'
        several = (*question.lenses, *question.bodies) if mentions(question, "which-sense") else question.lenses
        own = {id_ for thing in several for id_ in thing.ids} if len(several) > 1 else set()
        out = [id_ for id_ in out if id_ in own or mounts[id_].kind != "mirrorless"] or out
    if len(set(out)) == 1 or question.topic == "blurry":
        for name in out[:1]:
            out += [joint.rear for joint in knowledge.joints.onward(name) if joint.outcome == "same"][:2]
    return list(dict.fromkeys(out))


def _by_register(question: Question, knowledge: Knowledge) -> Answer | None:
    """A flange-to-image distance told of a lens whose thread is known: which look-alike it is, and what follows."""
    if question.said("thread") is not None and question.lens is not None and ASSUMED in question.lens.traits:
        return None  # its thread tells more than what lenses of its kind mostly have
    told = number(question, "flange_to_image") or next(
        (value for value in numbers(question, "numbers", "length") if 5 < value < 120 and question.follows), None
    )
    lens = question.lens
    side = lens_side(lens, knowledge.catalogue)
    if told is None or lens is None or not isinstance(side, LensSide):
        return None
    alike = [side.mount, *(knowledge.catalogue.mounts[j.rear] for j in knowledge.joints.onward(side.mount.id))]
    known = [(abs(m.register_mm.nominal - told), m) for m in alike if is_known(m.register_mm)]
    good = knowledge.catalogue.assumptions["register-by-paper"].value.greatest
    near = [(off, mount) for off, mount in known if off <= good]
    if not near:
        return None
    # what was named rather than what shares its seat, of a name that several have the likeliest
    named = {id_: at for at, id_ in enumerate(lens.ids)}
    mount = min(near, key=lambda row: (round(row[0], 1), named.get(row[1].id, len(named)), row[1].id))[1]
    traits = tuple(one for one in (*lens.traits, TOLD_BY) if one not in OF_CAMERAS)  # SLR or not is answered now
    kind = None if lens.lens_kind in OF_CAMERAS else lens.lens_kind
    meant = replace(lens, kind="mount", ids=(mount.id,), words=mount.designation, traits=traits, lens_kind=kind)
    alone = ", not only by its thread" if mount.thread else ""
    exactly = [one for off, one in near if off < together.EXACTLY_MM]
    twins = together.of_nearly_its_pitch(mount, exactly, question, knowledge)
    names = listed([mount.designation, *(one.designation for one in twins)], "or")
    head = Line("head", f"{small_mm(told)} from flange to image: it is {names}{alone}.")
    head = against_pitch(told, mount, question, knowledge) or head
    bodies = tuple(one for one in question.bodies if one.ids or one.format) or tuple(
        one for one in question.lenses[1:2] if one.ids[:1] != (mount.id,)
    )
    prior = question.prior if bodies else replace(question, prior=None)  # whose measure may yet be put right
    asked = replace(question, intent=FOCUS_VERDICT, lenses=(meant,), bodies=bodies, values=(), prior=prior)
    if not bodies:
        rows = tuple(row for one in (mount, *twins) for row in mount_numbers(one, knowledge))
        facts = [Line("fact", f"{one.designation}: {mount_line(one, knowledge)}", 1) for one in (mount, *twins)]
        return Answer(
            question.text, "identify-mount", ANSWERED, (head, *facts), question=question, quantities=rows, learnt=asked
        )
    from engine.answers.howto import how_to

    answer = how_to(asked, knowledge)
    return replace(answer, intent=IDENTIFY_MOUNT, lines=(head, *answer.lines))


def _asks(question: Question, shown: list[str], knowledge: Knowledge) -> Iterator[Line]:
    """The measurement that would decide between what is left."""
    diameter, pitch = thread_measured(question)
    mounts = [knowledge.catalogue.mounts[name] for name in shown]
    by_lugs = is_coupled_by_lugs(question)
    threads = (knowledge.catalogue.threads.get(mount.thread or "") for mount in mounts)
    pitches = {round(one.pitch_mm.nominal, 2) for one in threads if one is not None and is_known(one.pitch_mm)}
    if pitch is None and not by_lugs and (diameter is not None or len(pitches) > 1):
        table = " ".join(line.text for line in ten_pitches(knowledge).lines)
        yield Line("ask", f"What is the pitch? {table}", wants="pitch")
    registers = {mount.register_mm.nominal for mount in mounts if is_known(mount.register_mm)}
    if len(mounts) > 1 and (len(registers) > 1 or (registers and any(not is_known(m.register_mm) for m in mounts))):
        yield Line("ask", BY_PAPER, wants="flange_to_image")
    if not mounts and diameter is None and not by_lugs and not mentions(question, "measure"):
        yield Line("ask", "What is the thread's diameter across, by caliper, and its pitch?", wants="thread")
    if not mounts or all(mount.coupling != "screw" for mount in mounts):
        yield Line("ask", DETAILS)
