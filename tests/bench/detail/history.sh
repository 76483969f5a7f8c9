#!/usr/bin/env bash
# The labelled set of tests/bench/detail/history.cpp: photographs saved as a JPEG once and twice, on the same block
# grid and on a moved one, by many tables; and pictures that were never a JPEG, altered in many ways.
# Usage: history.sh PHOTOGRAPHS DIR     PHOTOGRAPHS as photographs.sh makes it. Takes some ten minutes, 3 GB.
#   PHOTOGRAPH__once__FIRST.jpg              saved once
#   PHOTOGRAPH__aligned__FIRST__SECOND.jpg   decoded and saved again
#   PHOTOGRAPH__moved__FIRST__SECOND.jpg     decoded, cropped by other than multiples of eight, saved again
#   PHOTOGRAPH__never__KIND.png              never saved as a JPEG
#   screen-N__screen__SAVED.ext              a picture like a screen's: windows, bars and lines of text
# FIRST and SECOND are qNN, or the name of a table. Needs imagemagick and libjpeg-turbo-progs.
set -euo pipefail
photographs=$1 dir=$2
mkdir -p "$dir/tables"

# Tables as cameras and editors write them, none of them those of T.81: invented, steps by diagonal d = u + v.
table() { # name, step of the luma as an expression of u, v, d; the same of the chroma
  awk "BEGIN { for (t = 0; t < 2; t++) for (u = 0; u < 8; u++) for (v = 0; v < 8; v++) { d = u + v
    s = t == 0 ? $2 : $3; s = int(s + 0.5); if (s < 1) s = 1; if (s > 255) s = 255
    printf \"%d%s\", s, v < 7 ? \" \" : \"\n\" } }" > "$dir/tables/$1"
}
table camera-fine '1 + 0.5 * d' '1 + d'
table camera-normal '2 + 1.2 * d' '3 + 2 * d'
table camera-basic '4 + 2.5 * d' '6 + 3 * d'
table camera-round '3 + (u * u + v * v) / 4' '4 + (u * u + v * v) / 3'
table editor-high '2 + 0.12 * d * d' '3 + 0.3 * d * d'
table editor-medium '5 + (d < 9 ? 2.2 * d : 18)' '7 + (d < 7 ? 3 * d : 20)'
table editor-low '9 + (d < 9 ? 4 * d : 34)' '12 + (d < 7 ? 5 * d : 34)'
table editor-flat '4' '6'
table editor-coarse '14 + 5 * d + u' '17 + 6 * d'

