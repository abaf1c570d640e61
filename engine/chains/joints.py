"""Mounts that go into one another with nothing between: threads that take each other, bayonets that are shared."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cached_property

from engine.base.interval import Interval, is_known
from engine.chains.ring_map import Joint, off_um, shared_bayonets
from engine.facts.records import Mount, Thread
from engine.physics.mating import Mating, MatingLimits, ScrewThread, mate, mating_limits


class Joints:
    """Which mounts meet without an adapter, worked out from the threads when asked and kept."""

    def __init__(
        self, mounts: Mapping[str, Mount], threads: Mapping[str, Thread], assumptions: Mapping[str, Interval]
    ) -> None:
        self._mounts = mounts
        self._threads = threads
        self._assumptions = assumptions
        self._bayonets = shared_bayonets(mounts)
        self._into_bayonets: dict[str, list[str]] = {}
        for row in self._bayonets.values():
            for joint in row:
                self._into_bayonets.setdefault(joint.rear, []).append(joint.front)
        self._by_thread: dict[str, list[str]] = {}
        for mount in mounts.values():
            if mount.thread is not None and mount.coupling == "screw" and mount.kind != "filter":
                # a filter thread is at the front of a lens: nothing on the way to the body goes into it
                self._by_thread.setdefault(mount.thread, []).append(mount.id)
        self._screws = frozenset(mount for row in self._by_thread.values() for mount in row)
        self._matings: dict[tuple[str, str], Mating | None] = {}
        self._onward: dict[str, tuple[Joint, ...]] = {}
        self._into: dict[str, tuple[str, ...]] = {}

    @cached_property
    def limits(self) -> MatingLimits:
        return mating_limits(self._assumptions)

    def mating(self, male: str, female: str) -> Mating | None:
        """What happens when these two threads meet; None where they are too far apart to be tried."""
        key = (male, female)
        if key not in self._matings:
            self._matings[key] = self.meeting(self._threads[male], self._threads[female])
        return self._matings[key]

    def meeting(self, male: Thread, female: Thread) -> Mating | None:
        """As `mating`, of threads that need not be in the facts."""
        return mate(screw_of(male), screw_of(female), self.limits) if _near(male, female) else None

    def onward(self, mount_id: str) -> tuple[Joint, ...]:
        """What a part ending in this mount goes into."""
        if mount_id not in self._onward:
            rows = list(self._bayonets.get(mount_id, ()))
            mount = self._mounts.get(mount_id)
            if mount is not None and mount.thread is not None and mount.id in self._screws:
                for female, takers in self._by_thread.items():
                    outcome = self._outcome(mount.thread, female)
                    if outcome:
                        rows += [
                            Joint(mount_id, taker, "thread", outcome, off_um(mount_id, taker, self._mounts))
                            for taker in takers
                            if taker != mount_id
                        ]
            self._onward[mount_id] = tuple(rows)
        return self._onward[mount_id]

    def into(self, mount_id: str) -> tuple[str, ...]:
        """The mounts whose parts go into this one."""
        if mount_id not in self._into:
            rows = list(self._into_bayonets.get(mount_id, ()))
            mount = self._mounts.get(mount_id)
            if mount is not None and mount.thread is not None and mount.id in self._screws:
                for male, givers in self._by_thread.items():
                    if self._outcome(male, mount.thread):
                        rows += [giver for giver in givers if giver != mount_id]
            self._into[mount_id] = tuple(rows)
        return self._into[mount_id]

    def _outcome(self, male: str, female: str) -> str | None:
        if male == female:
            return "same"
        mating = self.mating(male, female)
        if mating is None or mating.outcome == "falls-through" or mating.runs_home == "no":
            return None
        return mating.outcome


def _near(male: Thread, female: Thread) -> bool:
    """Whether two threads are worth trying: closer than two pitches, beyond which one drops through the other."""
    if not (is_known(male.pitch_mm) and is_known(female.pitch_mm)):
        return False
    reach = 2 * max(male.pitch_mm.nominal, female.pitch_mm.nominal)
    return abs(male.major_mm.nominal - female.major_mm.nominal) <= reach


def screw_of(thread: Thread) -> ScrewThread:
    """The thread as the physics of mating takes it."""
    return ScrewThread(
        thread.major_mm, thread.pitch_mm, thread.male_major_mm, thread.female_minor_mm, thread.form_angle_deg,
        thread.engagement_mm,
    )  # fmt: skip
