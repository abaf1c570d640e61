"""Where the user's gear file is: as told, else RINGPATH_GEAR, else the XDG data folder."""

from __future__ import annotations

import os
from pathlib import Path


def gear_path(told: Path | None) -> Path | None:
    """The gear file to read; None where none was told and none is there."""
    if told is not None:
        return told
    named = os.environ.get("RINGPATH_GEAR")
    if named:
        return Path(named)
    usual = usual_gear_path()
    return usual if usual.is_file() else None


def usual_gear_path() -> Path:
    """Where a gear file is looked for when none is named."""
    base = os.environ.get("XDG_DATA_HOME", "")
    folder = Path(base) if os.path.isabs(base) else Path.home() / ".local" / "share"
    return folder / "ringpath" / "gear.yaml"


def history_path() -> Path:
    """Where the prompt keeps the questions asked."""
    base = os.environ.get("XDG_STATE_HOME", "")
    folder = Path(base) if os.path.isabs(base) else Path.home() / ".local" / "state"
    return folder / "ringpath" / "history"
