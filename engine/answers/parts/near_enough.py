"""How near a length must come to another to be right, the same or nearly it, by what the facts take for usual; mm."""

from __future__ import annotations

from engine.chains.setup import Facts


def right_seat_mm(facts: Facts) -> float:
    """How far a seat may be off and be told as right."""
    return facts.assumptions["seat-is-right"].value.nominal


def one_register_mm(facts: Facts) -> float:
    """How far apart two registers may be and be told as one."""
    return facts.assumptions["registers-as-one"].value.nominal


def told_register_mm(facts: Facts) -> float:
    """How far a register or length that is told may be from the one of the facts that is meant."""
    return facts.assumptions["registers-are-told-to"].value.nominal


def wrong_seat_mm(facts: Facts) -> float:
    """How far a ring or seat is off at most; what is more is another ring."""
    return facts.assumptions["largest-seat-error"].value.greatest


def lens_off_mm(facts: Facts) -> float:
    """How far a lens is off the register of its mount at most; what is more is another mount's."""
    return facts.assumptions["lens-off-its-register"].value.nominal


def sold_ring_mm(facts: Facts) -> float:
    """How far a ring or cup that is sold for two mounts may be off what their registers differ by."""
    return facts.assumptions["sold-ring-off"].value.nominal


def ring_or_tube_mm(facts: Facts) -> float:
    """How far a ring may be off what the registers differ by before it is rather a tube, or another ring."""
    return facts.assumptions["ring-or-tube"].value.nominal


def thread_width_mm(facts: Facts) -> float:
    """How far a width that is told may be from that of a thread which is as wide."""
    return facts.assumptions["threads-of-one-width"].value.nominal


def gauged_mm(facts: Facts) -> float:
    """How far a depth gauge may read off what lies between flange and image, metal to metal."""
    return facts.assumptions["depth-gauge-reads-to"].value.nominal


def ring_made_mm(right_mm: float, facts: Facts) -> float:
    """How far a ring that is to be so long may be off and still be meant for the pair."""
    off, share = (facts.assumptions[name].value.nominal for name in ("ring-made-off", "ring-made-off-share"))
    return max(off, share * abs(right_mm))


def same_light_stops(facts: Facts) -> float:
    """How many stops light may differ by and be told as the same."""
    return facts.assumptions["light-as-one"].value.nominal
