"""Exposure from scene, f-number, shutter and ISO, in stops. Exposure values (EV) are counted at ISO 100, times in s."""

from __future__ import annotations

from math import log2, sqrt
from typing import Final

from engine.base.interval import UNKNOWN, Measure, is_known
from engine.physics.density import factor_of_stops, stops_of_factor
from engine.physics.enclose import enclose
from engine.physics.positive import positive

BASE_ISO: Final = 100.0  # what exposure values are counted at
FULL_TURN_DEG: Final = 360.0
# full stops as they are marked; each stands for a power of the root of 2
FULL_STOPS: Final = (0.7, 1.0, 1.4, 2.0, 2.8, 4.0, 5.6, 8.0, 11.0, 16.0, 22.0, 32.0, 45.0, 64.0)
AS_GOOD: Final = 0.99  # a stop this near to what is needed will do


def next_full_stop(f_number: float) -> float:
    """The first marked full stop that is no wider than `f_number`; the smallest one where none is."""
    for step, marked in enumerate(FULL_STOPS, start=-1):
        if sqrt(2) ** step >= f_number * AS_GOOD:
            return marked
    return FULL_STOPS[-1]


def setting_ev(f_number: Measure, shutter_s: Measure) -> Measure:
    """log2(N*N/t), the scene that this f-number and shutter expose right at ISO 100. Source: definition of EV."""
    return enclose(lambda n, t: 2 * log2(n) - log2(t), positive(f_number), positive(shutter_s))


def iso_stops(iso: Measure) -> Measure:
    """log2(ISO/100): stops by which this ISO needs less light than ISO 100. Source: ISO speeds are proportional."""
    return stops_of_factor(iso / BASE_ISO)


def scene_ev(f_number: Measure, shutter_s: Measure, iso: Measure) -> Measure:
    """The scene, in EV at ISO 100, that a setting exposes right: log2(N*N/t) - log2(ISO/100).

    Source: definition of EV.
    """
    return setting_ev(f_number, shutter_s) - iso_stops(iso)


def stops_to_hold_back(scene: Measure, f_number: Measure, shutter_s: Measure, iso: Measure) -> Measure:
    """Light to take away, in stops: scene EV + log2(ISO/100) - log2(N*N/t). Below 0 that much is lacking.

    N is the f-number that counts for exposure: a T-stop, or the effective one close up. Source: definition of EV.
    """
    return scene - scene_ev(f_number, shutter_s, iso)


def shutter_for_s(scene: Measure, f_number: Measure, iso: Measure, held_back: Measure) -> Measure:
    """The shutter time that exposes a scene right behind a filter: N*N / 2^(EV + log2(ISO/100) - stops held back).

    Source: definition of EV.
    """
    squared = enclose(lambda n: n * n, positive(f_number))
    return squared * factor_of_stops(held_back - scene - iso_stops(iso))


def f_number_for(scene: Measure, shutter_s: Measure, iso: Measure, held_back: Measure) -> Measure:
    """The f-number that exposes a scene right behind a filter: sqrt(t * 2^(EV + log2(ISO/100) - stops held back)).

    Source: definition of EV.
    """
    squared = positive(shutter_s) * factor_of_stops(scene + iso_stops(iso) - held_back)
    return enclose(sqrt, squared)


def iso_for(scene: Measure, f_number: Measure, shutter_s: Measure, held_back: Measure) -> Measure:
    """The ISO that exposes a scene right behind a filter: 100 * 2^(log2(N*N/t) - EV + stops held back).

    Source: definition of EV.
    """
    return factor_of_stops(setting_ev(f_number, shutter_s) - scene + held_back) * BASE_ISO


def shutter_of_angle_s(frame_rate: Measure, angle_deg: Measure) -> Measure:
    """angle/360 of the time of one frame: 1/50 s for 180 degrees at 25 a second. Unknown above a full turn.

    Source: definition of the shutter angle.
    """
    if is_known(angle_deg) and angle_deg.greatest > FULL_TURN_DEG:
        return UNKNOWN
    return enclose(lambda rate, angle: angle / (FULL_TURN_DEG * rate), positive(frame_rate), positive(angle_deg))


def angle_of_shutter_deg(frame_rate: Measure, shutter_s: Measure) -> Measure:
    """360 * t * frames a second; above 360 the time is longer than a frame. Source: definition of the shutter angle."""
    return enclose(lambda rate, t: FULL_TURN_DEG * rate * t, positive(frame_rate), positive(shutter_s))


def shutter_behind_s(shutter_s: Measure, stops: Measure) -> Measure:
    """What a shutter time becomes when `stops` of light are held back: t * 2^stops. Source: definition of the stop."""
    return positive(shutter_s) * factor_of_stops(stops)


def shutter_stops(shutter_s: Measure, other_s: Measure) -> Measure:
    """Stops of light that the other shutter time lets in more: log2(other/t). Source: definition of the stop."""
    return enclose(lambda t, u: log2(u) - log2(t), positive(shutter_s), positive(other_s))


def f_number_stops(f_number: Measure, other: Measure) -> Measure:
    """Stops of light that the other f-number lets in less: 2*log2(other/N). Source: light goes as 1/(N*N)."""
    return enclose(lambda n, o: 2 * (log2(o) - log2(n)), positive(f_number), positive(other))


def f_number_after(f_number: Measure, stops: Measure) -> Measure:
    """The f-number that lets in `stops` less: N * 2^(stops/2). Source: light goes as 1/(N*N)."""
    return positive(f_number) * factor_of_stops(stops / 2.0)


def f_number_between(f_number: Measure, other: Measure, share: Measure) -> Measure:
    """The f-number at `share`, 0..1, of the stops from one to the other: N * (other/N)^share; halfway is 0.5.

    Source: equal stops are equal ratios.
    """
    return enclose(lambda n, o, part: n ** (1 - part) * o**part, positive(f_number), positive(other), share)


def f_number_of_t_stop(t_stop: Measure, transmission: Measure) -> Measure:
    """T * sqrt(transmission), for depth of field; exposure goes by T. Unknown where more than all light would pass.

    Source: definition of the T-stop.
    """
    return enclose(lambda t, share: t * sqrt(share), positive(t_stop), _passed(transmission))


def t_stop_of_f_number(f_number: Measure, transmission: Measure) -> Measure:
    """N / sqrt(transmission). Source: definition of the T-stop."""
    return enclose(lambda n, share: n / sqrt(share), positive(f_number), _passed(transmission))


def transmission_lost_stops(transmission: Measure) -> Measure:
    """Stops of light that stay in the glass: -log2(transmission). Source: definition of the stop."""
    return enclose(lambda share: -log2(share), _passed(transmission))


def _passed(transmission: Measure) -> Measure:
    return positive(transmission) if is_known(transmission) and transmission.greatest <= 1 else UNKNOWN
