"""Which mount a lens has, where its words alone leave it open: by what else the question says of it."""

from __future__ import annotations

from typing import Final

from engine.answers.found.by_pitch import is_of_the_hole, of_its_pitch
from engine.answers.found.by_trade import MODERN, is_modern, is_of_film, mates_of, of_its_kin, of_its_trade
from engine.answers.found.mounts_named import is_set_against
from engine.answers.found.same_name import of_that_name, two_heads, unfocused
from engine.answers.found.thread_told import of_another_lens, with_thread_told
from engine.answers.parts.said import number, numbers, pitch_mm
from engine.answers.seat.two_registers import body_register
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.facts.catalogue import Catalogue
from grammar.kinds import CHAIN, COMPARE, FOCUS_VERDICT, HAZARD, IDENTIFY_MOUNT, LOOK_ALIKE, MACRO_DISTANCE, WHY
from grammar.questions import BY_REGISTER, BY_THREAD, Question, Thing

UNCLAIMED: Final = ("numbers", "length")  # keys of numbers that no word has claimed
OF_BODIES: Final = (CHAIN, FOCUS_VERDICT, MACRO_DISTANCE, HAZARD)  # questions that want a body
SIDE_BY_SIDE: Final = (LOOK_ALIKE, COMPARE)  # questions that set the mounts named against each other
FEW_MOUNTS: Final = 2
HEADS: Final = "lens-side-only"  # trait of mounts that only lenses have, made to stand on a longer housing
UNMARKED: Final = "unmarked"  # trait of a lens without a name
EXACTLY_MM: Final = 0.051  # registers are told to a tenth or better


def told_apart(question: Question, catalogue: Catalogue) -> Question:
    """The question with each lens whose words mean several mounts narrowed by the kind of lens that was told."""
    question = _named_twice(of_another_lens(two_heads(question, catalogue), catalogue))
    question = of_its_trade(_with_bodies_of_format(_heads_are_lenses(question, catalogue), catalogue), catalogue)
    # what is told of the body is no measure of the lens
    measured = number(question, "flange_to_image") if body_register(question) is None else None
    of_film, pitch = is_of_film(question), pitch_mm(question)
    lenses = []
    names: list[tuple[str, ...]] = []  # of one told twice the first is that of the old lens
    for thing in question.lenses:
        old = _of_its_time(thing, question.intent in SIDE_BY_SIDE, catalogue)
        is_old = of_film and thing.ids not in names and not is_set_against(thing, old, question.lenses)
        names.append(thing.ids)
        thing = unfocused(_by_every_name(thing, catalogue), catalogue)
        thing = _of_its_time(_of_its_kind(thing, catalogue), is_old, catalogue)
        thing = _by_ring_named(_by_number(thing, question, catalogue), question, catalogue)
        thing = of_its_kin(thing, question, catalogue)
        claimed = question.intent in SIDE_BY_SIDE and not thing.ambiguous and len(question.lenses) > 1
        claimed = claimed or is_of_the_hole(thing, question)
        by_pitch = thing if claimed else of_its_pitch(thing, pitch, catalogue)  # 'is 42 with 0.75 of pitch an M42'
        beside = question.follows and question.intent == LOOK_ALIKE and not thing.ambiguous and by_pitch != thing
        lenses += [thing] if beside else []  # '1 mm pitch ok?' of a T2 lens: that thread is set against its own
        thing = by_pitch
        asks_which = question.intent in (IDENTIFY_MOUNT, *SIDE_BY_SIDE) and not _has_thread(thing, catalogue)
        lenses.append(thing if asks_which else _as_measured(thing, measured, catalogue))
    if of_film and question.intent in SIDE_BY_SIDE:  # 'SR and X mount, old film SLR': the second one too
        old_ones = [(one, _of_its_time(one, True, catalogue)) for one in question.bodies]
        modern = any(one == old and is_modern(one, catalogue) for one, old in old_ones)  # 'an E body or an X one'
        kept = tuple(one if modern or is_set_against(one, old, tuple(lenses)) else old for one, old in old_ones)
        question = question.with_(bodies=kept)
    # conditions on one's own gear count the bodies
    question = _without_its_own_body(_once_each(question)) if question.sought is None else question
    lenses = [one for one in lenses if not _says_less(one, lenses)]
    lenses = _as_one_unknown(lenses) if question.intent == IDENTIFY_MOUNT else lenses
    lenses = list({_told_of(lens, question.intent): lens for lens in reversed(lenses)}.values())[::-1]
    question = question if tuple(lenses) == question.lenses else question.with_(lenses=tuple(lenses))
    return question if question.intent == IDENTIFY_MOUNT else with_thread_told(question, catalogue)


