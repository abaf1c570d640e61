"""Which of several pairs of lens and body is the easier: how each comes out, then which ring is the cheapest."""

from __future__ import annotations

from collections.abc import Sequence

from engine.answers.parts.answer import Line, Told
from engine.answers.parts.wording import listed
from engine.answers.seat.chain_numbers import price_of
from engine.facts.kinds import GLASS_KINDS
from engine.judging.judge import Judged

RARE = "made-to-order"
# the easiest first
OUTCOMES = (
    "to infinity", "to infinity if the barrel enters the cup", "to infinity by a ring that is made to order",
    "to infinity only through glass", "close-up only", "not at all",
)  # fmt: skip
PLAIN, IN_CUP, MADE, GLASS, CLOSE_UP, NOT = range(len(OUTCOMES))

Named = tuple[str, Judged | None]  # what a pair is called, and its best way; None without one


def outcome(judged: Judged | None) -> int:
    """The place of the best way of a pair among the outcomes."""
    if judged is None or judged.verdict not in ("infinity", "macro-only"):
        return NOT
    if judged.verdict == "macro-only":
        return CLOSE_UP
    pieces = judged.chain.adapters
    if any(piece.kind in GLASS_KINDS for piece in pieces):
        return GLASS
    if any(piece.common == RARE for piece in pieces):
        return MADE
    return IN_CUP if judged.certainty == "unknown" else PLAIN


def easier(pairs: Sequence[Named]) -> Told:
    """How each comes out, after which of them is the easiest, where one is."""
    groups: dict[int, list[Named]] = {}
    for pair in sorted(pairs, key=lambda row: outcome(row[1])):
        groups.setdefault(outcome(pair[1]), []).append(pair)
    parts = [f"{listed([name for name, _ in group])}: {OUTCOMES[at]}" for at, group in groups.items()]
    text = f"{'; '.join(parts)}."
    best = groups[min(groups)]
    if len(groups) > 1 and len(best) == 1 and min(groups) < CLOSE_UP:
        text = f"The easier is {best[0][0]}. {text}"
    priced = [(band.nominal, name) for name, judged in best if judged is not None and (band := price_of(judged))]
    if len(priced) > 1 and min(priced)[0] < max(priced)[0]:
        text += f" The ring for {min(priced)[1]} is the cheapest."
    return Told((Line("head", f"{text[:1].upper()}{text[1:]}"),))


def for_all(pairs: Sequence[tuple[str, str, Judged | None]]) -> Told:
    """Which of several bodies serves several lenses best, by the lens that comes out worst, and what each does there.

    `pairs`: what the body and the lens are called, and the best way.
    """
    bodies: dict[str, list[tuple[int, str]]] = {}
    for body, lens, judged in pairs:
        bodies.setdefault(body, []).append((outcome(judged), lens))
    ranks = {body: (max(rows)[0], sum(at for at, _ in rows)) for body, rows in bodies.items()}
    best = [body for body, rank in ranks.items() if rank == min(ranks.values())]
    parts = [f"on {body} {', '.join(f'{lens} {OUTCOMES[at]}' for at, lens in rows)}" for body, rows in bodies.items()]
    if len(best) == 1 and min(ranks.values())[0] < NOT:
        head = f"{best[0]} serves them all best: "
    else:
        head = "No body serves them better than the other: " if len(best) == len(bodies) else ""
    text = f"{head}{'; '.join(parts)}."
    return Told((Line("head", f"{text[:1].upper()}{text[1:]}"),))
