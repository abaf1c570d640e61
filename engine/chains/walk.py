"""A chain and a setup turned into the quantities that the physics starts from, each with its source."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

from engine.base.compact import compact
from engine.base.interval import UNKNOWN, Interval, Measure, is_known
from engine.base.span import Span
from engine.chains.lens_and_body import ZERO, based, likely_register_of_lens, register_of, setup_givens
from engine.chains.ring_map import Joint
from engine.chains.setup import Facts, Setup
from engine.facts.kinds import DRAWN_OUT
from engine.facts.records import Adapter
from engine.physics.seat import seat_error_mm
from engine.physics.trace import Given

SPREADS: Final = {
    "derived": "making-spread-derived",
    "nominal": "making-spread-nominal",
    "register-difference": "making-spread-glass",
}
ENDS: Final = "making-spread-ends"
OWN_BODY: Final = "own-body"  # what works the iris of a lens on a body of its own mount
ADDED_FOCUSING: Final = DRAWN_OUT
# the quantities that change with the chain; all others belong to the lens and the body
CHAIN_NAMES: Final = frozenset(
    {
        "seat_mm", "error_before_glass_mm", "error_behind_glass_mm", "glass_factor", "glass_focal_mm", "image_shift_mm",
        "adapter_iris", "pieces", "glass", "electronics", "adapter_kinds", "thread_steps", "narrowest_mm",
        "cup_bore_mm", "cup_depth_mm", "price_usd",
    }
)  # fmt: skip

Link = Adapter | Joint


@compact
class Chain:
    """Adapters and joints in order from the lens to the body. `variants`: adapter id -> its twins."""

    links: tuple[Link, ...]
    variants: Mapping[str, tuple[str, ...]]
    tubes: tuple[tuple[str, ...], ...] = ()  # other sets of tubes that were folded into this chain

    @property
    def adapters(self) -> tuple[Adapter, ...]:
        return tuple(link for link in self.links if isinstance(link, Adapter))

    @property
    def joints(self) -> tuple[Joint, ...]:
        return tuple(link for link in self.links if isinstance(link, Joint))

    @property
    def ids(self) -> tuple[str, ...]:
        return tuple(link.id if isinstance(link, Adapter) else f"{link.front}>{link.rear}" for link in self.links)


@compact
class Seat:
    """One link of a chain: how thick it is here, and what it adds to the register error."""

    link: Link
    thickness_mm: Span
    error_mm: Measure
    rests_on_flange: bool = False  # a collar too wide for the cup keeps the lens on the flange


def spread_of(adapter: Adapter, facts: Facts) -> Interval:
    """How far a piece as sold may be off, in mm: exact 0 for one that was measured."""
    if adapter.seat_basis == "measured":
        return ZERO
    name = ENDS if adapter.kind in ADDED_FOCUSING else SPREADS.get(adapter.seat_basis, "making-spread-nominal")
    return facts.assumptions[name].value


def _spread_on(length: Measure, spread: Interval) -> Measure:
    return length.widened(-spread.least, spread.greatest) if is_known(length) else UNKNOWN


def rests_on_flange(adapter: Adapter, collar: Measure, facts: Facts) -> bool:
    """Whether a lens with this collar is too wide for the adapter's cup and stays on its face.

    A barrel that was not measured is not taken to enter a cup deeper than those that bodies usually have room for.
    """
    if adapter.cup is None:
        return False
    bore, depth = adapter.cup.bore_mm, adapter.cup.depth_mm
    if not is_known(collar):
        deepest = facts.assumptions["deepest-cup"].value.nominal
        return adapter.seat_basis != "measured" and is_known(depth) and depth.nominal > deepest
    bore = bore if is_known(bore) else widest_bore_mm(adapter, facts)
    return is_known(bore) and collar.nominal > bore.nominal


def widest_bore_mm(adapter: Adapter, facts: Facts) -> Measure:
    """The widest that a cup can be bored within the throat that it sits in, whatever it is; in mm."""
    throat = facts.mounts[adapter.rear].throat_mm
    return throat - facts.assumptions["cup-wall"].value if is_known(throat) else UNKNOWN


def seat_of(link: Link, setup: Setup, facts: Facts, with_spread: bool) -> Seat:
    """The link's thickness and seat error in mm, with the spread of its making or without."""
    # a piece is judged by the registers of its mounts; what this very lens or body is off by is not its share
    front, rear = facts.mounts[link.front].register_mm, facts.mounts[link.rear].register_mm
    if isinstance(link, Joint):
        thickness = Span.fixed(ZERO)
        rests = False
    else:
        thickness = link.thickness_mm
        rests = rests_on_flange(link, setup.lens.collar_mm, facts)
        if rests:
            # the barrel does not enter the cup: the lens stands on the face of the ring
            thickness = Span.fixed(ZERO)
        elif with_spread:
            spread = spread_of(link, facts)
            thickness = Span(_spread_on(thickness.shortest, spread), _spread_on(thickness.longest, spread))
    return Seat(link, thickness, seat_error_mm(thickness.hull(), front, rear), rests)


