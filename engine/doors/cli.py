"""The command `ringpath`: one question, a talk, a check of the facts, a scenario replayed."""

from __future__ import annotations

import gc
import sys
from argparse import SUPPRESS, ArgumentParser, HelpFormatter, Namespace
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn

if TYPE_CHECKING:
    from engine.ask import Desk

FACTS_INVALID = 3
NOT_UNDERSTOOD = 2
INTERRUPTED = 130
_COMMAND = "COMMAND"


class _Parser(ArgumentParser):
    """Tells wrong usage in one line, and where a question goes that stands in place of a command."""

    def error(self, message: str) -> NoReturn:
        from engine.base.plain import plain

        asks = "; to ask a question: ringpath ask 'QUESTION'" if message.startswith(f"argument {_COMMAND}:") else ""
        self.exit(NOT_UNDERSTOOD, f"{self.prog}: {plain(message)}{asks}; see {self.prog} --help\n")


def parser() -> ArgumentParser:
    """The command line. Built without the facts, so that --help is instant."""
    from engine.doors.columns import columns

    width = columns() - 2

    def style(prog: str) -> HelpFormatter:
        # left to itself it loads what unpacks archives to learn the width
        return HelpFormatter(prog, width=width)

    top = _Parser(
        prog="ringpath",
        description="Which adapters seat a lens on a camera body, whether it then focuses to infinity, and why.",
        epilog="Without a command it talks: type a question, or 'help'. Questions on a pipe are answered one a line.",
        formatter_class=style,
    )
    shared = _Parser(add_help=False, formatter_class=style)
    top.add_argument("--version", action="store_true", help="tell the version and leave")
    for place in (top, shared):
        plain = place is shared
        place.add_argument(
            "--json", action="store_true", default=_default(plain, False), help="one JSON object an answer"
        )
        place.add_argument("--gear", type=Path, metavar="FILE", default=_default(plain, None), help="your gear file")
        place.add_argument(
            "--facts", type=Path, action="append", metavar="DIR", default=_default(plain, None),
            help="a folder of facts laid over the shipped ones; may be given again",
        )  # fmt: skip
        place.add_argument("--no-color", action="store_true", default=_default(plain, False), help="no colour")
    commands = top.add_subparsers(dest="command", metavar=_COMMAND)
    ask = commands.add_parser("ask", parents=[shared], formatter_class=style, help="answer one question and leave")
    ask.add_argument("question", nargs="+", help="the question; '-' reads it from standard input")
    check = commands.add_parser("check", parents=[shared], formatter_class=style, help="check facts and gear")
    check.add_argument("paths", nargs="*", type=Path, metavar="PATH", help="files or folders of facts, gear files")
    check.add_argument("--holes", action="store_true", help="also tell what the facts as a whole leave open")
    replay = commands.add_parser(
        "replay", parents=[shared], formatter_class=style, help="run a scenario and compare its answers"
    )
    replay.add_argument("scenarios", nargs="+", type=Path, metavar="SCENARIO", help="a scenario's folder or file")
    return top


def _default(shared: bool, value: object) -> object:
    # an option may stand before or after the command; the one after must not reset the one before
    return SUPPRESS if shared else value


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command and give its exit status; nothing but one line reaches the user when it fails."""
    words = list(sys.argv[1:] if arguments is None else arguments)
    collecting = gc.isenabled()
    gc.disable()  # nearly all that one question makes is needed until it is answered
    try:
        status = _run(parser().parse_args(words))
        sys.stdout.flush()
        return status
    except KeyboardInterrupt:
        return INTERRUPTED
    except BrokenPipeError:
        _close_quietly()
        return 0
    except SystemExit as leaving:
        return leaving.code if isinstance(leaving.code, int) else NOT_UNDERSTOOD
    except Exception as fault:  # the outermost line: a traceback must not reach the user
        from engine.base.plain import plain

        print(
            f"ringpath: a fault of its own ({type(fault).__name__}: {plain(str(fault))}); please report it",
            file=sys.stderr,
        )
        return NOT_UNDERSTOOD
    finally:
        gc.freeze()  # or the interpreter looks through all of it as it ends
        if collecting:
            gc.enable()


def _close_quietly() -> None:
    import os

    # the reader has gone: point stdout elsewhere so that the interpreter's last flush stays silent
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


def _run(options: Namespace) -> int:
    if options.command != "ask":
        gc.enable()
    if options.version:
        from importlib.metadata import PackageNotFoundError, version

        try:
            print(f"ringpath {version('ringpath')}")
        except PackageNotFoundError:
            print("ringpath, not installed")
        return 0
    if options.command == "check":
        from engine.doors.checking import check

        return check(options.paths, tuple(options.facts or ()), options.gear, options.holes)
    if options.command == "replay":
        from engine.doors.replay import replay_all

        return replay_all(options.scenarios)
    from engine.ask import Desk
    from engine.facts.gearplace import gear_path, usual_gear_path

    gear = gear_path(options.gear)
    desk = Desk(tuple(options.facts or ()), gear, writes=gear or usual_gear_path(), folder=Path())
    if desk.problems:
        for problem in desk.problems:
            print(problem, file=sys.stderr)
        return FACTS_INVALID
    if options.command == "ask":
        return _ask(desk, " ".join(options.question), options)
    return _talk(desk, options)


def _ask(desk: Desk, words: str, options: Namespace) -> int:
    from engine.doors.saying import say

    return say(desk, sys.stdin.read() if words.strip() == "-" else words, options.json, _colour(options))


def _talk(desk: Desk, options: Namespace) -> int:
    import os

    terminal = sys.stdin.isatty() and sys.stdout.isatty()
    if terminal and not options.json and os.environ.get("TERM", "dumb") != "dumb":
        from engine.doors.prompt import talk

        return talk(desk, _colour(options))
    from engine.doors.saying import answer_lines

    return answer_lines(desk, sys.stdin, options.json, _colour(options), greet=terminal and not options.json)


def _colour(options: Namespace) -> bool:
    import os

    wanted = not options.no_color and "NO_COLOR" not in os.environ and os.environ.get("TERM") != "dumb"
    return wanted and sys.stdout.isatty()


if __name__ == "__main__":
    raise SystemExit(main())
