"""Set up, build, check and test everything: `python3 site-scripts/test.py [pytest options]`.

Standard library only; any Python from 3.11 on can start it. Ends with 0 only when all passed.
"""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent))
from serve import prepare_and_build
from toolbox import CHROMIUM_VARIABLE, REPO, SetupError, ensure_chromium, say

CHECKS = (
    ("ruff", "check", "."),
    ("ruff", "format", "--check", "."),
    ("mypy", "calc"),
)
# One worker a core, each with a browser of its own; all share the one built site.
PARALLEL = ("-n", "auto", "--dist", "worksteal")


def main() -> int:
    """Run every check even if one fails, then the tests, and return 0 only if all passed."""
    try:
        python = prepare_and_build()
        os.environ[CHROMIUM_VARIABLE] = str(ensure_chromium())
    except SetupError as error:
        print(f"Stopped. {error}", file=sys.stderr)
        return 1
    failed = []
    for command in (*CHECKS, ("pytest", *PARALLEL, *sys.argv[1:])):
        name = " ".join(command)
        say(name)
        if subprocess.run([str(python), "-m", *command], cwd=REPO).returncode != 0:
            failed.append(name)
    print(f"Failed: {', '.join(failed)}" if failed else "All checks and tests passed.", flush=True)
    return 1 if failed else 0


if __name__ == "__main__":
    raise SystemExit(main())
