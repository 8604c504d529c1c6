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
need chromium chromium
need nginx nginx
need cc gcc
[ -e /usr/include/cvode/cvode.h ] || needs+=(libsundials-dev)
[ -e /usr/include/seccomp.h ] || needs+=(libseccomp-dev)
need systemd-analyze systemd
need g++ g++
if [ ${#needs[@]} -gt 0 ]; then
  echo "installing: ${needs[*]}"
  apt-get update -qq && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "${needs[@]}" >/dev/null \
    || { echo "could not install ${needs[*]}"; exit 1; }
fi

dotnet restore --locked-mode || exit 1
dotnet build -c Release --no-restore || exit 1

# A project that hangs is ended and counts as failed; the long run has kills by the thousand.
limit=30m
[ "$FERMENTWATCH_TESTS_LONG" = 1 ] && limit=8h

passed=0 failed=0
for project in tests/*.Tests/*.Tests.csproj; do
  name=$(basename "$project" .csproj)
  log=$(mktemp)
  timeout --kill-after=30s "$limit" dotnet test "$project" -c Release --no-build --logger "console;verbosity=normal" 2>&1 | tee "$log" | grep -vE '^\s+Passed ' || true
  line=$(grep -E '^\s*(Passed|Failed): ' "$log" || true)
  p=$(sed -nE 's/^\s*Passed: ([0-9]+).*/\1/p' "$log" | tail -n 1)
  f=$(sed -nE 's/^\s*Failed: ([0-9]+).*/\1/p' "$log" | tail -n 1)
  if [ -z "$line" ] || ! grep -qE '^Test Run (Successful|Failed)' "$log"; then
    echo "$name ended without a result"
    f=$(( ${f:-0} + 1 ))
  fi
  passed=$(( passed + ${p:-0} ))
  failed=$(( failed + ${f:-0} ))
  rm -f "$log"
done

echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ] && [ "$passed" -gt 0 ]
