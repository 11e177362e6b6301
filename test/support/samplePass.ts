import type { PassId } from '../../src/core/job/recordIds.ts'
import type { PassRecord } from '../../src/core/transfer/passRecord.ts'
import { INITIAL_TRANSFER } from '../../src/core/transfer/transferSettings.ts'
import { REEL_ID } from './sampleJob.ts'

/** The record of a made-up pass. */
export const samplePass = (change: Partial<PassRecord> = {}): PassRecord => ({
  id: 'pass-1' as PassId,
  reel: REEL_ID,
  begunAt: '2026-11-26T09:00:00.000Z',
  endedAt: '2026-11-26T09:12:30.000Z',
  madeWith: 'Reelwright 0.1.0 at the command line',
  settings: { ...INITIAL_TRANSFER, limiting: 'soft' },
  output: { name: 'orlop', files: 500, frames: 500, bytes: 4_147_200_000, sha256: 'a'.repeat(64) },
  decided: 'b'.repeat(64),
  scan: null,
  overrides: [
    {
      check: 'line-up',
      found: 'No line-up of the scanner is logged for this reel.',
      about: ['No line-up of the scanner is logged for this reel.'],
      reason: 'It was lined up for the reel before.',
      at: '2026-11-26T08:59:00.000Z',
    },
  ],
  findings: [
    { check: 'frames', standing: 'right', says: '500 frames, as planned.' },
    { check: 'tolerance', standing: 'wrong', says: '3 of 500 frames are outside.' },
  ],
  heldFrames: [17],
  ...change,
})
