import type { Reel } from '../job/job.ts'

/** A name every file system takes. */
export const fileNameOf = (reel: Reel): string =>
  reel.name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/[^\w.-]+/gu, '-')
    .replace(/^[-.]+|(?<![-.])[-.]+$/gu, '') || 'reel'

/** The id of a cue's correction: a valid xs:ID, the same whenever the list is written. */
export const correctionId = (reel: Reel, cueNumber: number): string => {
  const name = fileNameOf(reel).replaceAll('.', '-')
  return `${/^[A-Za-z_]/u.test(name) ? name : `reel-${name}`}-cue-${String(cueNumber).padStart(4, '0')}`
}
