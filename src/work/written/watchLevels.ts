import { IDENTITY_GRADE } from '../../core/colour/grade.ts'
import { createFlashGatherer } from '../../core/flashes/flashGatherer.ts'
import { IDENTITY_FRAMING } from '../../core/picture/framing.ts'
import type { Coding } from '../../core/picture/planes.ts'
import { isSequence } from '../../core/transfer/transferSettings.ts'
import type { WrittenPass } from '../checkWritten.ts'
import { flashFinding } from './flashFinding.ts'
import type { FrameWatcher } from './frameWatcher.ts'
import { createWrittenTolerance } from './toleranceOfWritten.ts'

/** How the codes of what a plan writes are read. */
export const writtenCoding = ({ plan }: Pick<WrittenPass, 'plan'>): Coding => ({
  matrix: plan.coding.matrix,
  range: isSequence(plan.settings.format) ? 'full' : 'narrow',
})

/** Measures each frame once, as it was decoded, for tolerance and for flashes. */
export const watchLevels = (pass: WrittenPass): FrameWatcher => {
  const { plan, kernel, written } = pass
  const { profile, reel } = plan
  const { width, height } = written.facts
  const coding = writtenCoding(pass)
  const tolerance = createWrittenTolerance(pass)
  const flashes = createFlashGatherer(width, height, reel.rate)
  let watched = 0
  return {
    add: (at, planes) => {
      const input = { planes, coding, grade: IDENTITY_GRADE, framing: IDENTITY_FRAMING }
      const { matrix } = coding
      tolerance.add(at, kernel.measureLevels(input, matrix, profile, undefined, flashes.cells))
      // Flashes are counted from frame to frame: past one that is not there, nothing can be said.
      if (at !== watched) return
      flashes.add(at)
      watched++
    },
    findings: () => {
      const measured = tolerance.finding()
      const report = flashes.report()
      return [
        ...(measured ? [measured] : []),
        ...(report ? [flashFinding(report, reel.frames)] : []),
      ]
    },
  }
}
