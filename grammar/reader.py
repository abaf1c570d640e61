"""Reads a question: text -> one typed question, or where and why it could not be read."""

from __future__ import annotations

from typing import Final

from engine.base.compact import replace
from grammar.echo.echo import canonical
from grammar.hearing import Heard, hear
from grammar.kinds import (
    DEPTH_OF_FIELD,
    EXPOSURE_ND,
    MACRO_DISTANCE,
    OUT_OF_SCOPE,
    PICTURED,
)
from grammar.own.naming import tells_a_meaning
from grammar.own.orders import order_of
from grammar.own.taught import taught
from grammar.questions import DRAWN, OFF, Question, Thing, Unread
from grammar.readings.bellows_draw import with_image_by_draw
from grammar.readings.ends_in_order import with_ends_in_order
from grammar.readings.scale_and_tape import with_scale_pair
from grammar.readings.stuck_open import with_stuck_helicoid
from grammar.refusals import empty, not_alone, refused, too_long, unheard
from grammar.telling import question_of
from grammar.things import casting
from grammar.turns.corrector_stack import with_spaced
from grammar.turns.ring_worked import with_ring_worked, with_shim_needed
from grammar.turns.way_asked import with_way_asked, without_asked
from grammar.words.atoms import key_of, smooth
from grammar.words.breath import said_rightly
from grammar.words.lexicon import Lexicon
from grammar.words.mentioned import mentioned_in
from grammar.words.tokens import LONGEST

PLAINLY: Final = 0.85  # how likely an intent must be for nothing else to be offered beside it
MAYBE: Final = 0.08  # and how likely what is offered must be
# whole lines that ask of the answer before -> the topic of the reason they ask for
_OF_ANSWERS: Final[dict[str, str | None]] = {"doubt": "sure", "reason": None}
# cues by which only another thing is told, and the kinds of question whose words then still ask
_CHANGING: Final = ("instead", "what-if", "what", "ok", "will", "can", "it-is", "adding", "again", "how", "same")
_CARRIED: Final = PICTURED | {EXPOSURE_ND}
GLASS_ASKED: Final = "glass-asked"
HELP, HELP_OF = "help", "-"  # the order, and what stands between it and of what help is asked
_BY_MERIT: Final = "est"  # how the words end that no condition could be put in the place of: 'the sharpest'
_TRIM: Final = " \t\r\n.!?,;:"


