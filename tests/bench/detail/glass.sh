#!/usr/bin/env bash
# Dirt on the glass: makes beds out of photographs and runs bench_glass on them, for the half that bounds were set on and for
# the half to score on. A bed is 850 x 1100 pixels of gray: filled by a photograph, or with a print of it on a white lid.
# Usage: glass.sh BUILD PHOTOS DIR [bench_glass options]
#   PHOTOS as photographs.sh makes it; DIR is filled. Needs imagemagick.
set -euo pipefail
build=$1 photos=$2 dir=$3
shift 3
for half in tune score; do
  mkdir -p "$dir/$half"
  for photo in "$photos/$half"/*.png; do
    read -r width height < <(identify -format '%w %h\n' "$photo")
    [ "$width" -ge 400 ] && [ "$height" -ge 300 ] || continue # icons
    to="$dir/$half/$(basename "${photo%.png}")"
    [ -e "$to-print.pgm" ] && continue
    turn=0
    [ "$width" -le "$height" ] || turn=90
    # Larger than the bed by a tenth, so that each scan may take another part of it.
    convert "$photo" -rotate "$turn" -colorspace Gray -filter Catrom -resize '940x1220^' -depth 8 "$to-full.pgm"
    convert "$photo" -colorspace Gray -filter Catrom -resize 680x680 -depth 8 "$to-print.pgm"
  done
done
for half in tune score; do
  nice "$build/tests/bench/bench_glass" "$dir/$half" "$@"
done
