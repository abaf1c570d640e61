"""The focusing ring unrolled: its marks as they are engraved, where they belong on this stack, and the image's size."""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil, floor
from typing import Final

from engine.answers.parts.wording import SEAT_READS_MM, small_mm
from engine.judging.judge import Judged
from engine.render.drawing import MARGIN, SIZE, WIDTH, Label, Measured, Page, scale_for, scale_text
from engine.render.lettering import text_width, wrapped
from engine.render.reach import Reach, engraved_marks, mark_text, round_marks, to_figures

LEFT: Final = MARGIN + 26.0
LONG: Final = WIDTH - MARGIN - LEFT - 12.0
STRIP: Final = 6.5
MOST: Final = 11
PARTS: Final = 14  # of the ring that two marks of ours stand apart at least
WORTH_MARKING: Final = 1.15  # far over near end, below which distances say less than the image's size
WORTH_SIZING: Final = 0.1  # magnification from which the image's size is told
Mark = tuple[str, float]  # as it is lettered, and how far from the infinity stop


def draw_ring(page: Page, reach: Reach, judged: Judged, marks: Sequence[float], top: float) -> bool:
    """The ring under `top`, or why there is none to draw; gives whether it was drawn."""
    helicoid = not reach.own_ring and reach.travel is not None
    title = "The helicoid, unrolled" if helicoid else "The ring, unrolled"
    page.text(MARGIN, top, title, bold=True)
    told = engraved_marks(reach, judged, marks)[:MOST]
    engraved = [(mark_text(mark, reach.feet), at) for mark in told if (at := reach.engraved_at(mark)) is not None]
    length = _length(reach, engraved)
    why = _why_not(reach, length)
    if why:
        for n, words in enumerate(wrapped(why, WIDTH - 2 * MARGIN, SIZE, 3)):
            page.text(MARGIN, top + 5.0 * (n + 1), words)
        return False
    scale = scale_for(length, LONG)
    start = "shortest" if helicoid else "infinity stop"
    says = f"the lens's way along its axis at {scale_text(scale)}, {start} at the left"
    page.text(MARGIN + text_width(title, SIZE, True) + 3, top, says)
    y = top + 4.0
    if engraved:
        y += 9.0
        _strip(page, reach, "as engraved", engraved, length, scale, y, above=True)
        y += STRIP
    anew = _anew(reach, told)
    if anew or engraved:
        _past_infinity(page, reach, length, scale, y)
        _strip(page, reach, "marked anew", anew, length, scale, y, above=False)
        y += STRIP + 10.0
    sizes = _sizes(reach, length)
    if sizes:
        _strip(page, reach, "image to thing", sizes, length, scale, y, above=False)
        y += STRIP + 10.0
    if engraved:
        y = _moved(page, reach, length, scale, y + 2.0)
        _readings(page, reach, told, y)
    return True


def can_draw_ring(reach: Reach, judged: Judged, marks: Sequence[float]) -> bool:
    """Whether enough is known for a ring to be drawn."""
    told = engraved_marks(reach, judged, marks)
    engraved = [(mark_text(mark), at) for mark in told if (at := reach.engraved_at(mark)) is not None]
    return not _why_not(reach, _length(reach, engraved))


def _length(reach: Reach, engraved: Sequence[Mark]) -> float:
    """How far the ring moves the lens: told, or as far as its marks go."""
    return reach.travel if reach.travel is not None else max((at for _, at in engraved), default=0.0)


def _why_not(reach: Reach, length: float) -> str:
    if not reach.moves_whole:
        return "Its marks cannot be worked out for a lens that moves only a part of itself."
    if reach.focal is None:
        return "Its marks hang on the focal length, which is not known."
    if reach.glass:
        return "Marks are not worked out behind glass."
    if reach.shortest is None:
        return "Where its marks belong hangs on the seat, which is not known."
    if not reach.own_ring and not length:
        return "Neither the lens nor the stack has a ring to focus with: what is sharp is set by moving all of it."
    if length <= 1e-6:
        return "How far it moves the lens is not known: tell its travel, or the nearest mark of its scale."
    return ""


def _anew(reach: Reach, told: Sequence[float]) -> list[Mark]:
    """What to mark: the engraved distances that the ring still comes to, filled up with round ones."""
    kept = {mark: at for mark in told if (at := reach.marked_anew_at(mark)) is not None}
    if reach.travel is not None and reach.sharp_at(0.0) > WORTH_MARKING * reach.sharp_at(reach.travel):
        for mark in round_marks(reach):
            at = reach.marked_anew_at(mark)
            if at is not None and all(abs(at - other) > reach.travel / PARTS for other in kept.values()):
                kept[mark] = at
    return [(mark_text(mark, reach.feet), kept[mark]) for mark in sorted(kept, reverse=True)[:MOST]]


