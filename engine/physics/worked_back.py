"""What a lens, a frame or a glass must be like for what was seen of it: formulas of the model the other way round."""

from __future__ import annotations

from math import sqrt

from engine.physics.coverage import FULL_FRAME_DIAGONAL_MM


def focal_of_size_mm(extension_mm: float, magnification: float) -> float:
    """f of a lens that so much of extension alone brings to a magnification. Source: m = x/f."""
    return extension_mm / magnification


def focal_of_hole_mm(hole_mm: float, f_number: float) -> float:
    """f of a lens that a hole makes so slow. Source: a hole is f/N wide."""
    return hole_mm * f_number


def focal_of_far_limit_mm(error_mm: float, far_mm: float) -> float:
    """f of a lens that ends so far from the sensor, being so much too far out. Source: D = 2f + f*f/x + x, thin."""
    return sqrt(far_mm * error_mm) - error_mm


def diagonal_of_view_mm(focal_mm: float, like_mm: float) -> float:
    """Diagonal of the frame on which a lens frames like another on full frame. Source: crop factor by diagonal."""
    return FULL_FRAME_DIAGONAL_MM * focal_mm / like_mm


def size_of_light_lost(stops: float) -> float:
    """Magnification at which so many stops are lost, the pupils even. Source: 2*log2(1 + m)."""
    return float(2 ** (stops / 2) - 1)


def before_glass(behind: float, factor: float) -> float:
    """Circle, focal length or f-number before glass of a factor, from what it is behind it. Source: f' = k*f."""
    return behind / factor


def ahead_of_glass_mm(behind_mm: float, factor: float) -> float:
    """Extension before glass of a factor k that so much behind it is worth. Source: x = d/(k*k) about."""
    return behind_mm / factor**2