# Quality 50 leaves a table as it is.
settings() { # how a picture is saved: qNN or a table
  case $1 in q*) echo "-quality ${1#q}" ;; *) echo "-quality 50 -qtables $dir/tables/$1 -qslots 0,1,1" ;; esac
}
# Full and reduced chroma, optimised and progressive, by turns.
ways=("-sample 2x2 -optimize" "-sample 1x1" "-sample 2x2" "-sample 2x1 -progressive" "-sample 1x1 -progressive")
turn=0
save() { # ppm, setting, file
  turn=$((turn + 1))
  [ -e "$3" ] || cjpeg $(settings "$2") ${ways[$((turn % ${#ways[@]}))]} -outfile "$3" "$1"
}
never() { # photograph, name, kind, operations of convert
  local from=$1 to=$2__never__$3.png
  shift 3
  [ -e "$to" ] || convert "$from" "$@" -depth 8 -define png:compression-level=1 "PNG24:$to"
}

firsts=(q50 q60 q70 q80 q90 editor-coarse editor-low editor-medium camera-basic)
onces=(q50 q60 q70 q75 q80 q85 q87 q88 q90 q91 q92 q93 q95 q96 q97 q98 q99 q100
  camera-fine camera-normal camera-basic camera-round editor-high editor-medium editor-low editor-flat editor-coarse)

for half in tune score; do
  out=$dir/$half
  mkdir -p "$out"
  for photograph in "$photographs/$half"/*.png; do
    name=$out/$(basename "${photograph%.png}")
    [ -e "${name}__never__done" ] && continue
    convert "$photograph" "$dir/now.ppm"
    for first in "${onces[@]}"; do save "$dir/now.ppm" "$first" "${name}__once__$first.jpg"; done
    for first in "${firsts[@]}"; do
      djpeg -outfile "$dir/again.ppm" "${name}__once__$first.jpg"
      x=$((turn % 7 + 1)) y=$((turn % 4 == 0 ? 0 : turn % 5 + 2)) # a quarter of them in line with the grid
      convert "$dir/again.ppm" -crop "+$x+$y" +repage "$dir/moved.ppm"
      for second in 85 90 95 98 100; do
        case $first in q*) [ $((second - ${first#q})) -ge 5 ] || continue ;; *) [ "$second" -ge 90 ] || continue ;; esac
        save "$dir/again.ppm" "q$second" "${name}__aligned__${first}__q$second.jpg"
        save "$dir/moved.ppm" "q$second" "${name}__moved__${first}__q$second.jpg"
      done
    done
    never "$photograph" "$name" plain
    never "$photograph" "$name" grain2 -seed 1 -attenuate 0.2 +noise Gaussian
    never "$photograph" "$name" grain4 -seed 2 -attenuate 0.4 +noise Gaussian
    never "$photograph" "$name" grain9 -seed 3 -attenuate 1 +noise Gaussian
    never "$photograph" "$name" stretched -level 10%,90%
    never "$photograph" "$name" stretched-much -level 25%,75%
    never "$photograph" "$name" flattened +level 20%,80%
    never "$photograph" "$name" gamma -gamma 1.4
    never "$photograph" "$name" dark -gamma 0.6 -evaluate multiply 0.5
    never "$photograph" "$name" sharpened -unsharp 0x1+0.8+0
    never "$photograph" "$name" sharpened-much -unsharp 0x2+2+0
    never "$photograph" "$name" sharpened-grain -seed 4 -attenuate 0.2 +noise Gaussian -unsharp 0x1+1+0
    never "$photograph" "$name" soft -gaussian-blur 0x1
    never "$photograph" "$name" softer -gaussian-blur 0x3
    never "$photograph" "$name" soft-stretched -gaussian-blur 0x1.5 -level 15%,85%
    never "$photograph" "$name" reduced80 -filter Lanczos -resize 80%
    never "$photograph" "$name" reduced63 -filter Catrom -resize 63%
    never "$photograph" "$name" enlarged130 -filter Catrom -resize 130%
    never "$photograph" "$name" enlarged150 -gravity center -crop 700x525+0+0 +repage -filter Lanczos -resize 150%
    never "$photograph" "$name" enlarged200 -gravity center -crop 700x525+0+0 +repage -filter Catrom -resize 200%
    never "$photograph" "$name" enlarged300 -gravity center -crop 500x375+0+0 +repage -filter Triangle -resize 300%
    never "$photograph" "$name" doubled -gravity center -crop 700x525+0+0 +repage -filter Point -resize 200%
    never "$photograph" "$name" eightfold -gravity center -crop 150x112+0+0 +repage -filter Triangle -resize 800%
    never "$photograph" "$name" gray -colorspace Gray
    never "$photograph" "$name" few-levels -posterize 24
    never "$photograph" "$name" turned -background gray -rotate 2
    convert "${name}__never__grain4.png" "$dir/now.ppm"
    for first in q88 q95 camera-normal; do save "$dir/now.ppm" "$first" "${name}-grain__once__$first.jpg"; done
    convert "${name}__never__sharpened.png" "$dir/now.ppm"
    for first in q88 q95 camera-normal; do save "$dir/now.ppm" "$first" "${name}-sharp__once__$first.jpg"; done
    convert "${name}__never__soft.png" "$dir/now.ppm"
    for first in q88 q95 camera-normal; do save "$dir/now.ppm" "$first" "${name}-soft__once__$first.jpg"; done
    convert "${name}__never__enlarged200.png" "$dir/now.ppm"
    for first in q88 q95; do save "$dir/now.ppm" "$first" "${name}-large__once__$first.jpg"; done
    touch "${name}__never__done"
  done
done

screen() { # number, background, colour of text, points
  local out=$dir/tune name y n=0 draw=()
  [ $(($1 % 2)) -eq 0 ] || out=$dir/score
  name=$out/screen-$1__screen
  [ -e "${name}__png.png" ] && return
  for ((y = 60; y < 1030; y += $4 * 3 / 2)); do
    n=$((n + 1))
    draw+=(-annotate "+$((240 + n % 3 * 20))+$y" "Line $n of a page with words, numbers $((n * 7919 % 10007)) and signs (a, b)")
    draw+=(-annotate "+10+$y" "entry $((n * 31 % 97))")
  done
  [ $(($1 % 3)) -ne 2 ] || draw+=(\( -size 500x300 gradient:'#446688-#ddeeff' \) -geometry +860+600 -composite)
  convert -size 1400x1050 "xc:$2" -fill '#3465a4' -draw 'rectangle 0,0 1399,30' -fill '#c8c8c8' -draw 'rectangle 0,31 220,1049' \
    -fill '#9aa4b0' -draw 'roundrectangle 260,80 900,420 8,8' -fill "$3" -pointsize "$4" "${draw[@]}" -depth 8 "PNG24:${name}__png.png"
  local quality
  for quality in 92 80; do convert "${name}__png.png" ppm:- | cjpeg -quality "$quality" -outfile "${name}__q$quality.jpg"; done
}
turn=0
for points in 12 16 22; do
  for colours in '#ffffff #222222' '#f2f2f2 #222222' '#dfe7ef #101828' '#fdf6e3 #586e75' '#1e1e24 #d8dee9' '#202830 #e0e0e0'; do
    turn=$((turn + 1))
    screen "$turn" $colours "$points"
  done
done
rm -f "$dir"/{now,again,moved}.ppm
echo "tune $(ls "$dir/tune" | wc -l), score $(ls "$dir/score" | wc -l)"
