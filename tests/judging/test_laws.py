"""Laws of judging that hold for every chain, lens and rule."""

from __future__ import annotations

from functools import cache
from itertools import islice

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from engine.answers.parts.knowledge import Knowledge, choose
from engine.base.compact import replace
from engine.base.interval import UNKNOWN, Interval, is_known
from engine.base.span import Span
from engine.chains.ring_map import Ring
from engine.chains.search import Found, Search, Wanted
from engine.chains.setup import Setup
from engine.chains.walk import Chain
from engine.facts.basis import Basis
from engine.facts.catalogue import load_catalogue
from engine.facts.guidance import Rule
from engine.facts.kinds import VERDICTS
from engine.facts.records import Adapter, Body, Lens
from engine.judging.by_numbers import focus_of
from engine.judging.judge import CERTAINTIES, Judge, Judged, RuleCase, judge
from engine.judging.ranking import MOST_TUBE_SETS, core_of, judged_rank, possible_rank, raised
from engine.judging.senseless import is_senseless
from grammar.conditions import Has, parse_condition
from grammar.questions import Limits
from tests.examples import examples

MEASURED = Basis("own-measured", ("own",))
LENS_MOUNTS = ("c", "d", "m42", "ltm", "f-mount", "fd-mount", "rms160", "exakta-mount", "enl39")
BODY_MOUNTS = ("e-mount", "mft-mount", "f-mount", "ef-mount", "cs", "z-mount")


@cache
def knowledge() -> Knowledge:
    catalogue, problems = load_catalogue()
    assert not [str(p) for p in problems if "again" not in str(p)]
    return Knowledge.of(catalogue)


def setup_for(lens: Lens, body_mount: str) -> Setup:
    facts = knowledge().catalogue
    mount = facts.mounts[body_mount]
    form = facts.formats[mount.format or "35mm-full-frame"]
    body = Body("boat", "boat", mount.id, form.id, MEASURED)
    return Setup(lens, facts.mounts[lens.mount], body, mount, form, form)


@st.composite
def lenses(draw: st.DrawFn) -> Lens:
    lens = Lens("bird", "bird", draw(st.sampled_from(LENS_MOUNTS)), MEASURED)
    focal = draw(st.sampled_from((6.0, 13.0, 25.0, 50.0, 135.0)))
    travel = draw(st.one_of(st.just(None), st.floats(0, 12)))
    return replace(
        lens,
        focal_length_mm=Interval.exact(focal),
        f_number=Interval.exact(draw(st.sampled_from((1.4, 2.0, 5.6, 11.0)))),
        travel_mm=UNKNOWN if travel is None else Interval.exact(travel),
        rear_reach_mm=draw(st.sampled_from((UNKNOWN, Interval.exact(3.0), Interval.exact(25.0)))),
        collar_mm=draw(st.sampled_from((UNKNOWN, Interval.exact(30.0), Interval.exact(60.0)))),
        focusing="unit",
    )


def ring_between(lens: Lens, body_mount: str, error_mm: float, off_mm: float, reach_mm: float = 0.0) -> Adapter | None:
    """A measured ring that leaves the lens `error_mm` from its place, settable `reach_mm` farther."""
    facts = knowledge().catalogue
    front, rear = facts.mounts[lens.mount].register_mm, facts.mounts[body_mount].register_mm
    if not (is_known(front) and is_known(rear)):
        return None
    seat = front.nominal - rear.nominal + error_mm
    span = Span(*(Interval(end - off_mm, end + off_mm, end) for end in (seat, seat + reach_mm)))
    return Adapter(
        "ring", "ring", lens.mount, body_mount, "helicoid" if reach_mm else "plain", MEASURED, span, "measured"
    )


def judged(lens: Lens, body_mount: str, ring: Adapter, cases: tuple[RuleCase, ...] | None = None) -> Judged:
    known = knowledge()
    return judge(
        Chain((ring,), {}), setup_for(lens, body_mount), known.catalogue, known.cases if cases is None else cases
    )


def surer(one: Judged, other: Judged) -> bool:
    return CERTAINTIES.index(one.certainty) < CERTAINTIES.index(other.certainty)


ERRORS = st.floats(-8, 8)


@settings(max_examples=examples(100), deadline=None, derandomize=True)
@given(lenses(), st.sampled_from(BODY_MOUNTS), ERRORS, st.floats(0, 0.5), st.floats(0, 2))
def test_wider_tolerance_never_makes_a_verdict_more_certain(
    lens: Lens, body: str, error: float, off: float, more: float
) -> None:
    narrow, wide = ring_between(lens, body, error, off), ring_between(lens, body, error, off + more)
    assume(narrow is not None and wide is not None and lens.mount != body)
    assert narrow is not None and wide is not None  # noqa: PT018
    first, second = judged(lens, body, narrow), judged(lens, body, wide)
    assert first.verdict == second.verdict
    assert not surer(second, first)
    assert VERDICTS.index(second.best) <= VERDICTS.index(first.best)
    assert VERDICTS.index(second.worst) >= VERDICTS.index(first.worst)


