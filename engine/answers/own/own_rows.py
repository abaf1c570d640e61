"""Each of one's own things against the conditions of a question: a row for each, with what was ruled."""

from __future__ import annotations

from collections.abc import Sequence

from engine.answers.own.own_cases import Case, alone, as_interval, asked_of, needs_body, needs_format, on_body
from engine.answers.own.own_places import own
from engine.answers.own.own_rulings import NO as NOT
from engine.answers.own.own_rulings import OPEN, YES, Ruling, grouped, ruled
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.own_words import OwnWords
from engine.answers.parts.resolve import BodySide, LensSide, Missing, body_side, lens_side
from engine.base.compact import compact, replace
from engine.facts.records import Format
from engine.physics.trace import Value
from grammar.questions import Demand, Order, Question


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


class Finder:
    """Works a question's conditions and order out for each of one's own things; a case is worked out once."""

    def __init__(self, question: Question, knowledge: Knowledge) -> None:
        self.question, self.knowledge = question, knowledge
        self.words = OwnWords.of(knowledge.catalogue)
        facts = knowledge.catalogue
        sides = [body_side(thing, facts) for thing in question.bodies]
        self.bodies = [side for side in sides if isinstance(side, BodySide)]
        self.missing = [side for side in sides if isinstance(side, Missing)]
        formats = [thing.id for thing in question.things if thing.kind == "format" and thing.id in facts.formats]
        self.formats = [facts.formats[name] for name in formats if name]
        self._made: dict[tuple[str, str, int, int], Case] = {}

    def lenses(self) -> list[LensSide]:
        told = self.question.sought
        facts = self.knowledge.catalogue
        asked = self.question.lenses if told is not None and (told.of == "bodies" or told.why) else ()
        things = asked or own(facts, "lens")
        return [side for thing in things if isinstance(side := lens_side(thing, facts), LensSide)]

    def rows(self) -> list[Row]:
        lenses = self.lenses()
        if self._wants_body() and not self.bodies:
            return []
        if self.is_apart:
            return [self._row_apart(lens) for lens in lenses]
        places = [(n, -1) for n in range(len(self.bodies))]
        if not places:
            places = [(-1, n) for n in range(len(self.formats))] or [(-1, -1)]
        else:
            # a format beside a body is what a condition that needs no body is about
            places = [(n, 0 if self.formats else -1) for n, _ in places]
        return [self._row(lens, *place, len(lenses), len(places)) for lens in lenses for place in places]

    @property
    def is_apart(self) -> bool:
        """Whether conditions name the bodies or formats that they are about."""
        return any(demand.bodies or demand.frames for group in self._groups() for demand in group)

    def _wants_body(self) -> bool:
        names = [demand.quantity for group in self._groups() for demand in group]
        return any(needs_body(name) if self.formats else needs_format(name) for name in names)

    def _groups(self) -> tuple[tuple[Demand, ...], ...]:
        told = self.question.sought
        return told.any_of if told is not None else ()

    def case(self, lens: LensSide, body: int, form: int, name: str = "") -> Case:
        key = (lens.lens.id, lens.words, body, form)  # two of one name are two
        if key not in self._made:
            if body >= 0:
                case = on_body(self.question, lens, self.bodies[body], self.knowledge, name)
            else:
                case = alone(lens, self.knowledge, self._format(form), name)
            self._made[key] = case
        made = self._made[key]
        # one that was first needed as what others are compared with has no name of its place yet
        return replace(made, name=name) if name and made.name != name else made

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
            tuple(self._ruled(demand, self._for(demand, case, framed), body) for demand in group)
            for group in self._groups()
        )
        return self._sorted(case, groups)

    @staticmethod
    def _for(demand: Demand, case: Case, framed: Case | None) -> Case:
        return framed if framed is not None and not needs_body(demand.quantity) else case

    def _row_apart(self, lens: LensSide) -> Row:
        """One lens, each condition on the bodies or formats that it names."""
        groups = tuple(tuple(self._everywhere(demand, lens) for demand in group) for group in self._groups())
        return self._sorted(self.case(lens, 0 if self.bodies else -1, -1 if self.bodies else 0), groups)

    def _everywhere(self, demand: Demand, lens: LensSide) -> Ruling:
        # what hangs on the way onto a body says nothing of a format alone
        frames = () if needs_body(demand.quantity) else demand.frames
        places = [(n, -1) for n in demand.bodies] + [(-1, n) for n in frames]
        places = places or [(0, -1) if self.bodies else (-1, 0)]
        found = []
        for body, form in places:
            name = self.bodies[body].words if body >= 0 else self.formats[form].name
            one = self._ruled(demand, self.case(lens, body, form), body)
            found.append(Ruling(one.state, f"on {name} {one.says}", one.asks, one.miss))
        worst = {NOT: 0, OPEN: 1, YES: 2}
        decides = min(found, key=lambda one: worst[one.state])
        said = [one.says for one in found if one.state == decides.state]
        return Ruling(decides.state, "; ".join(said), decides.asks, decides.miss)

    def _ruled(self, demand: Demand, case: Case, body: int) -> Ruling:
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


def in_order(rows: Sequence[Row], order: Order) -> list[Row]:
    """By the number asked for, those without one last; else as they stand."""

    def key(row: Row) -> tuple[bool, float]:
        value = as_interval(row.sorts)
        if value is None:
            return (True, 0.0)
        if order.toward is not None:
            return (False, abs(value.nominal - order.toward))
        return (False, value.nominal if order.least else -value.nominal)

    return sorted(rows, key=key)
