"""Talks put to a desk turn by turn, and what an answer says in one line."""

from __future__ import annotations

from engine.answers.parts.answer import Answer
from engine.ask import Desk
from engine.talk import Talk


def talk(club: Desk, *turns: str) -> list[Answer]:
    memory = Talk()
    return [club.ask(turn, memory) for turn in turns]


def flat(answer: Answer) -> str:
    return " ".join(" ".join(line.text for line in answer.lines).split())
