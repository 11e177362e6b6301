import type { Cue, Reel } from '../../job/job.ts'
import { correctionId } from '../listNames.ts'
import { keptOfCue } from './cdlWords.ts'

/** A name as XML Schema wants an ID: a letter or underscore, then no space and no colon. */
const XML_ID = /^[\p{L}_][\p{L}\p{M}\p{Nd}._-]*$/u

/** The ids of a reel's corrections, and which cues could not have the one they came with. */
export type CorrectionIds = {
  readonly ids: readonly string[]
  /** Numbers of cues, from 1, whose id is no XML ID or is another cue's as well. */
  readonly changed: readonly number[]
}

/**
 * An id for the correction of every cue, each just once: the one it came with, if that is an XML ID
 * and no earlier cue has it, or else one made of the names of reel and cue.
 */
export const correctionIds = (reel: Reel, cues: readonly Cue[]): CorrectionIds => {
  const came = cues.map(({ foreign }) => keptOfCue(foreign).id)
  const taken = new Set<string>()
  const kept = came.map((id) => {
    if (!XML_ID.test(id) || taken.has(id)) return undefined
    taken.add(id)
    return id
  })
  const ids = kept.map((id, index) => {
    if (id !== undefined) return id
    const own = correctionId(reel, index + 1)
    let free = own
    for (let n = 2; taken.has(free); n++) free = `${own}-${n}`
    taken.add(free)
    return free
  })
  const changed = came.flatMap((id, index) => (id !== '' && id !== ids[index] ? [index + 1] : []))
  return { ids, changed }
}
