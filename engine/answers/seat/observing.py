"""What the user saw of a lens on a body: kept in the gear file, and set beside what is computed for the same chain."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.resolve import Missing
from engine.answers.parts.wording import SEAT_READS_MM, about, distance, f_number, listed, small_mm, trimmed
from engine.answers.seat.observed_rings import pieces_meant
from engine.base.interval import Interval, is_known
from engine.base.span import Span
from engine.chains.lens_and_body import register_of
from engine.chains.setup import Setup
from engine.facts.catalogue import Catalogue
from engine.facts.gearedits import Append, Drop, Edit
from engine.facts.records import Observation
from engine.judging.judge import Judged
from engine.judging.ranking import Listed
from engine.physics.calibration import thinning_from_limit_mm
from engine.physics.focus import infinity_allowance_mm
from grammar.questions import Question, Taught, Thing

SECTION = "observations"
_FINEST_MM = 0.02  # what differs by less is told to the thousandth
_NO_LENS = "Which lens of yours? Tell it first: 'my avocet is a 25 mm C-mount lens'."
_NO_BODY = "On which body? Name it, such as 'on the skiff' or 'on an E-mount APS-C body'."


def completed(question: Question, catalogue: Catalogue, rows: Sequence[Listed]) -> Question | Missing:
    """The observation with its lens, body and rings as records. `rows`: the chains listed last, for rings not named."""
    taught = question.taught
    assert taught is not None
    fields = dict(taught.fields)
    if fields.get("lens") not in catalogue.gear_ids:
        return Missing("lens", _NO_LENS)
    body = fields.get("body") or _body_of(question.body, catalogue)
    if question.intent == "forget":
        return _to_forget(question, fields["lens"], body, catalogue)
    if not body:
        return Missing("body", _NO_BODY)
    fields["body"] = body
    pieces = pieces_meant(question, fields["lens"], body, rows, catalogue)
    if isinstance(pieces, Missing):
        return pieces
    if pieces:
        fields["with"] = ", ".join(pieces)
    stem = "-".join((fields["lens"], "on", body, *(["with", *fields["with"].split(", ")] if "with" in fields else [])))
    id_ = re.sub(r"[^A-Za-z0-9.:_+-]+", "-", stem)
    return question.with_(taught=Taught(SECTION, id_, id_, tuple(fields.items())))


def _body_of(thing: Thing | None, catalogue: Catalogue) -> str:
    """The body meant; a mount stands for the generic body of that mount and format, without one of its usual format."""
    if thing is None:
        return ""
    if thing.kind == "body":
        return thing.id or ""
    found = [row for row in catalogue.bodies.values() if row.generic and row.mount == thing.id]
    mount = catalogue.mounts.get(thing.id or "")
    wanted = thing.format or (mount.format if mount is not None and len(found) > 1 else None)
    fitting = [row.id for row in found if wanted in (None, row.format)]
    return fitting[0] if len(fitting) == 1 else ""


def _to_forget(question: Question, lens: str, body: str, catalogue: Catalogue) -> Question | Missing:
    found = [
        row.id
        for row in catalogue.observations.values()
        if row.id in catalogue.gear_ids and row.lens == lens and body in ("", row.body)
    ]
    if not found:
        return Missing("observation", "Nothing that you saw of it stands in the gear file.")
    fields = {"lens": lens, **({"body": body} if body else {})}
    return question.with_(taught=Taught(SECTION, ", ".join(found), "", tuple(fields.items())))


def edits_of(question: Question, catalogue: Catalogue, date: str, comment: str) -> tuple[Edit, ...]:
    """What is to be done to the gear file; what was seen of the same chain before makes way."""
    taught = question.taught
    assert taught is not None
    if question.intent == "forget":
        return tuple(Drop(SECTION, one) for one in taught.id.split(", "))
    fields: dict[str, str | Sequence[str]] = {**dict(taught.fields), "date": date}
    if "with" in fields:
        fields["with"] = str(fields["with"]).split(", ")
    before = (Drop(SECTION, taught.id),) if taught.id in catalogue.gear_ids else ()
    return (*before, Append(SECTION, taught.id, fields, comment))


def of_thing(id_: str, catalogue: Catalogue) -> tuple[str, ...]:
    """The observations that speak of a lens, body or adapter of one's own: they go with it."""
    rows = catalogue.observations.values()
    return tuple(row.id for row in rows if row.id in catalogue.gear_ids and id_ in (row.lens, row.body, *row.pieces))


