"""Are the deeds offered on the bar those that make sense for what is asked now, and no others?"""

from __future__ import annotations

from pathlib import Path

import pytest
from pressing import FIRST
from resuming import FREE_BODY, JOINTS
from textual.geometry import Size

from tutor.model import load_problem
from tutor.records import Keep
from tutor.screens.walk_possible import possible
from tutor.screens.widgets.lines_pane import tries_lines
from tutor.screens.widgets.trail import Trail
from tutor.session import Session, open_session

TRUE_OF_FX = "Fy: F_AC + 12/13 F_BC = 0"


@pytest.fixture
def session(tmp_path: Path) -> Session:
    return open_session(load_problem(FIRST / "lamp-arm.toml"), Keep(tmp_path))


def at_joint_c(session: Session) -> None:
    for kind, data in (*JOINTS, ("joint", {"joint": "C"})):
        session.do(kind, **data)


class TestKeep:
    def test_is_offered_beside_the_line_that_holds_for_another_sum(self, session: Session) -> None:
        at_joint_c(session)
        session.do("type", text=TRUE_OF_FX)
        assert "keep" in possible(session)
        session.do("hint")
        assert "keep" in possible(session)

    @pytest.mark.parametrize(
        "then",
        [("joint", {"joint": "A"}), ("choose", {"about": "Fx"})],
        ids=["another joint", "another sum"],
    )
    def test_leaves_with_that_line(
        self, session: Session, then: tuple[str, dict[str, str]]
    ) -> None:
        at_joint_c(session)
        session.do("type", text=TRUE_OF_FX)
        kind, data = then
        if kind == "choose":
            options = [o.key for o in session.lesson.ask.options]
            data = {"about": next(key for key in options if key.startswith("Fx"))}
        session.do(kind, **data)
        assert "keep" not in possible(session)


class TestBegin:
    def test_stays_while_it_would_write_something(self, session: Session) -> None:
        session.stage = "joints"
        session.do("reasons", chosen=["pins"])
        assert session.lesson.state.tries
        assert "begin" in possible(session)

    def test_leaves_where_all_of_it_is_done(self, session: Session) -> None:
        session.stage = "reactions"
        for kind, data in FREE_BODY:
            session.do(kind, **data)
        session.do("show", until="reactions")
        assert "begin" not in possible(session)


def test_the_same_choice_missed_again_and_again_takes_one_row(session: Session) -> None:
    for _ in range(3):
        session.do("reasons", chosen=["pins"])
    rows = tries_lines(session.lesson.state.tries, True).plain.split("\n")
    assert [row.strip() for row in rows] == ["x wrong  (3 times) the reasons"]


@pytest.mark.parametrize("wide", [80, 120])
def test_a_title_is_whole_where_it_fits_beside_the_step(
    wide: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(Trail, "size", property(lambda self: Size(wide, 1)))
    trail = Trail()
    trail.show("Bell frame on the quay", "reactions", "kept")
    row = trail.render().plain
    assert row.startswith("Bell frame on the quay  ")
    assert "[Reactions]" in row
    assert len(row) == wide
