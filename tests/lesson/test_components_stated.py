"""Is the component of a force taken as work beside the lines, and never kept as one of them?"""

from __future__ import annotations

import pytest
from test_headed_joints import at_the_joints


@pytest.mark.parametrize("value_first", [True, False])
def test_a_component_is_right_and_no_line(value_first: bool) -> None:
    """AC = 400 in tension, from 240 = 0.6 AC at C; its value may be typed later."""
    lesson, do = at_the_joints()
    do("type", text="Joint D: ΣFx = 240 + CD = 0 => CD = -240")
    end = " => AC = 400" if value_first else ""
    do("type", text=f"Joint C: ΣFx = 240 - 0.6 AC = 0{end}")
    lines = lesson.state.lines
    assert "vertical component of AC" in do("type", text="F_ACy = (4/5)(400) = 320 ↓").text
    assert not do("type", text="F_ACy = (3/5)(400) = 240").accepted
    assert lesson.state.tries[-1].codes == ("component",)
    assert not do("type", text="F_ACy = (4/5)(400) = 320 ↑").accepted
    assert lesson.state.lines == lines


def test_a_component_that_has_the_size_of_another_sum_is_not_taken_as_it() -> None:
    _, do = at_the_joints()
    do("type", text="Joint D: ΣFx = 240 + CD = 0 => CD = -240")
    do("type", text="Joint C: ΣFx = 240 - 0.6 AC = 0 => AC = 400")
    reply = do("type", text="F_ACx = (3/5)(400) = 240")
    assert "Taken as" not in reply.text
    assert "holds" not in reply.text
    assert do("type", text="ΣFy = -500 - BC - 320 = 0").accepted
