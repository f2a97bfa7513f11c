#!/usr/bin/env bash
# Installs what building and testing need, builds, and runs all tests through ctest.
set -euo pipefail
root=$(cd "$(dirname "$0")/.." && pwd)
"$root/.ci/install-packages" g++ cmake ninja-build libcli11-dev nlohmann-json3-dev libfmt-dev \
  libhowardhinnant-date-dev catch2 libboost-dev python3 python3-jsonschema python3-numpy
cmake -S "$root" -B "$root/build" -G Ninja -DCMAKE_BUILD_TYPE=Release -DBULBWRIGHT_TESTS=ON >&2
cmake --build "$root/build" >&2
ctest --test-dir "$root/build" -j "$(nproc)" --output-on-failure --no-tests=error
