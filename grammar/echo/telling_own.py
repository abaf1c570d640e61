"""What is taught or forgotten as one plain sentence, so that a misreading shows."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from grammar.echo.thing_words import before_lens
from grammar.questions import Taught

NameOf = Callable[[str, str], str]
_INSIDE: Final = frozenset(
    ["mount", "focal_length", "f_number", "made_for", "format", "front", "rear", "kind", "factor", "seat_basis",
     "electronics", "iris", "focusing", "thoriated", "owned", "like"]
)  # fmt: skip
_SHOWN: Final = {"close_focus": "nearest mark", "f_number": "aperture"}


def sentence(taught: Taught, forgetting: bool, name_of: NameOf) -> str:
    """'my avocet is a 25 mm f/1.4 C-mount lens, register 17.48 mm', 'forget avocet', 'undo that'."""
    fields = dict(taught.fields)
    if taught.section == "shared":
        mount = name_of("mount", fields["mounts"]) if "mounts" in fields else ""
        return f"by {taught.name} I mean {mount}" if mount else f"forget what I mean by {taught.name}"
    if taught.section == "observations":
        return _observation(fields, forgetting, name_of)
    if forgetting:
        keys = f"the {_key(next(iter(fields)))} of " if fields else ""
        return f"forget {keys}{taught.name or taught.id}" if taught.section else "undo that"
    if {"mount", "kind", "like"} & set(fields):
        noun = thing_noun(taught, name_of)
        rest = "".join(f", {_key(key)} {value}" for key, value in fields.items() if key not in _INSIDE)
        mine = "" if taught.name.startswith("my-") else "my "
        return f"{mine}{taught.name} is a {noun}{rest}" if taught.name else f"I own a {noun}{rest}"
    mine = "" if taught.name.startswith("my-") else "my "
    told = {key: value for key, value in fields.items() if _is_told(key)} or fields  # what is taught is read back
    return ", ".join(f"the {_key(key)} of {mine}{taught.name} is really {value}" for key, value in told.items())


def _observation(fields: dict[str, str], forgetting: bool, name_of: NameOf) -> str:
    """'avocet on the skiff with the plate reaches infinity, as you tried it'."""
    pair = " on ".join(name_of(kind, fields[kind]) for kind in ("lens", "body") if kind in fields)
    if "with" in fields:
        pair += f" with {' + '.join(name_of('adapter', one) for one in fields['with'].split(', '))}"
    if forgetting:
        return f"forget what you saw of {pair}"
    seen = []
    if "far" in fields:
        seen.append(f"stops at {fields['far']}")
    elif "infinity" in fields:
        seen.append("reaches infinity" if fields["infinity"] == "yes" else "does not reach infinity")
    if "near" in fields:
        seen.append(f"comes as near as {fields['near']}")
    stop = f" at {fields['f_number']}" if "f_number" in fields else ""
    return f"{pair} {' and '.join(seen)}{stop}, as you tried it"


def thing_noun(taught: Taught, name_of: NameOf) -> str:
    """'25 mm f/1.4 C-mount lens made for 16 mm', without an article."""
    fields = dict(taught.fields)
    if taught.section == "adapters":
        joins = " to ".join(_mount(fields[key], name_of) for key in ("front", "rear") if key in fields)
        kind = fields.get("kind", "plain")
        lead = f"{fields['factor']}x " if "factor" in fields else "electronic " if "electronics" in fields else ""
        return f"{lead}{joins} {'ring' if kind == 'plain' else kind.replace('-', ' ')}".strip()
    mount = _mount(fields["mount"], name_of) if "mount" in fields else ""
    if "like" in fields:
        return name_of("body", fields["like"])
    if taught.section == "bodies":
        form = name_of("format", fields["format"]) if "format" in fields else ""
        return " ".join(filter(None, (mount, form, "body")))
    kind = "zoom" if fields.get("focusing") == "zoom" else "fixed iris" if fields.get("iris") == "fixed" else ""
    made = f"made for {name_of('format', fields['made_for'])}" if "made_for" in fields else ""
    parts = (fields.get("focal_length"), fields.get("f_number"), kind, mount, "lens", made)
    return " ".join(part for part in parts if part)


def _is_told(key: str) -> bool:
    return key not in _INSIDE or key in ("f_number", "focal_length", "mount", "made_for", "format")


def _key(key: str) -> str:
    return _SHOWN.get(key, key.replace("_", " "))


def _mount(id_: str, name_of: NameOf) -> str:
    return before_lens(name_of("mount", id_))
