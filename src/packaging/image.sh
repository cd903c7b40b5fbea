#!/usr/bin/env bash
# Makes an image of the program with a Java of its own, for the system it is run on: nothing needs to be
# installed to run it. Run from anywhere, after `mvn package -DskipTests`, with a JDK 17 or newer that has
# jpackage. Usage: src/packaging/image.sh [FOLDER]   (default: target/image; FOLDER/printassay must not be there)
set -euo pipefail
root=$(cd "$(dirname "$0")/../.." && pwd)
built=$root/cli/target/printassay
out=${1:-$root/target/image}
tools=${JAVA_HOME:+$JAVA_HOME/bin/}
[ -d "$built/lib" ] || { echo "$built/lib is missing: run mvn package -DskipTests first." >&2; exit 1; }
jar=$(basename "$(ls "$built"/lib/cli-*.jar)")
version=${jar#cli-}
version=${version%.jar}
# One system wants versions to begin above zero; the program tells its own.
image=$version
case $(uname -s)/$version in Darwin/0.*) image=1.${version#0.} ;; esac

# Only what the program needs of Java: what its classes name, and what database drivers and certificates find by
# themselves.
modules=$("${tools}jdeps" --multi-release 17 --ignore-missing-deps -R --print-module-deps \
    -cp "$(printf '%s:' "$built"/lib/*.jar)" "$built/lib/$jar" | tail -1)
modules=$modules,java.management,java.naming,java.security.jgss,jdk.crypto.ec,jdk.unsupported,jdk.zipfs

# The same options as bin/printassay; see there.
options=()
while read -r option; do options+=(--java-options "$option"); done < <(
    grep -oE -- '-(Xmx[^ ]+|XX:[^ ]+|Xshare:[^ ]+|D[^ ]+)' "$built/bin/printassay" |
        sed 's/\${PRINTASSAY_HEAP:-\([0-9a-z]*\)}/\1/'
)
console=()
case $(uname -s) in MINGW* | MSYS* | CYGWIN*) console=(--win-console) ;; esac

mkdir -p "$out"
"${tools}jpackage" --type app-image --name printassay --app-version "$image" --dest "$out" \
    --input "$built/lib" --main-jar "$jar" --main-class org.printassay.cli.Main \
    --add-modules "$modules" --jlink-options "--strip-debug --no-header-files --no-man-pages --compress=2" \
    "${options[@]}" ${console[@]+"${console[@]}"}
for extra in LICENSE NOTICE THIRD-PARTY.txt completion man schemas; do
    [ ! -e "$built/$extra" ] || cp -R "$built/$extra" "$out/printassay/"
done
echo "Run $out/printassay/bin/printassay"
