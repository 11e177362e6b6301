import { expect, test } from 'vitest'
import { recordPass } from '../../../src/app/recordPass.ts'
import type { FindingStanding } from '../../../src/core/transfer/passRecord.ts'
import { createAppStore } from '../../../src/store/appStore.ts'
import { showJob } from '../../../src/store/document.ts'
import { jobOf } from '../../../src/store/queries.ts'
import type { MadePass } from '../../../src/work/passCalls.ts'
import { sampleJob } from '../../support/sampleJob.ts'
import { samplePlan } from '../../support/samplePlan.ts'

const madeWith = (standing: FindingStanding): MadePass => ({
  output: { name: 'harbour.mp4', files: 1, frames: 99, bytes: 1000, sha256: 'a'.repeat(64) },
  findings: [{ check: 'frames', standing, says: 'harbour.mp4 has 99 frames, not 100.' }],
  ...{ heldFrames: [], begunAt: '2026-11-27T09:00:00.000Z', decided: 'b'.repeat(64) },
  ...{ encoding: 'H.264', file: undefined },
})

const storeWith = (key: string) => {
  const store = createAppStore()
  showJob(store, sampleJob(), key)
  return store
}

test.each(['wrong', 'not known'] as const)(
  'a pass with something %s is recorded and never called as it should be',
  (standing) => {
    const store = storeWith('key')
    expect(recordPass(store, samplePlan(), madeWith(standing), 'key')).toBe(true)
    const { transferring, notice } = store.getState()
    expect(transferring.outcome?.standing).toBe(standing)
    expect(notice).toMatchObject({ isProblem: true, says: 'harbour.mp4 has 99 frames, not 100.' })
    expect(Object.values(jobOf(store.getState())?.passes ?? {})).toHaveLength(1)
  },
)

test('a pass whose job is not open any more is not put into another', () => {
  const store = storeWith('another')
  expect(recordPass(store, samplePlan(), madeWith('right'), 'key')).toBe(false)
  expect(store.getState().notice?.says).toMatch(/open it and go on with the pass to record it/u)
  expect(Object.values(jobOf(store.getState())?.passes ?? {})).toEqual([])
})
