import { problem } from '../core/base/problem.ts'
import { IDENTITY_GRADE } from '../core/colour/grade.ts'
import { everySecondPair, secondPairCoding } from '../core/picture/everySecondPair.ts'
import { IDENTITY_FRAMING } from '../core/picture/framing.ts'
import type { Planes } from '../core/picture/planes.ts'
import type { Kernel, PictureReading } from '../kernel/kernel.ts'
import { MediaError } from '../media/mediaError.ts'
import type { InstrumentCalls } from './instrumentCalls.ts'
import type { Handlers } from './rpc.ts'

const LEVELS = 256

type Shown = Omit<PictureReading, 'levels'>

/** All lists of levels in a reading: a column, or a histogram, each. */
const levelCounts = ({ waveform, parade, histograms }: Shown): readonly Uint32Array[] => [
  ...(waveform ? [waveform] : []),
  ...(parade ?? []),
  ...(histograms ? [histograms.r, histograms.g, histograms.b, histograms.y] : []),
]

/** Whether anything was counted in the lowest or the highest of the levels. */
const reachesEnd = (counts: Uint32Array): boolean => {
  for (let i = 0; i < counts.length; i += LEVELS)
    if (counts[i] !== 0 || counts[i + LEVELS - 1] !== 0) return true
  return false
}

/** The calls of the instrument worker, given how the kernel is loaded there. */
export const instrumentHandlers = (
  loadKernel: () => Promise<Kernel>,
): Handlers<InstrumentCalls> => {
  let held: Planes | undefined
  /** Made when it is first measured coarsely. */
  let heldPairs: Planes | undefined
  return {
    setFrame: (planes) => {
      held = planes
      heldPairs = undefined
      return undefined
    },
    measure: async (request, { transfer }) => {
      const { grade, framing, profile, signal, wants, isCoarse } = request
      const kernel = await loadKernel()
      if (!held)
        throw new MediaError(problem('missing', 'There is no frame to measure; open a reel.'))
      const { matrix } = request.coding
      if (isCoarse) heldPairs ??= everySecondPair(held)
      const planes = (isCoarse && heldPairs) || held
      const coding = isCoarse ? secondPairCoding(request.coding, held, planes) : request.coding
      const graded = { planes, coding, grade, framing }
      const scanned = { ...graded, grade: IDENTITY_GRADE, framing: IDENTITY_FRAMING }
      const input = signal === 'graded' ? graded : scanned
      const { levels: ends, ...shown } = kernel.measurePicture(input, matrix, profile, wants)
      const levels = signal === 'graded' ? ends : kernel.measureLevels(graded, matrix, profile)
      const isPast = levelCounts(shown).some(reachesEnd)
      const past = isPast
        ? profile.filtered
          ? kernel.measureLevels(input, matrix, { ...profile, filtered: false })
          : ends
        : undefined
      const counted = [...levelCounts(shown), ...(shown.vectorscope ? [shown.vectorscope] : [])]
      transfer(...counted.map(({ buffer }) => buffer))
      return { shown, levels, ...(past && { past }) }
    },
  }
}
