"""The language of a rule's `when`: text -> a typed tree over named quantities, or what is wrong with it and where."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator
from typing import Any, Final

from engine.base.compact import compact
from engine.base.problem import nearest_of
from grammar.condition_tree import (
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
    to_plain,
)  # fmt: skip
from grammar.values import Fault

__all__ = [
    "Both",
    "Compare",
    "Condition",
    "Difference",
    "Either",
    "Ends",
    "Has",
    "Known",
    "Name",
    "Not",
    "Number",
    "OneOf",
    "Product",
    "Quotient",
    "Sum",
    "Term",
    "Text",
    "from_plain",
    "names_in",
    "parse_condition",
    "template_names",
    "to_plain",
]  # fmt: skip

_WORDS: Final = {
    "or": "OR", "and": "AND", "not": "NOT", "is": "IS", "known": "KNOWN", "unknown": "UNKNOWN", "one": "ONE",
    "of": "OF", "has": "HAS", "mm": "MM", "shortest": "SHORTEST", "longest": "LONGEST",
}  # fmt: skip
_MARKS: Final = {"(": "OPEN", ")": "CLOSE", ",": "COMMA", "+": "PLUS", "-": "MINUS", "*": "TIMES", "/": "OVER"}
_SAID: Final = {
    "OPEN": "'('", "CLOSE": "')'", "COMMA": "','", "PLUS": "'+'", "MINUS": "'-'", "TIMES": "'*'", "OVER": "'/'",
    "COMPARES": "a comparison", "NAME": "a quantity", "WORD": "a word", "QUOTED": "a word in quotes",
    "NUMBER": "a number", "MM": "'mm'", "$END": "the end",
}  # fmt: skip
_PART: Final = (
    r"\s*(?:(?P<number>-?(?:\d+(?:\.\d+)?|\.\d+)(?![\w.]))|(?P<glued>(?:\d+(?:\.\d+)?|\.\d+)(?=mm\b))"
    r"|(?P<word>[A-Za-z_][\w-]*)|(?P<quoted>\"[^\"]*\"|'[^']*')|(?P<compares><=|>=|!=|<|>|=)|(?P<mark>[()+*/,-])|(?P<bad>\S))"
)
_BRACES: Final = r"\{([^{}]*)\}"
_LONGEST: Final = 2000
_DEEPEST: Final = 40
_JOINS: Final = {"PLUS": Sum, "MINUS": Difference, "TIMES": Product, "OVER": Quotient}


@compact
class _Part:
    kind: str
    text: str
    offset: int


def parse_condition(text: str, names: Collection[str]) -> Condition | Fault:
    """The condition that `text` states over quantities of these `names`, or the place where it goes wrong."""
    from grammar.parsing import parse
    from grammar.shifting import Misfit

    parts = list(_parts(text, names))
    if len(text) > _LONGEST or sum(part.kind in ("OPEN", "NOT") for part in parts) > _DEEPEST:
        return Fault(f"a condition of {len(text)} characters", f"at most {_LONGEST}, and {_DEEPEST} brackets and nots")
    tree = parse("condition", parts)
    wrong = _unfit_word(parts, names)
    if isinstance(tree, Misfit):
        where = parts[tree.at].offset if tree.at < len(parts) else len(text)
        misspelt = wrong is not None and wrong.offset < where
        return wrong if misspelt and wrong else _misfit(text, parts, tree.at, tree.accepts, names)
    return wrong if wrong is not None else _condition(tree.parts[0])


def template_names(text: str) -> tuple[str, ...]:
    """The quantities a sentence shows in braces, in order: 'the lens sits {extension_mm} out'."""
    return tuple(match.group(1).strip() for match in re.finditer(_BRACES, text))


def _parts(text: str, names: Collection[str]) -> Iterator[_Part]:
    at = 0
    before = ""
    pattern = re.compile(_PART)  # here, since conditions that were read before are kept as trees
    while match := pattern.match(text, at):
        kind, said = str(match.lastgroup), match.group(str(match.lastgroup))
        offset = match.start(str(match.lastgroup))
        # after an amount a minus takes away; anywhere else it belongs to the number
        if kind == "number" and said[0] == "-" and before in ("NUMBER", "NAME", "CLOSE", "MM", "WORD"):
            kind, said = "mark", "-"
        at = offset + len(said)
        if kind in ("number", "glued"):
            part = _Part("NUMBER", said, offset)
        elif kind == "word":
            part = _Part("NAME" if said in names else _WORDS.get(said, "WORD"), said, offset)
        else:
            part = _Part(_MARKS[said] if kind == "mark" else kind.upper(), said, offset)
        before = part.kind
        yield part


def _misfit(text: str, parts: list[_Part], at: int, accepts: frozenset[str], names: Collection[str]) -> Fault:
    part = parts[at] if at < len(parts) else _Part("$END", "the end", len(text.rstrip()))
    found = f"'{part.text}'" if part.kind != "$END" else "the end"
    wanted = sorted(_SAID.get(kind, f"'{kind.lower()}'") for kind in accepts)
    if part.kind == "WORD" and "NAME" in accepts:
        return Fault(f"quantity {found}", "a named quantity", nearest_of(part.text, names), part.offset)
    words = [word for word, kind in _WORDS.items() if kind in accepts]
    nearest = nearest_of(part.text, words) if part.kind == "WORD" else None
    return Fault(found, " or ".join(wanted) or "a condition", nearest, part.offset)


def _unfit_word(parts: list[_Part], names: Collection[str]) -> Fault | None:
    """A bare word is a value: it may be compared with = or !=, on the right; elsewhere it is a misspelt quantity."""
    for at, part in enumerate(parts):
        if part.kind != "WORD":
            continue
        before = parts[at - 1] if at else None
        after = parts[at + 1] if at + 1 < len(parts) else None
        sums = {"PLUS", "MINUS", "TIMES", "OVER"}
        equal = before is not None and before.text in ("=", "!=", "is", "of", ",", "has")
        if not equal or (after is not None and after.kind in sums):
            return Fault(f"quantity '{part.text}'", "a named quantity", nearest_of(part.text, names), part.offset)
    return None


def _condition(node: Any) -> Condition:
    rule, parts = node.rule, node.parts
    if rule in ("either", "both"):
        made = [_condition(part) for part in parts if hasattr(part, "rule")]
        if len(made) == 1:
            return made[0]
        return Either(tuple(made)) if rule == "either" else Both(tuple(made))
    if rule == "not_so":
        return Not(next(_condition(part) for part in parts if hasattr(part, "rule")))
    if rule == "compare":
        return Compare(_term(parts[0]), parts[1].text, _term(parts[2]))
    if rule == "known":
        return Known(parts[0].text, parts[2].kind == "KNOWN")
    choices = tuple(_word(part.parts[0]) for part in parts if hasattr(part, "rule"))
    if rule == "one_of":
        return OneOf(parts[0].text, choices)
    if rule == "has":
        return Has(parts[0].text, choices[0])
    return Compare(Name(parts[0].text), "=", Text(choices[0]))


def _term(node: Any) -> Term:
    rule, parts = node.rule, node.parts
    if rule in ("sum", "product"):
        parts = [part for part in parts if getattr(part, "kind", "") not in ("OPEN", "CLOSE")]
        made: Any = _term(parts[0])
        for operator, part in zip(parts[1::2], parts[2::2], strict=True):
            made = _JOINS[operator.kind](made, _term(part))
        term: Term = made
        return term
    if rule == "number":
        return Number(float(parts[0].text))
    if rule == "text":
        return Text(_word(parts[0]))
    return Name(parts[0].text) if rule == "name" else Ends(parts[0].text, parts[2].text)


def _word(part: _Part) -> str:
    return part.text[1:-1] if part.kind == "QUOTED" else part.text
