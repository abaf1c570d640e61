"""Which files a layer of facts is made of, read as bytes: *.yaml under its folder and nowhere else."""

from __future__ import annotations

import os
from collections.abc import Iterator, Sequence
from stat import S_ISREG
from typing import Final, Literal

from engine.base.compact import compact
from engine.base.place import Place
from engine.base.plain import plain
from engine.base.problem import Problem

LARGEST: Final = 4_000_000  # bytes; a file of facts beyond it is more likely not one


@compact
class Layer:
    """Facts laid over those before them. `path`: a folder, or one file. `needed`: it is told where it is missing."""

    kind: Literal["shipped", "extra", "gear"]
    path: str
    needed: bool = True

    @property
    def own(self) -> bool:
        return self.kind == "gear"


@compact
class FactFile:
    """One file: its name as shown, its name inside the layer, and its bytes or why there are none."""

    shown: str
    inside: str
    data: bytes = b""
    problem: Problem | None = None


def shipped_layer() -> Layer:
    """The facts that come with the program, wherever it is installed."""
    import kb

    assert kb.__file__ is not None
    return Layer("shipped", os.path.dirname(kb.__file__))


def shown_path(path: str) -> str:
    """The path as problems show it: from the current folder where it lies inside, else as given."""
    try:
        here = os.getcwd()
    except OSError:  # the current folder was removed
        return plain(path)
    absolute, before = os.path.abspath(path), here.rstrip(os.sep) + os.sep
    return plain(absolute[len(before) :] if absolute.startswith(before) else path)


def files_of(layer: Layer) -> Sequence[FactFile]:
    """The layer's files in the order of their names, read; a file that may not be read carries the problem."""
    if not os.path.isdir(layer.path):
        if not os.path.lexists(layer.path) and not layer.needed:
            return ()
        return (_read(layer.path, "", "a file or folder of facts"),)
    root = os.path.realpath(layer.path)
    try:
        names = sorted(_yaml_under(layer.path, ""))
    except OSError as error:
        shown = shown_path(error.filename or layer.path)
        return (_refused(shown, "", _said(error), "a folder that can be read"),)
    return tuple(_from_entry(layer, root, inside) for inside in names)


def _yaml_under(folder: str, inside: str) -> Iterator[str]:
    with os.scandir(folder) as entries:
        for entry in entries:
            name = f"{inside}{entry.name}"
            if entry.name.startswith("."):  # an editor's own
                continue
            if entry.is_dir(follow_symlinks=False):
                yield from _yaml_under(entry.path, f"{name}/")
            elif entry.name.endswith(".yaml") or (entry.is_symlink() and os.path.isdir(entry.path)):
                yield name


def _from_entry(layer: Layer, root: str, inside: str) -> FactFile:
    path = os.path.join(layer.path, inside)
    if os.path.islink(path):
        shown = shown_path(path)
        target = os.path.realpath(path)
        if not target.startswith(root.rstrip(os.sep) + os.sep):
            return _refused(shown, inside, "a link out of the folder", "facts that lie in the folder itself")
        if os.path.isdir(target):
            return _refused(shown, inside, "a link to a folder", "facts that lie in the folder itself")
    return _read(path, inside, "a file of facts")


def _read(path: str, inside: str, expected: str) -> FactFile:
    shown = shown_path(path)
    try:
        with open(path, "rb", opener=without_waiting) as file:
            state = os.fstat(file.fileno())
            if not S_ISREG(state.st_mode):
                return _refused(shown, inside, "no plain file", expected)
            data = file.read(min(state.st_size, LARGEST) + 1)
            if len(data) > state.st_size:  # it has grown meanwhile
                data += file.read(LARGEST + 1 - len(data))
    except OSError as error:
        return _refused(shown, inside, _said(error), expected)
    if len(data) > LARGEST:
        return _refused(shown, inside, "a larger file", f"at most {LARGEST // 1_000_000} MB in a file")
    return FactFile(shown, inside, data)


def without_waiting(path: str, flags: int) -> int:
    """Opens a file for `open`; a named pipe would otherwise wait for somebody to write into it."""
    return os.open(path, flags | getattr(os, "O_NONBLOCK", 0))


def _said(error: OSError) -> str:
    return (error.strerror or "what cannot be read").lower()


def _refused(shown: str, inside: str, found: str, expected: str) -> FactFile:
    return FactFile(shown, inside, problem=Problem(Place(shown, 1, 1), found, expected))
