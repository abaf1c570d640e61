"""The gear file edited in place: what is meant is there afterwards, and every other byte stays; what undoes it does."""

from __future__ import annotations

import os
import sys
import threading
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest
import yaml
from hypothesis import example, given, settings
from hypothesis import strategies as st

from engine.base.problem import Problem
from engine.facts import gearfile, safesave
from engine.facts.files import FactFile, Layer
from engine.facts.gearfile import HEAD, Append, Done, Drop, Edit, SetField, apply_all, edited
from engine.facts.loading import read_part
from engine.facts.overlay import load
from engine.facts.tables import Tables
from engine.facts.yamlfile import read_sheet
from tests.examples import examples
from tests.facts import gear_hammer

DAY = "2026-11-24, own observation"
BODY = {"mount": "e-mount", "format": "aps-c-1.5"}
GEAR = """\
# the boat house shelf

lenses:   # cine glass
  avocet:
    name: 'avocet'
    mount: c
    collar: 30.5 mm          # the barrel just ahead of the seat
  # the next one came by post
  tern:
    mount: c
    # weighed wet

bodies:
  skiff: {mount: e-mount, format: aps-c-1.5}
# the end
"""


def after(text: str | bytes, *edits: Edit) -> str:
    """The text after the edits, none of which is refused."""
    data = text.encode() if isinstance(text, str) else text
    for edit in edits:
        outcome = edited(data, edit, "gear.yaml")
        assert not isinstance(outcome, Problem), str(outcome)
        data = outcome[0]
    return data.decode()


def refused(text: str, edit: Edit) -> str:
    outcome = edited(text.encode(), edit, "gear.yaml")
    assert isinstance(outcome, Problem), outcome
    assert "\n" not in str(outcome)
    return str(outcome)


def test_record_is_put_behind_the_last_of_its_kind_and_its_comments() -> None:
    edit = Append("lenses", "dunlin", {"name": "dunlin", "mount": "c", "f_number": "f/1.4"}, DAY)
    added = f"  # {DAY}\n  dunlin:\n    name: dunlin\n    mount: c\n    f_number: f/1.4\n"
    assert after(GEAR, edit) == GEAR.replace("    # weighed wet\n", "    # weighed wet\n" + added)


@pytest.mark.parametrize(
    ("text", "then"),
    [
        ("lenses: {}\n", "lenses:\n  knot:\n    mount: c\n"),
        ("lenses: {}  # none yet\nbodies: {}\n", "lenses:  # none yet\n  knot:\n    mount: c\nbodies: {}\n"),
        ("lenses: {}", "lenses:\n  knot:\n    mount: c"),
        ("lenses:   {}\r\n# end\r\n", "lenses:\r\n  knot:\r\n    mount: c\r\n# end\r\n"),
    ],
)
def test_empty_braces_make_room_for_the_first_record(text: str, then: str) -> None:
    assert after(text, Append("lenses", "knot", {"mount": "c"})) == then


def test_first_record_of_a_kind_brings_its_heading_behind_a_blank_line() -> None:
    cup = {"bore": "32 mm", "depth": "0.46 mm"}
    ring = {"front": "c", "rear": "e-mount", "kind": "recessed", "thickness": "-0.46 mm ±0.01"}
    fields: dict[str, Any] = ring | {"cup": cup}
    assert after(GEAR, Append("adapters", "cup", fields)) == GEAR + (
        "\nadapters:\n  cup:\n    front: c\n    rear: e-mount\n    kind: recessed\n    thickness: -0.46 mm ±0.01\n"
        "    cup:\n      bore: 32 mm\n      depth: 0.46 mm\n"
    )


def test_record_under_an_empty_heading_is_set_in_as_the_rest_of_the_file() -> None:
    text = "bodies:\n    skiff:\n        mount: e-mount\n        format: aps-c-1.5\nlenses:  # none yet\n# end\n"
    assert after(text, Append("lenses", "tern", {"mount": "c"})) == text.replace(
        "# end", "    tern:\n        mount: c\n# end"
    )


def test_scalar_is_set_in_its_place_and_the_comment_joins_the_one_there() -> None:
    edit = SetField("lenses", "avocet", "collar", "30.45 mm ±0.02", DAY)
    now = GEAR.replace("30.5 mm ", "30.45 mm ±0.02 ").replace("ahead of the seat", f"ahead of the seat; {DAY}")
    assert after(GEAR, edit) == now
    later = SetField("lenses", "avocet", "collar", "30.4 mm", DAY.replace("24", "26"))
    assert after(now, later) == now.replace("30.45 mm ±0.02", "30.4 mm").replace("11-24", "11-26")


