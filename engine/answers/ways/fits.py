"""What fits a body, and where a lens fits: each mount with its best way and its ring, the usual ones first."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from engine.answers.found.lookalike import alike_lines, look_alike
from engine.answers.found.mounts_by import mounts_by
from engine.answers.parts.answer import ANSWERED, NO, Answer, Line, Quantity, Told
from engine.answers.parts.asking_back import DETAILS, ask_for
from engine.answers.parts.knowledge import Knowledge, choose
from engine.answers.parts.resolve import LensSide, Missing, body_side, lens_side, setup_of
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import for_infinity, listed
from engine.answers.picture.fits_lit import lit_there
from engine.answers.seat.making import ring_to_make
from engine.answers.seat.seen import is_coupled_as_asked
from engine.answers.seat.telling import CERTAINTY_WORDS, VERDICT_WORDS, chain_title, unknown_line
from engine.answers.ways.elsewhere_asked import elsewhere_asked, is_left_out
from engine.answers.ways.fits_all import Home, Taken, homes_told
from engine.answers.ways.fits_priced import first_by, order_told, with_price
from engine.answers.ways.kinds_asked import RINGED, is_of, kinds_asked, lens_for_kind, of_format
from engine.answers.ways.meanings import one_of_name
from engine.answers.ways.measured_room import room_on_bodies
from engine.answers.ways.pairs import of_known, sides_of
from engine.answers.ways.refused_mounts import NOT_FITTING, not_fitting, refused, usual_by_rings
from engine.base.compact import compact, replace
from engine.base.interval import Interval, is_known
from engine.chains.setup import usual_circle
from engine.chains.walk import ADDED_FOCUSING
from engine.facts.kinds import VERDICTS
from engine.facts.records import Mount
from engine.judging.ranking import Listed
from grammar.kinds import LIST_FITS
from grammar.questions import Limits, Question, Thing

WHAT = "What fits what? Name a body (E-mount) or a lens mount (C-mount)."
UNNAMED = "Where nobody knows its name, tell of a screw the width across and the pitch; of a bayonet:"
FITTING_PIECES = 2  # what fits a body is told for one ring, or two
MOST_LISTED = 24
# parts that are no camera lens: told only where they are asked for
ASIDE = frozenset({"filter", "board", "bellows", "microscope", "projector", "enlarger"})
BODIES_NOW = frozenset({"mirrorless"})  # for these a ring can be made where none is sold
WELL_SERVED = 15  # a body for which so many are sold needs no telling what could be made
UNUSUAL = frozenset({"lens-side-only"})
OFTEN_RINGED = 5  # so many rings are sold for T2 and its like, which no body has either


@compact
class Fit:
    """One mount with the best chain to or from it, and the ring that holds infinity; no chain: nobody sells one."""

    mount: Mount
    best: Listed | None
    ring: Interval | None
    possible: str


def list_fits(question: Question, knowledge: Knowledge) -> Answer:
    """Which lens mounts a body takes, or which bodies a lens fits, best first, with the ring for each."""
    measured = room_on_bodies(question, knowledge)
    if measured is not None:
        return measured
    by_size = mounts_by(question, knowledge)
    if by_size is not None and not (by_size.status == NO and mentions(question, NOT_FITTING)):
        return by_size
    question = lens_for_kind(elsewhere_asked(question), knowledge.catalogue)
    lens, body = _named(question.lenses), _named(question.bodies)
    if mentions(question, "same-coupling") and (lens is None) != (body is None):
        return replace(look_alike(question, knowledge), intent=LIST_FITS)
    if lens is None and body is None:
        return ask_for(question, (Missing("lens", f"{WHAT} {UNNAMED} {DETAILS}"),))
    if lens is not None and body is not None and question.follows and len(question.lenses) == len(question.bodies) == 1:
        fits = _fits_of(lens, None, kinds_asked(question, True) or BODIES_NOW, question, knowledge)
        here = _mount_of(body, knowledge)  # asked of one pair before: where else the lens would do
        return _told(question, [fit for fit in fits if fit.mount.id != here], lens, None, knowledge)
    hub = _hub_of(question, lens, body)
    if hub is not None:
        told = _told(question, _fits_of(None, hub, frozenset(), question, knowledge), None, hub, knowledge)
        return replace(told, lines=(Line("head", "What goes in front of that ring:"), *told.lines))
    if lens is not None and body is not None:
        sides = sides_of(question, knowledge.catalogue)
        missing = tuple(side for side in (*sides.lenses, *sides.bodies) if isinstance(side, Missing))
        return of_known(sides, knowledge, "list-fits") or ask_for(question, missing)
    kinds = kinds_asked(question, lens is not None)
    several = [thing for thing in question.lenses if thing.ids]
    if len({thing.ids[0] for thing in several}) > 1:
        return _of_several(several, kinds, question, knowledge)
    told = _told(question, _fits_of(lens, body, kinds, question, knowledge), lens, body, knowledge)
    return replace(told, lines=(*told.lines, *one_of_name(lens, question, knowledge.catalogue)))


def _hub_of(question: Question, lens: Thing | None, body: Thing | None) -> Thing | None:
    """The front of the one ring named on the body, where the lens is known by it alone: what else goes on it?"""
    rings = [ring for ring in question.adapters if ring.front]
    if lens is None or body is None or len(rings) != 1 or lens.focal_length_mm:
        return None
    if len(question.lenses) != 1 or (len(question.bodies) != 1 and not question.follows):
        return None  # 'T2 scope: ring lengths for EF, F and K bodies'
    same = set(lens.ids) & set(rings[0].front) and (not rings[0].rear or set(body.ids) & set(rings[0].rear))
    return Thing("mount", rings[0].front, rings[0].words) if same else None


def _fits_of(
    lens: Thing | None, body: Thing | None, kinds: frozenset[str], question: Question, knowledge: Knowledge
) -> list[Fit]:
    fits = []
    for name in of_format(_partners(lens, body, kinds, knowledge), lens, question, knowledge.catalogue):
        partner = Thing("mount", (name,), name)
        wanted = lens is not None or is_coupled_as_asked(knowledge.catalogue.mounts[name], question)
        fit = _fit(lens or partner, body or partner, lens is not None, question, knowledge) if wanted else None
        if fit is not None and not is_left_out(name, question):
            fits.append(fit)
    if lens is None and body is not None and not kinds and len(fits) < WELL_SERVED:
        fits += _rings_to_make(body, {fit.mount.id for fit in fits}, question, knowledge)
    return fits


def _rings_to_make(body: Thing, told: set[str], question: Question, knowledge: Knowledge) -> list[Fit]:
    """Where next to nothing is sold for a body: the mounts of old stills lenses that a plain ring could be made for."""
    fits = []
    for name, mount in knowledge.catalogue.mounts.items():
        wanted = is_coupled_as_asked(mount, question)
        unusual = {*mount.traits} & UNUSUAL and usual_by_rings(name, knowledge) < OFTEN_RINGED
        if wanted and mount.kind in RINGED and name not in told and not unusual:
            fit = _fit(Thing("mount", (name,), name), body, False, question, knowledge)
            if fit is not None and fit.best is None:
                fits.append(fit)
    return fits


def _of_several(
    lenses: Sequence[Thing], kinds: frozenset[str], question: Question, knowledge: Knowledge
) -> Answer:  # fmt: skip
    """Which mounts take all of the lenses, or most of them, at infinity."""
    taken: dict[str, list[Taken]] = {}
    for lens in lenses:
        side = lens_side(lens, knowledge.catalogue)
        called = side.mount.designation if isinstance(side, LensSide) else lens.words
        for fit in _fits_of(lens, None, kinds or BODIES_NOW, question, knowledge):
            if _is_answer(fit, True) and _reaches(fit):
                taken.setdefault(fit.mount.id, []).append(Taken(called, fit.ring))
    mounts = knowledge.catalogue.mounts
    homes = [Home(mounts[name], tuple(rows), usual_by_rings(name, knowledge)) for name, rows in taken.items()]
    return homes_told(question, homes, len(lenses))


def _named(things: tuple[Thing, ...]) -> Thing | None:
    return next((thing for thing in things if thing.ids), None)


def _partners(lens: Thing | None, body: Thing | None, kinds: frozenset[str], knowledge: Knowledge) -> list[str]:
    """The mounts that one or two rings lead to (from a lens) or that lead here (to a body), and those of the kind."""
    rings, joints, mounts = knowledge.rings, knowledge.joints, knowledge.catalogue.mounts
    if lens is not None:
        start = _mount_of(lens, knowledge)
        reached = {start}
        for _ in range(FITTING_PIECES):
            reached |= {rear for front in reached for rear in rings.onward.get(front, {})}
            reached |= {joint.rear for front in reached for joint in joints.onward(front)}
        fitting = {name for name in reached if "lens-side-only" not in mounts[name].traits}
    else:
        goal = _mount_of(body, knowledge)
        fitting = {goal} | set(rings.backward.get(goal, ())) | set(joints.into(goal))
    if kinds or lens is not None:
        fitting |= {name for name, mount in mounts.items() if is_of(mount, kinds or BODIES_NOW)}
    return sorted(
        name
        for name in fitting
        if "thread-only" not in mounts[name].traits
        and (is_of(mounts[name], kinds) if kinds else mounts[name].kind not in ASIDE)
    )


def _mount_of(thing: Thing | None, knowledge: Knowledge) -> str:
    if thing is None or thing.id is None:
        return ""
    if thing.kind == "lens":
        return knowledge.catalogue.lenses[thing.id].mount
    if thing.kind == "body":
        return knowledge.catalogue.bodies[thing.id].mount
    return thing.id


def _fit(lens: Thing, body: Thing, of_lens: bool, question: Question, knowledge: Knowledge) -> Fit | None:
    one, other = lens_side(lens, knowledge.catalogue), body_side(body, knowledge.catalogue)
    if isinstance(one, Missing) or isinstance(other, Missing):
        return None
    setup = setup_of(one, other, knowledge.catalogue, question.f_number)
    pieces = question.limits.pieces if question.limits.pieces is not None else FITTING_PIECES
    pieces = 0 if mentions(question, "held-direct") else pieces  # 'what goes straight on EF'
    drawn = tuple({piece.piece for piece in question.adapters if piece.piece in ADDED_FOCUSING})
    limits: Limits = replace(question.limits, pieces=pieces, without_glass=not question.limits.with_glass)
    limits = replace(limits, using=(*limits.using, *drawn))
    choice = choose(knowledge, setup, limits, 1)
    ring = ring_to_make(setup, knowledge.catalogue)
    best = choice.listed[0] if choice.listed else None
    possible = "no" if drawn else ring.possible  # what is to be drawn out is no plain ring
    return Fit(setup.body_mount if of_lens else setup.lens_mount, best, ring.thickness_mm, possible)


def _told(
    question: Question, fits: Iterable[Fit], lens: Thing | None, body: Thing | None, knowledge: Knowledge
) -> Answer:
    wants = question.topic == "infinity" or question.limits.at_least == "infinity"
    bare, flat = mentions(question, "held-direct"), mentions(question, "without-cup")
    rows = [fit for fit in fits if _is_answer(fit, wants, bare) and not (flat and fit.ring and fit.ring.nominal < 0)]
    what = "with nothing between" if bare else "with infinity" if wants else "with one or two rings"
    what = "without a cup" if flat else what
    own_id = _mount_of(lens or body, knowledge)
    limits = question.limits  # what it was made for is known, and comes last
    rows.sort(key=lambda fit: (fit.mount.id == own_id, first_by(fit.best, fit.ring, question), _order(fit, knowledge)))
    lines = [Line("head", _head(rows, what, order_told(question)))]
    quantities: list[Quantity] = []
    for n, fit in enumerate(rows):
        if fit.ring is not None:
            quantities.append(Quantity("ring_thickness_mm", fit.ring, fit.mount.id))
        lit, numbers = lit_there(question, lens, fit.mount, knowledge)
        quantities += numbers
        if n < MOST_LISTED:
            lines.append(Line("fact", _line(fit, limits, knowledge) + lit, 1))
    if len(rows) > MOST_LISTED:
        rest = listed([fit.mount.designation for fit in rows[MOST_LISTED:]])
        lines.append(Line("note", f"And {len(rows) - MOST_LISTED} more: {rest}."))
    fitting = {fit.mount.id for fit in rows if _reaches(fit)}
    off, told = _off(question, own_id, lens is not None, fitting, knowledge), _of_lens(question, lens, knowledge)
    lines = [*(off.lines if off.quantities else ()), *lines, *(() if off.quantities else off.lines), *told.lines]
    told = off + told
    return Answer(
        question.text, "list-fits", ANSWERED if rows else NO, tuple(lines), question=question,
        quantities=(*quantities, *told.quantities),
    )  # fmt: skip


def _off(question: Question, own_id: str, of_lens: bool, fitting: set[str], knowledge: Knowledge) -> Told:
    """The mounts that do not do; with their registers where it is they that are asked for."""
    own = knowledge.catalogue.mounts.get(own_id)
    kinds = kinds_asked(question, of_lens) or kinds_asked(question.with_(bodies=()), True)
    asked = mentions(question, NOT_FITTING)
    told = not_fitting(own, of_lens, fitting, kinds, knowledge) if asked else Told()
    return told if told.lines else refused(own, of_lens, fitting, knowledge)


def _is_answer(fit: Fit, wants_infinity: bool, bare: bool = False) -> bool:
    if fit.best is None:  # nobody sells one, but a plain ring would do
        return not bare and fit.possible == "plain" and fit.ring is not None
    return fit.best.judged.verdict != "unusable" and (not wants_infinity or fit.best.judged.verdict == "infinity")


def _head(rows: list[Fit], what: str, order: str) -> str:
    """How many fit; that none of them gives infinity, or that nothing is sold for most, is said first."""
    if not rows:
        return f"Nothing in the facts fits {what}."
    if not any(_reaches(fit) for fit in rows):
        return f"None with infinity. {len(rows)} for close-ups only:"
    made = sum(fit.best is None for fit in rows)
    if made > len(rows) - made:
        sold = f"{len(rows) - made} fit as they are or with rings that are sold; for" if made < len(rows) else "For"
        return f"{sold} {made} a plain ring that keeps infinity could be made, which nobody sells:"
    return f"{len(rows)} fit {what}, {order}:"


def _reaches(fit: Fit) -> bool:
    return fit.best is None or fit.best.judged.verdict == "infinity"


def _order(fit: Fit, knowledge: Knowledge) -> tuple[object, ...]:
    """What is sold first, by verdict and pieces; then the mounts that most is sold for."""
    if fit.best is None:
        return (0, 1, 9, -usual_by_rings(fit.mount.id, knowledge), fit.mount.id)
    judged = fit.best.judged
    return (
        VERDICTS.index(judged.verdict), 0, len(judged.chain.adapters), -usual_by_rings(fit.mount.id, knowledge),
        fit.mount.id,
    )  # fmt: skip


def _line(fit: Fit, limits: Limits, knowledge: Knowledge) -> str:
    seat = f"; {for_infinity(fit.ring.nominal)}" if fit.ring is not None else ""
    if fit.best is None:
        return f"{fit.mount.designation}: nothing is sold, a plain ring could be made{seat}"
    judged = fit.best.judged
    told = f"{VERDICT_WORDS[judged.verdict]} ({CERTAINTY_WORDS[judged.certainty]})"
    if judged.certainty == "unknown":
        told = unknown_line(judged)
    return f"{fit.mount.designation}: {told}; {chain_title(judged, knowledge)}{with_price(fit.best, limits)}{seat}"


def _of_lens(question: Question, lens: Thing | None, knowledge: Knowledge) -> Told:
    """What else decides for a lens: its circle, and what passes for its thread."""
    side = lens_side(lens, knowledge.catalogue) if lens is not None else None
    if not isinstance(side, LensSide):
        return Told()
    told = Told()
    circle, _ = usual_circle(knowledge.catalogue, side.lens, side.mount)
    if is_known(circle):
        told += Told((), (Quantity("image_circle_mm", circle, side.mount.id),))
    if side.mount.coupling == "screw" and mentions(question, "screws-in"):
        told += Told(tuple(alike_lines(side.mount, knowledge)))
    return told
