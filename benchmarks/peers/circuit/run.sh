#!/usr/bin/env bash
# Builds the peer, then times our circuits and it in one run.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
built=$(mktemp -d)
trap 'rm -rf "$built"' EXIT
gcc -O3 -march=native -ffast-math -fopenmp-simd -c "$here/rough_pipes.c" -o "$built/rough_pipes.o"
gcc -O3 -march=native -I/usr/include/suitesparse -o "$built/circuit" "$here/circuit.c" "$built/rough_pipes.o" \
  -lsundials_kinsol -lsundials_sunlinsolklu -lsundials_sunlinsoldense -lsundials_sunmatrixsparse -lsundials_sunmatrixdense -lsundials_nvecserial -lklu -lmvec -lm
dotnet run -c Release --project "$here/../../Thoubook.Benchmarks" -- circuits --peer "$built/circuit"