def _sizes(reach: Reach, length: float) -> list[Mark]:
    """Round magnifications along the ring: they hang on the focal length and the seat alone."""
    if reach.focal is None or reach.shortest is None:
        return []
    low, high = max(reach.shortest, 0.0) / reach.focal, (reach.shortest + length) / reach.focal
    if high < WORTH_SIZING:
        return []
    step = next(n * 10.0**p for p in range(-6, 4) for n in (1, 2, 5) if n * 10.0**p * 7 >= high - low)
    counts = range(ceil(low / step - 1e-9), floor(high / step + 1e-9) + 1)
    return [(f"{n * step:.6g}x", n * step * reach.focal - reach.shortest) for n in counts if n]


def _strip(page: Page, reach: Reach, name: str, marks: Sequence[Mark], length: float, scale: float, y: float,
           above: bool) -> None:  # fmt: skip
    """One row of marks; a ring whose end is not known is torn off."""
    ends = LEFT + length * scale
    edge, base = (y, y + STRIP) if above else (y + STRIP, y)
    whole = Measured("ring_travel_mm", length, scale, of=name) if reach.travel is not None else None
    page.line("edge", [(LEFT, y), (LEFT, y + STRIP)])
    page.line("edge", [(LEFT, edge), (ends, edge)], whole)
    page.line("break", [(LEFT, base), (ends, base)])
    if reach.travel is not None:
        page.line("edge", [(ends, y), (ends, y + STRIP)])
    else:
        page.line("unknown", [(ends, edge), (ends + 6, edge)])
        tear = [(ends + 6 + (0.8 if n % 2 else -0.8), y + STRIP * n / 4) for n in range(5)]
        page.line("edge", tear)
        page.text(ends + 3, y + STRIP / 2 + 1.1, "?", anchor="middle", bold=True)
    page.text(LEFT - 2, y + STRIP / 2 + 1.1, name, anchor="end")
    rows = []
    for words, at in marks:
        if at > length + 1e-6:
            continue
        x = LEFT + at * scale
        page.line("edge", [(x, edge), (x, edge + (2.8 if above else -2.8))])
        page.line("edge", [(LEFT, edge), (x, edge)], Measured("ring_advance_mm", at, scale, of=f"{name} {words}"))
        rows.append(Label(x, edge, (words,)))
    top, elbow = (y - 7.5, y - 2.0) if above else (edge + 4.2, edge + 2.0)
    page.labels_across(rows, top, elbow, MARGIN, WIDTH - MARGIN)


def _past_infinity(page: Page, reach: Reach, length: float, scale: float, y: float) -> None:
    """The part of the ring at which the lens sits too close for anything to be sharp."""
    if reach.shortest is not None and reach.shortest < -1e-9:
        page.box("hair", "dark", LEFT, y, min(-reach.shortest, length) * scale, STRIP)


def _moved(page: Page, reach: Reach, length: float, scale: float, y: float) -> float:
    """By how much every mark has moved, drawn where it fits; gives where that ends."""
    shift = reach.shortest or 0.0
    if abs(shift) < SEAT_READS_MM:
        page.text(MARGIN, y, "Every mark stays where it is.")
        return y + 3.0
    text = f"every mark moves {small_mm(abs(shift))} {'towards' if shift > 0 else 'away from'} infinity"
    if abs(shift) > length:
        page.text(MARGIN, y, f"{text[:1].upper()}{text[1:]}: more than the ring has.")
        return y + 3.0
    x = LEFT + abs(shift) * scale
    page.line("measure", [(LEFT, y), (x, y)], Measured("mark_shift_mm", abs(shift), scale))
    for at in (LEFT, x):
        page.line("measure", [(at - 0.7, y + 0.7), (at + 0.7, y - 0.7)])
    room = x + 2 + text_width(text, SIZE) < WIDTH - MARGIN
    page.text(x + 2 if room else LEFT, y + 1.1 if room else y + 4.5, text)
    return y + (3.0 if room else 6.5)


def _readings(page: Page, reach: Reach, told: Sequence[float], y: float) -> None:
    """What is sharp where the ring says so and so, in columns; nothing where the ring tells the truth."""
    if reach.shortest is None or abs(reach.shortest) < SEAT_READS_MM:
        return
    rows = []
    for mark in told:
        at = reach.engraved_at(mark)
        if at is not None:
            sharp = reach.sharp_at(at)
            past = reach.shortest + at < -1e-9
            shown = "nothing" if past else mark_text(to_figures(sharp, 3, reach.feet), reach.feet)
            rows.append(f"{mark_text(mark, reach.feet)} → {shown}")
    page.text(MARGIN, y + 4.0, "What the ring says → what is sharp, from the sensor", bold=True)
    deep = (len(rows) + 3) // 4
    for n, text in enumerate(rows):
        page.text(MARGIN + (n // deep) * 48.0, y + 9.0 + (n % deep) * 4.2, text)
