"""What a follow-up asks: the first of a row of things that may be seen in it tells."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from engine.base.compact import compact
from grammar.hearing import Heard
from grammar.questions import Question
from grammar.turns.going_on import (
    ASIDE,
    IDENTIFY,
    OF_RING,
    OF_STOPS,
    PUT_RIGHT,
    asks,
    asks_remedy,
    ends_at,
    is_by_tubes,
    is_left_so,
    is_of_reach,
    is_remedy,
    is_to_be_seated,
    puts_tube,
    ranked_by,
    saved_by_stop,
    sized,
    went_on,
)
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

_CHAIN: Final = "chain"
_FOCUS: Final = "focus-verdict"
_SHIM: Final = "shim-calibration"
_CLOSE: Final = "macro-distance"
_WHY: Final = "why"
_HAZARD: Final = "hazard"
_MAKING: Final = "diy-dimension"
_EXPOSURE: Final = "exposure-nd"
_EQUIVALENT: Final = "crop-equivalent"

# what is asked anew where a follow-up only supposes something: 'what if I stop down', 'what if the ring is thinner'
_SUPPOSED: Final = frozenset([_CHAIN, _FOCUS, _CLOSE, "coverage", "depth-of-field", _EXPOSURE])
_WAYS: Final = frozenset([_CHAIN, _FOCUS])
_OF_PICTURE: Final = frozenset(["coverage", _EQUIVALENT, _EXPOSURE, "depth-of-field", SETTING])
_TROUBLED: Final = frozenset([None, _SHIM, "out-of-scope", _HAZARD, SETTING])
_OF_LIGHT: Final = frozenset([_EXPOSURE, SETTING, "depth-of-field"])  # where another body makes no difference
_CLOSER: Final = ("closer", "nearer")  # how the words end that ask for more than there is
_PLAIN: Final = 5.0  # the weight from which something else is plainly asked beside what is told
_TELLING: Final = frozenset([_CHAIN, IDENTIFY, "look-alike", "definition"])


@compact
class Turn:
    """What was heard, the question before it, and which lens is meant. `best`: what its own words ask."""

    heard: Heard
    before: Question
    found: Meant | None
    best: str | None

    @property
    def was(self) -> str:
        """What was asked before."""
        return self.before.intent

    @property
    def was_aside(self) -> bool:
        """Whether that was only asked by the way: what it is, why it is so."""
        return self.was in ASIDE

    @property
    def names_things(self) -> bool:
        cast = self.heard.cast
        return bool(cast.lenses or cast.bodies or cast.pieces or cast.frames)

    def tells(self, *cues: str) -> bool:
        return any(map(self.heard.tells, cues))


def intent_of(heard: Heard, before: Question, found: Meant | None) -> str:
    """What is asked: by the first of the row that is seen in it; else what its own words ask, or was asked before."""
    turn = Turn(heard, before, found, heard.weighed.best)
    for is_seen, asked in _ROW:
        if is_seen(turn):
            return asked if isinstance(asked, str) else asked(turn)
    supposed = turn.tells("what-if") and turn.was in _SUPPOSED
    return turn.best if turn.best is not None and not supposed else went_on(heard, before)


# what is asked then, where it is not the same whatever was asked before


def _as_before(turn: Turn) -> str:
    return turn.was


def _as_before_of_things(turn: Turn) -> str:
    """What was asked before, or how it is put on where that was only asked by the way."""
    return _CHAIN if turn.was_aside else turn.was


def _as_doubted(turn: Turn) -> str:
    if not turn.tells("thing") or turn.tells("sure"):
        return _WHY
    return turn.best or went_on(turn.heard, turn.before)


def _as_same_matter(turn: Turn) -> str:
    return same_matter(turn.heard, turn.before, ASIDE) or turn.was


def _as_reach(turn: Turn) -> str:
    return turn.was if turn.was == _HAZARD else _MAKING


def _as_one_more(turn: Turn) -> str:
    seat = bool(turn.heard.cast.bodies) and turn.was in _OF_LIGHT
    return _CHAIN if turn.was_aside or seat else turn.was


def _as_pair(turn: Turn) -> str:
    return _FOCUS if turn.was == _SHIM else turn.was


def _as_without_shim(turn: Turn) -> str:
    ranked = turn.heard.weighed.ranked
    return ranked[0][0] if ranked else turn.was


# what may be seen in a follow-up


def _of(is_seen: Callable[[Heard, Question], bool]) -> Callable[[Turn], bool]:
    """Of what is heard, after the question before."""
    return lambda turn: is_seen(turn.heard, turn.before)


def _stops_short(turn: Turn) -> bool:
    """'it stops at 60 cm' after a lens on a body."""
    away = turn.heard.readings.distance_mm
    return turn.was in _WAYS and turn.tells("stops-at") and away is not None and not asks(turn.heard)


def _wants_it_closer(turn: Turn) -> bool:
    """'and if I want it closer', 'how do i get it closer': it shall come closer than it does."""
    cast, tells = turn.heard.cast, [cue for cue in turn.heard.cues if cue.tells == "how-close"]
    closer = any(turn.heard.text[cue.column - 1 : cue.end].casefold().endswith(_CLOSER) for cue in tells)
    alone = not (cast.lenses or cast.bodies or cast.pieces or turn.heard.readings.values)
    wanted = turn.best == _CLOSE or (closer and alone)
    return turn.was in _WAYS and bool(tells) and wanted and not cast.pieces


def _picks_stock(turn: Turn) -> bool:
    """'which stock should i buy' after how thick a shim must be."""
    return turn.was == _SHIM and turn.tells("shim-stock")


def _corrects(turn: Turn) -> bool:
    """'no, i meant the one with 1 mm pitch'."""
    return turn.tells("correct") and not asks(turn.heard) and not turn.was_aside


def _doubts(turn: Turn) -> bool:
    return turn.tells("sure", "doubt")


def _is_same_matter(turn: Turn) -> bool:
    return same_matter(turn.heard, turn.before, ASIDE) is not None


def _wants_an_order(turn: Turn) -> bool:
    return ranked_by(turn.heard) is not None


def _tells_of_a_thing(turn: Turn) -> bool:
    """What was told of a thing puts the question of before anew."""
    heard, best, found = turn.heard, turn.best, turn.found
    told = any(part.subject is not None for part in (*heard.cast.lenses, *heard.cast.bodies))
    plainly = best is not None and best not in _TELLING and heard.weighed.weight(best) >= _PLAIN
    return (told or (found is not None and found.told)) and not asks(heard) and not plainly


def _picks_one_compared(turn: Turn) -> bool:
    """The one of those that were set side by side."""
    found = turn.found
    return turn.was == COMPARE and found is not None and turn.best in (None, COMPARE) and len(found.lenses) == 1


def _sets_a_limit(turn: Turn) -> bool:
    """'no glass' after a list of what fits."""
    heard = turn.heard
    return bool(heard.readings.limits) and not turn.names_things and not heard.cues and not turn.was_aside


def _is_to_be_seated(turn: Turn) -> bool:
    return turn.best == IDENTIFY and is_to_be_seated(turn.heard)


def _wants_it_mended(turn: Turn) -> bool:
    """'how do i fix it' after a lens on a body."""
    troubled = turn.tells("remedy") and turn.was in PUT_RIGHT and turn.best in _TROUBLED
    return troubled and not (turn.names_things or sized(turn.before))


def _takes_it_off(turn: Turn) -> bool:
    """'so i file how much' after by how much a ring is off."""
    return turn.was == _SHIM and turn.tells("take-off") and not turn.names_things


def _puts_a_tube(turn: Turn) -> bool:
    return turn.was == _SHIM and turn.best in (None, turn.was, _CLOSE) and puts_tube(turn.heard)


def _rather_stops_down(turn: Turn) -> bool:
    """'or stop down to what' after an exposure."""
    return turn.was == _EXPOSURE and turn.tells("which-stop") and turn.best in OF_STOPS and not turn.names_things


def _sets_one_more_beside(turn: Turn) -> bool:
    return turn.best == COMPARE and is_one_more(turn.heard, turn.before)


def _is_of_another(turn: Turn) -> bool:
    return is_of_another(turn.heard, turn.before) or (not turn.was_aside and only_swaps(turn.heard, turn.before))


def _sets_for_another(turn: Turn) -> bool:
    """'with a 2x doubler' after the number that the stabiliser wants."""
    return turn.was == SETTING and (only_glass(turn.heard) or only_frame(turn.heard, turn.before))


def _is_saved_by_stop(turn: Turn) -> bool:
    return saved_by_stop(turn.heard, turn.best, turn.before)


def _takes_off_a_measured_ring(turn: Turn) -> bool:
    """'so I take how much off' after a ring that was measured."""
    return turn.best == _MAKING and turn.tells("how-much") and sized(turn.before) and turn.was in OF_RING


def _is_by_tubes(turn: Turn) -> bool:
    return turn.best == _SHIM and is_by_tubes(turn.heard, turn.before)


def _measures_the_ring(turn: Turn) -> bool:
    """'the ring is 0.45 actually' after what the picture is like."""
    measured = any(part.piece == "adapter" and part.thickness for part in turn.heard.cast.pieces)
    return turn.best is None and measured and turn.was in _OF_PICTURE


def _only_tells(turn: Turn) -> bool:
    before = turn.before
    return only_tells(turn.heard, turn.best) and bool(before.lenses or before.bodies) and not turn.was_aside


# what may be seen, and what is asked then; the first that is seen tells
_ROW: Final[tuple[tuple[Callable[[Turn], bool], str | Callable[[Turn], str]], ...]] = (
    (_of(is_remedy), _as_before),
    (_stops_short, _SHIM),
    (_wants_it_closer, _CLOSE),
    (_picks_stock, _as_before),
    (_corrects, _as_before),
    (_doubts, _as_doubted),
    (_of(is_left_so), _WHY),
    (_is_same_matter, _as_same_matter),
    (_wants_an_order, COMPARE),
    (_tells_of_a_thing, _as_before_of_things),
    (_picks_one_compared, _CHAIN),
    (_sets_a_limit, _as_before),
    (_is_to_be_seated, _CHAIN),
    (_wants_it_mended, _CHAIN),
    (_of(asks_remedy), _CHAIN),
    (_takes_it_off, _SHIM),
    (_of(ends_at), _SHIM),
    (_puts_a_tube, _CLOSE),
    (_rather_stops_down, _as_before),
    (_of(is_of_reach), _as_reach),
    (_sets_one_more_beside, _as_one_more),
    (_of(extends), _EQUIVALENT),
    (_of(puts_between), _CLOSE),
    (_of(changes_one_part), _as_before),
    (_of(is_one_compared), _CHAIN),
    (_is_of_another, _as_before),
    (_sets_for_another, _as_before),
    (_of(names_the_pair), _as_pair),
    (_is_saved_by_stop, _FOCUS),
    (_takes_off_a_measured_ring, _SHIM),
    (_is_by_tubes, _as_without_shim),
    (_measures_the_ring, _FOCUS),
    (_of(is_on_another_frame), _as_before),
    (_only_tells, _as_before),
)
