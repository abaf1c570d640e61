"""What a follow-up asks: what its own words do, or what the question before it asked."""

from __future__ import annotations

from typing import Final

from grammar.hearing import Heard
from grammar.numbers.motifs import MOTIF, SIDES
from grammar.questions import Question, Thing
from grammar.things.casting import DRAWN
from grammar.turns.of_another import (
    SETTING,
    extends,
    is_of_another,
    is_on_another_frame,
    is_one_more,
    only_frame,
    only_glass,
    only_swaps,
)
from grammar.turns.one_part import changes_one_part
from grammar.turns.only_told import names_the_pair, only_tells
from grammar.turns.put_between import puts_between
from grammar.turns.same_matter import is_one_compared, same_matter
from grammar.turns.whom import COMPARE, Meant

LEFT: Final = "left so"  # the topic of a reason that asks what comes of leaving an error in
_RANK: Final = "rank:"  # before the topic of an order that is asked for
IDENTIFY: Final = "identify-mount"
ASIDE: Final = frozenset(["why", "identify-mount", "look-alike", "definition", "gear-setting"])
# what is asked anew where a follow-up only supposes something: 'what if I stop down', 'what if the ring is thinner'
_SUPPOSED: Final = frozenset(["chain", "focus-verdict", "macro-distance", "coverage", "depth-of-field", "exposure-nd"])

_OF_RING: Final = frozenset(["chain", "focus-verdict", "shim-calibration", "diy-dimension"])
_OF_STOPS: Final = frozenset(
    [None, "definition", "depth-of-field", "focus-verdict", "chain", "coverage", "exposure-nd", "compare"]
)
_OF_SHIM: Final = frozenset(["shim-calibration"])
_OF_PICTURE: Final = frozenset(["coverage", "crop-equivalent", "exposure-nd", "depth-of-field", "gear-setting"])
_PUT_RIGHT: Final = frozenset(["chain", "focus-verdict", "macro-distance"])
_TROUBLED: Final = frozenset([None, "shim-calibration", "out-of-scope", "hazard", "gear-setting"])
_OF_LIGHT: Final = frozenset(
    ["exposure-nd", "gear-setting", "depth-of-field"]
)  # where another body makes no difference
_PLAIN: Final = 5.0  # the weight from which something else is plainly asked beside what is told
_TELLING: Final = frozenset(["chain", "identify-mount", "look-alike", "definition"])
_NEAREST: Final = "nearest"  # the measure of where a lens ends, near or far
_FAR_MM: Final = 3000.0  # no lens that focuses closer only ends nearer
_ENDS: Final = frozenset(["macro-distance", "focus-verdict"])
_CLOSE: Final = "macro-distance"
_THICKEST_SHIM: Final = 3.0  # mm
_SHIMMED: Final = frozenset(["shim-calibration"])  # what closing down may save one from

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

_WAYS: Final = frozenset(["chain", "focus-verdict"])
WANTED: Final = frozenset(["magnification", "field", MOTIF, SIDES])  # what pieces are chosen for


