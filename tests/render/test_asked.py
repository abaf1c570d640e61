"""From the question to the paper: what is drawn is what the answer and its record say, at very different set-ups."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from engine.answers.parts.answer import Answer
from engine.ask import Desk
from engine.base.interval import Interval
from engine.render.record import record_of
from engine.render.terminal import shown
from engine.talk import Talk
from tests.desks import desk_in, desk_of
from tests.render.paper import Paper, faults

GEAR = Path(__file__).parent / "gear.yaml"
ASKED = {
    "tiny sensor": "draw the wren on the coracle",
    "medium format": "draw the heron on the barge",
    "tubes and helicoid": "draw the dunlin on the skiff with a 28 mm M42 tube, a 14 mm M42 tube, a 7 mm M42 tube and "
    "a 12 to 17 mm M42 helicoid, without glass",
    "cup": "draw the avocet on the skiff with what I own",
    "glass": "draw the teal on the skiff with a 0.72 reducer",
    "little known": "draw the stilt on an E-mount body",
    "long names": "draw the godwit on the yawl",
    "feet": "draw the stack, the frame and the distances of the avocet on the skiff in feet, marks at 2 ft and 4 ft",
    "described": "draw a 25mm f/1.4 C-mount lens on m43",
    "full frame": "draw the teal on an E-mount full frame body",
    "tilt": "draw the teal on the skiff with a tilt ring",
    "bellows": "draw the teal on the skiff with bellows",
    "mirror": "draw the godwit on a K-mount full frame body",
    "squeezed": "draw a 50mm f/2 M42 lens with a 1.33x anamorphic on an E-mount full frame body",
    "screwed in": "draw a CS-mount lens on a C-mount body",
}
PAST_LIFE_SIZE = "bellows"  # drawn out further, what is sharp goes farther from the sensor again
# what is drawn -> the number of the record that it stands for
NAMED = {"low_from_sensor_mm": "near_from_sensor_mm", "high_from_sensor_mm": "far_from_sensor_mm"}


def drawn(
    question: str, folder: Path, desk: Desk | None = None, talk: Talk | None = None
) -> tuple[Answer, list[Paper]]:
    desk = desk or desk_in(folder, GEAR)
    answer = desk.ask(question, talk)
    assert answer.drawings is not None, shown(answer)
    return answer, [Paper(Path(row.path).read_text("utf-8")) for row in answer.drawings]


@pytest.mark.parametrize("name", ASKED)
def test_every_drawing_is_legible_and_on_its_page(name: str, tmp_path: Path) -> None:
    answer, papers = drawn(ASKED[name], tmp_path)
    assert answer.status == 0
    assert papers
    for paper in papers:
        assert faults(paper.document) == []


@pytest.mark.parametrize("name", [name for name in ASKED if name != PAST_LIFE_SIZE])
def test_every_length_drawn_is_the_number_of_the_record(name: str, tmp_path: Path) -> None:
    answer, papers = drawn(ASKED[name], tmp_path)
    record = record_of(answer, None)["quantities"]
    nominal = {row.name: row.value.nominal for row in answer.quantities if row.case in (None, "shortest")}
    met = 0
    for paper in papers:
        for row in paper.drawn():
            quantity = NAMED.get(row.quantity, row.quantity)
            if row.quantity == "crop_mm":
                sides = record["crop_width_mm"]["least"], record["crop_height_mm"]["least"]
                assert ((row.wide_paper or 0.0) / row.scale, row.paper / row.scale) == pytest.approx(sides, abs=2e-3)
                met += 1
            elif quantity in nominal and row.of in ("", "magnified"):
                length = row.paper / row.scale
                assert length == pytest.approx(abs(nominal[quantity]), rel=1e-4, abs=2e-3 / row.scale), quantity
                told = record[quantity] if isinstance(record[quantity], dict) else record[quantity][0]
                ends = sorted((told["least"], told["greatest"]))
                near = 1e-5 * row.mm + 1e-9  # it is written with six figures
                assert any(ends[0] - near <= one <= ends[1] + near for one in (row.mm, -row.mm)), quantity
                met += 1
    assert met >= 3


@pytest.mark.parametrize("name", [name for name in ASKED if name not in ("glass",)])
def test_the_seat_and_the_error_drawn_are_those_of_the_chain_in_the_record(name: str, tmp_path: Path) -> None:
    desk = desk_in(tmp_path, GEAR)
    answer, papers = drawn(ASKED[name], tmp_path, desk)
    assert answer.drawings
    chain = record_of(answer, desk.knowledge)["chains"][answer.drawings[0].number - 1]
    error = chain["register_error_mm"]
    pieces = [row for row in chain["pieces"] if row["kind"] not in ("thread-alike", "shared-bayonet")]
    drawn_pieces = [row for row in papers[0].drawn() if row.quantity == "thickness_mm"]
    for row in pieces:
        ends = row["thickness_mm"]
        found = [one for one in drawn_pieces if one.of == row["id"]]
        assert found, row["id"]
        length = found[0].paper / found[0].scale
        assert any(ends["least"] - 0.01 <= one <= ends["greatest"] + 0.01 for one in (length, -length)), row["id"]
    if papers[0].has("register_error_mm"):
        length = papers[0].one("register_error_mm").paper / papers[0].one("register_error_mm").scale
        assert any(error["least"] - 2e-3 <= one <= error["greatest"] + 2e-3 for one in (length, -length))


def test_all_the_pieces_that_are_named_are_drawn(tmp_path: Path) -> None:
    _, papers = drawn(ASKED["tubes and helicoid"], tmp_path)
    pieces = {row.of for row in papers[0].drawn() if row.quantity == "thickness_mm"}
    assert {"m42-tube-28", "m42-tube-14", "m42-tube-7", "m42-helicoid-12-17"} <= pieces


def test_in_feet_no_distance_is_told_in_metres(tmp_path: Path) -> None:
    _, papers = drawn("draw the distances of the avocet on the skiff in feet, marks at 2 ft, 4 ft", tmp_path)
    words = papers[0].words()
    assert any(word == "2 ft" or word == "24 in" for word in words)
    assert not [word for word in words if re.search(r"\d (?:m|cm)\b", word)]
    _, plain = drawn("draw the distances of the avocet on the skiff", tmp_path)
    assert not [word for word in plain[0].words() if re.search(r"\d (?:ft|in)\b", word)]


def test_the_second_chain_is_drawn_when_it_is_pointed_at(tmp_path: Path) -> None:
    desk, talk = desk_in(tmp_path, GEAR), Talk()
    chains = desk.ask("how do I get the avocet on the skiff", talk).chains or ()
    answer, papers = drawn("draw the second one", tmp_path, desk, talk)
    assert answer.drawings
    assert {row.number for row in answer.drawings} == {2}
    (link,) = chains[1].listed.judged.chain.ids
    assert papers[0].one("thickness_mm", link)
    again, _ = drawn("draw it", tmp_path, desk, talk)
    assert [row.path for row in again.drawings or ()] == [row.path for row in answer.drawings]


def test_a_drawing_at_another_stop_has_another_beam_and_leaves_the_talk_as_it_was(tmp_path: Path) -> None:
    desk, talk = desk_in(tmp_path, GEAR), Talk()
    desk.ask("how do I get the avocet on the skiff", talk)
    before = talk.question
    _, wide = drawn("draw the section", tmp_path, desk, talk)
    _, closed = drawn("draw the section at f/8", tmp_path, desk, talk)
    widths = [paper.one("beam_mm").paper / paper.one("beam_mm").scale for (paper,) in (wide, closed)]
    assert widths == pytest.approx([25 / 1.4, 25 / 8], abs=2e-3)
    assert talk.question is not None
    assert before is not None
    assert (talk.question.intent, talk.question.f_number) == (before.intent, before.f_number)
    assert len(talk.rows) == 3


def test_another_body_is_a_new_question(tmp_path: Path) -> None:
    desk, talk = desk_in(tmp_path, GEAR), Talk()
    desk.ask("how do I get the avocet on the skiff", talk)
    answer, papers = drawn("draw it on the coracle", tmp_path, desk, talk)
    assert answer.question is not None
    assert papers[0].one("body_register_mm").mm == pytest.approx(17.526)
    after = desk.ask("at f/4?", talk)
    assert after.intent == "chain"
    assert (after.chains or ())[0].listed.judged.setup.body.id == "coracle"


def test_what_cannot_be_drawn_says_which_fact_and_how_to_find_it(tmp_path: Path) -> None:
    answer, _ = drawn("draw the stilt on an E-mount body", tmp_path)
    text = " ".join(shown(answer).split())
    assert [row.kind for row in answer.drawings or ()] == ["section"]
    assert "Not drawn: the frame; the image circle of the lens is not known." in text
    assert "to find the image circle of the lens: throw a far bright scene" in text
    assert "to find the focal length: it is engraved" in text
    assert "to find how far the rear reaches: lay a straight edge" in text


def test_a_frame_that_cannot_be_drawn_is_answered_no(tmp_path: Path) -> None:
    answer, papers = drawn("draw the frame of the stilt on an E-mount body", tmp_path)
    assert (answer.status, papers) == (1, [])
    assert list(tmp_path.iterdir()) == []


def test_glass_in_the_stack_is_shown_and_said_to_be_drawn_at_no_place(tmp_path: Path) -> None:
    _, papers = drawn("draw the stack of the teal on the skiff with a 0.72 reducer", tmp_path)
    assert "glass 0.72x: where it sits is not" in " ".join(papers[0].words())
    assert not papers[0].has("beam_mm")


def test_several_lenses_are_each_drawn(tmp_path: Path) -> None:
    answer, _ = drawn("draw the frame of the wren and the avocet on the skiff", tmp_path)
    assert sorted(path.name for path in tmp_path.iterdir()) == ["avocet-on-skiff-frame.svg", "wren-on-skiff-frame.svg"]
    assert all(isinstance(row.value, Interval) and row.case for row in answer.quantities)


def test_without_a_folder_nothing_is_drawn() -> None:
    answer = desk_of(GEAR).ask("draw the avocet on the skiff")
    assert answer.status == 1
    assert not answer.drawings
    assert "no folder" in shown(answer)


def test_a_ring_to_be_made_is_drawn_as_thick_as_it_must_be(tmp_path: Path) -> None:
    answer, papers = drawn("draw the ring to make for a B4 lens on an NX body", tmp_path)
    assert "a ring of 22.5 mm to be made" in answer.lines[0].text
    seat = papers[0].one("seat_mm")
    assert seat.paper / seat.scale == pytest.approx(22.5)


def test_where_no_ring_can_be_made_that_comes_first(tmp_path: Path) -> None:
    answer, _ = drawn("draw the ring I must make for a QBM lens on a P645 body", tmp_path)
    assert answer.lines[0].text.startswith("No ring can be made for that")


def test_a_lens_that_may_meet_the_mirror_is_warned_of_beside_its_drawing(tmp_path: Path) -> None:
    answer, _ = drawn("draw the godwit on a K-mount full frame body", tmp_path)
    assert any("mirror" in line.text for line in answer.lines if line.kind in ("danger", "caution"))


def test_a_register_that_is_only_usual_is_drawn_as_such(tmp_path: Path) -> None:
    desk = desk_in(tmp_path)
    desk.ask("draw a 50mm f/2.8 enlarger lens on E with a 17-31 helicoid", Talk())
    section = next(tmp_path.glob("*section.svg")).read_text(encoding="utf-8")
    assert "lens register, usual" in section
    assert "its own is not known" in section
