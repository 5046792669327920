"""Does each lens show a force as somebody who holds its belief would write it?"""

from __future__ import annotations

import math

import pytest
from families import SEED_HOUSE

from tutor.homework import lenses
from tutor.statics import joint_body


@pytest.mark.parametrize("upright", [False, True], ids=["level", "upright"])
def test_degrees_taken_for_radians_are_those_from_the_level_or_from_the_upright(
    upright: bool,
) -> None:
    """Sine and cosine of whole degrees, as a calculator set to radians gives them."""
    see = lenses.in_radians(0, upright)
    for joint in SEED_HOUSE.joints:
        for term in joint_body(SEED_HOUSE, joint.name).forces:
            run, rise = see(term)
            from_level = round(math.degrees(math.atan2(abs(term.y), abs(term.x))))
            angle = 90 - from_level if upright else from_level
            along, across = (math.sin, math.cos) if upright else (math.cos, math.sin)
            assert abs(run) == pytest.approx(abs(along(angle)))
            assert abs(rise) == pytest.approx(abs(across(angle)))
