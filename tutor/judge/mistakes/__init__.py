"""Every mistake pinjoint can name: one file each in this folder, found by listing it."""

from __future__ import annotations

from collections.abc import Mapping
from importlib import import_module
from pkgutil import iter_modules

from tutor.judge.kind import Kind


def _order(kind: Kind) -> tuple[bool, bool, str]:
    return kind.touches != "neither", not kind.of_whole, kind.counts


FOUND = [import_module(f"{__name__}.{module.name}").KIND for module in iter_modules(__path__)]
KINDS: Mapping[str, Kind] = {kind.code: kind for kind in sorted(FOUND, key=_order)}
"""Of those as plausible, a wrong sign or a whole term comes before a whole force for its component, that
before another wrong size or factor, and last a component that is left out."""
