"""How wide the terminal is."""

from __future__ import annotations

import os
import sys
from typing import Final

USUAL: Final = 80


def columns() -> int:
    """Columns as $COLUMNS or the terminal tells them, else the usual number; what `shutil` does, without loading it."""
    told = os.environ.get("COLUMNS", "")
    if told.isascii() and told.isdecimal() and int(told) > 0:
        return int(told)
    try:
        return os.get_terminal_size(sys.__stdout__.fileno() if sys.__stdout__ else -1).columns or USUAL
    except (ValueError, OSError):
        return USUAL