def test_missing_key_is_added_behind_the_last_one() -> None:
    edit = SetField("lenses", "tern", "weight", "120 g", DAY)
    assert after(GEAR, edit) == GEAR.replace("wet\n", f"wet\n    weight: 120 g  # {DAY}\n")


def test_key_is_taken_out_with_its_line_and_comes_back_with_it() -> None:
    outcome = edited(GEAR.encode(), SetField("lenses", "avocet", "collar", None), "gear.yaml")
    assert not isinstance(outcome, Problem)
    line = "    collar: 30.5 mm          # the barrel just ahead of the seat\n"
    assert outcome[0].decode() == GEAR.replace(line, "")
    assert after(outcome[0], outcome[1].inverse) == GEAR


def test_dropped_record_takes_its_own_lines_and_a_dated_comment_alone() -> None:
    assert after(GEAR, Drop("lenses", "tern")) == GEAR.replace("  tern:\n    mount: c\n    # weighed wet\n", "")
    assert after(GEAR, Drop("bodies", "skiff")) == GEAR.replace("  skiff: {mount: e-mount, format: aps-c-1.5}\n", "")
    assert after(GEAR, Append("lenses", "knot", {"mount": "c"}, DAY), Drop("lenses", "knot")) == GEAR


def test_place_is_that_of_the_record_or_field() -> None:
    places = []
    for edit in (Append("lenses", "knot", {"mount": "c"}, DAY), SetField("lenses", "tern", "weight", "9 g")):
        outcome = edited(GEAR.encode(), edit, "gear.yaml")
        assert not isinstance(outcome, Problem)
        places.append(str(outcome[1].place))
    assert places == ["gear.yaml:13:3", "gear.yaml:12:5"]


def test_undo_after_another_edit_leaves_the_other() -> None:
    outcome = edited(GEAR.encode(), Drop("lenses", "avocet"), "gear.yaml")
    assert not isinstance(outcome, Problem)
    other = SetField("lenses", "tern", "mount", "m42")
    assert after(outcome[0], other, outcome[1].inverse) == after(GEAR, other)
    # where the lines around are gone it comes back at the end of its kind, in the words it had
    gone = after(outcome[0], Drop("lenses", "tern"), Append("lenses", "knot", {"mount": "c"}))
    gone = gone.replace("# cine glass", "# other glass").replace("# the next", "# another")
    back = after(gone, outcome[1].inverse)
    assert "  knot:\n    mount: c\n  avocet:\n    name: 'avocet'\n" in back
    assert "    collar: 30.5 mm          # the barrel just ahead of the seat\n" in back


def test_undone_append_takes_its_heading_unless_more_came_under_it() -> None:
    first = edited(b"", Append("lenses", "tern", {"mount": "c"}), "gear.yaml")
    assert not isinstance(first, Problem)
    assert after(first[0], first[1].inverse) == ""
    more = after(first[0], Append("lenses", "knot", {"mount": "c"}), first[1].inverse)
    assert more == "lenses:\n  knot:\n    mount: c\n"


def test_undone_setting_takes_its_comment_even_where_the_lines_around_have_changed() -> None:
    outcome = edited(GEAR.encode(), SetField("lenses", "tern", "mount", "m42", DAY), "gear.yaml")
    assert not isinstance(outcome, Problem)
    other = SetField("lenses", "tern", "weight", "120 g")
    drop = Drop("lenses", "avocet")
    assert after(outcome[0], other, drop, outcome[1].inverse) == after(GEAR, other, drop)


@pytest.mark.parametrize(
    ("value", "line"),
    [
        ("25 mm", "25 mm"), ("f/1.4", "f/1.4"), ("-0.46 mm ±0.01", "-0.46 mm ±0.01"), ("12..17 mm", "12..17 mm"),
        ("5/8 in", "5/8 in"), ("6000 x 4000", "6000 x 4000"), ("Küste №2", "'Küste №2'"), ("küste", "küste"),
        ("1:1.4", "'1:1.4'"), ('1"', "'1\"'"), ("it's", "'it''s'"), ("a # b", "'a # b'"), ("- a", "'- a'"), ("", "''"),
        ("~", "'~'"), ("null", "'null'"), ("a: b", "'a: b'"), (" a ", "' a '"), ("[a]", "'[a]'"), ("海燕", "海燕"),
    ],
)  # fmt: skip
def test_value_is_quoted_unless_plainly_safe(value: str, line: str) -> None:
    lines = (
        after("", Append("words", "go", {"means": value, "says": ["go"]}, DAY)).splitlines() if value.strip() else []
    )
    assert not lines or lines[3] == f"    means: {line}"


