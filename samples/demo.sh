#!/bin/sh
# Installs what is missing, judges an invented machine and writes the report for a buyer as a PDF.
# Prints the path of the PDF last.
set -eu
CDPATH= cd -- "$(dirname -- "$0")/.."
. .ci/prepare
prepare

report=.out/before_purchase.pdf
mkdir -p .out
rm -f "$report"
.venv/bin/inspector assess samples/before_purchase/record.yaml --pdf "$report"
printf '\nThe report:\n%s\n' "$PWD/$report"
