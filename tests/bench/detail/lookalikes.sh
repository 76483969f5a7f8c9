#!/usr/bin/env bash
# What looks like an enlargement and is none, for tests/bench/detail/upsampling.cpp: strongly packed JPEGs that were then
# reduced, so that their blocks come to less than eight pixels; pictures reduced twice, the first time roughly; drawn stripes,
# boards and grids; photographs behind a fence.
# Beside them JPEGs that were enlarged, whose blocks come to more than eight pixels: these are still to be found.
# Usage: lookalikes.sh PHOTOGRAPHS DIR     PHOTOGRAPHS as photographs.sh makes it. Takes some minutes.
# Files are called as upsampling.sh calls them; the value is the factor, what they were reduced to, or the period in pixels.
# Periods of one half are not those of the other. Needs imagemagick and libjpeg-turbo-progs.
set -euo pipefail
photographs=$1 dir=$2

turn=0
save() { # ppm, name without extension: a PNG, and a JPEG of one quality after the other
  convert "$1" -define png:compression-level=1 "$2__png.png"
  local quality
  quality=$((75 + turn % 3 * 10))
  cjpeg -quality "$quality" "$1" > "$2__q$quality.jpg"
}

packed() { # photograph, folder, quality, per cent, filter
  local name
  name=$2/$(basename "${1%.png}")-q$3-$5__native-packed__$4
  [ -e "${name}__png.png" ] && return
  convert "$1" ppm:- | cjpeg -quality "$3" | djpeg | convert - -filter "$5" -resize "$4%" "$dir/now.ppm"
  save "$dir/now.ppm" "$name"
}

twice() { # photograph, folder, first per cent, second, filter
  local name
  name=$2/$(basename "${1%.png}")-$3-$5__native-twice__$4
  [ -e "${name}__png.png" ] && return
  convert "$1" -filter "$5" -resize "$3%" -filter Lanczos -resize "$4%" "$dir/now.ppm"
  save "$dir/now.ppm" "$name"
}

enlarged() { # photograph, folder, quality, factor, filter
  local name
  name=$2/$(basename "${1%.png}")-q$3-$5__enlarged-packed__$4
  [ -e "${name}__png.png" ] && return
  convert "$1" -gravity center -crop 640x480+0+0 +repage ppm:- | cjpeg -quality "$3" | djpeg |
    convert - -filter "$5" -resize "$(awk "BEGIN { print $4 * 100 }")%" "$dir/now.ppm"
  save "$dir/now.ppm" "$name"
}

# Lines from edge to edge, `period` apart, with shades that repeat after so many; every one `wide` thick.
lines() { # period, thickness, degrees, shades...
  local period=$1 wide=$2 degrees=$3
  shift 3
  awk -v period="$period" -v wide="$wide" -v degrees="$degrees" -v list="$*" 'BEGIN {
    count = split(list, shades, " ")
    printf "translate 600,400 rotate %s stroke-width %s fill none ", degrees, wide
    for (i = 0; i * period < 1700; i++)
      printf "stroke gray(%d) line %.3f,-900 %.3f,900 ", shades[i % count + 1], i * period - 850, i * period - 850
  }'
}
drawn() { # folder, kind, period, operations of convert
  local name=$1/drawn-$2__native-$2__$3
  shift 3
  [ -e "${name}__png.png" ] && return
  convert -size 1200x800 "$@" -depth 8 "$dir/now.ppm"
  save "$dir/now.ppm" "$name"
}

qualities=(20 30 40 50 60)
roughly=(80 75 66.6667 60)
packings=(40 60 75 90)
factors=(1.5 1.6 1.75 1.9 2 2.3 2.7 3.2 4)
percents=(90 80 72 63 55 50 45 40)
filters=(Box Triangle Catrom Lanczos)
periods_tune=(5.3 6.4 8.7 11.2 14.5 19.4 27 40)
periods_score=(5.8 7.3 9.6 12.8 16.3 22.6 30 37)
shades=(120 131 96 104 160 158 122 99 140 118 171 92 150 133 109 125 90)

for half in tune score; do
  out=$dir/$half
  mkdir -p "$out"
  periods=("${periods_tune[@]}")
  [ $half = tune ] || periods=("${periods_score[@]}")
  for photograph in "$photographs/$half"/*.png; do
    for pick in 0 1 2 3 4 5 6 7; do
      turn=$((turn + 1))
      packed "$photograph" "$out" "${qualities[$(((turn + pick) % 5))]}" "${percents[$pick]}" "${filters[$((turn % 4))]}"
    done
    for pick in 0 1 2 3; do
      turn=$((turn + 1))
      twice "$photograph" "$out" "${roughly[$pick]}" "${percents[$((turn % 3))]}" "${filters[$((turn % 2))]}"
    done
    for pick in 0 1 2 3; do
      turn=$((turn + 1))
      enlarged "$photograph" "$out" "${packings[$pick]}" "${factors[$((turn % 9))]}" "${filters[$((turn % 4))]}"
    done
    turn=$((turn + 1)) period=${periods[$((turn % 8))]}
    name=$out/$(basename "${photograph%.png}")-fence__native-fence__$period
    [ -e "${name}__png.png" ] && continue
    convert "$photograph" -gravity center -crop 1200x800+0+0 +repage -draw "$(lines "$period" "$(awk "BEGIN { print $period / 3 }")" 0 60)" "$dir/now.ppm"
    save "$dir/now.ppm" "$name"
  done
  for period in "${periods[@]}"; do
    turn=$((turn + 1))
    drawn "$out" stripes "$period" xc:'gray(200)' -draw "$(lines "$period" "$(awk "BEGIN { print $period / 2 }")" 0 70)"
    drawn "$out" stripes-down "$period" xc:'gray(200)' -draw "$(lines "$period" "$(awk "BEGIN { print $period / 2 }")" 90 70)"
    drawn "$out" boards "$period" xc:'gray(128)' -draw "$(lines "$period" "$period" 0 "${shades[@]}")" \
      \( -size 1200x800 radial-gradient:white-'gray(60)' \) -compose multiply -composite
    drawn "$out" boards-grain "$period" xc:'gray(128)' -draw "$(lines "$period" "$period" 0 "${shades[@]}")" \
      -seed 3 -attenuate 0.2 +noise Gaussian
    drawn "$out" grid "$period" gradient:'gray(235)-gray(180)' -draw "$(lines "$period" 1.5 0 40)" -draw "$(lines "$period" 1.5 90 40)"
    drawn "$out" tartan "$period" xc:'gray(128)' -draw "$(lines "$period" "$period" 0 "${shades[@]}")" \
      \( -size 1200x800 xc:'gray(128)' -draw "$(lines "$period" "$period" 90 "${shades[@]}")" \) -compose multiply -composite
    drawn "$out" slanting "$period" xc:'gray(200)' -draw "$(lines "$period" "$(awk "BEGIN { print $period / 2 }")" 17 70)"
  done
done
rm -f "$dir/now.ppm"
echo "tune $(ls "$dir/tune" | wc -l), score $(ls "$dir/score" | wc -l)"