@given(st.text(st.characters(exclude_categories=("Cc", "Cs", "Cf", "Cn", "Zl", "Zp")), min_size=1))
@example("...")
@example("--- a")
@example("<<")
@example("? a")
@example("%TAG")
def test_any_words_are_read_back_as_they_were(words: str) -> None:
    outcome = edited(b"", Append("words", words, {"means": words, "says": [words, "b"]}, words.strip()), "gear.yaml")
    if isinstance(outcome, Problem):
        assert not words.strip()
        return
    held = yaml.load(outcome[0], yaml.BaseLoader)
    assert held == {"words": {words: {"means": words, "says": [words, "b"]}}}


def test_what_no_line_may_hold_is_refused() -> None:
    for words, char in (
        ("a\nb", "000A"),
        ("a\tb", "0009"),
        ("a\u202eb", "202E"),
        ("\x1b[1m", "001B"),
        ("\udc80", "DC80"),
    ):
        for edit in (
            SetField("lenses", "tern", "name", words),
            SetField("lenses", "tern", "name", "x", words),
            Append("lenses", "knot", {"mount": "c", "aliases": ["x", words]}),
        ):
            assert f"character U+{char}" in refused(GEAR, edit)


def test_file_set_in_by_tabs_is_refused() -> None:
    assert refused("lenses:\n\ttern:\n\t\tmount: c\n", Drop("lenses", "tern")).startswith("gear.yaml:2:1: found a tab")


@pytest.mark.parametrize(
    ("text", "edit", "told"),
    [
        (
            "lenses: {tern: {mount: c}}\n",
            Append("lenses", "knot", {"name": "knot: 2", "mount": "c", "cup": {"bore": "2 mm"}}),
            "1:1: found lenses in braces, expected this put in by hand: "
            "knot: {name: 'knot: 2', mount: c, cup: {bore: 2 mm}}",
        ),
        (
            "{lenses: {tern: {mount: c}}}\n",
            Append("bodies", "skiff", BODY),
            "1:1: found facts in braces, expected this put in by hand: bodies: {skiff: {mount: e-mount, format: "
            "aps-c-1.5}}",
        ),
        (
            "lenses: ~\n",
            Append("lenses", "knot", {"mount": "c"}),
            "1:1: found lenses without a value, expected this put in by hand: knot: {mount: c}",
        ),
        (
            GEAR,
            SetField("bodies", "skiff", "pixels", "6000 x 4000"),
            "14:3: found body 'skiff' in braces, expected this put in by hand: pixels: 6000 x 4000",
        ),
        (
            "lenses: {tern: {mount: c}}\n",
            Drop("lenses", "tern"),
            "1:10: found lenses in braces, expected 'tern' taken out by hand",
        ),
        (
            "lenses:\n  tern:\n    mount: c\n    note: >\n      wet\n",
            SetField("lenses", "tern", "note", "it's dry"),
            "4:5: found note as a block of text, expected this put in by hand: note: 'it''s dry'",
        ),
        (
            "lenses:\n  tern:\n    mount: c\n    aliases: [a]\n",
            SetField("lenses", "tern", "aliases", "b"),
            "4:5: found aliases as a list, expected this put in by hand: aliases: b",
        ),
        (
            GEAR,
            Append("lenses", "tern", {"mount": "c"}),
            "9:3: found lens 'tern' again, expected an id of its own (it stands at gear.yaml:9:3 already)",
        ),
        (GEAR, Drop("lenses", "trn"), "3:1: found lens 'trn', expected a lens of the gear file; nearest: tern"),
        (GEAR, Drop("lens", "tern"), "1:1: found key 'lens', expected a kind of record; nearest: lenses"),
        (
            GEAR,
            Append("lenses", "my tern", {"mount": "c"}),
            "3:1: found id 'my tern', expected an id of letters, digits and '-'; nearest: my-tern",
        ),
        (
            GEAR,
            SetField("lenses", "tern", "weigth", "9 g"),
            "9:3: found key 'weigth', expected a key of a lens; nearest: weight",
        ),
        (
            GEAR,
            SetField("lenses", "tern", "weight", "9"),
            "9:3: found weight '9', expected a weight with its unit, such as '120 g'; nearest: 9 g",
        ),
        (
            GEAR,
            SetField("lenses", "tern", "mount", None),
            "9:3: found lens 'tern' without a value, expected a mapping of its keys",
        ),
        (
            GEAR,
            SetField("lenses", "tern", "colar", None),
            "9:3: found lens 'tern' without 'colar', expected a key of lens 'tern'",
        ),
        (
            "lenses:\n  tern:\n    mount: c\n    mount: c\n",
            SetField("lenses", "tern", "weight", "9 g"),
            "4:5: found key 'mount' again, expected each key once (it stands at line 3 already)",
        ),
    ],
    ids=str,
)
def test_refusal_says_what_to_put_there(text: str, edit: Edit, told: str) -> None:
    assert refused(text, edit) == f"gear.yaml:{told}"


