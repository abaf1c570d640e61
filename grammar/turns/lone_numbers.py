"""A number alone in a talk: of what it is, told by the numbers of before that it may stand for.

'50?' after a 28 mm lens is another lens, '21 then' after a 10 mm tube another tube, 'at 4' after f/2 a stop: it takes
the place of the one that it is nearest to in ratio, among those that it may be by its size. What it is of is then
written beside it, and the line is read as if it had been said.
"""

from __future__ import annotations

from math import log
from typing import Final

from engine.base.compact import replace
from engine.base.units import MM_PER_METRE
from grammar.hearing import Heard, hear
from grammar.intents import Weighed
from grammar.kinds import COVERAGE, MACRO_DISTANCE
from grammar.questions import OFF, Question
from grammar.things.casting import OPTICAL
from grammar.things.casting import SPACER as TUBE_PIECE
from grammar.things.standins import stands_in
from grammar.turns import number_roles as roles
from grammar.turns.asked_number import by_what_was_asked
from grammar.turns.number_roles import IMAGE, LENS, ON_AGAIN, RING, ROLES, STOP, TUBE, Role, numbers_told
from grammar.turns.set_between import drawn_to, is_set
from grammar.turns.spans import span_of
from grammar.turns.tubes_added import adds
from grammar.words.groups import DENIAL, EVERYTHING, PUT_RIGHT
from grammar.words.lexicon import Lexicon
from grammar.words.tokens import Token

_PASSED: Final = frozenset(["FILLER", "VERB", "DET", "MARK", "STOP", "CUE", "JOIN", "PREP", "WHEN"])
_IDLE: Final = frozenset(
    ["ok", "right", "will", "can", "sure", "means", "what-if", "what", "it-is", "brief", "again", "adding", "engraved",
     "estimate", "remedy", "calipers", "how-big", "how", "same",
     "correct", "instead"]
)  # fmt: skip
_PUT_FOR: Final = [["NUMBER", kind, "NUMBER"] for kind in ("CUE", "VERB", "MEASURE")]
_INSTEAD: Final = frozenset(["nominal", "not"])  # values of the words by which a number stands for another
_SHORT: Final = 12.0  # mm, from which a whole number may as well be a focal length
_THIN: Final = 3.0  # mm, of what is put under a lens to set it right
_MADE_LIKE: Final = 0.25  # by logarithm: so near is a ring to the one of before that it may stand for
_LIKELY: Final = 0.8  # how much nearer, by logarithm, a number is to what it is usual for
_NAMED: Final = 0.5  # and what an article before it makes of it
_FAR: Final = 3.0  # by logarithm: what differs twentyfold is hardly the same told anew
_BETWEEN: Final = "between"
_CUT: Final = "cut"  # the cue of what is to be made
_PUT_IN: Final = "put-in"
_THAT: Final = frozenset(["it", "that", "this"])
_SPEED: Final = "iso"  # value of the words for it
_SET_AT: Final = frozenset(["stop", "distance", "mark", IMAGE])  # what 'at' may stand before
_MEASURED: Final = frozenset(["ring", "tube", "flange_to_image", "circle", "rear_reach", "layer"])
_NO_THINGS: Final = frozenset(
    ["iso", "frame_rate", "distance", "mark", "magnification"]
)  # no article stands before one
_OF_LENS: Final = frozenset(["circle", "flange_to_image", "rear_reach"])
_REMADE_MM: Final = 1.0  # by so much a ring may come out other than the one of before
_BETTER: Final = "better"
_HELD: Final = "held"  # the cue of what one has
_HELICOID: Final = "helicoid"
_FAR_AWAY: Final = "distance"


def spoken_out(heard: Heard, before: Question, lexicon: Lexicon) -> Heard:
    """What was heard, read anew with the unit of its one number; the same where it holds more or already tells it."""
    size = _size(heard, before)
    if size is not None:
        return replace(_with(size, f"m = {size.numbers[0]:g}", heard, before, lexicon), weighed=Weighed((), {}))
    mark = _mark_again(heard, before)
    if mark is not None:
        return replace(_with(*mark, heard, before, lexicon), weighed=Weighed((), {}))
    ring = roles.ring_near(heard, before)
    if ring is not None:
        return _with(ring, f"{ring.numbers[0]:g} mm ring", heard, before, lexicon)
    token = _alone(heard, before)
    put = _put_for(heard, before) if token is None else None
    if put is not None:
        return replace(_with(*put, heard, before, lexicon), weighed=Weighed((), {}))
    if token is None:
        told = _answered_first(heard, before)
        if told is not None:
            return _with(*told, heard, before, lexicon)
        drawn = drawn_to(heard, before)
        return _with(*drawn[:2], heard, before, lexicon, drawn[2]) if drawn is not None else heard
    held = not is_set(token, heard) and roles.is_one_of_several(token.numbers[0], before)  # before what was asked for
    says = (None if held else by_what_was_asked(token, heard, before)) or _nearest(token, heard, before)
    if says is None:
        drawn = drawn_to(heard, before)
        return _with(*drawn[:2], heard, before, lexicon, drawn[2]) if drawn is not None else heard
    again = _with(token, says, heard, before, lexicon)
    return again if heard.tells("how-big") else replace(again, weighed=Weighed((), {}))  # nothing else is asked anew


