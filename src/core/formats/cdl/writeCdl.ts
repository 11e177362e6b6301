import { problem } from '../../base/problem.ts'
import { fail, ok, type Result } from '../../base/result.ts'
import { writeXml, type XmlElement } from '../../base/xmlWriter.ts'
import { cuesOfReel } from '../../job/cueList.ts'
import type { Job, Reel } from '../../job/job.ts'
import type { ReelId } from '../../job/recordIds.ts'
import { fileNameOf } from '../listNames.ts'
import { keptOfCue, keptOfReel, wordElements } from './cdlWords.ts'
import {
  ASC_CDL_NAMESPACE,
  type CueToWrite,
  correctionElement,
  loneCorrectionElement,
} from './correctionElement.ts'
import { correctionIds } from './correctionIds.ts'
import { ownListText } from './ownWords.ts'

type Files = { readonly files: readonly { readonly name: string; readonly text: string }[] }

const attributes = { xmlns: ASC_CDL_NAMESPACE }

/** The cues of a reel to be written, in order; refused where the reel is not there. */
const cuesToWrite = (
  job: Job,
  reelId: ReelId,
): Result<{ readonly reel: Reel; readonly cues: readonly CueToWrite[] }> => {
  const reel = job.reels[reelId]
  if (!reel) return fail(problem('not-found', 'This reel is not in the job; choose another.'))
  const cues = cuesOfReel(job, reelId)
  const { ids } = correctionIds(reel, cues)
  return ok({
    reel,
    cues: cues.map((cue, i) => ({
      reel,
      cue,
      number: i + 1,
      id: ids[i] ?? '',
      kept: keptOfCue(cue.foreign),
    })),
  })
}

const listWords = (job: Job, reel: Reel): readonly XmlElement[] => [
  { name: 'Description', inside: ownListText(job, reel) },
  ...wordElements(keptOfReel(reel.foreign)),
]

/** The grades of a reel's cues as one ColorCorrectionCollection, one correction a cue in order. */
export const writeCcc = (job: Job, reelId: ReelId): Result<Files> => {
  const read = cuesToWrite(job, reelId)
  if (!read.ok) return read
  const { reel, cues } = read.value
  const inside = [...listWords(job, reel), ...cues.map(loneCorrectionElement)]
  const text = writeXml({ name: 'ColorCorrectionCollection', attributes, inside })
  return ok({ files: [{ name: `${fileNameOf(reel)}.ccc`, text }] })
}

/** The same, each cue a file of its own with its correction as the root. */
export const writeCc = (job: Job, reelId: ReelId): Result<Files> => {
  const read = cuesToWrite(job, reelId)
  if (!read.ok) return read
  const { reel, cues } = read.value
  const files = cues.map((each) => {
    const element = loneCorrectionElement(each)
    return {
      name: `${fileNameOf(reel)}-cue-${String(each.number).padStart(4, '0')}.cc`,
      text: writeXml({ ...element, attributes: { ...attributes, ...element.attributes } }),
    }
  })
  return ok({ files })
}

/** What a decision is about: the pictures its list named, or else the scan. */
const mediaRefs = ({ reel, kept }: CueToWrite): readonly XmlElement[] => {
  const refs = kept.mediaRefs.length > 0 ? kept.mediaRefs : [reel.media.name]
  return refs.map((ref) => ({ name: 'MediaRef', attributes: { ref } }))
}

/** The same as one ColorDecisionList: decisions, each with its picture and its correction. */
export const writeCdl = (job: Job, reelId: ReelId): Result<Files> => {
  const read = cuesToWrite(job, reelId)
  if (!read.ok) return read
  const { reel, cues } = read.value
  const decisions = cues.map(
    (each): XmlElement => ({
      name: 'ColorDecision',
      inside: [...wordElements(each.kept.decision), ...mediaRefs(each), correctionElement(each)],
    }),
  )
  const inside = [...listWords(job, reel), ...decisions]
  const text = writeXml({ name: 'ColorDecisionList', attributes, inside })
  return ok({ files: [{ name: `${fileNameOf(reel)}.cdl`, text }] })
}
