"""Small classes that only hold values: what the standard dataclass gives, made only when it is first needed.

The standard decorator writes and compiles six methods for each class while importing, which for our hundred classes
takes longer than a whole question may. Here only the constructor is compiled, and only for a class of which many values
are made; the rest is shared.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from operator import attrgetter
from typing import Any, Final, NamedTuple, TypeVar, dataclass_transform, overload

T = TypeVar("T")


class _Missing:
    def __repr__(self) -> str:
        return "no default"


MISSING: Final = _Missing()
_FEW: Final = 60  # values that take about as long to make without a compiled constructor as compiling it takes


class _Given(NamedTuple):
    """What `field` was told; stands in the class body until the class is made."""

    default: Any
    factory: Callable[[], Any] | None
    compare: bool


class Field(NamedTuple):
    """A field of a value class: its name, its annotation as written, and its default."""

    name: str
    type: str
    default: Any
    factory: Callable[[], Any] | None
    compare: bool


def field(*, default: Any = MISSING, default_factory: Callable[[], Any] | None = None, compare: bool = True) -> Any:
    """A field with a default, or one that does not count when values are compared."""
    return _Given(default, default_factory, compare)


@overload
def compact(cls: type[T]) -> type[T]: ...
@overload
def compact(
    *, frozen: bool = True, slots: bool = True, eq: bool = True, order: bool = False
) -> Callable[[type[T]], type[T]]: ...
@dataclass_transform(frozen_default=True, field_specifiers=(field,))
def compact(
    cls: type[T] | None = None, *, frozen: bool = True, slots: bool = True, eq: bool = True, order: bool = False
) -> Any:
    """Makes a class of its annotated fields: frozen and slotted unless told, equal where all compared fields are."""
    if cls is not None:
        return _made(cls, frozen, slots, eq, order)
    return lambda told: _made(told, frozen, slots, eq, order)


def fields(cls: type[Any]) -> tuple[Field, ...]:
    """The fields of a value class in the order they were written."""
    found: tuple[Field, ...] = cls.__fields__
    return found


def replace(one: T, **changes: Any) -> T:
    """The value with some fields changed. TypeError for a name that is no field."""
    cls: Any = type(one)
    for row in cls.__fields__:
        if row.name not in changes:
            changes[row.name] = getattr(one, row.name)
    made: T = cls(**changes)
    return made


def _made(cls: type[Any], frozen: bool, slots: bool, eq: bool, order: bool) -> type[Any]:
    body = dict(cls.__dict__)
    rows = tuple(_fields(body))
    names = tuple(row.name for row in rows)
    for row in rows:
        body.pop(row.name, None)
    if slots:
        body["__slots__"] = names
        for gone in ("__dict__", "__weakref__"):
            body.pop(gone, None)
    else:
        body |= {row.name: row.default for row in rows if row.default is not MISSING}
    body["__fields__"] = rows
    body["__match_args__"] = names
    compared = tuple(row.name for row in rows if row.compare)
    if "__repr__" not in body:
        body["__repr__"] = _repr_of(names)
    if eq and "__eq__" not in body:
        key = _key_of(compared)
        body["__eq__"] = _eq_by(key)
        body["__hash__"] = _hash_by(key) if frozen else None
        if order:
            body["__lt__"] = lambda one, other: key(one) < key(other) if type(one) is type(other) else NotImplemented
    if frozen:
        body["__setattr__"], body["__delattr__"] = _refuse_to_set, _refuse_to_delete
    body["__init__"] = _first_init
    made: type[Any] = type(cls.__name__, cls.__bases__, body) if slots else _updated(cls, body)
    made.__qualname__ = cls.__qualname__
    if slots:
        _mend_class_cells(cls, made)
    return made


def _updated(cls: type[Any], body: dict[str, Any]) -> type[Any]:
    for name, held in body.items():
        if name not in ("__dict__", "__weakref__"):
            setattr(cls, name, held)
    return cls


def _fields(body: dict[str, Any]) -> Iterable[Field]:
    for name, annotation in body.get("__annotations__", {}).items():
        if annotation.startswith(("ClassVar", "Final")):
            continue
        held = body.get(name, MISSING)
        if isinstance(held, _Given):
            yield Field(name, annotation, held.default, held.factory, held.compare)
        else:
            yield Field(name, annotation, held, None, True)


_made_so_far: dict[type[Any], int] = {}  # of classes whose constructor is not compiled yet


def _first_init(self: Any, *given: Any, **named: Any) -> None:
    """Makes the first few values of a class, then gives way to the compiled constructor, as it does at any misuse."""
    cls = type(self)
    count = _made_so_far.get(cls, 0)
    if count < _FEW and _is_filled(self, cls, given, named):
        _made_so_far[cls] = count + 1
        return
    cls.__init__ = _init_of(cls)
    cls.__init__(self, *given, **named)


def _is_filled(self: Any, cls: Any, given: tuple[Any, ...], named: dict[str, Any]) -> bool:
    """Whether the arguments fit the fields; these are then set."""
    rows = cls.__fields__
    put = object.__setattr__ if cls.__setattr__ is _refuse_to_set else setattr
    left = len(named)
    if len(given) > len(rows):
        return False
    for row, held in zip(rows, given, strict=False):
        put(self, row.name, held)
    for row in rows[len(given) :]:
        if row.name in named:
            held = named[row.name]
            left -= 1
        else:
            held = row.default
        if held is MISSING:
            if row.factory is None:
                return False
            held = row.factory()
        put(self, row.name, held)
    if left:
        return False
    if hasattr(cls, "__post_init__"):
        self.__post_init__()
    return True


def _init_of(cls: Any) -> Any:
    frozen = cls.__setattr__ is _refuse_to_set
    parameters, lines = [], []
    around: dict[str, Any] = {"_set": object.__setattr__, "_missing": MISSING}
    for n, row in enumerate(cls.__fields__):
        if row.factory is not None:
            around[f"_make{n}"] = row.factory
            parameters.append(f"{row.name}=_missing")
            held = f"_make{n}() if {row.name} is _missing else {row.name}"
        else:
            around[f"_default{n}"] = row.default
            parameters.append(row.name if row.default is MISSING else f"{row.name}=_default{n}")
            held = row.name
        lines.append(f"_set(self, {row.name!r}, {held})" if frozen else f"self.{row.name} = {held}")
    if hasattr(cls, "__post_init__"):
        lines.append("self.__post_init__()")
    text = f"def __init__(self, {', '.join(parameters)}):\n " + "\n ".join(lines or ["pass"])
    exec(text, around)  # the text holds the names of annotated fields alone
    made = around["__init__"]
    made.__qualname__ = f"{cls.__qualname__}.__init__"
    return made


def _key_of(names: tuple[str, ...]) -> Callable[[Any], Any]:
    return attrgetter(*names) if names else lambda one: ()


def _eq_by(key: Callable[[Any], Any]) -> Callable[[Any, object], bool]:
    def __eq__(self: Any, other: object) -> bool:
        if type(self) is not type(other):
            return NotImplemented
        return bool(self is other or key(self) == key(other))

    return __eq__


def _hash_by(key: Callable[[Any], Any]) -> Callable[[Any], int]:
    def __hash__(self: Any) -> int:
        return hash(key(self))

    return __hash__


def _repr_of(names: tuple[str, ...]) -> Callable[[Any], str]:
    def __repr__(self: Any) -> str:
        return f"{type(self).__qualname__}({', '.join(f'{name}={getattr(self, name)!r}' for name in names)})"

    return __repr__


def _refuse_to_set(self: Any, name: str, held: object) -> None:
    raise AttributeError(f"cannot assign to '{name}' of a frozen {type(self).__qualname__}")


def _refuse_to_delete(self: Any, name: str) -> None:
    raise AttributeError(f"cannot delete '{name}' of a frozen {type(self).__qualname__}")


def _mend_class_cells(old: type[Any], new: type[Any]) -> None:
    """Methods that say super() or __class__ hold the class in a cell: it must be the one that was made."""
    for held in vars(old).values():
        function = getattr(held, "__func__", getattr(held, "fget", held))
        for cell in getattr(function, "__closure__", None) or ():
            try:
                if cell.cell_contents is old:
                    cell.cell_contents = new
            except ValueError:
                continue
