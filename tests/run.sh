#!/usr/bin/env bash
# Everything that a change must pass, on a fresh Debian 12 machine: packages, sample files, a build with warnings as
# errors, all tests, and those that are given files, or pixels, again under the address and undefined-behaviour sanitizers.
# Builds into build/ and build-sanitize/; a second run builds only what changed.
set -euo pipefail
cd "$(dirname "$0")/.."
jobs=$(nproc)

bash .ci/packages.sh tests
bash tests/get-samples.sh build/samples
export STONEPROOF_SAMPLES=$PWD/build/samples

cmake -G Ninja -S . -B build -DSTONEPROOF_DEVELOPER=ON -DSTONEPROOF_TESTS=ON -DCMAKE_BUILD_TYPE=RelWithDebInfo \
  -DCMAKE_CXX_FLAGS_RELWITHDEBINFO="-O2 -DNDEBUG"
cmake --build build -j "$jobs" --target all make_demo
ctest --test-dir build -j "$jobs" --no-tests=error --output-on-failure

cmake -G Ninja -S . -B build-sanitize -DSTONEPROOF_DEVELOPER=ON -DSTONEPROOF_SANITIZE=ON -DSTONEPROOF_TESTS=ON \
  -DCMAKE_BUILD_TYPE=Debug -DCMAKE_CXX_FLAGS_DEBUG="-O1 -g1"
cmake --build build-sanitize -j "$jobs"
ctest --test-dir build-sanitize -j "$jobs" --no-tests=error --output-on-failure
