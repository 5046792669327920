"""Do the few lines of linear algebra agree with numpy's?"""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tutor.statics.linear import directions, inverse, without

WHOLE = st.integers(-4, 4).map(float)
LEAST = 1e-9


def rows(count: st.SearchStrategy[int], width: int) -> st.SearchStrategy[list[list[float]]]:
    row = st.lists(WHOLE, min_size=width, max_size=width)
    return count.flatmap(lambda n: st.lists(row, min_size=n, max_size=n))


@given(rows(st.integers(1, 5), 3))
def test_there_are_as_many_directions_as_the_rank(vectors: list[list[float]]) -> None:
    assert len(directions(vectors, LEAST)) == np.linalg.matrix_rank(np.array(vectors))


@given(rows(st.integers(1, 3), 4), st.lists(WHOLE, min_size=4, max_size=4))
def test_nothing_is_left_of_a_sum_and_all_of_what_is_perpendicular(
    vectors: list[list[float]], by: list[float]
) -> None:
    basis = directions(vectors, LEAST)
    summed = [sum(w * v[k] for w, v in zip(by, vectors, strict=False)) for k in range(4)]
    assert without(summed, basis) == pytest.approx([0.0] * 4, abs=1e-9)
    rest = without(by, basis)
    assert [sum(a * b for a, b in zip(rest, unit, strict=True)) for unit in basis] == (
        pytest.approx([0.0] * len(basis), abs=1e-9)
    )


def test_what_is_carried_goes_along_as_the_right_side_of_an_equation() -> None:
    basis = directions([[1.0, 1.0, 5.0], [0.0, 2.0, 4.0]], LEAST, carried=1)
    assert without([3.0, 4.0, 17.0], basis, carried=1) == pytest.approx([0.0, 0.0, 0.0], abs=1e-12)
    assert without([3.0, 4.0, 18.0], basis, carried=1) == pytest.approx([0.0, 0.0, 1.0], abs=1e-12)


@given(rows(st.integers(3, 3), 3))
def test_an_inverse_is_that_of_numpy_and_none_where_there_is_none(m: list[list[float]]) -> None:
    found = inverse(m, LEAST)
    if abs(np.linalg.det(np.array(m))) < 0.5:
        assert found is None
    else:
        assert np.array(found) == pytest.approx(np.linalg.inv(np.array(m)), abs=1e-9)