def test_mistake_that_was_there_before_is_no_reason_to_refuse() -> None:
    text = GEAR.replace("collar: 30.5 mm ", "collar: 30,5 mm ")
    assert "weight: 9 g" in after(text, SetField("lenses", "avocet", "weight", "9 g"))


def test_without_the_parser_in_c_the_places_are_the_same(monkeypatch: pytest.MonkeyPatch) -> None:
    text = "lenses:\n  tern:\n    mount: c\n    note:  # wet\n\n    weight:\nbodies:\n"
    edits = (
        SetField("lenses", "tern", "weight", "9 g", DAY),
        SetField("lenses", "tern", "note", "dry"),
        Append("bodies", "skiff", BODY),
        Append("lenses", "knot", {"mount": "c"}),
        Drop("lenses", "tern"),
    )
    made = after(text, *edits)
    monkeypatch.setattr(gearfile, "read_sheet", lambda file, data: read_sheet(file, data, in_python=True))
    assert after(text, *edits) == made
    assert after(text, *edits[:2]) == text.replace("note:", "note: dry").replace("weight:", f"weight: 9 g  # {DAY}")


# ---------------------------------------------------------------- random files

WORDS = st.sampled_from(["wet", "Küste", "海燕", "it's", 'a "b"', "x # y", "1:30", "no", "k: v", "f/1.4"])
IDS = ("avocet", "tern", "dunlin", "knot", "ruff", "wren", "teal", "smew", "skua")
FIELDS = {
    "lenses": {"collar": "30.5 mm ±0.02", "weight": "120 g", "f_number": "f/1.4", "focal_length": "25 mm"},
    "bodies": {"clear_depth": "11 mm", "pixels": "6000 x 4000"},
    "adapters": {"clear_diameter": "24 mm", "factor": "0.71"},
}
NEEDED = {
    "lenses": {"mount": "c"},
    "bodies": BODY,
    "adapters": {"front": "c", "rear": "e-mount", "kind": "recessed", "thickness": "-0.46 mm"},
}


@dataclass
class Random:
    """A gear file, what its records hold, and which parts of it stand in a form that is not edited."""

    data: bytes
    records: dict[tuple[str, str], dict[str, Any]]
    braces: set[tuple[str, ...]]


