"""Do the rooms keep apart: who imports whom, and what is loaded when?"""

from __future__ import annotations

import ast
import inspect
import subprocess
import sys
import tomllib
from functools import cache
from pathlib import Path
from types import ModuleType

import pytest

import tutor

ROOT = Path(__file__).parents[1]
PACKAGE = ROOT / "tutor"
CORE = (
    *("model", "statics", "notation", "judge", "lesson", "records", "figure", "homework"),
    *("drafting", "variants", "paper", "skills", "cohort"),
)
SCREEN = ("textual", "rich")


def loaded_after(code: str, *names: str) -> set[str]:
    """Which of the packages `names` are loaded once `code` has run in a new interpreter."""
    ask = f"import sys\n{code}\nprint('loaded', *[n for n in {names!r} if n in sys.modules])"
    ended = subprocess.run(
        [sys.executable, "-c", ask],
        input="leave\n",
        capture_output=True,
        text=True,
        encoding="utf-8",
        cwd=ROOT,
        check=False,
    )
    assert ended.returncode == 0, ended.stderr
    return set(ended.stdout.splitlines()[-1].split()[1:])


def test_every_contract_on_imports_is_kept() -> None:
    ended = subprocess.run(
        [sys.executable, "-c", "from importlinter.cli import lint_imports_command as c; c()"],
        capture_output=True,
        text=True,
        encoding="utf-8",
        cwd=ROOT,
        check=False,
    )
    assert ended.returncode == 0, ended.stdout + ended.stderr


def test_every_room_is_under_the_contract_on_the_flow() -> None:
    contracts = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    (flow,) = (c for c in contracts["tool"]["importlinter"]["contracts"] if c["id"] == "flow")
    layers = [name for layer in flow["layers"] for name in layer.split(" | ")]
    named = {name.strip("()") for name in layers}
    needed = {name for name in layers if not name.startswith("(")}
    there = {path.stem for path in PACKAGE.iterdir() if path.suffix == ".py" or path.is_dir()}
    aside = {"__init__", "__pycache__", "problems", "shipped", "figure"}
    assert needed <= there - aside <= named


def test_no_room_of_the_core_loads_a_screen() -> None:
    one_by_one = (
        f"import tutor.{room}\nassert not any(n in sys.modules for n in {SCREEN}), {room!r}"
        for room in CORE
    )
    assert not loaded_after("\n".join(one_by_one), *SCREEN)


@pytest.mark.parametrize(
    "code",
    [
        "import tutor.plain, tutor.cli",
        "import tutor.cli\ntutor.cli.main(['check', 'problems/first-steps'])",
        "import tempfile, tutor.cli\n"
        "with tempfile.TemporaryDirectory() as keep:\n"
        "    tutor.cli.main(['--plain', '--keep', keep])",
    ],
    ids=["imported", "check", "plain"],
)
def test_checking_and_the_plain_mode_never_load_a_screen(code: str) -> None:
    assert not loaded_after(code, *SCREEN)


@pytest.mark.parametrize("code", ["import tutor", "import tutor.cli", "import tutor.plain"])
def test_what_computes_is_not_loaded_before_it_computes(code: str) -> None:
    assert not loaded_after(code, "numpy", "sympy")


def test_the_package_itself_loads_no_room() -> None:
    rooms = [f"tutor.{room}" for room in CORE]
    assert not loaded_after("import tutor", *rooms)


def test_every_name_of_the_interface_is_there_and_stays_itself() -> None:
    ask = "\n".join(
        [
            "import tutor",
            "from tutor import judge, Lesson, Fx",
            "import tutor.judge.about, tutor.lesson",
            "from tutor import judge as again",
            "assert judge is again and callable(judge), again",
            "assert all(hasattr(tutor, name) for name in tutor.__all__)",
            "from tutor.judge import Judge",
            "import pickle",
            "assert pickle.loads(pickle.dumps(judge)) is judge",
            "assert set(tutor.__all__) <= set(dir(tutor))",
        ]
    )
    for first in (
        "",
        "import tutor.lesson\n",
        "import tutor.judge\n",
        "from tutor import Lesson\n",
    ):
        assert not loaded_after(first + ask, "textual")


def test_every_module_can_be_imported_under_a_name_of_ones_own() -> None:
    names = [".".join(path.relative_to(PACKAGE.parent).with_suffix("").parts) for path in modules()]
    names = [name.removesuffix(".__init__") for name in names if not name.endswith("__main__")]
    ask = "\n".join(f"import {name} as m\nassert m is sys.modules[{name!r}], m" for name in names)
    for first in ("", "from tutor import judge\n"):
        loaded_after(f"import sys\n{first}{ask}")


def test_the_room_of_the_judge_is_called_as_the_function_in_it() -> None:
    from tutor.judge import judge

    assert inspect.signature(tutor.judge) == inspect.signature(judge)
    assert isinstance(tutor.judge, ModuleType)


def test_a_name_that_is_not_there_is_an_attribute_error() -> None:
    with pytest.raises(AttributeError, match="nothing_of_this_name"):
        tutor.nothing_of_this_name  # noqa: B018


@pytest.mark.parametrize("name", tutor.__all__)
def test_a_name_of_the_interface_is_documented(name: str) -> None:
    assert getattr(tutor, name).__doc__


def modules() -> list[Path]:
    return sorted(PACKAGE.rglob("*.py"))


@cache
def trees() -> dict[str, ast.Module]:
    """Each module by its place in the package, as its statements."""
    return {
        str(path.relative_to(PACKAGE)): ast.parse(path.read_text(encoding="utf-8"))
        for path in modules()
    }


def test_a_module_opens_with_its_question_and_takes_its_types_lazily() -> None:
    for name, tree in trees().items():
        assert ast.get_docstring(tree), name
        imports = [node for node in tree.body if isinstance(node, ast.ImportFrom)]
        defines = any(isinstance(n, ast.FunctionDef | ast.ClassDef) for n in ast.walk(tree))
        assert not defines or any(node.module == "__future__" for node in imports), name


def test_nothing_evaluates_text() -> None:
    for name, tree in trees().items():
        called = [node.func for node in ast.walk(tree) if isinstance(node, ast.Call)]
        plain = {func.id for func in called if isinstance(func, ast.Name)}
        dotted = {func.attr for func in called if isinstance(func, ast.Attribute)}
        assert not plain & {"eval", "exec", "compile", "__import__"}, name
        assert not (plain | dotted) & {"sympify", "parse_expr", "S"}, name
