"""A line such as "A_x = 12" reads like a value: when is it met as which?"""

from __future__ import annotations

from walks import walk_to


def test_a_wrong_line_that_reads_like_a_value_is_met_by_its_mistake() -> None:
    lesson, do = walk_to("reactions")
    do("choose", about="Fy")
    reply = do("type", text="A_y = -150")
    assert [say.tone for say in reply.said] == ["wrong"]
    assert lesson.state.tries[-1].codes == ("sign",)
    assert "wrong sign" in [do("hint").text for _ in range(2)][1]


def test_a_true_value_typed_before_its_line_is_not_called_wrong() -> None:
    lesson, do = walk_to("reactions")
    do("choose", about="M C")
    before = len(lesson.state.tries)
    reply = do("type", text="B_x = 360")
    assert [say.tone for say in reply.said] == ["note"]
    assert len(lesson.state.tries) == before


def test_the_last_hint_on_a_value_can_be_typed_as_it_stands() -> None:
    _, do = walk_to("reactions", A_x="right")
    do("type", text="ΣM_A: B_x - 150*2.4 = 0")
    do("type", text="B_x = 360")
    do("type", text="ΣFx: A_x + B_x = 0")
    for _ in range(4):
        told = do("hint").text
    assert told.startswith("A_x = 360 N to the left.")
    assert do("type", text=told.partition(". Type")[0]).accepted
