#!/usr/bin/env bash
# More photographs and drawn pictures out of Debian packages, not to be printed but to keep silent at and to tell apart.
# Split into halves by the checksum of their names, as in photographs.sh.
# Usage: more_photographs.sh DIR     DIR/tune and DIR/score are filled. Needs imagemagick.
set -euo pipefail
dir=$1
. "$(dirname "$0")/packages.sh"
fetch mate-backgrounds
fetch ukui-wallpapers

# Left out: other sizes of the same picture.
find "$dir"/debs/*/usr/share/backgrounds -type f \( -name '*.jpg' -o -name '*.png' \) | grep -v -E 'Elephants_|Ubuntu-Mate-(Warm|Cold|Dark)|Stripes-Dark' |
  sort | while read -r file; do
  name=$(basename "${file%.*}" | tr -c 'A-Za-z0-9\n' '-')
  half=tune; [ $(($(cksum <<<"$name" | cut -d' ' -f1) % 2)) -eq 0 ] && half=score
  [ -e "$dir/$half/$name.png" ] || convert "$file[0]" -strip -colorspace sRGB -type TrueColor -depth 8 -filter Box -resize '1280x1280>' "PNG24:$dir/$half/$name.png"
done
echo "tune $(ls "$dir/tune" | wc -l), score $(ls "$dir/score" | wc -l)"
