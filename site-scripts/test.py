"""Set up, build, check and test everything: `python3 site-scripts/test.py [pytest options]`.

Standard library only; any Python from 3.11 on can start it. Ends with 0 only when all passed.
"""

from __future__ import annotations

import os
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent))
from toolbox import (
    CHROMIUM_VARIABLE,
    REPO,
    SCRIPTS,
    SetupError,
    ensure_chromium,
    ensure_node_modules,
    ensure_venv,
    say,
    script_checks,
)

CHECKS = (
    ("ruff", "check", "."),
    ("ruff", "format", "--check", "."),
    ("mypy", "calc"),
)
# A worker a core and one more, as a test of a page waits for its browser now and then. Each has a browser of its own;
# all share the one built site.
PARALLEL = ("-n", str((os.cpu_count() or 1) + 1), "--dist", "worksteal")


def main() -> int:
    """Run every check even if one fails, beside the build; then the tests. Return 0 only if all passed."""
    os.environ.pop("PYTHONDONTWRITEBYTECODE", None)  # what the build compiles, every process of the tests reads
    try:
        python = ensure_venv()
        ensure_node_modules()
        checks = [(" ".join(check), [str(python), "-m", *check], REPO) for check in CHECKS]
        checks += [(name, command, SCRIPTS / "pages") for name, command in script_checks()]
        # Checks and build read the same files and write none of them: two cores are better than one.
        with ThreadPoolExecutor(1) as beside:
            done = beside.submit(lambda: [_checked(command, folder) for _, command, folder in checks])
            built = subprocess.run([str(python), str(SCRIPTS / "build_site.py")]).returncode == 0
            os.environ[CHROMIUM_VARIABLE] = str(ensure_chromium())
    except SetupError as error:
        print(f"Stopped. {error}", file=sys.stderr)
        return 1
    failed = [] if built else ["build"]
    for (name, _, _), (passed, told) in zip(checks, done.result(), strict=True):
        say(name)
        print(told, end="", flush=True)
        failed += [] if passed else [name]
    tests = ("pytest", *PARALLEL, *sys.argv[1:])
    if built:
        say(" ".join(tests))
        if subprocess.run([str(python), "-m", *tests], cwd=REPO).returncode != 0:
            failed.append("pytest")
    print(f"Failed: {', '.join(failed)}" if failed else "All checks and tests passed.", flush=True)
    return 1 if failed else 0


def _checked(command: list[str], folder: Path) -> tuple[bool, str]:
    """Whether a check passed, and what it said."""
    done = subprocess.run(command, cwd=folder, text=True, stdout=subprocess.PIPE, stderr=subprocess.STDOUT)
    return done.returncode == 0, done.stdout


if __name__ == "__main__":
    raise SystemExit(main())
