#!/usr/bin/env bash
# Small photographs out of the examples of Debian packages, most of them packed as JPEGs and reduced by their makers: on none of
# them a bound was set. Split into halves by the checksum of their names, as in photographs.sh.
# Usage: other_photographs.sh DIR     DIR/tune and DIR/score are filled. Needs imagemagick; nothing of them is committed.
set -euo pipefail
dir=$1
. "$(dirname "$0")/packages.sh"
for package in opencv-doc visp-images-data libelementary-data qtdeclarative5-examples qtbase5-examples scratch; do fetch "$package"; done

names=(aloeL.jpg leuvenA.jpg leuvenB.jpg ela_original.jpg building.jpg graf1.png graf3.png rubberwhale1.png board.jpg basketball1.png
  messi5.jpg squirrel_cls.jpg aero1.jpg aero3.jpg home.jpg fruits.jpg baboon.jpg scenetext01.jpg scenetext02.jpg scenetext03.jpg
  scenetext04.jpg scenetext05.jpg Solvay_conference_1927_Version2_2126x1463.jpg chateau.ppm insanely_huge_test_image.jpg sky_01.jpg
  sky_03.jpg rock_01.jpg rock_02.jpg plant_01.jpg wood_01.jpg mystrale_2.jpg niagara_falls.jpg cubemap_negx.jpg cubemap_posz.jpg
  canyon.jpg forest.jpg lake.jpg tree.jpg houses.jpg
  brick-wall1.jpg train-tracks1.jpg village.jpg kitchen.jpg beach-malibu.jpg)
for wanted in "${names[@]}"; do
  file=$(find "$dir"/debs/*/ -type f -name "$wanted" | sort | head -1)
  [ -n "$file" ] || continue
  name=$(basename "${file%.*}" | tr -c 'A-Za-z0-9\n' '-')
  half=tune; [ $(($(cksum <<<"$name" | cut -d' ' -f1) % 2)) -eq 0 ] && half=score
  [ -e "$dir/$half/$name.png" ] || convert "${file}[0]" -strip -colorspace sRGB -type TrueColor -depth 8 -filter Box -resize '1280x1280>' "PNG24:$dir/$half/$name.png"
done
echo "tune $(ls "$dir/tune" | wc -l), score $(ls "$dir/score" | wc -l)"
