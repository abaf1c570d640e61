"""What happens when a male screw thread meets a female one: same, loose, binds, falls through. Lengths in mm."""

from __future__ import annotations

from collections.abc import Mapping
from math import cos, inf, radians, tan
from typing import Final

from engine.base.compact import compact, replace
from engine.base.interval import UNKNOWN, Interval, Measure, is_known
from engine.physics.enclose import ordered

HALF_ISO_ANGLE: Final = radians(30)  # of ISO and Unified threads
WHITWORTH_DEG: Final = 55.0


@compact
class ScrewThread:
    """A thread as both its halves are made. Limits that are not known are taken from its form.

    `male_major_mm`, `female_minor_mm`: limits of finished parts. `engagement_mm`: length of thread that is screwed in.
    """

    major_mm: Interval
    pitch_mm: Measure = UNKNOWN
    male_major_mm: Measure = UNKNOWN
    female_minor_mm: Measure = UNKNOWN
    form_angle_deg: Measure = UNKNOWN
    engagement_mm: Measure = UNKNOWN


@compact
class MatingLimits:
    """What the trade's threads allow each other."""

    axial_play_mm: Interval  # how far a screwed-in part of the same size can be pushed to and fro
    same_diameter_mm: float  # a difference in diameter that is not felt
    flank_share: float  # of its depth that a thread must overlap by, to hold
    usual_turns: Interval  # until home, where the engagement is not known


@compact
class Mating:
    """`outcome`: same, loose, binds, falls-through, unknown. `turns`: before it binds, or until home.

    `runs_home`: yes, often, no.
    """

    outcome: str
    turns: Interval | None
    runs_home: str
    why: str


def mating_limits(assumptions: Mapping[str, Interval]) -> MatingLimits:
    """The limits from the assumptions whose ids begin with `mating-`."""
    return MatingLimits(
        axial_play_mm=assumptions["mating-axial-play"],
        same_diameter_mm=assumptions["mating-same-diameter"].nominal,
        flank_share=assumptions["mating-flank-share"].nominal,
        usual_turns=assumptions["mating-usual-turns"],
    )


def thread_depth_mm(pitch: Measure, form_angle: Measure) -> Measure:
    """Basic major less basic minor diameter of a female thread.

    2 * 5/8 * P * cos 30 = 1.0825 P for 60 degrees (ISO 68-1, the same in ASME B1.1), 2 * 0.6403 P for 55 degrees
    (Whitworth form); an angle that is not known is taken for 60.
    """
    if is_known(form_angle) and form_angle.holds(WHITWORTH_DEG):
        return pitch * (2 * 0.640327)
    return pitch * (2 * 5 / 8 * cos(HALF_ISO_ANGLE))


def flank_clearance_mm(male: ScrewThread, female: ScrewThread, limits: MatingLimits) -> Interval:
    """Clearance at the flanks in diameter: that of a usual fit, and what the female is larger by.

    A part's axial play is its flank clearance times tan 30 for 60 degree flanks. Source: definition of the flank angle.
    """
    return limits.axial_play_mm * (1 / tan(HALF_ISO_ANGLE)) + (female.major_mm - male.major_mm)


def turns_to_home(male: ScrewThread, female: ScrewThread, limits: MatingLimits) -> Interval:
    """Turns of the male thread until it seats: its engagement over its pitch, else the usual number."""
    lengths = [length for length in (male.engagement_mm, female.engagement_mm) if is_known(length)]
    if not lengths or not is_known(male.pitch_mm) or male.pitch_mm.least <= 0:
        return limits.usual_turns
    return min(lengths, key=lambda length: length.nominal) / male.pitch_mm


@compact
class _Meeting:
    """Two threads whose pitches are known, laid over each other."""

    clearance: Interval
    larger: float  # how much the hole is larger than the male, by their nominal diameters
    held: Interval  # share of the female's depth that the male overlaps
    angles_differ: bool
    home: Interval
    error: Interval
    drift: Interval