def _size(heard: Heard, before: Question) -> Token | None:
    """'0.4x' where a magnification was told and no glass has a factor: another magnification."""
    rest = [token for token in heard.line.tokens if token.kind not in _PASSED]
    factors = any(one.piece in OPTICAL for one in before.adapters)
    alone = len(rest) == 1 and rest[0].kind == "TIMES" and all(cue.tells in _IDLE for cue in heard.cues)
    return rest[0] if alone and not factors and before.said("magnification") is not None else None


def _mark_again(heard: Heard, before: Question) -> tuple[Token, str] | None:
    """'sorry, 6 m it is' where a mark of the scale was told, and no distance: another mark."""
    rest = [token for token in heard.line.tokens if token.kind not in _PASSED]
    if len(rest) != 1 or rest[0].kind != "LENGTH" or rest[0].unit not in ("m", "cm", "ft"):
        return None
    if before.said("mark") is None or before.distance_mm is not None or any(c.tells not in _IDLE for c in heard.cues):
        return None
    return rest[0], f"{rest[0].numbers[0] / MM_PER_METRE:g} m mark"


def _with(token: Token, says: str, heard: Heard, before: Question, lexicon: Lexicon, at: Token | None = None) -> Heard:
    """The line heard anew with a number, and what stands before it from `at`, written out; as typed in all else."""
    start = (at or token).column - 1
    led = heard.text[:start]
    denied = DENIAL in token.listed.of(led.strip(" ,.-"))  # 'no 2.0' puts a number right, and leaves nothing away
    text = ("" if denied else led) + says + heard.text[token.end :]
    return hear(text, lexicon, before.intent).as_typed(heard)


def _put_for(heard: Heard, before: Question) -> tuple[Token, str] | None:
    """'28 instead of 50', '28 not 50' after a 50 mm lens: the first stands for the other, and is of what that is of."""
    rest = [token for token in heard.line.tokens if token.kind not in _PASSED or token.value in _INSTEAD]
    rest = [token for token in rest if (token.kind, token.text) != ("LETTER", "a")]
    if [token.kind for token in rest] not in _PUT_FOR or rest[1].value not in _INSTEAD:
        return None  # '48 to the image, it says 50' puts nothing in the place of another
    one, other = rest[0], rest[2].numbers[0]
    told = (*numbers_told(before), *((LENS, lens.focal_length_mm) for lens in before.lenses[1:]))
    role = next((name for name, value in told if value == other), None)
    says = next((row.says for row in ROLES if row.name == role and row.fits(one.numbers[0])), None)
    if says is None or other == one.numbers[0]:
        return None
    whole = replace(one, end=rest[2].end)  # what it stands for is told no more
    return whole, says.format(f"{one.numbers[0]:g}")


def _answered_first(heard: Heard, before: Question) -> tuple[Token, str] | None:
    """'48, and it has no focus ring' where its flange to image was asked for: that number, and then more is told."""
    tokens = [token for token in heard.line.tokens if token.kind not in ("FILLER", "DET", "VERB")]
    numbers = [token for token in heard.line.tokens if token.numbers]
    if len(tokens) < 2 or len(numbers) != 1 or tokens[0] is not numbers[0] or tokens[1].kind not in ("JOIN", "STOP"):
        return None
    token, wanted = tokens[0], before.wants.split()
    if token.kind not in ("NUMBER", "LENGTH") or (token.kind == "LENGTH" and token.unit != "mm") or "?" in heard.text:
        return None
    asked = (role for role in ROLES if role.name in wanted[:1] and role.metric and role.fits(token.numbers[0]))
    return next(((token, role.says.format(f"{token.numbers[0]:g}")) for role in asked), None)


