import type { WeightedColours } from '../core/census/weightedColours.ts'
import { PRINT_BASE } from '../core/film/filmBase.ts'
import { codingOf } from '../core/job/codingOf.ts'
import type { Cue, Reel } from '../core/job/job.ts'
import { IDENTITY_FRAMING } from '../core/picture/framing.ts'
import { type Frame, frame } from '../core/time/frame.ts'
import type { AppStore } from '../store/appStore.ts'
import { censusKeyOf } from '../store/checkKey.ts'
import { cuesOf, endOfCue, reelOf } from '../store/queries.ts'
import type { ColoursOf } from '../work/solveCalls.ts'
import type { CensusDesk } from './censusDesk.ts'
import type { Workers } from './workers.ts'

/** Frames that stand for a whole reel. */
const FRAMES_OF_REEL = 8

/** Their middle, clear of the black that a gate leaves round the picture. */
const MIDDLE = { ...IDENTITY_FRAMING, zoom: 1.25 }

/** Where the colours for a solver come from. */
export type CueColours = {
  /** A cue's: all that were counted, or, where they are not kept, those of the frame in its middle. */
  readonly ofCue: (cue: Cue, reel: Reel) => Promise<ColoursOf>
  /** A reel's as scanned, by a few frames spread over it. */
  readonly ofReel: (reel: Reel) => Promise<WeightedColours>
}

const joined = (parts: readonly WeightedColours[]): WeightedColours => {
  const count = parts.reduce((sum, { weights }) => sum + weights.length, 0)
  const all = { colours: new Float64Array(count * 3), weights: new Float64Array(count) }
  let place = 0
  for (const { colours, weights } of parts) {
    all.colours.set(colours, place * 3)
    all.weights.set(weights, place)
    place += weights.length
  }
  return all
}

const spreadFrames = ({ frames }: Reel): readonly Frame[] =>
  Array.from({ length: FRAMES_OF_REEL }, (_, i) =>
    frame(Math.floor(((i + 0.5) / FRAMES_OF_REEL) * frames)),
  )

export const createCueColours = (
  store: AppStore,
  workers: Pick<Workers, 'stills' | 'solve'>,
  censuses: Pick<CensusDesk, 'get'>,
): CueColours => {
  let lastReel: { readonly key: string; readonly colours: Promise<WeightedColours> } | undefined
  const readReel = async (reel: Reel): Promise<WeightedColours> => {
    const coding = { ...codingOf(reel), base: PRINT_BASE }
    const parts: WeightedColours[] = []
    for (const wanted of spreadFrames(reel)) {
      const planes = await workers.stills('read', wanted)
      parts.push(await workers.solve('frameColours', { planes, coding, framing: MIDDLE }))
    }
    return joined(parts)
  }
  return {
    ofCue: async (cue, reel) => {
      const state = store.getState()
      const key = censusKeyOf(state, cue)
      const census = key === undefined ? undefined : censuses.get(key)
      if (census) return { kind: 'census', census }
      const own = reelOf(state)?.id === reel.id ? cuesOf(state) : []
      const end = own.length > 0 ? endOfCue(own, cue, reel) : reel.frames
      // After its ramp, so that the frame is graded as the cue itself.
      const first = Math.min(cue.first + cue.ramp, end - 1)
      const planes = await workers.stills('read', frame(Math.floor((first + end - 1) / 2)))
      return {
        kind: 'frame',
        frame: { planes, coding: codingOf(reel), framing: cue.framing },
      }
    },
    ofReel: (reel) => {
      const { name, bytes, matrix, range } = reel.media
      const key = [reel.id, name, bytes, matrix, range].join(' ')
      if (lastReel?.key !== key) {
        const colours = readReel(reel)
        lastReel = { key, colours }
        colours.catch(() => {
          lastReel = undefined
        })
      }
      return lastReel.colours
    },
  }
}
