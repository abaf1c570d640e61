"""The map of mounts and adapters as a graph, for what is asked of the map as a whole and not of one lens and body."""

from __future__ import annotations

from collections.abc import Collection, Iterable
from typing import TYPE_CHECKING, Any

from engine.chains.ring_map import RingMap

if TYPE_CHECKING:
    import networkx as nx

    Map = nx.MultiDiGraph[str]


def graph_of(rings: RingMap, mounts: Iterable[str]) -> Map:
    """Mounts as nodes; adapters as parallel edges, tubes as loops, joints as edges of kind `joint`."""
    import networkx as nx

    graph: Map = nx.MultiDiGraph()
    graph.add_nodes_from(mounts)
    for front, rears in rings.onward.items():
        for rear, row in rears.items():
            for ring in row:
                graph.add_edge(front, rear, key=ring.id, kind="ring", ring=ring)
    for mount, row in rings.tubes.items():
        for ring in row:
            graph.add_edge(mount, mount, key=ring.id, kind="tube", ring=ring)
    for mount in list(graph.nodes):
        for joint in rings.joints(mount):
            graph.add_edge(joint.front, joint.rear, key=f"{joint.front}>{joint.rear}", kind="joint", joint=joint)
    return graph


def leading_to(graph: Map, goals: Collection[str]) -> frozenset[str]:
    """Mounts from which some chain, of whatever length, leads to one of the goals; the goals among them."""
    import networkx as nx

    return frozenset(mount for goal in goals if goal in graph for mount in (goal, *nx.ancestors(graph, goal)))


def reached_from(graph: Map, starts: Collection[str]) -> frozenset[str]:
    """Mounts that some chain leads to from one of the starts; the starts among them."""
    import networkx as nx

    return frozenset(mount for start in starts if start in graph for mount in (start, *nx.descendants(graph, start)))


def sole_parts(graph: Map, goals: Collection[str]) -> dict[str, tuple[str, ...]]:
    """Adapter or joint -> the mounts that lead to no goal without it; those of which that is true of none are left out.

    An adapter that has a twin, which is folded into it, is never the only one.
    """
    import networkx as nx

    out = ("goal", "")
    ways: nx.DiGraph[tuple[str, str]] = nx.DiGraph()  # backward from the goals, each part a node between two mounts
    for front, rear, key, told in graph.edges(keys=True, data=True):
        if front == rear:
            continue
        for part in (key, *(told["ring"].variants if "ring" in told else ())):
            ways.add_edge(("mount", rear), ("part", part))
            ways.add_edge(("part", part), ("mount", front))
    ways.add_edges_from((out, ("mount", goal)) for goal in goals)
    before: dict[Any, Any] = nx.immediate_dominators(ways, out) if goals else {}
    hanging: dict[str, list[str]] = {}
    for node in before:
        at = node
        while node[0] == "mount" and at != out:
            at = before[at]
            if at[0] == "part":
                hanging.setdefault(at[1], []).append(node[1])
    return {part: tuple(sorted(mounts)) for part, mounts in sorted(hanging.items())}
