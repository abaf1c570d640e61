"""What the numbers of a chain alone tell of how near it comes to its right seat, in whole micrometres."""

from __future__ import annotations

from engine.base.compact import compact
from engine.base.interval import is_known
from engine.chains.ring_map import Ring
from engine.chains.search import Found
from engine.chains.setup import Facts, Setup
from engine.chains.walk import rests_on_flange


@compact
class Focus:
    """What the rank by numbers needs, in whole micrometres: the two registers, the allowance and the lens's reach.

    `None` where unknown: then every chain may still be the best.
    """

    difference_um: int | None  # lens register - body register
    allowance_um: int | None
    reach_um: int | None  # how far the lens's own focusing can make up for sitting too close
    certain_mounts: bool
    lens_off_um: int = 0  # register of the lens mount less that of this very lens
    body_off_um: int = 0  # register of this very body less that of its mount
    flat: frozenset[str] = frozenset()  # adapters whose cup this lens does not enter: there it stands at their face


def focus_of(
    setup: Setup,
    lens_register: object,
    body_register: object,
    allowance: object,
    reach: object,
    facts: Facts | None = None,
) -> Focus:
    """Micrometres of the nominal values; None for what is not known."""

    def um(value: object) -> int | None:
        return round(value.nominal * 1000) if is_known(value) else None

    lens, body = um(lens_register), um(body_register)
    return Focus(
        None if lens is None or body is None else lens - body,
        um(allowance),
        um(reach),
        setup.lens_mount.basis.is_strong and setup.body_mount.basis.is_strong,
        (um(setup.lens_mount.register_mm) or lens or 0) - (lens or 0),
        (body or 0) - (um(setup.body_mount.register_mm) or 0),
        frozenset(one.id for one in facts.adapters.values() if rests_on_flange(one, setup.lens.collar_mm, facts))
        if facts is not None
        else frozenset(),
    )


def nearness_um(least_um: int, greatest_um: int, allowance_um: int) -> int:
    """How far a register error that can be set to `least_um`..`greatest_um` stays from right, beyond the allowance."""
    return max(0, least_um - allowance_um, -greatest_um - allowance_um)


def extension_um(found: Found, focus: Focus) -> tuple[int, int, float] | None:
    """The extension's shortest and longest in whole micrometres, and the factor of the glass; None where not known.

    What stands behind glass of factor k counts by 1/k^2 (source: focus model, converter behind the lens).
    """
    if focus.difference_um is None or not found.known:
        return None
    if found.glass:
        return _behind_glass_um(found, focus)
    least, greatest = found.least_um - focus.difference_um, found.greatest_um - focus.difference_um
    for step in found.steps if focus.flat else ():
        if isinstance(step, Ring) and step.id in focus.flat:
            least, greatest = least - step.least_um, greatest - step.greatest_um
    return least, greatest, 1.0


def _behind_glass_um(found: Found, focus: Focus) -> tuple[int, int, float] | None:
    least = greatest = float(focus.lens_off_um)
    factor, share = 1.0, 1.0
    k = 1.0
    for step in found.steps:
        k *= step.factor if isinstance(step, Ring) else 1.0
    for step in found.steps:
        if step.off_um is None:
            return None
        if isinstance(step, Ring):
            if step.glass:
                factor, share = k, 1 / (k * k)
            if step.id not in focus.flat:
                least += share * step.least_um
                greatest += share * step.greatest_um
        least += share * step.off_um
        greatest += share * step.off_um
    off = share * focus.body_off_um
    return round(least + off), round(greatest + off), factor
