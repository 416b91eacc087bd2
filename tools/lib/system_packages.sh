# Sourced by tools/setup: what apt installs, from the table in packages.txt. Uses $root, $deps, say, fail.

# Rows of packages.txt for a profile, as "proof package".
package_rows() {
  awk -v profile="$1" '/^#/ || NF == 0 {next} profile == "test" || $1 == "serve" {print $2, $3}' \
    "$root/tools/lib/packages.txt"
}

# Names of the packages whose proof (a command or a file) is not on this machine.
missing_packages() {
  local proof package
  while read -r proof package; do
    case "$proof" in
      /*) [ -e "$proof" ] || echo "$package" ;;
      *) command -v "$proof" >/dev/null || echo "$package" ;;
    esac
  done < <(package_rows "$1")
}

as_root() {
  if [ "$(id -u)" = 0 ]; then
    "$@"
  elif command -v sudo >/dev/null; then
    sudo "$@"
  else
    fail "not root and no sudo here; as root, run: $*"
  fi
}

apt_install() {
  as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -q --no-install-recommends \
    -o DPkg::Lock::Timeout=300 "$@" </dev/null
}

install_system_packages() {
  local -a missing
  mapfile -t missing < <(missing_packages "$1")
  [ "${#missing[@]}" -gt 0 ] || return 0
  command -v apt-get >/dev/null || fail "no apt-get here; install by hand: ${missing[*]}"
  say "installing ${missing[*]}"
  as_root apt-get update -q </dev/null || fail "apt-get update did not work; check the network and apt's sources"
  apt_install "${missing[@]}" || fail "apt could not install: ${missing[*]}; install these by hand"
  mapfile -t missing < <(missing_packages "$1")
  [ "${#missing[@]}" = 0 ] || fail "still missing after apt-get install: ${missing[*]}; install these by hand"
}

# Path of a Chromium that starts (Ubuntu's package is a wrapper that may not), or nothing.
working_chromium() {
  local candidate
  for candidate in "${WIDEGATE_CHROMIUM:-}" /usr/bin/chromium /usr/bin/chromium-browser \
    /usr/bin/google-chrome "$deps"/browsers/chromium-*/chrome-linux*/chrome; do
    if [ -n "$candidate" ] && [ -x "$candidate" ] &&
      timeout 30 "$candidate" --version --no-sandbox >/dev/null 2>&1 </dev/null; then
      echo "$candidate"
      return
    fi
  done
}

# Leaves a link to a browser at build/deps/bin/chromium, where the browser tests look.
find_or_install_chromium() {
  local found
  found="$(working_chromium)"
  if [ -z "$found" ] && apt-cache show chromium >/dev/null 2>&1; then
    say "installing chromium"
    apt_install chromium || true
    found="$(working_chromium)"
  fi
  if [ -z "$found" ]; then
    say "no Chromium package that starts here; fetching playwright's build"
    (cd "$root/tools" && PLAYWRIGHT_BROWSERS_PATH="$deps/browsers" \
      npx --no-install playwright-core install --with-deps --no-shell chromium </dev/null) || true
    found="$(working_chromium)"
  fi
  [ -n "$found" ] || fail "no Chromium: install chromium (or set WIDEGATE_CHROMIUM to its path) and run tools/setup again"
  mkdir -p "$deps/bin"
  ln -sfn "$found" "$deps/bin/chromium"
}

# True when a Firefox starts and writes into a folder of ours: a snap's wrapper may do neither.
firefox_works() {
  local folder result=1
  folder="$(mktemp -d)"
  mkdir "$folder/profile"
  timeout 90 "$1" --headless --no-remote --profile "$folder/profile" --screenshot "$folder/page.png" about:blank \
    >/dev/null 2>&1 </dev/null || true
  if [ -s "$folder/page.png" ]; then result=0; fi
  rm -rf "$folder"
  return "$result"
}

working_firefox() {
  local candidate
  for candidate in "${WIDEGATE_FIREFOX:-}" /usr/bin/firefox-esr /usr/bin/firefox; do
    if [ -n "$candidate" ] && [ -x "$candidate" ] && firefox_works "$candidate"; then
      echo "$candidate"
      return
    fi
  done
}

# Leaves a link at build/deps/bin/firefox. Not every system has the package; without it its tests are skipped.
find_or_install_firefox() {
  local found
  found="$(working_firefox)"
  if [ -z "$found" ] && apt-cache show firefox-esr >/dev/null 2>&1; then
    say "installing firefox-esr"
    apt_install firefox-esr || true
    found="$(working_firefox)"
  fi
  mkdir -p "$deps/bin"
  rm -f "$deps/bin/firefox"
  if [ -n "$found" ]; then
    ln -s "$found" "$deps/bin/firefox"
  else
    say "no Firefox that starts here; its tests will be skipped (WIDEGATE_FIREFOX may name one)"
  fi
}
