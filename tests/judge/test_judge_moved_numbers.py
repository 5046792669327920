"""Which number of a line was left out of a value, and which turned round, by size and by sign?"""

from __future__ import annotations

import math

from hypothesis import assume, given
from hypothesis import strategies as st

from tutor.judge.moved_numbers import left_out, one_turned

NUMBERS = st.lists(
    st.integers(-500, 500).filter(bool).map(float), min_size=2, max_size=5, unique_by=abs
)
BESIDE = st.sampled_from([1.0, -1.0, 0.6, -0.8, 5 / 13, 4.0, -12.0])


def solved(beside: float, numbers: list[float]) -> float:
    return -math.fsum(numbers) / beside


@given(BESIDE, NUMBERS, st.data())
def test_of_all_numbers_in_a_working_none_is_left_out_and_one_is_turned(
    beside: float, numbers: list[float], data: st.DataObject
) -> None:
    which = data.draw(st.integers(0, len(numbers) - 1))
    wrong = [-n if at == which else n for at, n in enumerate(numbers)]
    value, typed = solved(beside, wrong), [-n / beside for n in wrong]
    assume(value != 0.0)
    assert one_turned([(beside, numbers)], value, sign=True)
    assert not left_out([(beside, numbers)], value, typed, sign=False)


@given(BESIDE, NUMBERS, st.data())
def test_the_one_that_a_working_has_not_is_left_out(
    beside: float, numbers: list[float], data: st.DataObject
) -> None:
    which = data.draw(st.integers(0, len(numbers) - 1))
    rest = [n for at, n in enumerate(numbers) if at != which]
    value = solved(beside, rest)
    assume(value != 0.0)
    for typed in ([-n / beside for n in rest], []):
        assert left_out([(beside, numbers)], value, typed, sign=True)
    assert not left_out([(beside, numbers)], -value, [n / beside for n in rest], sign=True) or any(
        math.isclose(-value, solved(beside, [m for m in numbers if m != n]), rel_tol=0.003)
        for n in numbers
    )


@given(BESIDE, st.integers(1, 500))
def test_a_line_of_one_number_has_none_to_lose(beside: float, number: int) -> None:
    rows = [(beside, [float(number)])]
    assert not left_out(rows, number / beside, [], sign=False)
    assert not one_turned(rows, number / beside, sign=False)
