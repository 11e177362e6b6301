import type { XmlElement } from '../../base/xmlWriter.ts'
import { gradeToCdl } from '../../colour/cdl.ts'
import type { Triple } from '../../colour/triple.ts'
import type { Cue, Reel } from '../../job/job.ts'
import { exactDecimal } from '../decimal.ts'
import { type CorrectionWords, wordElements } from './cdlWords.ts'
import { ownCueText, withOwnWords } from './ownWords.ts'

/** The namespace of ASC CDL v1.2 (from memory; seen in OpenColorIO's documents). */
export const ASC_CDL_NAMESPACE = 'urn:ASC:CDL:v1.2'

const numbers = (name: string, values: Triple): XmlElement => ({
  name,
  inside: values.map(exactDecimal).join(' '),
})

/** A cue to be written as a correction. */
export type CueToWrite = {
  readonly reel: Reel
  readonly cue: Cue
  readonly number: number
  readonly id: string
  readonly kept: CorrectionWords
}

/**
 * A cue's grade as an ASC CDL v1.2 ColorCorrection, every number exact to the last bit: our own
 * description, the note, then what other files said of it.
 */
export const correctionElement = ({ reel, cue, number, id, kept }: CueToWrite): XmlElement => {
  const { slope, offset, power, saturation } = gradeToCdl(cue.grade)
  const cueText = ownCueText(reel, cue.first, number)
  return {
    name: 'ColorCorrection',
    attributes: { id },
    inside: [
      ...wordElements(withOwnWords(cueText, cue.note, kept.correction)),
      {
        name: 'SOPNode',
        inside: [
          ...wordElements(kept.sop),
          numbers('Slope', slope),
          numbers('Offset', offset),
          numbers('Power', power),
        ],
      },
      {
        name: 'SatNode',
        inside: [
          ...wordElements(kept.sat),
          { name: 'Saturation', inside: exactDecimal(saturation) },
        ],
      },
    ],
  }
}

/** The same where there is no decision around it: what was said of the decision goes first. */
export const loneCorrectionElement = (written: CueToWrite): XmlElement => {
  const { decision, correction } = written.kept
  const kept = { ...written.kept, correction: [...decision, ...correction] }
  return correctionElement({ ...written, kept })
}
