"""A small lexicon for these tests: the shipped words of the language, and a hand-made table of names."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from grammar.words.lexicon import Lexicon
from tests.reading import TEXTS, loaded

WORDS = Path(__file__).parents[2] / "kb" / "words"

# mount id -> what it is called, the designation first
MOUNTS: dict[str, list[str]] = {
    "m42": ["M42", "M42x1", "universal screw"],
    "t2": ["T2", "T-mount", "T thread"],
    "c": ["C", "C-mount"],
    "cs": ["CS", "CS-mount"],
    "c-rx": ["RX", "C-RX", "RX c mount"],
    "d": ["D", "D-mount"],
    "s": ["M12", "S-mount", "M12 board"],
    "ltm": ["LTM", "M39 LTM", "L39", "39 x 26 tpi"],
    "m39-zenit": ["M39 SLR", "M39-zenit"],
    "m39-soviet-rf": ["M39-soviet-rf"],
    "e-mount": ["E-mount", "FE"],
    "mft-mount": ["Micro Four Thirds", "MFT", "M43", "m4/3", "micro 4/3", "MFT-mount"],
    "four-thirds-mount": ["Four Thirds mount", "4/3 mount"],
    "x-mount": ["X-mount"],
    "z-mount": ["Z-mount"],
    "l-mount": ["L-mount"],
    "rf-mount": ["RF-mount"],
    "ef-mount": ["EF-mount"],
    "ef-s-mount": ["EF-S", "EF-S-mount"],
    "ef-m-mount": ["EF-M", "EF-M-mount"],
    "fd-mount": ["FD-mount"],
    "k-mount": ["K-mount", "PK"],
    "om-mount": ["OM-mount"],
    "ar-mount": ["AR-mount"],
    "sr-mount": ["SR-mount", "MD", "MC/MD"],
    "cy-mount": ["C/Y", "CY-mount"],
    "qbm": ["QBM"],
    "a-mount": ["A-mount"],
    "m-mount": ["M-mount", "LM"],
    "exakta-mount": ["Exakta", "Exakta-mount"],
    "dkl": ["DKL"],
    "auto-110": ["Auto 110", "110"],
    "g-mount": ["G-mount"],
    "p6-mount": ["P6", "P6-mount"],
    "v-mount": ["V-mount"],
    "q-mount": ["Q-mount"],
    "cx-mount": ["1-mount", "CX", "CX-mount"],
    "nx-mount": ["NX-mount"],
    "b4": ["B4"],
    "pl": ["PL"],
    "enl39": ["Enlarger 39"],
    "rms160": ["RMS", "RMS objective"],
    "rms-inf": ["RMS infinity"],
    "m48-55": ["M48", "M48 T-ring"],
    "proj425": ["42.5 projection barrel"],
}
FORMATS: dict[str, list[str]] = {
    "35mm-full-frame": ["full frame", "35 mm full frame", "24x36", "fullframe", "FF", "36x24"],
    "aps-c-1.5": ["APS-C", "apsc", "aps-c 1.5x", "crop sensor"],
    "aps-c-1.6": ["APS-C 1.6x"],
    "four-thirds": ["Four Thirds", "four thirds sensor", "4/3 sensor"],
    "1-inch-type": ["1-type", "1 inch", "1 in"],
    "1-2-type": ["1/2-type", "1/2 inch", "1/2 in"],
    "1-3-type": ["1/3-type", "1/3 inch", "1/3 in"],
    "2-3-type": ["2/3-type", "2/3 inch", "2/3 in"],
    "16mm": ["16 mm", "standard 16"],
    "s16": ["Super 16", "S16"],
    "8mm": ["8 mm", "Regular 8"],
    "s8-image": ["Super 8", "S8"],
    "9.5mm": ["9.5 mm"],
    "44x33": ["44x33"],
    "6x6": ["6x6"],
    "6x9": ["6x9"],
    "6x7": ["6x7"],
    "half-frame": ["half frame"],
    "35-full": ["Super 35", "S35"],
}
TERMS: dict[str, list[str]] = {
    "register": ["register", "flange focal distance", "flange distance", "FFD"],
    "back-focus": ["back focus"],
    "helicoid": ["helicoid"],
    "parfocal": ["parfocal"],
    "de-clicked": ["de-clicked", "declicked"],
    "seat": ["seat"],
    "extension": ["extension"],
    "pupil-magnification": ["pupil magnification"],
    "shim": ["shim"],
    "throat": ["throat"],
    "crop-factor": ["crop factor"],
    "image-circle": ["image circle"],
    "f-number": ["f-number", "f number"],
    "hyperfocal": ["hyperfocal distance", "hyperfocal"],
    "too-close": ["too close"],
    "working-distance": ["working distance"],
}
THREADS = {"un-1-32": ["1-32 UN"], "m39x1": ["M39"]}
# mounts that, named alone, are those of a body
HOSTS = (
    "e-mount",
    "mft-mount",
    "x-mount",
    "z-mount",
    "l-mount",
    "rf-mount",
    "ef-m-mount",
    "nx-mount",
    "cx-mount",
    "g-mount",
)
NEVER_FULL = ("mft-mount", "x-mount", "nx-mount", "cx-mount", "g-mount", "c", "cs", "d")
SHARED = [(["F", "F mount", "F-mount"], ["f-mount", "ar-f-mount", "pen-f"], "f-mount"),
          (["M39"], ["ltm", "m39-soviet-rf", "m39-zenit", "enl39"], "ltm")]  # fmt: skip


@cache
def words() -> list[tuple[str, list[str]]]:
    """The word list as it is shipped: (means, phrases)."""
    out = []
    for path in sorted(WORDS.glob("*.yaml")):
        for record in loaded(path, TEXTS)["words"].values():
            out.append((record.get("means") or "", record["says"]))
    return out


def names() -> list[tuple[str, str, str]]:
    """The table above as (phrase, kind, id), ids too."""
    out = []
    for kind, table in (("mount", MOUNTS), ("format", FORMATS), ("term", TERMS), ("thread", THREADS)):
        for id_, phrases in table.items():
            out += [(phrase, kind, id_) for phrase in phrases]
            if kind in ("mount", "format"):
                out.append((id_, kind, id_))
    return out


@cache
def lexicon() -> Lexicon:
    return Lexicon.build(names(), words(), SHARED, hosts=HOSTS, never_full=NEVER_FULL)
