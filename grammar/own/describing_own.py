"""A thing of one's own described in place, as the fields of the gear file: 'a 25mm C-mount lens, made for 16mm'."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Final

from engine.base.compact import compact
from grammar.hearing import hear
from grammar.own.stating import marks_of, measured
from grammar.questions import Question, Taught, Thing
from grammar.words.lexicon import Lexicon
from grammar.words.tokens import tokens_of

# key -> the fields that can be told of each section of the gear file, besides what a description holds
KEYS: Final[Mapping[str, frozenset[str]]] = {
    "lenses": frozenset(
        ["register", "collar", "rear_reach", "close_focus", "image_circle", "weight", "f_number", "focal_length",
         "travel"]
    ),
    "bodies": frozenset(["register", "clear_depth", "pixels"]),
    "adapters": frozenset(["thickness", "clear_diameter"]),
}  # fmt: skip
_PIECES: Final = {"adapter": "plain", "electronic-adapter": "plain"}
_KINDS: Final = frozenset(
    ["plain", "recessed", "extension-tube", "helicoid", "bellows", "thread-reducer", "corrective-glass",
     "focal-reducer", "teleconverter", "tilt", "shift", "reverse-ring", "coupling-ring", "turret"]
)  # fmt: skip
_DESIGNATES: Final = frozenset(["MOUNT", "LETTER", "LENGTH", "RANGE", "FNUM", "COMBO", "FOCAL"])
_IRISES: Final = {
    "fixed-iris": "fixed",
    "fixed iris": "fixed",
    "no aperture ring": "lever",
    "no-aperture-ring": "lever",
}
_THROUGH: Final = frozenset(["extension-tube", "helicoid", "bellows", "teleconverter"])  # the same mount on both sides
_MEASURES: Final = "measures"  # what a phrase of teaching does
_CUP: Final = "recessed"
_CLAUSE: Final = r"\s*(?:,|\bwith an?\b|\bwith\b|\band\b)\s*"


@compact
class Described:
    section: str
    thing: Thing
    fields: tuple[tuple[str, str], ...]


def described(text: str, lexicon: Lexicon) -> Described | None:
    """The one lens, body or adapter that the text describes; None where it says anything else besides."""
    kept: list[str] = []
    told: list[tuple[str, str]] = []
    sizes: list[str] = []  # of which it is not said what they are of: 'measured 27.41'
    for clause in re.split(_CLAUSE, text):
        found = measured(clause, lexicon) if kept else None
        if found and found.key:
            told.append((found.key, found.value))
        elif found and any(mark.does == _MEASURES for mark in marks_of(clause, lexicon)):
            sizes.append(found.value)
        elif clause.strip():
            kept.append(clause)
    heard = hear(_without_maker(", ".join(kept), lexicon), lexicon)
    cast, odd = heard.cast, heard.cues or heard.readings.values or heard.cast.strange or heard.readings.limits
    if odd or any(token.kind == "UNKNOWN" for token in heard.line.tokens):
        return None
    if len(cast.pieces) == 1 and not any(part.noun.head or part.focal for part in (*cast.lenses, *cast.bodies)):
        out = _adapter(cast.pieces[0].thing())
    elif cast.pieces or len(cast.lenses) + len(cast.bodies) != 1:
        return None
    elif cast.bodies:
        out = _body(cast.bodies[0].thing())
    elif cast.lenses[0].noun.head is None and not cast.lenses[0].focal:
        return None  # a mount alone is neither lens nor body
    else:
        out = Described("lenses", cast.lenses[0].thing(), lens_fields(cast.lenses[0].thing()))
    if out is not None and sizes:
        told += [("thickness", size) for size in sizes]
        if out.section != "adapters" or sum(key == "thickness" for key, _ in told) > 1:
            return None
    if out is None or not {key for key, _ in told} <= KEYS[out.section]:
        return None
    fields = dict(out.fields) | dict(told)
    if out.section == "adapters" and "thickness" in dict(told):
        fields["seat_basis"] = "measured"
    if fields.get("kind") == _CUP and fields.get("thickness", "-")[0] != "-":
        fields["thickness"] = f"-{fields['thickness']}"  # how deep a cup is: its seat lies so far inside
    return Described(out.section, out.thing, tuple(fields.items()))


def _without_maker(text: str, lexicon: Lexicon) -> str:
    """The text without the one unknown word before a mount, a length or a stop: 'a 35mm acme-k lens', a maker's name.

    Makers are in no facts here. An unknown word anywhere else may say what matters, and stays.
    """
    tokens = tokens_of(text, lexicon).tokens
    strange = [at for at, token in enumerate(tokens) if token.kind == "UNKNOWN"]
    if len(strange) != 1:
        return text
    at = strange[0]
    after = at + 2 if tokens[at + 1 : at + 2] and tokens[at + 1].text == "-" else at + 1
    if after >= len(tokens) or tokens[after].kind not in _DESIGNATES:
        return text
    return f"{text[: tokens[at].column - 1]} {text[tokens[after].column - 1 :]}"


def lens_fields(thing: Thing) -> tuple[tuple[str, str], ...]:
    """What is said of a lens described in place. Its mount is left out where that was not told."""
    rows = {
        "mount": thing.id if thing.kind == "mount" and "assumed mount" not in thing.traits else None,
        "focal_length": thing.focal_length_mm and f"{thing.focal_length_mm:g} mm",
        "f_number": thing.f_number and f"f/{thing.f_number:g}",
        "iris": "fixed" if "fixed iris" in thing.traits else None,
        "focusing": "zoom" if thing.lens_kind == "zoom" else None,
        "made_for": thing.format,
        "thoriated": "yes" if "thoriated" in thing.traits else None,
    }
    return tuple((key, value) for key, value in rows.items() if value)


def of_its_kind(section: str, text: str, lexicon: Lexicon) -> tuple[tuple[str, str], ...] | None:
    """What a few words tell of a thing one owns beside all measures: 'no aperture ring', 'full frame'."""
    heard = hear(text, lexicon)
    cast = heard.cast
    if heard.readings.values or cast.bodies or cast.pieces or any(one.kind == "UNKNOWN" for one in heard.line.tokens):
        return None
    if section == "lenses" and len(cast.lenses) == 1 and not (cast.frames or cast.lenses[0].has_mount):
        traits = (one.replace(" ", "-") for one in cast.lenses[0].traits)
        iris = next((_IRISES[one] for one in traits if one in _IRISES), None)
        return (("iris", iris),) if iris is not None else None
    if section == "bodies" and len(cast.frames) == 1 and not cast.lenses and cast.frames[0].formats:
        return (("format", cast.frames[0].formats[0].ids[0]),)
    return None


def _body(thing: Thing) -> Described | None:
    if thing.kind == "body" and thing.id is not None:
        return Described("bodies", thing, (("like", thing.id),))  # one of no maker: its mount and its format are known
    if thing.kind != "mount" or thing.id is None:
        return None
    fields = [("mount", thing.id), *([("format", thing.format)] if thing.format else [])]
    return Described("bodies", thing, tuple(fields))


def _adapter(thing: Thing) -> Described | None:
    kind = _PIECES.get(thing.piece or "adapter", thing.piece or "plain")
    if kind not in _KINDS or not thing.front:
        return None
    rear = thing.rear or (thing.front if kind in _THROUGH else ())
    if not rear:
        return None
    fields = {"front": thing.front[0], "rear": rear[0], "kind": kind}
    if thing.thickness_mm:
        low, high = thing.thickness_mm
        fields |= {"thickness": f"{low:g} mm" if low == high else f"{low:g}..{high:g} mm", "seat_basis": "nominal"}
    if thing.factor is not None:
        fields["factor"] = f"{thing.factor:g}"
    if thing.piece == "electronic-adapter":
        fields["electronics"] = "yes"
    return Described("adapters", thing, tuple(fields.items()))


def ring_of(before: Question) -> Taught | None:
    """The one ring of the question before: described there, or that between its lens and its body."""
    for thing in before.adapters:
        if thing.front and thing.rear:
            return Taught("adapters", fields=(("front", thing.front[0]), ("rear", thing.rear[0]), ("kind", "plain")))
    if before.lens is not None and before.body is not None and not before.adapters:
        return Taught("adapters", fields=(("kind", "plain"),))
    return None
