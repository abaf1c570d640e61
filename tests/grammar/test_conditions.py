"""The conditions of rules: what they say, and where a wrong one goes wrong."""

from __future__ import annotations

import json
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from grammar.conditions import (
    Both,
    Compare,
    Condition,
    Difference,
    Either,
    Ends,
    Has,
    Known,
    Name,
    Not,
    Number,
    OneOf,
    Product,
    Quotient,
    Sum,
    Term,
    Text,
    from_plain,
    names_in,
    parse_condition,
    template_names,
    to_plain,
)  # fmt: skip
from grammar.values import Fault
from tests.examples import examples

A, B = Name("a"), Name("b")
A_SMALL, A_BIG, B_BIG = Compare(A, "<", Number(1)), Compare(A, ">", Number(2)), Compare(B, ">", Number(3))
NAMES = ["a", "b", "extension_mm", "infinity_allowance_mm", "lens_traits", "iris"]


@pytest.mark.parametrize(
    ("text", "condition"),
    [
        ("a > b + 1 mm", Compare(Name("a"), ">", Sum(Name("b"), Number(1)))),
        ("a>.5mm", Compare(Name("a"), ">", Number(0.5))),
        ("a - 1 >= -2", Compare(Difference(Name("a"), Number(1)), ">=", Number(-2))),
        ("a -1 < b", Compare(Difference(Name("a"), Number(1)), "<", Name("b"))),
        ("(a + b) / 2 <= 3 * a", Compare(Quotient(Sum(A, B), Number(2)), "<=", Product(Number(3), A))),
        ("shortest(extension_mm) > a", Compare(Ends("shortest", "extension_mm"), ">", A)),
        ("longest(a) = 0", Compare(Ends("longest", "a"), "=", Number(0))),
        ("a is known", Known("a", True)),
        ("a is unknown", Known("a", False)),
        ("iris is one of ring, lever, 'two words'", OneOf("iris", ("ring", "lever", "two words"))),
        ("lens_traits has no-focusing", Has("lens_traits", "no-focusing")),
        ("iris = none", Compare(Name("iris"), "=", Text("none"))),
        ("iris != \"by wire\"", Compare(Name("iris"), "!=", Text("by wire"))),
        ("iris is yes", Compare(Name("iris"), "=", Text("yes"))),
        ("not a is known", Not(Known("a", True))),
        ("a < 1 or a > 2 and b > 3", Either((A_SMALL, Both((A_BIG, B_BIG))))),
        ("(a < 1 or a > 2) and b > 3", Both((Either((A_SMALL, A_BIG)), B_BIG))),
    ],
)  # fmt: skip
def test_a_condition_is_the_tree_it_says(text: str, condition: Condition) -> None:
    assert parse_condition(text, NAMES) == condition


@pytest.mark.parametrize(
    ("text", "found", "offset", "nearest"),
    [
        ("extensoin_mm > 2 mm", "quantity 'extensoin_mm'", 0, "extension_mm"),
        ("a > 1 and irsi is known", "quantity 'irsi'", 10, "iris"),
        ("a >", "the end", 3, None),
        ("", "the end", 0, None),
        ("a > 1 adn b > 2", "'adn'", 6, "and"),
        ("a ? b", "'?'", 2, None),
        ("(a > 1", "the end", 6, None),
        ("a > 1 mm mm", "'mm'", 9, None),
        ("a + foo > 1", "quantity 'foo'", 4, None),
    ],
)
def test_a_wrong_condition_is_told_where_it_goes_wrong(text: str, found: str, offset: int, nearest: str | None) -> None:
    fault = parse_condition(text, NAMES)
    assert isinstance(fault, Fault)
    assert (fault.found, fault.offset, fault.nearest) == (found, offset, nearest)
    assert fault.expected


def test_the_names_of_a_condition_are_all_it_looks_at() -> None:
    condition = parse_condition("not (shortest(extension_mm) > a + 1) or iris is one of a, ring", NAMES)
    assert not isinstance(condition, Fault)
    assert names_in(condition) == {"extension_mm", "a", "iris"}


def test_the_names_of_a_sentence_stand_in_braces() -> None:
    assert template_names("the lens sits {extension_mm} out, { a } forgives {b}") == ("extension_mm", "a", "b")
    assert template_names("nothing") == ()