def seats(chain: Chain, setup: Setup, facts: Facts, with_spread: bool) -> tuple[Seat, ...]:
    """Each link's thickness and seat error in mm, with the spread of its making or without."""
    return tuple(seat_of(link, setup, facts, with_spread) for link in chain.links)


def _total(rows: Sequence[Seat]) -> Span:
    total = Span.fixed(ZERO)
    for row in rows:
        total = total + row.thickness_mm
    return total


def _errors(rows: Sequence[Seat], chain: Chain, setup: Setup, facts: Facts) -> tuple[Span, Span]:
    """The register error ahead of the first glass and from it on: the whole and exact 0 where there is no glass."""
    lens = likely_register_of_lens(setup, facts)
    body = register_of(setup.body_mount.id, setup, facts, rear=True)
    at = next((n for n, link in enumerate(chain.links) if isinstance(link, Adapter) and link.has_glass), None)
    if at is None:
        total = _total(rows)
        return Span(total.shortest + (body - lens), total.longest + (body - lens)), Span.fixed(ZERO)
    middle = facts.mounts[chain.links[at].front].register_mm  # the glass is made for its mount, not for this lens
    before, behind = _total(rows[:at]), _total(rows[at:])
    off = body - middle
    if isinstance(first := chain.links[at], Adapter) and first.seat_basis == "measured":
        # its seat tells how far the glass moves the image; that it holds infinity is what such rings are made for
        off = off + _image_shift(chain, facts)
    return (
        Span(before.shortest + (middle - lens), before.longest + (middle - lens)),
        Span(behind.shortest + off, behind.longest + off),
    )


def seat_givens(rows: Sequence[Seat], chain: Chain, setup: Setup, facts: Facts) -> dict[str, Given]:
    """What the seats of a chain bring: the only quantities that differ with the spread of its pieces' making."""
    before, behind = _errors(rows, chain, setup, facts)
    return {
        "seat_mm": Given(_total(rows), "the seats of all pieces together"),
        "error_before_glass_mm": Given(before, "register error ahead of any glass"),
        "error_behind_glass_mm": Given(behind, "register error behind the glass"),
    }


def piece_givens(chain: Chain, setup: Setup, facts: Facts) -> dict[str, Given]:
    """What the pieces of a chain bring beside their seats."""
    adapters = chain.adapters
    factor = 1.0
    for adapter in adapters:
        factor *= adapter.factor or 1.0
    given = {
        "glass_factor": Given(Interval.exact(factor), "factor of the glass in the chain"),
        "glass_focal_mm": Given(_glass_focal(chain), "focal length of the glass in the chain"),
        "image_shift_mm": Given(_image_shift(chain, facts), "how far the glass in the chain moves the image"),
        "adapter_iris": Given(adapter_iris(chain, setup), "what the adapters, or its own body, offer for the iris"),
        "pieces": Given(Interval.exact(len(adapters)), "adapters in the chain"),
        "glass": Given(any(adapter.has_glass for adapter in adapters), "whether there is glass in the chain"),
        "electronics": Given(any(adapter.electronics for adapter in adapters), "whether a ring has contacts"),
        "adapter_kinds": Given(tuple(adapter.kind for adapter in adapters), "kinds of adapters"),
        "thread_steps": Given(tuple(joint.outcome for joint in chain.joints), "threads that were never meant to meet"),
        "narrowest_mm": Given(_narrowest(chain), "the narrowest opening on the way"),
        "price_usd": Given(_price(chain), "what the pieces that are not owned cost"),
    }
    return given | _cup(chain, setup, facts)


