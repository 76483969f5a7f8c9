#!/usr/bin/env bash
# Installs the Debian packages that stoneproof needs. Usage: packages.sh build|tests
#   build  what compiles, installs and runs the program
#   tests  that, and what the tests compare it with
set -euo pipefail

build=(g++ cmake ninja-build pkg-config
  libpodofo-dev libqpdf-dev libopenjp2-7-dev libjbig2dec0-dev libtiff-dev libjpeg62-turbo-dev libpng-dev libgif-dev libwebp-dev libheif-dev liblcms2-dev libkissfft-dev libexif-dev libssl-dev libpugixml-dev
  libcli11-dev libfmt-dev nlohmann-json3-dev libtbb-dev libharfbuzz-dev libfontconfig-dev
  fonts-sil-gentiumplus fonts-lato fonts-dejavu-core
  libgs-common) # its CMYK profile stands for a press in the demo
tests=(catch2 libxml2-utils imagemagick libtiff-tools libopenjp2-tools libimage-exiftool-perl poppler-utils qpdf
  python3-jsonschema fonts-droid-fallback fonts-noto-cjk fonts-stix libpdfbox2-java bsh default-jre-headless git xz-utils bzip2 clang-format liblcms2-utils icc-profiles-free)

case "${1:-}" in
  build) wanted=("${build[@]}") ;;
  tests) wanted=("${build[@]}" "${tests[@]}") ;;
  *) echo "usage: packages.sh build|tests" >&2; exit 2 ;;
esac

# Where libheif keeps its codecs in packages of their own (Debian 13): the readers, and for the tests the writers.
codecs=(libheif-plugin-libde265 libheif-plugin-dav1d)
[ "$1" = build ] || codecs+=(libheif-plugin-x265 libheif-plugin-aomenc)
. /etc/os-release
[ "${VERSION_ID:-0}" -lt 13 ] || wanted+=("${codecs[@]}")

missing=()
for package in "${wanted[@]}"; do
  [ "$(dpkg-query -W -f '${db:Status-Status}' "$package" 2>/dev/null)" = installed ] || missing+=("$package")
done
[ ${#missing[@]} -eq 0 ] && exit 0
echo "Installing ${missing[*]}"
apt-get -qq update
DEBIAN_FRONTEND=noninteractive apt-get -qq install -y --no-install-recommends "${missing[@]}" >/dev/null
