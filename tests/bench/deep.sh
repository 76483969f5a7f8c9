#!/usr/bin/env bash
# The pass over all pixels: its time against the bare libraries (JPEG, LZW and Deflate TIFF), its peak memory on 30,000 x
# 30,000 pixels, and small copies against vipsthumbnail. Prints; asserts nothing.
# Usage: deep.sh BUILD SAMPLES [FOLDER] (photographs come from SAMPLES; needs ImageMagick, libvips-tools, libtiff-tools, GNU time)
set -euo pipefail
build=$(realpath "$1"); samples=$(realpath "$2"); folder=${3:-$(mktemp -d)}
mkdir -p "$folder"; cd "$folder"
press=/usr/share/color/icc/ghostscript/default_cmyk.icc

# Six photographs of 24 megapixels.
mapfile -t photos < <(find "$samples" -path '*wallpapers*' -name '*.jpg' -size +1M | sort | head -6)
for i in "${!photos[@]}"; do
  [ -e "photo-$i.jpg" ] || convert "${photos[$i]}" -resize 6000x4000^ -gravity center -extent 6000x4000 -quality 92 "photo-$i.jpg"
  [ -e "lzw-$i.tif" ] || convert "photo-$i.jpg" -compress lzw "lzw-$i.tif"
  [ -e "deflate-$i.tif" ] || convert "photo-$i.jpg" -compress zip "deflate-$i.tif"
done
cat ./*.jpg ./*.tif > /dev/null

for kind in 'photo-*.jpg' 'lzw-*.tif' 'deflate-*.tif'; do
  for profile in - "$press"; do
    echo "$kind, press profile: $profile"
    # shellcheck disable=SC2086
    "$build/tests/bench/bench_deep_pass" "$profile" $kind
  done
done

for kind in strips tiles; do
  [ -e "large-$kind.tif" ] || "$build/tests/bench/make_large" "large-$kind.tif" 30000 "$kind"
  /usr/bin/time -f "30,000 x 30,000 in $kind: %M kB, %e s" "$build/reports/terminal/stoneproof" measure "large-$kind.tif" > /dev/null
done

echo 'small copies of 256 pixels of 48 JPEGs, two threads'
list=(); for _ in 1 2 3 4 5 6 7 8; do list+=(photo-*.jpg); done
for round in 1 2 3; do
  "$build/tests/bench/bench_small_copies" 2 256 "${list[@]}"
  # Under other names, since vipsthumbnail writes one file a name; it takes its pictures one after another, so two of it run.
  /usr/bin/time -f 'vipsthumbnail %e s' bash -c \
    'for half in 1 2; do (for i in 1 2 3 4; do VIPS_CONCURRENCY=1 vipsthumbnail -s 256 -o "thumb-$half-%s.jpg" "$@"; done) & done; wait' _ photo-*.jpg
done