@st.composite
def gear_files(draw: st.DrawFn) -> Random:
    line_end = draw(st.sampled_from(["\n", "\r\n"]))
    step = draw(st.sampled_from([2, 3, 4]))
    ids = iter(draw(st.permutations(IDS)))
    lines: list[str] = []
    records: dict[tuple[str, str], dict[str, Any]] = {}
    braces: set[tuple[str, ...]] = set()

    def between(*deep: int) -> None:
        for _ in range(draw(st.sampled_from([0, 0, 1, 2]))):
            comment = " " * draw(st.sampled_from(deep)) + f"# {draw(WORDS)}"
            lines.append(draw(st.sampled_from(["", " " * 3, comment, comment])))

    def behind() -> str:
        return draw(st.sampled_from(["", "", " ", f"  # {draw(WORDS)}"]))

    def value(text: str) -> str:
        return draw(st.sampled_from([text, "'" + text.replace("'", "''") + "'", f'"{text}"']))

    def noted() -> tuple[list[str], str]:
        deep = " " * 3 * step
        one, two = draw(st.sampled_from(["wet", "Küste"])), draw(st.sampled_from(["dry", "海燕"]))
        return draw(
            st.sampled_from(
                [
                    (
                        [f"note: |{draw(st.sampled_from(['', '  # said']))}", deep + one, "", deep + two],
                        f"{one}\n\n{two}\n",
                    ),
                    (["note: >-", deep + one, deep + two], f"{one} {two}"),
                    ([f"note: |{step}+", deep + one, "", ""], f"{one}\n\n\n"),
                    ([f"note: {one}", deep + two + behind()], f"{one} {two}"),
                    ([f"note: '{one} # ''", deep + f"{two}'" + behind()], f"{one} # ' {two}"),
                    ([f'note: "{one}: \\"', deep + f'{two}\\\\"' + behind()], f'{one}: " {two}\\'),
                    (["note:" + behind(), deep + two + behind()], two),
                ]
            )
        )

    def fields_of(section: str, called: str) -> None:
        chosen = draw(st.lists(st.sampled_from(sorted(FIELDS[section])), unique=True))
        wanted = NEEDED[section] | {key: FIELDS[section][key] for key in chosen}
        record: dict[str, Any] = dict(wanted)
        records[section, called] = record
        if draw(st.integers(0, 4)) == 0:
            braces.add((section, called))
            inner = ("," + line_end + " " * 3 * step).join(f"{key}: {text}" for key, text in wanted.items())
            lines.append(" " * step + called + ": {" + inner + draw(st.sampled_from(["", " ", ", "])) + "}" + behind())
            return
        lines.append(" " * step + called + ":" + behind())
        for key, text in wanted.items():
            between(0, step, 2 * step)
            lines.append(" " * 2 * step + f"{key}: {value(text)}" + behind())
        for extra in draw(st.permutations(["note", "aliases", "cup", ""])):
            if extra == "":
                break
            if extra == "note":
                several, record["note"] = noted()
                lines.extend([" " * 2 * step + several[0], *several[1:]])
                if several[0][6:7] in ("|", ">"):
                    braces.add((section, called, "note"))
            elif extra == "aliases":
                braces.add((section, called, "aliases"))
                record["aliases"] = ["a b", "x, y"]
                lines.extend(
                    draw(
                        st.sampled_from(
                            [
                                [" " * 2 * step + "aliases: [a b, 'x, y']" + behind()],
                                [" " * 2 * step + "aliases: [ # two", " " * 9 + "a b, 'x, y' # ]", " " * 9 + "]"],
                                [" " * 2 * step + "aliases:", *(" " * 3 * step + f"- {a}" for a in ("a b", "'x, y'"))],
                                [" " * 2 * step + "aliases:", *(" " * 2 * step + f"- {a}" for a in ("a b", "'x, y'"))],
                            ]
                        )
                    )
                )
            elif section == "adapters":
                record["cup"] = {"bore": "32 mm", "depth": "0.4 mm"}
                lines.append(" " * 2 * step + "cup:" + behind())
                lines.extend(" " * 3 * step + f"{key}: {text}" + behind() for key, text in record["cup"].items())

    between(0)
    for section in draw(st.lists(st.sampled_from(sorted(FIELDS)), unique=True)):
        lines.append(f"{section}:" + behind())
        for called in [next(ids) for _ in range(draw(st.integers(0, 2)))]:
            between(0, step)
            fields_of(section, called)
        between(0, step, 2 * step)
    between(0)
    text = line_end.join(lines) + (line_end if draw(st.booleans()) or "|" in "".join(lines[-9:]) else "")
    data = draw(st.sampled_from([b"", b"\xef\xbb\xbf"])) + text.encode()
    for name, record in held(data).items():  # '|+' also keeps the blank lines that chance to follow
        records[name] |= {"note": record["note"]} if record.get("note", "").endswith("\n\n") else {}
    assert held(data) == records
    return Random(data, records, braces)


@st.composite
def edits_of(draw: st.DrawFn, gear: Random) -> Edit:
    comment = draw(st.sampled_from(["", DAY]))
    names = sorted(gear.records)
    kind = draw(st.sampled_from(["append", "set", "set", "take", "drop"])) if names else "append"
    if kind == "append":
        section = draw(st.sampled_from(sorted(FIELDS)))
        fields: dict[str, Any] = {"name": draw(WORDS), **NEEDED[section], "aliases": [draw(WORDS), "b"]}
        if section == "adapters":
            fields["cup"] = {"bore": "32 mm", "depth": "0.4 mm"}
        return Append(section, "plover", fields, comment)
    section, called = draw(st.sampled_from(names))
    if kind == "drop":
        return Drop(section, called)
    if kind == "take":
        free = sorted(set(gear.records[section, called]) - set(NEEDED[section]) - {"cup"}) or ["name"]
        return SetField(section, called, draw(st.sampled_from(free)), None)
    key = draw(st.sampled_from([*FIELDS[section], "name", "note"]))
    text = draw(WORDS) if key in ("name", "note") else FIELDS[section][key].replace("2", "3")
    return SetField(section, called, key, text, comment)


