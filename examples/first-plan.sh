#!/usr/bin/env bash
# Installs what the build needs (Debian packages, named first), builds bulbwright, plans the example pot.
set -euo pipefail
root=$(cd "$(dirname "$0")/.." && pwd)
"$root/.ci/install-packages" g++ cmake ninja-build libcli11-dev nlohmann-json3-dev libfmt-dev \
  libhowardhinnant-date-dev
cmake -S "$root" -B "$root/build" -G Ninja -DCMAKE_BUILD_TYPE=Release -DBULBWRIGHT_TESTS=OFF >&2
cmake --build "$root/build" --target bulbwright >&2
"$root/build/bulbwright" plan "$root/examples/steps.json"
