"""The work of one keystroke with 20,000 names of one's own: python -m tests.bench.keystroke [NAMES] [--whole]

Lines are typed letter by letter; after each letter the line is marked, what could come next is looked up as if Tab were
pressed, and the bottom line is made. Prints the median and the worst of these, and how long the prompt takes to make
ready. With --whole the letters go through the prompt itself, drawing and all, with the menu opened at each.
"""

from __future__ import annotations

import random
import statistics
import sys
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path

from prompt_toolkit.completion import CompleteEvent
from prompt_toolkit.document import Document

from engine.ask import Desk
from engine.doors.prompt import Guide, bottom_line
from engine.talk import Talk

NAMES = 20_000
SYLLABLES = ("ka", "lo", "mi", "ter", "na", "sul", "pe", "ro", "vin", "ta", "gre", "o", "ster", "fa", "bil", "du")
LINES = (
    "how do I get a {name} lens on my E-mount APS-C body without glass, at most 2 adapters",
    "can the {name} reach infinity on a Micro Four Thirds body at f/8",
    "how close does my {slip} focus on the {other} with a helicoid",
    "what looks like M42 or m24 and is it an e-mont thing",
    "wibble wobber somthing anythin mispeld forrest whatevr gizmos blurbly exposurre adaptter hellicoid",
)


def made_up(count: int) -> list[str]:
    """Names of two words, each of two to four syllables, none twice; the same at every run."""
    chance = random.Random(5)
    found: dict[str, None] = {}
    while len(found) < count:
        words = ["".join(chance.choices(SYLLABLES, k=chance.randrange(2, 5))) for _ in range(2)]
        found[" ".join(words)] = None
    return list(found)


def gear_of(names: list[str], folder: Path) -> Path:
    path = folder / "gear.yaml"
    rows = [f"  own-{n}: {{name: {name}, mount: c, focal_length: 25 mm}}\n" for n, name in enumerate(names)]
    path.write_text("lenses:\n" + "".join(rows), "utf-8")
    return path


def typed(names: list[str]) -> Iterator[str]:
    """Each line as it grows."""
    name, other = names[len(names) // 3], names[len(names) // 2]
    slip = name[:3] + name[4] + name[3] + name[5:]
    for line in LINES:
        whole = line.format(name=name, other=other, slip=slip)
        for size in range(1, len(whole) + 1):
            yield whole[:size]


def milliseconds_of_work(guide: Guide, memory: Talk, lines: Iterator[str]) -> list[tuple[float, str]]:
    """What each line costs: the time that it works itself, not that it waits for the machine."""
    event = CompleteEvent(completion_requested=True)
    out = []
    for line in lines:
        document = Document(line)
        before = time.thread_time()
        guide.lex_document(document)(0)
        list(guide.get_completions(document, event))
        bottom_line(memory, 80)
        out.append(((time.thread_time() - before) * 1000, line))
    return out


def milliseconds_of_the_prompt(guide: Guide, memory: Talk, lines: Iterator[str]) -> list[tuple[float, str]]:
    """The same through a prompt whose screen is drawn, but goes nowhere."""
    from prompt_toolkit import PromptSession
    from prompt_toolkit.application import create_app_session
    from prompt_toolkit.input import create_pipe_input
    from prompt_toolkit.output import DummyOutput

    out: list[tuple[float, str]] = []
    with create_pipe_input() as keys, create_app_session(input=keys, output=DummyOutput()):
        session: PromptSession[str] = PromptSession(
            "? ", completer=guide, lexer=guide, bottom_toolbar=lambda: bottom_line(memory, 80)
        )

        def work() -> None:
            app, buffer = session.app, session.default_buffer
            for line in lines:
                before = time.perf_counter()
                buffer.document = Document(line)
                rows = list(guide.get_completions(buffer.document, CompleteEvent(completion_requested=True)))
                if rows:
                    buffer._set_completions(completions=rows)
                app._redraw()
                out.append(((time.perf_counter() - before) * 1000, line))
            app.exit(result="")

        def begin() -> None:
            assert session.app.loop is not None
            session.app.loop.call_soon(work)

        session.app.pre_run_callables.append(begin)
        session.prompt()
    return out


def main() -> None:
    count = max(next((int(word) for word in sys.argv[1:] if word.isdigit()), NAMES), 1)
    names = made_up(count)
    with tempfile.TemporaryDirectory() as folder:
        desk = Desk((), gear_of(names, Path(folder)))
        assert not desk.problems, desk.problems[:3]
    memory = Talk()
    desk.ask("how do I get a C lens on my E-mount body", memory)
    guide = Guide(desk, memory, lambda: 80)
    before = time.perf_counter()
    keys = len(guide.offers.keys)
    ready = (time.perf_counter() - before) * 1000
    measure = milliseconds_of_the_prompt if "--whole" in sys.argv else milliseconds_of_work
    rows = measure(guide, memory, typed(names))
    times = sorted(one for one, _ in rows)
    worst, line = max(rows)
    print(f"{count} own names, {keys} names and words in all, made ready in {ready:.0f} ms")
    print(
        f"{len(rows)} keystrokes: median {statistics.median(times):.2f} ms, "
        f"1 in 100 above {times[len(times) * 99 // 100]:.2f} ms, worst {worst:.2f} ms"
    )
    print(f"worst after: {line}")


if __name__ == "__main__":
    main()
