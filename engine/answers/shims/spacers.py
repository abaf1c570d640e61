"""Which of the rings at hand stand together as long as is wanted, and what is left for a shim."""

from __future__ import annotations

from collections.abc import Sequence

from engine.answers.parts.answer import ANSWERED, Answer, Line, ListedChain, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import each_at_hand, focals, mentions, number, numbers, stop
from engine.answers.parts.wording import READS_MM, small_mm, trimmed
from engine.answers.seat.spacing import USUAL_FORMAT, normal_focal
from engine.answers.seat.standin import as_listed, judged_alone
from engine.answers.shims.sheets import of_one_sheet
from engine.answers.shims.turning import as_turns, asks_turns
from engine.base.interval import Interval, is_known
from engine.physics import calibration
from engine.physics.picking import Picked
from grammar.questions import Question

MOST_OF_EACH = 4
LEAST_AT_HAND = 2
WORTH_JUDGING_MM = 1.0  # what is farther off than that is no stack for it
_WITHOUT = "left so, infinity is reached ahead of its mark on the scale"
_TOO_LONG = "left so, infinity is lost by that much"


def by_spacers(question: Question, kind: str, knowledge: Knowledge) -> Answer | None:
    """The answer where a length is to be made up of rings at hand, with what becomes of a lens on the best stack."""
    told = _spacers_told(question)
    if not told.lines:
        return None
    wanted = number(question, "total")
    if wanted is not None and asks_turns(question):
        told = as_turns(question, wanted, knowledge) + told
    off = [row.value.nominal for row in told.quantities if row.name == "register_error_mm"]
    error = min(off, key=abs, default=0.0)
    chains: tuple[ListedChain, ...] = ()
    if READS_MM < abs(error) <= WORTH_JUDGING_MM:
        focal = next(iter(focals(question)), normal_focal(knowledge.catalogue))
        form = knowledge.catalogue.formats[USUAL_FORMAT]
        judged = judged_alone(focal, stop(question), (("extension-tube", error, error),), form, knowledge)
        way = "too far out" if error > 0 else "too close"
        chains = (as_listed(judged, f"a {trimmed(focal, 1)} mm lens on that stack, {small_mm(abs(error))} {way}"),)
    return Answer(
        question.text, kind, ANSWERED, told.lines, question=question, chains=chains or None, quantities=told.quantities
    )  # fmt: skip


def _spacers_told(question: Question) -> Told:
    """The stack that comes nearest to the length told; with several of each ring, where one of each falls short."""
    wanted = number(question, "total")
    sizes = [thing.thickness_mm[0] for thing in question.adapters for _ in range(thing.count or 1)
             if thing.thickness_mm is not None and thing.thickness_mm[0] == thing.thickness_mm[1]]  # fmt: skip
    sizes += [one for one in numbers(question, "length", "numbers") if wanted is not None and one <= wanted]
    at_hand = each_at_hand(question)
    sizes += [one for one in at_hand if wanted is not None and one <= wanted]
    if wanted is None or len(sizes) < (1 if at_hand else LEAST_AT_HAND):
        return Told()
    if len(sizes) == 1 and mentions(question, "layers-asked"):
        return of_one_sheet(sizes[0], wanted)  # 'the shop only has 0.05 mm, how many': any number of it can be had
    once = _picked(wanted, sizes)
    told = _said(wanted, sizes, once, "")
    if once is None or abs(once.left.nominal) > READS_MM:
        more = [size for size in dict.fromkeys(sizes) for _ in range(MOST_OF_EACH)]
        several = _picked(wanted, more)
        if several is not None and (once is None or abs(several.left.nominal) < abs(once.left.nominal)):
            told += _said(wanted, more, several, " with several of each")
    return told


def _picked(wanted: float, sizes: Sequence[float]) -> Picked | None:
    near = Interval.exact(READS_MM)
    found = calibration.spacers_for_mm(Interval.exact(wanted), [Interval.exact(one) for one in sizes], near)
    return found if isinstance(found, Picked) and found.pieces else None


def _said(wanted: float, sizes: Sequence[float], found: Picked | None, how: str) -> Told:
    if found is None:
        return Told((Line("head", f"None of them is short enough to stand in {small_mm(wanted)}."),))
    parts = " + ".join(trimmed(sizes[place], 3) for place in found.pieces)
    left = round(found.left.nominal, 4) if is_known(found.left) else 0.0
    text = f"For {small_mm(wanted)}{how}: {parts} = {small_mm(found.total.nominal)}"
    if left > READS_MM:
        text += f", {small_mm(left)} short: a shim or spacer of {small_mm(left)} makes it up"
    elif left < -READS_MM:
        text += f", {small_mm(-left)} too long"
    else:
        text += ": just right"
    case = f"for {trimmed(wanted, 3)} mm{how}"
    rows: tuple[Quantity, ...] = (
        Quantity("stack_mm", found.total, case), Quantity("register_error_mm", Interval.exact(-left), case),
    )  # fmt: skip
    if left > READS_MM:
        rows = (*rows, Quantity("shim_mm", Interval.exact(left), case))
    lines = [Line("head", f"{text}.")]
    if READS_MM < abs(left) <= WORTH_JUDGING_MM:
        lines.append(Line("fact", _WITHOUT if left > 0 else _TOO_LONG, 1))
    return Told(tuple(lines), rows)
