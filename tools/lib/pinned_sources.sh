# Sourced by tools/setup: libraries that come as sources, each pinned by a hash, each by two routes:
# Debian's source package (through apt, in a private state folder, the system's own configuration
# untouched), then the upstream repository. Uses $deps, say, fail.

# name: Debian source package | wanted upstream version | sha256 of the .orig tarball | git address | git commit
pinned_row() {
  case "$1" in
    imgui)
      echo "imgui|1.92.2b|e7bd201d56b5ee90d24d5dac85e5c12f98bdb95410252a62d27b7f89e4566d48|https://github.com/ocornut/imgui.git|45acd5e0e82f4c954432533ae9985ff0e1aad6d5"
      ;;
    qrcodegen)
      echo "qr-code-generator|1.8.0|2ec0a4d33d6f521c942eeaf473d42d5fe139abcfa57d2beffe10c5cf7d34ae60|https://github.com/nayuki/QR-Code-generator.git|720f62bddb7226106071d4728c292cb1df519ceb"
      ;;
  esac
}

# Debian mirrors to ask: those that the machine's own configuration names (deb822 or classic sources), and no other.
debian_mirrors() {
  {
    sed -n 's/^URIs:[[:space:]]*//p' /etc/apt/sources.list.d/*.sources 2>/dev/null | tr ' ' '\n'
    cat /etc/apt/sources.list /etc/apt/sources.list.d/*.list 2>/dev/null |
      sed -nE 's/^deb(-src)?[[:space:]]+(\[[^]]*\][[:space:]]+)?([^[:space:]]+).*/\3/p'
  } | sed 's:/*$::' | grep -E '/debian$' || true
}

# apt-get or apt-cache with every path it writes to inside $deps/apt.
private_apt() {
  local tool="$1"
  shift
  "$tool" -qq -o Dir::State="$deps/apt" -o Dir::State::lists="$deps/apt/lists" \
    -o Dir::State::status=/var/lib/dpkg/status -o Dir::Cache="$deps/apt/cache" \
    -o Dir::Etc::SourceList=/dev/null -o Dir::Etc::SourceParts="$deps/apt/parts" \
    -o APT::Sandbox::User=root "$@" </dev/null
}

# Points the private apt at one mirror and suite; quick when it already is. An index past its day will do: what is
# fetched is pinned by its hash.
private_apt_update() {
  local mirror="$1" suite="$2" keyring=/usr/share/keyrings/debian-archive-keyring.gpg
  if [ ! -e "$keyring" ]; then apt_install debian-archive-keyring || return 1; fi
  [ "$(cat "$deps/apt/current" 2>/dev/null)" = "$mirror $suite" ] && return 0
  mkdir -p "$deps/apt"/{lists/partial,cache/archives/partial,parts}
  printf 'Types: deb-src\nURIs: %s\nSuites: %s\nComponents: main\nSigned-By: %s\n' \
    "$mirror" "$suite" "$keyring" >"$deps/apt/parts/debian.sources"
  private_apt apt-get -o Acquire::Check-Valid-Until=false update || return 1
  echo "$mirror $suite" >"$deps/apt/current"
}

has_hash() { [ -f "$1" ] && [ "$(sha256sum <"$1" | cut -d' ' -f1)" = "$2" ]; }

# The .orig tarball of a pinned source into $3, if some suite of some mirror still has it.
fetch_tarball() {
  local package="$1" version="$2" file="$3" hash="$4" mirror suite full got
  for mirror in $(debian_mirrors | awk '!seen[$0]++'); do
    for suite in sid forky trixie bookworm; do
      private_apt_update "$mirror" "$suite" || continue
      full="$(private_apt apt-cache showsrc --only-source "$package" 2>/dev/null |
        sed -n 's/^Version: //p' | grep -F -m1 "$version" || true)"
      [ -n "$full" ] || continue
      rm -rf "$deps/apt/download" && mkdir -p "$deps/apt/download"
      (cd "$deps/apt/download" &&
        private_apt apt-get source --download-only --tar-only "$package=$full" >/dev/null) || continue
      got="$(find "$deps/apt/download" -name '*.orig.tar.*' | head -n1)"
      if has_hash "$got" "$hash"; then
        mkdir -p "$(dirname "$file")"
        mv "$got" "$file.part" && mv "$file.part" "$file"
        return 0
      fi
      say "$package $full from $mirror is not the pinned tarball; looking further"
    done
  done
  return 1
}

# Upstream's repository at one commit, into the folder $1. The commit's name is itself a hash.
fetch_commit() {
  rm -rf "$1" && mkdir -p "$1"
  git -C "$1" init -q && git -C "$1" fetch -q --depth 1 "$2" "$3" </dev/null &&
    git -C "$1" checkout -q FETCH_HEAD && [ "$(git -C "$1" rev-parse HEAD)" = "$3" ]
}

# Copies what the build uses from an unpacked source tree $2 into build/deps/$1.
keep_parts() {
  local from="$2" to="$deps/$1"
  rm -rf "$to" && mkdir -p "$to"
  case "$1" in
    imgui) cp -r "$from"/im*.cpp "$from"/im*.h "$from"/LICENSE.txt "$from"/backends "$to/" ;;
    qrcodegen)
      cp "$from"/c/qrcodegen.c "$from"/c/qrcodegen.h "$to/"
      # The licence stands in the source file's own first comment.
      sed -n '/^\/\*/,/\*\//p;/\*\//q' "$from/c/qrcodegen.c" >"$to/LICENCE.txt"
      ;;
  esac
}

# Puts one pinned library into build/deps; the tarball is kept in the user's cache for other clones.
stage_pinned_source() {
  local name="$1" package version hash address commit tarball work="$deps/unpacked"
  IFS='|' read -r package version hash address commit < <(pinned_row "$name")
  [ "$(cat "$deps/$name/.pinned" 2>/dev/null)" = "$hash $commit" ] && return 0
  say "$name $version"
  tarball="${XDG_CACHE_HOME:-$HOME/.cache}/widegate/${package}_$version.orig.tar"
  rm -rf "$work" && mkdir -p "$work"
  if has_hash "$tarball" "$hash" || fetch_tarball "$package" "$version" "$tarball" "$hash"; then
    tar -xf "$tarball" -C "$work" --strip-components=1
  elif ! fetch_commit "$work" "$address" "$commit"; then
    fail "$name $version is in no suite of this machine's mirrors and $address does not answer: put its source archive (SHA-256 $hash) at $tarball and run tools/setup again"
  fi
  keep_parts "$name" "$work"
  rm -rf "$work"
  echo "$hash $commit" >"$deps/$name/.pinned"
}
