"""Why the ring of one lens is long and that of another a cup: each lens and body in its own role, each seat told."""

from __future__ import annotations

import pytest

from tests.answers.picture import flat, numbers


@pytest.mark.parametrize(("question", "seats"), [
    ("why is the adapter for F lenses long on E-mount but the one for C mount is a cup",
     {"f-mount to e-mount": 28.5, "c to e-mount": -0.474}),
    ("how come ltm to mft is a proper ring and d to mft is a cup",
     {"ltm to mft-mount": 9.55, "d to mft-mount": -6.96}),
    ("why is a ring for c on mft a cup and for ltm a thick ring",
     {"c to mft-mount": -1.724, "ltm to mft-mount": 9.55}),
    ("how come the exakta ring is so thin on EF but so long on E",
     {"exakta-mount to ef-mount": 0.7, "exakta-mount to e-mount": 26.7}),
    ("why is the exakta adapter paper thin for EF bodies and an inch long for E ones",
     {"exakta-mount to ef-mount": 0.7, "exakta-mount to e-mount": 26.7}),
    ("why do M lenses only need a thin ring on Z and OM lenses a thick one",
     {"m-mount to z-mount": 11.8, "om-mount to z-mount": 30}),
    ("why does PL need 32mm of ring on L but D has to go down inside",
     {"pl to l-mount": 32, "d to l-mount": -7.71}),
    ("why is the T2 adapter for MFT longer than the one for E",
     {"t2 to mft-mount": 35.75, "t2 to e-mount": 37}),
])  # fmt: skip
def test_each_ring_is_told_between_its_lens_and_its_body(asked, question, seats):
    found = asked(question)
    for case, seat in seats.items():
        assert numbers(found, "ring_thickness_mm", case)[0][0] == pytest.approx(seat, abs=0.02)
    assert "Lens register less body register is the seat of a ring" in flat(found)
