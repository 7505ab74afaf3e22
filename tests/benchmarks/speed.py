"""Print wall time and peak memory of the command line: --help, one assessment, one PDF.

Run: python tests/benchmarks/speed.py
"""

from __future__ import annotations

import resource
import subprocess
import sys
import tempfile
import time
from pathlib import Path

SAMPLE = Path(__file__).resolve().parents[2] / "samples" / "before_purchase" / "record.yaml"


def best(arguments: list[str], times: int = 5) -> float:
    """Least wall time of several runs, in seconds."""
    found = []
    for _ in range(times):
        started = time.perf_counter()
        subprocess.run([sys.executable, "-m", "inspector", *arguments], check=True, capture_output=True)
        found.append(time.perf_counter() - started)
    return min(found)


def main() -> None:
    print(f"--help            {best(['--help']):.2f} s")
    print(f"assess            {best(['assess', str(SAMPLE)]):.2f} s")
    memory = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 1024
    print(f"                  {memory:.0f} MB at most")
    with tempfile.TemporaryDirectory() as folder:
        print(f"assess with --pdf {best(['assess', str(SAMPLE), '--pdf', f'{folder}/r.pdf'], 3):.2f} s")
    memory = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 1024
    print(f"                  {memory:.0f} MB at most")


if __name__ == "__main__":
    main()
