"""Strict reading of a YAML file: every scalar the text it was, with its place; both of PyYAML's parsers alike."""

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.facts.nodes import Fields, Items, Node, Text
from engine.facts.yamlfile import Sheet, read_sheet

BOTH = pytest.mark.parametrize("in_python", [False, True], ids=["in-c", "in-python"])
SHIPPED = sorted((Path(__file__).parents[2] / "kb").rglob("*.yaml"))


def read(text: str, in_python: bool = False) -> Sheet:
    return read_sheet("x.yaml", text.encode(), in_python)


def value(text: str, *keys: str, in_python: bool = False) -> Node:
    sheet = read(text, in_python)
    assert sheet.problems == []
    node: Node | None = sheet.fields
    for key in keys:
        assert isinstance(node, Fields)
        node = node.entries[key].value
    assert node is not None
    return node


@BOTH
@pytest.mark.parametrize(
    "text", ["1:30", "010", "on", "no", "2024-01-02", ".nan", ".inf", "1e3", "0x1f", "null", "=", "1_000"]
)
def test_scalar_stays_the_text_it_was(text: str, in_python: bool) -> None:
    assert value(f"a: {text}", "a", in_python=in_python) == Text(text, False, 1, 4)


@BOTH
def test_unquoted_nothing_is_empty_and_quoted_nothing_is_text(in_python: bool) -> None:
    for text, empty in (("", True), ("~", True), ("''", False), ("'~'", False), ('"~"', False)):
        node = value(f"a: {text}", "a", in_python=in_python)
        assert isinstance(node, Text)
        assert node.empty is empty


@BOTH
def test_places_are_counted_from_one_in_characters(in_python: bool) -> None:
    text = "ü: x\nmounts:\n  µ: [ü, y]\n"
    node = value(text, "mounts", "µ", in_python=in_python)
    assert node == Items([Text("ü", False, 3, 7), Text("y", False, 3, 10)], 3, 6)


@BOTH
def test_byte_order_mark_and_carriage_returns_move_no_place(in_python: bool) -> None:
    sheet = read_sheet("x.yaml", b"\xef\xbb\xbfa: 1\r\nb: 2\r\n", in_python)
    assert sheet.fields is not None
    assert sheet.problems == []
    assert [(e.line, e.column) for e in sheet.fields.entries.values()] == [(1, 1), (2, 1)]


@BOTH
@pytest.mark.parametrize("text", ["", "# nothing yet\n", "---\n", "~\n"])
def test_file_without_facts_is_good(text: str, in_python: bool) -> None:
    assert value(text, in_python=in_python) == Fields({}, 1, 1)


@BOTH
def test_first_of_two_equal_keys_is_kept(in_python: bool) -> None:
    sheet = read("a: 1\na: 2\n", in_python)
    assert sheet.fields is not None
    assert sheet.fields.entries["a"].value == Text("1", False, 1, 4)


@BOTH
def test_reading_goes_on_behind_what_is_refused(in_python: bool) -> None:
    sheet = read("a: &x 1\nb: !t 2\nc: *x\nd: 4\n", in_python)
    assert sheet.fields is not None
    assert list(sheet.fields.entries) == ["a", "b", "c", "d"]
    assert [(p.place.line, p.found) for p in sheet.problems] == [(1, "anchor '&x'"), (2, "tag '!t'"), (3, "alias '*x'")]


@BOTH
def test_thirty_two_levels_are_read_and_no_more(in_python: bool) -> None:
    assert read("a: " + "[" * 31 + "]" * 31, in_python).problems == []
    assert len(read("a: " + "[" * 32 + "]" * 32, in_python).problems) == 1
    assert len(read("a: " + "[" * 900 + "]" * 900, in_python).problems) == 1


@pytest.mark.parametrize("path", SHIPPED, ids=lambda path: path.stem)
def test_both_parsers_read_shipped_facts_alike(path: Path) -> None:
    data = path.read_bytes()
    assert read_sheet("x", data) == read_sheet("x", data, in_python=True)


@given(st.text(st.sampled_from("ab:-[]{}'\"#&*!|>%@`~ \t\n,?\\é\x07"), max_size=30))
def test_no_file_whatever_raises(text: str) -> None:
    for in_python in (False, True):
        sheet = read(text, in_python)
        assert sheet.whole or sheet.problems


@given(st.binary(max_size=40))
def test_no_bytes_whatever_raise(data: bytes) -> None:
    sheet = read_sheet("x.yaml", data)
    assert sheet.whole or sheet.problems
