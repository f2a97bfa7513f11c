# What a whole-program test begins with: `. work_folder.bash` with its arguments, the program and the source folder.
# It works in a folder of its own that goes with it, and ends with [ $failures -eq 0 ].
set -u
program=$1 source=$2
work=$(mktemp -d) && trap 'rm -rf "$work"' EXIT
failures=0
fail() { echo "FAIL: $*"; failures=$((failures + 1)); }
cd "$work" || exit 1
export LC_ALL=C.UTF-8