def mate(male: ScrewThread, female: ScrewThread, limits: MatingLimits) -> Mating:
    """What happens when the male thread is screwed into the female one.

    Too large to enter: binds at once. Smaller than the hole's crests: falls through. Equal pitch: same, or loose where
    diameter or flank angle differ. Other pitch: binds after axial play / pitch error turns; a slack pair may be home
    before that (`runs_home`), but one that holds by its crests alone strips instead.
    Source: pitch and play geometry; limits by the assumptions.
    """
    outer = male.male_major_mm if is_known(male.male_major_mm) else male.major_mm
    depth = thread_depth_mm(female.pitch_mm, female.form_angle_deg)
    inner = female.female_minor_mm if is_known(female.female_minor_mm) else female.major_mm - depth
    clearance = flank_clearance_mm(male, female, limits)
    if outer.least > female.major_mm.greatest + limits.same_diameter_mm:
        why = "the male is larger than the whole hole: it does not start"
        found = Mating("binds", Interval.exact(0.0), "no", why)
    elif not is_known(inner):
        found = Mating("unknown", None, "no", "the pitch of the hole's thread is not known")
    elif outer.greatest <= inner.least:
        found = Mating("falls-through", None, "no", "the male passes inside the crests of the hole")
    elif not (is_known(male.pitch_mm) and is_known(female.pitch_mm) and is_known(depth)):
        found = Mating("unknown", None, "no", "a pitch is not known")
    else:
        error, home = abs(male.pitch_mm - female.pitch_mm), turns_to_home(male, female, limits)
        angles = is_known(male.form_angle_deg) and is_known(female.form_angle_deg)
        meeting = _Meeting(
            clearance,
            female.major_mm.nominal - male.major_mm.nominal,
            (outer - inner) / depth,
            angles and male.form_angle_deg != female.form_angle_deg,
            home,
            error,
            error * home,
        )
        alike = meeting.drift.greatest <= limits.axial_play_mm.least
        found = _same_pitch(meeting, limits) if alike else _other_pitch(meeting, limits)
    if not (is_known(male.male_major_mm) and is_known(female.female_minor_mm)):
        return replace(found, why=f"{found.why} (limits not published: taken from size, pitch and form)")
    return found


def _same_pitch(meeting: _Meeting, limits: MatingLimits) -> Mating:
    """Pitches so near that the difference stays within the least play until home."""
    holds = "yes" if meeting.held.nominal >= limits.flank_share else "no"
    if holds == "no" and meeting.held.greatest >= limits.flank_share:
        holds = "often"
    if meeting.larger < -limits.same_diameter_mm:
        outcome, why = "binds", "same pitch, but the male is larger: its flanks are tight"
        holds = "often" if meeting.clearance.nominal > 0 else "no"
    elif meeting.larger > limits.same_diameter_mm:
        outcome = "loose"
        why = "same pitch, but the male is smaller: " + (
            "it holds by part of its flanks" if holds == "yes" else "it hangs by its crests or drops through"
        )
    elif meeting.angles_differ:
        outcome, why = "loose", "same size and pitch, other flank angle: thin contact"
    else:
        outcome, holds, why = "same", "yes", "the same thread"
    return Mating(outcome, meeting.home, holds, why)


def _other_pitch(meeting: _Meeting, limits: MatingLimits) -> Mating:
    """Pitches that differ: the flanks run against each other, sooner the less play there is."""
    play = meeting.clearance.at_least(0.0) * tan(HALF_ISO_ANGLE)
    turns = _until_used_up(play, meeting.error)
    if meeting.held.nominal < limits.flank_share:
        home, why = "no", "other pitch, and it holds by its crests alone: it tilts and strips"
    elif meeting.larger > limits.same_diameter_mm:
        home, why = "no", "other pitch, and the male is smaller: it tilts before it is home"
    elif turns.least >= meeting.home.greatest:
        home, why = "yes", "the pitch error stays within the play until it is home"
    elif turns.nominal >= meeting.home.nominal:
        home, why = "often", "a usual pair is home before the pitch error has used up its play, a tight one is not"
    else:
        home, why = "no", "the pitch error uses up the play before it is home"
    return Mating("binds", turns, home, why)


def _until_used_up(play: Interval, error: Interval) -> Interval:
    """Turns until the error has used up the play; without end where there may be no error."""
    if error.least > 0:
        return play / error
    least = play.least / error.greatest if error.greatest > 0 else inf
    nominal = play.nominal / error.nominal if error.nominal > 0 else inf
    return ordered(least, inf, max(nominal, least))
