"""Every mistake pinjoint can name: one file each in this folder, found by listing it."""

from __future__ import annotations

from collections.abc import Mapping
from importlib import import_module
from pkgutil import iter_modules

from tutor.judge.kind import Kind

KINDS: Mapping[str, Kind] = {
    kind.code: kind
    for kind in (
        import_module(f"{__name__}.{module.name}").KIND for module in iter_modules(__path__)
    )
}
