#!/usr/bin/env bash
# Installs what is missing, builds the benchmarks natively and for Node, runs them and prints ratios:  bash tests/bench/run.sh
set -euo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
cd "$root"
libraries=$(bash wasm/setup.sh tests)
export NODE_PATH=/usr/share/nodejs # where Debian's Emscripten finds its JavaScript parser
mkdir -p build
log=build/bench-build.log
build() {
  cmake -G Ninja -S . -B build/native -DCMAKE_BUILD_TYPE=Release -DGUYWRIGHT_BENCH=ON
  ninja -C build/native bench_verdict bench_advice bench_peers
  emcmake cmake -G Ninja -S . -B build/wasm -DCMAKE_BUILD_TYPE=Release -DGUYWRIGHT_BENCH=ON -DGUYWRIGHT_LIBRARIES="$libraries" -DGUYWRIGHT_WEB_DIR="$root/build/web"
  ninja -C build/wasm bench_verdict_wasm bench_advice_wasm
}
build >"$log" 2>&1 || {
  tail -n 30 "$log" >&2
  exit 1
}
node tests/bench/table.mjs build/native build/wasm
