import { expect, it, vi } from 'vitest'
import { createStillSaving } from '../../src/app/stillSaving.ts'
import type { Workers } from '../../src/app/workers.ts'
import { frame } from '../../src/core/time/frame.ts'
import { createAppStore } from '../../src/store/appStore.ts'
import { showJob } from '../../src/store/document.ts'
import { movePlayhead } from '../../src/store/session.ts'
import type { StillFileRequest } from '../../src/work/makeStillFile.ts'
import { sampleJob } from '../support/sampleJob.ts'

/** A job of two cues with a ramp between them, the line inside the ramp, and who saves for it. */
const desk = (isTaken = true, clipped = 0) => {
  const store = createAppStore()
  const job = sampleJob([0, 100], (cue, i) =>
    i === 0 ? cue : { ...cue, ramp: 3, grade: { ...cue.grade, saturation: 2 } },
  )
  showJob(store, job, 'key')
  store.setState({ media: 'ready' })
  movePlayhead(store, 101)
  const asked: StillFileRequest[] = []
  const stills = vi.fn(async (_: string, request: StillFileRequest) => {
    asked.push(request)
    return { bytes: Uint8Array.of(1, 2, 3), clipped }
  })
  const saved: { name: string; bytes: number }[] = []
  const saveFile = async (name: string, make: () => Promise<Blob>) => {
    if (!isTaken) return false
    saved.push({ name, bytes: (await make()).size })
    return true
  }
  const save = createStillSaving(store, { stills } as unknown as Pick<Workers, 'stills'>, saveFile)
  return { store, asked, saved, save, stills }
}

it('the frame under the line is saved with what is in force on it, named by cue and timecode', async () => {
  const { store, asked, saved, save } = desk()
  await save({ stage: 'graded', format: 'tiff' })
  expect(saved).toEqual([{ name: 'Orlop-reel-1-cue-0002-10-00-04-01-graded.tif', bytes: 3 }])
  expect(asked[0]).toMatchObject({
    frame: frame(101),
    format: 'tiff',
    values: { grade: { saturation: 1.5 } },
    words: { timecode: '10:00:04:01' },
  })
  expect(store.getState().notice?.says).toBe(`Saved ${saved[0]?.name}.`)
})

it('as scanned it asks for no grade', async () => {
  const { asked, saved, save } = desk()
  await save({ stage: 'scanned', format: 'dpx' })
  expect(asked[0]?.values).toBeUndefined()
  expect(saved[0]?.name).toMatch(/-scanned\.dpx$/u)
})

it('pixels that were clipped are told', async () => {
  const { store, save } = desk(true, 12)
  await save({ stage: 'graded', format: 'png' })
  expect(store.getState().notice?.says).toMatch(/12 pixels lay past black or peak white/u)
})

it('nothing is made where the person says no, and no scan open saves nothing', async () => {
  const { store, save, stills } = desk(false)
  await save({ stage: 'graded', format: 'png' })
  store.setState({ media: 'missing' })
  await save({ stage: 'graded', format: 'png' })
  expect(stills).not.toHaveBeenCalled()
  expect(store.getState().notice).toBeUndefined()
})

it('a frame that cannot be read is told, not thrown', async () => {
  const { store, save, stills } = desk()
  stills.mockRejectedValueOnce(new Error('Frame 101 cannot be decoded.'))
  await save({ stage: 'graded', format: 'png' })
  expect(store.getState().notice).toMatchObject({
    isProblem: true,
    says: 'Frame 101 cannot be decoded.',
  })
})
