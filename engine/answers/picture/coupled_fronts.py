"""What joins the front threads of two lenses face to face: a coupling ring, with a step ring where none is so wide."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Final

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import money, trimmed
from engine.base.interval import Interval, is_known
from engine.facts.catalogue import Catalogue
from engine.facts.records import Adapter
from grammar.questions import Question

COUPLING: Final = "coupling-ring"
_PAIR: Final = 2
_TURNED: Final = "reversed"
_REVERSED, _FILTER = "reversed-m", "filter-"  # how the ids of the two sides begin
_Path = Callable[[float, float, Catalogue], list[Adapter]]  # the step-up rings from one thread to another, mm


def are_coupled(question: Question) -> bool:
    """Whether one of two lenses is turned round before the other, or they are said to be coupled."""
    focals = [lens for lens in question.lenses if lens.focal_length_mm is not None]
    turned = any(_TURNED in (*lens.traits, lens.lens_kind or "") for lens in question.lenses)
    return (turned and len(focals) == _PAIR) or mentions(question, "coupled-lenses")


def coupling_told(threads: Sequence[float], facts: Catalogue, path: _Path) -> Told:
    """The ring that screws into both fronts, in mm; the wider one's own with a step ring where the facts hold none."""
    if not 1 <= len(threads) <= _PAIR:
        return Told()
    small, wide = min(threads), max(threads)
    couplers = [one for one in facts.adapters.values() if one.kind == COUPLING]
    direct = [one for one in couplers if _ends(one, facts) == [small, wide]]
    own = [one for one in couplers if _ends(one, facts) == [wide, wide]]
    steps = path(small, wide, facts) if own and not direct else []
    rings = direct[:1] or ([*own[:1], *steps] if steps else [])
    if not rings:
        sizes = f"{trimmed(small, 1)} to {trimmed(wide, 1)} mm"
        return Told((Line("head", f"A coupling ring, male to male, {sizes}: the facts hold none of it."),))
    prices = [one.price_usd for one in rings if one.price_usd is not None]
    band = (sum(one[0] for one in prices), sum(one[1] for one in prices))
    first = _ends(rings[0], facts)
    named = f"A coupling ring, male to male, {trimmed(first[0], 1)} to {trimmed(first[1], 1)} mm"
    if steps:
        named += f", with a step ring of {trimmed(small, 1)} to {trimmed(wide, 1)} mm on the smaller front"
    rows = (
        Quantity("adapter_count", Interval.exact(float(len(rings))), COUPLING),
        Quantity("price", Interval.between(*band), COUPLING),
    )
    text = f"{named}, {money(band)}: it screws into both fronts. Hang no weight on a filter thread."
    return Told((Line("head", text),), rows)


def _ends(ring: Adapter, facts: Catalogue) -> list[float]:
    """How wide the fronts are that it screws into, in mm, the narrower first; the one's rim stands reversed."""
    mounts = [facts.mounts.get(f"{_FILTER}{ring.front.removeprefix(_REVERSED)}"), facts.mounts.get(ring.rear)]
    threads = [facts.threads[mount.thread] for mount in mounts if mount is not None and mount.thread is not None]
    return sorted(one.major_mm.nominal for one in threads if is_known(one.major_mm))
