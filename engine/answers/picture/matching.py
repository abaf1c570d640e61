"""Lenses that look alike on different formats: which would, and how alike those are that are told."""

from __future__ import annotations

import re
from collections.abc import Sequence

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import mentions, number_beside
from engine.answers.parts.wording import f_number, trimmed
from engine.answers.picture.crop_factors import FULL_FRAMES, Crop, crop_of, shapes_told
from engine.answers.picture.frame_modes import modes_told
from engine.answers.picture.moved_over import moved_over
from engine.answers.picture.same_depth import FULL_ID, formats_told
from engine.base.interval import Interval
from engine.facts.catalogue import Catalogue
from engine.facts.records import Format
from grammar.questions import Question, Thing

FULL = "full frame"
FEW = 2
SAME_FORMAT = 0.01  # share of the crop factor
THIRD = 0.123  # a third of a stop, as a share of the f-number
_NUMBER = re.compile(r"(?<![\w./])(\d+(?:\.\d+)?)(?: ?mm)?(?![\w/])")
NEAR, ALIKE = 0.06, 0.04  # as a share: a view likened to in whole millimetres; views that look the same


def to_match(
    question: Question,
    lenses: Sequence[float],
    at: float | None,
    crops: Sequence[Crop],
    facts: Catalogue,
    factor: float | None = None,
) -> Told:
    """The focal length, and the stop, that on each format look as the one told does on its own, else on full frame.

    `factor`: of the glass told, which is on the frame told, and on the one wanted where the view is that of full frame.
    """
    if question.asked and question.prior is not None and question.prior.follows:
        return Told()  # which frame was to be matched was told two turns before
    wanted = _wanted(question, facts)
    source = _source(question, facts, wanted) or _before_full(question, facts) or _frame_before(question, facts)
    meant = wanted or of_mount(question.lens, facts)
    if source is None and meant is not None and crops:
        source = next((form for _, form in formats_told(question, facts) if form.id not in FULL_FRAMES), None)
    known = Crop(FULL, 1.0, 1.0) if source is None else crop_of(source)
    targets = (
        [Crop(FULL, 1.0, 1.0)]
        if source is not None and question.follows and mentions(question, "like-full")
        else [crop_of(meant)]
        if meant is not None
        else _others(known, question, facts) or [crop for crop in crops if crop.name != known.name]
    )
    if source is not None and not targets:
        targets = [Crop(FULL, 1.0, 1.0)]
    told, before, behind = Told(), (factor or 1.0) if source is not None else 1.0, _behind(source, factor)
    at = at * before if at is not None else None
    for focal in (one * before for one in _likened_to(question, lenses)):
        for crop in targets:
            ratio = known.by_diagonal / crop.by_diagonal / behind
            needed = focal * ratio
            text = f"To frame like {trimmed(focal, 1)} mm on {known.name}, {crop.name} needs {trimmed(needed, 1)} mm"
            if crop.by_width is not None and known.by_width is not None:
                text += f" ({trimmed(focal * known.by_width / crop.by_width / behind, 1)} mm by width)"
            text += f" ahead of {trimmed(behind, 2)}x glass" if behind != 1 else ""
            case = f"on {crop.name} like {trimmed(focal, 1)} mm on {known.name}"
            rows = [Quantity("focal_length_mm", Interval.exact(needed), case)]
            if crop.name == FULL:
                rows.append(Quantity("equivalent_focal_mm", Interval.exact(needed), case))
            if at is not None:
                rows.append(Quantity("f_number", Interval.exact(at * ratio), case))
                text += f", for the same depth of field at f/{trimmed(at * ratio, 2)}; exposure goes by the f-number"
            told += Told((Line("head", f"{text}."),), tuple(rows))
    return told


def _behind(source: Format | None, factor: float | None) -> float:
    """The factor of the glass on the frame that is wanted: 'a 50 on full frame, what behind 0.71x on MFT'."""
    return factor if factor is not None and source is None else 1.0


