"""What good records of each kind become, and what a layer keeps when something in it is wrong."""

from typing import Any

import pytest

from engine.base.interval import UNKNOWN, Interval
from engine.base.place import Place
from engine.base.span import Span
from engine.facts.basis import Basis
from engine.facts.files import FactFile
from engine.facts.guidance import Assumption, Shared, Word
from engine.facts.loading import read_part
from engine.facts.records import Adapter, Body, Cup, Lens, Mount, Thread
from engine.facts.tables import Part, Tables

exact = Interval.exact


def read(text: str, base: Tables, own: bool = False, name: str = "x.yaml") -> Part:
    return read_part([FactFile(name, name, text.encode())], base, own)


def good(text: str, base: Tables, own: bool = False) -> dict[str, Any]:
    part = read(text, base, own)
    assert part.problems == ()
    return {record_id: record for table in part.tables.values() for record_id, record in table.items()}


def ring(base: Tables, **keys: str) -> Adapter:
    given = {"front": "m42", "rear": "e-mount", "kind": "plain", "thickness": "27.46 mm"} | keys
    text = "adapters:\n  ring:\n" + "".join(f"    {key}: {value}\n" for key, value in given.items())
    adapter = good(text, base, own=True)["ring"]
    assert isinstance(adapter, Adapter)
    return adapter


def test_thread_in_turns_per_inch_has_its_pitch_in_mm(base: Tables) -> None:
    thread = base["threads"]["un-1-32"]
    assert isinstance(thread, Thread)
    assert thread.pitch_mm == exact(25.4 / 32)


def test_mount_is_read_whole(base: Tables) -> None:
    text = """
mounts:
  p:
    designation: P
    kind: slr
    coupling: screw
    register: 45.5 mm +0/-0.06
    thread: m42x1
    throat: unknown
    mirror: yes
    formats: [16mm]
    traits: [auto-pin, no-shoulder]
    look_alikes: [m42, c]
    aliases: [P, P screw]
    note: >-
      screws in
      like M42
    confidence: memory
    sources: [S1]
"""
    assert good(text, base)["p"] == Mount(
        "p",
        "P",
        "slr",
        Basis("memory", ("S1",)),
        coupling="screw",
        register_mm=Interval(45.44, 45.5, 45.5),
        thread="m42x1",
        mirror=True,
        formats=("16mm",),
        traits=("auto-pin", "no-shoulder"),
        look_alikes=("m42", "c"),
        aliases=("P", "P screw"),
        note="screws in like M42",
    )


def test_record_keeps_the_place_of_its_id(base: Tables) -> None:
    lens = good("lenses:\n\n  tern: {mount: c}\n", base, own=True)["tern"]
    assert lens.place == Place("x.yaml", 3, 3)


def test_adjustable_mount_has_no_register(base: Tables) -> None:
    text = "mounts: {p: {designation: P, kind: enlarger, register: adjustable, confidence: memory, sources: [S1]}}"
    mount = good(text, base)["p"]
    assert (mount.adjustable, mount.register_mm) == (True, UNKNOWN)


def test_own_gear_needs_no_name_no_confidence_and_no_sources(base: Tables) -> None:
    lens = good("lenses: {tern: {mount: c, f_number: f/1.4, weight: 1.8 kg}}", base, own=True)["tern"]
    own = Basis("own-measured", ("own",))
    assert lens == Lens("tern", "tern", "c", own, f_number=exact(1.4), weight_g=exact(1800))


def test_adapter_in_own_gear_is_owned_unless_told(base: Tables) -> None:
    assert (ring(base).owned, ring(base).common, ring(base).seat_basis) == (1, "own", "measured")
    assert ring(base, owned="2").owned == 2
    assert ring(base, owned="yes").owned == 1
    assert ring(base, owned="no").owned == 0


def test_range_of_a_helicoid_is_what_can_be_set(base: Tables) -> None:
    assert ring(base, kind="helicoid", thickness="17..31 mm").thickness_mm == Span(exact(17), exact(31))


def test_range_of_a_plain_ring_is_what_is_not_known(base: Tables) -> None:
    assert ring(base, thickness="27.4..27.5 mm").thickness_mm == Span.fixed(Interval.between(27.4, 27.5))
    assert ring(base, thickness="27.46 mm ±0.02").thickness_mm == Span.fixed(Interval(27.44, 27.48, 27.46))


def test_register_difference_is_worked_out_from_both_mounts(base: Tables) -> None:
    adapter = ring(base, thickness="register difference")
    assert adapter.seat_basis == "register-difference"
    assert adapter.thickness_mm == Span.fixed(Interval(45.44, 45.48, 45.46) - exact(18))


def test_register_difference_stays_unknown_without_both_registers(base: Tables) -> None:
    text = """
mounts: {p: {designation: P, kind: slr, confidence: memory, sources: [S1]}}
adapters: {ring: {front: p, rear: c, kind: plain, thickness: register difference}}
"""
    assert good(text, base, own=True)["ring"].thickness_mm == Span.fixed(UNKNOWN)


