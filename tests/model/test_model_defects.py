"""Is every defect of a problem file found, on its line, with what is wrong and the cure?

`broken_files` changes one thing in a sound file; that one defect, and no other, must be reported.
"""

from __future__ import annotations

import pytest
from broken_files import CASES, SOUND, Case, text_of

from tutor.model import defects


def test_a_sound_file_has_no_defect() -> None:
    assert defects(SOUND) == ()


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.says[:40])
def test_one_defect_is_one_report_on_its_line_with_its_cure(case: Case) -> None:
    found = defects(text_of(case))
    assert [(defect.line, defect.severity) for defect in found] == [(case.line, "error")], found
    assert case.says in found[0].message
    assert case.cure in found[0].cure
    assert found[0].cure
