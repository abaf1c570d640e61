"""Which of one's own lenses or bodies fulfil what is asked, in the order asked; which miss it and by how much; and
which cannot be told, and what would tell."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from math import inf

from engine.answers.answer import ANSWERED, NO, Answer, Line, ListedChain, Quantity
from engine.answers.knowledge import Knowledge
from engine.answers.own_cases import Case, alone, as_interval, asked_of, on_body
from engine.answers.own_rulings import NO as NOT
from engine.answers.own_rulings import OPEN, YES, Ruling, grouped, ruled
from engine.answers.own_words import OwnWords, told_value
from engine.answers.resolve import BodySide, LensSide, body_side, lens_side
from engine.answers.telling import finding_text, price_text
from engine.answers.wording import listed
from engine.base.compact import compact
from engine.base.interval import Interval
from engine.facts.records import Format
from engine.physics.trace import Value
from grammar.questions import Demand, Question


@compact
class Row:
    """One lens, or one lens on one body, with what was ruled of each condition and the number it is sorted by."""

    case: Case
    state: str
    groups: tuple[tuple[Ruling, ...], ...]
    sorts: Value = None
    sort_name: str = ""

    @property
    def rulings(self) -> tuple[Ruling, ...]:
        """Those of the group that comes nearest to being fulfilled."""
        return min(self.groups, key=lambda group: sum(one.state != YES for one in group), default=())


def which_own(question: Question, knowledge: Knowledge) -> Answer:
    """Answer a question about all of one's own lenses, bodies or adapters."""
    from engine.answers.own_places import own

    told = question.sought
    if told is None:
        return _asked(question, "Which of your lenses, bodies or adapters, and with what condition?")
    if told.of == "adapters":
        from engine.answers.own_adapters import which_adapters

        return which_adapters(question, knowledge)
    if not own(knowledge.catalogue, "lens" if told.of == "lenses" else "body"):
        what = "my avocet is a 25mm f/1.4 C-mount lens" if told.of == "lenses" else "my skiff is an E-mount APS-C body"
        return _asked(question, f"No {told.of} of yours are known. Tell them, one by one: '{what}'; then 'yes'.")
    finder = Finder(question, knowledge)
    rows = finder.rows()
    if not rows:
        return _asked(
            question, "On which body? Name one, or tell one of your own: 'my skiff is an E-mount APS-C body'."
        )
    if told.why:
        from engine.answers.own_why import why_own

        return why_own(question, rows, finder.words, knowledge)
    return _told(question, rows, finder, knowledge)


def _asked(question: Question, text: str) -> Answer:
    return Answer(question.text, question.intent, NO, (Line("ask", text),), question=question)


