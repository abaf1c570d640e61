"""How sure a figure of a mount is, where that is asked of it: 'can I trust 63.3 for M645', 'AR, 40.5 or 40.7'."""

from __future__ import annotations

import re
from typing import Final

from engine.answers.found.mounts_named import likeliest
from engine.answers.parts.answer import Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import trimmed
from engine.base.compact import replace
from engine.base.interval import Measure, is_known
from engine.facts.records import Mount
from grammar.questions import Question

SURE: Final = "figure-sure"  # what a question mentions that asks how far a figure is to be trusted
EITHER: Final = "figure-either"  # and one that sets two figures against each other
ELSEWHERE: Final = "other-source"  # and one of what is printed elsewhere
REGISTER: Final = "figure-register"
THROAT: Final = "figure-throat"
NEAR: Final = 0.08  # so near to a figure, as a share of it, a number is that figure or a rival of it
WIDE: Final = 0.25  # throats are printed less alike: of the bore, of the seat, over the lugs
_PAIR: Final = 2
_NUMBER: Final = re.compile(r"(?<![\w.])\d+(?:\.\d+)?(?![\w])")
_SENTENCE: Final = re.compile(r"(?<=\.)\s+")
_OF_THROAT: Final = re.compile(r"throat|bore|printed", re.IGNORECASE)
_TRUST: Final = {
    "standard": "as its standard or its maker publishes it",
    "two-sources": "two sources or more agree",
    "one-source": "one source alone",
    "memory": "by the trade's memory alone",
}


def with_sureness(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind what the one mount's figure rests on, and which rivals of it are printed."""
    names = list(dict.fromkeys(likeliest(question, knowledge)))
    if question.mentions(ELSEWHERE) and len(names) > 1:
        return _with_rival(answer, question, [knowledge.catalogue.mounts[name] for name in names])
    if len(names) != 1 or answer.chains or question.follows:
        return answer
    mount = knowledge.catalogue.mounts[names[0]]
    told = [float(one) for one in _NUMBER.findall(question.text)]
    deep = mentions(question, REGISTER)
    wide = mentions(question, THROAT) and mount.coupling != "screw"  # of a screw the thread tells it
    register = _near(mount.register_mm, told, NEAR)
    throat = _near(mount.throat_mm, told, WIDE) if wide else 0
    spoken = wide or deep
    asked = mentions(question, SURE) and (register or throat or spoken)
    rivals = mentions(question, EITHER) and max(register, throat) > 1
    if not (asked or rivals):
        return answer
    line, rows = _told(mount, wide and not deep and throat >= register)
    return replace(answer, lines=(line, *answer.lines), quantities=(*rows, *(answer.quantities or ())))


def _with_rival(answer: Answer, question: Question, mounts: list[Mount]) -> Answer:
    """The answer behind what the register is that another source tells otherwise, and what ring that would make."""
    told = [float(one) for one in _NUMBER.findall(question.text)]
    known = [(mount, mount.register_mm) for mount in mounts if is_known(mount.register_mm)]
    near = sorted((abs(told[0] - size.nominal), n) for n, (_, size) in enumerate(known)) if len(told) == 1 else []
    if len(known) != _PAIR or not near or near[0][0] > NEAR * known[near[0][1]][1].nominal:
        return answer
    (mount, size), (_, other) = known[near[0][1]], known[1 - near[0][1]]
    line, rows = _told(mount, of_throat=False)
    seats = [abs(one - other.nominal) for one in (size.nominal, told[0])]
    rival = "" if not near[0][0] else (
        f" With {trimmed(told[0], 3)} mm the ring would be {trimmed(seats[1], 2)} mm and not {trimmed(seats[0], 2)} mm:"
        " a far point sharp at the infinity mark tells which is right of yours."
    )  # fmt: skip
    head = replace(line, text=f"{line.text}{rival}")
    return replace(answer, lines=(head, *answer.lines), quantities=(*rows, *(answer.quantities or ())))


def _near(size: Measure, told: list[float], share: float) -> int:
    """How many of the numbers are that figure, or nearly."""
    return sum(abs(one - size.nominal) <= share * size.nominal for one in told) if is_known(size) else 0


def _told(mount: Mount, of_throat: bool) -> tuple[Line, tuple[Quantity, ...]]:
    size = mount.throat_mm if of_throat else mount.register_mm
    name = "throat" if of_throat else "register"
    if not is_known(size):
        return Line("head", f"{mount.designation}: its {name} is not established: measure it."), ()
    spread = f", {trimmed(size.least, 2)} to {trimmed(size.greatest, 2)}" if size.greatest > size.least else ""
    notes = f"{mount.register_note} {mount.note}" if of_throat else mount.register_note
    said = [one for one in _SENTENCE.split(notes.strip()) if one and (not of_throat or _OF_THROAT.search(one))]
    note = f" {' '.join(said)}" if said else ""
    text = f"{mount.designation}: {name} {trimmed(size.nominal, 3)} mm{spread}, {_TRUST[mount.basis.confidence]}.{note}"
    key = "bore_mm" if of_throat else "register_mm"
    return Line("head", text), (Quantity(key, size, mount.id),)