def _says_less(lens: Thing, lenses: list[Thing]) -> bool:
    """'an RX 25 ... marked RX': a mount told of another lens too, with that one's length at most, is no second one."""
    told, focal = (lens.f_number, lens.lens_kind, lens.count, lens.format), lens.focal_length_mm
    if any(told) or lens.kind != "mount" or (focal is not None and f"{focal:g}" in lens.words):
        return False
    alike = (one for one in lenses if one is not lens and one.ids == lens.ids and not one.count)
    return any(one.focal_length_mm and focal in (None, one.focal_length_mm) for one in alike)


def _as_one_unknown(lenses: list[Thing]) -> list[Thing]:
    """'nameless tele, 42mm screw, m42 or not': what a lens without a name is told to have is said of that lens."""
    names = [one for one in lenses if _is_name_alone(one)]
    once = [one for n, one in enumerate(names) if not any(one.ids[0] in other.ids for other in names[:n])]
    unknown = [one for one in lenses if one not in names]
    if len(unknown) != 1 or UNMARKED not in unknown[0].traits or len(once) != 1:
        return lenses
    if unknown[0].ids:  # '... 42mm screw, m42 or not': named by its width, and then by what that may be
        return unknown if once[0].ids[0] in unknown[0].ids else lenses
    return [replace(unknown[0], kind="mount", ids=once[0].ids, words=unknown[0].words or once[0].words)]


def _is_name_alone(lens: Thing) -> bool:
    told = (lens.focal_length_mm, lens.f_number, lens.lens_kind, lens.count, lens.format, lens.traits)
    return lens.kind == "mount" and bool(lens.ids) and not any(told)


def _told_of(lens: Thing, intent: str) -> tuple[object, ...]:
    """What tells one lens from another: 'S2 75 ... S2 mount 75 mm' is one; two names set side by side are two."""
    if lens.kind != "mount" or lens.count:
        return (lens,)
    name, traits = lens.words.casefold() if intent in SIDE_BY_SIDE else "", frozenset(lens.traits) - {BY_REGISTER}
    return (name, lens.ids, lens.focal_length_mm, lens.f_number, lens.lens_kind, lens.format, traits)


def _once_each(question: Question) -> Question:
    """'EXA body, flush, f on exakta': a body told twice by its mount alone is one."""
    seen: dict[tuple[str, ...], Thing] = {}
    for body in question.bodies:
        key = body.ids if body.kind == "mount" and body.ids and not body.format else (body.words, str(body.column))
        seen.setdefault(key, body)
    return question if len(seen) == len(question.bodies) else question.with_(bodies=tuple(seen.values()))


def _without_its_own_body(question: Question) -> Question:
    """'why won't an MFT lens go on my E body, MFT is deeper': its own mount named again is no second body."""
    own = {ids for ids in (lens.ids for lens in question.lenses) if ids}
    others = tuple(body for body in question.bodies if not (body.kind == "mount" and body.ids in own))
    again = question.intent == WHY and 0 < len(others) < len(question.bodies)
    return question.with_(bodies=others) if again else question


def _named_twice(question: Question) -> Question:
    """'lens says X mount, goes on my X digital': of one name said of two bodies the first is that of the lens."""
    lens, bodies = question.lens, question.bodies
    if lens is None or len(question.lenses) != 1 or lens.ids or len(bodies) != 2 or bodies[0].ids != bodies[1].ids:
        return question
    if bodies[0].kind != "mount" or not bodies[0].ids:
        return question
    of_lens = replace(lens, kind="mount", ids=bodies[0].ids, words=bodies[0].words)
    return question.with_(lenses=(of_lens,), bodies=bodies[1:])