def test_cup_price_and_factor_of_an_adapter_are_read(base: Tables) -> None:
    adapter = ring(base, kind="focal-reducer", factor="0.71", price="8..25", cup="{bore: 30 mm, depth: unknown}")
    assert adapter.cup == Cup(exact(30), UNKNOWN)
    assert (adapter.factor, adapter.has_glass, adapter.price_usd) == (0.71, True, (8, 25))


def test_remaining_kinds_are_read(base: Tables) -> None:
    text = """
bodies: {ketch: {name: Ketch, mount: e-mount, format: aps-c-1.5, pixels: 6000 x 4000, cover_glass: 2..2.5 mm}}
assumptions: {spread: {value: -0.05..0.05 mm, says: rings come out so}}
words: {get: {means: get, says: [get, put]}, please: {says: [please]}}
shared: {m: {says: [M], mounts: [m42, e-mount], likely: m42}}
rules: {far: {when: a_mm > 1 mm, because: it sits out, severity: note, limits: macro-only, advice: sun}}
advice: {heat: {topic: heat, says: keep it cool, severity: note}}
terms: {seat: {names: [seat], means: where it rests}}
circles: {wide: {made_for: enlarger-50, lens_class: enlarger, focal_length: 50 mm, image_circle: 60..70 mm}}
"""
    read_records = good(text, base, own=True)
    own = Basis("own-measured", ("own",))
    assert read_records["ketch"] == Body(
        "ketch", "Ketch", "e-mount", "aps-c-1.5", own, pixels=(6000, 4000), cover_glass_mm=Interval(2, 2.5, 2.25)
    )
    assert read_records["spread"] == Assumption("spread", Interval(-0.05, 0.05, 0), "mm", "rings come out so", own)
    assert read_records["please"] == Word("please", "", ("please",))
    assert read_records["m"] == Shared("m", ("M",), ("m42", "e-mount"), "m42")
    assert read_records["far"].limits == "macro-only"
    assert read_records["heat"].defer_to == ""


def test_good_records_are_kept_beside_bad_ones(base: Tables) -> None:
    part = read("lenses:\n  tern: {mount: c}\n  knot: {mount: m24}\n  dunlin: {mount: c, focal: 25}\n", base, own=True)
    assert list(part.tables["lenses"]) == ["tern"]
    assert len(part.problems) == 2


def test_record_may_refer_to_one_further_down(base: Tables) -> None:
    text = "lenses: {tern: {mount: p}}\nmounts: {p: {designation: P, kind: slr}}\n"
    assert set(good(text, base, own=True)) == {"tern", "p"}


def test_problems_come_in_the_order_of_files_and_lines(base: Tables) -> None:
    one = b"lenses:\n  knot: {mount: m24}\n  tern: {mount: c, travel: 3}\n"
    two = b"lenses: {wren: {mount: x}}\n"
    part = read_part([FactFile("b.yaml", "b.yaml", one), FactFile("a.yaml", "a.yaml", two)], base, own=True)
    assert [str(problem.place) for problem in part.problems] == ["b.yaml:2:17", "b.yaml:3:28", "a.yaml:1:24"]


def test_ids_of_a_broken_file_are_not_told_as_missing(base: Tables) -> None:
    broken = b"mounts:\n  p: {designation: P\n"
    other = b"lenses: {tern: {mount: p}, wren: {mount: q}}\n"
    part = read_part([FactFile("b.yaml", "b.yaml", broken), FactFile("a.yaml", "a.yaml", other)], base, own=True)
    assert [problem.place.file for problem in part.problems] == ["b.yaml", "a.yaml"]
    assert "mount 'q'" in str(part.problems[1])
    assert not part.tables["lenses"]


def test_same_id_in_two_files_of_a_layer_names_both_places(base: Tables) -> None:
    lens = b"lenses: {tern: {mount: c, overrides: yes}}\n"
    part = read_part(
        [FactFile("a.yaml", "", lens[:24] + b"}}"), FactFile("b.yaml", "", lens[:24] + b"}}")], base, own=True
    )
    assert [str(problem) for problem in part.problems] == [
        "b.yaml:1:10: found lens 'tern' again, expected an id of its own (it stands at a.yaml:1:10 already)"
    ]
    assert part.tables["lenses"]["tern"].place.file == "a.yaml"


def test_overriding_record_takes_the_place_of_the_earlier_one(base: Tables) -> None:
    text = "mounts: {m42: {designation: M42, kind: slr, register: 45.5 mm, overrides: yes}}"
    part = read(text, base, own=True)
    assert part.problems == ()
    assert part.tables["mounts"]["m42"].register_mm == exact(45.5)


def test_overridden_mount_moves_the_register_difference_rings_on_it(base: Tables) -> None:
    part = read("mounts: {m42: {designation: M42, kind: slr, register: 45.5 mm, overrides: yes}}", base, own=True)
    assert part.tables["adapters"]["m42-e"].thickness_mm == Span.fixed(exact(27.5))
    assert part.written == {"m42"}


@pytest.mark.parametrize("record_id", ["1-2.5-type", "s-1-3:2", "R60+", "m39_old"])
def test_ids_of_the_trade_are_accepted(record_id: str, base: Tables) -> None:
    assert record_id in good(f"lenses: {{'{record_id}': {{mount: c}}}}", base, own=True)
