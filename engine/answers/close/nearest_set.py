"""Which of the tubes at hand come nearest to a magnification that was wanted, and what each of them gives."""

from __future__ import annotations

from itertools import combinations

from engine.answers.close.close_rows import Shown, at_extension
from engine.answers.parts.answer import Line, Told
from engine.answers.parts.wording import small_mm, times, trimmed
from engine.answers.seat.distances import Distances
from grammar.questions import Question
from grammar.things.casting import DRAWN
from grammar.turns.sticking import is_open

MOST_TUBES = 8  # more than these nobody stacks


def nearest_set(lens: Distances, magnification: float, tubes: list[float], shown: Shown) -> Told:
    """The sum of some of them that is nearest to what is wanted, then each alone; nothing where none were told."""
    at_hand = tubes[:MOST_TUBES]
    if not at_hand:
        return Told()
    wanted = magnification * lens.focal.nominal
    sums = {
        sum(row): row
        for size in range(len(at_hand), 0, -1)
        for row in combinations(sorted(at_hand, reverse=True), size)
    }
    best = min(sums, key=lambda length: (abs(length - wanted), len(sums[length])))
    parts = " + ".join(trimmed(one, 2) for one in sums[best])
    text = (
        f"Of what you have, {parts} mm comes nearest to the {small_mm(wanted)} that it wants: "
        f"{times(best / lens.focal.nominal)}."
    )
    told = Told((Line("head", text),))
    for length in dict.fromkeys((best, *at_hand)):
        case = f"{trimmed(length, 2)} mm"
        told += at_extension(lens, length, shown, case, lead=f"{case} of tube")
    return told


def asked_of_tubes(question: Question) -> bool:
    """Whether the size told is what the tubes shall give, and not what the lens has by itself: 'it goes 1:2'."""
    if _was_wanted(question):
        return True
    which = question.places("which-brings")
    if which and all(one.at > which[0].at for one in question.places("own-size")):
        return True  # 'which one gets my 75 to 0.4x'
    wanted = question.mentions("wanted-near", "size-asked") or _is_next_wanted(question)
    return wanted and not question.mentions("own-size")


def _is_next_wanted(question: Question) -> bool:
    """'and with 1:1' after a tube behind that lens, or another size that was wanted: the size that is wanted next."""
    before = question.prior
    tubes = before is not None and any(one.piece in DRAWN and not is_open(one) for one in before.adapters)
    same = before is not None and before.lenses == question.lenses
    said = before.said("magnification") if before is not None else None
    another = said != question.said("magnification") and before is not None and not before.mentions("own-size")
    return question.follows and tubes and same and (said is None or another)


def _was_wanted(question: Question) -> bool:
    """Whether the size was told while the tube for it was still asked for: 'what tube for 1:1', 'I have 12, 20, 36'."""
    before = question.prior
    same = before is not None and before.said("magnification") == question.said("magnification")
    if not same or before is None:
        return False
    drawn = [one for one in before.adapters if one.piece in DRAWN]
    hoped = before.mentions("wanted-near", "size-asked") and not before.mentions("own-size")
    # 'I want 1:1 with my 90', and then 'I only have 65 mm of tube'
    return any(map(is_open, drawn)) or (not drawn and hoped)
