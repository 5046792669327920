"""What stands on every picture that is saved?"""

from __future__ import annotations

import pytest
from families import pratt

from tutor.figure import to_svg, truss_figure
from tutor.model.caution import CAUTION


@pytest.mark.parametrize("width", [240, 720, 1600])
def test_a_picture_carries_the_caution_in_sight_and_in_its_description(width: int) -> None:
    svg = to_svg(truss_figure(pratt(4, 4, 3, 12)), width=width)
    assert svg.count(CAUTION) == 2