def _likened_to(question: Question, lenses: Sequence[float]) -> Sequence[float]:
    """'a 35 on APS-C, want the same as 50 on full frame': of several lenses that which the view is to be like."""
    like = number_beside(question, "view-like") if len(lenses) > 1 else None
    return [focal for focal in lenses if focal == like] or lenses


def _frame_before(question: Question, facts: Catalogue) -> Format | None:
    """'what would I need on APS-C to match that' after 12 mm on MFT: the frame that the view was told on.

    'which lens on full frame for that view' leaves the lens on that frame.
    """
    if not question.follows:
        return None
    now = [form for thing, form in formats_told(question, facts) if thing not in question.lenses]
    if mentions(question, "like-full"):
        return next((form for form in now if form.id not in FULL_FRAMES), None)
    stood = formats_told(question.with_(things=(), lenses=(), bodies=question.elsewhere), facts)
    return next((form for _, form in stood if form not in now and form.id not in FULL_FRAMES), None)


def _others(known: Crop, question: Question, facts: Catalogue) -> list[Crop]:
    """The formats told beside the one that the view is told on."""
    forms = {form.id: form for thing, form in formats_told(question, facts) if thing not in question.lenses}
    crops = [crop_of(form) for form in forms.values()] if len(forms) > 1 else []
    return [crop for crop in crops if abs(crop.by_diagonal / known.by_diagonal - 1) > SAME_FORMAT]


def sets_formats_apart(question: Question, facts: Catalogue) -> bool:
    """'50 on full frame, what is that on Super 16': one lens and two frames, of which full frame is not the last.

    Full frame told last is what everything is likened to by itself.
    """
    if mentions(question, "crop"):
        return False  # 'on a full frame body in APS-C crop' is one frame
    of_lenses = {lens.format for lens in question.lenses}
    told = [(thing, form) for thing, form in formats_told(question, facts) if thing not in question.lenses]
    ids = dict.fromkeys(form.id for _, form in sorted(told, key=lambda row: row[0].column) if form.id not in of_lenses)
    lenses = [lens for lens in question.lenses if lens.focal_length_mm is not None]
    columns = sorted(thing.column for thing, _ in told) or [0]
    if any(columns[0] <= one.at < columns[-1] for one in question.places("or-between")):
        return False  # '18 mm equivalent on MFT or APS-C' asks for each
    return len(ids) > 1 and len(lenses) == 1 and not (len(ids) == FEW and list(ids)[-1] in FULL_FRAMES)


def asks_to_match(question: Question, facts: Catalogue) -> bool:
    """'Super 16 equivalent of a 50', 'what on MFT looks like 75 on full frame': a lens for the frame told first."""
    lens = next((lens for lens in question.lenses if lens.focal_length_mm is not None), None)
    said = question.places("asked-for-likened")
    if lens is not None and moved_over(question, facts) is not None:
        return True  # what was used on the one is wanted again on the other
    if lens is None or not said:
        return False
    frames = [(thing, form) for thing, form in formats_told(question, facts) if thing is not lens]
    first = [form for thing, form in frames if thing.column - 1 < said[0].at]
    behind = question.text[said[0].at :]
    likened = any(float(one) == lens.focal_length_mm for one in _NUMBER.findall(behind))
    return bool(first) and first[0].id not in FULL_FRAMES and likened


def has_that_view(question: Question, lenses: Sequence[float], crops: Sequence[Crop]) -> bool:
    """'why does my 25 on MFT look like a 50': the number told besides is what it looks like, and no lens is wanted."""
    said = [float(one) for one in _NUMBER.findall(question.text)]
    return any(
        one != focal and abs(one / (focal * crop.by_diagonal) - 1) <= NEAR
        for one in said
        for focal in lenses
        for crop in crops
        if abs(crop.by_diagonal - 1) > NEAR
    )


