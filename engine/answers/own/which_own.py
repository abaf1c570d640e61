"""Which of one's own lenses or bodies fulfil what is asked, in the order asked; which miss it and by how much; and
which cannot be told, and what would tell."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from math import inf

from engine.answers.own.own_cases import as_interval, asked_of
from engine.answers.own.own_rows import Finder, Row, in_order
from engine.answers.own.own_rulings import NO as NOT
from engine.answers.own.own_rulings import OPEN, YES
from engine.answers.parts.answer import ANSWERED, NO, Answer, Line, ListedChain, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.own_words import OwnWords, told_value
from engine.answers.parts.wording import listed
from engine.answers.seat.cautioning import cautions_of
from engine.answers.seat.chain_numbers import price_text
from engine.base.interval import Interval
from grammar.questions import Question

MANY = 5  # from so many on, things of which one and the same holds are not named one by one


def which_own(question: Question, knowledge: Knowledge) -> Answer:
    """Answer a question about all of one's own lenses, bodies or adapters."""
    from engine.answers.own.own_places import own

    told = question.sought
    if told is None:
        return _asked(question, "Which of your lenses, bodies or adapters, and with what condition?")
    if told.of == "adapters":
        from engine.answers.own.own_adapters import which_adapters

        return which_adapters(question, knowledge)
    if not own(knowledge.catalogue, "lens" if told.of == "lenses" else "body"):
        what = "my avocet is a 25mm f/1.4 C-mount lens" if told.of == "lenses" else "my skiff is an E-mount APS-C body"
        return _asked(question, f"No {told.of} of yours are known. Tell them, one by one: '{what}'; then 'yes'.")
    finder = Finder(question, knowledge)
    if finder.missing:
        return _asked(question, finder.missing[0].ask)
    rows = finder.rows()
    if not rows:
        return _asked(
            question, "On which body? Name one, or tell one of your own: 'my skiff is an E-mount APS-C body'."
        )
    if told.why:
        from engine.answers.own.own_why import why_own

        return why_own(question, rows, finder.words, knowledge)
    return _told(question, rows, finder, knowledge)


def _asked(question: Question, text: str) -> Answer:
    return Answer(question.text, question.intent, NO, (Line("ask", text),), question=question)


def _told(question: Question, rows: list[Row], finder: Finder, knowledge: Knowledge) -> Answer:
    told = question.sought
    assert told is not None
    order = told.order
    feet = question.feet
    rows = in_order(rows, order) if order is not None else rows
    yes = [row for row in rows if row.state == YES]
    lost = [row for row in yes if order is not None and as_interval(row.sorts) is None]
    if order is not None and not told.any_of:
        yes = [row for row in yes if row not in lost]
    no = sorted((row for row in rows if row.state == NOT), key=_miss) if order is None else [
        row for row in rows if row.state == NOT
    ]  # fmt: skip
    open_ = [row for row in rows if row.state == OPEN] + (lost if not told.any_of else [])
    lines = [Line("head", _head(question, yes, no, open_, finder))]
    several = len(finder.bodies) > 1 and finder.is_apart
    lines += [Line("text", f"{n}. {_fulfils(row, finder.words, feet, several)}", 1) for n, row in enumerate(yes, 1)]
    if no:
        lines.append(Line("head", "Not, and by how much:"))
        lines += _together((row.case.name, _misses(row)) for row in no)
    if open_:
        lines.append(Line("head", "Undecided, and what would tell:"))
        lines += _together((row.case.name, _undecided(row, finder.words)) for row in open_)
    judged = ((row.case.name, row.case.judged) for row in yes if row.case.judged is not None)
    lines += cautions_of(judged, knowledge, feet)
    chains = tuple(
        ListedChain(n, row.case.best, row.case.title) for n, row in enumerate(yes, start=1) if row.case.best is not None
    )
    whole = len(chains) == len(yes) and chains
    return Answer(
        question.text, question.intent, ANSWERED if yes or open_ else NO, tuple(lines), question=question,
        chains=chains if whole else None, quantities=tuple(_quantities(rows, question)),
    )  # fmt: skip


def _head(question: Question, yes: list[Row], no: list[Row], open_: list[Row], finder: Finder) -> str:
    told = question.sought
    assert told is not None
    bodies = [body.words for body in finder.bodies]
    apart = len({(one.bodies, one.frames) for group in told.any_of for one in group}) > 1
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


def _fulfils(row: Row, words: OwnWords, feet: bool, several: bool) -> str:
    says = [ruling.says for ruling in row.rulings]
    if row.sort_name and not any(one.startswith(words.label(row.sort_name)) for one in says):
        says.append(f"{words.label(row.sort_name)} {_value_told(row, feet)}")
    way = ""
    if row.case.judged is not None:
        price = price_text(row.case.judged.chain) if row.sort_name != "price_usd" else ""
        where = f" on {row.case.body.words}" if several and row.case.body is not None else ""
        way = f"; way{where}: {row.case.title}{f' [{price}]' if price else ''}"
    return f"{row.case.name}: {'; '.join(says) or 'yes'}{way}"


def _value_told(row: Row, feet: bool) -> str:
    return told_value(row.sort_name, row.sorts, feet)


def _together(rows: Iterable[tuple[str, str]]) -> Iterator[Line]:
    """A line for each text, with all the names that it holds for."""
    names: dict[str, list[str]] = {}
    for name, text in rows:
        names.setdefault(text, []).append(name)
    for text, those in names.items():
        who = f"all {len(those)}" if len(names) == 1 and len(those) > MANY else listed(those)
        yield Line("fact", f"{who}: {text}", 1)


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


def _quantities(rows: Sequence[Row], question: Question) -> Iterator[Quantity]:
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
