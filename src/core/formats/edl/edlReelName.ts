import type { Job, Reel } from '../../job/job.ts'
import type { ReelId } from '../../job/recordIds.ts'

/** Conventional limit: a reel name of an event line has eight characters A–Z, 0–9 and _. */
const LONGEST = 8

/** A reel's name as an event line carries it. `BL` and `AX` mean black and auxiliary there. */
export const edlReelName = (name: string): string => {
  const plain = name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toUpperCase()
    .replace(/[^A-Z0-9]+/gu, '_')
    .replace(/^_+|_+$/gu, '')
    .slice(0, LONGEST)
    .replace(/_+$/u, '')
  if (plain === '') return 'REEL'
  return plain === 'BL' || plain === 'AX' ? `${plain}_1` : plain
}

/**
 * The name of a reel in a job's lists: no two reels of one job have the same, since whoever
 * conforms from the lists has only these to tell them apart. The same for the same job.
 */
export const edlReelNameIn = (job: Job, reelId: ReelId): string => {
  const taken = new Set<string>()
  for (const reel of Object.values<Reel>(job.reels).toSorted((a, b) => (a.id < b.id ? -1 : 1))) {
    const plain = edlReelName(reel.name)
    let name = plain
    for (let number = 2; taken.has(name); number++) {
      const end = `_${number}`
      name = `${plain.slice(0, LONGEST - end.length).replace(/_+$/u, '')}${end}`
    }
    taken.add(name)
    if (reel.id === reelId) return name
  }
  return edlReelName('')
}
