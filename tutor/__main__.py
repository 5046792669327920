"""What does `python -m tutor` do? The same as `pinjoint`."""

from __future__ import annotations

import sys

from tutor.cli import main

if __name__ == "__main__":
    sys.exit(main())
