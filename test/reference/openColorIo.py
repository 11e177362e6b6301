"""
ASC CDL by two other hands, for `openColorIo.ts`.

`openColorIo.py cdl COLOURS`: reads float64 from standard input, for each correction slope, offset
and power (three each), saturation, and COLOURS colours. Writes, for each correction, for clamp
forward, clamp reverse, no-clamp forward and no-clamp reverse: its colours by the formula below in
float64, then by OpenColorIO in float32.
`openColorIo.py ccc FILE...`: writes what OpenColorIO reads in collections, as JSON.
`openColorIo.py apply FILE ID...`: reads float64 colours from standard input, and for each pair of a
file and the id of a correction in it (empty: the file as a whole) writes them as that makes them.
"""

import array
import json
import sys

import PyOpenColorIO as ocio

LUMA = (0.2126, 0.7152, 0.0722)
WAYS = [(clamped, forward) for clamped in (True, False) for forward in (True, False)]


def clamp(colour):
    return [min(max(value, 0.0), 1.0) for value in colour]


def saturated(colour, saturation):
    luma = sum(weight * value for weight, value in zip(LUMA, colour))
    return [luma + saturation * (value - luma) for value in colour]


def powered(colour, powers):
    return [value**power if value > 0 else value for value, power in zip(colour, powers)]


def by_formula(cdl, colour, clamped, forward):
    """ASC CDL v1.2 (2009) in float64: the order of operations and its reverse."""
    slope, offset, power, saturation = cdl
    kept = clamp if clamped else list
    if forward:
        corrected = kept([x * s + o for x, s, o in zip(colour, slope, offset)])
        return kept(saturated(powered(corrected, power), saturation))
    corrected = kept(saturated(kept(colour), 1 / saturation))
    corrected = powered(corrected, [1 / p for p in power])
    return kept([(x - o) / s for x, s, o in zip(corrected, slope, offset)])


def by_open_color_io(config, cdl, colours, clamped, forward):
    slope, offset, power, saturation = cdl
    transform = ocio.CDLTransform(slope=slope, offset=offset, power=power, sat=saturation)
    transform.setStyle(ocio.CDL_ASC if clamped else ocio.CDL_NO_CLAMP)
    transform.setDirection(
        ocio.TRANSFORM_DIR_FORWARD if forward else ocio.TRANSFORM_DIR_INVERSE
    )
    processor = config.getProcessor(transform).getOptimizedCPUProcessor(ocio.OPTIMIZATION_NONE)
    pixels = array.array("f", colours)
    processor.applyRGB(pixels)
    return pixels.tolist()


def corrections(colours_each):
    config = ocio.Config.CreateRaw()
    config.setProcessorCacheFlags(ocio.PROCESSOR_CACHE_OFF)
    values = array.array("d", sys.stdin.buffer.read())
    size = 10 + 3 * colours_each
    out = array.array("d")
    for start in range(0, len(values), size):
        numbers = list(values[start : start + size])
        cdl = (numbers[0:3], numbers[3:6], numbers[6:9], numbers[9])
        colours = numbers[10:]
        for clamped, forward in WAYS:
            for i in range(0, len(colours), 3):
                out.extend(by_formula(cdl, colours[i : i + 3], clamped, forward))
            out.extend(by_open_color_io(config, cdl, colours, clamped, forward))
    sys.stdout.buffer.write(out.tobytes())


def collections(files):
    read = []
    for file in files:
        group = ocio.CDLTransform.CreateGroupFromFile(file)
        read.append(
            [
                {
                    "id": cdl.getID(),
                    "slope": cdl.getSlope(),
                    "offset": cdl.getOffset(),
                    "power": cdl.getPower(),
                    "saturation": cdl.getSat(),
                }
                for cdl in group
            ]
        )
    json.dump(read, sys.stdout)


def applied(pairs):
    config = ocio.Config.CreateRaw()
    config.setProcessorCacheFlags(ocio.PROCESSOR_CACHE_OFF)
    colours = array.array("d", sys.stdin.buffer.read())
    out = array.array("d")
    for file, id in zip(pairs[0::2], pairs[1::2]):
        transform = ocio.FileTransform(src=file, cccId=id)
        processor = config.getProcessor(transform)
        pixels = array.array("f", colours)
        processor.getOptimizedCPUProcessor(ocio.OPTIMIZATION_NONE).applyRGB(pixels)
        out.extend(pixels.tolist())
    sys.stdout.buffer.write(out.tobytes())


if sys.argv[1] == "cdl":
    corrections(int(sys.argv[2]))
elif sys.argv[1] == "apply":
    applied(sys.argv[2:])
else:
    collections(sys.argv[2:])
