# Sourced by the scripts that take photographs out of Debian packages; `dir` is the folder that they fill.
mkdir -p "$dir"/{debs,tune,score}

# Unpacks a package into $dir/debs/NAME, once. Needs apt-get and the network.
fetch() { # package
  [ -d "$dir/debs/$1" ] && return
  (cd "$dir/debs" && apt-get download -q "$1" >/dev/null 2>&1)
  mkdir "$dir/debs/$1"
  dpkg-deb -x "$dir"/debs/"$1"_*.deb "$dir/debs/$1"
}
