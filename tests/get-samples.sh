#!/usr/bin/env bash
# Fetches real picture files and PDFs that nobody here made, by Debian package name, and unpacks only these.
# Usage: get-samples.sh DIR      (needs apt-get, dpkg-deb, tar, xz and the network; safe to run again: what is there stays)
# Gives DIR/deb-NAME/... and DIR/src-NAME/..., with each package's version in DIR/packages.txt and its licence in
# DIR/licences/. Nothing of them belongs to this project and nothing is committed.
set -euo pipefail
[ $# -eq 1 ] || { echo "usage: $0 DIR" >&2; exit 2; }
mkdir -p "$1/licences" "$1/.done"
out=$(cd "$1" && pwd)

# kind, package, what to unpack. deb: a binary package; src: the upstream archive of a source package.
packages() { cat <<'LIST'
deb golang-golang-x-image-dev */testdata/*
deb golang-1.19-src */image/testdata/* */image/png/testdata/*
deb golang-github-disintegration-imaging-dev */testdata/orientation_* */testdata/branches.*
deb golang-github-rwcarlsen-goexif-dev */exif/samples/*.jpg */exif/corrupt/* */exif/sample1.jpg */tiff/*.tif
deb librust-tiff-dev */tests/*.tif*
deb lomiri-wallpapers-16.04 */backgrounds/*.jpg
deb lomiri-wallpapers-20.04 */backgrounds/*.jpg
deb golang-github-jung-kurt-gofpdf-dev */gofpdf/pdf/[Fb]*.pdf
deb expeyes-doc-en */expeyes/doc/*.pdf
deb packaging-tutorial */packaging-tutorial*.pdf
src tiff */test/images/*
src libjpeg-turbo */testimages/*
src libpng1.6 */contrib/pngsuite/* */contrib/testpngs/*
src pillow */Tests/images/*
src pikepdf */tests/resources/*.pdf
src pypdf */resources/*.pdf
LIST
}

work=$(mktemp -d); trap 'rm -rf "$work"' EXIT

# Source packages need deb-src lines, which a usual machine lacks: a list of our own, from its configured mirrors.
source_lists() {
  [ -e "$work/apt.conf" ] && return
  mkdir -p "$work/lists/partial" "$work/cache/archives/partial"
  local key=/usr/share/keyrings/debian-archive-keyring.gpg signed=
  [ -f "$key" ] && signed="[signed-by=$key] "
  apt-get indextargets --format '$(CREATED_BY)|$(REPO_URI)|$(RELEASE)|$(COMPONENT)' | sort -u |
    awk -F'|' -v k="$signed" '$1=="Packages" && $3!~/-/ && $4=="main" {print "deb-src " k $2 " " $3 " main"}' > "$work/src.list"
  cat > "$work/apt.conf" <<CONF
Dir::Etc::SourceList "$work/src.list"; Dir::Etc::SourceParts "/dev/null"; Dir::State::Lists "$work/lists";
Dir::Cache "$work/cache"; APT::Sandbox::User "root";
CONF
  APT_CONFIG="$work/apt.conf" apt-get -qq update
}

# Each leaves its archive's name in `archive`.
get_deb() { # package globs...
  local name=$1; shift
  apt-cache show "$name" >/dev/null 2>&1 || apt-get -qq update
  (cd "$work" && apt-get -qq -o APT::Sandbox::User=root download "$name" >/dev/null)
  archive=$(echo "$work/$name"_*.deb)
  mkdir -p "$out/deb-$name"
  # tar gives 2 when one of several patterns meets nothing; whether anything came is asked below.
  dpkg-deb --fsys-tarfile "$archive" | tar -x -C "$out/deb-$name" --wildcards "$@" 2>/dev/null || true
  dpkg-deb --fsys-tarfile "$archive" | tar -xO --wildcards "./usr/share/doc/$name/copyright" > "$out/licences/deb-$name" 2>/dev/null || true
}
get_src() { # package globs...
  local name=$1; shift
  source_lists
  (cd "$work" && APT_CONFIG="$work/apt.conf" apt-get -qq source --download-only --tar-only "$name" >/dev/null)
  archive=$(ls "$work/$name"_*.orig.tar.* | grep -v '\.asc$' | head -1)
  mkdir -p "$out/src-$name"
  tar -x -f "$archive" -C "$out/src-$name" --strip-components=1 --wildcards "$@" 2>/dev/null || true
  tar -xO -f "$archive" --wildcards '*/LICEN*' '*/COPYING*' > "$out/licences/src-$name" 2>/dev/null || true
}

failed=()
while read -r kind name globs; do
  [ -e "$out/.done/$kind-$name" ] && continue
  echo "fetching $kind $name" >&2
  set -f; patterns=($globs); set +f
  if "get_$kind" "$name" "${patterns[@]}" </dev/null && [ -n "$(find "$out/$kind-$name" -type f -print -quit)" ]; then
    basename "$archive" >> "$out/packages.txt"
    touch "$out/.done/$kind-$name"
  else
    failed+=("$name")
  fi
done < <(packages)
[ ${#failed[@]} -eq 0 ] || { echo "not fetched: ${failed[*]}" >&2; exit 1; }
