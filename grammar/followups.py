"""A fragment and the question before it, made one: 'and on the full frame body?', 'at f/8?', 'without it'."""

from __future__ import annotations

from typing import Final

from engine.base.compact import replace
from grammar.adding import PLAN, added
from grammar.casting import DRAWN
from grammar.flanges_told import flange_measured, is_unseated
from grammar.hearing import Heard
from grammar.lengths_again import lengths_again
from grammar.on_what import IDENTIFY, bodies_of, is_a_body
from grammar.only_told import of_talk, only_tells, without_lent
from grammar.questions import ALL, TALKED, Limits, Question, Thing
from grammar.sticking import (
    circle_measured,
    kept_distance,
    kept_limits,
    kept_pieces,
    kept_stop,
    kept_values,
    piece_measured,
    ring_measured,
    same_pieces,
)
from grammar.telling import built
from grammar.whom import COMPARE, Meant, known_with, meant, points_back, side_by_side

# intents that need nothing from before once they are plainly asked
_FREE: Final = frozenset(
    ["definition", "out-of-scope", "identify-mount", "buy-plan", "list-fits", "look-alike", "hazard", "compare"]
)
_OF_BODY: Final = frozenset(["compare", "buy-plan"])
# what is asked anew where a follow-up only supposes something: 'what if I stop down', 'what if the ring is thinner'
_SUPPOSED: Final = frozenset(["chain", "focus-verdict", "macro-distance", "coverage", "depth-of-field", "exposure-nd"])
_MADE: Final = frozenset(["draw", "card"])  # they are made of the chain that was pointed at last
_ASIDE: Final = frozenset(["why", "identify-mount", "look-alike", "definition", "gear-setting"])
_ALIKE: Final = frozenset(["look-alike"])
_SHIMMED: Final = frozenset(["shim-calibration"])  # what closing down may save one from
_ITS: Final = frozenset(["the", "its"])
_TERM: Final = "definition"
_LIST: Final = "list-fits"
_CLOSE: Final = "macro-distance"
_PLACING: Final = frozenset(["chain", "focus-verdict", "diy-dimension", "buy-plan"])
_ASKING: Final = (
    "how",
    "which",
    "what",
    "can",
    "will",
    "why",
    "where",
    "how-many",
    "how-much",
    "how-close",
    "need-adapter",
)
_OF_LENGTHS: Final = frozenset(["numbers", "length", "zoom"])  # keys of lengths that turn out to be those of pieces
_WANTED: Final = frozenset(["magnification", "field"])  # what pieces are chosen for
_PLAIN: Final = 4.0  # the weight from which an intent is plainly asked


def leans(heard: Heard, before: Question) -> bool:
    """Whether the text leaves something out that the question before can give."""
    if before.intent in TALKED:
        return False
    cast, best = heard.cast, heard.weighed.best
    told = any(lens.ids or lens.focal_length_mm for lens in before.lenses)
    lens = any((part.has_mount or part.implied) and not (part.by_piece and told) for part in cast.lenses)
    if lens and any(part.has_mount for part in cast.bodies) and not points_back(heard, before):
        return False
    if added(heard, before) is not None:
        return True
    if (heard.tells("doubt") and not heard.tells("pair")) or ring_measured(heard, before) is not None:
        return True
    pointed = meant(heard, before)
    if pointed is not None and (pointed.told or best not in ("definition", "out-of-scope")):
        return True  # 'the C one': what is meant was spoken of before
    if best == IDENTIFY and before.lenses and _says_it(heard) and not heard.tells("focal"):
        return True  # 'how do I know that it is C': the lens spoken of
    if best == "card" and before.bodies and not cast.bodies:
        return True  # a card is of a lens on a body, however long the question
    plain = best is not None and heard.weighed.weight(best) >= _PLAIN
    if best == "list-fits" and lens and not heard.tells("body-mount"):
        return False  # 'where does a C-mount lens fit' asks for all bodies, not for the one of before
    if best == _TERM and plain:
        return _of_what_was_named(heard, before)
    if best == "out-of-scope" and plain:
        return False
    if best in _OF_BODY and not (lens and heard.tells("body")):
        return True  # 'M42 or FD, which is better': on the body of before; 'bellows or helicoid?': for its lens
    if best == "hazard" and not lens and (not heard.tells("focal") or of_talk(heard)):
        return True  # 'the lens weighs 900 g, is that safe', 'the 200 mm is heavy'
    if best == "list-fits" and not lens and not heard.tells("body-mount"):
        return True  # 'which other bodies take them'
    if best in _FREE and plain and (heard.tells("thing") or heard.tells("thread-said")):
        return False
    words = [token for token in heard.line.tokens if token.kind not in ("STOP", "MARK", "JOIN")]
    return not (plain and lens and len(words) > 6)


