"""The parsers: their tables, built by lark from the grammars beside this file and shipped there too, and their run.

Where a grammar or this file is changed, `python -m grammar.parsing` writes the tables anew. Until that is done they are
built whenever they are needed, which takes longer than a question may.
"""

from __future__ import annotations

import json
import os
from collections.abc import Iterator, Sequence
from functools import cache
from hashlib import sha256
from typing import TYPE_CHECKING, Any, Final

from grammar.shifting import END, Lexed, Misfit, Node, Tables, read_by

if TYPE_CHECKING:
    from lark import Lark

GRAMMARS: Final = ("question", "condition")
_HERE: Final = os.path.dirname(os.path.abspath(__file__))


def parse(grammar: str, tokens: Sequence[Lexed]) -> Node | Misfit:
    """The tree of `tokens` by `grammar` ('question' or 'condition'), or where they leave it."""
    return read_by(tables_of(grammar), tokens)


@cache
def tables_of(grammar: str) -> Tables:
    """The tables as they were shipped, or as built where these are missing or of another grammar."""
    return _tables(json.loads(_shipped(grammar) or built(grammar)))


def key_of(grammar: str) -> str:
    """Changes with the grammar and with what makes its tables."""
    digest = sha256()
    for name in (f"{grammar}.lark", "parsing.py"):
        with open(os.path.join(_HERE, name), "rb") as file:
            digest.update(file.read().replace(b"\r\n", b"\n"))
    return digest.hexdigest()


def shipped_path(grammar: str) -> str:
    return os.path.join(_HERE, f"{grammar}.tables")


def _shipped(grammar: str) -> str:
    """The tables that lie there, if they are of this grammar."""
    try:
        with open(shipped_path(grammar), encoding="utf-8") as file:
            head, _, body = file.read().partition("\n")
        return body if head == key_of(grammar) else ""
    except (OSError, ValueError):
        return ""


def _tables(plain: Any) -> Tables:
    sets = plain["sets"]
    states = []
    for goes, ends in plain["states"]:
        for rule, at in ends:
            goes |= dict.fromkeys(sets[at], -1 - rule)
        states.append(goes)
    return Tables(states, [(name, size) for name, size in plain["rules"]])


def lark_of(grammar: str, **options: Any) -> Lark:
    """lark's own parser of the grammar; it reads a list of tokens."""
    from lark import Lark, Token
    from lark.lexer import Lexer

    class Given(Lexer):
        def __init__(self, lexer_conf: object) -> None:
            pass

        def lex(self, lexer_state: Any, parser_state: Any = None) -> Iterator[Token]:
            for at, token in enumerate(lexer_state if isinstance(lexer_state, list) else lexer_state.text):
                yield Token(token.kind, "", at)

    with open(os.path.join(_HERE, f"{grammar}.lark"), encoding="utf-8") as file:
        return Lark(file.read(), parser="lalr", lexer=Given, maybe_placeholders=False, **options)


def built(grammar: str) -> str:
    """The tables as JSON, a state a line: where each symbol goes to, and each rule that ends before a set of symbols.

    The same whenever they are built: states are numbered as they are come to from the first, symbols by their names.
    """
    from lark.parsers.lalr_analysis import LALR_Analyzer, Shift

    parser: Any = lark_of(grammar).parser
    analyser: Any = LALR_Analyzer(parser.parser_conf)
    analyser.compute_lalr()
    table = analyser.parse_table
    order = [table.start_states["start"]]
    rules: list[tuple[str, int]] = []
    sets: list[list[str]] = []
    lines: list[str] = []
    for state in order:
        goes = {END: len(lines)} if state == table.end_states["start"] else dict[str, int]()
        ends: dict[int, list[str]] = {}
        for symbol, (action, goal) in sorted(table.states[state].items()):
            if action is Shift:
                goes[symbol] = _place(goal, order)
            else:
                ends.setdefault(_place(_name_and_size(goal), rules), []).append(symbol)
        lines.append(json.dumps([goes, [[rule, _place(symbols, sets)] for rule, symbols in ends.items()]]))
    rows = ",\n".join(lines)
    return f'{{"rules": {json.dumps(rules)},\n"sets": {json.dumps(sets)},\n"states": [\n{rows}\n]}}\n'


def _name_and_size(rule: Any) -> tuple[str, int]:
    left_out = any(symbol.is_term and symbol.filter_out for symbol in rule.expansion)
    if rule.alias or rule.options.expand1 or left_out:
        raise ValueError(f"the tables have no '?', no '->' and no terminal that is left out: {rule}")
    return rule.origin.name, len(rule.expansion)


def _place(one: Any, among: list[Any]) -> int:
    """Where it stands in the list, at whose end it is put where it is new."""
    if one not in among:
        among.append(one)
    return among.index(one)


def ship() -> None:
    """Writes the tables of every grammar beside it."""
    for grammar in GRAMMARS:
        with open(shipped_path(grammar), "w", encoding="utf-8", newline="\n") as file:
            file.write(f"{key_of(grammar)}\n{built(grammar)}")


if __name__ == "__main__":
    ship()
