"""Is it told, when a lesson is left, that the folder it is kept in was moved away meanwhile?"""

from __future__ import annotations

from pathlib import Path

from tutor.model import load_problem
from tutor.records import Keep
from tutor.session import open_session
from tutor.shipped import shipped_problems

LAMP = load_problem(shipped_problems() / "first-steps" / "lamp-arm.toml")


def test_a_lesson_whose_folder_was_moved_says_so_and_goes_on_from_where_it_was_put(
    tmp_path: Path,
) -> None:
    session = open_session(LAMP, Keep(tmp_path / "kept"))
    session.do("reasons", chosen=[])
    assert session.gone == ""
    (tmp_path / "kept").rename(tmp_path / "elsewhere")
    session.do("undo")
    session.close()
    assert "its folder was moved or removed" in session.gone
    (kept,) = Keep(tmp_path / "elsewhere").lessons()
    with open_session(LAMP, Keep(tmp_path / "elsewhere"), kept.path).journal as journal:
        assert [e["kind"] for e in journal.events if e["kind"] in ("reasons", "undo")] == [
            "reasons",
            "undo",
        ]
