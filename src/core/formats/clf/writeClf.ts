import { problem } from '../../base/problem.ts'
import { fail, ok, type Result } from '../../base/result.ts'
import { textUuid } from '../../base/textUuid.ts'
import { writeXmlAround, writeXmlInside, type XmlElement } from '../../base/xmlWriter.ts'
import { gradeToCdl } from '../../colour/cdl.ts'
import type { FilmBase } from '../../film/filmBase.ts'
import { cuesOfReel } from '../../job/cueList.ts'
import type { Cue, Job, Reel } from '../../job/job.ts'
import type { ReelId } from '../../job/recordIds.ts'
import { formatTimecode } from '../../time/timecode.ts'
import { fileNameOf } from '../listNames.ts'
import { baseSteps, type SaidStep } from './baseSteps.ts'
import { SMPTE_CLF_NAMESPACE } from './clfHeader.ts'
import { stepElements } from './stepElements.ts'

/** Characters that the base may take in all files together; past it, it gets a file of its own. */
const MOST_BASE_TEXT = 64 * 2 ** 20

const INPUTS = {
  narrow: "Non-linear R'G'B' of the scan: 0 black (code 64 of 10 bits), 1 nominal peak (code 940)",
  full: "Non-linear R'G'B' of the scan: 0 at code 0, 1 at the highest code",
}

const VIDEO = "Non-linear R'G'B' of video: 0 black, 1 nominal peak, nothing clipped"

/** What is told of a process list before its operators. */
type Header = {
  readonly id: string
  readonly name: string
  readonly descriptions: readonly string[]
  readonly input: string
}

const document = ({ id, name, descriptions, input }: Header, operators: readonly string[]) => {
  const urn = `urn:uuid:${textUuid(id)}`
  const about: readonly XmlElement[] = [
    ...descriptions.map((inside) => ({ name: 'Description', inside })),
    { name: 'InputDescriptor', inside: input },
    { name: 'OutputDescriptor', inside: VIDEO },
  ]
  const attributes = { xmlns: SMPTE_CLF_NAMESPACE, id: urn, name, compCLFversion: '3.0' }
  return writeXmlAround({ name: 'ProcessList', attributes }, [writeXmlInside(about), ...operators])
}

const baseTexts = new WeakMap<FilmBase, string>()

/** The operators of a base. Written once for each state of it. */
const baseText = ({ base }: Reel): string => {
  const written = baseTexts.get(base)
  if (written !== undefined) return written
  const own: readonly SaidStep[] = base.list?.steps.map((step) => ({ says: '', step })) ?? []
  const text = writeXmlInside([...baseSteps(base), ...own].flatMap(stepElements))
  baseTexts.set(base, text)
  return text
}

const isBaseApart = (text: string, cues: number): boolean => text.length * cues > MOST_BASE_TEXT

/** Whether a reel's base is too long to stand in the file of every cue. */
export const hasBaseApart = (job: Job, reel: Reel): boolean =>
  isBaseApart(baseText(reel), cuesOfReel(job, reel.id).length)

const gradeText = ({ grade }: Cue): string =>
  writeXmlInside(
    stepElements({
      says: 'The grade.',
      step: { kind: 'cdl', style: 'forward-no-clamp', cdl: gradeToCdl(grade) },
    }),
  )

/**
 * The whole chain of every cue as a process list of the Common LUT Format, one file a cue: base,
 * the base's own list, grade and saturation, on the signal of the scan. Ids are made from the ids
 * of reel and cue, so that they stay when the grade changes. A base whose text would be more than
 * 64 MB in all files together stands in a file of its own, to be applied first.
 */
export const writeClf = (
  job: Job,
  reelId: ReelId,
): Result<{ readonly files: readonly { readonly name: string; readonly text: string }[] }> => {
  const reel = job.reels[reelId]
  if (!reel) return fail(problem('not-found', 'This reel is not in the job; choose another.'))
  const cues = cuesOfReel(job, reelId)
  const { title } = job.info.job
  const base = baseText(reel)
  const isApart = isBaseApart(base, cues.length)
  const input = INPUTS[reel.media.range]
  const files = cues.map((cue, index) => {
    const number = index + 1
    const cueIn = formatTimecode(reel.startCount + cue.first, reel.rate, reel.isDropFrame)
    const header: Header = {
      id: `${reel.id} ${cue.id}`,
      name: `${reel.name}, cue ${number}`,
      descriptions: [
        `Cue ${number}, in at ${cueIn}`,
        ...(cue.note === '' ? [] : [cue.note]),
        `${title}, reel ${reel.name}. Framing and ramps are not in it.`,
      ],
      input: isApart ? VIDEO : input,
    }
    return {
      name: `${fileNameOf(reel)}-cue-${String(number).padStart(4, '0')}.clf`,
      text: document(header, isApart ? [gradeText(cue)] : [base, gradeText(cue)]),
    }
  })
  if (!isApart) return ok({ files })
  const header: Header = {
    id: reel.id,
    name: `${reel.name}, base`,
    descriptions: [`${title}, reel ${reel.name}. The base: goes before the list of every cue.`],
    input,
  }
  return ok({
    files: [{ name: `${fileNameOf(reel)}-base.clf`, text: document(header, [base]) }, ...files],
  })
}
