"""What the tests of answers share: a desk with the gear of a small club."""

from __future__ import annotations

import pytest

from engine.render.record import record_of
from engine.talk import Talk
from tests.answers.picture import LENSES
from tests.desks import desk_of


@pytest.fixture(scope="session")
def desk(tmp_path_factory):
    path = tmp_path_factory.mktemp("gear") / "gear.yaml"
    path.write_text(LENSES, encoding="utf-8")
    return desk_of(path)


@pytest.fixture(scope="module")
def club():
    """A desk without any gear."""
    return desk_of()


@pytest.fixture(scope="module")
def asked(desk):
    """The record of a question, with every number of a quantity under `all`."""

    def ask(text):
        return record_of(desk.ask(text), desk.knowledge)

    return ask


@pytest.fixture
def talked(club):
    """The record of the last line of a talk."""

    def say(*lines):
        talk = Talk()
        for line in lines:
            answer = club.ask(line, talk)
        return record_of(answer, club.knowledge)

    return say
