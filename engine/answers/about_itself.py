"""What is asked of the program itself: how to tell it of one's gear, where its numbers come from, what it cannot do."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from engine.answers.parts.answer import Line

# sentences that teach; a test says every one of them
TEACHING: Final = (
    ("a lens", "my avocet is a 25mm f/1.4 C-mount lens, made for 16mm"),
    ("a body", "my dory is an E-mount APS-C body"),
    ("a measurement", "the collar of avocet is 24 mm"),
    ("what was seen", "avocet reaches infinity on the dory: I tried it"),
    ("a mistake put right", "the focal length of avocet is 26 mm"),
    ("no more", "forget avocet"),
)


def _teaching() -> tuple[Line, ...]:
    return (
        Line("head", "Tell it in a sentence; it is read back, and 'yes' keeps it:"),
        *(Line("fact", f"{kind}: {example}", 1) for kind, example in TEACHING),
        Line(
            "text",
            "It goes into your gear file with the date, as your own; that file is named by --gear FILE at the start. "
            "'list gear' shows what is in it. What you measured counts before what is shipped, for that thing alone.",
        ),
    )


def _sources() -> tuple[Line, ...]:
    return (
        Line(
            "head",
            "Every number comes from a fact with its source or from a formula, and what is not known is said to be so.",
        ),
        Line("text", "Ask 'why?' after an answer: it goes from the verdict down to the facts, each with its source."),
        Line("text", "Ask 'are you sure?': it tells what is known, assumed and unknown, and what to measure first."),
        Line(
            "text",
            "Facts are standard, told by two sources, by one, or from memory. Rings as sold differ from their figure "
            "by hundredths; measure yours. Try infinity on a far thing before you rely on it.",
        ),
    )


def _limits() -> tuple[Line, ...]:
    return (
        Line(
            "head",
            "It does not know your very lens: its rear, its iris, its wear. What is not told or measured, it asks for.",
        ),
        Line("text", "No repairs, no shops, and no lens or camera is valued or ranked; for repairs see a technician."),
        Line("text", "'help' shows what can be asked."),
    )


def _itself() -> tuple[Line, ...]:
    return (
        Line(
            "head",
            "A knowledge base of mounts, threads and adapters that computes how a lens sits on a camera and says why.",
        ),
        Line("text", "It runs on your machine alone: nothing is looked up or sent. 'help' shows what can be asked."),
    )


ABOUT: Final[Mapping[str, tuple[Line, ...]]] = {
    "teaching": _teaching(),
    "sources": _sources(),
    "limits": _limits(),
    "itself": _itself(),
}
