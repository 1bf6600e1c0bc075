#!/usr/bin/env bash
# Installs the Debian packages that Deadshore needs to build and run (about 0.5 GB to download, 2 GB
# on disk, most of it VTK). Asks for sudo where it is needed; does nothing where all is there.
set -euo pipefail

packages=(
  g++ cmake ninja-build pkg-config ccache
  libeigen3-dev libspectra-dev libsuitesparse-dev libopenblas-dev
  libvtk9-dev libcairo2-dev libpng-dev libpango1.0-dev libglib2.0-dev fonts-dejavu-core
  libfmt-dev libcli11-dev libtomlplusplus-dev nlohmann-json3-dev libudunits2-dev
)
if [[ "${1:-}" == --tests ]]; then
  packages+=(libgtest-dev libgmock-dev libexpat1-dev dpkg-dev poppler-utils
            chromium chromium-driver python3-selenium xvfb libgl1-mesa-dri xdotool)
fi

if [[ "${1:-}" == --clang ]]; then
  packages=(clang clang-tidy libomp-dev libclang-rt-14-dev)
fi
if [[ "${1:-}" == --coverage ]]; then
  packages=(gcovr)
fi

missing=()
for package in "${packages[@]}"; do
  dpkg-query -W -f='${Status}' "$package" 2>/dev/null | grep -q 'install ok installed' ||
    missing+=("$package")
done
[[ ${#missing[@]} -eq 0 ]] && exit 0

as_root=()
[[ $(id -u) -eq 0 ]] || as_root=(sudo)
echo "Installing: ${missing[*]}" >&2
# Another installation may hold the package manager's locks: it is waited for, ten minutes at most.
apt_get() {
  DEBIAN_FRONTEND=noninteractive "${as_root[@]}" apt-get -o DPkg::Lock::Timeout=600 -qq "$@"
}
waited=0
until message=$(apt_get update 2>&1); do
  if [[ $message != *"Could not get lock"* || $waited -ge 600 ]]; then
    echo "$message" >&2
    exit 1
  fi
  sleep 5
  waited=$((waited + 5))
done
apt_get install -y --no-install-recommends "${missing[@]}" >/dev/null
