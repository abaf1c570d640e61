"""One's own lens by itself, on a format, or on a body by its best way; and any named quantity of it."""

from __future__ import annotations

from math import inf
from typing import Final

from engine.answers.parts.knowledge import Knowledge, choose
from engine.answers.parts.own_words import roots_of
from engine.answers.parts.resolve import AS_TOLD, BodySide, LensSide, setup_of
from engine.answers.seat.telling import chain_title
from engine.answers.shims.named_pieces import with_named_pieces
from engine.base.compact import compact, replace
from engine.base.interval import UNKNOWN, Interval, is_known
from engine.base.span import Span
from engine.chains.setup import Setup
from engine.chains.walk import CHAIN_NAMES, Chain, givens
from engine.facts.kinds import VERDICTS
from engine.facts.records import Body, Format
from engine.judging.judge import Judged
from engine.judging.ranking import Listed
from engine.physics.trace import Trace, Value
from grammar.questions import Question

FEW: Final = 2  # pieces that a lens of one's own is put on with; more only where fewer do not reach infinity
VERDICT: Final = "verdict"
STOP: Final = "f_number"
_OF_FORMAT: Final = frozenset({"used_width_mm", "used_height_mm"})
_OF_BODY: Final = frozenset(
    {"body_mount", "body_kind", "body_mirror", "body_register_mm", "throat_mm", "clear_depth_mm"}
)
# what a lens on a format alone has: no glass, seated right
_NO_CHAIN: Final = frozenset({"glass_factor", "glass_focal_mm", "error_before_glass_mm", "error_behind_glass_mm"})


@compact
class Case:
    """A lens of one's own where it is asked about. `best`: its best way onto the body, None without one.

    `body` None: the lens by itself, or on `format` alone.
    """

    name: str
    lens: LensSide
    body: BodySide | None
    setup: Setup
    trace: Trace  # of the best way; of the lens seated right where there is no body, or no way
    best: Listed | None = None
    title: str = ""
    is_piece: bool = False  # an adapter between mounts of its own: that no way was looked for says nothing
    alone: Judged | None = None  # such an adapter with any lens of its front on any body of its rear

    @property
    def judged(self) -> Judged | None:
        return self.best.judged if self.best is not None else self.alone

    @property
    def has_no_way(self) -> bool:
        return self.body is not None and self.best is None and not self.is_piece

    def value(self, quantity: str) -> Value:
        """The quantity of the best way. KeyError for a name that is no quantity."""
        if quantity == VERDICT:
            return self.judged.verdict if self.judged is not None else None
        stop = self.trace.given[STOP]
        if stop.assumed and quantity.endswith(STOP):
            # good enough to judge a seat by, but nothing that is known of the lens
            return Trace({**self.trace.given, STOP: replace(stop, value=UNKNOWN)}).value(quantity)
        return self.trace.value(quantity)


def needs_format(quantity: str) -> bool:
    return quantity == VERDICT or bool(_OF_FORMAT & set(roots_of(quantity))) or needs_body(quantity)


def needs_body(quantity: str) -> bool:
    """Whether a quantity hangs on the body or the way onto it, beyond the size of its format."""
    if quantity == VERDICT:
        return True
    roots = set(roots_of(quantity))
    if _OF_FORMAT & roots:
        return bool(roots & (_OF_BODY | CHAIN_NAMES - _NO_CHAIN))
    return bool(roots & (_OF_BODY | CHAIN_NAMES))


def asked_of(quantity: str, has_body: bool, has_format: bool) -> str:
    """Of alternatives 'a|b' the first that can be worked out with what is spoken of; else the last."""
    names = quantity.split("|")
    for name in names:
        if has_body or not needs_format(name) or (has_format and not needs_body(name)):
            return name
    return names[-1]


def alone(lens: LensSide, knowledge: Knowledge, form: Format | None = None, name: str = "") -> Case:
    """The lens by itself, or lighting a format, seated as it is on a body of its own."""
    facts = knowledge.catalogue
    body = Body("", form.name if form else "", lens.mount.id, form.id if form else "", AS_TOLD, generic=True)
    setup = Setup(lens.lens, lens.mount, body, lens.mount, form, form, lens.alone, False)
    return Case(name or lens.words, lens, None, setup, _lit(Trace(givens(Chain((), {}), setup, facts))))


def on_body(question: Question, lens: LensSide, body: BodySide, knowledge: Knowledge, name: str = "") -> Case:
    """The lens on the body by its best way within the limits of the question."""
    setup = setup_of(lens, body, knowledge.catalogue, question.f_number)
    best, named = best_way(question, setup, knowledge)
    if best is None:
        bare = alone(lens, knowledge, body.format)
        return Case(name or lens.words, lens, body, setup, bare.trace)
    return Case(name or lens.words, lens, body, setup, _lit(best.judged.trace), best, chain_title(best.judged, named))


def _lit(trace: Trace) -> Trace:
    """The circle at infinity where the one at the farthest focus cannot be told: extension only widens it.

    One that is known at its least may be of any size above: a frame that it does not light may be lit all the same.
    """
    circle, factor = trace.value("image_circle_mm"), trace.value("glass_factor")
    given, at_far = trace.given["image_circle_mm"], trace.value("image_circle_at_far_mm")
    if not isinstance(circle, Interval) or (isinstance(at_far, Interval) and not given.at_least):
        return trace
    behind = circle * factor if isinstance(factor, Interval) else circle
    behind = at_far if isinstance(at_far, Interval) else behind
    if given.at_least:
        behind = Interval(behind.least, inf, behind.nominal)
    return Trace({**trace.given, "image_circle_at_far_mm": replace(given, value=behind)})


def best_way(question: Question, setup: Setup, knowledge: Knowledge) -> tuple[Listed | None, Knowledge]:
    """The best chain: of a piece or two, or of more where those do not reach infinity.

    Neither conditions nor the order have a say in it: each is asked of one and the same way.
    """
    named, limits = knowledge, question.limits
    if question.adapters:
        named, limits = with_named_pieces(question, setup.lens_mount.id, setup.body_mount.id, knowledge)
    most = limits.pieces
    few = choose(named, setup, replace(limits, pieces=FEW if most is None else min(FEW, most)), 1).listed
    if few and few[0].judged.verdict == VERDICTS[0]:
        return few[0], named
    more = choose(named, setup, limits, 1).listed if most is None or most > FEW else few
    return (more[0] if more else few[0] if few else None), named


def as_interval(value: Value) -> Interval | None:
    """The value as one interval: what can be set as everything between; None where it is not a known number."""
    if isinstance(value, Span):
        hull = value.hull()
        return hull if is_known(hull) else None
    return value if isinstance(value, Interval) else None
