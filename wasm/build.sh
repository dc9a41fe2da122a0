#!/usr/bin/env bash
# Builds the browser program and the site around it:  wasm/build.sh app|tests
# "tests" also builds the doctest suite for Node. The finished site is build/web. Set-up is wasm/setup.sh.
set -euo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
scope=${1:-app}
libraries=$(bash "$root/wasm/setup.sh" "$scope")
export NODE_PATH=/usr/share/nodejs # where Debian's Emscripten finds its JavaScript parser
log=$root/build/wasm-configure.log
mkdir -p "$root/build"
if ! emcmake cmake -G Ninja -S "$root" -B "$root/build/wasm" -DCMAKE_BUILD_TYPE=Release -DGUYWRIGHT_LIBRARIES="$libraries" \
  -DGUYWRIGHT_WEB_DIR="$root/build/web" -DGUYWRIGHT_TESTS="$([[ $scope == tests ]] && echo ON || echo OFF)" >"$log" 2>&1; then
  tail -n 25 "$log" >&2
  echo "The build stopped at: configuring the browser program" >&2
  exit 1
fi
if ! ninja -C "$root/build/wasm" --quiet; then
  echo "The build stopped at: compiling the browser program" >&2
  exit 1
fi