def meant(records: dict[tuple[str, str], dict[str, Any]], edit: Edit) -> dict[tuple[str, str], dict[str, Any]]:
    """The records after the edit, worked out on plain dicts."""
    now = {name: dict(record) for name, record in records.items()}
    match edit:
        case Append(fields=fields):
            assert isinstance(fields, dict)
            now[edit.section, edit.id] = fields
        case Drop():
            del now[edit.section, edit.id]
        case SetField(value=None):
            del now[edit.section, edit.id][edit.key]
        case SetField(value=value):
            now[edit.section, edit.id][edit.key] = value
    return now


def held(data: bytes) -> dict[tuple[str, str], dict[str, Any]]:
    """The records of a file as another reader of YAML sees them."""
    sections = yaml.load(data, yaml.BaseLoader) or {}
    return {(section, called): record for section in sections for called, record in (sections[section] or {}).items()}


def alike(one: bytes, other: bytes) -> int:
    """How many bytes are the same from the start."""
    return next((n for n, (a, b) in enumerate(zip(one, other, strict=False)) if a != b), min(len(one), len(other)))


def may_be_refused(gear: Random, edit: Edit) -> bool:
    name = (edit.section, edit.id)
    if b"+" in gear.data and (isinstance(edit, Drop) or (isinstance(edit, SetField) and edit.value is None)):
        return True  # behind '|+' a blank line that followed what is gone would become text
    match edit:
        case SetField(key=key, value=value):
            there = key in gear.records[name]
            return name in gear.braces or (there and (*name, key) in gear.braces) or (value is None and not there)
    return False


@settings(max_examples=examples(150), deadline=None)
@given(st.data())
def test_edit_of_any_file_changes_what_is_meant_and_no_other_byte(base: Tables, data: st.DataObject) -> None:
    gear = data.draw(gear_files())
    edit = data.draw(edits_of(gear))
    outcome = edited(gear.data, edit, "gear.yaml")
    if isinstance(outcome, Problem):
        assert may_be_refused(gear, edit), str(outcome)
        return
    new, done = outcome
    assert held(new) == meant(gear.records, edit)
    same = alike(gear.data, new)
    tail = min(alike(gear.data[::-1], new[::-1]), min(len(gear.data), len(new)) - same)
    gone, come = gear.data[same : len(gear.data) - tail], new[same : len(new) - tail]
    if isinstance(edit, Append):
        assert gone == b""
    elif isinstance(edit, Drop) or edit.value is None:
        assert come == b""
    else:
        assert gone.count(b"\n") <= 1 or edit.key == "note"
        assert come.count(b"\n") <= 1
    assert (b"\r\n" in new) == (new.count(b"\n") == new.count(b"\r\n") > 0)
    assert read_part([FactFile("gear.yaml", "", new)], base, own=True).problems == ()
    undone = edited(new, done.inverse, "gear.yaml")
    assert not isinstance(undone, Problem), str(undone)
    assert undone[0] == gear.data
    again = edited(gear.data, undone[1].inverse, "gear.yaml")
    assert not isinstance(again, Problem), str(again)
    assert again[0] == new


@settings(max_examples=examples(60), deadline=None)
@given(st.data())
def test_edits_undone_in_turn_leave_the_file_that_was(data: st.DataObject) -> None:
    gear = data.draw(gear_files())
    inverses, files, records = [], [gear.data], gear.records
    for number in range(data.draw(st.integers(2, 5))):
        edit = data.draw(edits_of(Random(files[-1], records, gear.braces)))
        if isinstance(edit, Append):
            edit = Append(edit.section, f"plover-{number}", edit.fields, edit.comment)
        outcome = edited(files[-1], edit, "gear.yaml")
        if not isinstance(outcome, Problem):
            records = meant(records, edit)
            assert held(outcome[0]) == records
            files.append(outcome[0])
            inverses.append(outcome[1].inverse)
    while inverses:
        now = files.pop()
        undone = edited(now, inverses.pop(), "gear.yaml")
        assert not isinstance(undone, Problem), str(undone)
        assert undone[0] == files[-1]