def _heads_are_lenses(question: Question, catalogue: Catalogue) -> Question:
    """A mount that only lenses have is never a body's: it tells of the lens named beside it by the mount it goes into.

    'A 200 from a reflex housing, M bayonet, on an M to E ring': one lens, whatever the order of its names.
    """

    def is_head(thing: Thing) -> bool:
        mount = catalogue.mounts.get(thing.id or "") if thing.kind == "mount" else None
        return mount is not None and HEADS in mount.traits

    head = next((one for one in (*question.bodies, *question.lenses) if is_head(one)), None)
    if head is None or question.intent in SIDE_BY_SIDE:
        return question
    mates = {mate for name in head.ids for mate in mates_of(name, catalogue)}
    others = [one for one in question.lenses if one is not head and not (is_head(one) and not one.focal_length_mm)]
    of_it = next((one for one in others if not one.ids or set(one.ids) & {*mates, *head.ids}), None)
    bodies = tuple(one for one in question.bodies if not is_head(one))
    alone = of_it is None or (head in question.lenses and head.focal_length_mm and of_it.focal_length_mm)
    if of_it is None or alone:
        if bodies == question.bodies or others:
            return question
        return question.with_(lenses=(head,), bodies=bodies or _by_ring(question))
    lens = replace(
        of_it, kind="mount", ids=head.ids, said_too=(*of_it.ids, *of_it.said_too),
        focal_length_mm=of_it.focal_length_mm or head.focal_length_mm,
    )  # fmt: skip
    lenses = tuple(lens if one is of_it else one for one in others)
    return question.with_(lenses=lenses, bodies=bodies or _by_ring(question))


def _with_bodies_of_format(question: Question, catalogue: Catalogue) -> Question:
    """'P67 165 to 44x33': a sensor so seldom built that only one or two mounts have it tells the body."""
    if question.intent not in OF_BODIES or not any(lens.ids for lens in question.lenses):
        return question
    told = {
        thing.format or (thing.id if thing.kind == "format" else None) for thing in (*question.bodies, *question.things)
    }
    if any(body.ids for body in question.bodies) or len(told) != 1:
        return question
    mounts = [row.id for row in catalogue.mounts.values() if row.kind == MODERN and row.format in told]
    if not 0 < len(mounts) <= FEW_MOUNTS:
        return question
    return question.with_(bodies=tuple(Thing("mount", (name,), "", format=next(iter(told))) for name in mounts))


def _by_ring(question: Question) -> tuple[Thing, ...]:
    """The body that the last ring named goes on."""
    rears = [thing.rear for thing in question.adapters if thing.rear]
    return (Thing("mount", rears[-1], ""),) if rears else ()


def _by_every_name(thing: Thing, catalogue: Catalogue) -> Thing:
    """'M bayonet, for the reflex housing': of several names of one lens, the mount that all of them allow.

    A head made for a longer housing has the bayonet or the thread of the mount that it is told by as well.
    """
    also = [name for name in thing.said_too if name in catalogue.mounts]
    if thing.kind != "mount" or not also:
        return thing
    both = tuple(name for name in thing.ids if name in also)
    if both:
        return replace(thing, ids=both)
    heads = [
        one
        for name in thing.ids
        for other in also
        if other in mates_of(name, catalogue)
        for one in (name, other)
        if HEADS in catalogue.mounts[one].traits
    ]
    return replace(thing, ids=tuple(dict.fromkeys(heads))) if heads else thing


def _by_ring_named(thing: Thing, question: Question, catalogue: Catalogue) -> Thing:
    """'A reflex housing head on an LTM ring': of what the words may mean, what is held as the ring holds a lens."""
    fronts = {name for piece in question.adapters if piece.rear for name in piece.front if name in catalogue.mounts}
    held = {catalogue.mounts[name].coupling for name in fronts}
    if thing.kind != "mount" or not thing.ambiguous or len(held) != 1:
        return thing
    fitting = tuple(name for name in thing.ids if catalogue.mounts[name].coupling in held)
    return replace(thing, ids=fitting) if fitting else thing


def _by_number(thing: Thing, question: Question, catalogue: Catalogue) -> Thing:
    """'M bayonet (68.8)': a number to the tenth that is the register of a mate, not of the mount named, tells it."""
    if thing.kind != "mount" or thing.id is None or thing.id not in catalogue.mounts:
        return thing
    told = [one for one in numbers(question, *UNCLAIMED) if one != int(one)]
    bodies = {id_ for body in question.bodies for id_ in body.ids[:1]}

    def tells(name: str) -> bool:
        size = catalogue.mounts[name].register_mm
        return is_known(size) and any(abs(size.nominal - one) <= EXACTLY_MM for one in told)

    if not told or any(name in catalogue.mounts and tells(name) for name in bodies):
        return thing
    if tells(thing.id):
        return replace(thing, ids=tuple(name for name in thing.ids if tells(name)))
    alike = dict.fromkeys((*thing.ids, *sorted(mates_of(thing.id, catalogue))))
    fitting = tuple(name for name in alike if tells(name))
    return replace(thing, ids=fitting) if fitting else thing


