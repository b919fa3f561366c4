# Packages, and how they are asked for. Sourced by ./bedwright and tests/run.
# shellcheck shell=bash disable=SC2034
build_packages=(
  g++ cmake ninja-build ccache
  libocct-modeling-algorithms-dev libocct-ocaf-dev libocct-data-exchange-dev libtbb-dev
  libyaml-cpp-dev libfast-float-dev libcli11-dev libfmt-dev nlohmann-json3-dev libssl-dev libeigen3-dev
  pkgconf libcairo2-dev fonts-osifont
)
test_packages=(
  clang-format clang-tidy
  libgtest-dev libgmock-dev librapidcheck-dev libbenchmark-dev
  libfontconfig-dev  # the kernel's document framework asks for it when a test links it
  python3 python3-ezdxf python3-jsonschema gdal-bin python3-gdal poppler-utils nodejs npm calculix-ccx glpk-utils
)
# What the tests browser:... need; without it they are skipped.
browser_packages=(emscripten)

# install_packages YES PACKAGE...: installs those that are missing; asks first
# unless root or YES is "yes". On a machine without dpkg it says what is needed.
install_packages() {
  local yes=$1 package missing=()
  shift
  if ! command -v dpkg-query >/dev/null; then
    echo "bedwright: this is not a Debian machine; install the like of: $*" >&2
    return 0
  fi
  for package in "$@"; do
    # A command may come from elsewhere than its Debian package.
    case $package in
      g++ | cmake | npm) command -v "$package" >/dev/null && continue ;;
      nodejs) command -v node >/dev/null && continue ;;
      ninja-build) command -v ninja >/dev/null && continue ;;
    esac
    dpkg-query -W -f '${Status}' "$package" 2>/dev/null | grep -q 'ok installed' || missing+=("$package")
  done
  [ ${#missing[@]} -eq 0 ] && return 0
  local run=()
  if [ "$(id -u)" -ne 0 ]; then
    run=(sudo)
    if [ "$yes" != yes ]; then
      echo "bedwright needs these Debian packages: ${missing[*]}" >&2
      read -r -p "Install them with sudo apt-get? [y/N] " answer || answer=n
      case $answer in y | Y | yes) ;; *)
        echo "bedwright: nothing installed; run  sudo apt-get install ${missing[*]}" >&2
        return 1
        ;;
      esac
    fi
  fi
  echo "bedwright: installing ${missing[*]}" >&2
  "${run[@]}" apt-get update -q >&2
  DEBIAN_FRONTEND=noninteractive "${run[@]}" apt-get install -y -q --no-install-recommends "${missing[@]}" >&2
}