def givens(chain: Chain, setup: Setup, facts: Facts, with_spread: bool = True) -> dict[str, Given]:
    """Everything the physics starts from for this chain on this setup; lengths in mm."""
    rows = seats(chain, setup, facts, with_spread)
    return setup_givens(setup, facts) | seat_givens(rows, chain, setup, facts) | piece_givens(chain, setup, facts)


def _glass_focal(chain: Chain) -> Measure:
    glass = [adapter for adapter in chain.adapters if adapter.has_glass]
    return glass[0].converter_focal_mm if len(glass) == 1 else UNKNOWN


def _image_shift(chain: Chain, facts: Facts) -> Measure:
    """How much nearer the lens the glass brings the image, read off the seat of one glass piece that was measured."""
    glass = [adapter for adapter in chain.adapters if adapter.has_glass]
    if not glass:
        return ZERO
    if len(glass) > 1 or glass[0].seat_basis != "measured":
        return UNKNOWN
    difference = facts.mounts[glass[0].front].register_mm - facts.mounts[glass[0].rear].register_mm
    return difference - glass[0].thickness_mm.hull()


def _narrowest(chain: Chain) -> Measure:
    known = [a.clear_diameter_mm for a in chain.adapters if is_known(a.clear_diameter_mm)]
    return min(known, key=lambda bore: bore.nominal) if known else UNKNOWN


def _price(chain: Chain) -> Measure:
    """The band of what must be bought, in dollars; exact 0 where nothing must."""
    bought = [adapter.price_usd for adapter in chain.adapters if not adapter.owned]
    bands = [band for band in bought if band is not None]
    if len(bands) < len(bought):
        return UNKNOWN
    return Interval.between(sum(band[0] for band in bands), sum(band[1] for band in bands))


def adapter_iris(chain: Chain, setup: Setup) -> tuple[str, ...]:
    """What works the iris on this chain; with nothing between, a body of the lens's own mount does."""
    if not chain.adapters and setup.lens_mount.id == setup.body_mount.id:
        return (OWN_BODY,)
    return tuple(adapter.iris for adapter in chain.adapters)


def _cup(chain: Chain, setup: Setup, facts: Facts) -> dict[str, Given]:
    """The first cup of the chain; None where the chain has none."""
    cupped = next((adapter for adapter in chain.adapters if adapter.cup is not None), None)
    if cupped is None or cupped.cup is None:
        return {
            "cup_bore_mm": Given(None, "no cup in the chain"),
            "cup_depth_mm": Given(None, "no cup in the chain"),
        }
    bore = based(cupped.basis, f"bore of the cup of {cupped.name}", cupped.cup.bore_mm)
    if not is_known(cupped.cup.bore_mm) and rests_on_flange(cupped, setup.lens.collar_mm, facts):
        row, widest = facts.assumptions["cup-wall"], widest_bore_mm(cupped, facts)
        if is_known(widest):  # a cup too deep for an unmeasured barrel holds it off as well
            bore = Given(
                widest, "the widest cup that the throat leaves room for", row.basis.sources, row.basis.confidence, True
            )
    return {
        "cup_bore_mm": bore,
        "cup_depth_mm": based(cupped.basis, f"depth of the cup of {cupped.name}", cupped.cup.depth_mm),
    }