@settings(max_examples=examples(100), deadline=None, derandomize=True)
@given(lenses(), st.sampled_from(BODY_MOUNTS), ERRORS, st.floats(0, 10), st.floats(0, 10))
def test_the_same_shortest_and_a_greater_longest_travel_never_removes_infinity(
    lens: Lens, body: str, error: float, reach: float, more: float
) -> None:
    short, long = ring_between(lens, body, error, 0.01, reach), ring_between(lens, body, error, 0.01, reach + more)
    assume(short is not None and long is not None and lens.mount != body and (reach == 0) == (reach + more == 0))
    assert short is not None and long is not None  # noqa: PT018
    if judged(lens, body, short).verdict == "infinity":
        assert judged(lens, body, long).verdict == "infinity"


@settings(max_examples=examples(100), deadline=None, derandomize=True)
@given(lenses(), st.sampled_from(BODY_MOUNTS), ERRORS, st.sampled_from(VERDICTS), st.floats(-5, 5))
def test_adding_a_rule_never_raises_a_verdict(lens: Lens, body: str, error: float, limits: str, over: float) -> None:
    ring = ring_between(lens, body, error, 0.05)
    assume(ring is not None)
    assert ring is not None
    condition = parse_condition(f"shortest(extension_mm) > 0 mm - {abs(over):.6f} mm", {"extension_mm"})
    assert not hasattr(condition, "expected")
    extra = RuleCase(Rule("extra", "", "because", "note", limits), condition)  # type: ignore[arg-type]
    plain = judged(lens, body, ring)
    more = judged(lens, body, ring, (*knowledge().cases, extra))
    for name in ("verdict", "best", "worst"):
        assert VERDICTS.index(getattr(more, name)) >= VERDICTS.index(getattr(plain, name))


@settings(max_examples=examples(100), deadline=None, derandomize=True)
@given(lenses(), st.sampled_from(BODY_MOUNTS), ERRORS, st.floats(0, 0.5))
def test_the_verdict_lies_between_the_best_and_the_worst(lens: Lens, body: str, error: float, off: float) -> None:
    ring = ring_between(lens, body, error, off)
    assume(ring is not None)
    assert ring is not None
    found = judged(lens, body, ring)
    assert VERDICTS.index(found.best) <= VERDICTS.index(found.verdict) <= VERDICTS.index(found.worst)
    if found.certainty == "certain":
        assert found.best == found.worst


@settings(max_examples=examples(25), deadline=None, derandomize=True)
@given(lenses(), st.sampled_from(("e-mount", "mft-mount", "cs")), st.integers(1, 4))
def test_the_few_best_are_those_of_judging_every_chain(lens: Lens, body: str, most: int) -> None:
    known = knowledge()
    setup = setup_for(lens, body)
    limits = Limits(pieces=2, without_glass=True)
    quick = choose(known, setup, limits, most).listed
    slow = judge_everything(setup, body)
    assert [core_of(row.found) for row in quick] == [core for core, _ in slow[:most]]
    assert [row.judged.verdict for row in quick] == [verdict for _, verdict in slow[:most]]


def judge_everything(setup: Setup, body: str) -> list[tuple[tuple[str, ...], str]]:
    """(core, verdict) of every chain of at most two pieces, best first, tubes only where the rest alone is unusable."""
    known = knowledge()
    search = Search(known.rings, Wanted(setup.lens_mount.id, body, 2, allowed=lambda ring: not ring.glass))
    tubed = Search(known.rings, Wanted(setup.lens_mount.id, body, 2, tubes=True, allowed=lambda ring: not ring.glass))
    longer_of: dict[tuple[str, ...], list[Found]] = {}
    for row in tubed.chains():
        if row.ids != core_of(row):
            longer_of.setdefault(core_of(row), []).append(row)
    empty = known.judge_chain(Chain((), {}), setup)
    focus = focus_of(
        setup, empty.trace.value("lens_register_mm"), empty.trace.value("body_register_mm"),
        empty.trace.value("infinity_allowance_mm"), empty.trace.value("usual_travel_mm"),
        known.catalogue,
    )  # fmt: skip
    best: dict[tuple[str, ...], tuple[tuple[object, ...], str]] = {}
    for found in search.chains():
        rows = [(found, known.judged(found, setup))]
        if rows[0][1].verdict == "unusable":
            rows += [(longer, known.judged(longer, setup)) for longer in longer_of.get(found.ids, ())]
        for row, result in rows:
            if is_senseless(result, known.catalogue):
                continue
            rank = judged_rank(row, result, focus)
            core = core_of(row) or row.ids
            if core not in best or rank < best[core][0]:
                best[core] = (rank, result.verdict)
    return [(core, verdict) for core, (_, verdict) in sorted(best.items(), key=lambda item: item[1][0])]


