#!/usr/bin/env bash
# Installs what is missing, builds the app and serves it on this machine; the last line printed is the address.
# PORT=1234 bash web/serve.sh takes another port.
set -euo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
bash "$root/wasm/build.sh" app
exec node "$root/web/serve.mjs" "$root/build/web"
