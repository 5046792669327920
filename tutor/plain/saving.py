"""How is something written into a new file, never over one that is there?"""

from __future__ import annotations

from pathlib import Path


def save(name: str, text: str) -> tuple[str, ...]:
    """What is said after writing `text` into a new file of this name."""
    try:
        with Path(name).expanduser().open("x", encoding="utf-8") as file:
            file.write(text)
    except FileExistsError:
        return (f"Not saved: there is a file {name} already; choose another name.",)
    except (OSError, ValueError, RuntimeError) as refused:
        reason = getattr(refused, "strerror", None) or "this name cannot be used"
        return (f"Not saved: {reason}; choose another name or folder.",)
    return (f"Saved in {name}.",)
