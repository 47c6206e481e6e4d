#!/usr/bin/env bash
# All set-up on a bare Debian 12 machine: installs what is missing, builds, then does one of
#   cards   the cards of the example book, into out/cards
#   test    every test: with g++, and again with clang under the sanitizers
# Run it from anywhere; root or sudo is needed only while packages are missing.
set -euo pipefail
cd "$(dirname "$0")/../.."

packages=(g++ clang cmake ninja-build libclang-rt-14-dev tao-pegtl-dev libfmt-dev libcmark-dev cmark doctest-dev libcli11-dev
          nlohmann-json3-dev libhowardhinnant-date-dev tzdata libbenchmark-dev units git python3 python3-jsonschema python3-icalendar minizinc z3)

install_missing() {
  local missing=()
  for package in "${packages[@]}"; do
    [ "$(dpkg-query -W -f='${db:Status-Status}' "$package" 2>/dev/null || true)" = installed ] || missing+=("$package")
  done
  [ ${#missing[@]} -eq 0 ] && return
  local as=()
  [ "$(id -u)" -eq 0 ] || as=(sudo)
  "${as[@]}" apt-get update -qq
  DEBIAN_FRONTEND=noninteractive "${as[@]}" apt-get install -y -qq --no-install-recommends "${missing[@]}"
}

build() {  # folder, then options of cmake
  local folder=$1
  shift
  cmake -S . -B "$folder" -G Ninja "$@" >"$folder.log" 2>&1 || { cat "$folder.log"; return 1; }
  cmake --build "$folder" -j 2 >>"$folder.log" 2>&1 || { tail -n 60 "$folder.log"; return 1; }
}

cards() {
  build build
  mkdir -p out/cards
  build/quartern card examples --as html --out out/cards/
  build/quartern card examples --as markdown --out out/cards/
  echo "The cards of the example book are in out/cards:"
  find out/cards -name '*.html' | sort
}

run_tests() {
  build build
  ctest --test-dir build --output-on-failure -j 2
  # The other compiler reads everything for warnings and carries the sanitizers: unoptimized it builds four times faster.
  CXX=clang++ build build-sanitize -DQTN_SANITIZE=ON -DCMAKE_BUILD_TYPE=Debug -DCMAKE_CXX_FLAGS_DEBUG="-O0 -g1"
  ctest --test-dir build-sanitize --output-on-failure -j 2
}

install_missing
case "${1:-}" in
  cards) cards ;;
  test) run_tests ;;
  *) echo "usage: $0 cards|test" >&2; exit 2 ;;
esac