class Finder:
    """Works a question's conditions and order out for each of one's own things; a case is worked out once."""

    def __init__(self, question: Question, knowledge: Knowledge) -> None:
        self.question, self.knowledge = question, knowledge
        self.words = OwnWords.of(knowledge.catalogue)
        facts = knowledge.catalogue
        self.bodies = [body for thing in question.bodies if isinstance(body := body_side(thing, facts), BodySide)]
        formats = [thing.id for thing in question.things if thing.kind == "format" and thing.id in facts.formats]
        self.formats = [facts.formats[name] for name in formats if name]
        self._made: dict[tuple[str, int, int], Case] = {}

    def lenses(self) -> list[LensSide]:
        from engine.answers.own_places import own

        told = self.question.sought
        facts = self.knowledge.catalogue
        asked = self.question.lenses if told is not None and (told.of == "bodies" or told.why) else ()
        things = asked or own(facts, "lens")
        return [side for thing in things if isinstance(side := lens_side(thing, facts), LensSide)]

    def rows(self) -> list[Row]:
        demands = [demand for group in self._groups() for demand in group]
        lenses = self.lenses()
        if any(demand.bodies or demand.frames for demand in demands):
            return [self._row_apart(lens) for lens in lenses]
        places = [(n, -1) for n in range(len(self.bodies))]
        if not places:
            places = [(-1, n) for n in range(len(self.formats))] or [(-1, -1)]
        else:
            # a format beside a body is what a condition that needs no body is about
            places = [(n, 0 if self.formats else -1) for n, _ in places]
        if self._wants_body() and not self.bodies:
            return []
        return [self._row(lens, *place, len(lenses), len(places)) for lens in lenses for place in places]

    def _wants_body(self) -> bool:
        from engine.answers.own_cases import needs_body, needs_format

        names = [demand.quantity for group in self._groups() for demand in group]
        return any(needs_body(name) if self.formats else needs_format(name) for name in names)

    def _groups(self) -> tuple[tuple[Demand, ...], ...]:
        told = self.question.sought
        return told.any_of if told is not None else ()

    def case(self, lens: LensSide, body: int, form: int, name: str = "") -> Case:
        key = (lens.words, body, form)
        if key not in self._made:
            if body >= 0:
                case = on_body(self.question, lens, self.bodies[body], self.knowledge, name)
            else:
                case = alone(lens, self.knowledge, self._format(form), name)
            self._made[key] = case
        return self._made[key]

    def _format(self, form: int) -> Format | None:
        return self.formats[form] if form >= 0 else None

    def _row(self, lens: LensSide, body: int, form: int, lenses: int, places: int) -> Row:
        place = self.bodies[body].words if body >= 0 else ""
        of_bodies = self.question.sought is not None and self.question.sought.of == "bodies"
        name = (
            place if of_bodies and lenses == 1 else f"{lens.words} on {place}" if places > 1 and place else lens.words
        )
        case = self.case(lens, body, -1 if body >= 0 else form, name)
        framed = self.case(lens, -1, form) if body >= 0 and form >= 0 else None
        groups = tuple(
            tuple(self._ruled(demand, self._for(demand, case, framed), lens, body) for demand in group)
            for group in self._groups()
        )
        return self._sorted(case, groups)

    @staticmethod
    def _for(demand: Demand, case: Case, framed: Case | None) -> Case:
        from engine.answers.own_cases import needs_body

        return framed if framed is not None and not needs_body(demand.quantity) else case

    def _row_apart(self, lens: LensSide) -> Row:
        """One lens, each condition on the bodies or formats that it names."""
        groups = tuple(tuple(self._everywhere(demand, lens) for demand in group) for group in self._groups())
        return self._sorted(self.case(lens, 0 if self.bodies else -1, -1 if self.bodies else 0), groups)

    def _everywhere(self, demand: Demand, lens: LensSide) -> Ruling:
        places = [(n, -1) for n in demand.bodies] + [(-1, n) for n in demand.frames]
        places = places or [(0, -1) if self.bodies else (-1, 0)]
        found = []
        for body, form in places:
            name = self.bodies[body].words if body >= 0 else self.formats[form].name
            one = self._ruled(demand, self.case(lens, body, form), lens, body)
            found.append(Ruling(one.state, f"on {name} {one.says}", one.asks, one.miss))
        worst = {NOT: 0, OPEN: 1, YES: 2}
        decides = min(found, key=lambda one: worst[one.state])
        said = [one.says for one in found if one.state == decides.state]
        return Ruling(decides.state, "; ".join(said), decides.asks, decides.miss)

    def _ruled(self, demand: Demand, case: Case, lens: LensSide, body: int) -> Ruling:
        def than(asked: Demand) -> Value:
            other = lens_side(asked.than, self.knowledge.catalogue)
            if not isinstance(other, LensSide):
                return None
            quantity = asked_of(asked.quantity, case.body is not None, case.setup.format is not None)
            return self.case(other, body, -1).value(quantity)

        return ruled(demand, case, self.words, self.question.feet, than)

    def _sorted(self, case: Case, groups: tuple[tuple[Ruling, ...], ...]) -> Row:
        order = self.question.sought.order if self.question.sought is not None else None
        if order is None:
            return Row(case, grouped(groups), groups)
        name = asked_of(order.quantity, case.body is not None, case.setup.format is not None)
        value = None if case.has_no_way and case.best is None and name in ("seat_mm", "price_usd", "pieces") else (
            case.value(name)
        )  # fmt: skip
        return Row(case, grouped(groups), groups, value, name)


def in_order(rows: Sequence[Row], least: bool) -> list[Row]:
    """By the number asked for, those without one last; else as they stand."""

    def key(row: Row) -> tuple[bool, float]:
        value = as_interval(row.sorts)
        if value is None:
            return (True, 0.0)
        return (False, value.nominal if least else -value.nominal)

    return sorted(rows, key=key)


def _told(question: Question, rows: list[Row], finder: Finder, knowledge: Knowledge) -> Answer:
    told = question.sought
    assert told is not None
    order = told.order
    feet = question.feet
    rows = in_order(rows, order.least) if order is not None else rows
    yes = [row for row in rows if row.state == YES]
    lost = [row for row in yes if order is not None and as_interval(row.sorts) is None]
    if order is not None and not told.any_of:
        yes = [row for row in yes if row not in lost]
    no = sorted((row for row in rows if row.state == NOT), key=_miss) if order is None else [
        row for row in rows if row.state == NOT
    ]  # fmt: skip
    open_ = [row for row in rows if row.state == OPEN] + (lost if not told.any_of else [])
    lines = [Line("head", _head(question, yes, no, open_, finder))]
    lines += [Line("text", f"{n}. {_fulfils(row, finder.words, feet)}", 1) for n, row in enumerate(yes, start=1)]
    if no:
        lines.append(Line("head", "Not, and by how much:"))
        lines += _together((row.case.name, _misses(row)) for row in no)
    if open_:
        lines.append(Line("head", "Undecided, and what would tell:"))
        lines += _together((row.case.name, _undecided(row, finder.words)) for row in open_)
    lines += _cautions(yes, knowledge, feet)
    chains = tuple(
        ListedChain(n, row.case.best, row.case.title) for n, row in enumerate(yes, start=1) if row.case.best is not None
    )
    whole = len(chains) == len(yes) and chains
    return Answer(
        question.text, question.intent, ANSWERED if yes or open_ else NO, tuple(lines), question=question,
        chains=chains if whole else None, quantities=tuple(_quantities(rows, question, finder)),
    )  # fmt: skip


