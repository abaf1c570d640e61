"""Dangers and cautions of several chains told together, each once with what it holds for."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from engine.answers.parts.answer import Line
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import listed
from engine.answers.seat.telling import finding_lines, finding_text
from engine.judging.judge import Judged


def cautions_of(named: Iterable[tuple[str, Judged]], knowledge: Knowledge, feet: bool) -> Iterator[Line]:
    """Dangers whole; what is only a caution once, with the names it holds for."""
    once: dict[str, list[str]] = {}
    for name, judged in named:
        for finding in judged.findings:
            if finding.severity == "danger":
                yield Line("danger", f"{name}: {finding_text(finding, judged, knowledge, feet)}")
            elif finding.severity == "caution":
                once.setdefault(finding_text(finding, judged, knowledge, feet), []).append(name)
    for text, names in once.items():
        yield Line("caution", f"{listed(list(dict.fromkeys(names)))}: {text}")


def warnings_of(judged: Judged, knowledge: Knowledge, feet: bool) -> tuple[Line, ...]:
    """The dangers and cautions of one chain, without its notes."""
    return tuple(line for line in finding_lines(judged, knowledge, feet) if line.kind in ("danger", "caution"))
