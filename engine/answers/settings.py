"""What the camera must be told: focal length for stabilisation, and the settings that lenses without contacts need."""

from __future__ import annotations

from engine.answers.exposure.handheld import handheld
from engine.answers.parts.answer import ANSWERED, NO, Answer, Line, ListedChain, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.nearby import nearest, outdone_last
from engine.answers.parts.resolve import BodySide, LensSide, body_side, lens_side
from engine.answers.parts.said import focals, interval, mentions, numbers
from engine.answers.parts.usual_glass import usual_factors, with_usual_factor
from engine.answers.parts.wording import trimmed
from engine.answers.picture.circles import LEAST_FACTOR, glass_factor
from engine.answers.picture.crop_factors import crops_of, is_view
from engine.answers.picture.each_glass import bare_beside
from engine.answers.picture.glass_apart import alternatives
from engine.answers.seat.cautioning import cautions_of
from engine.answers.ways.pair_beside import with_pair
from engine.answers.words.advice import advice_lines, named_or_near, of_their_kind
from engine.base.compact import replace
from engine.base.interval import Interval
from engine.facts.guidance import Advice
from grammar.kinds import WHY
from grammar.questions import BEST_CLOSE, Question

STABILISATION = "stabilisation"
TO_ENTER = "ibis_focal_mm"  # what the stabiliser is told
IN_SHORT = "menus-in-short"
CASES = (("on-a-tripod", "stabiliser-tripod"), ("each-lens-anew", "stabiliser-each-lens"))  # keys, advice told first
NO_ONE = (None, "setting", "set")  # topics that name no one setting
WHICH_STOP = "which-stop"
PAIR = 2
RING = "adapter"
LEAST_FOCAL_MM = 4.0  # no lens for such a body is shorter
# by who works the iris, the advice on how its stop is read
STOP_READ = {"ring": ("no-aperture-data",), "lever": ("lever-scale",), "mixed": ("no-aperture-data", "lever-scale")}
NO_FOCUSING = "no-focusing-why"  # the topic of lenses without focusing of their own
TROUBLE = frozenset({"black", "release"})  # topics where what the lens or the body has decides what to do


def setting(question: Question, knowledge: Knowledge) -> Answer:
    """The setting asked about; for stabilisation the focal length to enter, with and without usual glass."""
    question, equal = _as_engraved(question, knowledge)
    rows = named_or_near(question, knowledge, 2)
    if question.topic is not None and rows:
        rows = [rows[0], *(row for row in rows[1:] if row.severity == "note")]  # a danger of another matter stays out
    rows = rows[:1] if question.topic == NO_FOCUSING else rows  # no matter of what the picture is looked at with
    if question.follows and mentions(question, "which-stop-set"):
        rows = _stop_read(question, knowledge) or rows
    if question.topic in TROUBLE:
        rows = list(dict.fromkeys((*of_their_kind(question, knowledge), *rows)))
    surely = nearest(question.text, knowledge.catalogue, 1, intent=question.intent)
    named = any(row.asked_as == question.intent for row in surely) and not mentions(
        question, "no-contacts", "settings-asked"
    )
    if named and rows and not question.follows and question.topic not in TROUBLE | {STABILISATION}:
        near = outdone_last([rows[0].id], [surely[0].id], question.text, knowledge.catalogue, WHY)
        rows = [surely[0]] if near[0] != rows[0].id else rows  # what bears the name of a setting may be another matter
    if question.topic in NO_ONE and mentions(question, "all-to-set") and not named:
        rows = _in_short(question, knowledge)
    if question.topic in NO_ONE and mentions(question, "focal-entered"):
        rows = [knowledge.catalogue.advice[STABILISATION]]
    asked = any(row.id == STABILISATION or (row.id == IN_SHORT and focals(question)) for row in rows)
    told = _stabilised(question, equal, knowledge) if asked else Told()
    case = next((id_ for key, id_ in CASES if mentions(question, key)), None)
    if case is not None and (question.topic == STABILISATION or mentions(question, "focal-entered")):
        first = knowledge.catalogue.advice[case]
        told = Told(tuple(advice_lines([first]))) + told
        rows = [row for row in rows if row is not first]
    held = handheld(question, knowledge)
    told = held + told if rows or held.lines else _everything(question, knowledge)
    told = _at_frame_rate(question, knowledge) + told
    if question.topic == WHICH_STOP and question.said("magnification") is not None:
        rows = [knowledge.catalogue.advice[BEST_CLOSE]]
    if rows and rows[0].id == BEST_CLOSE:
        from engine.answers.close.sharpest_close import sharpest

        told = sharpest(question, knowledge) + told
    lines = (
        [*told.lines, *advice_lines(rows)]
        if not (rows and rows[0].id == IN_SHORT)
        else [*advice_lines(rows), *told.lines]
    )
    if not lines or (rows and rows[0].id == IN_SHORT and bool(question.lenses) != bool(question.bodies)):
        lines.append(Line("ask", _asked_back(question)))
    answer = Answer(
        question.text, "gear-setting", ANSWERED if rows or told.lines else NO, tuple(lines), question=question,
        quantities=told.quantities,
    )  # fmt: skip
    return with_pair(answer, question, knowledge)