def _source(question: Question, facts: Catalogue, wanted: Format | None) -> Format | None:
    """The format that the view to be matched is told on: of two the one nearer behind the focal length.

    None where that is full frame.
    """
    told = formats_told(question, facts)
    lens = next((lens for lens in question.lenses if lens.focal_length_mm is not None), None)
    if lens is None or len({form.id for _, form in told}) < 2:
        return None
    column = _column_of_focal(lens, question.text)
    # 'super 16 12 mm is what on full frame', 'mft 12 mm = what on aps-c'
    moved = moved_over(question, facts)
    told = [row for row in told if row[1] is not wanted and not (moved and row[1].id == moved[1].id)] or told
    own = next((row for row in told if row[0] is lens or row[0].words == lens.words), None)
    _, form = own or min(told, key=lambda row: _away(row[0].column - column))
    return None if form.id in FULL_FRAMES else form


def _wanted(question: Question, facts: Catalogue) -> Format | None:
    """'which APS-C lens has the view of a 25 on MFT': what the lens asked for is made for, told ahead of the number."""
    lens = next((lens for lens in question.lenses if lens.focal_length_mm is not None), None)
    asked = question.places("lens-wanted")
    if lens is None or not asked or _column_of_focal(lens, question.text) <= asked[0].end:
        return None
    return facts.formats.get(lens.format or "")


def _before_full(question: Question, facts: Catalogue) -> Format | None:
    """'9 mm on 2/3 in, which full frame lens shows that': the frame told with the focal length, ahead of 'which'."""
    lens = next((lens for lens in question.lenses if lens.focal_length_mm is not None), None)
    asked, told = question.places("like-full"), formats_told(question, facts)
    beside = next(
        (form for thing, form in told if lens is not None and _right_behind(lens, thing, question.text)), None
    )
    if asked and beside is not None and beside.id not in FULL_FRAMES:
        return beside  # 'which lens on full frame matches a 50 on APS-C'
    if lens is None or not asked or not told or _column_of_focal(lens, question.text) - 1 > asked[0].at:
        return None
    thing, form = told[0]
    return form if thing.column - 1 < asked[0].at and form.id not in FULL_FRAMES else None


def _right_behind(lens: Thing, frame: Thing, text: str) -> bool:
    """'50 mm on an APS-C body': nothing but small words between the two."""
    between = text[_column_of_focal(lens, text) - 1 : frame.column - 1]
    stop = r"(?:[ /]*(?:f ?/? ?)?\d[\d.]* ?)?"
    return re.fullmatch(rf"\d[\d.]* ?(?:mm ?)?{stop}(?:lens )?on (?:a |an |my )?", between) is not None


def _column_of_focal(lens: Thing, text: str) -> int:
    """Where the focal length itself is told: 'what lens on MFT looks like 35 mm' names the lens before."""
    found = re.search(rf"(?<![\d.]){lens.focal_length_mm:g}(?![\d.]*\d)", text)
    return found.start() + 1 if found is not None else lens.column


def _away(columns: int) -> tuple[bool, int]:
    """What stands behind comes before what stands ahead, the nearer first."""
    return columns < 0, abs(columns)


def frame_of(lens: Thing, question: Question, facts: Catalogue) -> Format | None:
    """The format of one of several lenses: told with it, that of its mount of modern bodies, or else named beside."""
    if lens.format in facts.formats:
        return facts.formats[lens.format or ""]
    own = of_mount(lens, facts)
    if own is not None:
        return own
    behind = [row for row in formats_told(question, facts) if row[0] not in question.lenses]
    if not behind:
        return None
    return min(behind, key=lambda row: _away(row[0].column - lens.column))[1]


def of_mount(lens: Thing | None, facts: Catalogue) -> Format | None:
    """The one format of the bodies that a lens is made for by its mount: 'an MFT lens'."""
    mount = facts.mounts.get(lens.id or "") if lens is not None and lens.kind == "mount" else None
    if mount is None or mount.kind != "mirrorless" or mount.format != mount.smallest_format:
        return None
    return facts.formats.get(mount.format or "")


