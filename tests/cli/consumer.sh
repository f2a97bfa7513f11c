#!/usr/bin/env bash
# The library as others get it: installed into a folder of its own, found by find_package, used by a
# project that sees nothing of this one. Its plan is the program's, byte for byte.
# Usage: consumer.sh PROGRAM SOURCES BUILD
set -euo pipefail
program=$1 root=$2 build=$3
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cmake --install "$build" --prefix "$work/prefix" > "$work/install.log"
cmake -S "$root/tests/consumer" -B "$work/consumer" -DCMAKE_BUILD_TYPE=Debug \
  -DCMAKE_PREFIX_PATH="$work/prefix" -DCMAKE_CXX_FLAGS="-Wall -Wextra -Wpedantic -Werror ${SANITIZERS:+-fsanitize=$SANITIZERS}" > "$work/configure.log"
cmake --build "$work/consumer" > "$work/build.log" || { cat "$work/build.log"; exit 1; }
"$work/consumer/consumer" "$root/examples/steps.json" > "$work/library.json" 2> "$work/said"
"$program" plan "$root/examples/steps.json" --format json > "$work/program.json"
cmp "$work/library.json" "$work/program.json"
version=$("$program" --version | grep -oE '[0-9]+\.[0-9]+\.[0-9]+' | head -n 1)
grep -qx "$version [0-9]* [0-9]*" "$work/said" || { cat "$work/said"; exit 1; }
# Nothing of the rooms is installed: the headers are those of include/ and stand alone.
diff <(cd "$root/include" && find . -name '*.hpp' | sort) <(cd "$work/prefix/include" && find . -name '*.hpp' | sort)
for header in "$root"/include/bulbwright/*.hpp; do
  echo "#include <bulbwright/$(basename "$header")>" |
    "${CXX:-c++}" -std=c++20 -Wall -Wextra -Wpedantic -Werror -fsyntax-only -x c++ -I "$work/prefix/include" -
done
test -s "$work/prefix/share/doc/bulbwright/places.LICENSE.md"
