"""The ring that would be right between a lens and a body: how thick, and whether one can be made."""

from __future__ import annotations

from engine.answers.parts.answer import RingToMake
from engine.answers.parts.resolve import AS_TOLD
from engine.answers.parts.wording import small_mm
from engine.base.interval import Measure, is_known
from engine.chains.lens_and_body import register_of
from engine.chains.setup import Facts, Setup
from engine.facts.records import Adapter, Mount


def ring_to_make(setup: Setup, facts: Facts) -> RingToMake:
    """Thickness = lens register - body register, in mm, and whether it can be a plain ring, a recessed one, or none.

    Judged by the trade's working limits for walls and thin rings (kb/judging/making.yaml) on the two openings.
    """
    lens = register_of(setup.lens_mount.id, setup, facts)
    body = register_of(setup.body_mount.id, setup, facts, rear=True)
    thickness = lens - body
    if not is_known(thickness):
        return RingToMake(None, "no", "the register of the lens or of the body is not established: measure it first")
    if "needs-tube-lens" in setup.lens_mount.traits:
        return RingToMake(thickness, "no", "no ring helps: the objective forms no image without a tube lens")
    possible, why = _possible(thickness.nominal, setup, facts)
    made = _made_so(thickness.nominal, setup, facts) if possible == "no" else None
    if made is not None:
        note = f" {made.note}" if made.note else ""
        return RingToMake(thickness, "plain", f"{why}; yet it is made and sold as {made.name}.{note}".rstrip("."))
    return RingToMake(thickness, possible, why)


def _made_so(thickness_mm: float, setup: Setup, facts: Facts) -> Adapter | None:
    """A known bare ring between these mounts of just that thickness: what is sold can be made, whatever the limits.

    One that the question only speaks of is not known to be.
    """
    near = facts.assumptions["making-spread-derived"].value.greatest
    for one in facts.adapters.values():
        here = one.front == setup.lens_mount.id and one.rear == setup.body_mount.id and one.kind == "plain"
        if not here or one.basis == AS_TOLD:
            continue
        length = one.thickness_mm.hull()
        if is_known(length) and abs(length.nominal - thickness_mm) < near:
            return one
    return None


def _limit(facts: Facts, name: str) -> float:
    return facts.assumptions[name].value.nominal


def _possible(thickness_mm: float, setup: Setup, facts: Facts) -> tuple[str, str]:
    lens, body = setup.lens_mount, setup.body_mount
    seats = lens.id == body.id or body.id in lens.shares_bayonet
    if seats and abs(thickness_mm) < _limit(facts, "bayonet-recess"):
        return "plain", "the lens seats on the body as it is; no ring is needed"
    inside = _seats_inside(lens, body, facts)
    tell = f"the lens register is {small_mm(abs(thickness_mm))} {'longer' if thickness_mm >= 0 else 'shorter'}"
    if thickness_mm >= 0:
        least = _thinnest(lens, body, inside, facts)
        if thickness_mm >= least:
            return "plain", f"{tell}: room for a ring"
        if inside:
            return "recessed", f"{tell}: too little for a ring between the flanges, but the seat fits inside the throat"
        return "no", f"{tell}: too little for a ring, and the lens seat is as wide as the throat"
    depth = -thickness_mm
    if lens.coupling != "screw" and inside and depth <= _limit(facts, "bayonet-recess"):
        return "recessed", f"{tell}: the small bayonet can sit inside the throat"
    cup = _cup_enters(setup, facts)
    if depth > _limit(facts, "deepest-cup") and cup is not False:
        return "no", f"{tell}: a cup that deep would meet what lies behind the flange"
    if cup:
        return "recessed", f"{tell}: the seat must lie in a cup that deep, and the barrel must enter it"
    if cup is None and inside and _may_enter(lens, body, facts):
        room = f"a throat of {small_mm(body.throat_mm.nominal)}" if is_known(body.throat_mm) else "the throat"
        return "recessed", (
            f"{tell}: the seat must lie in a cup that deep; how wide the barrel is is not told, and with the wall of"
            f" the cup it must enter {room}: measure it"
        )
    if cup is None and not is_known(body.throat_mm):
        return "no", f"{tell}: the seat would have to lie inside the body, whose throat is not established"
    return "no", f"{tell}: the seat would have to lie inside the body, and the barrel is too wide for its throat"


def _seats_inside(lens: Mount, body: Mount, facts: Facts) -> bool:
    """Whether the lens's thread or bayonet, with a wall around it, fits inside the body's throat."""
    seat, throat = lens.throat_mm, body.throat_mm
    if not (is_known(seat) and is_known(throat)):
        return False
    wall = _limit(facts, "ring-wall-thread" if lens.coupling in ("screw", "push-in") else "ring-wall-bayonet")
    return seat.nominal + 2 * wall <= throat.nominal


def _thinnest(lens: Mount, body: Mount, inside: bool, facts: Facts) -> float:
    if inside:
        return 0.0 if lens.coupling == "screw" else _limit(facts, "thinnest-ring-inside-bayonet")
    seat, throat = lens.throat_mm, body.throat_mm
    wide = not (is_known(seat) and is_known(throat)) or seat.nominal > throat.nominal
    return _limit(facts, "thinnest-ring-narrow-throat" if wide else "thinnest-ring")


def _may_enter(lens: Mount, body: Mount, facts: Facts) -> bool:
    """Whether the least barrel that a screw seat usually has would enter the throat, the wall of a cup around it."""
    if lens.coupling != "screw" or not (is_known(lens.throat_mm) and is_known(body.throat_mm)):
        return False
    least = lens.throat_mm.nominal * facts.assumptions["barrel-over-seat"].value.least
    return least + 2 * _limit(facts, "cup-wall") <= body.throat_mm.nominal


def _cup_enters(setup: Setup, facts: Facts) -> bool | None:
    """Whether a cup around the barrel just ahead of the seat can enter the throat of the body; None where not known."""
    lens, throat = setup.lens_mount, setup.body_mount.throat_mm
    collar: Measure = setup.lens.collar_mm if is_known(setup.lens.collar_mm) else lens.collar_mm
    if not (is_known(throat) and is_known(collar)):
        return None
    width = collar.nominal if is_known(setup.lens.collar_mm) else collar.least
    return width + 2 * _limit(facts, "cup-wall") <= throat.nominal
