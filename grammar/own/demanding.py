"""The conditions and the order that a question about one's own gear puts, made of its marked phrases."""

from __future__ import annotations

from typing import Final

from engine.base.compact import compact, field, replace
from grammar.own.ordering import Ordered, first_phrase, label_of, order_at, quantity_of, toward, turned
from grammar.own.sifting import EXPECTED, FEET, Mark, fitting, number_after, number_of, number_words
from grammar.questions import Demand, Order, Thing, Unread
from grammar.words.atoms import Runs
from grammar.words.lexicon import Lexicon

_NEAR: Final = 2  # atoms that may stand between a quantity's name and its bound, or a 'not' and its condition
_NOT_FAR: Final = 3


@compact(frozen=False)
class Clauses:
    """Conditions in groups ('or' parts them), the order, and what of the line was taken up.

    `columns`: where each condition begins, by its identity. `feet`: inches or feet were spoken.
    """

    groups: list[list[Demand]] = field(default_factory=list)
    order: Order | None = None
    spans: list[tuple[int, int]] = field(default_factory=list)
    columns: dict[int, int] = field(default_factory=dict)
    feet: bool = False

    @property
    def any_of(self) -> tuple[tuple[Demand, ...], ...]:
        return tuple(tuple(dict.fromkeys(group)) for group in self.groups if group)


def clauses_of(
    text: str, columns: tuple[int, ...], runs: Runs, marks: list[Mark], lexicon: Lexicon
) -> Clauses | Unread:
    """The conditions and the order; what cannot be meant is told with its place."""
    return _Builder(text, columns, runs, marks, lexicon).built()


