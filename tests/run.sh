#!/usr/bin/env bash
# Installs what is missing, builds, runs every test project, and closes with 'N passed, N failed'.
# --long runs the full kill, fault, fuzz and calibration counts; without it the counts are reduced.
set -uo pipefail
cd "$(dirname "$0")/.."

export FERMENTWATCH_TESTS_LONG=0
[ "${1:-}" = "--long" ] && export FERMENTWATCH_TESTS_LONG=1
export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1

needs=()
need() { command -v "$1" >/dev/null 2>&1 || [ -x "/usr/sbin/$1" ] || needs+=("$2"); }
need mosquitto mosquitto
need mosquitto_pub mosquitto-clients
need victoria-metrics victoria-metrics
need influxd influxdb
need chromium chromium
need nginx nginx
need cc gcc
[ -e /usr/include/cvode/cvode.h ] || needs+=(libsundials-dev)
[ -e /usr/include/seccomp.h ] || needs+=(libseccomp-dev)
need systemd-analyze systemd
need g++ g++
need npm npm
if [ ${#needs[@]} -gt 0 ]; then
  echo "installing: ${needs[*]}"
  apt-get -o DPkg::Lock::Timeout=300 update -qq && DEBIAN_FRONTEND=noninteractive apt-get -o DPkg::Lock::Timeout=300 install -y -qq --no-install-recommends "${needs[@]}" >/dev/null \
    || { echo "could not install ${needs[*]}"; exit 1; }
fi

dotnet restore --locked-mode || exit 1
# One compiler for all projects, which is told to end: it would keep this script's output open.
UseSharedCompilation=true dotnet build -c Release --no-restore || exit 1
dotnet build-server shutdown --vbcscompiler >/dev/null 2>&1

# A project that hangs is ended and counts as failed; the long run has kills by the thousand.
export limit=45m
[ "$FERMENTWATCH_TESTS_LONG" = 1 ] && limit=8h
results=$(mktemp -d)
export results

# One project: its log is shown whole when it has ended, and 'passed failed' is left in a file of its name.
run_project() {
  local name log passed failed
  name=$(basename "$1" .csproj)
  log=$results/$name.log
  timeout --kill-after=30s "$limit" dotnet test "$1" -c Release --no-build --logger "console;verbosity=normal" >"$log" 2>&1 || true
  passed=$(sed -nE 's/^\s*Passed: ([0-9]+).*/\1/p' "$log" | tail -n 1)
  failed=$(sed -nE 's/^\s*Failed: ([0-9]+).*/\1/p' "$log" | tail -n 1)
  if [ -z "$passed$failed" ] || ! grep -qE '^Test Run (Successful|Failed)' "$log"; then
    echo "$name ended without a result" >>"$log"
    failed=$(( ${failed:-0} + 1 ))
  fi
  flock "$results" grep -vE '^\s+Passed ' "$log"
  # What failed is said once more at the very end: a log of this length is often kept by its tail alone.
  awk '/^ +Failed /{n=25} /^ +(Passed|Skipped) /{n=0} n-- > 0' "$log" >"$results/$name.failures"
  echo "${passed:-0} ${failed:-0}" >"$results/$name.counts"
}
export -f run_project

# Two at a time, the long ones first: most of their time is waiting for processes that they started.
longest=(Browser Scenario Service)
projects=("${longest[@]/#/tests/FermentWatch.}")
projects=("${projects[@]/%/.Tests}")
for folder in tests/*.Tests; do [[ " ${projects[*]} " == *" $folder "* ]] || projects+=("$folder"); done
for folder in "${projects[@]}"; do echo "$folder/$(basename "$folder").csproj"; done | xargs -P 2 -I {} bash -c 'run_project {}'

passed=0 failed=0
for folder in "${projects[@]}"; do
  read -r p f 2>/dev/null <"$results/$(basename "$folder").counts" || { p=0 f=1; echo "$(basename "$folder") did not run"; }
  passed=$(( passed + p ))
  failed=$(( failed + f ))
done
cat "$results"/*.failures
rm -rf "$results"

echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ] && [ "$passed" -gt 0 ]
