"""Which keys are there? Laws over every binding of every screen, dialog and widget."""

from __future__ import annotations

import importlib
import inspect
import pkgutil

import pytest
from textual.app import App
from textual.binding import Binding
from textual.dom import DOMNode

import tutor.screens
from tutor.screens.deeds import CLOSING, SHEET, WALK

SWALLOWED = frozenset(f"ctrl+{letter}" for letter in "sbajoqhim")
EXTRA = frozenset({"app.leave"})
"""Bindings with another way to the same: ctrl+q ends the program, as does q on the list."""


def classes() -> list[type[DOMNode]]:
    """Every class of ours with bindings."""
    found: dict[str, type[DOMNode]] = {}
    for module in pkgutil.walk_packages(tutor.screens.__path__, "tutor.screens."):
        for _, member in inspect.getmembers(importlib.import_module(module.name), inspect.isclass):
            if member.__module__.startswith("tutor.screens") and issubclass(member, DOMNode):
                found[f"{member.__module__}.{member.__name__}"] = member
    return list(found.values())


def bindings() -> list[Binding]:
    """The bindings that are ours, not those of a base class of the library."""
    found = []
    for cls in classes():
        for binding in cls.__dict__.get("BINDINGS", ()):
            assert isinstance(binding, Binding), f"{cls.__name__}: {binding}"
            found.append(binding)
    return found


class TestEveryBinding:
    def test_is_found_by_this_test(self) -> None:
        assert len(bindings()) > 40
        assert any(issubclass(cls, App) for cls in classes())

    def test_has_an_id_of_its_own(self) -> None:
        ids = [binding.id for binding in bindings()]
        assert all(ids)
        assert len(ids) == len(set(ids))

    def test_is_on_no_key_that_terminals_swallow(self) -> None:
        for binding in bindings():
            keys = set(binding.key.split(","))
            assert binding.id in EXTRA or not keys & SWALLOWED, binding

    def test_needs_no_function_key_and_no_modified_arrow_alone(self) -> None:
        on_the_bar = {f"walk.{deed.id}" for deed in WALK} | {f"sheet.{deed.id}" for deed in SHEET}
        # there the letter alone does it
        for binding in bindings():
            if binding.id in on_the_bar:
                continue
            plain = [
                key
                for key in binding.key.split(",")
                if not (key.startswith("f") and key[1:].isdigit())
                and not ("+" in key and not key.startswith("ctrl+"))
                and not (key.startswith("ctrl+") and len(key) != len("ctrl+x"))
            ]
            assert plain, binding


@pytest.mark.parametrize("deeds", [WALK, SHEET, CLOSING])
class TestEveryDeed:
    def test_has_a_letter_of_its_own(self, deeds: tuple[object, ...]) -> None:
        letters = [deed.letter for deed in deeds]  # type: ignore[attr-defined]
        assert all(len(letter) == 1 for letter in letters)
        assert len(letters) == len(set(letters))

    def test_says_in_a_sentence_what_it_does(self, deeds: tuple[object, ...]) -> None:
        for deed in deeds:
            assert deed.does.endswith(".")  # type: ignore[attr-defined]
            assert deed.label  # type: ignore[attr-defined]
