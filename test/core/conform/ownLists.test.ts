import { expect, it } from 'vitest'
import { applyImport } from '../../../src/core/conform/applyImport.ts'
import { planImport } from '../../../src/core/conform/planImport.ts'
import { suggestImport } from '../../../src/core/conform/suggestImport.ts'
import { handOverFiles } from '../../../src/core/formats/handOverFiles.ts'
import { readList } from '../../../src/core/formats/readList.ts'
import { isEmptyChange } from '../../../src/core/job/change.ts'
import { newCueId } from '../../../src/core/job/recordIds.ts'
import { frame } from '../../../src/core/time/frame.ts'
import { REEL_ID, sampleJob, sampleReel } from '../../support/sampleJob.ts'

const JOB = sampleJob([0, 100, 250, 400], (cue, index) => ({
  ...cue,
  ramp: index === 2 ? 12 : 0,
  note: index === 1 ? 'Lift the face; “keep” the water dark.' : '',
  scene: index > 1 ? '12' : '',
  grade: { ...cue.grade, gamma: [1 + index / 7, 1, 1], lift: [0.01 * index, 0, 0] },
  framing: index === 3 ? { ...cue.framing, zoom: 1.25 } : cue.framing,
}))

it.each(['edl', 'otio', 'csv', 'ccc', 'cdl'] as const)(
  'a list as %s that comes back to the job it was made from changes nothing',
  (format) => {
    const made = handOverFiles(JOB, REEL_ID, format)
    if (!made.ok) throw new Error(made.problems[0].says)
    const [file] = made.value.files
    const list = readList(file?.name ?? '', file?.text ?? '', sampleReel())
    if (!list.ok) throw new Error(list.problems[0].says)
    const plan = planImport(JOB, REEL_ID, list.value, suggestImport(JOB, REEL_ID, list.value))
    expect(plan.rows.map(({ outcome, first }) => [outcome, first])).toEqual(
      [0, 100, 250, 400].map((first) => ['matches', frame(first)]),
    )
    const done = applyImport(JOB, REEL_ID, plan, newCueId)
    expect(done.ok && isEmptyChange(done.value.change)).toBe(true)
  },
)