def _stop_read(question: Question, knowledge: Knowledge) -> list[Advice]:
    """How it is known which stop is set: by the ring of the lens, or of a ring with a lever, which has no marks."""
    side = lens_side(question.lens, knowledge.catalogue)
    iris = side.mount.iris if isinstance(side, LensSide) else ""
    return [knowledge.catalogue.advice[name] for name in STOP_READ.get(iris, ())]


def _in_short(question: Question, knowledge: Knowledge) -> list[Advice]:
    """What every body wants, where no one setting is named; nothing where lens and body tell it themselves."""
    facts = knowledge.catalogue
    both = any(isinstance(lens_side(one, facts), LensSide) for one in question.lenses) and question.bodies
    return [] if both else [facts.advice[IN_SHORT]]


def _at_frame_rate(question: Question, knowledge: Knowledge) -> Told:
    """The shutter of the angle told, or of the usual one, where a frame rate is."""
    if question.said("frame_rate") is None:
        return Told()
    from engine.answers.exposure.exposing import shutter_and_angle

    found = shutter_and_angle(question, knowledge)
    return Told(
        tuple(Line("head", f"{line.text[:1].upper()}{line.text[1:]}.") for line in found.lines), found.quantities
    )


def _asked_back(question: Question) -> str:
    lacks = "lens" if not question.lenses else "body" if not question.bodies else ""
    if lacks and (question.lenses or question.bodies):
        return f"Which {lacks}? With lens and body named, all that is to be set is told. Or name the setting."
    return "Nothing in the facts answers that. Name the setting: release without lens, meter, stabilisation, peaking."


def _everything(question: Question, knowledge: Knowledge) -> Told:
    """All that the body is to be told for each lens on each body, by its best way, where no one setting is named."""
    from engine.answers.ways.pair import one_pair

    told = Told()
    lenses = [side for one in question.lenses if isinstance(side := lens_side(one, knowledge.catalogue), LensSide)]
    bodies = [body for one in question.bodies if isinstance(body := body_side(one, knowledge.catalogue), BodySide)]
    for lens in lenses:
        for body in bodies:
            name = f"{lens.words} on {body.words}"
            chains = one_pair(question, lens, body, knowledge).chains
            if chains:
                told += _set_for(name, chains[0], knowledge, question.feet)
            else:
                told += Told((Line("head", f"{name[:1].upper()}{name[1:]}: no way found."),))
    return told


def _set_for(name: str, chain: ListedChain, knowledge: Knowledge, feet: bool) -> Told:
    from engine.answers.cards.card_words import settings_of
    from engine.answers.parts.card_parts import Figure, Numbers, capital, spoken

    judged = chain.listed.judged
    opening = f"{name[:1].upper()}{name[1:]}, {chain.title}"
    if judged.verdict == "unusable" and judged.certainty != "unknown":
        return Told((Line("head", f"{opening}: no use on this body, so nothing to set."),))
    texts = settings_of(judged, knowledge, Numbers(name), feet)
    lines = [Line("head", f"{opening}. Set, by whatever name the body has for it:")]
    lines += [Line("fact", spoken(capital(text)), 1) for text in texts]
    lines += [line for line in cautions_of([(name, judged)], knowledge, feet) if line.kind == "danger"]
    rows = [part.quantity for text in texts for part in text if isinstance(part, Figure)]
    rows += [replace(row, name=TO_ENTER) for row in rows if row.name == "combined_focal_mm"]
    return Told(tuple(lines), tuple(rows))


def _bare_factor(question: Question) -> float | None:
    """A number alone that no focal length can be is the factor of a reducer: '105 on .64', '135 x0.71'."""
    alone = [value for value in numbers(question, "numbers", "magnification") if LEAST_FACTOR <= value < 1]
    return alone[0] if len(alone) == 1 else None


