# SPDX-License-Identifier: GPL-3.0-or-later
# What the project needs of Debian 12 or newer, by package name. Sourced by app/run and tests/run.
build_packages="g++ cmake ninja-build qt6-base-dev libqt6charts6-dev libqt6svg6-dev qt6-tools-dev qt6-tools-dev-tools
  qt6-l10n-tools libqt6opengl6-dev libgl-dev libsqlitecpp-dev libsqlite3-dev libboost-dev tao-pegtl-dev libexpected-dev libfmt-dev
  nlohmann-json3-dev libcli11-dev libcsv-dev libglpk-dev libxlsxwriter-dev libpng-dev libzip-dev libpugixml-dev
  libgumbo-dev libcmark-dev libuchardet-dev"
run_packages="qt6-qpa-plugins libqt6svg6 fonts-noto-core"
test_packages="libgtest-dev libgmock-dev librapidcheck-dev units sqlite3 mold"
long_packages="clang clang-tidy clang-format libclang-rt-14-dev libbenchmark-dev"

is_installed() {
  dpkg-query -W -f='${Status}' "$1" 2>/dev/null | grep -q 'ok installed'
}

# Newer releases renamed a few packages; the first name that is known is taken.
known_name() {
  case "$1" in
    libqt6charts6-dev) alternatives="libqt6charts6-dev qt6-charts-dev" ;;
    libqt6svg6-dev) alternatives="libqt6svg6-dev qt6-svg-dev" ;;
    libclang-rt-14-dev) alternatives="libclang-rt-14-dev libclang-rt-dev" ;;
    *) alternatives="$1" ;;
  esac
  for name in $alternatives; do
    if is_installed "$name"; then return; fi
  done
  for name in $alternatives; do
    if apt-cache show "$name" >/dev/null 2>&1; then echo "$name"; return; fi
  done
  echo "$1"
}

install_missing() {
  wanted=""
  for package in "$@"; do is_installed "$package" || wanted="$wanted $package"; done
  [ -n "$wanted" ] || return 0
  root=""
  [ "$(id -u)" -eq 0 ] || root="sudo"
  $root apt-get update -qq
  missing=""
  for package in $wanted; do missing="$missing $(known_name "$package")"; done
  [ -n "$(echo $missing)" ] || return 0
  echo "installing:$missing"
  DEBIAN_FRONTEND=noninteractive $root apt-get install -y --no-install-recommends $missing
}
