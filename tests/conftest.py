"""What holds for all tests: no deadlines, memory seldom searched, and prepared facts kept in a folder of this run.

The folder is shared by its processes.
"""

from __future__ import annotations

import gc
import os
import shutil
import sys
import tempfile

import pytest
from hypothesis import settings

from tests.examples import DAILY, LONG

MARKED = "long"
SLOW = ("outside", "render", "doors")  # rooms of which a file may take half a minute
KEPT_IN = pytest.StashKey[str]()


def pytest_configure(config: pytest.Config) -> None:
    """Nothing is read from what the user keeps, and the commands that tests start need not prepare the facts anew."""
    settings.load_profile(LONG if _is_long(config) else DAILY)
    # the command is started some hundred times and each test module is compiled by every worker
    os.environ.pop("PYTHONDONTWRITEBYTECODE", None)
    sys.dont_write_bytecode = False
    gc.set_threshold(500_000, 20, 20)  # searching all that the tests hold took a fifth of their time
    if "PYTEST_XDIST_WORKER" not in os.environ:  # a worker has the folder of the run it belongs to
        config.stash[KEPT_IN] = os.environ["RINGPATH_CACHE"] = tempfile.mkdtemp(prefix="ringpath-tests-")


@pytest.hookimpl(tryfirst=True)
def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    """In the long run tests of random examples try all of theirs. What takes longest begins first."""
    if _is_long(config):
        for item in items:
            if getattr(getattr(item, "obj", None), "is_hypothesis_test", False):
                item.add_marker(MARKED)
    items.sort(key=lambda item: item.path.parent.name not in SLOW)


def _is_long(config: pytest.Config) -> bool:
    return str(config.getoption("markexpr")) == MARKED


def pytest_unconfigure(config: pytest.Config) -> None:
    folder = config.stash.get(KEPT_IN, None)
    if folder is not None:
        shutil.rmtree(folder, ignore_errors=True)


def pytest_xdist_auto_num_workers(config: pytest.Config) -> int:
    """One more than there are processors: many tests wait for a terminal or for a process of their own."""
    return (os.cpu_count() or 1) + 1
