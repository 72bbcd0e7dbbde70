# Read by the checks that need a bare Debian 12: makes a root, removes it at the end, and runs commands in it. Needs root,
# and the machine's own Debian mirror.

fail() {
  echo "error: the check on a bare Debian cannot be made: $*" >&2
  exit 1
}

# Starts the calling script anew as root where it is not.
be_root() {
  [[ $EUID -ne 0 ]] || return 0
  command -v sudo >/dev/null || fail "it needs root"
  exec sudo "$PWD/$1"
}

# Makes the root and calls its folder `root`.
make_debian_root() {
  command -v debootstrap >/dev/null || fail "debootstrap is not installed"
  local mirror
  mirror=$(apt-get indextargets --format '$(REPO_URI)' 'Created-By: Packages' 'Codename: bookworm' 'Component: main' |
    head -n 1)
  [[ -n $mirror ]] || fail "this machine's apt knows no mirror of Debian 12 (bookworm)"
  root=$(mktemp -d)
  chmod 755 "$root" # as a root is: users other than its owner live in it, too
  trap 'rm -rf --one-file-system "$root"' EXIT
  debootstrap --variant=minbase bookworm "$root" "$mirror" >"$root.log" 2>&1 || {
    tail -n 20 "$root.log" >&2
    fail "debootstrap failed"
  }
  rm -f "$root.log"
}

# A mount name space of its own: the mounts are gone with it, whatever happens. The root is one, so that what runs in it
# can have a name space of its own again; terminals need devpts.
in_root() { unshare --mount bash -c 'mount --bind "$0" "$0" && mount -t proc proc "$0/proc" &&
  mount -t devpts -o newinstance,ptmxmode=0666,mode=0620 devpts "$0/dev/pts" && exec chroot "$0" /usr/bin/env -i \
  PATH=/usr/sbin:/usr/bin:/sbin:/bin HOME=/root LC_ALL=C.UTF-8 "$@"' "$root" "$@"; }