def _of_what_was_named(heard: Heard, before: Question) -> bool:
    """'what is the register' asks of the lens spoken of, 'what is a register' of the word."""
    if before.lens is None or not before.lens.ids or heard.cast.lenses or heard.cast.bodies:
        return False
    columns = {spoken.column for spoken in heard.line.spoken if spoken.kind == "term"}
    return any(
        token.kind == "DET" and token.value in _ITS and token.column + len(token.text) + 1 in columns
        for token in heard.line.tokens
    )


def follow(heard: Heard, before: Question) -> Question:
    """The question before with what the text says instead; `follows` is set."""
    heard = without_lent(heard, before)
    taken_back = _taken_back(heard, before)
    if taken_back is not None:
        return taken_back
    found, compared = meant(heard, before), side_by_side(heard, before)
    intent = COMPARE if compared else _intent(heard, before, found)
    ring = ring_measured(heard, before)
    intent = "focus-verdict" if ring is not None else intent
    circle = circle_measured(heard, before)
    intent = before.intent if circle is not None else intent
    if intent == IDENTIFY and found is not None and found.told:
        found = None  # 'how do I know if it is CS' tells nothing
    said = same_pieces(heard, built(heard, intent), before)
    if intent == _TERM and not (said.things or said.lenses or said.bodies or said.adapters):
        intent = _went_on(heard, before)  # 'so what is it'
        said = built(heard, intent)
    again = lengths_again(heard, before)
    unseated = is_unseated(before) and said.said("numbers") is not None
    drawn = again if again is not None else None if unseated else piece_measured(heard, before)
    if drawn is not None:
        rest = tuple(row for row in said.values if row[0] != "numbers")
        kept = said.lenses if before.lens is None else ()
        said, found = said.with_(lenses=kept, adapters=drawn, values=rest, number=None), None
    if again is not None:
        intent = _CLOSE if intent in _PLACING else intent
        others = tuple(row for row in said.values if row[0] not in _OF_LENGTHS)
        wanted = tuple(row for row in before.values if row[0] in _WANTED and len(again) > 1)
        said = said.with_(intent=intent, values=(*others, *wanted))
    if circle is not None:
        said, found = said.with_(lenses=(), values=(*said.values, ("circle", circle))), None
    lenses, (bodies, things) = _lenses_of(heard, said, before, found, compared), bodies_of(heard, said, before, found)
    more = added(heard, before)
    if more is not None:
        intent, (lenses, bodies) = PLAN, more
    said = flange_measured(said, before, heard)
    if ring is not None:
        rest = tuple(row for row in said.values if row[0] not in ("thread", "numbers"))
        said = said.with_(lenses=(), adapters=(ring,), values=rest)
    if intent == before.intent == _LIST and any(one.ids for one in lenses) and any(one.ids for one in bodies):
        intent = "chain"  # both are known now
    same_lens = _ids(lenses) == _ids(before.lenses)
    values = {**kept_values(intent, lenses, before, said), **dict(said.values)}
    pieces = said.adapters or kept_pieces(
        intent, same_lens, _same_mount(lenses, before.lenses), _same_mount(bodies, before.bodies), before
    )
    if intent in _PLACING and not heard.tells("infinity") and _is_close(said, before, pieces):
        intent = _CLOSE
        values = {**kept_values(intent, lenses, before, said), **dict(said.values)}
    without = (heard.tells("without-piece") or _without_it(heard)) and not said.adapters
    return replace(
        said,
        intent=intent,
        lenses=lenses,
        bodies=bodies,
        adapters=() if without else pieces,
        things=things,
        limits=kept_limits(said.limits, before.limits, intent == before.intent),
        f_number=said.f_number if said.f_number is not None else kept_stop(intent, same_lens, before),
        distance_mm=said.distance_mm if said.distance_mm is not None else kept_distance(intent, before),
        number=_number(said, before, intent, found),
        values=tuple(values.items()),
        feet=said.feet or (before.feet and not heard.tells("metres")),
        follows=True,
        known=found.known if found else known_with(before.known or before.lenses, lenses),
    )