@settings(max_examples=examples(60), deadline=None)
@given(st.data())
def test_edit_undone_after_another_leaves_what_the_other_says(data: st.DataObject) -> None:
    gear = data.draw(gear_files())
    first, second = data.draw(edits_of(gear)), data.draw(edits_of(gear))
    outcome = edited(gear.data, first, "gear.yaml")
    if isinstance(outcome, Problem) or (first.section, first.id) == (second.section, second.id):
        return
    both = edited(outcome[0], second, "gear.yaml")
    if isinstance(both, Problem) or (b"+" in gear.data):
        return
    undone = edited(both[0], outcome[1].inverse, "gear.yaml")
    assert not isinstance(undone, Problem), str(undone)
    assert held(undone[0]) == meant(gear.records, second)


RING = {"name": "low", "front": "c", "rear": "e-mount", "kind": "plain", "thickness": "1 mm"}


def test_what_is_brought_back_is_set_in_as_what_stands_there_by_then() -> None:
    text = b"adapters:\n   avocet:\n      front: c\n      note: |\n         wet\n\n         dry\nbodies:\nlenses:"
    dropped = edited(text, Drop("adapters", "avocet"), "gear.yaml")
    assert not isinstance(dropped, Problem)
    added = edited(dropped[0], Append("adapters", "plover", RING), "gear.yaml")
    assert not isinstance(added, Problem), str(added)
    back = edited(added[0], dropped[1].inverse, "gear.yaml")
    assert not isinstance(back, Problem), str(back)
    assert held(back[0])[("adapters", "avocet")] == {"front": "c", "note": "wet\n\ndry\n"}


# ---------------------------------------------------------------- saving


@pytest.fixture
def gear(tmp_path: Path) -> Path:
    path = tmp_path / "gear.yaml"
    path.write_text(GEAR)
    return path


def apply_one(path: Path, edit: Edit) -> Done | Problem:
    outcome = apply_all(path, (edit,))
    return outcome if isinstance(outcome, Problem) else outcome[0]


def done(path: Path, edit: Edit) -> Done:
    outcome = apply_one(path, edit)
    assert isinstance(outcome, Done), str(outcome)
    return outcome


def mode(path: Path) -> int:
    return path.stat().st_mode & 0o777


def test_first_record_makes_the_file_for_its_owner_alone(tmp_path: Path) -> None:
    path = tmp_path / "share" / "ringpath" / "gear.yaml"
    inverse = done(path, Append("lenses", "tern", {"mount": "c"}, DAY)).inverse
    assert path.read_text() == f"{HEAD}\nlenses:\n  # {DAY}\n  tern:\n    mount: c\n"
    assert (mode(path), mode(path.parent)) == (0o600, 0o700)
    done(path, inverse)
    assert path.read_text() == HEAD


def test_nothing_is_made_for_an_edit_that_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "share" / "gear.yaml"
    for edit in (Drop("lenses", "tern"), SetField("lenses", "tern", "mount", "c"), Append("lenses", "a b", {})):
        assert isinstance(apply_one(path, edit), Problem)
    assert not path.parent.exists()


def test_refused_edit_leaves_the_file_alone(gear: Path) -> None:
    before = gear.stat()
    assert isinstance(apply_one(gear, SetField("lenses", "tern", "weight", "9")), Problem)
    assert (gear.stat().st_ino, gear.stat().st_mtime_ns) == (before.st_ino, before.st_mtime_ns)


