import { expect, it } from 'vitest'
import { IDENTITY_GRADE } from '../../../src/core/colour/grade.ts'
import { PRINT_BASE } from '../../../src/core/film/filmBase.ts'
import { deliverPicture } from '../../../src/core/picture/deliverPicture.ts'
import { IDENTITY_FRAMING } from '../../../src/core/picture/framing.ts'
import { frame } from '../../../src/core/time/frame.ts'
import { rate } from '../../../src/core/time/rate.ts'
import { decodePng } from '../../../src/media/decodePng.ts'
import { decodeDpx } from '../../../src/media/dpx/decodeDpx.ts'
import { encodeDpx } from '../../../src/media/dpx/encodeDpx.ts'
import { stillCodes } from '../../../src/media/stillPicture.ts'
import type { ReelCalls } from '../../../src/work/reelCalls.ts'
import { createCaller } from '../../../src/work/rpc.ts'
import { orThrow } from '../../media-layer/support/orThrow.ts'
import { seeded } from '../../support/seeded.ts'

const dpx = (n: number): File => {
  const random = seeded(n)
  const plane = () => Uint16Array.from({ length: 48 * 27 }, () => Math.floor(1024 * random()))
  const bytes = encodeDpx({
    width: 48,
    height: 27,
    samples: [plane(), plane(), plane()],
    transfer: 1,
    colorimetric: 1,
    name: 'scan',
    rate: rate(24),
    timecode: '02:00:00:05',
  })
  return new File([bytes], `scan_${n}.dpx`)
}

it('a DPX sequence opens in the worker, and a frame of it comes back as a file', async () => {
  const worker = new Worker(new URL('../../../src/app/worker/reelWorker.ts', import.meta.url), {
    type: 'module',
  })
  try {
    const call = createCaller<ReelCalls>(worker)
    const facts = orThrow(await call('open', { files: [dpx(3), dpx(1), dpx(2)] }))
    expect(facts).toMatchObject({
      container: 'DPX sequence',
      frames: 3,
      depth: 10,
      rate: rate(24),
      range: 'full',
      scanHint: 'printing-density',
      startTimecode: '02:00:00:05',
    })
    const { planes } = orThrow(decodeDpx(new Uint8Array(await dpx(2).arrayBuffer()), 'scan'))
    expect((await call('read', frame(1))).samples).toEqual(planes.samples)

    const base = { ...PRINT_BASE, scan: 'printing-density' } as const
    const coding = { matrix: 'bt709', range: 'full', base } as const
    const grade = { ...IDENTITY_GRADE, gain: [1.2, 1, 0.8] } as const
    const framing = { ...IDENTITY_FRAMING, zoom: 1.2 }
    const words = { name: 'a', rate: rate(24), timecode: '02:00:00:06' }
    const request = { frame: frame(1), coding, words }
    const graded = await call('stillFile', {
      ...request,
      values: { grade, framing },
      format: 'png',
    })
    const { samples, clipped } = stillCodes(deliverPicture(planes, coding, grade, framing), 16)
    expect(orThrow(await decodePng(graded.bytes, 'a')).samples).toEqual([...samples])
    expect(graded.clipped).toBe(clipped)

    const scanned = await call('stillFile', { ...request, values: undefined, format: 'dpx' })
    expect(orThrow(decodeDpx(scanned.bytes, 'a'))).toMatchObject({
      planes: { samples: planes.samples },
      header: { transfer: 1, timecode: '02:00:00:06' },
    })
  } finally {
    worker.terminate()
  }
})
