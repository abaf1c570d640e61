"""'need ring M42, 50 f1.8 E': the lens's mount told first, its numbers beside the body's, so that they read swapped."""

from __future__ import annotations

from grammar.things.cast import Cast


def turned_about(cast: Cast) -> None:
    """Gives the mount told first to the lens and the other to the body, where nothing but the order speaks against it.

    A lens made for a mount that mostly means a body is hardly put on one that mostly means a lens.
    """
    if len(cast.lenses) != 1 or len(cast.bodies) != 1 or not cast.pieces:
        return
    lens, body = cast.lenses[0], cast.bodies[0]
    bare = not (lens.noun.head or body.noun.head or lens.noun.role or body.noun.role or lens.named or body.named)
    first = body.noun.column < lens.noun.column
    if bare and first and lens.focal and lens.is_host and body.mounts and not body.is_host:
        lens.mounts, body.mounts = body.mounts, lens.mounts
        lens.is_host, body.is_host = False, True
