#!/usr/bin/env bash
# Reads the places of all pictures of a made PDF, 500 pages with 1,500 JPEG pictures of about 100 KB, and sets time and
# memory beside `pdfimages -list` of the same file, as it stands and with object streams. Goal: below 2 s and 250 MB, and no
# longer than pdfimages. Needs ImageMagick, poppler-utils, qpdf and time.
# Usage: placements.sh BUILD
set -euo pipefail
[ $# -eq 1 ] || { echo "usage: $0 BUILD" >&2; exit 2; }
build=$1 here=$(cd "$(dirname "$0")" && pwd)
work=$(mktemp -d); trap 'rm -rf "$work"' EXIT
for n in $(seq 25); do
  convert -size 900x675 -seed "$n" plasma:fractal -attenuate 0.3 +noise Gaussian -quality 80 "$work/$n.jpg"
done
python3 "$here/make_pages_pdf.py" "$work/plain.pdf" 500 "$work"/*.jpg
qpdf --object-streams=generate --stream-data=preserve "$work/plain.pdf" "$work/packed.pdf"
echo "JPEG of $(stat -c %s "$work/1.jpg") bytes, PDF of $(stat -c %s "$work/plain.pdf")"

# The best of five in seconds, and the memory of that run in MB.
best() { # command...
  for _ in 1 2 3 4 5; do /usr/bin/time -f '%e %M' -o "$work/time" "$@" > "$work/out" 2>/dev/null; cat "$work/time"; done |
    sort -n | awk 'NR == 1 {printf "%6.2f s %6.0f MB", $1, $2 / 1024}'
}
for pdf in plain packed; do
  for command in "$build/tests/bench/bench_placements" "pdfimages -list"; do
    printf '%-7s %-17s %s\n' "$pdf" "$(basename "${command%% *}")" "$(best $command "$work/$pdf.pdf")"
  done
done