def _of_its_kind(thing: Thing, catalogue: Catalogue) -> Thing:
    """Of several mounts that the words may mean, those of the kind of lens that was told: an 'enlarger lens, M39'."""
    kinds = {thing.lens_kind, *(trait.removeprefix("from ") for trait in thing.traits if trait.startswith("from "))}
    kinds |= {"slr", "rangefinder"}.intersection(thing.traits)  # cameras that a lens is told by
    if thing.kind != "mount" or kinds == {None}:
        return thing
    if not thing.ambiguous:
        return _by_its_thread(thing, catalogue)
    fitting = tuple(name for name in thing.ids if catalogue.mounts[name].kind in kinds)
    plain = tuple(name for name in fitting if HEADS not in catalogue.mounts[name].traits)
    return replace(thing, ids=plain or fitting) if fitting else thing


def _by_its_thread(thing: Thing, catalogue: Catalogue) -> Thing:
    """'an enlarger lens, M42x1': a mount of another kind says only which thread it has."""
    kind = thing.lens_kind
    mount = catalogue.mounts.get(thing.id or "")
    if mount is None or not mount.thread or mount.kind == kind:
        return thing
    of_kind = tuple(sorted(one for one in mates_of(mount.id, catalogue) if catalogue.mounts[one].kind == kind))
    return replace(thing, ids=of_kind) if of_kind else thing


def _of_its_time(thing: Thing, of_film: bool, catalogue: Catalogue) -> Thing:
    """Of several mounts that the words may mean, not those of digital bodies, where a lens of film days is told of."""
    if thing.kind != "mount" or not thing.ambiguous or not of_film:
        return thing
    older = tuple(name for name in thing.ids if catalogue.mounts[name].kind not in ("mirrorless", "medium-format"))
    return replace(thing, ids=older) if older else thing


def _has_thread(thing: Thing, catalogue: Catalogue) -> bool:
    mount = catalogue.mounts.get(thing.id or "") if thing.kind == "mount" else None
    return mount is not None and mount.thread is not None


def _as_measured(thing: Thing, measured_mm: float | None, catalogue: Catalogue) -> Thing:
    """A lens named by one mount that measures as another of the same thread is of that other: 'C', 12.5 mm, is CS."""
    mount = catalogue.mounts.get(thing.id or "") if thing.kind == "mount" else None
    if measured_mm is None or mount is None or not (mount.thread or thing.ambiguous):
        return thing
    near = catalogue.assumptions["register-by-paper"].value.greatest
    sizes = {name: catalogue.mounts[name].register_mm for name in thing.ids if name in catalogue.mounts}
    kept = tuple(name for name, size in sizes.items() if is_known(size) and abs(size.nominal - measured_mm) <= near)
    if BY_THREAD in thing.traits:
        # of those that the thread allows only what the distance allows too; it may be none of them
        return replace(thing, ids=kept, kind="mount" if kept else "")
    if is_known(mount.register_mm) and abs(mount.register_mm.nominal - measured_mm) <= near:
        # no ruler tells it from the mount that was named
        return replace(thing, ids=kept) if thing.ambiguous and thing.id in kept else thing
    if kept := kept or of_that_name(thing, measured_mm, near, catalogue):
        return replace(thing, ids=kept)  # of one name it is that which has the distance
    alike = [
        (abs(row.register_mm.nominal - measured_mm), row.id)
        for row in catalogue.mounts.values()
        if mount.thread and row.thread == mount.thread and is_known(row.register_mm)
    ]
    off, other = min(alike, default=(near + 1, ""))
    if off <= near:
        return replace(thing, ids=(other,), traits=(*thing.traits, BY_REGISTER))
    # of one name that several mounts have, it is none of those whose register is known
    open_ = tuple(name for name in thing.ids if not is_known(catalogue.mounts[name].register_mm))
    return replace(thing, ids=open_) if open_ and thing.ambiguous and mount.thread else thing