def _alone(heard: Heard, before: Question) -> Token | None:
    """The one number of a line that tells nothing else; 'the 2.8 lens' is still one."""
    rest = [token for token in heard.line.tokens if token.kind not in _PASSED]
    if len(rest) > 1 and stands_in(rest[-1]) and [one.kind for one in rest[-2:-1]] == ["LENGTH"]:
        rest = rest[-2:-1] if all(one.text == "a" for one in rest[:-2]) else rest  # 'a 3 mm one'
    if len(rest) > 2 and rest[0].kind == "MEASURE" and rest[0].value == "own":
        rest = rest[1:]  # 'mine reads 30'
    made = (
        len(rest) == 2
        and _is_made_so(rest[0], heard)
        and sum(one.thickness_mm is not None for one in before.adapters) < 2
    )
    if len(rest) == 2 and (_is_measured(rest[0]) or made):
        rest = rest[1:]
    if len(rest) == 2 and rest[1].kind == "LENS":
        rest = rest[:1]
    if len(rest) != 1 or rest[0].kind not in ("NUMBER", "LENGTH"):
        return None
    counts = rest[0].numbers[0] <= roles.MOST_COUNTED
    if (heard.tells("pick:all") and counts) or any(token.value in (_SPEED, _BETWEEN) for token in heard.line.tokens):
        return None  # 'two of them'; '100 asa', '5 mm between' tell of what it is
    if rest[0].text.isalpha() and not roles.may_be_tube(rest[0].numbers[0], before):
        return None
    far = before.distance_mm is not None and is_set(rest[0], heard)
    if far and all(cue.tells in _IDLE or cue.tells == "focus" for cue in heard.cues):
        return rest[0]  # 'focus at 4' after 3 m
    idle = _IDLE | {_CUT} if made else _IDLE | {ON_AGAIN, _PUT_IN} if before.stood else _IDLE
    idle = idle | {_BETTER} if before.intent == COVERAGE else idle  # 'would 25 be better'
    idle = idle | {_HELD} if roles.wants_tube(before) else idle  # 'I have only got 65'
    if any(cue.tells not in idle for cue in heard.cues) or (rest[0].kind == "LENGTH" and rest[0].unit != "mm"):
        return None
    return rest[0]


def _is_made_so(token: Token, heard: Heard) -> bool:
    """'make it 35 mm', 'make that 25': said of what is talked about, and no sum of pieces."""
    that = any(one.text.casefold() in _THAT for one in heard.line.tokens)
    return PUT_RIGHT in token.groups or (token.kind == "MEASURE" and token.value == "total" and that)


def _is_measured(token: Token) -> bool:
    """'i measured 20': a number of what can be measured."""
    return token.kind == "MEASURE" and token.value == "size"


