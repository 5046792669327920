"""Is a motion said in plain numbers?"""

from __future__ import annotations

from tutor.statics.words import motion_of


def test_a_point_that_is_the_origin_but_for_rounding_is_said_as_the_origin() -> None:
    places = {"A": (3.0, 4.0), "B": (-4.0, 3.0), "C": (0.0, 5.0)}
    steps = {name: (-y - 1e-16, x + 2e-16) for name, (x, y) in places.items()}
    assert motion_of(places, steps) == "The whole truss can turn about the point (0, 0)."
