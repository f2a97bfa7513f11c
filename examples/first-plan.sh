#!/usr/bin/env bash
# Installs what the build needs (Debian packages, named first), builds bulbwright, plans the example pot.
# Usage: first-plan.sh [BUILD_FOLDER]
set -euo pipefail
root=$(cd "$(dirname "$0")/.." && pwd)
"$root/.ci/install-packages" g++ cmake ninja-build libcli11-dev nlohmann-json3-dev libfmt-dev \
  libhowardhinnant-date-dev
build=${1:-$root/build}
cmake -S "$root" -B "$build" -G Ninja -DCMAKE_BUILD_TYPE=Release -DBULBWRIGHT_TESTS=OFF -DCMAKE_UNITY_BUILD=ON >&2
cmake --build "$build" --target bulbwright >&2
"$build/bulbwright" plan "$root/examples/steps.json"
