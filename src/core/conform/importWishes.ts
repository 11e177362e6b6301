import type { Decision, DecisionList, Span } from '../formats/decisionList.ts'
import { cuesOfReel } from '../job/cueList.ts'
import type { Job, Reel } from '../job/job.ts'
import { misfitOfGrades, misfitOfRamp } from './checkDecision.ts'
import { cueNames, isSourceOfReel } from './cueNames.ts'
import type { ImportOptions, ImportOutcome } from './importPlan.ts'
import { placeSpan } from './placesOnReel.ts'

/** What is to become of a decision, the cue by its place from 0. */
export type ImportFate = {
  readonly outcome: ImportOutcome
  readonly cue: number | undefined
  readonly first: number | undefined
  readonly says: string
}

/** What a decision asks for by itself, before the others are looked at. */
export type ImportWish = {
  readonly decision: Decision
  /** Its frames on the reel, which may be outside it; undefined where nothing tells. */
  readonly span: Span | undefined
  /** The cue it names or is counted to, by its place from 0. */
  readonly cue: number | undefined
  readonly says: string
  /** Set where it can come to nothing. */
  readonly refused: ImportFate | undefined
}

const refusal = (
  outcome: 'conflicts' | 'passed-over',
  says: string,
  first?: number,
): ImportFate => ({ outcome, cue: undefined, first, says })

export const conflict = (says: string, first?: number): ImportFate =>
  refusal('conflicts', says, first)

/** A conventional name for black, which has no place on any reel. */
export const isBlack = (source: string): boolean => /^(bl|black)$/iu.test(source.trim())

/** The values that belong to a decision's place. */
const OF_PLACE = ['ramp', 'rampShape', 'boundary']

const hasGrades = ({ values }: Decision): boolean =>
  Object.entries(values).some(([field, value]) => value !== undefined && !OF_PLACE.includes(field))

type Found = Pick<ImportWish, 'span' | 'cue' | 'says'> & { readonly passedOver?: string }

const NOT_FOUND = { span: undefined, cue: undefined, says: '' } as const

/** Finds the cue and the frames that each decision asks for, by the way of matching chosen. */
const finder = (job: Job, reel: Reel, list: DecisionList, options: ImportOptions) => {
  const cueCount = cuesOfReel(job, reel.id).length
  const { matchBy, times, startsAt } = options
  const byTimes = placeSpan(list, reel, times, startsAt)
  if (matchBy === 'timecode')
    return (decision: Decision): Found => {
      if (times === 'source' && isBlack(decision.source))
        return { ...NOT_FOUND, passedOver: 'It is black, which is not on the reel.' }
      const span = byTimes(decision)
      return span
        ? { span, cue: undefined, says: '' }
        : { ...NOT_FOUND, passedOver: `It states no ${times} times.` }
    }
  if (matchBy === 'order')
    return (decision: Decision, place: number): Found => {
      const span = options.takesPlaces ? byTimes(decision) : undefined
      if (place < cueCount) return { span, cue: place, says: '' }
      return span
        ? { span, cue: undefined, says: '' }
        : { ...NOT_FOUND, passedOver: `The reel has ${cueCount} cues, so none is left for it.` }
    }
  const bySource = placeSpan(list, reel, 'source', startsAt)
  const isOfReel = isSourceOfReel(job, reel.id)
  const names = cueNames(job, reel.id)
  /** Of several cues of one name the next is meant each time the name comes again. */
  const used = new Map<string, number>()
  return (decision: Decision): Found => {
    const { name, source } = decision
    const ofReel = source !== '' && isOfReel(source)
    const span = ofReel ? bySource(decision) : source === '' ? byTimes(decision) : undefined
    const isOnReel = span !== undefined && span.from < reel.frames && span.to > 0
    const named = name === '' ? [] : names(name, isOnReel)
    const turn = used.get(name) ?? 0
    used.set(name, turn + 1)
    const cue = named[Math.min(turn, named.length - 1)]
    const says =
      named.length > 1
        ? `${named.length} cues have its name; this is number ${turn + 1} of them.`
        : ''
    if (cue !== undefined) return { span, cue, says: turn < named.length ? says : '' }
    const isNumbered = isOnReel && name !== '' && names(name).length > 0
    if (span && (ofReel || isNumbered)) return { span, cue, says: '' }
    const passedOver =
      source !== '' && !ofReel
        ? `Its source is “${source}”, not this reel.`
        : name === ''
          ? 'It has no name.'
          : `No cue has the name “${name}”.`
    return { ...NOT_FOUND, passedOver }
  }
}

/** What each decision of a list asks for on a reel. */
export const importWishes = (
  job: Job,
  reel: Reel,
  list: DecisionList,
  options: ImportOptions,
): readonly ImportWish[] => {
  const find = finder(job, reel, list, options)
  const { takesPlaces, takesGrades } = options
  return list.decisions.map((decision, place) => {
    const { passedOver, ...found } = find(decision, place)
    const { span } = found
    const first = span && span.from >= 0 && span.from < reel.frames ? span.from : undefined
    const misfit =
      (takesGrades ? misfitOfGrades(decision.values) : undefined) ??
      (takesPlaces ? misfitOfRamp(decision.values) : undefined)
    const refused =
      passedOver !== undefined
        ? refusal('passed-over', passedOver)
        : !takesPlaces && !takesGrades
          ? refusal('passed-over', 'Neither places nor grades are to be taken.', first)
          : !takesPlaces && !hasGrades(decision)
            ? refusal('passed-over', 'It states no grade.', first)
            : !takesGrades && !span
              ? refusal('passed-over', 'It states no place.')
              : span && span.to <= span.from
                ? conflict('It lasts no frame.', first)
                : misfit !== undefined
                  ? conflict(misfit, first)
                  : undefined
    return { decision, ...found, refused }
  })
}
