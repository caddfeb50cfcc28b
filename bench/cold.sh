#!/usr/bin/env bash
# Times the program as it is started: one dance from a cold process, 1,000 different dances on one core, and 100 sheets as PDF.
# Prints the best and the middle of several, the limits, and a reference from the same minute. Fails when a limit is not kept.
set -eu
cd "$(dirname "${BASH_SOURCE[0]}")/.."

rounds=${1:-9}
dances=$(mktemp -d)
sheets=$(mktemp -d)
trap 'rm -rf "$dances" "$sheets"' EXIT

export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1
dotnet run --project bench/Bench -c Release -- dances "$dances" 1000
# a build, if one is due, is not what is timed
./scuff --version >/dev/null

one_core() { if command -v taskset >/dev/null; then taskset -c 0 "$@"; else "$@"; fi; }

# seconds ROUNDS COMMAND...: best, middle, and the processor time of the best; an end with 1 only says that a dance is not clean
seconds() {
  local times=$1 TIMEFORMAT='%R %U %S'
  shift
  for ((i = 0; i < times; i++)); do
    { time { "$@" >/dev/null 2>&1 || [ $? -eq 1 ]; }; } 2>&1
  done | sort -n | awk '{ t[NR] = $1; c[NR] = $2 + $3 } END { printf "%.3f %.3f %.3f", t[1], t[int((NR + 1) / 2)], c[1] }'
}

kept=0
# row NAME LIMIT ROUNDS COMMAND...
row() {
  local name=$1 limit=$2 times=$3 best middle processor
  shift 3
  read -r best middle processor <<<"$(seconds "$times" "$@")"
  printf '%-44s best %s s, middle %s s, processor %s s, limit %s\n' "$name" "$best" "$middle" "$processor" "$limit"
  if [ "$limit" != none ] && awk "BEGIN { exit !($best > $limit) }"; then kept=1; fi
}

echo "cores $(nproc), load $(cut -d' ' -f1-3 /proc/loadavg 2>/dev/null || echo unknown), .NET $(dotnet --version), $(date -u +%F)"
row 'reference: dotnet --version' none "$rounds" dotnet --version
row './scuff check, one dance, cold process' 0.35 "$rounds" ./scuff check demo/dances/lighthouse-keeper.dance
row './scuff check, 1,000 dances, one core' 2.5 "$(((rounds + 1) / 2))" one_core ./scuff check "$dances"
row './scuff sheet --format pdf, one dance' none "$rounds" ./scuff sheet --format pdf --output "$sheets" demo/dances/lighthouse-keeper.dance
row './scuff sheet --format pdf, 100 dances' 6 "$(((rounds + 1) / 2))" ./scuff sheet --format pdf --output "$sheets" "$dances"/00*.dance "$dances"/0100.dance
exit "$kept"