def beside(judged: Judged, catalogue: Catalogue, feet: bool) -> Told:
    """What the user saw of this very chain, whether it agrees, and if not, which fact must be off and by how much."""
    told = Told()
    ids = tuple(adapter.id for adapter in judged.chain.adapters)
    for row in _of_pair(judged.setup, catalogue):
        if row.pieces == ids:
            told += _set_beside(row, judged, catalogue, feet)
    return told


def elsewhere(setup: Setup, shown: Iterable[Judged], catalogue: Catalogue, feet: bool) -> list[Line]:
    """What the user saw of the pair with other rings than those of the chains shown."""
    told = {tuple(adapter.id for adapter in judged.chain.adapters) for judged in shown}
    lines = []
    for row in _of_pair(setup, catalogue):
        if row.pieces not in told:
            names = [catalogue.adapters[one].name for one in row.pieces]
            ring = f" with {listed(names)}" if names else ", with a ring that you did not name"
            lines.append(Line("note", f"You tried it{ring}{_when(row)}: it {_seen(row, feet)}."))
    return lines


def end_seen(question: Question, catalogue: Catalogue) -> tuple[float, Line] | None:
    """Where the lens and body asked about were seen to stop, mm, and what says so; None where that is not known."""
    lens = question.lens.id if question.lens is not None and len(question.lenses) == 1 else None
    body = _body_of(question.body, catalogue)
    rows = catalogue.observations.values()
    found = [row for row in rows if row.lens == lens and body in ("", row.body) and is_known(row.far_mm)]
    if len(found) != 1 or not is_known(found[0].far_mm):
        return None
    return found[0].far_mm.nominal, Line("note", f"By what you saw: {seen_text(found[0], catalogue)}.")


def seen_text(row: Observation, catalogue: Catalogue) -> str:
    """One observation as a line of the gear list."""
    names = [catalogue.adapters[one].name for one in row.pieces if one in catalogue.adapters]
    ring = f" with {listed(names)}" if names else ""
    pair = f"{catalogue.lenses[row.lens].name} on {catalogue.bodies[row.body].name}"
    return f"{pair}{ring}: it {_seen(row, feet=False)}, as you tried it{_when(row)}"


def _of_pair(setup: Setup, catalogue: Catalogue) -> list[Observation]:
    def same_body(row: Observation) -> bool:
        body = catalogue.bodies[row.body]
        return row.body == setup.body.id or (not setup.body.id and body.generic and body.mount == setup.body.mount)

    return [row for row in catalogue.observations.values() if row.lens == setup.lens.id and same_body(row)]


def _set_beside(row: Observation, judged: Judged, catalogue: Catalogue, feet: bool) -> Told:
    error = judged.measured_trace.value("register_error_mm")
    wide = judged.trace.value("register_error_mm")
    lead = f"You tried it{_when(row)}: it {_seen(row, feet)}"
    if row.infinity is None and not is_known(row.far_mm):
        return Told((Line("note", f"{lead}{_nearest_beside(row, judged, feet)}."),))
    if not isinstance(error, Span) or not is_known(error.shortest) or not isinstance(wide, Span):
        return Told((Line("note", f"{lead}."),))
    computed = error.shortest.nominal
    needed = _error_seen(row, judged)
    if needed is None:
        return Told((Line("note", f"{lead}. What that says of the seat cannot be told here."),))
    if needed.least <= computed <= needed.greatest:
        if row.infinity and judged.verdict != "infinity":
            return Told((Line("note", f"{lead}. Not so computed, though the seat allows it: ask why not."),))
        return Told((Line("note", f"{lead}, as computed."),))
    meant = needed.least if computed < needed.least else needed.greatest
    off = meant - computed
    least = "at least " if not is_known(row.far_mm) and not row.infinity else ""
    culprits = listed(_culprits(off, judged, catalogue), "or")
    lines = [
        Line("note", f"{lead}. Computed, it would {_computed(judged, feet)}: both cannot be."),
        Line("fact", f"as you saw it, the lens sits {_off(meant, row)}, not {_off(computed)}", 1),
        Line("fact", f"so something is {least}{small_mm(abs(off))} off: {culprits}", 1),
    ]
    hull = wide.shortest
    if is_known(hull) and hull.least <= meant <= hull.greatest:
        lines.append(Line("fact", "that lies inside what rings vary by in the making; no fact need be wrong", 1))
    lines.append(Line("fact", "measure the ring and the lens's register and tell them; what you saw stays as it is", 1))
    return Told(
        tuple(lines),
        (Quantity("register_error_mm", needed, "as you saw it"), Quantity("fact_off_mm", Interval.exact(abs(off)))),
    )


