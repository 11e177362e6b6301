import { decode } from 'fast-png'
import { expect, it } from 'vitest'
import { displaySignal } from '../../../src/core/colour/displaySignal.ts'
import { gradeColour, IDENTITY_GRADE } from '../../../src/core/colour/grade.ts'
import { yCbCrToRgb } from '../../../src/core/colour/yCbCr.ts'
import { IDENTITY_FRAMING } from '../../../src/core/picture/framing.ts'
import type { Planes } from '../../../src/core/picture/planes.ts'
import { frame } from '../../../src/core/time/frame.ts'
import { jpegAddressNode } from '../../../src/media/node/jpegAddressNode.ts'
import { pngDataUri } from '../../../src/media/pngDataUri.ts'
import { type ReviewRequest, reviewPictures } from '../../../src/work/review/reviewPictures.ts'
import { builtKernel } from '../../kernel/builtKernel.ts'

const CODES = [120, 110, 150] as const
const flat: Planes = {
  ...{ width: 48, height: 32, layout: '444', depth: 8 },
  samples: CODES.map((code) => new Uint8Array(48 * 32).fill(code)) as unknown as Planes['samples'],
}
const SIGNAL = yCbCrToRgb([(120 - 16) / 219, (110 - 128) / 224, (150 - 128) / 224], 'bt709')
const GRADE = { ...IDENTITY_GRADE, gain: [1.1, 1, 0.9], saturation: 0.8 } as const
const WARM = { ...IDENTITY_GRADE, gain: [1.2, 1, 0.8] } as const
const REQUEST: ReviewRequest = {
  ...{ frame: frame(5), coding: { matrix: 'bt709', range: 'narrow' }, grade: GRADE },
  ...{ framing: IDENTITY_FRAMING, width: 16, height: 8, alternates: [WARM] },
}

const shown = (colour: readonly [number, number, number]) =>
  displaySignal(colour, 'bt709', 'srgb').map((level) => Math.round(255 * level))

it('shows the scan, the grade and each alternate as a display of sRGB is to be sent them', async () => {
  const made = await reviewPictures(flat, await builtKernel(), REQUEST, pngDataUri)
  for (const [address, expected] of [
    [made.before, shown(SIGNAL)],
    [made.after, shown(gradeColour(SIGNAL, GRADE))],
    [made.alternates[0], shown(gradeColour(SIGNAL, WARM))],
  ] as const) {
    const { data } = decode(Buffer.from(address?.split(',')[1] ?? '', 'base64'))
    for (let i = 0; i < 3; i++)
      expect(Math.abs(Number(data[3 * 40 + i]) - (expected[i] ?? 0))).toBeLessThanOrEqual(1)
  }
})

it('writes JPEG where ffmpeg is at hand', async () => {
  const made = await reviewPictures(flat, await builtKernel(), REQUEST, jpegAddressNode)
  expect(made.after).toMatch(/^data:image\/jpeg;base64,\/9j\//u)
  expect(made.after).not.toBe(made.before)
})