def doubted(text: str, before: Question, topic: str | None) -> Question:
    """The answer before is asked for its certainty, or for its reasons where `topic` is None."""
    return before.with_(text=text, intent="why", topic=topic, number=before.number, values=(), things=(), follows=True)


def _taken_back(heard: Heard, before: Question) -> Question | None:
    """'scrap that': the question before the last; 'not the body, the lens': what was said of the one is the other's."""
    prior = before.prior
    if prior is None or not prior.lenses:
        return None
    alone = not any(part.has_mount for part in (*heard.cast.lenses, *heard.cast.bodies))
    if heard.tells("retract") and alone and heard.tells("short"):
        return prior.with_(text=heard.text, follows=True)
    if heard.tells("not-body") and alone and before.bodies and before.bodies != prior.bodies:
        lens = replace(prior.lenses[0], kind="mount", ids=before.bodies[0].ids)
        changed = before.with_(text=heard.text, lenses=(lens,), bodies=prior.bodies, follows=True)
        return changed.with_(known=known_with(before.known, (lens,)))
    if heard.tells("not-lens") and alone and before.lenses != prior.lenses and before.lenses[0].kind == "mount":
        body = Thing("mount", before.lenses[0].ids, before.lenses[0].words)
        return before.with_(text=heard.text, lenses=prior.lenses, bodies=(body,), follows=True)
    return None


def _intent(heard: Heard, before: Question, found: Meant | None) -> str:
    best = heard.weighed.best
    if heard.tells("sure") or heard.tells("doubt"):
        return "why" if not heard.tells("thing") or heard.tells("sure") else best or _went_on(heard, before)
    told = any(part.subject is not None for part in (*heard.cast.lenses, *heard.cast.bodies))
    if (told or (found is not None and found.told)) and not _asks(heard):
        # what was told of a thing puts the question of before anew
        return "chain" if before.intent in _ASIDE else before.intent
    if before.intent == COMPARE and found is not None and best in (None, COMPARE) and len(found.lenses) == 1:
        return "chain"  # the one of those that were set side by side
    if only_tells(heard, best) and (before.lenses or before.bodies) and before.intent not in _ASIDE:
        return before.intent
    supposed = heard.tells("what-if") and before.intent in _SUPPOSED
    return best if best is not None and not supposed else _went_on(heard, before)


def _asks(heard: Heard) -> bool:
    return heard.tells("asked") or any(heard.tells(cue) for cue in _ASKING)


def _is_close(said: Question, before: Question, pieces: tuple[Thing, ...]) -> bool:
    """Whether a magnification that is wanted makes it a matter of how close: 'and if I want 1:1', then 'which tube'."""
    if said.said("magnification") is not None:
        return True
    return before.said("magnification") is not None and any(piece.piece in DRAWN for piece in pieces)


def _lenses_of(
    heard: Heard, said: Question, before: Question, found: Meant | None, compared: tuple[Thing, ...]
) -> tuple[Thing, ...]:
    if compared:
        return compared
    if said.intent == IDENTIFY and before.lenses and not any(part.focal for part in heard.cast.lenses):
        return before.lenses if found is None or found.told else found.lenses  # the mounts named are those it may have
    if found is not None and said.intent not in _ALIKE:
        return found.lenses
    return _beside(said, before) if said.intent in _ALIKE else _lenses(said, before)