def intent_of(heard: Heard, before: Question, found: Meant | None) -> str:
    best = heard.weighed.best
    if _is_remedy(heard, before):
        return before.intent
    if (
        before.intent in _WAYS
        and heard.tells("stops-at")
        and heard.readings.distance_mm is not None
        and not _asks(heard)
    ):
        return "shim-calibration"  # 'it stops at 60 cm'
    if before.intent in _WAYS and best == _CLOSE and heard.tells("how-close") and not heard.cast.pieces:
        return _CLOSE  # 'and if I want it closer'
    if heard.tells("correct") and not _asks(heard) and before.intent not in ASIDE:
        return before.intent  # 'no, i meant the one with 1 mm pitch'
    if heard.tells("sure") or heard.tells("doubt"):
        return "why" if not heard.tells("thing") or heard.tells("sure") else best or went_on(heard, before)
    if is_left_so(heard, before):
        return "why"
    same = same_matter(heard, before, ASIDE)
    if same is not None:
        return same
    if ranked_by(heard) is not None:
        return COMPARE
    told = any(part.subject is not None for part in (*heard.cast.lenses, *heard.cast.bodies))
    plainly = best is not None and best not in _TELLING and heard.weighed.weight(best) >= _PLAIN
    if (told or (found is not None and found.told)) and not _asks(heard) and not plainly:
        # what was told of a thing puts the question of before anew
        return "chain" if before.intent in ASIDE else before.intent
    if before.intent == COMPARE and found is not None and best in (None, COMPARE) and len(found.lenses) == 1:
        return "chain"  # the one of those that were set side by side
    things = (*heard.cast.lenses, *heard.cast.bodies, *heard.cast.pieces, *heard.cast.frames)
    if heard.readings.limits and not things and not heard.cues and before.intent not in ASIDE:
        return before.intent  # 'no glass' after a list of what fits
    if best == IDENTIFY and _is_to_be_seated(heard):
        return "chain"
    if heard.tells("remedy") and before.intent in _PUT_RIGHT and best in _TROUBLED and not (things or _sized(before)):
        return "chain"  # 'how do i fix it' after a lens on a body
    if asks_remedy(heard, before):
        return "chain"
    off = before.intent == "shim-calibration" and heard.tells("take-off") and not things
    if off or _ends_at(heard, before):
        return "shim-calibration"  # 'so i file how much'
    if before.intent in _SHIMMED and best in (None, before.intent, _CLOSE) and _puts_tube(heard):
        return _CLOSE
    if before.intent == "exposure-nd" and heard.tells("which-stop") and best in _OF_STOPS and not things:
        return before.intent  # 'or stop down to what'
    if _is_of_reach(heard, before):
        return before.intent if before.intent == "hazard" else "diy-dimension"
    if best == COMPARE and is_one_more(heard, before):
        seat = heard.cast.bodies and before.intent in _OF_LIGHT
        return "chain" if before.intent in ASIDE or seat else before.intent
    if extends(heard, before):
        return "crop-equivalent"
    if puts_between(heard, before):
        return _CLOSE
    if changes_one_part(heard, before):
        return before.intent
    if is_one_compared(heard, before):
        return "chain"
    if is_of_another(heard, before) or (before.intent not in ASIDE and only_swaps(heard, before)):
        return before.intent
    if before.intent == SETTING and (only_glass(heard) or only_frame(heard, before)):
        return before.intent  # 'with a 2x doubler' after the number that the stabiliser wants
    if names_the_pair(heard, before):
        return "focus-verdict" if before.intent == "shim-calibration" else before.intent
    if _saved_by_stop(heard, best, before):
        return "focus-verdict"
    if best == "diy-dimension" and heard.tells("how-much") and _sized(before) and before.intent in _OF_RING:
        return "shim-calibration"  # 'so I take how much off' after a ring that was measured
    if best in _OF_SHIM and _is_by_tubes(heard, before):
        return heard.weighed.ranked[0][0] if heard.weighed.ranked else before.intent
    measured = any(part.piece == "adapter" and part.thickness for part in heard.cast.pieces)
    if best is None and measured and before.intent in _OF_PICTURE:
        return "focus-verdict"  # 'the ring is 0.45 actually'
    if is_on_another_frame(heard, before):
        return before.intent
    if only_tells(heard, best) and (before.lenses or before.bodies) and before.intent not in ASIDE:
        return before.intent
    supposed = heard.tells("what-if") and before.intent in _SUPPOSED
    return best if best is not None and not supposed else went_on(heard, before)


def asks_remedy(heard: Heard, before: Question) -> bool:
    """'how do i get infinity' after a lens on a body: what would put that chain right."""
    named = heard.cast.lenses or heard.cast.bodies or heard.cast.pieces or heard.readings.values
    asked = heard.tells("how") and heard.tells("infinity") and heard.tells("get") and not heard.tells("how-far")
    pair = any(lens.ids for lens in before.lenses) and any(body.ids for body in before.bodies)
    return asked and pair and not named and before.intent in _PUT_RIGHT


def _sized(before: Question) -> bool:
    """Whether a ring of before is told by its length, or by what it is off: that is to be shimmed or taken off."""
    return before.said("thickness") is not None or any(
        one.piece == "adapter" and one.thickness_mm is not None for one in before.adapters
    )


def _ends_at(heard: Heard, before: Question) -> bool:
    """'mine stops at 40 m' after a lens on a body: far away that is no near end, but how far short infinity lies."""
    said = any(token.kind == "MEASURE" and token.value == _NEAREST for token in heard.line.tokens)
    far = (heard.readings.distance_mm or 0.0) >= _FAR_MM
    cast = heard.cast
    others = cast.lenses or cast.bodies or cast.pieces or heard.readings.f_number is not None
    focal = before.lens is not None and before.lens.focal_length_mm is not None
    asks = heard.tells("how-close") or heard.tells("macro") or heard.tells("dof")
    return said and far and focal and not others and not asks and before.intent in _OF_RING


def _puts_tube(heard: Heard) -> bool:
    """'and close up with a 20 mm tube' after a shim: what is so long sets nothing right, it brings the lens closer."""
    lengths = [part.thickness for part in heard.cast.pieces if part.piece in DRAWN and part.thickness is not None]
    return any(length[1] > _THICKEST_SHIM for length in lengths)


