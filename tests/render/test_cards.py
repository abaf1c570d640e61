"""Cards as a browser lays them out: nothing cut off on a phone or on paper, nothing split over sheets."""

from __future__ import annotations

from math import ceil
from pathlib import Path
from typing import Any

import pytest

from engine.ask import Desk
from engine.facts.catalogue import Catalogue
from engine.render.cards import page_of
from tests.desks import desk_of
from tests.render.pages import PHONE, Reading, laid_out, needs_browser, printed_pages

Layout = tuple[dict[str, Any], dict[str, Any]]  # on a phone, on paper
GEAR = Path(__file__).parents[1] / "data" / "cards-gear.yaml"
ASKED = [
    "card for the avocet on the skiff at f/2.8, 1/50 in full sun",
    "cards for all my lenses on the skiff",
    "cards for all my lenses on the punt in feet in open shade, 1/100",
    "cards for all my lenses on the ketch",
    "cards for the turnstone, the dunlin and the plover on all my bodies in feet",
    "card for a 300mm f/4 P6 lens on a 44x33 G-mount body",
    "cards for an 8mm f/1.9 D-mount lens and a C-mount lens on m43",
    "card for a 50mm f/2.8 enlarger lens on an E-mount APS-C body with a helicoid at sunset, iso 100",
    "card for an S-mount 6mm lens on a CS body",
    "card for an 85mm f/1.4 CY lens on an E-mount APS-C body with a 0.71 reducer, 2.39:1",
]


@pytest.fixture(scope="module")
def desk() -> Desk:
    return desk_of(GEAR)


def page(desk: Desk, question: str) -> str:
    answer = desk.ask(question)
    assert answer.document is not None, answer
    return answer.document.text


@pytest.fixture(scope="module")
def pages(desk: Desk) -> dict[str, str]:
    return {question: page(desk, question) for question in ASKED}


@pytest.fixture(scope="module")
def stood(pages: dict[str, str], tmp_path_factory: pytest.TempPathFactory) -> dict[str, Layout]:
    """Each page as one browser lays them all out."""
    return dict(zip(pages, laid_out(list(pages.values()), tmp_path_factory.mktemp("pages")), strict=True))


@needs_browser
@pytest.mark.parametrize("question", ASKED)
def test_no_text_is_cut_off_on_a_phone_or_on_paper(
    pages: dict[str, str], question: str, stood: dict[str, Layout]
) -> None:
    count = len(Reading(pages[question]).cards)
    phone, paper = stood[question]
    assert phone["cards"] == count
    assert phone["wrong"] == []
    assert all(height >= PHONE[1] for height in phone["heights"])  # the next card is never on the same screen
    assert paper["cards"] == count
    assert paper["wrong"] == []
    assert len({round(height, 1) for height in paper["heights"]}) == 1


@needs_browser
def test_a_card_is_one_screen_of_a_phone(stood: dict[str, Layout]) -> None:
    heights = [height for phone, _ in stood.values() for height in phone["heights"]]
    # a name of a hundred letters may need more
    assert sum(height <= PHONE[1] for height in heights) >= len(heights) - 1


@needs_browser
@pytest.mark.parametrize("question", [ASKED[0], ASKED[3]])
def test_ten_cards_are_printed_to_a_sheet(pages: dict[str, str], question: str, tmp_path: Path) -> None:
    made = pages[question]
    assert printed_pages(made, tmp_path) == ceil(len(Reading(made).cards) / 10)


@needs_browser
def test_text_that_is_cut_off_would_be_found(pages: dict[str, str], tmp_path: Path) -> None:
    made = pages[ASKED[0]]
    long = made.replace("</h2>", f" {'and a word more ' * 40}</h2>")
    wide = made.replace("<td>", '<td style="min-width: 300px">')
    (_, long_paper), (wide_phone, _) = laid_out([long, wide], tmp_path)
    assert any("more than its height" in row or "outside" in row for row in long_paper["wrong"])
    assert any("wide" in row or "outside" in row for row in wide_phone["wrong"])


def test_the_page_needs_nothing_else(pages: dict[str, str]) -> None:
    made = pages[ASKED[1]]
    for word in ("<script", "http:", "https:", "@import", "url(", "<link", "<img", "javascript"):
        assert word not in made.lower()


def test_what_people_wrote_is_shown_as_words(desk: Desk) -> None:
    made = page(desk, "card for the ruff on the skiff")
    assert "<ruff>" not in made
    assert '<ruff> & "reeve"' in Reading(made).cards[0]["names"]


def test_no_cards_no_page(desk: Desk) -> None:
    assert desk.ask("card for the avocet").cards is None
    assert page_of(desk.ask(ASKED[0]).cards) == page(desk, ASKED[0])  # type: ignore[arg-type]


def lockers(facts: Catalogue) -> str:
    """A lens of every fourth mount there is, long and short, fast and slow, measured and hardly known."""
    rows = []
    for n, mount in enumerate(list(facts.mounts)[::4]):
        told = [f"name: bird {n}", f"mount: {mount}"]
        told += [f"focal_length: {(4, 12.5, 50, 135, 600)[n % 5]} mm"] if n % 7 else []
        told += [f"f_number: f/{(0.95, 1.4, 2.8, 5.6)[n % 4]}"] if n % 6 else []
        told += ["weight: 1.9 kg"] if n % 3 == 0 else []
        told += ["thoriated: yes"] if n % 4 == 0 else []
        told += ["rear_reach: 12 mm"] if n % 5 == 0 else []
        told += ["focusing: none"] if n % 8 == 0 else []
        rows.append(f"  bird-{n}: {{{', '.join(told)}}}")
    return "lenses:\n" + "\n".join(rows) + "\n"


@needs_browser
def test_no_text_is_cut_off_whatever_the_lens(tmp_path: Path) -> None:
    gear = tmp_path / "gear.yaml"
    gear.write_text(lockers(desk_of().catalogue), "utf-8")
    desk = Desk((), gear)
    assert not desk.problems
    made = page(desk, "cards for all my lenses on an E-mount APS-C body in feet in open shade")
    count = len(Reading(made).cards)
    assert count > 20
    for found in laid_out([made], tmp_path)[0]:
        assert found["cards"] == count
        assert found["wrong"] == []
    assert printed_pages(made, tmp_path) == ceil(count / 10)
