#!/usr/bin/env bash
# Photographs out of Debian and npm packages, made into pictures that were never compressed or enlarged: reduced by area
# until nothing is left of their JPEG blocks, and cut into parts. Half of the photographs (by the checksum of their
# names, so that all parts of one go the same way) are to set bounds on, half to score on.
# Usage: photographs.sh SAMPLES DIR     SAMPLES as tests/get-samples.sh makes it; DIR/tune and DIR/score are filled.
# Needs imagemagick; fetches two more packages with apt-get. Nothing of them is committed.
set -euo pipefail
samples=$1 dir=$2
. "$(dirname "$0")/packages.sh"
fetch palapeli-data
fetch python3-skimage

part_width=1400 part_height=1050

prepare() { # photograph, percentage to reduce to
  local name half count
  name=$(basename "${1%.*}" | tr -c 'A-Za-z0-9\n' '-')
  half=tune; [ $(($(cksum <<<"$name" | cut -d' ' -f1) % 2)) -eq 0 ] && half=score
  ls "$dir/$half/$name"-*.png >/dev/null 2>&1 && return
  convert "$1[0]" -strip -colorspace sRGB -type TrueColor -depth 8 -filter Box -resize "$2%" "$dir/whole.png"
  # No part smaller than the rest that is left over at the right and the bottom.
  read -r width height < <(identify -format '%w %h\n' "$dir/whole.png")
  count=0
  for ((y = 0; y == 0 || y + part_height <= height; y += part_height)); do
    for ((x = 0; x == 0 || x + part_width <= width; x += part_width)); do
      convert "$dir/whole.png" -crop "${part_width}x${part_height}+$x+$y" +repage "PNG24:$dir/$half/$name-$count.png"
      count=$((count + 1))
      [ "$count" -lt 3 ] || break 2
    done
  done
  rm "$dir/whole.png"
}

# Left out: patterns, paintings and drawings, and photographs whose makers sharpened them into halos.
find "$samples"/deb-lomiri-wallpapers-* "$samples"/deb-lxqt-themes "$samples"/npm-exif "$samples"/npm-jpeg-autorotate -type f \
  \( -name '*.jpg' -o -name '*.jpeg' \) -size +300k | grep -v -E 'pattern|Painting|image_exif_dest' | sort |
  while read -r file; do prepare "$file" 40; done
find "$dir"/debs/palapeli-data -name '*.jpg' | sort | while read -r file; do prepare "$file" 50; done
for name in coffee camera astronaut gravel brick motorcycle_left chelsea; do
  file=$(find "$dir"/debs/python3-skimage -name "$name.png")
  [ -z "$file" ] || prepare "$file" 100
done
echo "tune $(ls "$dir/tune" | wc -l), score $(ls "$dir/score" | wc -l)"