def read(text: str, lexicon: Lexicon, before: Question | None = None) -> Question | Unread:
    """The question that `text` puts; `before` is the one it may lean on. Whatever the text, it never raises."""
    text = text if tells_a_meaning(text) else said_rightly(text, lexicon, before.text if before is not None else "")
    if before is not None:
        from grammar.turns.body_called import with_called, with_its_frame

        before = with_called(before, lexicon)
    got = _read(text, lexicon, before)
    if isinstance(got, Unread):
        return got
    got = with_stuck_helicoid(with_scale_pair(with_ends_in_order(_with_mentioned(got, lexicon))))
    got = with_image_by_draw(got, before)
    if before is None:
        worked = with_shim_needed(with_ring_worked(got, None, lexicon.words), lexicon.words)
        return with_spaced(worked, None, lexicon.words.groups)
    from grammar.turns.claimed import with_measured_held
    from grammar.turns.filter_bought import with_filter_bought
    from grammar.turns.filter_tried import with_filter_tried
    from grammar.turns.lit_again import lit_so_far, with_light_now
    from grammar.turns.ring_gauged import with_ring_gauged
    from grammar.turns.ring_of_one import is_shimmed_so
    from grammar.turns.seat_held import with_seat_held
    from grammar.turns.seen_so_far import with_seen_kept
    from grammar.turns.sheet_at_hand import with_sheet_at_hand
    from grammar.turns.shim_put import with_shim_put
    from grammar.turns.soft_again import with_frame_of_blur
    from grammar.turns.stack_again import with_stack_kept
    from grammar.turns.stop_becomes import with_stop_of_glass
    from grammar.turns.time_wanted import with_time_wanted
    from grammar.turns.whom import known_with

    got = with_light_now(with_filter_bought(_with_mentioned(got, lexicon), before))
    got = with_time_wanted(got, before)
    got = with_filter_tried(_with_mentioned(with_frame_of_blur(with_seen_kept(got, before), before), lexicon), before)
    got = with_stack_kept(with_way_asked(got, before, lexicon.words.mentions), before)
    sheet = with_measured_held(with_sheet_at_hand(got, before), before)
    sheet = with_ring_gauged(sheet, before, lexicon.words.groups)
    if sheet is not got:
        got = sheet
    elif not is_shimmed_so(got):
        put = with_shim_put(got, before, lexicon.words)
        got = with_ring_worked(put, before, lexicon.words)
        got = got.with_(laid=put.laid) if any(put.laid) and put.said(OFF) is not None else got
    got = with_stop_of_glass(got, before)
    held = with_seat_held(got, before)
    got = _with_mentioned(held, lexicon) if held.values != got.values else held
    known = got.known or known_with(before.known or before.lenses, got.lenses)
    got = with_its_frame(got, before).with_(called=before.called)
    got = got.with_(elsewhere=_elsewhere(got, before), stood=_stood(got, before), away=_away(got, before))
    got = got.with_(known=known, prior=before.with_(prior=None), lit=lit_so_far(got, before))
    return with_spaced(got, before, lexicon.words.groups)


def _away(got: Question, before: Question) -> float | None:
    """How far away the subject is, on past an exposure or an equivalent, until it is a matter of close up."""
    close = got.intent == MACRO_DISTANCE or any(one.piece in casting.DRAWN for one in got.adapters)
    told = before.distance_mm if before.intent == DEPTH_OF_FIELD and before.distance_mm is not None else before.away
    return None if close or not got.follows else told


def _elsewhere(got: Question, before: Question) -> tuple[Thing, ...]:
    """What 'the other body' may mean from now on: what the lens stood on before, where that is not what it is now."""
    stood, now = ([(one.kind, one.ids, one.format) for one in q.bodies or q.frames] for q in (before, got))
    return (before.bodies or before.frames) if stood and stood != now else before.elsewhere


def _stood(got: Question, before: Question) -> tuple[Thing, ...]:
    """The pieces that 'both' and 'back on' may mean from now on: what stood there before others did, or none."""
    changed = before.adapters and got.adapters != before.adapters
    return before.adapters if changed else before.stood


def _with_mentioned(question: Question, lexicon: Lexicon) -> Question:
    """The question with what its text mentions, and what the word means for how a thickness is off."""
    said, phrases = (question.text, question.asked), lexicon.words.mentions
    question = question.with_(mentioned=without_asked(mentioned_in(said, phrases)))
    if question.limits.with_glass and question.mentions(GLASS_ASKED):
        # 'do I need anything with glass in': asked, and no condition
        question = question.with_(limits=replace(question.limits, with_glass=False))
    word = question.off_word
    return question.with_(mentioned=without_asked(mentioned_in((*said, word), phrases))) if word else question


def _read(text: str, lexicon: Lexicon, before: Question | None) -> Question | Unread:
    at_once = _read_at_once(text, lexicon, before)
    if at_once is not None:
        return at_once
    if before is not None:
        from grammar.turns.answered_first import begun

        told = begun(text, lexicon, before, lambda clause: _read(clause, lexicon, before))
        if told is not None:
            return _read(told[1], lexicon, told[0])
    aside = "draw" if before is not None and before.topic == DRAWN else ""
    heard = hear(text, lexicon, before.intent if before is not None else "", aside)
    if before is not None:
        followed = _read_after(heard, before, lexicon)
        if not isinstance(followed, Heard):
            return followed
        heard = followed
    question = question_of(heard)
    if question is None:
        return unheard(heard, lexicon)
    problem = refused(heard, question, lexicon) or not_alone(heard, question)
    return _with_rest(problem, question) if problem else _doubted(question, heard, lexicon)