def _bare_focal(question: Question) -> tuple[float, ...]:
    """The number alone that can be no factor, where the lens was told without one: 'and the number for a 135'.

    Nor is a length beside the ring how thick that is, which the stabiliser does not ask: 'adapted 135 plain ring'.
    """
    alone = [value for value in numbers(question, "numbers") if value >= LEAST_FOCAL_MM]
    rings = [one.thickness_mm[0] for one in question.adapters if one.piece == RING and one.thickness_mm]
    alone = alone or [length for length in rings if length >= LEAST_FOCAL_MM]
    return tuple(alone) if len(alone) == 1 else ()


def _as_engraved(question: Question, knowledge: Knowledge) -> tuple[Question, float | None]:
    """The question without a focal length that is only what the lens told frames like, and that one.

    It may be told beside the lens, or after the lens of the turn before: '50 on APS-C, do I enter 76'.
    """
    prior = question.prior if question.follows else None
    spoken = prior.lenses[:1] if prior is not None and len(question.lenses) == 1 else ()
    pair = [lens for lens in (*spoken, *question.lenses) if lens.focal_length_mm]
    factor = glass_factor(question, knowledge.catalogue) or 1.0
    crops = [crop.by_diagonal for crop in crops_of(question.with_(lenses=()), knowledge)]
    for like in numbers(question, "numbers") if spoken and pair else ():  # 'why not 170' after an 85
        if any(is_view(pair[-1].focal_length_mm or 0.0, like, factor * crop) for crop in crops):
            return question, like
    if len(pair) != PAIR:
        return question, None
    for lens, view in (pair, pair[::-1]):
        focal, equal = lens.focal_length_mm or 0.0, view.focal_length_mm or 0.0
        if any(is_view(focal, equal, factor * crop) for crop in crops):
            return question.with_(lenses=(lens,)), equal
    return question, None


def _stabilised(question: Question, equal: float | None, knowledge: Knowledge) -> Told:
    """Focal length times the factor of the glass told; else plain, and behind the usual reducer and extender.

    `equal`: a focal length that was told and is only what the lens frames like.
    """
    question, note = with_usual_factor(question, knowledge.catalogue)
    factor = glass_factor(question, knowledge.catalogue) or _bare_factor(question)
    lenses = focals(question) or _bare_focal(question)
    lines: list[Line] = []
    rows: list[Quantity] = []
    if equal is not None and len(lenses) == 1:
        is_plain = "" if factor is None else f" x {factor:g}"
        text = (
            f"No, not {trimmed(equal, 1)}: that is only what it frames like. Enter {trimmed(lenses[0], 1)}{is_plain}."
        )
        lines.append(Line("head", text))
    zoom = interval(question, "zoom")
    set_to = [
        n for n in numbers(question, "numbers", "length") if zoom is not None and zoom.least <= n <= zoom.greatest
    ]
    if len(set_to) == 1 and not lenses:
        lenses = tuple(set_to)  # 'my 28-70 at 50'
    if zoom is not None and not lenses:
        ends = f"{trimmed(zoom.least, 1)} to {trimmed(zoom.greatest, 1)} mm"
        lines.append(Line("head", f"A zoom has no one number: set the focal length in use, {ends}, anew as you zoom."))
    bare = bare_beside(question)
    for focal in lenses or ((zoom.least, zoom.greatest) if zoom is not None else ()):
        either = alternatives(question) or ((factor,) if factor is not None else ())
        if focal in bare:
            lines.append(Line("head", f"enter {trimmed(focal, 1)} mm plain ring"))
            rows.append(Quantity(TO_ENTER, Interval.exact(focal), "plain ring"))
            continue
        for each in (*either, None) if either else (None, *usual_factors(knowledge.catalogue)):
            value = focal * (each or 1.0)
            case = f"with {each:g}x" if each is not None else "plain ring"
            rows.append(Quantity(TO_ENTER, Interval.exact(value), case))
            first = each in either if either else each is None
            lines.append(Line("head" if first else "fact", f"enter {trimmed(value, 1)} mm {case}", 0 if first else 1))
    if rows and (question.bodies or question.things or question.said("crop")):
        lines.append(Line("fact", "the frame, and a crop of it, change nothing of that", 1))
    return Told(tuple(lines), tuple(rows)) + note
