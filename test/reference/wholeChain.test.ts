import { expect, test } from 'vitest'
import { at } from '../../src/core/base/assert.ts'
import { gradeToCdl } from '../../src/core/colour/cdl.ts'
import type { Grade } from '../../src/core/colour/grade.ts'
import type { Triple } from '../../src/core/colour/triple.ts'
import { deliverPicture } from '../../src/core/picture/deliverPicture.ts'
import { encodePicture } from '../../src/core/picture/encodePicture.ts'
import { IDENTITY_FRAMING } from '../../src/core/picture/framing.ts'
import type { Samples } from '../../src/core/picture/planes.ts'
import { builtKernel } from '../kernel/builtKernel.ts'
import { decodeByFfmpeg, encodeByFfmpeg, readFrame } from './ffmpeg.ts'
import { askCdl } from './openColorIo.ts'

const SIZE = { width: 160, height: 108 }

const GRADES: readonly Grade[] = [
  { lift: [0.02, 0.01, 0.03], gamma: [1.15, 1.05, 1.1], gain: [1.1, 1, 0.95], saturation: 1.2 },
  { lift: [-0.05, -0.03, 0.01], gamma: [0.8, 0.9, 0.7], gain: [1.25, 1.2, 1.3], saturation: 0.6 },
]

const largestDifference = (ours: readonly Samples[], theirs: readonly Samples[]): number => {
  let largest = 0
  for (const [c, plane] of ours.entries())
    for (const [i, code] of plane.entries())
      largest = Math.max(largest, Math.abs(code - at(theirs[c] ?? [], i)))
  return largest
}

test.each(GRADES)(
  'a frame of a clip with saturation $saturation is delivered as by ffmpeg, OpenColorIO, ffmpeg',
  async (grade) => {
    const planes = readFrame('test/media/video/bbb-opening-480p24.mp4', SIZE, '420', 8, 13)
    const decoded = decodeByFfmpeg(
      planes,
      'zscale=matrixin=709:rangein=limited:chromalin=left:filter=bilinear:matrix=gbr:range=full',
    )
    const [r, g, b] = decoded.rgb as [Float32Array, Float32Array, Float32Array]
    const colours = Array.from(r, (_, i): Triple => [at(r, i), at(g, i), at(b, i)])
    const graded = askCdl([{ cdl: gradeToCdl(grade), colours }])
      .filter(({ style, direction }) => style === 'noclamp' && direction === 'forward')
      .map(({ openColorIo }) => openColorIo)
    expect(graded).toHaveLength(colours.length)
    const channel = (c: 0 | 1 | 2) => Float32Array.from(graded, (colour) => colour[c])
    const theirs = encodeByFfmpeg(
      { ...SIZE, rgb: [channel(0), channel(1), channel(2)] },
      'zscale=matrixin=gbr:rangein=full:matrix=709:range=limited',
      10,
    ).samples
    const coding = { matrix: 'bt709', range: 'narrow' } as const
    const input = { planes, coding, grade, framing: IDENTITY_FRAMING }
    const kernel = await builtKernel()
    const { y, cb, cr } = kernel.deliverCodes(input, 'bt709')
    const reference = encodePicture(
      deliverPicture(planes, coding, grade, IDENTITY_FRAMING),
      'bt709',
      10,
    )
    const ofKernel = largestDifference([y, cb, cr], theirs)
    const ofReference = largestDifference(reference.samples, theirs)
    console.log(
      `whole chain: largest difference of the reference ${ofReference}, of the kernel ${ofKernel} codes`,
    )
    expect(ofReference).toBeLessThanOrEqual(1)
    expect(ofKernel).toBeLessThanOrEqual(1)
  },
)