def _read_at_once(text: str, lexicon: Lexicon, before: Question | None) -> Question | Unread | None:
    """What is no question of a lens and a body: nothing, what is told of one's gear or asked of all of it, an order."""
    if len(text) > LONGEST:
        return too_long(text)
    if not text.strip():
        return empty(text)
    told = taught(text, lexicon, before)
    if told is not None and not _only_said(told, text, lexicon, before):
        return told
    smoothed = smooth(text)[0].strip(_TRIM)
    known_order = order_of(smoothed, lexicon.words.orders)
    if known_order is None and (of_own := _of_own(text, lexicon, before)) is not None:
        return of_own
    order = "help" if not smoothed and "?" in text else known_order
    if order in _OF_ANSWERS and before is not None and before.sought is None:
        from grammar.turns.going_on import doubted

        return doubted(text, before, _OF_ANSWERS[order])
    # 'K?' is no 'ok', and 'fine?' after what a ring does asks whether it is
    asks_mount = order == "noted" and "?" in text and (len(smoothed) == 1 or before is not None)
    if not order or order in _OF_ANSWERS or asks_mount:
        return None
    intent, _, part = order.partition(HELP_OF) if order.startswith(HELP + HELP_OF) else (order, "", "")
    return Question(text, intent, topic=part or None)


def _only_said(told: Question | Unread, text: str, lexicon: Lexicon, before: Question | None) -> bool:
    from grammar.turns.only_on_the_way import is_only_said

    return is_only_said(told, text, lexicon, before)


def _read_after(heard: Heard, before: Question, lexicon: Lexicon) -> Question | Unread | Heard:
    """The question as it goes on from the one before; what was heard, put right by it, where it stands by itself."""
    from grammar.turns.answering import completed
    from grammar.turns.body_called import with_body_called
    from grammar.turns.body_picked import with_body_picked
    from grammar.turns.corrected import corrected
    from grammar.turns.glass_joined import with_glass_named
    from grammar.turns.helicoid_set import helicoid_set
    from grammar.turns.in_place_of import with_stood_in
    from grammar.turns.leaning import as_alone, leans
    from grammar.turns.listed_again import listed_again
    from grammar.turns.lone_numbers import spoken_out
    from grammar.turns.measure_asked import with_measure_asked
    from grammar.turns.measured_again import measured_again
    from grammar.turns.naming_next import named_next
    from grammar.turns.number_repeated import with_piece_named
    from grammar.turns.odd_glass import with_power
    from grammar.turns.only_told import mount_kept, with_ring_held
    from grammar.turns.reckoned import reckoned
    from grammar.turns.rings_for_it import with_ring_meant
    from grammar.turns.said_plainly import said_plainly
    from grammar.turns.stack_again import stack_again
    from grammar.turns.stop_becomes import with_stop_named
    from grammar.turns.swapped_for import with_swapped
    from grammar.turns.told_before import by_number_told
    from grammar.turns.word_again import word_again

    typed = heard
    heard = with_swapped(with_stop_named(heard, before, lexicon), before, lexicon)
    heard = with_power(with_body_called(with_stood_in(heard, before, lexicon), before, lexicon), before)
    set_so = helicoid_set(heard, before, lexicon)
    if set_so is not None:
        return _read_leaning(set_so, heard, before, lexicon, corrects=False)
    heard = with_glass_named(with_body_picked(heard, before, lexicon), before, lexicon)
    put_right, phrases = corrected(heard, before, lexicon), lexicon.words.mentions
    reply = stack_again(heard, before, phrases) or word_again(heard, before) or measured_again(heard, before, phrases)
    reply = reply or by_number_told(heard, before, phrases)
    reply = reply or named_next(heard, before) or completed(heard, before, lexicon.hosts)
    if reply is not None and put_right is None:
        return reply
    heard = with_ring_meant(with_ring_held(mount_kept(heard, before), before), before, lexicon)
    plainly = listed_again(said_plainly(heard, before, lexicon), before)
    plainly = with_measure_asked(with_piece_named(plainly, before, lexicon), before, lexicon)
    said, heard = heard, put_right or spoken_out(reckoned(plainly, before, lexicon), before, lexicon)
    if plainly is not said:
        heard = heard.as_typed(typed)
    if not leans(heard, before):
        return as_alone(heard)
    return _read_leaning(heard, said, before, lexicon, corrects=put_right is not None)


