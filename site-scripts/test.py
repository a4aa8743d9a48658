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
from toolbox import CHROMIUM_VARIABLE, REPO, SCRIPTS, SetupError, ensure_chromium, say, script_checks

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
        scripts = script_checks()
    except SetupError as error:
        print(f"Stopped. {error}", file=sys.stderr)
        return 1
    failed = []
    tests = ("pytest", *PARALLEL, *sys.argv[1:])
    commands = [(" ".join(check), [str(python), "-m", *check], REPO) for check in (*CHECKS, tests)]
    commands[-1:-1] = [(name, command, SCRIPTS / "pages") for name, command in scripts]
    for name, command, folder in commands:
        say(name)
        if subprocess.run(command, cwd=folder).returncode != 0:
            failed.append(name)
    print(f"Failed: {', '.join(failed)}" if failed else "All checks and tests passed.", flush=True)
    return 1 if failed else 0


if __name__ == "__main__":
    raise SystemExit(main())
