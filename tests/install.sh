# What the tests need beside what building needs. Sourced by tests/run and .ci/run, with
# the top folder in `top`.
# shellcheck shell=bash disable=SC2034,SC2154
# shellcheck source=src/packages.sh
. "$top/src/packages.sh"
test_packages=(
  clang-format clang-tidy
  libgtest-dev libgmock-dev librapidcheck-dev libbenchmark-dev
  python3 python3-ezdxf python3-yaml python3-jsonschema gdal-bin python3-gdal poppler-utils nodejs npm calculix-ccx glpk-utils
  slurm-wlm munge  # offer:slurm, a cluster of one
  strace  # records:failing_calls, system calls that fail
  zbar-tools librsvg2-bin  # program:code_on_paper, what a phone reads off a sheet
  dpkg-dev man-db  # program:package, what the Debian package holds
)
# What the tests browser:... need; without it they are skipped.
browser_packages=(emscripten)
