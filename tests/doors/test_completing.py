"""What is offered after a text, and in which order."""

from __future__ import annotations

from pathlib import Path

import pytest

from engine.ask import Desk
from engine.doors.completing import MOST, Candidate, candidates
from engine.doors.highlighting import as_typed
from engine.doors.offers import Offers, offers_of

GEAR = """
lenses:
  curlew: {name: curlew, mount: c, focal_length: 25 mm, f_number: f/1.4, made_for: 16mm}
  emberiza: {name: emberiza, mount: m42, focal_length: 58 mm, f_number: f/2}
bodies:
  skiff: {name: skiff, mount: e-mount, format: aps-c-1.5}
adapters:
  my-cup: {name: my cup, front: c, rear: e-mount, kind: recessed, thickness: -0.46 mm, seat_basis: measured,
    cup: {bore: 32 mm, depth: 0.46 mm}, owned: 1}
"""


class Typing:
    """A user with a few things of their own."""

    def __init__(self, gear: Path) -> None:
        self.desk = Desk((), gear)
        assert not self.desk.problems
        self.offers: Offers = offers_of(self.desk.catalogue, as_typed(self.desk.lexicon))

    def offered(self, text: str, talking: bool = False) -> list[Candidate]:
        return candidates(text, self.offers, self.desk.catalogue, talking)

    def lines(self, text: str) -> list[str]:
        """The line as it is with each candidate put in."""
        return [text[: len(text) - row.back] + row.text for row in self.offered(text)]


@pytest.fixture(scope="module")
def typing(tmp_path_factory: pytest.TempPathFactory) -> Typing:
    gear = tmp_path_factory.mktemp("gear") / "gear.yaml"
    gear.write_text(GEAR, "utf-8")
    return Typing(gear)


def test_an_empty_line_offers_whole_questions_that_can_be_asked(typing: Typing) -> None:
    rows = typing.offered("")
    assert "what looks like M42" in [row.text for row in rows]
    assert all(row.says and row.back == 0 for row in rows)
    assert all(typing.desk.ask(row.text).unread is None for row in rows)


def test_after_an_answer_follow_ups_are_offered_first(typing: Typing) -> None:
    assert typing.offered("", talking=True)[0].text == "why?"


@pytest.mark.parametrize(
    ("text", "first"),
    [
        ("how do I get a C-mo", "how do I get a C-mount"),
        ("how do I get a c-", "how do I get a C-mount"),
        ("how do I get a M4", "how do I get a M42"),
        ("how do I get a C-mount lens on a micro f", "how do I get a C-mount lens on a Micro Four Thirds"),
        ("how do I get a C-mount ", "how do I get a C-mount lens"),
        ("how do I get a C-mount lens ", "how do I get a C-mount lens on"),
        ("how do I get a C lens on my E-mount ", "how do I get a C lens on my E-mount body"),
        ("C lens on E-mount body witho", "C lens on E-mount body without glass"),
        ("C lens on E-mount body without ", "C lens on E-mount body without glass"),
        ("what is a heli", "what is a helicoid"),
        ("hel", "help"),
    ],
)
def test_what_begins_as_typed_goes_on(typing: Typing, text: str, first: str) -> None:
    assert first in typing.lines(text)[:3]


@pytest.mark.parametrize(
    ("text", "first"),
    [
        ("how do I get a QBM lens on an e-mont", "how do I get a QBM lens on an E-mount"),
        ("what is a helicod", "what is a helicoid"),
        ("what is a hleicoid", "what is a helicoid"),
        ("can a QBM lens reach infinty", "can a QBM lens reach infinity"),
        ("micro four thrids", "Micro Four Thirds"),
        ("does the culrew", "does the curlew"),
        ("does the emberzia", "does the emberiza"),
        ("what is a heilcod", "what is a helicoid"),
    ],
)
def test_what_is_misspelt_is_offered_as_it_is_spelt(typing: Typing, text: str, first: str) -> None:
    rows = typing.lines(text)
    assert first in rows[:1] or rows[0].startswith(first)


