"""Find Chromium for the tests in a browser; where one may, install it from the system's packages."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys

NAMES = ("chromium", "chromium-browser", "google-chrome")
COMMANDS = (
    ["apt-get", "update", "-qq"],
    ["apt-get", "install", "-y", "-qq", "--no-install-recommends", "chromium", "fonts-liberation"],
)


def found() -> str | None:
    """Where Chromium is: $CHROMIUM, else on the path; None where it is not."""
    told = os.environ.get("CHROMIUM")
    return told or next(filter(None, map(shutil.which, NAMES)), None)


def main() -> int:
    """Say where it is, after installing it where that is possible."""
    if found() is None and shutil.which("apt-get") and hasattr(os, "geteuid") and os.geteuid() == 0:
        print("• installing chromium for the tests in a browser")
        for command in COMMANDS:
            asking_nothing = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
            subprocess.run(command, check=True, stdout=subprocess.DEVNULL, env=asking_nothing)
    where = found()
    if where is None:
        print(
            "The tests in a browser need Chromium. Install it, on Debian or Ubuntu with\n"
            "    sudo apt-get install chromium\n"
            "or say where one is: CHROMIUM=/path/to/chromium make test",
            file=sys.stderr,
        )
        return 1
    return 0


if __name__ == "__main__":
    sys.exit(main())
