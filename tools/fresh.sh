# Two questions the launcher asks on every start, so they must be quick: dates only, nothing is read. To be sourced.

# installed ROOT: are the packages those of the lock file?
installed() {
  [ -f "$1/node_modules/.package-lock.json" ] &&
    [ ! "$1/package-lock.json" -nt "$1/node_modules/.package-lock.json" ]
}

# built ROOT: is dist/ younger than all it is made of? A folder's own date tells of files taken away.
built() {
  [ -f "$1/dist/.built" ] &&
    [ -z "$(find "$1/src" "$1/facts" "$1/tools/facts" "$1/tools/setup.sh" "$1/tools/bundle.ts" "$1/tools/bundle-web.ts" "$1/tools/styles.ts" "$1/package-lock.json" \
      -name generated -prune -o \
      ! -name '*.test.ts' ! -name '*.test.tsx' -newer "$1/dist/.built" -print -quit)" ]
}
