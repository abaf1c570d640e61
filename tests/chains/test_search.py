"""The search against a slow, obviously right one, and the map against the graph."""

from __future__ import annotations

from collections.abc import Iterator

from hypothesis import given, settings
from hypothesis import strategies as st

from engine.chains.graph import graph_of, leading_to, reached_from, sole_parts
from engine.chains.ring_map import Joint, Ring, RingMap, map_of
from engine.chains.search import Found, Search, Wanted, found_of, pieces_to_goal
from tests.examples import examples

MOUNTS = ("a", "b", "c", "d", "e")


def ring(name: str, front: str, rear: str, low: int, high: int | None = None, price: int = 0) -> Ring:
    return Ring(name, front, rear, low, low if high is None else high, True, False, False, price, False)


@st.composite
def maps(draw: st.DrawFn) -> tuple[list[Ring], list[Joint]]:
    ends = st.sampled_from(MOUNTS)
    rings = []
    for n in range(draw(st.integers(1, 7))):
        low = draw(st.integers(-3, 40)) * 250
        high = low + draw(st.sampled_from((0, 0, 0, 2000)))
        rings.append(ring(f"r{n}", draw(ends), draw(ends), low, high, draw(st.integers(0, 3)) * 100))
    pairs = draw(st.lists(st.tuples(ends, ends).filter(lambda pair: pair[0] != pair[1]), max_size=3, unique=True))
    return rings, [Joint(one, other, "thread", "same") for one, other in pairs]


def made(rings: list[Ring], joints: list[Joint]) -> RingMap:
    return map_of(
        rings,
        lambda mount: tuple(joint for joint in joints if joint.front == mount),
        lambda mount: tuple(joint.front for joint in joints if joint.rear == mount),
    )


def slow_chains(rings: list[Ring], joints: list[Joint], start: str, goal: str, most: int) -> Iterator[tuple[str, ...]]:
    """Every chain by trying every part at every place: each ring once, no mount entered twice, tubes in id order."""

    def walk(mount: str, used: tuple[Ring | Joint, ...], stood: tuple[str, ...]) -> Iterator[tuple[Ring | Joint, ...]]:
        if mount == goal:
            yield used
        last = used[-1] if used else None
        count = sum(isinstance(step, Ring) for step in used)
        for part in rings:
            if part.front != mount or part in used or count == most:
                continue
            if part.rear == mount:
                tube_before = isinstance(last, Ring) and last.front == last.rear == mount
                if not tube_before or last.id < part.id:
                    yield from walk(mount, (*used, part), stood)
            elif part.rear not in stood and mount != goal:
                yield from walk(part.rear, (*used, part), (*stood, part.rear))
        if mount != goal:
            for joint in joints:
                # tubes between two joints would part them: only a joint straight after a joint is senseless
                straight = isinstance(last, Joint) or (last is not None and _only_tubes_since_joint(used))
                if joint.front == mount and joint.rear not in stood and not straight:
                    yield from walk(joint.rear, (*used, joint), (*stood, joint.rear))

    for steps in walk(start, (), (start,)):
        yield found_of(steps).ids


def _only_tubes_since_joint(used: tuple[Ring | Joint, ...]) -> bool:
    for step in reversed(used):
        if isinstance(step, Joint):
            return True
        if step.front != step.rear:
            return False
    return False


@settings(max_examples=examples(150), deadline=None, derandomize=True)
@given(maps(), st.sampled_from(MOUNTS), st.sampled_from(MOUNTS), st.integers(0, 4))
def test_search_finds_the_chains_that_trying_everything_finds(
    built: tuple[list[Ring], list[Joint]], start: str, goal: str, most: int
) -> None:
    rings, joints = built
    search = Search(made(rings, joints), Wanted(start, goal, most, tubes=True))
    quick = sorted(found.ids for found in search.chains())
    assert quick == sorted(slow_chains(rings, joints, start, goal, most))


@settings(max_examples=examples(100), deadline=None, derandomize=True)
@given(maps())
def test_the_map_and_the_graph_hold_the_same_edges(built: tuple[list[Ring], list[Joint]]) -> None:
    rings, joints = built
    rings_map = made(rings, joints)
    graph = graph_of(rings_map, MOUNTS)
    edges = sorted((front, rear, key) for front, rear, key in graph.edges(keys=True))
    expected = sorted(
        [(part.front, part.rear, part.id) for part in rings]
        + [(joint.front, joint.rear, f"{joint.front}>{joint.rear}") for joint in joints]
    )
    assert edges == expected


@settings(max_examples=examples(100), deadline=None, derandomize=True)
@given(maps(), st.sampled_from(MOUNTS))
def test_a_mount_within_reach_of_the_goal_is_one_the_graph_reaches(
    built: tuple[list[Ring], list[Joint]], goal: str
) -> None:
    rings, joints = built
    rings_map = made(rings, joints)
    graph = graph_of(rings_map, MOUNTS)
    far = pieces_to_goal(rings_map, goal, 10)
    assert set(far) == {mount for mount in MOUNTS if goal in reached_from(graph, {mount})} == leading_to(graph, {goal})


@settings(max_examples=examples(150), deadline=None, derandomize=True)
@given(maps(), st.sets(st.sampled_from(MOUNTS), min_size=1, max_size=2))
def test_a_part_is_the_only_way_of_the_mounts_that_lead_nowhere_once_it_is_taken_away(
    built: tuple[list[Ring], list[Joint]], goals: set[str]
) -> None:
    rings, joints = built
    led = leading_to(graph_of(made(rings, joints), MOUNTS), goals)
    slow = {}
    for part in rings:
        left = graph_of(made([ring for ring in rings if ring != part], joints), MOUNTS)
        slow[part.id] = tuple(sorted(led - leading_to(left, goals)))
    for joint in joints:
        left = graph_of(made(rings, [one for one in joints if one != joint]), MOUNTS)
        slow[f"{joint.front}>{joint.rear}"] = tuple(sorted(led - leading_to(left, goals)))
    found = sole_parts(graph_of(made(rings, joints), MOUNTS), goals)
    assert found == {part: mounts for part, mounts in slow.items() if mounts}


def test_an_adapter_with_a_twin_is_not_the_only_way() -> None:
    twins = Ring("r0", "a", "b", 1000, 1000, True, False, False, 0, False, variants=("r1",))
    graph = graph_of(map_of([twins, ring("r2", "b", "c", 500)]), ("a", "b", "c"))
    assert sole_parts(graph, {"c"}) == {"r2": ("a", "b")}


def test_a_tube_is_used_once_unless_more_are_owned() -> None:
    rings = [ring("c-e", "a", "b", 1000), ring("t", "a", "a", 5000)]
    once = Search(map_of(rings), Wanted("a", "b", 4, tubes=True))
    twice = Search(map_of(rings, copies={"t": 2}), Wanted("a", "b", 4, tubes=True))
    assert max(found.pieces for found in once.chains()) == 2
    assert max(found.pieces for found in twice.chains()) == 3


def test_the_sum_of_a_chain_is_exact_in_micrometres() -> None:
    rings = [ring("r0", "a", "b", 27_460), ring("r1", "b", "c", -474)]
    (found,) = Search(map_of(rings), Wanted("a", "c")).chains()
    assert isinstance(found, Found)
    assert (found.least_um, found.greatest_um) == (26_986, 26_986)
