#!/usr/bin/env bash
# Installs what is missing for the app (`setup.sh app`) or for the app and every test (`setup.sh tests`, the default),
# then fetches and builds SDL2 and Dear ImGui for the browser. A second run does nothing and needs no network.
# Prints nothing but the steps it takes; the last line of its output is the folder of the libraries.
set -euo pipefail

here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
cache=${GUYWRIGHT_CACHE:-$HOME/.cache/guywright}
mkdir -p "$cache"
log=$cache/setup.log

step() {
  current_step=$1
  echo "set-up: $1" >&2
}
say_where_it_stopped() {
  local code=$?
  ((code == 0)) && return
  echo "Set-up stopped at: ${current_step:-looking at the machine}" >&2
  [[ -s $log ]] && { echo "The end of $log:"; tail -n 25 "$log"; } >&2
  exit "$code"
}
trap say_where_it_stopped EXIT
fail() {
  echo "$1" >&2
  exit 1
}

# --- Debian packages -------------------------------------------------------------------------------------------------

app_packages=(ca-certificates cmake emscripten fonts-b612 fonttools g++ libglm-dev librsvg2-bin ninja-build nlohmann-json3-dev xz-utils)
test_packages=(calculix-ccx chromium clang doctest-dev libclang-rt-14-dev libnlopt-cxx-dev libnlopt-dev)

missing_packages() {
  comm -23 <(printf '%s\n' "$@" | sort -u) \
    <(dpkg-query -W -f '${Package} ${db:Status-Abbrev}\n' "$@" 2>/dev/null | awk '$2 == "ii" { print $1 }' | sort -u)
}

update_package_lists() {
  apt-get update >>"$log" 2>&1
}

install_packages() {
  local wanted=("${app_packages[@]}") missing
  [[ $1 == tests ]] && wanted+=("${test_packages[@]}")
  # Node and npm may come from elsewhere than Debian: then they are left as they are.
  command -v node >/dev/null || wanted+=(nodejs)
  command -v npm >/dev/null || wanted+=(npm)
  mapfile -t missing < <(missing_packages "${wanted[@]}")
  ((${#missing[@]})) || return 0
  step "installing Debian packages: ${missing[*]}"
  [[ $(id -u) == 0 ]] || fail "These packages are missing; install them as root: apt-get install ${missing[*]}"
  update_package_lists
  DEBIAN_FRONTEND=noninteractive apt-get -o DPkg::Lock::Timeout=300 install -y --no-install-recommends "${missing[@]}" >>"$log" 2>&1
}

# --- Source packages, fetched without touching the machine's own APT set-up --------------------------------------------

# name in the archive, version, release that has it, file, SHA-256 of that file
sdl2=(libsdl2 2.26.5+dfsg-1 bookworm libsdl2_2.26.5+dfsg.orig.tar.gz b3f2c822151804125d08db94c65852f711c2e5df2145a59da120748dc32eb9c3)
imgui=(imgui 1.90.1+ds-1 trixie imgui_1.90.1+ds.orig.tar.xz ecce377df0f90b292f15dcbd83d438bddc162b2388c881132bde18c787572a1c)

# Address of the Debian archive that this machine uses, whatever the format of its source lists.
debian_archive() {
  apt-get indextargets --format '$(SITE)|$(RELEASE)|$(ORIGIN)' 'Created-By: Packages' |
    awk -F'|' '$3 == "Debian" && $2 !~ /-/ { print $1; exit }'
}

source_apt() {
  apt-get -o Dir::Etc::sourcelist=/dev/null -o Dir::Etc::sourceparts="$work/sl" -o Dir::State::lists="$work/lists" \
    -o Dir::Cache="$work/cache" -o APT::Sandbox::User=root "$@" >>"$log" 2>&1
}

prepare_source_lists() {
  local site release
  [[ -n $(debian_archive) ]] || update_package_lists
  site=$(debian_archive)
  [[ -n $site ]] || fail "apt-get names no Debian archive: is one in the machine's APT sources?"
  mkdir -p "$work"/{lists/partial,cache/archives/partial,sl}
  # "trusted": what is believed is the SHA-256 above, checked below, not a key that may be older than the release.
  for release in "${sdl2[2]}" "${imgui[2]}"; do
    echo "deb-src [trusted=yes] $site $release main"
  done >"$work/sl/debian.list"
  source_apt update
}

# fetch_source NAME VERSION RELEASE FILE SHA256 FOLDER
fetch_source() {
  (cd "$work" && source_apt source --download-only --tar-only "$1=$2")
  echo "$5  $work/$4" | sha256sum --check --status || fail "$4 is not the pinned archive: its SHA-256 is not $5"
  mkdir -p "$6"
  tar -xf "$work/$4" -C "$6" --strip-components=1
}

build_libraries() {
  work=$libraries.part
  rm -rf "$work"
  mkdir -p "$work"
  step "fetching the sources of SDL2 ${sdl2[1]} and Dear ImGui ${imgui[1]}"
  prepare_source_lists
  fetch_source "${sdl2[@]}" "$work/out/SDL2"
  fetch_source "${imgui[@]}" "$work/out/imgui"
  step "building SDL2 and Dear ImGui for the browser"
  emcmake cmake -G Ninja -S "$here/libraries" -B "$work/build" -DCMAKE_BUILD_TYPE= \
    -DSDL2_SOURCE="$work/out/SDL2" -DIMGUI_SOURCE="$work/out/imgui" >>"$log" 2>&1
  ninja -C "$work/build" >>"$log" 2>&1
  mv "$work"/build/*.a "$work/out/"
  mv "$work/out" "$libraries"
  rm -rf "$work"
}

# --- Modules of the page and of the browser tests ------------------------------------------------------------------------

# install_modules FOLDER WHAT
install_modules() {
  local folder=$here/../$1
  cmp -s "$folder/package-lock.json" "$folder/node_modules/.lock" && return 0
  step "installing the modules of $2"
  # npm believes its own list of authorities only; the machine's list counts here as it does for everything else.
  [[ -f /etc/ssl/certs/ca-certificates.crt ]] && export NODE_EXTRA_CA_CERTS=${NODE_EXTRA_CA_CERTS:-/etc/ssl/certs/ca-certificates.crt}
  (cd "$folder" && npm ci --no-audit --no-fund --ignore-scripts --cache "$cache/npm" --prefer-offline >>"$log" 2>&1)
  cp "$folder/package-lock.json" "$folder/node_modules/.lock"
}

# --- All of it -----------------------------------------------------------------------------------------------------------

scope=${1:-tests}
[[ $scope == app || $scope == tests ]] || fail "setup.sh knows 'app' and 'tests', not '$scope'"
exec 9>"$cache/lock"
flock 9 # two set-ups at once would build into the same folder
: >"$log"
install_packages "$scope"
# Debian's Emscripten finds its JavaScript parser only here.
export NODE_PATH=/usr/share/nodejs
key=$({ dpkg-query -W emscripten && cat "$here"/libraries/* && echo "${sdl2[@]} ${imgui[@]}"; } | sha256sum | cut -c1-12)
libraries=$cache/libraries-$key
[[ -d $libraries ]] || build_libraries
install_modules web "the page"
[[ $scope == tests ]] && install_modules tests/browser "the browser tests"
echo "$libraries"
