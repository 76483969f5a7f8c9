#!/usr/bin/env bash
# The labelled set of tests/bench/detail/upsampling.cpp: photographs enlarged by known factors and kernels, softened by
# known blurs, and natives of many kinds, each saved as PNG and as JPEG of three qualities.
# Usage: upsampling.sh PHOTOGRAPHS DIR     PHOTOGRAPHS as photographs.sh makes it. Takes some minutes.
# A file is called PHOTOGRAPH__KIND__VALUE__SAVED.ext; enlarged-KERNEL has the factor as value, blurred the sigma in pixels.
# Needs imagemagick and libjpeg-turbo-progs.
set -euo pipefail
photographs=$1 dir=$2

save() { # ppm, name without extension: PNG and three JPEGs
  convert "$1" -define png:compression-level=1 "$2__png.png"
  local quality
  for quality in 95 85 75; do cjpeg -quality "$quality" "$1" > "$2__q$quality.jpg"; done
}

make() { # photograph, folder, kind, value, operations of convert
  local photograph=$1 name
  name=$2/$(basename "${photograph%.png}")__$3__$4
  [ -e "$name"__q75.jpg ] && return
  shift 4
  convert "$photograph" "$@" "$dir/now.ppm"
  save "$dir/now.ppm" "$name"
}

factors=(1.5 1.6 1.75 1.9 2 2.2 2.5 2.8 3 3.3 3.7 4 4.6)
kernels=(Point Triangle Catrom Mitchell Lanczos)

for half in tune score; do
  out=$dir/$half
  mkdir -p "$out"
  turn=0
  for photograph in "$photographs/$half"/*.png; do
    for kernel in "${kernels[@]}"; do
      for pick in 1 2 3; do
        factor=${factors[$(((turn * 5 + pick * 4) % ${#factors[@]}))]}
        turn=$((turn + 1))
        percent=$(awk "BEGIN { printf \"%.4f\", $factor * 100 }")
        make "$photograph" "$out" "enlarged-$kernel" "$factor" -gravity center -crop 640x480+0+0 +repage -filter "$kernel" -resize "$percent%"
      done
    done
    make "$photograph" "$out" native-plain 1
    make "$photograph" "$out" native-small 1 -gravity center -crop 300x220+0+0 +repage
    make "$photograph" "$out" native-grain 4 -seed 1 -attenuate 0.4 +noise Gaussian
    make "$photograph" "$out" native-sharpened 1 -unsharp 0x1+0.8+0
    make "$photograph" "$out" native-contrast 1 -level 10%,90%
    for percent in 50 63 80; do make "$photograph" "$out" native-reduced "$percent" -filter Lanczos -resize "$percent%"; done
    for sigma in 0.8 1 1.5 2 3; do make "$photograph" "$out" blurred "$sigma" -gaussian-blur "0x$sigma"; done
    make "$photograph" "$out" native-soft-grain 2 -gaussian-blur 0x2 -seed 2 -attenuate 0.3 +noise Gaussian
  done
done
rm -f "$dir/now.ppm"
echo "tune $(ls "$dir/tune" | wc -l), score $(ls "$dir/score" | wc -l)"