def as_frame(question: Question, facts: Catalogue) -> Question:
    """'16:9 out of MFT, how big': of a mount with one format alone, and no lens, a shape is asked of the frame."""
    lens, shaped = question.lens, bool(shapes_told(question)) and question.said("circle") is None
    bare = lens is not None and not (lens.focal_length_mm or lens.f_number or lens.lens_kind or lens.format)
    if len(question.lenses) != 1 or question.bodies or question.frames or question.adapters or not (bare and shaped):
        return question
    if lens is None or of_mount(lens, facts) is None or mentions(question, "lens-said"):
        return question
    return question.with_(lenses=(), bodies=(lens,))


def each_on_its_own(question: Question, facts: Catalogue) -> Told:
    """Two lenses, each on a format of its own: what each is like on full frame, and whether they look alike."""
    lenses = [lens for lens in question.lenses if lens.focal_length_mm is not None]
    frames = [form for lens in lenses if (form := frame_of(lens, question, facts)) is not None]
    modes = modes_told(question)
    told = {form.id: form for thing, form in formats_told(question, facts) if thing not in question.lenses}
    if len(lenses) == 1 and len(told) > 1 and not modes and mentions(question, "on-each", "which-wider"):
        lenses, frames = lenses * len(told), list(told.values())  # 'how wide is a 25 on each'
    if modes:  # 'how does a 75 compare' on a full frame body in APS-C mode
        frames = [facts.formats[modes[0]]] * len(lenses)
    wider = mentions(question, "which-wider", "on-each") or bool(modes)
    if wider and not frames:
        frames = [facts.formats[FULL_ID]] * len(lenses)
    if len(lenses) < 2 or len(frames) < len(lenses) or (len({form.id for form in frames}) < 2 and not wider):
        return Told()
    out, views, depths, cases = Told(), [], [], []
    for lens, form in zip(lenses, frames, strict=True):
        crop, focal = crop_of(form), lens.focal_length_mm or 0.0
        view = focal * crop.by_diagonal
        case = f"{trimmed(focal, 1)} mm on {form.name}"
        rows = [Quantity("equivalent_focal_mm", Interval.exact(view), case)]
        rows.append(Quantity("crop_factor", Interval.exact(crop.by_diagonal), form.name))
        text = f"{case} frames like {view:.0f} mm on full frame"
        views.append(view)
        cases.append(case)
        if lens.f_number is not None:
            depths.append(lens.f_number * crop.by_diagonal)
            rows.append(
                Quantity("equivalent_f_number", Interval.exact(depths[-1]), f"f/{lens.f_number:g}, {form.name}")
            )
            text += f", f/{f_number(lens.f_number)} with the depth of field of f/{trimmed(depths[-1], 2)}"
        out += Told((Line("fact", text),), tuple(rows))
    return Told((Line("head", verdict(views, depths) + (widest(views, cases) if wider else "")),)) + out


def widest(views: Sequence[float], cases: Sequence[str]) -> str:
    """Which of them sees most, and by how much more than the next; nothing where they see the same."""
    (least, widest), (other, case) = sorted(zip(views, cases, strict=True))[:2]
    if other <= least * (1 + ALIKE):
        return ""
    return f" {widest} is the wider: it takes in {trimmed(other / least, 2)} times as much across as {case}."


def verdict(views: Sequence[float], depths: Sequence[float]) -> str:
    same_view = max(views) <= min(views) * (1 + ALIKE)
    if not same_view:
        return f"Not the same view: {min(views):.0f} mm against {max(views):.0f} mm in full frame terms."
    if len(depths) < len(views):
        return "The same view; tell the f-numbers for the depth of field."
    if max(depths) <= min(depths) * (1 + THIRD):
        return "The same look: the same view, and depth of field within a third of a stop. Exposure stays as marked."
    return (
        f"The same view, not the same depth of field: f/{trimmed(min(depths), 2)} against f/{trimmed(max(depths), 2)}"
        " in full frame terms, the smaller number blurs more. Exposure goes by the f-number engraved."
    )
