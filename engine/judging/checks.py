"""What must hold between facts and rules, beyond each record by itself."""

from __future__ import annotations

from collections.abc import Iterator

from engine.base.interval import is_known
from engine.base.place import NOWHERE
from engine.base.problem import Problem, nearest_of
from engine.facts.catalogue import Catalogue
from engine.facts.kinds import TUBELIKE
from engine.physics.quantities import NAMES
from grammar.words.groups import GROUPS
from grammar.words.numerals import CLASSES
from grammar.words.wordlist import CUE, GROUP, NUMERAL

NEEDED_ASSUMPTIONS = (
    "barrel-by-name", "barrel-over-seat", "bayonet-recess", "bending-seen-from", "blur-divisor",
    "caliper-in-a-thread", "caliper-over-crests", "card-frame-rate", "card-timeline-shape", "carried-by-a-ring",
    "circle-growth", "circle-growth-without-pupil", "clear-filter-light", "clear-hole", "coarsest-filter-pitch",
    "construction-ordinary-front-to-sensor", "cup-play", "cup-wall", "deepest-cup", "depth-gauge-reads-to",
    "detour-far-out", "detour-times-as-far", "exposure-is-right", "face-depth", "faces-parallel", "filter-clear-less",
    "filter-glass-index", "filter-glass-thickness", "filter-height", "flange-to-image-enlarger",
    "flange-to-image-large-format", "flush-of-use", "focus-model-error", "front-rim-ahead", "front-spare",
    "gel-thickness", "green-light", "heavy-from", "index-of-plates", "infinity-target-focals", "infrared-from",
    "largest-seat-error", "largest-sensor-diagonal", "largest-usual-circle", "left-to-take-down",
    "lens-off-its-register", "lenses-agree", "light-as-one", "light-worth-telling", "lowest-iso", "mains-of-fifty",
    "mains-of-sixty", "making-spread-derived", "making-spread-ends", "making-spread-glass", "making-spread-nominal",
    "marks-are-read-to", "mating-axial-play", "mating-flank-share", "mating-same-diameter", "mating-usual-turns",
    "moon-degrees", "mostly-lit", "near-register", "next-register", "no-iris-beyond", "paper-stop", "phone-main",
    "phone-wide", "pitch-by-paper", "plain-hiatus", "polariser-light", "prism-light", "recording-2-7k",
    "recording-2k", "recording-720", "recording-8k", "recording-dci-4k", "recording-hd", "recording-uhd",
    "register-by-paper", "registers-are-told-to", "registers-as-one", "ring-before-cup", "ring-left-alone",
    "ring-made-off", "ring-made-off-share", "ring-or-tube", "ring-wall-bayonet", "ring-wall-thread", "scene-full-sun",
    "seat-is-right", "seldom-closed-beyond", "shortest-tube", "sleeve-play", "smaller-sensor-of-a-mount",
    "smallest-stop", "sold-ring-off", "stack-step-share", "stars-rule-of-thumb", "stop-of-a-close-up",
    "stop-of-a-mount-alone", "stops-near-enough", "taken-for-one-distance", "thickest-filter", "thinnest-ring",
    "thinnest-ring-inside-bayonet", "thinnest-ring-narrow-throat", "threads-of-one-width", "throat-by-caliper",
    "tube-or-close-up-lens", "tube-to-show-by", "usual-filter-size", "usual-focal-range", "usual-frame-rate",
    "usual-nearest", "usual-normal-share", "usual-normal-share-cine", "usual-sensor-glass", "usual-shutter-angle",
    "usual-transmission", "usual-travel-share", "usual-tube-lens", "widest-step", "widest-stop", "working-room",
)  # fmt: skip
# a ring sold as cut to a register difference may be this far off the difference of our registers, in mm
DERIVED_MAY_DIFFER = 0.011


def problems_of(catalogue: Catalogue) -> Iterator[Problem]:
    """Problems between records, in no order."""
    yield from _assumptions(catalogue)
    yield from _advice(catalogue)
    yield from _derived_seats(catalogue)
    yield from _quantities_of_words(catalogue)
    yield from _groups_of_words(catalogue)
    yield from _numerals(catalogue)
    yield from _own_names(catalogue)


