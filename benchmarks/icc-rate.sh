#!/usr/bin/env bash
# Rate of colour conversion, ours and that of LittleCMS (liblcms2, loaded by Python's ctypes) on random
# pixels, one thread each: nanoseconds of processor time a pixel, medians. Run after `mvn package -DskipTests`.
# Usage: benchmarks/icc-rate.sh PRINTER.icc   (a CMYK profile, such as one of Debian's scribus-data)
set -euo pipefail
root=$(cd "$(dirname "$0")/.." && pwd)
printer=$(realpath "${1:?name a CMYK profile}")
ours=$(mktemp)
trap 'rm -f "$ours"' EXIT
java -cp "$root/benchmarks/target/classes:$root/benchmarks/target/lib/*" "-Dprinter=$printer" \
    org.printassay.benchmark.PixelRate >"$ours"
python3 - "$printer" "$ours" <<'P'
import csv, ctypes, os, sys, time
lcms = ctypes.CDLL('liblcms2.so.2')
pointer = ctypes.c_void_p
lcms.cmsOpenProfileFromFile.restype = pointer
lcms.cmsCreate_sRGBProfile.restype = pointer
lcms.cmsCreateRGBProfile.restype = pointer
lcms.cmsBuildGamma.restype = pointer
lcms.cmsBuildGamma.argtypes = [pointer, ctypes.c_double]
lcms.cmsCreateTransform.restype = pointer
lcms.cmsCreateTransform.argtypes = [pointer, ctypes.c_uint32, pointer, ctypes.c_uint32, ctypes.c_uint32, ctypes.c_uint32]
lcms.cmsDoTransform.argtypes = [pointer, ctypes.c_char_p, ctypes.c_char_p, ctypes.c_uint32]
white = (ctypes.c_double * 3)(.3127, .3290, 1)
primaries = (ctypes.c_double * 9)(.64, .33, 1, .21, .71, 1, .15, .06, 1)
gamma = lcms.cmsBuildGamma(None, 563 / 256)
rgb = lcms.cmsCreate_sRGBProfile()
wide = lcms.cmsCreateRGBProfile(white, primaries, (pointer * 3)(gamma, gamma, gamma))
inks = lcms.cmsOpenProfileFromFile(sys.argv[1].encode(), b'r')
kinds = {'rgb': (4, 3), 'cmyk': (6, 4)}
ours = {(way, int(bits)): float(time) for way, bits, time in csv.reader(open(sys.argv[2]))}
pixels, compensation = 1_000_000, 0x2000
for way, a, kind_a, b, kind_b in (('rgb-printer', rgb, 'rgb', inks, 'cmyk'), ('printer-rgb', inks, 'cmyk', rgb, 'rgb'), ('rgb-rgb', rgb, 'rgb', wide, 'rgb')):
    for size in 1, 2:
        kind = lambda k: kinds[k][0] << 16 | kinds[k][1] << 3 | size
        transform = lcms.cmsCreateTransform(a, kind(kind_a), b, kind(kind_b), 1, compensation)
        data = os.urandom(pixels * kinds[kind_a][1] * size)
        out = ctypes.create_string_buffer(pixels * kinds[kind_b][1] * size)
        times = []
        for _ in range(31):
            start = time.process_time()
            lcms.cmsDoTransform(transform, data, out, pixels)
            times.append(time.process_time() - start)
        theirs = sorted(times)[15] * 1e9 / pixels
        own = ours[way, 8 * size]
        print(f'{way:12} {8 * size:2} bit: printassay {own:5.1f} ns a pixel, LittleCMS {theirs:5.1f}, ratio {own / theirs:.2f}')
P
