"""The map of mounts and adapters as a graph, for what is asked of the map itself."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from engine.chains.ring_map import RingMap

if TYPE_CHECKING:
    import networkx as nx


def graph_of(rings: RingMap, mounts: Iterable[str]) -> nx.MultiDiGraph[str]:
    """Mounts as nodes; adapters as parallel edges, tubes as loops, joints as edges of kind `joint`."""
    import networkx as nx

    graph: nx.MultiDiGraph[str] = nx.MultiDiGraph()
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


def reached_from(graph: nx.MultiDiGraph[str], mount: str) -> frozenset[str]:
    """Mounts that some chain leads to from `mount`, itself left out."""
    import networkx as nx

    return frozenset(nx.descendants(graph, mount)) if mount in graph else frozenset()


def islands(graph: nx.MultiDiGraph[str]) -> tuple[frozenset[str], ...]:
    """Groups of mounts that no adapter joins to the rest, the largest group left out."""
    import networkx as nx

    groups = sorted(nx.weakly_connected_components(graph), key=lambda group: (-len(group), sorted(group)))
    return tuple(frozenset(group) for group in groups[1:])
