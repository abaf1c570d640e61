"""What stands on a card, against numbers worked out by hand."""

from __future__ import annotations

from itertools import pairwise
from math import hypot, log2, sqrt
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from engine.answers.parts.card_parts import Card, Grid, figures_of, spoken
from engine.answers.parts.knowledge import Knowledge
from engine.ask import Desk
from engine.base.interval import Interval
from tests.desks import desk_of
from tests.examples import examples

GEAR = Path(__file__).parents[1] / "data" / "cards-gear.yaml"
DESK = desk_of(GEAR)
EMPTY_HANDED = desk_of()
FOCAL = 50.0


def card(question: str, desk: Desk = DESK) -> Card:
    answer = desk.ask(question)
    assert answer.cards is not None, answer
    return answer.cards.cards[0]


def value(made: Card, name: str, of: str = "") -> Interval:
    case = f"card 1, {of}" if of else "card 1"
    (found,) = {
        row.quantity.value for row in figures_of(made) if (row.quantity.name, row.quantity.case) == (name, case)
    }
    return found


def sharp_mm(mark_mm: float | None, error_mm: float) -> float:
    """Where a thin lens of 50 mm is sharp with its ring at a mark, its seat this much too far out."""
    spread = (mark_mm or 0.0) - 2 * FOCAL
    travel = 0.0 if mark_mm is None else (spread - sqrt(spread * spread - 4 * FOCAL * FOCAL)) / 2
    x = travel + error_mm
    return 2 * FOCAL + FOCAL * FOCAL / x + x


@pytest.mark.parametrize(
    ("ring", "error", "mark", "of"),
    [
        ("thick", 0.2, None, "ring at infinity"), ("thick", 0.2, 5000.0, "ring at 5 m"),
        ("thick", 0.2, 500.0, "ring at 50 cm"), ("thin", -0.06, 5000.0, "ring at 5 m"),
        ("thin", -0.06, 1500.0, "ring at 1.5 m"),
    ],
)  # fmt: skip
def test_the_ring_is_marked_anew_by_the_error_of_the_seat(ring: str, error: float, mark: float | None, of: str) -> None:
    made = card(f"card for the knot on the skiff with the {ring} club ring at f/4")
    found = value(made, "focus_from_sensor_mm", of).nominal
    # the planes of the lens are assumed: they may lie a third of its focal length apart
    assert found == pytest.approx(sharp_mm(mark, error), rel=0.01, abs=0.45 * FOCAL)
    whole = [row for row in figures_of(made) if row.quantity.case == f"card 1, {of}, may be"]
    assert all(row.quantity.value.least <= found <= row.quantity.value.greatest for row in whole)


def test_a_lens_too_close_tells_where_infinity_falls() -> None:
    made = card("card for the knot on the skiff with the thin club ring")
    assert value(made, "scale_mark_mm", "infinity").nominal == pytest.approx(100 + 2500 / 0.06, rel=0.01)
    assert isinstance(made.scale, Grid)
    assert spoken(made.scale.rows[0][1]) == "nothing sharp"
    assert "infinity" not in spoken(made.head).lower() or spoken(made.head) == "Infinity to 50 cm"


@given(
    st.sampled_from([1.4, 2.0, 2.8, 4.0, 5.6, 8.0, 11.0]),
    st.sampled_from([25, 50, 60, 100, 250]),
    st.integers(min_value=9, max_value=16),
)
@settings(max_examples=examples(25), deadline=None)
def test_density_is_what_the_exposure_value_says(stop: float, below: int, scene: int) -> None:
    asked = f"card for a 50mm f/1.4 M42 lens on an E-mount APS-C body at f/{stop:g}, 1/{below}, EV {scene}, iso 100"
    made = card(asked, EMPTY_HANDED)
    held = scene - log2(stop * stop * below)
    if held > 0:
        assert value(made, "nd_stops", "ISO 100").nominal == pytest.approx(held, abs=1e-9)
    else:
        assert value(made, "light_difference_stops", "ISO 100").nominal == pytest.approx(-held, abs=1e-9)
        assert isinstance(made.light, Grid)
        assert spoken(made.light.rows[2][1]) == "none"


def test_each_doubling_of_iso_is_a_stop_and_the_list_is_that_of_the_facts() -> None:
    made = card("card for the avocet on the skiff at f/2.8, 1/50 in full sun")
    isos = [row.value.nominal for row in DESK.catalogue.assumptions.values() if row.id.startswith("card-iso-")]
    held = [value(made, "nd_stops", f"ISO {iso:g}").nominal for iso in sorted(isos)]
    assert held[0] == pytest.approx(15 - log2(2.8 * 2.8 * 50) + log2(min(isos) / 100))
    steps = [log2(high / low) for low, high in pairwise(sorted(isos))]
    assert [high - low for low, high in pairwise(held)] == pytest.approx(steps)


def test_what_is_taken_for_granted_is_said() -> None:
    def title(question: str) -> str:
        light = card(question).light
        assert isinstance(light, Grid)
        return spoken(light.title)

    assert title("card for the avocet on the skiff") == "Hold back, 1/50 s, full sun (both assumed)"
    assert title("card for the avocet on the skiff at 1/50") == "Hold back, 1/50 s, full sun (assumed)"
    assert title("card for the avocet on the skiff, 50 fps in full sun") == "Hold back, 1/100 s, full sun"
    assert title("card for the avocet on the skiff, 1/50 in open shade") == "Hold back, 1/50 s, open shade"


