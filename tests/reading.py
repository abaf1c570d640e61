"""Test data read from YAML, by the quick reader where this machine has it."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import yaml

SAFE = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
TEXTS = getattr(yaml, "CBaseLoader", yaml.BaseLoader)  # every value as it is written


def loaded(path: Path, loader: Any = SAFE) -> Any:
    return yaml.load(path.read_text(encoding="utf-8"), Loader=loader)