def _head(question: Question, yes: list[Row], no: list[Row], open_: list[Row], finder: Finder) -> str:
    told = question.sought
    assert told is not None
    bodies = [body.words for body in finder.bodies]
    apart = any(demand.bodies or demand.frames for group in told.any_of for demand in group)
    where = "" if apart or not bodies else f" on {listed(bodies)}"
    if not bodies and finder.formats:
        where = f" on {listed([form.name for form in finder.formats])}"
    if told.of == "bodies":
        where = f" with {listed([side.words for side in finder.lenses()])}"
    order = f", {told.order.says}" if told.order is not None else ""
    if not told.any_of:
        noun = told.of if len(yes) != 1 else told.of.removesuffix("es") if told.of == "lenses" else "body"
        return f"{len(yes)} {noun}{where}{order}:" if yes else f"Nothing can be sorted{where}{order}."
    total = len(yes) + len(no) + len(open_)
    whole = "none" if not yes else "all" if len(yes) == total > 1 else str(len(yes))
    if not yes and open_:
        whole = "none for certain"
    of = f" {total}" if whole == "all" else f" of {total}"
    return f"{whole[:1].upper()}{whole[1:]}{of}{where}{order}{':' if yes else '.'}"


def _fulfils(row: Row, words: OwnWords, feet: bool) -> str:
    says = [ruling.says for ruling in row.rulings]
    if row.sort_name and not any(one.startswith(words.label(row.sort_name)) for one in says):
        says.append(f"{words.label(row.sort_name)} {_value_told(row, feet)}")
    way = ""
    if row.case.judged is not None:
        price = price_text(row.case.judged.chain) if row.sort_name != "price_usd" else ""
        way = f"; way: {row.case.title}{f' [{price}]' if price else ''}"
    return f"{row.case.name}: {'; '.join(says) or 'yes'}{way}"


def _value_told(row: Row, feet: bool) -> str:
    return told_value(row.sort_name, row.sorts, feet)


def _together(rows: Iterable[tuple[str, str]]) -> Iterator[Line]:
    """A line for each text, with all the names that it holds for."""
    names: dict[str, list[str]] = {}
    for name, text in rows:
        names.setdefault(text, []).append(name)
    for text, those in names.items():
        yield Line("fact", f"{listed(those)}: {text}", 1)


def _misses(row: Row) -> str:
    return "; ".join(ruling.says for ruling in row.rulings if ruling.state == NOT)


def _undecided(row: Row, words: OwnWords) -> str:
    open_ = [ruling for ruling in row.rulings if ruling.state == OPEN]
    if not open_:
        asked_back = words.asks(row.sort_name, row.case.trace, row.case.lens.words)
        tells = f"; to tell: {asked_back}" if asked_back else ""
        value = told_value(row.sort_name, row.sorts)
        what = "no way found" if row.case.has_no_way and row.sorts is None else f"{words.label(row.sort_name)} {value}"
        return f"{what}{tells}"
    asks = list(dict.fromkeys(ruling.asks for ruling in open_ if ruling.asks))
    tells = f"; to tell: {'; '.join(asks)}" if asks else ""
    return f"{'; '.join(ruling.says for ruling in open_)}{tells}"


def _miss(row: Row) -> tuple[int, float]:
    failed = [ruling for ruling in row.rulings if ruling.state == NOT]
    return len(failed), max((ruling.miss for ruling in failed), default=inf)


def _cautions(rows: Sequence[Row], knowledge: Knowledge, feet: bool) -> Iterator[Line]:
    """Dangers whole; what is only a caution once, with the names it holds for."""
    named: dict[str, list[str]] = {}
    for row in rows:
        judged = row.case.judged
        for finding in judged.findings if judged is not None else ():
            if finding.severity == "danger" and judged is not None:
                yield Line("danger", f"{row.case.name}: {finding_text(finding, judged, knowledge, feet)}")
            elif finding.severity == "caution" and judged is not None:
                named.setdefault(finding_text(finding, judged, knowledge, feet), []).append(row.case.name)
    for text, names in named.items():
        yield Line("caution", f"{listed(list(dict.fromkeys(names)))}: {text}")


def _quantities(rows: Sequence[Row], question: Question, finder: Finder) -> Iterator[Quantity]:
    """Whether each fulfils (1, 0, or 0 to 1 where undecided), and the numbers that were asked about."""
    states = {YES: Interval.exact(1.0), NOT: Interval.exact(0.0), OPEN: Interval.between(0.0, 1.0)}
    asked = [demand.quantity for group in (question.sought.any_of if question.sought else ()) for demand in group]
    for row in rows:
        case = row.case
        yield Quantity("fulfils", states[row.state], case.name)
        names = [asked_of(name, case.body is not None, case.setup.format is not None) for name in asked]
        for name in dict.fromkeys([*names, *([row.sort_name] if row.sort_name else [])]):
            value = as_interval(case.value(name))
            if value is not None:
                yield Quantity(name, value, case.name)
