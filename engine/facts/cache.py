"""Facts kept prepared in the user's cache folder under the content they came from; a bad one costs time only."""

from __future__ import annotations

import json
import os
from collections.abc import Iterable
from contextlib import suppress
from hashlib import sha256
from typing import Any, Final

from engine.facts.files import FactFile, Layer

SCHEMA: Final = "1"  # of the payload; what reads the facts is in the key by its own text
LARGEST: Final = 100_000_000  # bytes; nothing that was written here is near it
_HEAD: Final = b"ringpath facts"


def first_key() -> str | None:
    """The key under the first layer: the modules that turn files into records, as they stand. None: nothing is kept."""
    facts = os.path.dirname(__file__)
    root = os.path.dirname(os.path.dirname(facts))
    digest = sha256(SCHEMA.encode())
    try:
        for room in (facts, os.path.join(root, "engine", "base"), os.path.join(root, "grammar")):
            for name in sorted(os.listdir(room)):
                if name.endswith(".py") and (room != os.path.join(root, "grammar") or name == "values.py"):
                    with open(os.path.join(room, name), "rb") as file:
                        digest.update(file.read())
    except OSError:
        return None
    return digest.hexdigest() if folder() else None


def folder() -> str | None:
    """Where prepared facts are kept: $RINGPATH_CACHE, else $XDG_CACHE_HOME, else ~/.cache; None where none is told."""
    told = os.environ.get("RINGPATH_CACHE")
    if told:
        return os.path.join(os.path.abspath(told), "ringpath")
    told = os.environ.get("XDG_CACHE_HOME", "")
    # a path from the current folder must be passed over, says the XDG base directory specification
    base = told if os.path.isabs(told) else os.path.join(os.path.expanduser("~"), ".cache")
    return os.path.join(base, "ringpath") if os.path.isabs(base) else None


def key_of(before: str, layer: Layer, files: Iterable[FactFile]) -> str:
    """A key that changes with each file of the layer and with `before`, the key of what it is laid over."""
    digest = sha256(f"{before}\n{layer.kind}\n".encode())
    for file in files:
        digest.update(f"{file.inside}\n{len(file.data)}\n".encode("utf-8", "surrogateescape"))
        digest.update(file.data)
    return digest.hexdigest()


def kept(layer: Layer, key: str) -> Any:
    """The payload that was kept for the layer under this key, or None."""
    return kept_at(_slot(layer), key)


def kept_at(slot: str, key: str) -> Any:
    """The payload that was kept in this slot under this key, or None."""
    path = _path(slot)
    try:
        if path is None:
            return None
        with open(path, "rb") as file:
            if hasattr(os, "getuid") and os.fstat(file.fileno()).st_uid != os.getuid():
                return None  # somebody else's words
            head, _, body = file.read(LARGEST).partition(b"\n")
        if head != _headline(key, body):
            return None
        return json.loads(body, parse_constant=_refuse)
    except (OSError, ValueError, RecursionError):
        return None


def keep(layer: Layer, key: str, payload: Any) -> None:
    """Keeps the payload in the place of the layer's last one; does nothing where it cannot."""
    keep_at(_slot(layer), key, payload)


def keep_at(slot: str, key: str, payload: Any) -> None:
    """Keeps the payload in the place of the slot's last one; does nothing where it cannot."""
    path = _path(slot)
    if path is None:
        return
    passing = f"{path}.{os.getpid()}"
    try:
        body = json.dumps(payload, separators=(",", ":"), allow_nan=False).encode()
        os.makedirs(os.path.dirname(path), mode=0o700, exist_ok=True)
        with open(passing, "xb", opener=_for_me_alone) as file:
            file.write(_headline(key, body) + b"\n" + body)
        os.replace(passing, path)
    except (OSError, ValueError):
        with suppress(OSError):
            os.unlink(passing)


def _slot(layer: Layer) -> str:
    name = sha256(os.path.abspath(layer.path).encode("utf-8", "surrogateescape")).hexdigest()[:16]
    return f"{layer.kind}-{name}"


def _path(slot: str) -> str | None:
    base = folder()
    return base and os.path.join(base, f"{slot}.json")


def _headline(key: str, body: bytes) -> bytes:
    return b"%s %s %s" % (_HEAD, key.encode(), sha256(body).hexdigest().encode())


def _for_me_alone(path: str, flags: int) -> int:
    return os.open(path, flags, 0o600)


def _refuse(constant: str) -> Any:
    raise ValueError(constant)