def test_edits_of_one_statement_are_saved_once_and_undone_once(gear: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    before, saves = gear.read_bytes(), []
    write = safesave._write

    def counted(passing: str, data: bytes, file_mode: int) -> None:
        saves.append(data)
        write(passing, data, file_mode)

    monkeypatch.setattr(safesave, "_write", counted)
    told = (
        Append("lenses", "plover", {"mount": "c"}),
        Drop("lenses", "plover"),
        Append("lenses", "plover", {"mount": "d"}),
    )
    outcome = apply_all(gear, told)
    assert not isinstance(outcome, Problem), str(outcome)
    assert len(saves) == 1
    assert "mount: d" in gear.read_text()
    assert not isinstance(apply_all(gear, [one.inverse for one in reversed(outcome)]), Problem)
    assert len(saves) == 2
    assert gear.read_bytes() == before


def test_one_refused_edit_refuses_the_whole_statement(gear: Path) -> None:
    before = gear.read_bytes()
    told = (Append("lenses", "plover", {"mount": "c"}), SetField("lenses", "plover", "weight", "9"))
    assert isinstance(apply_all(gear, told), Problem)
    assert gear.read_bytes() == before


def test_mode_is_kept_and_a_link_stays_one(gear: Path, tmp_path: Path) -> None:
    gear.chmod(0o640)
    link = tmp_path / "links" / "mine.yaml"
    link.parent.mkdir()
    link.symlink_to("../gear.yaml")
    done(link, SetField("lenses", "tern", "weight", "9 g"))
    assert link.is_symlink()
    assert "weight: 9 g" in gear.read_text()
    assert mode(gear) == 0o640
    assert [path.name for path in link.parent.iterdir()] == ["mine.yaml"]
    assert sorted(path.name for path in tmp_path.iterdir()) == [".gear.yaml.lock", "gear.yaml", "links"]


def test_half_made_file_of_a_killed_writer_is_swept(gear: Path) -> None:
    stray = gear.with_name(".gear.yaml.new")
    stray.write_text("lens")
    done(gear, SetField("lenses", "tern", "weight", "9 g"))
    assert not stray.exists()
    assert gear.with_name(".gear.yaml.lock").exists()


def test_full_disk_leaves_the_old_file_and_nothing_else(gear: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def full(descriptor: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    outcome = apply_one(gear, SetField("lenses", "tern", "weight", "9 g"))
    assert isinstance(outcome, Problem)
    assert outcome.found == "no space left on device"
    assert gear.read_text() == GEAR
    assert not gear.with_name(".gear.yaml.new").exists()


def test_file_changed_by_an_editor_meanwhile_keeps_both_changes(gear: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    write, times = safesave._write, iter([1])

    def write_late(passing: str, data: bytes, file_mode: int) -> None:
        write(passing, data, file_mode)
        if next(times, 0):
            gear.write_text(GEAR + "# saved meanwhile\n")

    monkeypatch.setattr(safesave, "_write", write_late)
    done(gear, SetField("lenses", "tern", "weight", "9 g"))
    assert gear.read_text() == after(GEAR, SetField("lenses", "tern", "weight", "9 g")) + "# saved meanwhile\n"


def test_writer_that_does_not_finish_is_told_of(gear: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(safesave, "PATIENCE_S", 0.05)
    with safesave._locked(str(gear.with_name(".gear.yaml.lock"))) as held_it:
        assert held_it
        outcome = apply_one(gear, SetField("lenses", "tern", "weight", "9 g"))
    assert isinstance(outcome, Problem)
    assert outcome.found == "a file that another program is writing"
    done(gear, SetField("lenses", "tern", "weight", "9 g"))


def test_what_is_no_file_is_refused(tmp_path: Path) -> None:
    for edit in (Append("lenses", "tern", {"mount": "c"}), Drop("lenses", "tern")):
        outcome = apply_one(tmp_path, edit)
        assert isinstance(outcome, Problem)
        assert outcome.found == "no plain file"


def test_threads_of_one_process_lose_nothing(gear: Path) -> None:
    def add(name: str) -> None:
        for number in range(10):
            done(gear, Append("lenses", f"{name}-{number}", {"mount": "c"}))

    threads = [threading.Thread(target=add, args=(name,)) for name in ("a", "b", "c")]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    loaded = load([gear_hammer.FACTS, Layer("gear", str(gear))])
    assert loaded.problems == ()
    assert len(loaded.gear_ids) == 33


@pytest.mark.skipif(sys.platform == "win32", reason="signals")
def test_two_processes_lose_nothing(tmp_path: Path) -> None:
    path = tmp_path / "gear.yaml"
    path.write_text(gear_hammer.SEED)
    logs = [tmp_path / f"{name}.log" for name in gear_hammer.WORKERS]
    pairs = zip(gear_hammer.WORKERS, logs, strict=True)
    for process in [gear_hammer.started(name, path, log, 7, 60) for name, log in pairs]:
        assert process.wait() == 0
    stories = [gear_hammer.Story.of(log) for log in logs]
    assert [(story.done, story.pending) for story in stories] == [(60, None), (60, None)]
    gear_hammer.check(path, stories)


@pytest.mark.skipif(sys.platform == "win32", reason="signals")
def test_killed_at_any_moment_the_file_is_the_old_or_the_new(tmp_path: Path) -> None:
    figures = gear_hammer.hammer(tmp_path, 60, seed=11, longest_life=4)
    assert figures.edits >= 60
    assert figures.kills >= 1  # how many fit into sixty edits hangs on the machine
