"""The quantities that a chain brings with it: name, unit and what it is. Everything else is worked out from these."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

GIVEN_NAMES: Final[Mapping[str, tuple[str, str]]] = {
    # registers and seats
    "lens_register_mm": ("mm", "register of the lens, flange to image"),
    "body_register_mm": ("mm", "register of the body, flange to sensor"),
    "seat_mm": ("mm", "the seats of all pieces together, lens flange to body flange"),
    "error_before_glass_mm": ("mm", "register error ahead of the first glass; the whole of it where there is no glass"),
    "error_behind_glass_mm": ("mm", "register error behind the first glass; 0 where there is no glass"),
    "glass_factor": ("1", "factor of the glass in the chain; 1 where there is none"),
    "glass_focal_mm": ("mm", "focal length of the glass in the chain"),
    "image_shift_mm": ("mm", "how much nearer the lens the glass brings the image; 0 where there is no glass"),
    # the lens
    "focal_length_mm": ("mm", "focal length of the lens"),
    "f_number": ("f-number", "f-number of the lens"),
    "travel_mm": ("mm", "how far the lens's own focusing moves it out"),
    "usual_travel_mm": ("mm", "how far lenses like it can usually be moved out"),
    "hiatus_mm": ("mm", "HH', distance between the principal planes"),
    "front_focal_offset_mm": ("mm", "a, how far the front focal point lies ahead of the front glass"),
    "front_to_sensor_mm": ("mm", "T0, front glass to sensor with the lens at infinity"),
    "pupil_magnification": ("1", "p, exit pupil over entrance pupil"),
    "optics_error": ("1", "relative error of distances where the lens's planes are assumed; 0 where they are known"),
    "focusing": ("", "how the lens focuses"),
    "lens_iris": ("", "how the iris of the lens is worked"),
    "lens_kind": ("", "kind of lens mount"),
    "lens_mount": ("", "lens mount"),
    "lens_traits": ("", "what is known of lenses of this mount"),
    "image_circle_mm": ("mm", "image circle of the lens at infinity"),
    "lens_weight_g": ("g", "weight of the lens"),
    "lens_heavy": ("", "whether the lens is said to be heavy"),
    "price_paid": ("", "price paid for the lens, in the user's own money"),
    "thoriated": ("", "whether the glass holds thorium"),
    "collar_mm": ("mm", "width of the barrel just ahead of the seat"),
    "rear_reach_mm": ("mm", "how far the rear reaches behind the lens flange"),
    "rear_diameter_mm": ("mm", "width of the rear"),
    "lens_throat_mm": ("mm", "throat that the lens mount asks for"),
    "thread_length_mm": ("mm", "length of the male thread"),
    # the body
    "body_mount": ("", "body mount"),
    "body_kind": ("", "kind of body"),
    "body_stabilised": ("", "whether the sensor of the body moves"),
    "body_mirror": ("", "whether the body has a mirror"),
    "throat_mm": ("mm", "throat of the body"),
    "clear_depth_mm": ("mm", "free depth behind the body flange"),
    "used_width_mm": ("mm", "width of the area used"),
    "used_height_mm": ("mm", "height of the area used"),
    # the chain
    "adapter_iris": ("", "what the adapters offer for the iris"),
    "adapter_kinds": ("", "kinds of adapters in the chain"),
    "cup_bore_mm": ("mm", "bore of the cup that the seat lies in"),
    "cup_depth_mm": ("mm", "depth of the cup that the seat lies in"),
    "narrowest_mm": ("mm", "narrowest clear opening on the way"),
    "thread_depth_mm": ("mm", "depth of the thread that takes the lens"),
    "thread_steps": ("", "threads that meet though they were never meant to, by outcome"),
    "pieces": ("1", "adapters in the chain"),
    "glass": ("", "whether there is glass in the chain"),
    "price_usd": ("dollars", "what the pieces that are not owned cost, new"),
    "electronics": ("", "whether a ring has contacts"),
    # what the trade goes by
    "smallest_stop": ("f-number", "smallest stop that such lenses are marked with"),
    "blur_divisor": ("1", "parts of the diagonal that an allowed blur is"),
    "circle_growth": ("1", "how fast the image circle grows, as a multiple of x/(p*f)"),
    "circle_growth_without_pupil": ("1", "how fast the image circle grows, as a multiple of x/f, where p is not known"),
}

# which of them are assumptions of the facts as they stand: quantity -> id of the assumption
ASSUMED_NAMES: Final[Mapping[str, str]] = {
    "smallest_stop": "smallest-stop",
    "blur_divisor": "blur-divisor",
    "circle_growth": "circle-growth",
    "circle_growth_without_pupil": "circle-growth-without-pupil",
}
