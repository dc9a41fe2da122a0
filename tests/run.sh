#!/usr/bin/env bash
# Installs what is missing, builds everything and runs every test. The last line is "N passed, N failed".
# A suite that cannot be built or does not finish counts as one failure. Output of each suite: build/test-logs.
#   FUZZ_SECONDS=60 bash tests/run.sh   lets each fuzz target run longer than the usual 10 s
set -uo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
cd "$root" || exit 1
logs=$root/build/test-logs results=$root/build/test-logs/results
rm -rf "$results"
mkdir -p "$results"
started_suites=0
export NODE_PATH=/usr/share/nodejs # where Debian's Emscripten finds its JavaScript parser

# start COMMAND...: runs a suite beside another one. Most suites wait more than they work: two at once on two cores.
start() {
  while (($(jobs -rp | wc -l) >= 2)); do wait -n; done
  started_suites=$((started_suites + 1))
  "$@" &
}

# count NAME PASSED FAILED: notes a suite's result. No numbers, or none at all passed, failed or `skipped`: it did not run.
skipped=0
count() {
  local good=${2:-0} bad=${3:-0} left=''
  ((skipped == 0)) || left=", $skipped skipped"
  if ((good + bad + skipped == 0)); then
    bad=1
    echo "$1: did not run. The end of its output:"
    tail -n 30 "$logs/$1.log"
  fi
  echo "$good $bad" >"$results/$1"
  echo "$1: $good passed, $bad failed$left ($((SECONDS - started)) s)"
}

# run NAME LIMIT_S COMMAND...: runs a suite with its output in its log. Sets `code`.
run() {
  local name=$1 limit_s=$2
  shift 2
  started=$SECONDS
  timeout --kill-after=10 "$limit_s" "$@" >"$logs/$name.log" 2>&1
  code=$?
  ((code == 0)) || { echo "--- $name ended with code $code"; grep -E -A 12 'ERROR|error:|FAILED|^not ok|Assertion|SUMMARY' "$logs/$name.log" | head -n 120; }
}

# A suite that counted no failure and yet ended badly (a crash, the time limit) has failed.
count_counted() {
  local bad=${3:-0}
  ((code != 0 && bad == 0)) && bad=1
  count "$1" "${2:-0}" "$bad"
}

doctest_suite() {
  run "$@"
  local line
  line=$(grep -aE '^\[doctest\] test cases:' "$logs/$1.log" | tail -n 1 | tr -s ' |' ' ')
  # "[doctest] test cases: 12 12 passed 0 failed 0 skipped"
  read -r _ _ _ _ good _ bad _ <<<"$line"
  count_counted "$1" "${good:-0}" "${bad:-0}"
}

# A suite that says "N passed, N failed" itself.
counting_suite() {
  run "$@"
  local line
  line=$(grep -E '^[0-9]+ passed, [0-9]+ failed' "$logs/$1.log" | tail -n 1)
  read -r good _ bad _ <<<"$line"
  count_counted "$1" "${good:-0}" "${bad:-0}"
}

# Node's own test runner, one file at a time, so that the lines counted are the same in every version of Node.
node_suite() {
  run "$1" "$2" node --test-reporter=tap "$3"
  skipped=$(grep -c '^ok .* # SKIP' "$logs/$1.log")
  count_counted "$1" "$(grep '^ok ' "$logs/$1.log" | grep -vc ' # SKIP')" "$(grep -c '^not ok ' "$logs/$1.log")"
}

fuzz_suite() {
  local target=$1 found=$root/build/fuzz-corpus/$1 seconds=${FUZZ_SECONDS:-10}
  mkdir -p "$found" "$logs/$target"
  run "$target" $((seconds + 120)) "$root/build/fuzz/$target" -max_total_time="$seconds" -timeout=10 -rss_limit_mb=2048 -seed=1 -max_len=16384 \
    -print_final_stats=1 -artifact_prefix="$logs/$target/" "$found" assets/examples tests/plans
  count "$target" $((code == 0)) $((code != 0))
}

# build NAME COMMAND...: remembers whether it worked; suites of a failed build do not run on what an older one left.
declare -A built
build() {
  local name=$1
  shift
  started=$SECONDS
  if "$@" >"$logs/build-$name.log" 2>&1; then
    built[$name]=yes
    echo "build of $name: done ($((SECONDS - started)) s)"
  else
    echo "--- build of $name failed:"
    grep -E -A 8 'error|FAILED|stopped at' "$logs/build-$name.log" | head -n 80
  fi
}

# after_build NAME SUITE...: starts a suite when what it tests was built, and counts one failure when not.
after_build() {
  local name=$1
  shift
  if [[ ${built[$name]:-} == yes ]]; then
    start "$@"
  else
    started_suites=$((started_suites + 1))
    echo "0 1" >"$results/$2"
    echo "$2: did not run, for the build of $name failed: 0 passed, 1 failed"
  fi
}

configure_and_build() {
  local folder=$1
  shift
  cmake -G Ninja -S "$root" -B "$root/build/$folder" "$@" && ninja -C "$root/build/$folder"
}

if ! bash wasm/setup.sh tests >"$logs/set-up.log"; then
  echo "0 passed, 1 failed"
  exit 1
fi
build native configure_and_build native -DCMAKE_BUILD_TYPE=Release -DGUYWRIGHT_TESTS=ON -DGUYWRIGHT_BENCH=ON
build fuzz configure_and_build fuzz -DCMAKE_CXX_COMPILER=clang++ -DCMAKE_BUILD_TYPE=RelWithDebInfo -DGUYWRIGHT_FUZZ=ON
build wasm bash wasm/build.sh tests

after_build native doctest_suite engine-native 900 build/native/guywright_tests --no-colors
after_build wasm doctest_suite engine-wasm 900 node --no-experimental-fetch build/wasm/guywright_tests_wasm.js --no-colors
after_build native counting_suite command-line 300 node tests/command_line/run.mjs build/native/guywright
for source in tests/fuzz/*.cpp; do
  after_build fuzz fuzz_suite "fuzz_$(basename "$source" .cpp)"
done
for file in tests/web/*.test.mjs; do
  start node_suite "web-$(basename "$file" .test.mjs)" 60 "$file"
done
for file in tests/browser/*.test.mjs; do
  after_build wasm node_suite "browser-$(basename "$file" .test.mjs)" 1800 "$file"
done

wait
# a suite that was ended from outside has left no result
passed=0 failed=$((started_suites - $(find "$results" -type f | wc -l)))
for result in "$results"/*; do
  read -r good bad <"$result"
  passed=$((passed + good)) failed=$((failed + bad))
done
echo "$passed passed, $failed failed"
((failed == 0))