class _Builder:
    def __init__(self, text: str, columns: tuple[int, ...], runs: Runs, marks: list[Mark], lexicon: Lexicon) -> None:
        self.text, self.columns, self.runs, self.marks, self.lexicon = text, columns, runs, marks, lexicon
        self.rows = tuple(lexicon.words.sifting.values())
        self.out = Clauses()
        self.taken: set[int] = set()

    def built(self) -> Clauses | Unread:
        for n, mark in enumerate(self.marks):
            if n in self.taken:
                continue
            problem = None
            if mark.does in ("test", "maybe"):
                problem = self._test(n, mark)
            elif mark.does == "behind":
                self._behind(n, mark)
            elif mark.does == "bound":
                problem = self._bound(n, mark)
            elif mark.does == "between":
                self._between(n, mark)
            elif mark.does == "toward":
                self._ordered(toward(n, self.marks, self.runs, self.rows))
            elif mark.does == "not":
                self._again(n, mark)
            elif mark.does in ("first", "by"):
                self._ordered(order_at(n, self.marks, self.rows))
            elif mark.does == "turned" and self.out.order is not None:
                self.out.order = turned(self.out.order, mark)
                self._take(n)
            if problem is not None:
                return problem
        return self._unused() or self.out

    def _ordered(self, found: Ordered | None) -> None:
        if found is not None:
            self.out.order = found.order
            for one in found.marks:
                self._take(one)
            self.out.spans.append((found.first, found.after))

    def _unused(self) -> Unread | None:
        for n, mark in enumerate(self.marks):
            if mark.does == "not" and n not in self.taken:
                expected = "a condition behind it, such as 'not cover the dory' or 'do not reach infinity'"
                return Unread(self.text, self._column(mark.at), self._said(mark.at, mark.after), expected)
            if mark.does in ("why", "takes", "rank") and n not in self.taken:
                self.out.spans.append((mark.at, mark.after))
        return None

    def _test(self, n: int, mark: Mark) -> Unread | None:
        quantity, how, *value = mark.told
        if value:
            number, word = _as_number(value[0])
            self._keep(n, Demand(quantity, how, number, word, says=mark.says), mark.at, mark.after)
            return None
        found = number_after(self.runs, mark.after)
        if mark.does == "maybe" and (
            found is None or number_of(quantity, found[0]) is None or found[0].kind == "NUMBER"
        ):
            return None  # a word that means a condition only before such a number
        if found is None:
            than = self._lens_after(mark.after)
            if than is not None:
                says = f"{mark.says} my {self.lexicon.name_for('lens', than[0].id or '')}"
                self._keep(n, Demand(quantity, how, than=than[0], says=says), mark.at, than[1])
                return None
            return self._no_number(quantity, mark)
        name, last = self.marks[n + 1] if n + 1 < len(self.marks) else None, found[1]
        named = ""
        alike = name is not None and name.does == "by" and fitting(name.told[0]) == fitting(quantity)
        if name is not None and alike and 0 <= name.at - last <= 1:
            # 'longer than a 50 mm equivalent': the number is told to be of another quantity
            quantity, last = name.told[0].split("|")[0], name.after
            named = f" {name.says}" if quantity != mark.told[0] else ""
            self._take(n + 1)
        number_said = number_of(quantity, found[0])
        if number_said is None:
            return self._no_number(quantity, mark, found[1])
        said = first_phrase(self.rows, "test", quantity, how) if mark.does == "maybe" else mark.says
        self.out.feet = self.out.feet or found[0].unit in FEET
        says = f"{said} {number_words(quantity, number_said, found[0].unit)}{named}"
        self._keep(n, Demand(quantity, how, number_said, says=says), mark.at, last)
        return None

    def _between(self, n: int, mark: Mark) -> None:
        """'between 20 and 40 mm', 'focal length between 20 and 40 mm'."""
        low = number_after(self.runs, mark.after)
        joined = low is not None and low[1] < len(self.runs.atoms) and self.runs.atoms[low[1]].text in ("and", "to")
        high = number_after(self.runs, low[1] + 1) if low is not None and joined else None
        if low is None or high is None:
            return
        before = self.marks[n - 1] if n and n - 1 not in self.taken else None
        named = before is not None and before.does == "by" and mark.at - before.after <= _NEAR
        name = before if named else None
        quantity = name.told[0] if name is not None else quantity_of(self.rows, high[0])
        if quantity is None:
            return
        ends = [number_of(quantity, high[0])]
        ends.insert(0, low[0].numbers[0] if low[0].kind == "NUMBER" else number_of(quantity, low[0]))
        if name is not None:
            self._take(n - 1)
        for how, words, end in ((">=", "at least", ends[0]), ("<=", "at most", ends[1])):
            if end is not None:
                says = f"have {label_of(self.rows, quantity)} {words} {number_words(quantity, end)}"
                self._keep(n, Demand(quantity, how, end, says=says), name.at if name else mark.at, high[1])

    def _again(self, n: int, mark: Mark) -> None:
        """'usable on the skiff but not on the dory': the condition before, denied."""
        following = self.marks[n + 1] if n + 1 < len(self.marks) else None
        has_own = following is not None and following.at - mark.after <= _NEAR and following.does in (
            "test", "maybe", "bound", "by", "between"
        )  # fmt: skip
        if has_own or not self.out.groups or mark.after >= len(self.runs.atoms):
            return
        last = self.out.groups[-1][-1]
        denied = replace(last, negated=not last.negated, says=f"do not {last.says}")
        self.out.groups[-1].append(denied)
        self.out.columns[id(denied)] = self._column(mark.at)
        self._take(n)

    def _lens_after(self, at: int) -> tuple[Thing, int] | None:
        """'wider than the avocet': the lens of one's own whose value is the bound."""
        atoms = self.runs.atoms
        while at < len(atoms) and atoms[at].text in ("the", "my", "our"):
            at += 1
        hit = self.lexicon.name_at(self.runs, at) if at < len(atoms) and atoms[at].is_word else None
        if hit is None or hit[0].kind != "lens":
            return None
        return Thing("lens", hit[0].ids, hit[0].phrase, self._column(at)), hit[1]

    def _bound(self, n: int, mark: Mark) -> Unread | None:
        """'at least 1:2', 'weight under 300 g', 'under 1:4 of magnification'."""
        found = number_after(self.runs, mark.after)
        if found is None:
            return None
        before = self.marks[n - 1] if n and n - 1 not in self.taken else None
        behind = self.marks[n + 1] if n + 1 < len(self.marks) else None
        name, first, last = None, mark.at, found[1]
        if before is not None and before.does == "by" and mark.at - before.after <= _NEAR:
            name, first = before, before.at
            self._take(n - 1)
        elif behind is not None and behind.does == "by" and 0 <= behind.at - found[1] <= _NEAR:
            name, last = behind, behind.after
            self._take(n + 1)
        quantity = name.told[0] if name is not None else quantity_of(self.rows, found[0])
        if quantity is None:
            if found[0].kind in ("PRICE", "NUMBER"):
                return None  # a limit of the chain, such as 'under 40 dollars': told elsewhere
            expected = "what it is of, such as 'focal length over 50 mm' or 'weight under 300 g'"
            return Unread(self.text, self._column(mark.at), self._said(mark.at, found[1]), expected)
        number = number_of(quantity, found[0])
        if number is None:
            return self._no_number(quantity, mark, found[1])
        last_one = self.out.groups[-1][-1] if self.out.groups else None
        told = [one.does for one in self.marks[:n] if one.does != "sorted"][-1:]
        if last_one is not None and last_one.quantity == quantity and told == ["test"]:
            # 'cover the dory by at least 80 %': the share that is told is the one meant
            self.out.groups[-1].pop()
        label = name.says if name is not None else label_of(self.rows, quantity)
        says = f"have {label} {mark.says} {number_words(quantity, number)}"
        self._keep(n, Demand(quantity, mark.told[0], number, says=says), first, last)
        return None

    def _behind(self, n: int, mark: Mark) -> None:
        """'f/2 or faster', '30 cm or closer': the number before it is the bound, unless it was taken as one."""
        self._take(n)
        found = next(
            (one for at in range(max(mark.at - 1 - _NOT_FAR, 0), mark.at)
             if (one := (number_after(self.runs, at), at))[0] is not None and one[0][1] == mark.at), None,
        )  # fmt: skip
        if found is None or found[0] is None or any(first <= found[1] < after for first, after in self.out.spans[:-1]):
            return
        quantity, how = mark.told
        number = number_of(quantity, found[0][0])
        if number is None:
            return
        label = label_of(self.rows, quantity)
        words = "at most" if how == "<=" else "at least"
        says = f"have {label} {words} {number_words(quantity, number, found[0][0].unit)}"
        self._keep(n, Demand(quantity, how, number, says=says), found[1], mark.after)

    def _keep(self, n: int, demand: Demand, first: int, after: int) -> None:
        before = n - 1 if first == self.marks[n].at else n - 2
        denied = self._denied(before, first)
        if denied is not None:
            demand = replace(demand, negated=True, says=f"do not {demand.says}")
            self._take(denied)
        if not self.out.groups or self._starts_another(first):
            self.out.groups.append([])
        self.out.groups[-1].append(demand)
        self.out.columns[id(demand)] = self._column(first)
        self._take(n, first, after)

    def _denied(self, n: int, first: int) -> int | None:
        """The 'not' that stands before this condition with nothing but small words between."""
        if n < 0 or n in self.taken or self.marks[n].does != "not":
            return None
        return n if first - self.marks[n].after <= _NEAR else None

    def _starts_another(self, first: int) -> bool:
        """Whether an 'or' stands before this condition: 'cover the dory or reach infinity'."""
        ors = [(k, mark) for k, mark in enumerate(self.marks) if mark.does == "or" and k not in self.taken]
        for k, mark in ors:
            if 0 <= first - mark.after <= _NOT_FAR and self.out.groups[-1]:
                self._take(k)
                return True
        return False

    def _take(self, n: int, first: int | None = None, after: int | None = None) -> None:
        self.taken.add(n)
        mark = self.marks[n]
        self.out.spans.append((mark.at if first is None else first, mark.after if after is None else after))

    def _no_number(self, quantity: str, mark: Mark, after: int | None = None) -> Unread:
        atoms = self.runs.atoms
        at = min(mark.after, len(atoms) - 1)
        end = after if after is not None else min(at + 1, len(atoms))
        beyond = mark.after >= len(atoms)
        column = len(self.text.rstrip()) + 1 if beyond else self._column(at)
        found = "nothing" if beyond else self._said(at, end)
        return Unread(self.text, column, found, f"{EXPECTED[fitting(quantity)[0]]} behind '{mark.says}'")

    def _column(self, at: int) -> int:
        return self.columns[self.runs.atoms[at].start]

    def _said(self, at: int, after: int) -> str:
        atoms = self.runs.atoms
        return self.runs.line[atoms[at].start : atoms[max(at, after - 1)].end]


def _as_number(text: str) -> tuple[float | None, str]:
    return (float(text), "") if text[:1].isdigit() else (None, text)