def _nearest(token: Token, heard: Heard, before: Question) -> str | None:
    number = token.numbers[0]
    if not is_set(token, heard) and roles.is_one_of_several(number, before):
        return f"{number:g} mm extension tube"
    old = dict(numbers_told(before))
    if is_set(token, heard):
        stands = _SET_AT | ({"flange_to_image"} if before.intent == MACRO_DISTANCE else frozenset())  # 'and at 90'
        old = {role: value for role, value in old.items() if role in stands or _comes_out_at(role, number, value)}
        if _FAR_AWAY in old and heard.tells("focus"):
            old = {_FAR_AWAY: old[_FAR_AWAY]}  # 'focus at 4'
        if _FAR_AWAY in old and token.text.isdigit() and number not in roles.WHOLE_STOPS:
            old.pop(STOP, None)  # 'and at 5' after 3 m
    if heard.tells("engraved"):
        old = {role: value for role, value in old.items() if role in (LENS, STOP)}  # 'the rim says 63'
    more = adds(heard)
    if more and RING in old and TUBE not in old:  # 'add 12', '0.1 more' behind a ring
        return f"plus a {number:g} mm extension tube" if number >= _THIN else f"{number:g} mm shim under it"
    if more or token.text.isalpha():
        old = {role: value for role, value in old.items() if role == TUBE}  # 'add the 20 as well' after a tube
    if TUBE in old and _is_of_all(heard):
        old = {TUBE: old[TUBE]}  # 'all 49' after one of the tubes
    if (heard.tells(ON_AGAIN) or (heard.tells(_HELD) and roles.wants_tube(before))) and TUBE in old:
        old = {TUBE: old[TUBE]}  # 'back on but a 5 mm'
    if any(_is_measured(one) for one in heard.line.tokens):
        read = {"mark"} if before.said("shim") is not None else set()  # 'mine reads 30' of where infinity should fall
        old = {role: value for role, value in old.items() if role in _MEASURED | read}  # 'i measured 20mm'
    if heard.is_owned(token) or roles.put_on_it(heard, token):
        old = {role: value for role, value in old.items() if role == LENS}  # 'same with my 28'
    elif any(stands_in(one) for one in heard.line.tokens) and LENS in old:
        old = {role: value for role, value in old.items() if role not in _NO_THINGS | _OF_LENS}  # 'a 10 mm one'
    elif _has_article(token, heard):
        old = {role: value for role, value in old.items() if role not in _NO_THINGS or LENS not in old}
    ends = [span for one in before.adapters if one.piece == _HELICOID and (span := span_of(one)) is not None]
    if LENS in old and ends and ends[0][0] and not ends[0][0] <= number <= ends[0][1]:
        old = {role: value for role, value in old.items() if role != TUBE}  # 'and a 50' on one of 17 to 31 mm
    row = roles.told_last(before, old) if before.follows else None  # 'the 36' after 'the 20', a tube
    far = {role: abs(log(number / value)) for role, value in old.items() if number > 0 and value > 0}
    shown = {
        role.name: far[role.name]
        - _LIKELY * role.usual(number)
        - _NAMED * _points(token, heard, role)
        - _NAMED * (role.name == row)
        for role in ROLES
        if role.name in far
        and (role.fits(number) or _is_as_whole(role, number, old))
        and (role.metric or token.kind == "NUMBER")
    }
    shown = {name: distance for name, distance in shown.items() if distance <= _FAR}
    if not shown:
        return None
    last = roles.told_last(before, old) if any(_is_made_so(one, heard) for one in heard.line.tokens) else None
    best = last if last in shown else min(shown, key=lambda name: shown[name])
    if best == LENS and any(part.focal for part in heard.cast.lenses):
        return None  # it is read so already
    says = next(role.says for role in ROLES if role.name == best).format(f"{number:g}")
    if best == OFF:
        return f"{says} {before.off_word}"
    sized = {one.piece for one in before.adapters if one.thickness_mm}
    within = len(ends) == 1 and TUBE_PIECE not in sized and ends[0][0] <= number <= ends[0][1]
    if best == TUBE and (sized == {_HELICOID} or within):
        return f"{number:g} mm {_HELICOID}"  # 'and 6' after one of 4 mm
    return says.removesuffix(" lens") if _heads_lens(token, heard) else says


def _is_of_all(heard: Heard) -> bool:
    return any(EVERYTHING in token.groups for token in heard.line.tokens)


def _comes_out_at(role: str, number: float, old: float) -> bool:
    """'and at 29.4?' after a ring of 29.7 mm: a decimal nearly as long is what it comes out at."""
    return role == RING and number != int(number) and abs(number - old) <= _REMADE_MM


def _is_as_whole(role: Role, number: float, old: dict[str, float]) -> bool:
    """'now 16' after a ring of 10 mm: a whole number may be a ring where the one of before was, 0.3 a thin washer."""
    if role.name == TUBE:
        return 0 < number < _THIN and old[TUBE] < _THIN
    if role.name != RING or not 0.5 <= number <= 150:
        return False
    near = number < _SHORT and abs(log(number / old[RING])) < _MADE_LIKE
    near = near and abs(log(number / old.get(LENS, roles.NORMAL))) > 2 * _MADE_LIKE
    return near or old[RING] == int(old[RING])


def _points(token: Token, heard: Heard, role: Role) -> bool:
    """'the 135', 'a 50': a lens, by the article before it; 'the 2.8 lens' by its head."""
    led = heard.led_by(token)
    short = token.numbers[0] < _SHORT and any(stands_in(one) for one in heard.line.tokens)  # 'make it a 2 mm one'
    article = led is not None and (led.kind == "DET" or led.text.split()[-1:] == ["a"]) and not short
    beside = led is not None and led.text.casefold().endswith("with")  # 'and with 36' after a tube
    return (role.name == LENS and article) or (role.name == TUBE and beside)


def _has_article(token: Token, heard: Heard) -> bool:
    """'the 200': a thing, and no setting."""
    led = heard.led_by(token)
    return led is not None and led.kind == "DET"


def _heads_lens(token: Token, heard: Heard) -> bool:
    return any(one.kind == "LENS" and one.column > token.column for one in heard.line.tokens)
