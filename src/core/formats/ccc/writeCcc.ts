import { problem } from '../../base/problem.ts'
import { fail, ok, type Result } from '../../base/result.ts'
import { writeXml, type XmlElement } from '../../base/xmlWriter.ts'
import { gradeToCdl } from '../../colour/cdl.ts'
import type { Triple } from '../../colour/triple.ts'
import { cuesOfReel } from '../../job/cueList.ts'
import type { Cue, Job, Reel } from '../../job/job.ts'
import type { ReelId } from '../../job/recordIds.ts'
import { formatTimecode } from '../../time/timecode.ts'
import { exactDecimal } from '../decimal.ts'
import { correctionId, fileNameOf } from '../listNames.ts'

/** The namespace of ASC CDL v1.2 collections (from memory; seen in OpenColorIO's documents). */
export const ASC_CDL_NAMESPACE = 'urn:ASC:CDL:v1.2'

const numbers = (t: Triple): string => t.map(exactDecimal).join(' ')

const correction = (reel: Reel, cue: Cue, number: number): XmlElement => {
  const cdl = gradeToCdl(cue.grade)
  const cueIn = formatTimecode(reel.startCount + cue.first, reel.rate, reel.isDropFrame)
  const notes = cue.note === '' ? [] : [{ name: 'Description', inside: cue.note }]
  return {
    name: 'ColorCorrection',
    attributes: { id: correctionId(reel, number) },
    inside: [
      { name: 'Description', inside: `Cue ${number}, in at ${cueIn}` },
      ...notes,
      {
        name: 'SOPNode',
        inside: [
          { name: 'Slope', inside: numbers(cdl.slope) },
          { name: 'Offset', inside: numbers(cdl.offset) },
          { name: 'Power', inside: numbers(cdl.power) },
        ],
      },
      { name: 'SatNode', inside: [{ name: 'Saturation', inside: exactDecimal(cdl.saturation) }] },
    ],
  }
}

/**
 * The grades of a reel's cues as an ASC CDL v1.2 ColorCorrectionCollection, one correction a cue
 * in order, every number exact to the last bit.
 */
export const writeCcc = (
  job: Job,
  reelId: ReelId,
): Result<{ readonly files: readonly { readonly name: string; readonly text: string }[] }> => {
  const reel = job.reels[reelId]
  if (!reel) return fail(problem('not-found', 'This reel is not in the job; choose another.'))
  const corrections = cuesOfReel(job, reelId).map((cue, i) => correction(reel, cue, i + 1))
  const text = writeXml({
    name: 'ColorCorrectionCollection',
    attributes: { xmlns: ASC_CDL_NAMESPACE },
    inside: [
      {
        name: 'Description',
        inside: `${job.info.job.title}, reel ${reel.name}. Values apply to non-linear R'G'B' without clamping.`,
      },
      ...corrections,
    ],
  })
  return ok({ files: [{ name: `${fileNameOf(reel)}.ccc`, text }] })
}
