"""What a lens lacks to the magnification wanted, beyond the one that it has by itself."""

from __future__ import annotations

from engine.answers.close.close_rows import Shown
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import number, numbers
from engine.answers.parts.wording import listed, small_mm, times, trimmed
from engine.answers.seat.distances import Distances
from engine.answers.seat.spacing import usual_focals
from engine.base.interval import UNKNOWN, Interval, is_known
from engine.facts.catalogue import Catalogue
from grammar.questions import Question

SAME_MM = 0.5  # so near the length wanted none is short


def own_and_wanted(question: Question) -> tuple[float, float] | None:
    """Of two magnifications told the smaller is the lens's own, the larger that which is wanted."""
    told = numbers(question, "magnification")
    return (min(told), max(told)) if len(told) == 2 and told[0] != told[1] else None


def beyond_nearest_mark(lens: Distances, wanted: float, question: Question, shown: Shown) -> Told:
    """What tube brings the magnification wanted from the nearest mark told: x = f * wanted - x of that mark."""
    near = number(question, "close_focus")
    own = lens.extension_at(near) if near is not None and own_and_wanted(question) is None else UNKNOWN
    if near is None or not is_known(own) or not is_known(lens.focal) or own.greatest >= wanted * lens.focal.nominal:
        return Told()
    left, size = wanted * lens.focal - own, own.nominal / lens.focal.nominal
    at, focal = f"its {shown.distance(near)} mark", trimmed(lens.focal.nominal, 1)
    text = (
        f"{small_mm(left.nominal)} of tube with its ring at {at}, where a {focal} mm lens draws {times(size)} by"
        f" itself, brings {times(wanted)}; {small_mm(wanted * lens.focal.nominal)} with its ring at"
        " infinity."
    )
    return Told((Line("head", text),), (Quantity("extension_mm", left, f"{times(wanted)}, at {at}"),))


def sizes_each(question: Question) -> tuple[float, ...]:
    """Every magnification told, where each is wanted: 'what draw for 1:1 and for 2:1'; none where one is its own."""
    told = numbers(question, "magnification")
    each = len(told) > 1 and question.mentions("sizes-each") and not question.mentions("own-size")
    return told if each else ()


def missing_extension(focal: float | None, question: Question, facts: Catalogue, at_hand: float = 0.0) -> Told:
    """x = f * (wanted - own), and by how much what is at hand is short of it."""
    sizes = own_and_wanted(question)
    if sizes is None:
        return Told()
    own, wanted = sizes
    share = wanted - own
    if focal is None:
        shown = listed([f"{small_mm(one * share)} for {trimmed(one, 1)} mm" for one in usual_focals(facts)])
        text = (
            f"Beyond its own {times(own)} it takes {trimmed(share, 3)} of the focal length to {times(wanted)}: {shown}."
        )
        return Told((Line("head", text),))
    x = Interval.exact(focal * share)
    text = (
        f"{small_mm(x.nominal)} of tube more takes {trimmed(focal, 1)} mm from its own {times(own)} to"
        f" {times(wanted)}, its focus ring at the near end."
    )
    if at_hand:
        short = x.nominal - at_hand
        enough = f"enough: {times(own + at_hand / focal)}"
        missed = f"{small_mm(short)} short: {times(own + at_hand / focal)}"
        text += f" {small_mm(at_hand)} of it is {missed if short > SAME_MM else enough}."
    return Told((Line("head", text),), (Quantity("extension_mm", x, f"from {times(own)} to {times(wanted)}"),))