def _read_leaning(heard: Heard, said: Heard, before: Question, lexicon: Lexicon, corrects: bool) -> Question | Unread:
    """The question before with what is heard instead. `said`: as it was heard before it was spoken out."""
    from grammar.turns.followups import follow
    from grammar.turns.going_on import LEFT
    from grammar.turns.same_matter import with_aside_asked

    followed = with_aside_asked(heard, follow(heard, before), before).with_(corrects=corrects)
    if heard is not said or _only_changes(heard, followed, before):
        followed = followed.with_(asked=before.asked or before.text, topic=followed.topic or before.topic)
    went_on = followed.intent == before.intent or followed.topic == LEFT
    return refused(heard, None, lexicon) or (followed if went_on else _doubted(followed, heard, lexicon))


def _only_changes(heard: Heard, followed: Question, before: Question) -> bool:
    """'and with a 645 80 instead': another lens or body alone, of which the words of before still ask."""
    told = followed.lenses != before.lenses or followed.bodies != before.bodies or followed.frames != before.frames
    asks = any(cue.tells not in _CHANGING for cue in heard.cues) or heard.readings.values or heard.readings.limits
    pieces = heard.cast.pieces or heard.cast.without
    return told and not (asks or pieces) and followed.intent == before.intent and followed.intent in _CARRIED


def _with_rest(problem: Unread, question: Question) -> Unread:
    """The problem with what was understood beside it: a lens or a body that the next question may lean on."""
    told = any(lens.ids or lens.focal_length_mm for lens in question.lenses) or any(one.ids for one in question.bodies)
    return replace(problem, partial=question) if told else problem


def _doubted(question: Question, heard: Heard, lexicon: Lexicon) -> Question:
    """The question with what else it may ask, where its intent is not plainly the one."""
    if heard.weighed.best is None:
        return question  # nothing was asked in words
    likely = heard.weighed.others(MAYBE) if heard.weighed.likely.get(question.intent, 1.0) < PLAINLY else ()
    others = [other for other in likely if other != OUT_OF_SCOPE]  # it offers no answer
    if not others:
        return question
    told = _with_mentioned(question, lexicon)  # 'a 1.4x or a 2x'
    said = [canonical(told.with_(intent=other, topic=None), lexicon.name_for) for other in others]
    return question.with_(instead=tuple(dict.fromkeys(said)))


def _of_own(text: str, lexicon: Lexicon, before: Question | None) -> Question | Unread | None:
    """The question where it is about all of one's own gear; what reads those is loaded only where that may be."""
    line = key_of(smooth(text)[0])
    opens = (key for key, row in lexicon.words.sifting.items() if row[1] in ("of", "my", "mine"))
    if (before is None or before.sought is None) and not any(key in line for key in opens):
        return None
    from grammar.own.seeking import sought

    asked = sought(text, lexicon, before)
    if isinstance(asked, Unread) and before is not None and hear(text, lexicon).readings.limits.get("owned_only"):
        return None  # 'which of my adapters for it': of the lens and the body spoken of, with those alone
    if isinstance(asked, Unread) and asked.found.endswith(_BY_MERIT):
        return None if hear(text, lexicon).weighed.best == OUT_OF_SCOPE else asked
    return asked
