"""The stop or the ISO that makes up for what another setting changes: 'f/2.8 at 1/125, want 1/30, what stop'."""

from __future__ import annotations

from collections.abc import Sequence
from math import log2

from engine.answers.exposure.lighting import seconds
from engine.answers.exposure.two_stops import metered_first
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import mentions, numbers
from engine.answers.parts.wording import f_number, figures, trimmed
from engine.base.interval import Interval, is_known
from engine.physics import exposure
from grammar.questions import Question

LEAST = 0.005  # stops; less is no change


def made_up(question: Question, times: Sequence[float], filters: Interval) -> Told | None:
    """What the one stop told becomes, or the one ISO, for the picture to stay as bright; None where none is asked."""
    isos, stops = numbers(question, "iso"), metered_first(question)
    brighter, says = _changed(times, isos, stops)
    if says and filters.nominal > 0:
        brighter, says = brighter - filters.nominal, f"{says} behind {trimmed(filters.nominal, 2)} stops of ND"
    if abs(brighter) < LEAST:
        return None
    way = "brighter" if brighter > 0 else "darker"
    because = f"{says} is {trimmed(abs(brighter), 2)} stops {way}"
    row = Quantity("light_difference_stops", Interval.exact(abs(brighter)), "change")
    if len(stops) == 1 and mentions(question, "which-stop", "which-stop-now"):
        after = exposure.f_number_after(Interval.exact(stops[0]), Interval.exact(brighter))
        if is_known(after):
            text = f"f/{f_number(stops[0])} becomes f/{trimmed(after.nominal, 1)}: {because}."
            return Told((Line("head", text),), (Quantity("f_number", after, "made up for"), row))
    if len(isos) == 1 and mentions(question, "which-iso"):
        iso = isos[0] / 2**brighter
        text = f"ISO {isos[0]:g} becomes ISO {figures(iso, 2)}: {because}."
        return Told((Line("head", text),), (Quantity("iso", Interval.exact(iso), "made up for"), row))
    return None


def _changed(times: Sequence[float], isos: Sequence[float], stops: Sequence[float]) -> tuple[float, str]:
    """By how many stops the pairs told make the picture brighter, and the pairs in words."""
    brighter, said = 0.0, []
    if len(times) == 2:
        brighter += log2(times[1] / times[0])
        said.append(f"{seconds(times[0])} to {seconds(times[1])}")
    if len(isos) == 2:
        brighter += log2(isos[1] / isos[0])
        said.append(f"ISO {isos[0]:g} to {isos[1]:g}")
    if len(stops) == 2:
        brighter += 2 * log2(stops[0] / stops[1])
        said.append(f"f/{f_number(stops[0])} to f/{f_number(stops[1])}")
    return brighter, " and ".join(said)
