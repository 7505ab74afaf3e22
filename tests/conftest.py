"""Tests keep their cache to themselves: nothing outside the clone and the temporary folder is read."""

from __future__ import annotations

import atexit
import os
import shutil
import tempfile

_CACHE = tempfile.mkdtemp(prefix="inspector-tests-")
os.environ["XDG_CACHE_HOME"] = _CACHE
atexit.register(shutil.rmtree, _CACHE, ignore_errors=True)