def _number(said: Question, before: Question, intent: str, found: Meant | None) -> int | None:
    if said.number is not None:
        return None if found is not None and not found.told else said.number
    return _kept_number(said, before) if intent in _MADE else None


def _same_mount(things: tuple[Thing, ...], before: tuple[Thing, ...]) -> bool:
    return [one.ids for one in things] == [one.ids for one in before]


def _ids(lenses: tuple[Thing, ...]) -> list[tuple[object, ...]]:
    return [(lens.ids, lens.focal_length_mm) for lens in lenses]


def _beside(said: Question, before: Question) -> tuple[Thing, ...]:
    """'same thread as C?' asks of that mount and of the one spoken of before."""
    old = before.lenses[:1]
    named = tuple(thing for thing in said.lenses if thing.ids)
    if len(named) != 1 or not old or not old[0].ids or old[0].ids == named[0].ids or len(named) != len(said.lenses):
        return _lenses(said, before)
    return (*old, *named)


def _kept_number(said: Question, before: Question) -> int | None:
    """'a card for it' after 'the second one' means the second; not where another lens, body or way is asked for."""
    other = said.lenses or said.bodies or said.adapters or said.limits != Limits() or said.said(ALL)
    return None if other else before.number


def _went_on(heard: Heard, before: Question) -> str:
    """What a fragment without an intent of its own goes on with: after a reason or a name, the chain it was about."""
    if before.sought is not None:
        return "chain"  # 'and the knot?' after all of one's lenses asks of that one
    amount = heard.tells("how-much") or heard.tells("how-many")
    if (
        before.intent in _SHIMMED
        and heard.readings.f_number is not None
        and before.lenses
        and before.bodies
        and not amount
    ):
        return "focus-verdict"  # 'or just shoot at f8' after how much to take off
    changed = heard.cast.bodies or heard.cast.pieces or heard.cast.without or heard.readings.limits
    return "chain" if before.intent in _ASIDE and changed else before.intent


def _lenses(said: Question, before: Question) -> tuple[Thing, ...]:
    if not said.lenses:
        return () if "lenses" in (said.said(ALL) or "") else before.lenses
    if len(said.lenses) > 1 and before.lenses and before.lenses[0].kind == "mount":
        old = before.lenses[0]
        if not any(lens.ids or lens.format for lens in said.lenses):
            return tuple(replace(lens, kind=old.kind, ids=old.ids) for lens in said.lenses)
    if len(said.lenses) == 1 and before.lenses:
        lens, old = said.lenses[0], before.lenses[0]
        if not lens.ids and not lens.format and lens.lens_kind in (None, old.lens_kind):
            if lens.focal_length_mm is None:
                traits = tuple(dict.fromkeys((*old.traits, *lens.traits)))
                return (replace(old, traits=traits, f_number=lens.f_number or old.f_number), *before.lenses[1:])
            if old.kind == "lens":
                return (lens,)  # a lens of one's own has its focal length: this is another
            return (replace(lens, kind=old.kind, ids=old.ids),)
        if lens.ids and lens.focal_length_mm is None and lens.lens_kind is None and not old.ids:
            # '50 mm f/1.8', then 'it is M42': the mount that was asked for
            return (replace(old, kind=lens.kind, ids=lens.ids), *before.lenses[1:]) if lens.kind == "mount" else (lens,)
        if lens.ids and lens.focal_length_mm is None and lens.lens_kind is None and old.kind == "mount":
            if is_a_body(lens, old, said, before):
                return before.lenses
            same_lens = replace(old, ids=lens.ids, kind=lens.kind, words=lens.words, column=lens.column)
            return (same_lens if lens.kind == "mount" and lens.ids != old.ids else lens,)
    return said.lenses


def _says_it(heard: Heard) -> bool:
    return any(token.kind == "VERB" and token.value == "it" for token in heard.line.tokens)


def _without_it(heard: Heard) -> bool:
    return any(token.kind == "PREP" and token.value == "without" for token in heard.line.tokens)
