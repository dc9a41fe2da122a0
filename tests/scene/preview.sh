#!/usr/bin/env bash
# Pictures of the scene for looking at: preview.sh FOLDER [NAME, WIDTHxHEIGHT or NAME_WIDTHxHEIGHT ...].
# Needs what `wasm/setup.sh app` leaves on the machine.
set -euo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
imgui=$("$root/wasm/setup.sh" app | tail -n 1)/imgui
build=${GUYWRIGHT_CACHE:-$HOME/.cache/guywright}/scene-preview
mkdir -p "$build" "$1"
flags=(-std=c++20 -g -O2 -I"$root" -isystem "$imgui" -DIMGUI_USER_CONFIG="\"$root/wasm/libraries/imgui_config.h\"")
own=(-Wall -Wextra -Wconversion -Wshadow -Werror)
for source in "$imgui"/{imgui,imgui_draw,imgui_tables,imgui_widgets}.cpp "$root"/wasm/scene/*.cpp "$root"/tests/scene/preview.cpp; do
  object=$build/$(basename "$source" .cpp).o
  [[ $source == "$imgui"/* && -f $object ]] && continue
  extra=()
  [[ $source == "$root"/wasm/* ]] && extra=("${own[@]}")
  nice g++ "${flags[@]}" "${extra[@]}" -c "$source" -o "$object"
done
g++ "$build"/*.o -o "$build/preview"
"$build/preview" /usr/share/fonts/opentype/b612/B612-Regular.otf "$@"
