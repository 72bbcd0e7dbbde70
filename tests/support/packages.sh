# Read by the scripts that build: which Debian packages they need, and how to get those that are missing. One place, so
# that a new library is one word here.

packages_to_build=(
  cmake ninja-build g++ pkg-config git
  libcairo2-dev libharfbuzz-dev libfreetype-dev libxml2-dev libtomlplusplus-dev libcmark-dev libcli11-dev
  libunibreak-dev libzip-dev libxxhash-dev libqrencode-dev librsvg2-dev zlib1g-dev nlohmann-json3-dev libcpp-httplib-dev
  fonts-noto-core fonts-sil-charis fonts-inter fonts-dejavu-core
)
packages_to_test=(
  catch2 libtinyxml2-dev libxml2-utils poppler-utils qpdf libqpdf-dev python3-jsonschema make parallel zbar-tools
  chromium zsh fish mandoc
)
packages_for_slow_checks=(
  clang-tidy clang libclang-rt-14-dev cppcheck debootstrap libbenchmark-dev dpkg-dev file
)

# Prints those of the named packages that are not installed.
missing_packages() {
  local installed
  # dpkg-query fails where it knows nothing of a name, which is just what is asked here.
  installed=" $(dpkg-query --show --showformat='${db:Status-Status}=${Package} ' "$@" 2>/dev/null || true)"
  local package
  for package in "$@"; do
    [[ $installed == *" installed=$package "* ]] || printf '%s\n' "$package"
  done
}

# Runs a command as root: straight, or by sudo.
as_root() {
  if [[ $EUID -eq 0 ]]; then
    "$@"
  elif command -v sudo >/dev/null; then
    sudo "$@"
  else
    echo "error: to install packages, run this as root:  $*" >&2
    return 1
  fi
}

# Installs those of the named packages that are missing, and does nothing where none is.
install_missing() {
  if ! command -v dpkg-query >/dev/null; then
    echo "This is no Debian, so nothing is installed; needed are what Debian calls: $*" >&2
    return 0
  fi
  local missing
  mapfile -t missing < <(missing_packages "$@")
  [[ ${#missing[@]} -gt 0 ]] || return 0
  echo "Installing: ${missing[*]}"
  as_root env DEBIAN_FRONTEND=noninteractive apt-get update -q
  as_root env DEBIAN_FRONTEND=noninteractive apt-get install -q -y --no-install-recommends "${missing[@]}"
}

# The package by which tests drive the browser, as the lock has it. A Node that came from elsewhere brings an npm of its
# own, and Debian's would throw it out.
install_browser_driver() {
  command -v node >/dev/null || install_missing nodejs
  command -v npm >/dev/null || install_missing npm
  local here=tests/browser
  # npm writes this file when all is installed.
  [[ $here/node_modules/.package-lock.json -nt $here/package-lock.json ]] || (cd "$here" && npm ci --no-audit --no-fund)
}
