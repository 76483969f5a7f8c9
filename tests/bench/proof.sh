#!/usr/bin/env bash
# The proof of a 300-page book with 600 frames from 24-megapixel JPEGs: its time against libjpeg-turbo alone decoding the
# same files, to proof size for --quick and whole otherwise, on as many threads; its peak memory, and the size of the PDF. Prints; asserts nothing.
# Usage: proof.sh BUILD SAMPLES [FOLDER] (photographs come from SAMPLES, see tests/get-samples.sh; needs ImageMagick, GNU time)
set -euo pipefail
build=$(realpath "$1"); samples=$(realpath "$2"); folder=${3:-$(mktemp -d)}
mkdir -p "$folder/pictures"; cd "$folder"
threads=$(nproc)

# Twelve photographs brought to 6000 x 4000, each under fifty names.
mapfile -t photos < <(find "$samples" -path '*wallpapers*' -name '*.jpg' -size +1M | sort | head -12)
for i in "${!photos[@]}"; do
  [ -e "photo-$i.jpg" ] || convert "${photos[$i]}" -resize 6000x4000^ -gravity center -extent 6000x4000 -quality 92 "photo-$i.jpg"
done
for n in $(seq 0 599); do ln -f "photo-$((n % ${#photos[@]})).jpg" "pictures/$n.jpg"; done

{
  echo '<book xmlns="urn:stoneproof:book:1" title="Six hundred photographs" language="en">'
  echo '<trim width="210mm" height="280mm"/><bleed top="3mm" bottom="3mm" outside="3mm" inside="0mm"/>'
  echo '<safe-margin top="5mm" bottom="5mm" outside="5mm" inside="5mm"/>'
  echo '<binding kind="case" first-page="right" gutter-loss="6mm"/><pictures>'
  for n in $(seq 0 599); do echo "<picture id=\"p$n\" file=\"pictures/$n.jpg\" use=\"photo\"/>"; done
  echo '</pictures><pages>'
  for page in $(seq 1 300); do
    a=$((page * 2 - 2)); b=$((a + 1))
    echo "<page number=\"$page\"><frame id=\"a$page\" picture=\"p$a\" x=\"20mm\" y=\"20mm\" width=\"170mm\" height=\"113mm\"><fill/></frame>"
    echo "<frame id=\"b$page\" picture=\"p$b\" x=\"20mm\" y=\"145mm\" width=\"170mm\" height=\"113mm\"><fill/></frame></page>"
  done
  echo '</pages></book>'
} > book.xml

# Frames of 170 mm are drawn at 0.55 and 144 ppi: about 530 pixels wide.
cat pictures/*.jpg > /dev/null
measure() { # NAME WIDTH OPTION...: the proof against libjpeg-turbo alone decoding to that width
  local name=$1 width=$2 bare seconds kilobytes; shift 2
  bare=$("$build/tests/bench/bench_bare_decode" "$threads" "$width" pictures/*.jpg)
  /usr/bin/time -f '%e %M' -o time "$build/reports/terminal/stoneproof" proof book.xml --jobs "$threads" "$@" > summary || true
  read -r seconds kilobytes < time
  echo "$bare $seconds $kilobytes" | awk -v name="$name" -v bytes="$(stat -c %s book.proof.pdf)" \
    '{printf "%s: bare decode %.1f s, proof %.1f s, ratio %.2f; peak memory %.0f MB; PDF %.1f MB\n", name, $1, $2, $2 / $1, $3 / 1000, bytes / 1e6}'
}
for round in 1 2 3; do
  measure 'quick, against proof size' 530 --quick
  measure 'all pixels, against full size' 6000
done
