"""A lens, a body, a piece or a limit in canonical words, as a question is said back."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from grammar.questions import Limits, Thing

NameOf = Callable[[str, str], str]

_PIECES: Final = {
    "extension-tube": "extension tube", "focal-reducer": "focal reducer", "reverse-ring": "reverse ring",
    "coupling-ring": "coupling ring", "step-ring": "step ring", "thread-reducer": "thread adapter",
    "close-up-lens": "close-up lens", "corrective-glass": "adapter with glass", "recessed": "recessed ring",
    "electronic-adapter": "electronic adapter", "tube-lens": "tube lens", "tilt": "tilt adapter",
    "shift": "shift adapter",
}  # fmt: skip
SHEET_MM: Final = 1.0  # what is thinner carries no thread: no tube, a shim
_KINDS: Final = {
    "objective": "objective", "machine-vision": "machine vision", "large-format": "large format", "tele": "tele",
    "macro": "macro lens", "mirror": "mirror lens", "wide": "wide",
}  # fmt: skip


def thing_words(thing: Thing, role: str, name_of: NameOf) -> str:
    """One thing in canonical words. `role`: lens, body, adapter, mount, or '' for a thing only spoken of."""
    if role == "adapter":
        return _adapter(thing, name_of)
    if role == "lens":
        return _lens(thing, name_of)
    if role == "body":
        return _body(thing, name_of)
    if role == "mount":
        return mount_words(thing, name_of)
    return name_of(thing.kind, thing.id) if thing.id else thing.words


def mount_words(thing: Thing, name_of: NameOf) -> str:
    return before_lens(name_of("mount", thing.id or ""))


def before_lens(designation: str) -> str:
    """A mount as it is spoken before 'lens' or 'body': 'C' becomes 'C-mount'."""
    return f"{designation}-mount" if len(designation) <= 2 and designation.isalpha() else designation


def _lens(thing: Thing, name_of: NameOf) -> str:
    if thing.kind == "lens" and thing.id:
        return f"my {name_of('lens', thing.id)}"
    parts = [f"{thing.count}" if thing.count else "a"]
    if thing.focal_length_mm is not None:
        parts.append(f"{thing.focal_length_mm:g} mm")
    if thing.f_number is not None:
        parts.append(f"f/{thing.f_number:g}")
    parts += [trait for trait in thing.traits if not trait.startswith(("from ", "assumed"))]
    if thing.kind == "mount" and thing.id and "assumed mount" not in thing.traits:
        parts.append(mount_words(thing, name_of))
    if thing.lens_kind:
        parts.append(_KINDS.get(thing.lens_kind, thing.lens_kind))
    if not (thing.lens_kind or "").endswith(("macro", "mirror", "objective")):
        parts.append("lenses" if thing.count and thing.count > 1 else "lens")
    if thing.format:
        told = dict.fromkeys(one for one in (thing.format, thing.format_too) if one)
        parts.append(f"made for {' or '.join(name_of('format', one) for one in told)}")
    return " ".join(parts)


def _body(thing: Thing, name_of: NameOf) -> str:
    if thing.kind == "body" and thing.id:
        return f"my {name_of('body', thing.id)}"
    mount = mount_words(thing, name_of) if thing.kind == "mount" and thing.id else ""
    form = name_of("format", thing.format) if thing.format else ""
    kind = next((trait for trait in thing.traits if trait in ("dslr", "slr", "mirrorless", "camcorder")), "")
    if thing.count and thing.count > 1 and not (mount or form):
        return f"{thing.count} {kind} bodies"
    return f"a {mount} {form} {kind} body"


def _adapter(thing: Thing, name_of: NameOf) -> str:
    if thing.kind == "adapter" and thing.id:
        return f"the {name_of('adapter', thing.id)}"
    parts = ["a"]
    if thing.thickness_mm is not None:
        low, high = thing.thickness_mm
        parts.append(f"{low:g} mm" if low == high else f"{low:g}..{high:g} mm")
    if thing.factor is not None:
        parts.append(f"+{thing.factor:g} dioptre" if thing.piece == "close-up-lens" else f"{thing.factor:g}x")
    if thing.steps is not None:
        parts.append(f"{thing.steps[0]:g}-{thing.steps[1]:g}")
    joins = [mount_words(Thing("mount", ids), name_of) for ids in (thing.front, thing.rear) if ids]
    parts.append(" to ".join(joins))
    piece = thing.piece or "adapter"
    thin = piece == "extension-tube" and thing.thickness_mm is not None and 0 < thing.thickness_mm[1] < SHEET_MM
    parts.append("shim" if thin else _PIECES.get(piece, piece))
    return " ".join(parts)


def limit_words(limits: Limits, name_of: NameOf) -> list[str]:
    """The conditions on chains as the echo says them, one phrase each."""
    out = []
    if limits.pieces is not None:
        out.append(f"at most {limits.pieces} adapters")
    if limits.without_glass:
        out.append("without glass")
    if limits.with_glass:
        out.append("with glass")
    if limits.owned_only:
        out.append("with what I own")
    if limits.price_usd is not None:
        out.append(f"under ${limits.price_usd:g}")
    out += [f"without the {_used(name, name_of)}" for name in limits.without]
    out += [f"via {_used(name, name_of)}" for name in limits.using]
    if limits.at_least:
        out.append(f"with {limits.at_least}")
    if limits.best is not None:
        out.append(f"best {limits.best}")
    if limits.cheapest:
        out.append("cheapest")
    return out


def _used(name: str, name_of: NameOf) -> str:
    if name in _PIECES:
        return _PIECES[name]
    for kind in ("adapter", "mount"):
        said = name_of(kind, name)
        if said != name:
            return said
    return name
