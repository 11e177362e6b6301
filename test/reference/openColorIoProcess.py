"""
Process lists by OpenColorIO, for `openColorIoProcess.test.ts`.

Reads from standard input JSON: a list of {steps, colours}, steps as in a job. Writes as JSON, for
each, its colours through OpenColorIO's processor without optimisation, in float32.
"""

import array
import json
import sys

import PyOpenColorIO as ocio

INTERPOLATIONS = {"trilinear": ocio.INTERP_LINEAR, "tetrahedral": ocio.INTERP_TETRAHEDRAL}


def cdl_of(step):
    cdl = step["cdl"]
    transform = ocio.CDLTransform(
        slope=cdl["slope"], offset=cdl["offset"], power=cdl["power"], sat=cdl["saturation"]
    )
    clamps = not step["style"].endswith("no-clamp")
    transform.setStyle(ocio.CDL_ASC if clamps else ocio.CDL_NO_CLAMP)
    if step["style"].startswith("reverse"):
        transform.setDirection(ocio.TRANSFORM_DIR_INVERSE)
    return transform


def matrix_of(step):
    (a, b, c), (d, e, f), (g, h, i) = step["rows"]
    matrix = [a, b, c, 0, d, e, f, 0, g, h, i, 0, 0, 0, 0, 1]
    return ocio.MatrixTransform(matrix=matrix, offset=[*step["offset"], 0])


def range_of(step):
    transform = ocio.RangeTransform()
    if step["low"]:
        transform.setMinInValue(step["low"][0])
        transform.setMinOutValue(step["low"][1])
    if step["high"]:
        transform.setMaxInValue(step["high"][0])
        transform.setMaxOutValue(step["high"][1])
    transform.setStyle(ocio.RANGE_CLAMP if step["clamps"] else ocio.RANGE_NO_CLAMP)
    return transform


def curve_of(step):
    channels, values = step["channels"], step["values"]
    transform = ocio.Lut1DTransform(length=step["points"], inputHalfDomain=False)
    transform.setInterpolation(ocio.INTERP_LINEAR)
    for i in range(step["points"]):
        place = values[i * channels : (i + 1) * channels]
        transform.setValue(i, *(place if channels == 3 else place * 3))
    return transform


def cube_of(step):
    points, values = step["points"], step["values"]
    transform = ocio.Lut3DTransform(gridSize=points)
    transform.setInterpolation(INTERPOLATIONS[step["interpolation"]])
    for r in range(points):
        for g in range(points):
            for b in range(points):
                at = 3 * ((r * points + g) * points + b)
                transform.setValue(r, g, b, *values[at : at + 3])
    return transform


TRANSFORMS = {
    "cdl": cdl_of,
    "matrix": matrix_of,
    "range": range_of,
    "curve": curve_of,
    "cube": cube_of,
}


def answers():
    config = ocio.Config.CreateRaw()
    config.setProcessorCacheFlags(ocio.PROCESSOR_CACHE_OFF)
    for case in json.load(sys.stdin):
        group = ocio.GroupTransform([TRANSFORMS[step["kind"]](step) for step in case["steps"]])
        processor = config.getProcessor(group).getOptimizedCPUProcessor(ocio.OPTIMIZATION_NONE)
        pixels = array.array("f", [value for colour in case["colours"] for value in colour])
        processor.applyRGB(pixels)
        yield pixels.tolist()


json.dump(list(answers()), sys.stdout)