def test_a_slip_is_looked_for_beside_the_few_that_begin_so(typing: Typing) -> None:
    rows = [row.text for row in typing.offered("what looks like m24")]
    assert rows.index("M24 x 0.5") < rows.index("M42") < 4


def test_own_gear_comes_before_everyday_mounts(typing: Typing) -> None:
    rows = [row.text for row in typing.offered("how do I get my c")]
    assert rows.index("curlew") == 0
    assert rows.index("C-mount") < rows.index("Contarex")
    rows = [row.text for row in typing.offered("how do I get my C-mount lens on my ")]
    assert rows[0] == "skiff"
    assert "curlew" not in rows


def test_mounts_of_many_everyday_adapters_come_before_rare_ones(typing: Typing) -> None:
    rows = [row.text for row in typing.offered("how do I get a QBM lens on a ")]
    assert rows.index("E-mount") < 10
    rows = [row.text for row in typing.offered("how do I get a QBM lens on a e")]
    assert rows.index("E-mount") < rows.index("Eyemo")


def test_after_on_only_what_a_lens_goes_on_is_offered(typing: Typing) -> None:
    says = {row.says.split(",")[0] for row in typing.offered("how do I get a C lens on ")}
    assert says <= {"mount", "format", "body", "your body"}, says
    rows = [row for row in typing.offered("how do I get a C lens on w") if row.back == 1]
    assert rows
    assert not any(row.says.startswith(("asks", "where", "limit")) for row in rows)


def test_each_is_described(typing: Typing) -> None:
    def said(text: str, wanted: str) -> str:
        return next(row.says for row in typing.offered(text) if row.text == wanted)

    assert said("how do I get a C-m", "C-mount") == "mount, 17.526 mm register"
    assert said("how do I get my cur", "curlew") == "your 25 mm f/1.4 C lens"
    assert said("on my ski", "skiff") == "your body, E-mount, APS-C"
    assert said("will it cover super 1", "Super 16").startswith("format, ")
    assert all(len(row.says) <= 44 for row in typing.offered("s"))


def test_at_most_thirty_are_offered_each_once(typing: Typing) -> None:
    for text in ("a", "s", "m", "f", "how do I get a ", "what is a ", "on "):
        rows = typing.offered(text)
        assert len(rows) <= MOST
        assert len({row.text.casefold() for row in rows}) == len(rows)


def test_what_stands_there_already_is_not_offered(typing: Typing) -> None:
    assert "lens" not in [row.text for row in typing.offered("a C-mount lens")]
    assert "curlew" not in [row.text for row in typing.offered("my curlew")]


def test_only_what_was_typed_is_replaced_whatever_marks_are_before_it(typing: Typing) -> None:
    assert "an “E-mount" in typing.lines("an “e-mo")
    assert "½ in on E-mount" in typing.lines("½ in on e-mo")


def test_nothing_is_offered_for_what_is_like_nothing(typing: Typing) -> None:
    assert typing.offered("xyzzyq") == []


def test_names_are_not_cut_where_they_are_whole(typing: Typing) -> None:
    """'on e' is no beginning of 'one', nor 'a r-m' of 'AR-mount'."""
    assert all(row.text[:2] != "AR" for row in typing.offered("get a r-m"))


def test_conditions_and_orders_are_offered_only_where_all_of_ones_own_is_asked_about(typing: Typing) -> None:
    rows = {row.text: row.says for row in typing.offered("which of my lenses ")}
    assert rows["reach infinity"] == "condition"
    assert "which of my lenses cover the skiff, widest first" in typing.lines("which of my lenses cover the skiff, wid")
    assert "how do I get a widest first" not in typing.lines("how do I get a wid")
    assert "skiff" in [row.text for row in typing.offered("which of my lenses reach infinity on ")][:3]
