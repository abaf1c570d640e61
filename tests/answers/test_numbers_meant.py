"""What bare numbers are of: each question is answered with the quantity that only the right reading gives."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from engine.render.record import record_of
from engine.talk import Talk
from tests.answers.expects import meets, numbers

QUESTIONS = [
    (["M helicoid ring 6mm and a 90 that stops at 1 metre. nearest now?"], "near_from_sensor_mm", 702.2),
    (["helicoid 12 to 17 with a 50, how close"], "near_from_sensor_mm", 605),
    (["shot regular 8 with a 13mm. what would that be on 35?"], "equivalent_focal_mm", 94.6),
    (["16mm on super 16 is like what on 35"], "equivalent_focal_mm", 47.5),
    (["does 1.4 on m4/3 blur like 1.4"], "equivalent_f_number", 2.8),
    (["what does 2.8 on 1 inch look like in full frame"], "equivalent_f_number", 7.64),
    (["200/4 + 1.4 extender + crop body 1.6: focal, stop, framing"], "equivalent_focal_mm", 448),
    (["ten mm gives me a clean 14 mm circle and i cut to that, view in ff terms?"], "equivalent_focal_mm", 30.9),
    (["28 screwed backwards on the nose of a 135, how strong"], "magnification", 4.82),
    (["105 enlarger lens on bellows, 160 from the rear principal plane to chip. mag?"], "magnification", 0.524),
    (["25mm c lens focuses 0.5, with a 2 and a half mm spacer whats nearest"], "near_from_sensor_mm", 214),
    (["0.64 or 0.71 booster, what is the gain of each in light"], "light_difference_stops", 1.288),
    (["0.64 or 0.71 booster, what is the gain of each in light"], "light_difference_stops", 0.988),
    (["K ring on E came out 0.03 long, 28 at f2.8, matter?"], "register_error_mm", 0.03),
    (["300/4 m42 on E", "what if i stick a 2x behind it"], "f_number", 8),
    (["400/6.3 T2 > Z", "if i add a 1.4x behind", "stabiliser menu number?"], "ibis_focal_mm", 560),
    (["50 c mount on full frame rf", "does it cover", "flip the body to its 1.6 crop?"], "format_diagonal_mm", 26.82),
    (["9mm at 2.8 on super16, hyperfocal?", "in full frame speak how wide is it"], "equivalent_focal_mm", 26.77),
    (["om 28/2 with .64 booster on m43, ff equiv", "midday sun, iso 200, 1/50, wide open. filter?"], "nd_stops", 9.64),
    (["f2, 1/50, iso 800, open shade. nd?", "i own an nd8 and an nd64"], "nd_stops", 9),
    (["f2, 1/50, iso 800, open shade. nd?", "or 1/200 shutter?"], "light_difference_stops", 2),
    (["so does my 50 turn INTO a 75 on the smaller chip or what"], "equivalent_focal_mm", 76.3),
    (["my 28 becomes a 42 on the smaller sensor?"], "equivalent_focal_mm", 42.7),
    (["slide projector lens focusses 85 behind the flange, tube for E mount?"], "stack_mm", 67),
    (["manual flash, 60 with 30mm extension, how much do i open up"], "light_difference_stops", 1.17),
    (["10 and 16 together on my 50, what do i get"], "magnification", 0.52),
    (["7 14 28 all together behind a 135"], "magnification", 0.363),
    (["cutting a card stop for a 58 to make it f4, hole?"], "hole_mm", 14.5),
    (["om 28/2.8 with .71 on aps-c", "so full frame wise"], "equivalent_focal_mm", 30.35),
    (["50 and 20mm tube, mag?"], "magnification", 0.4),
    (["what focal on 1.6 matches a 35 on full frame"], "focal_length_mm", 21.9),
    (["0.71 on a 50/1.8, aps-c, ff equivalent of the lot"], "equivalent_focal_mm", 54.2),
    (["2.8 1/125 iso 100 metered, want 1/30 what stop"], "f_number", 5.72),
    (["iso 100 f4 1/60 ok, going to f11 which iso"], "iso", 756),
    (["stacked nd8 and pol (1.5 stops), total?"], "nd_stops", 4.5),
    (["100 macro, nearest 0.45, 12 + 20 tubes, biggest?"], "near_from_sensor_mm", 405),
    (["twice life size at f5.6 on ff how deep"], "dof_mm", 0.252),
    (["28 mm on nx goes to about 40 m then mush, ring off by how much"], "register_error_mm", 0.0196),
    (["200 tops out at 150 m, ring error"], "register_error_mm", 0.267),
    (["thirty five mm f two, hyperfocal on full frame"], "hyperfocal_mm", 20452),
    (["half a millimetre shim gone, what happens to a 28"], "scale_mark_mm", 1625),
    (["a turn and a quarter out on m42 to get stars, what spacer"], "shim_mm", 1.25),
    (['9mm 2.8 1" ff eq both numbers pls'], "equivalent_f_number", 7.64),
    (["t2.1 to t2.8 diff"], "light_difference_stops", 0.83),
    (["1/500 f4 iso 100 is right w/o filter. nd16 on at 1/60, f?"], "f_number", 2.89),
    (["300/4 x1.4 on apsc, ff equivalent"], "equivalent_focal_mm", 641),
    (["m43 with .64 net crop factor"], "crop_factor", 1.28),
    (["m39 lens, image plane 74.6 away from shoulder. ring for Z?"], "ring_thickness_mm", 58.6),
    (["80mm enlarger 150mm bellows mag"], "magnification", 1.875),
    (["28/2.8 om on my E apsc, what is it like", "and on the full frame one"], "equivalent_focal_mm", 28),
    (["24 fps 180 shutter f4 iso 400 cloudy", "back to 25, 90 degrees"], "nd_stops", 4.36),
    (["85 f2, 12 ft, crop 1.5, dof"], "dof_mm", 134),
    (["35mm f1.4 at f1.4 1.2 metres mft sharp zone"], "dof_mm", 45),
    (["pl 52 to ef 44: thickness"], "ring_thickness_mm", 8),
    (["stack 7 + 14 + 28 with my 85, life size?"], "magnification", 0.576),
    (["lens marked 1:3.5 f=7.5cm, what is it on apsc"], "equivalent_focal_mm", 114.5),
    (["3.3 stops in factor"], "nd_factor", 9.85),
    (["64x nd in density"], "nd_stops", 6),
    (["sensor 23.6x15.7 + 0.71 booster: circle the lens must have"], "image_circle_mm", 39.9),
    (["35mm with a 24 mm clear circle, ff field of view if cropped"], "equivalent_focal_mm", 63.1),
    (["400 5.6 on 1.5x plus 1.4 tc, the lot in numbers"], "equivalent_focal_mm", 840),
    (["75mm enl lens: lens node to chip is 118. mag?"], "magnification", 0.573),
    (["35 closest is 0.4 from film, 3 mm spacer under it. near?"], "near_from_sensor_mm", 259),
    (["ring half a tenth too long, 35 f2 apsc, matter?"], "register_error_mm", 0.05),
    (["turn it out a sixth and infinity's perfect, m42, shim"], "shim_mm", 0.1667),
    (["nd four and nd thirty two stacked"], "nd_stops", 7),
    (["1:1.4 mag at f5.6 what's sharp, ff"], "dof_mm", 1.129),
    (["105 goes soft past sixty metres, adapter error"], "register_error_mm", 0.184),
    (["135 at 2.8, 5 m, crop 1.6, total dof"], "dof_mm", 128),
    (["35 on ff = what on 1.5"], "focal_length_mm", 23.3),
    (["twelve plus twenty plus thirty six on a hundred and five, how big"], "magnification", 0.648),
    (['does a 0.95 on 1" act like a 2.6'], "equivalent_f_number", 2.59),
    (["85/2 on 1.6, 1.4tc behind it: numbers"], "equivalent_focal_mm", 190.4),
    (["50 goes to 0.6; with a 5 mm tube nearest is?"], "near_from_sensor_mm", 365),
    ([".71 against .8 in stops"], "light_difference_stops", 0.344),
    (["16 c on mft, cover?", "in the 1.4x crop", "what's that like in ff"], "equivalent_focal_mm", 44.8),
    (["f2.8 iso 400 1/50 cloudy, nd?", "stop it to 4"], "nd_stops", 5.36),
    (["half inch tube on a 50, mag?"], "magnification", 0.254),
]


@pytest.mark.parametrize(("turns", "quantity", "value"), QUESTIONS)
def test_a_number_is_read_as_what_it_is_of(club: Desk, turns: list[str], quantity: str, value: float) -> None:
    memory = Talk()
    answer = [club.ask(turn, memory) for turn in turns][-1]
    found = numbers(quantity, record_of(answer, club.knowledge))
    assert any(meets(one, {"value": value, "rel_tol": 0.02}) for one in found), found
