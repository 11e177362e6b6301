import { agreementAt, lastAnswer } from '../../agreement/agreementOf.ts'
import type { Answer } from '../../agreement/answer.ts'
import { cueLook, type LookGround, lookSum } from '../../agreement/cueLook.ts'
import type { Grade } from '../../colour/grade.ts'
import type { Cue, JobInfo, Reel } from '../../job/job.ts'
import type { Framing } from '../../picture/framing.ts'
import { toleranceOf } from '../../tolerance/findProfile.ts'
import { isRecord } from './anyJobFile.ts'

/** How a cue's agreement was kept before version 7. */
type CueOf6 = Omit<Cue, 'answers'> & {
  readonly agreement: 'open' | 'agreed' | 'asked'
  readonly agreedLook: { readonly grade: Grade; readonly framing: Framing } | null
}

const SAYS: readonly unknown[] = ['open', 'agreed', 'asked']

type Parts<AnyCue> = {
  readonly info: JobInfo
  readonly reels: readonly Reel[]
  readonly cues: readonly AnyCue[]
}

/** A reel of the file with its cues in order, as what looks are worked out on. */
const groundsOf = <AnyCue extends Pick<Cue, 'reel' | 'first'>>({
  info,
  reels,
  cues,
}: Parts<AnyCue>) =>
  new Map(
    reels.map((reel) => [
      reel.id,
      {
        reel,
        cues: cues.filter((cue) => cue.reel === reel.id).toSorted((a, b) => a.first - b.first),
        profile: toleranceOf(info),
      },
    ]),
  )

const answersOf6 = (ground: LookGround | undefined, cue: CueOf6): readonly Answer[] => {
  const { agreement: says, agreedLook } = cue
  if (!ground || says === 'open') return []
  const index = ground.cues.findIndex(({ id }) => id === cue.id)
  const now = cueLook(ground, index)
  if (!now) return []
  const look = { ...now, ...agreedLook }
  const plain = { by: '', at: null, note: '', marks: [], frame: null, alternate: null }
  return [{ ...plain, says, look, sha256: lookSum(look), pack: null, signature: null }]
}

/**
 * Cues of version 6 with what was said of them as answers: of the grade and framing that were
 * agreed, and of all else as it stands in the file, which is all that it knew.
 */
export const answersUpTo7 = (parts: Parts<CueOf6>): readonly unknown[] => {
  const grounds = groundsOf(parts)
  return parts.cues.map((cue) => {
    // What says nothing that version 6 knew is left for the schema to refuse.
    if (!SAYS.includes(cue.agreement)) return cue
    const { agreement: _, agreedLook: __, foreign, ...rest } = cue
    const ground = grounds.get(cue.reel) as unknown as LookGround | undefined
    return { ...rest, answers: answersOf6(ground, cue), foreign }
  })
}

/**
 * Cues of version 7 with their agreement as version 6 had it. What was changed in more than grade
 * and framing since it was agreed is not agreed to a version that looks at these alone.
 */
export const answersDownTo6 = (parts: Parts<Cue>): readonly unknown[] => {
  const grounds = groundsOf(parts)
  return parts.cues.map((cue) => {
    const { answers: _, foreign, ...rest } = cue
    const ground = grounds.get(cue.reel)
    const look = lastAnswer(cue)?.look
    const index = ground?.cues.indexOf(cue) ?? -1
    const said = ground && agreementAt(ground, index)
    const kept = look && { grade: look.grade, framing: look.framing }
    // With the grade and framing that were agreed, is all else as it was?
    const asAgreed = ground && {
      ...ground,
      cues: ground.cues.map((each) => (each === cue ? { ...each, ...kept } : each)),
    }
    const isKept =
      said === 'agreed' ||
      (said === 'changed' && asAgreed && agreementAt(asAgreed, index) === 'agreed')
    const agreement = isKept ? 'agreed' : said === 'asked' ? 'asked' : 'open'
    return { ...rest, agreement, agreedLook: isKept ? kept : null, foreign }
  })
}

/** Whether a file has the parts that looks are worked out from, as far as they are needed. */
export const hasLookParts = (file: Readonly<Record<string, unknown>>): boolean =>
  isRecord(file.info) &&
  Array.isArray(file.info.profiles) &&
  Array.isArray(file.reels) &&
  file.reels.every(
    (reel) =>
      isRecord(reel) &&
      isRecord(reel.media) &&
      isRecord(reel.base) &&
      (reel.base.list === null ||
        (isRecord(reel.base.list) && Array.isArray(reel.base.list.steps))),
  ) &&
  Array.isArray(file.cues) &&
  file.cues.every(isRecord)
