#!/usr/bin/env bash
# What a packager relies on: flags are kept, a prefix and DESTDIR are obeyed, the licences of the data that is
# compiled in come along, and a project that includes this one gets no tests of it.
# Usage: install.sh PROGRAM SOURCES BUILD
set -u
root=$2 build=$3
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
faults=0
fail() { echo "$*"; faults=1; }

cmake --install "$build" --prefix "$work/prefix" >"$work/log" || fail "install: $(cat "$work/log")"
while read -r from to; do
  cmp "$root/$from" "$work/prefix/$to" || fail "$to is not $from"
done <<'FILES'
LICENSE share/doc/bulbwright/LICENSE
data/places.LICENSE.md share/doc/bulbwright/places.LICENSE.md
data/places_dense/LICENSE.md share/doc/bulbwright/places_dense.LICENSE.md
data/SOURCES.md share/doc/bulbwright/SOURCES.md
docs/man/bulbwright.1 share/man/man1/bulbwright.1
FILES
[ -x "$work/prefix/bin/bulbwright" ] || fail "no program is installed"

DESTDIR="$work/stage" cmake --install "$build" --prefix /opt/somewhere >"$work/log" || fail "DESTDIR: $(cat "$work/log")"
diff <(cd "$work/prefix" && find . | sort) <(cd "$work/stage/opt/somewhere" && find . | sort) ||
  fail "DESTDIR gets other files than a prefix"
[ "$(cd "$work/stage" && echo *)" = opt ] || fail "files beside DESTDIR's prefix"
grep -rIl "$work" "$work/stage" && fail "an installed text names the folder of the staging"

cmake -S "$root" -B "$work/flags" -G Ninja -DCMAKE_BUILD_TYPE=Release -DCMAKE_CXX_FLAGS_RELEASE="-O3 -g1" \
  -DCMAKE_CXX_FLAGS=-fstack-protector-strong -DBULBWRIGHT_TESTS=OFF >"$work/log" 2>&1 || fail "configure: $(cat "$work/log")"
grep -q '"command".*-fstack-protector-strong -O3 -g1 .*quantity.cpp' "$work/flags/compile_commands.json" || fail "flags are not kept"
grep -q -- ' -O2 ' "$work/flags/compile_commands.json" && fail "-O2 beside the packager's -O3"

mkdir "$work/outer"
cat >"$work/outer/CMakeLists.txt" <<OUTER
cmake_minimum_required(VERSION 3.25)
project(outer CXX)
add_subdirectory("$root" bulbwright)
OUTER
cmake -S "$work/outer" -B "$work/outer/build" -G Ninja >"$work/log" 2>&1 || fail "as part of another: $(cat "$work/log")"
grep -q bulbwright_tests "$work/outer/build/build.ninja" && fail "another project gets the tests"
grep -q libbulbwright "$work/outer/build/build.ninja" || fail "another project does not get the library"
exit "$faults"