def test_the_punch_in_is_claimed_on_the_least_circle() -> None:
    made = card("card for the avocet on the skiff")
    answer = DESK.ask("card for the avocet on the skiff")
    assert answer.chains
    circle = answer.chains[0].listed.judged.trace.value("image_circle_at_far_mm")
    assert isinstance(circle, Interval)
    wide = circle.least * 16 / hypot(16, 9)
    assert value(made, "punch_in").nominal == pytest.approx(23.6 / wide)
    assert value(made, "pixels_across").nominal == pytest.approx(6000 * wide / 23.6, abs=1)


def test_what_is_punched_in_frames_as_its_own_diagonal_says() -> None:
    made = card("card for the avocet on the skiff")
    wide = 23.6 / value(made, "punch_in").nominal
    likes = 25 * hypot(36, 24) / hypot(wide, wide * 9 / 16)
    assert value(made, "equivalent_focal_mm", "punched in").nominal == pytest.approx(likes, rel=1e-6)
    covered = DESK.ask("largest 16:9 crop of the avocet on the skiff")
    assert likes == pytest.approx(
        max(row.value.nominal for row in covered.quantities if row.name == "equivalent_focal_mm"), rel=1e-6
    )


def test_strong_density_comes_with_a_word_on_infrared() -> None:
    def below(question: str) -> str:
        light = card(question).light
        assert isinstance(light, Grid)
        return spoken(light.below)

    assert "infrared" in below("card for the avocet on the skiff at f/2.8, 1/50 in full sun")
    assert "infrared" not in below("card for the avocet on the skiff at f/8, 1/50 in open shade, iso 100")


def test_a_helicoid_of_no_use_is_not_taken_where_another_does() -> None:
    owned = desk_of(Path(__file__).parents[1] / "render" / "gear.yaml")
    made = card("card for the dunlin on the skiff with a helicoid", owned)
    assert spoken(made.head).startswith("Infinity to")


def test_a_reducer_asked_for_is_not_undone_by_more_glass() -> None:
    answer = EMPTY_HANDED.ask("how do I get a 55mm f/1.8 M42 lens on an E-mount APS-C body with a 0.71 reducer")
    assert answer.chains
    for row in answer.chains:
        assert sum(adapter.has_glass for adapter in row.listed.judged.chain.adapters) == 1


def test_behind_a_reducer_the_reduced_focal_length_and_stop_count() -> None:
    made = card("card for an 85mm f/1.4 CY lens on an E-mount APS-C body with a 0.71 reducer")
    assert value(made, "combined_focal_mm", "stabiliser-if-any").nominal == pytest.approx(85 * 0.71)
    assert value(made, "effective_f_number").nominal == pytest.approx(1.4 * 0.71, rel=0.02)


def test_a_helicoid_is_marked_from_infinity_to_fully_out() -> None:
    made = card("card for a 75mm f/4 M42 lens on an E-mount APS-C body with a helicoid")
    assert isinstance(made.scale, Grid)
    assert made.scale.columns[0] == "helicoid"
    rows = [spoken(row[1]) for row in made.scale.rows]
    assert rows[0] == "∞"
    home = value(made, "helicoid_setting_mm", "infinity").nominal
    outs = [row for row in figures_of(made) if row.quantity.name == "focus_from_sensor_mm"]
    last = [row.quantity.value.nominal for row in figures_of(made) if row.quantity.name == "helicoid_setting_mm"][-1]
    x = last - home
    assert outs[-1].quantity.value.nominal == pytest.approx(150 + 75 * 75 / x + x, rel=0.03, abs=30)


@pytest.mark.parametrize("lens", ["avocet", "dunlin", "knot", "curlew", "sandpiper", "godwit", "whimbrel", "ruff"])
@pytest.mark.parametrize("body", ["skiff", "dory", "ketch", "punt"])
def test_every_part_of_a_card_says_something(lens: str, body: str) -> None:
    made = card(f"card for the {lens} on the {body}")
    for text in (made.head, made.subject, made.check, *made.stack, *made.picture, *made.settings):
        assert spoken(text).strip()
    for block in (made.scale, made.light):
        assert not isinstance(block, Grid) or all(spoken(cell).strip() for row in block.rows for cell in row[:2])
    everything = " ".join(spoken(text) for text in (made.head, made.check, *made.picture, *made.settings))
    assert "None" not in everything
    assert "{" not in everything


def test_dangers_and_cautions_of_the_answer_are_all_on_the_card() -> None:
    answer = DESK.ask("card for an S-mount 6mm lens on a CS body")
    assert answer.chains
    assert answer.cards is not None
    judged = answer.chains[0].listed.judged
    told = [row.severity for row in answer.cards.cards[0].alerts]
    for severity in ("danger", "caution"):
        assert told.count(severity) >= sum(row.severity == severity for row in judged.findings)
    assert told == sorted(told, key=["danger", "caution", "note"].index)
    assert any("Ask the camera's documentation" in spoken(row.text) for row in answer.cards.cards[0].alerts)


def test_every_rule_has_a_few_words_for_a_card() -> None:
    assert Knowledge.of(DESK.catalogue).problems == ()
    for rule in DESK.catalogue.rules.values():
        assert 0 < len(rule.brief) <= 110, rule.id


@pytest.mark.parametrize("asked", ["{}", "can {} reach infinity", "card for {}", "draw {}"])
def test_a_lens_turned_round_is_never_said_to_reach_infinity(asked: str) -> None:
    answer = EMPTY_HANDED.ask(asked.format("a 28mm f/2.8 M42 lens reversed on an E-mount APS-C body"))
    told = " ".join(line.text for line in answer.lines)
    assert "reaches no infinity" in told
    assert answer.cards is None
    assert not answer.drawings
    assert not answer.chains
