"""`python -m anchorwatt`."""

from __future__ import annotations

from anchorwatt.cli import main

if __name__ == "__main__":
    main()