def terms() -> st.SearchStrategy[Any]:
    leaves: st.SearchStrategy[Term] = st.one_of(
        st.sampled_from(NAMES).map(Name), st.integers(0, 99).map(lambda n: Number(n / 4)),
        st.tuples(st.sampled_from(["shortest", "longest"]), st.sampled_from(NAMES)).map(lambda pair: Ends(*pair)),
    )  # fmt: skip
    sums = st.sampled_from([Sum, Difference, Product, Quotient])
    return st.recursive(
        leaves, lambda inner: st.tuples(sums, inner, inner).map(lambda row: row[0](row[1], row[2])), max_leaves=4
    )  # fmt: skip


def conditions() -> st.SearchStrategy[Any]:
    ops = st.sampled_from(["<", "<=", ">", ">=", "=", "!="])
    names, words = st.sampled_from(NAMES), st.sampled_from(["ring", "two words", "no-focusing"])
    leaves: st.SearchStrategy[Condition] = st.one_of(
        st.tuples(terms(), ops, terms()).map(lambda row: Compare(*row)),
        st.tuples(names, st.booleans()).map(lambda row: Known(*row)),
        st.tuples(names, st.lists(words, min_size=1, max_size=3).map(tuple)).map(lambda row: OneOf(*row)),
        st.tuples(names, words).map(lambda row: Has(*row)),
    )

    def many(inner: st.SearchStrategy[Any]) -> st.SearchStrategy[Any]:
        return st.lists(inner, min_size=2, max_size=3).map(tuple)

    return st.recursive(
        leaves, lambda inner: st.one_of(inner.map(Not), many(inner).map(Both), many(inner).map(Either)), max_leaves=6
    )


def said(part: Condition | Term) -> str:
    """A condition written out with every bracket."""
    if isinstance(part, Both | Either):
        return f" {'and' if isinstance(part, Both) else 'or'} ".join(f"({said(one)})" for one in part.parts)
    if isinstance(part, Not):
        return f"not ({said(part.part)})"
    if isinstance(part, Compare):
        return f"{said(part.left)} {part.op} {said(part.right)}"
    if isinstance(part, Known):
        return f"{part.name} is {'known' if part.known else 'unknown'}"
    if isinstance(part, OneOf):
        return f"{part.name} is one of " + ", ".join(f'"{word}"' for word in part.choices)
    if isinstance(part, Has):
        return f'{part.name} has "{part.word}"'
    if isinstance(part, Number):
        return f"{part.value}"
    if isinstance(part, Name):
        return part.name
    if isinstance(part, Text):
        return f'"{part.text}"'
    if isinstance(part, Ends):
        return f"{part.end}({part.name})"
    mark = {Sum: "+", Difference: "-", Product: "*", Quotient: "/"}[type(part)]
    return f"({said(part.left)} {mark} {said(part.right)})"


@settings(max_examples=examples(300), deadline=None)
@given(conditions())
def test_a_condition_written_out_is_read_back_and_kept_as_json(condition: Condition) -> None:
    text = said(condition)
    assume(text.count("(") + text.count("not ") <= 40)  # the limit that another test is about
    assert parse_condition(text, NAMES) == condition
    assert from_plain(json.loads(json.dumps(to_plain(condition)))) == condition


@settings(max_examples=examples(400), deadline=None)
@given(
    st.one_of(
        st.text(max_size=60),
        st.lists(
            st.sampled_from(
                [
                    *NAMES,
                    "and",
                    "or",
                    "not",
                    "is",
                    "known",
                    "one",
                    "of",
                    "has",
                    "(",
                    ")",
                    ">",
                    "=",
                    "1",
                    "mm",
                    "foo",
                    ",",
                    "+",
                    "-",
                    "shortest",
                ]
            )
        ).map(" ".join),
    )
)
def test_any_text_is_a_condition_or_a_fault(text: str) -> None:
    got = parse_condition(text, NAMES)
    if isinstance(got, Fault):
        assert 0 <= got.offset <= len(text)


def test_what_nests_too_deep_is_refused() -> None:
    assert isinstance(parse_condition("not " * 400 + "a > 1", NAMES), Fault)
    assert isinstance(parse_condition("(" * 900 + "a > 1" + ")" * 900, NAMES), Fault)
