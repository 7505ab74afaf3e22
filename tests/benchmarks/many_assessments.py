"""Assess one sample 20,000 times in one process and print memory and time as it goes.

Run: python tests/benchmarks/many_assessments.py [times]
"""

from __future__ import annotations

import resource
import sys
import time
from pathlib import Path

from inspector import assess, read

SAMPLE = Path(__file__).resolve().parents[2] / "samples" / "before_purchase" / "record.yaml"


def main() -> None:
    times = int(sys.argv[1]) if len(sys.argv) > 1 else 20_000
    inspection = read(SAMPLE)
    first = assess(inspection).model_dump_json()
    started = time.perf_counter()
    for number in range(1, times + 1):
        assessment = assess(inspection)
        if number % max(times // 10, 1) == 0:
            memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
            each = (time.perf_counter() - started) / number * 1000
            print(f"{number:>6} assessments, {memory:.1f} MB at most, {each:.2f} ms each", flush=True)
            assert assessment.model_dump_json() == first


if __name__ == "__main__":
    main()