@settings(max_examples=examples(25), deadline=None, derandomize=True)
@given(lenses(), st.sampled_from(("e-mount", "mft-mount", "f-mount")), st.floats(-1, 1))
def test_a_chain_is_never_judged_better_than_the_rank_it_was_said_to_be_able_to_have(
    lens: Lens, body: str, own_mm: float
) -> None:
    known = knowledge()
    register = known.catalogue.mounts[lens.mount].register_mm
    if is_known(register):  # a lens with a register of its own
        lens = replace(lens, register_mm=register + own_mm)
    setup = setup_for(lens, body)
    one = known.judge_of(setup)
    empty = one.judge(Chain((), {}))
    focus = focus_of(
        setup, empty.trace.value("lens_register_mm"), empty.trace.value("body_register_mm"),
        empty.trace.value("infinity_allowance_mm"), empty.trace.value("usual_travel_mm"),
        known.catalogue,
    )  # fmt: skip
    possible, floor = possible_rank(focus), one.floor()
    for found in islice(Search(known.rings, Wanted(lens.mount, body, 2, tubes=True)).chains(), 200):
        rank = judged_rank(found, one.judge(known.chain_of(found)), focus)
        assert possible(found) <= raised(possible(found), floor) <= rank, found.ids


def test_a_doubt_that_no_chain_settles_does_not_have_all_chains_judged(monkeypatch: pytest.MonkeyPatch) -> None:
    """Where the lens has no known register every chain is as unsure as the first: the plain order tells the best."""
    seen: list[Chain] = []
    judging = Judge.judge
    monkeypatch.setattr(Judge, "judge", lambda self, chain: (seen.append(chain), judging(self, chain))[1])
    lens = replace(Lens("bird", "bird", "enl39", MEASURED), focal_length_mm=Interval.exact(50.0))
    choice = choose(knowledge(), setup_for(lens, "mft-mount"), Limits(), 3)
    assert [row.judged.certainty for row in choice.listed] == ["unknown"] * 3
    assert len(seen) < 20


def test_tubes_around_one_rest_are_not_judged_once_enough_of_them_are_told(monkeypatch: pytest.MonkeyPatch) -> None:
    """More than a thousand sets of C tubes go between a C lens and a CS body; all count as one chain."""
    seen = []
    judging = Judge.judge
    monkeypatch.setattr(Judge, "judge", lambda self, chain: (seen.append(chain), judging(self, chain))[1])
    listed = choose(knowledge(), setup_for(Lens("bird", "bird", "c", MEASURED), "cs"), Limits(), 3).listed
    assert [row.judged.verdict for row in listed] == ["infinity", "infinity"]
    assert [len(row.tube_sets) for row in listed] == [0, MOST_TUBE_SETS]
    assert len(seen) < 40


def test_no_tubes_are_tried_against_what_more_length_does_not_lift(monkeypatch: pytest.MonkeyPatch) -> None:
    """A very short lens too far out is sharp inside itself; thousands of sets of tubes only take it farther."""
    seen: list[Chain] = []
    judging = Judge.judge
    monkeypatch.setattr(Judge, "judge", lambda self, chain: (seen.append(chain), judging(self, chain))[1])
    lens = replace(Lens("bird", "bird", "cs", MEASURED), focal_length_mm=Interval.exact(2.8))
    listed = choose(knowledge(), setup_for(lens, "mft-mount"), Limits(), 3).listed
    assert listed[0].judged.verdict == "infinity"
    assert len(seen) < 400


def test_no_rule_lists_a_mount_that_is_not_known() -> None:
    """A rule may test traits and kinds; a mount's id in a rule must at least exist."""
    facts = knowledge().catalogue
    for case in knowledge().cases:
        for part in _parts(case.condition):
            if getattr(part, "name", "") in ("lens_mount", "body_mount") and hasattr(part, "choices"):
                assert set(part.choices) <= set(facts.mounts)
            if isinstance(part, Has) and part.name == "lens_traits":
                assert any(part.word in mount.traits for mount in facts.mounts.values()), part.word


def _parts(condition: object) -> list[object]:
    if hasattr(condition, "parts"):
        return [row for part in condition.parts for row in _parts(part)]
    if hasattr(condition, "part"):
        return _parts(condition.part)
    assert condition is not None
    return [condition]


def test_a_thread_that_is_the_same_makes_an_edge_and_one_that_binds_makes_none() -> None:
    joints = knowledge().joints
    onward = {joint.rear for joint in joints.onward("c")}
    assert "cs" in onward
    assert "m42" not in {joint.rear for joint in joints.onward("t2")}
    assert "ltm" in {joint.rear for joint in joints.onward("m39-soviet-rf")}
    assert not {joint.rear for joint in joints.onward("m42")} & {"t2", "t-astro"}


def test_tubes_are_told_with_the_chain_they_belong_to() -> None:
    known = knowledge()
    lens = replace(Lens("bird", "bird", "m39-zenit", MEASURED), focal_length_mm=Interval.exact(58.0))
    choice = choose(known, setup_for(lens, "e-mount"), Limits(pieces=3, without_glass=True), 6)
    cores = [core_of(row.found) for row in choice.listed]
    assert len(cores) == len(set(cores))
    assert all(
        isinstance(step, Ring) or step.kind in ("thread", "bayonet")
        for row in choice.listed
        for step in row.found.steps
    )
