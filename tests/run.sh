#!/bin/sh
# Installs what is missing and runs the tests. What follows is handed to pytest: sh tests/run.sh -k brakes
set -eu
CDPATH= cd -- "$(dirname -- "$0")/.."
. .ci/prepare
prepare test
exec .venv/bin/python -m pytest -n 2 "$@"
