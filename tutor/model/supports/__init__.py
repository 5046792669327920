"""Every kind of support there is: one file each in this folder, found by listing it."""

from __future__ import annotations

from collections.abc import Mapping
from importlib import import_module
from pkgutil import iter_modules

from tutor.model.support_kind import TAKES, SupportKind

SUPPORTS: Mapping[str, SupportKind] = {
    kind.name: kind
    for kind in sorted(
        (import_module(f"{__name__}.{module.name}").KIND for module in iter_modules(__path__)),
        key=lambda kind: (TAKES.index(kind.takes), kind.name),
    )
}
"""By name: those that take nothing more first, then those that take an angle, then a point."""
