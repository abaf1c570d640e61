"""The time of one question against importing the parsers: python -m tests.bench.one_shot [RUNS]

Both commands run in this environment, in turn, as whole processes. The facts are prepared by a first run that is not
counted. Prints the median of each and of the ratio.
"""

from __future__ import annotations

import os
import statistics
import subprocess
import sys
import tempfile
import time

QUESTION = "how do I get a C lens on my E-mount body"


def seconds(command: list[str], environment: dict[str, str]) -> float:
    before = time.perf_counter()
    subprocess.run(command, env=environment, check=True, stdout=subprocess.DEVNULL)
    return time.perf_counter() - before


def main() -> None:
    runs = int(sys.argv[1]) if len(sys.argv) > 1 else 15
    with tempfile.TemporaryDirectory() as home:
        environment = os.environ | {"HOME": home, "XDG_CACHE_HOME": f"{home}/cache"}
        environment.pop("PYTHONDONTWRITEBYTECODE", None)
        ask = [sys.executable, "-m", "engine.doors.cli", "ask", QUESTION]
        parsers = [sys.executable, "-c", "import lark, yaml"]
        seconds(ask, environment)
        seconds(parsers, environment)
        asked, imported = [], []
        for _ in range(runs):
            asked.append(seconds(ask, environment))
            imported.append(seconds(parsers, environment))
    ratios = [one / other for one, other in zip(asked, imported, strict=True)]
    print(
        f"ask {statistics.median(asked) * 1000:.0f} ms, import lark, yaml {statistics.median(imported) * 1000:.0f} ms"
    )
    print(f"ratio {statistics.median(ratios):.2f} ({min(ratios):.2f} to {max(ratios):.2f}), {runs} runs of each")


if __name__ == "__main__":
    main()