def _assumptions(catalogue: Catalogue) -> Iterator[Problem]:
    for name in NEEDED_ASSUMPTIONS:
        if name not in catalogue.assumptions:
            near = nearest_of(name, catalogue.assumptions)
            yield Problem(NOWHERE, f"no assumption '{name}'", "a record under 'assumptions:' with that id", near)


def _advice(catalogue: Catalogue) -> Iterator[Problem]:
    for rule in catalogue.rules.values():
        if rule.advice is not None and rule.advice not in catalogue.advice:
            near = nearest_of(rule.advice, catalogue.advice)
            yield Problem(rule.place, f"advice '{rule.advice}'", "the id of an advice record", near)
    cues = {word.means.partition(" ")[2] for word in catalogue.words.values() if word.means.startswith(f"{CUE} ")}
    for advice in catalogue.advice.values():
        if advice.cue and advice.cue not in cues:
            near = nearest_of(advice.cue, cues)
            yield Problem(advice.place, f"cue '{advice.cue}'", "a cue that a record under 'words:' asks", near)


def _quantities_of_words(catalogue: Catalogue) -> Iterator[Problem]:
    """Words for questions about one's own gear name quantities that there are."""
    at = {"test": 2, "maybe": 2, "first": 2, "by": 2, "tell": 2, "behind": 2, "kind": 3}
    for word in catalogue.words.values():
        parts = word.means.split()
        place = at.get(parts[1], 0) if len(parts) > 2 and parts[0] == "sift" else 0
        for name in parts[place].split("|") if place and len(parts) > place else ():
            if name not in NAMES and name != "verdict":
                near = nearest_of(name, NAMES)
                yield Problem(word.place, f"quantity '{name}'", "a quantity of the physics, or 'verdict'", near)


def _groups_of_words(catalogue: Catalogue) -> Iterator[Problem]:
    """Every group of words that a reading asks for has words, and there is no other."""
    told = set()
    for word in catalogue.words.values():
        sort, _, name = word.means.partition(" ")
        if sort != GROUP:
            continue
        told.add(name)
        if name not in GROUPS:
            yield Problem(
                word.place, f"group '{name}'", "a group of words that a reading asks for", nearest_of(name, GROUPS)
            )
    for name in sorted(GROUPS - told):
        yield Problem(NOWHERE, f"no words of group '{name}'", f"a record under 'words:' that means 'group {name}'")


def _numerals(catalogue: Catalogue) -> Iterator[Problem]:
    """A number word tells its class, and a whole number above nought."""
    for word in catalogue.words.values():
        sort, name, number, *rest = (*word.means.split(), "", "", "")
        if sort == NUMERAL and (name not in CLASSES or not number.isdecimal() or int(number) < 1 or any(rest)):
            expected = f"'{NUMERAL}', one of {', '.join(CLASSES)}, and a whole number above 0"
            yield Problem(word.place, f"'{word.means}'", expected, nearest_of(name, CLASSES))


def _own_names(catalogue: Catalogue) -> Iterator[Problem]:
    """What two of one's own lenses, bodies or adapters are both called names neither."""
    for table in (catalogue.lenses, catalogue.bodies, catalogue.adapters):
        called: dict[str, str] = {}
        for record in table.values():
            if record.id not in catalogue.gear_ids:
                continue
            for name in dict.fromkeys(one.casefold() for one in (record.name, *record.aliases)):
                other = called.setdefault(name, record.id)
                if other != record.id:
                    yield Problem(record.place, f"name '{name}'", f"a name that '{other}' does not carry too")


def _derived_seats(catalogue: Catalogue) -> Iterator[Problem]:
    """A seat said to be derived must be the difference of the two registers."""
    for adapter in catalogue.adapters.values():
        if adapter.seat_basis != "derived" or adapter.kind in TUBELIKE:
            continue
        front, rear = catalogue.mounts[adapter.front].register_mm, catalogue.mounts[adapter.rear].register_mm
        seat = adapter.thickness_mm.shortest
        if is_known(front) and is_known(rear) and is_known(seat):
            off = seat.nominal - (front.nominal - rear.nominal)
            if abs(off) > DERIVED_MAY_DIFFER:
                yield Problem(
                    adapter.place, f"a derived seat of {seat.nominal:g} mm",
                    f"the difference of the registers, {front.nominal - rear.nominal:.3f} mm, or another seat_basis",
                )  # fmt: skip
