"""
OpenColorIO's time for a frame, for `ocioRow.mjs`.

`ocioBench.py WIDTH`: reads a frame of R', G', B', float32, from standard input; grades it by
an ASC CDL without clamping and makes Y', Cb, Cr of it by a matrix, in place, by the optimised
default of one CPU processor, which runs in one thread. Writes, as JSON, the milliseconds of
processor time of each round for each way to hand the frame over, and the colour that the first
pixel became.
"""

import array
import json
import sys
import time

import PyOpenColorIO as ocio

ROUNDS = 9

# The grade of `benchGrade.ts`: lift L and gain G are the offset L and the slope G - L.
LIFT = (0.02, 0.01, 0.03)
GAMMA = (1.15, 1.1, 1.2)
GAIN = (1.1, 1.05, 1.02)
SATURATION = 1.2
# BT.709-6, 3.2 and 3.3.
KR, KG, KB = 0.2126, 0.7152, 0.0722


def grade_and_encode():
    cdl = ocio.CDLTransform(
        slope=[gain - lift for gain, lift in zip(GAIN, LIFT)],
        offset=list(LIFT),
        power=[1 / gamma for gamma in GAMMA],
        sat=SATURATION,
    )
    cdl.setStyle(ocio.CDL_NO_CLAMP)
    blue, red = 2 * (1 - KB), 2 * (1 - KR)
    matrix = ocio.MatrixTransform(
        matrix=[
            *(KR, KG, KB, 0),
            *(-KR / blue, -KG / blue, (1 - KB) / blue, 0),
            *((1 - KR) / red, -KG / red, -KB / red, 0),
            *(0, 0, 0, 1),
        ]
    )
    config = ocio.Config.CreateRaw()
    return config.getProcessor(ocio.GroupTransform([cdl, matrix])).getDefaultCPUProcessor()


def with_alpha(rgb):
    rgba = array.array("f", [1]) * (len(rgb) // 3 * 4)
    for channel in range(3):
        rgba[channel::4] = rgb[channel::3]
    return rgba


def main(width):
    rgb = array.array("f", sys.stdin.buffer.read())
    rgba = with_alpha(rgb)
    processor = grade_and_encode()

    def in_rows(apply, channels):
        step = width * channels

        def work(pixels):
            rows = memoryview(pixels)
            for start in range(0, len(rows), step):
                apply(rows[start : start + step])

        return work

    ways = {
        "RGB at once": (rgb, processor.applyRGB),
        "RGB row by row": (rgb, in_rows(processor.applyRGB, 3)),
        "RGBA at once": (rgba, processor.applyRGBA),
        "RGBA row by row": (rgba, in_rows(processor.applyRGBA, 4)),
    }
    times = {name: [] for name in ways}
    for _ in range(ROUNDS):
        for name, (frame, work) in ways.items():
            pixels = array.array("f", frame)
            begun = time.process_time()
            work(pixels)
            times[name].append((time.process_time() - begun) * 1000)
            first = pixels[:3].tolist()
    json.dump({"times": times, "first": first}, sys.stdout)


main(int(sys.argv[1]))