def _is_remedy(heard: Heard, before: Question) -> bool:
    """'ok, a dark ND on it then' after a danger: whether that makes it safe, told as if it did."""
    told = any(not part.is_bare for part in (*heard.cast.lenses, *heard.cast.bodies))
    remedied = bool(heard.cast.pieces) or "factor" in heard.readings.values or heard.tells("nd")
    return before.intent == "hazard" and remedied and not told and not _asks(heard)


def _is_of_reach(heard: Heard, before: Question) -> bool:
    """'how far off the sensor is that' after how far the rear stands out: what is left before the sensor."""
    things = (*heard.cast.lenses, *heard.cast.bodies, *heard.cast.pieces)
    to_sensor = any(token.kind == "FRAME" for token in heard.line.tokens) and not heard.tells("coverage")
    asked = any(heard.tells(cue) for cue in ("held-at", "how-far", "how-close", "how-much"))
    return before.said("rear_reach") is not None and to_sensor and asked and not things


def _is_to_be_seated(heard: Heard) -> bool:
    """'61 mm to the image, what goes between it and an E': a distance told beside a body is to be filled, not named."""
    told = "flange_to_image" in heard.readings.values
    return told and any(part.has_mount for part in heard.cast.bodies) and not heard.tells("identify")


def ranked_by(heard: Heard) -> str | None:
    """'which is thinner', 'cheapest of the three': by what the ways just told are ordered; None where it asks else."""
    ranks = [cue.tells.removeprefix(_RANK) for cue in heard.cues if cue.tells.startswith(_RANK)]
    cast = heard.cast
    named = (*cast.lenses, *cast.bodies, *(one for one in cast.pieces if not one.is_bare))
    several = (
        heard.tells("which")
        or heard.tells("better")
        or heard.tells("pick:all")
        or heard.tells("pick:both")
        or heard.tells("what-is")
    )
    told = heard.readings.values.keys() - {"numbers"} or heard.readings.distance_mm is not None
    return ranks[0] if ranks and several and not (named or told) else None


def is_left_so(heard: Heard, before: Question) -> bool:
    """'does it matter if I leave it' after by how much a ring is off: what comes of it, where no more is told."""
    told = heard.readings.f_number is not None or heard.readings.values or heard.cast.lenses or heard.cast.pieces
    left = heard.tells("left-so") or (heard.tells("good") and heard.tells("brief"))  # 'is that worth it'
    return before.intent in _SHIMMED and left and not told and not heard.tells("which-stop")


def _asks(heard: Heard) -> bool:
    return heard.tells("asked") or any(heard.tells(cue) for cue in _ASKING)


def _is_by_tubes(heard: Heard, before: Question) -> bool:
    """Whether tubes stand between and no word is said of a shim: 'same tubes with the 45'."""
    tubes = any(one.piece in DRAWN and one.thickness_mm is not None for one in before.adapters)
    return tubes and before.intent not in _OF_SHIM and heard.weighed.weight("shim-calibration") <= 0


def _saved_by_stop(heard: Heard, best: str | None, before: Question) -> bool:
    """'f4 enough?', 'from what stop' after a ring that is not as long as it should be: whether that forgives it."""
    if any(part.focal for part in heard.cast.lenses) and not heard.tells("which-stop"):
        return False  # 'and a 135 f/2.8?' is another lens, and asks of no stop
    off = _sized(before)
    measured = before.distance_mm is not None or before.said("mark") is not None  # where it ends tells by how much
    off = off or (before.intent in _SHIMMED and measured)
    told = heard.readings.f_number is not None or any(part.f_number and not part.focal for part in heard.cast.lenses)
    asked = heard.tells("which-stop") or heard.tells("f-stop") or told
    leant = best in _OF_SHIM and heard.weighed.weight("shim-calibration") <= 0
    other = heard.tells("dof") or heard.tells("exposure") or heard.tells("nd")
    return off and before.intent in _OF_RING and asked and not other and (best in _OF_STOPS or leant)


def is_close(said: Question, before: Question, pieces: tuple[Thing, ...]) -> bool:
    """Whether a magnification that is wanted makes it a matter of how close: 'and if I want 1:1', then 'which tube'."""
    if said.said("magnification") is not None:
        return True
    return before.said("magnification") is not None and any(piece.piece in DRAWN for piece in pieces)


def went_on(heard: Heard, before: Question) -> str:
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
    if heard.tells("remedy") and before.intent in _ENDS and before.lenses and before.bodies:
        return "chain"  # 'would 18.9 fix it' after what a ring makes of the near end
    changed = heard.cast.bodies or heard.cast.pieces or heard.cast.without or heard.readings.limits
    return "chain" if before.intent in ASIDE and changed else before.intent