def _nearest_beside(row: Observation, judged: Judged, feet: bool) -> str:
    """The nearest distance seen beside the computed one. It tells how far the helicoid goes, nothing of infinity."""
    near = judged.trace.value("near_from_sensor_mm")
    if not is_known(row.near_mm) or not isinstance(near, Interval):
        return ""
    if near.least <= row.near_mm.greatest and row.near_mm.least <= near.greatest:
        return ", as computed"
    return f". Computed, its nearest is {about(near, lambda value: distance(value, feet))}"


def _error_seen(row: Observation, judged: Judged) -> Interval | None:
    """The register errors, mm, at which what was seen is so; None where the lens's facts do not tell."""
    trace = judged.measured_trace
    blur, factor = trace.value("allowed_blur_mm"), trace.value("glass_factor")
    stop = row.f_number if is_known(row.f_number) else trace.value("f_number")
    focal, hiatus = trace.value("focal_length_mm"), trace.value("hiatus_mm")
    if is_known(row.far_mm):
        if not isinstance(focal, Interval) or not isinstance(hiatus, Interval):
            return None
        wide = judged.trace.value("hiatus_mm")
        error = thinning_from_limit_mm(row.far_mm, focal, wide if isinstance(wide, Interval) else hiatus)
        return error if isinstance(error, Interval) else None
    if not isinstance(blur, Interval) or not isinstance(stop, Interval):
        return None
    allowance = infinity_allowance_mm(stop, blur, factor if isinstance(factor, Interval) else Interval.exact(1.0))
    if not isinstance(allowance, Interval):
        return None
    far = 1000.0  # mm; no lens is held farther off
    edge = allowance.nominal
    return Interval.between(-far, edge) if row.infinity else Interval.between(edge, far)


def _culprits(off: float, judged: Judged, catalogue: Catalogue) -> list[str]:
    """Each single fact that would explain it; `off`: by how much the lens really sits farther out, mm."""
    size, adapters = small_mm(abs(off)), judged.chain.adapters
    out = []
    if len(adapters) == 1 and is_known(adapters[0].thickness_mm.shortest):
        now = adapters[0].thickness_mm.shortest.nominal
        if now <= 0 or now + off > 0:  # a plain ring cannot be thinner than nothing
            out.append(f"{adapters[0].name} is {_apart(now + off, now, 'thick ')}")
    elif adapters:
        out.append(f"the rings together are {size} {'thicker' if off > 0 else 'thinner'}")
    setup = judged.setup
    for whose, mount, rear, sign in (
        ("the lens's", setup.lens_mount.id, False, -1.0), ("the body's", setup.body_mount.id, True, 1.0)
    ):  # fmt: skip
        register = register_of(mount, setup, catalogue, rear=rear)
        if is_known(register):
            out.append(f"{whose} register is {_apart(register.nominal + sign * off, register.nominal)}")
    return out


def _apart(value_mm: float, other_mm: float, word: str = "") -> str:
    """The one length instead of the other, so finely that they differ as written."""
    digits = 2 if abs(value_mm - other_mm) >= _FINEST_MM else 3
    return f"{trimmed(value_mm, digits)} mm {word}instead of {trimmed(other_mm, digits)} mm"


def _computed(judged: Judged, feet: bool) -> str:
    far = judged.trace.value("far_from_sensor_mm")
    if judged.verdict == "infinity":
        return "reach infinity"
    if isinstance(far, Interval) and judged.verdict == "macro-only":
        return f"stop at {distance(far.nominal, feet)}"
    return "not reach infinity"


def _seen(row: Observation, feet: bool) -> str:
    parts = []
    if is_known(row.far_mm):
        parts.append(f"stopped at {distance(row.far_mm.nominal, feet)}")
    elif row.infinity is not None:
        parts.append("reached infinity" if row.infinity else "did not reach infinity")
    if is_known(row.near_mm):
        parts.append(f"came as near as {distance(row.near_mm.nominal, feet)}")
    stop = f" at f/{f_number(row.f_number.nominal)}" if is_known(row.f_number) else ""
    return (listed(parts) or "was tried") + stop


def _off(error_mm: float, row: Observation | None = None) -> str:
    edge = "" if row is None or is_known(row.far_mm) else "at most " if row.infinity else "more than "
    if abs(error_mm) < SEAT_READS_MM:
        return "just right"
    return f"{edge}{small_mm(abs(error_mm))} too {'far out' if error_mm > 0 else 'close'}"


def _when(row: Observation) -> str:
    return f" on {row.date}" if row.date else ""
