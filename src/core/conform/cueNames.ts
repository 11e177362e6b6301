import { edlReelNameIn } from '../formats/edl/edlReelName.ts'
import { correctionId } from '../formats/listNames.ts'
import { cuesOfReel } from '../job/cueList.ts'
import type { Cue, Foreign, Job, Reel } from '../job/job.ts'
import type { ReelId } from '../job/recordIds.ts'
import { comparableName, fileNameForms } from './comparableName.ts'

/** Fields by which other lists name a decision in what is kept of them. */
const NAME_FIELDS = ['id', 'name']

const namesInForeign = (foreign: Foreign): readonly string[] =>
  foreign.flatMap(({ text }) => {
    try {
      const kept: unknown = JSON.parse(text)
      if (typeof kept !== 'object' || kept === null) return []
      return Object.entries(kept).flatMap(([field, value]) =>
        NAME_FIELDS.includes(field) && typeof value === 'string' ? [value] : [],
      )
    } catch {
      return []
    }
  })

/** What our own lists call the cue of this number. */
const numberedNames = (reel: Reel, number: number): readonly string[] => [
  correctionId(reel, number),
  `${reel.name} CUE ${String(number).padStart(4, '0')}`,
  `${reel.name} CUE ${number}`,
  `CUE ${number}`,
]

/**
 * The places, from 0, of the cues of a reel that have this name, in order; none if none has. With
 * `hasPlace`, the names that our own lists make of a cue's number do not count.
 */
export type CueNames = (name: string, hasPlace?: boolean) => readonly number[]

/**
 * The names of a reel's cues: first those that other lists gave them, then their ids, then the
 * numbered names that our own lists give them, then their scene marks. A name that cues have in one
 * of these ways is not looked up in the next: numbers shift when a cue is added, a name that was
 * given does not. So a number says nothing of a decision that has a place.
 */
export const cueNames = (job: Job, reelId: ReelId): CueNames => {
  const reel = job.reels[reelId]
  const cues = cuesOfReel(job, reelId)
  const index = (namesOf: (cue: Cue, number: number) => readonly string[]) => {
    const byName = new Map<string, number[]>()
    for (const [place, cue] of cues.entries())
      for (const name of new Set(namesOf(cue, place + 1).map(comparableName))) {
        if (name === '') continue
        const places = byName.get(name)
        if (places) places.push(place)
        else byName.set(name, [place])
      }
    return byName
  }
  const given = index(({ foreign }) => namesInForeign(foreign))
  const ids = index(({ id }) => [id])
  const numbered = index((_, number) => (reel ? numberedNames(reel, number) : []))
  const scenes = index(({ scene }) => [scene])
  return (name, hasPlace = false) => {
    const wanted = comparableName(name)
    const byNumber = hasPlace ? undefined : numbered.get(wanted)
    return given.get(wanted) ?? ids.get(wanted) ?? byNumber ?? scenes.get(wanted) ?? []
  }
}

/**
 * Whether a list's name of a source means this reel: by the reel's name, its name in our edit
 * decision lists, or the name of the scan's file with or without its ending.
 */
export const isSourceOfReel = (job: Job, reelId: ReelId): ((source: string) => boolean) => {
  const reel = job.reels[reelId]
  if (!reel) return () => false
  const names = new Set(
    [reel.name, edlReelNameIn(job, reelId), ...fileNameForms(reel.media.name)]
      .map(comparableName)
      .filter((name) => name !== ''),
  )
  return (source) => fileNameForms(source).some((form) => names.has(comparableName(form)))
}
