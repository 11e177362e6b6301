import type { CueId } from '../job/recordIds.ts'
import type { ChecklistName, Override } from './override.ts'

/** What is known of a reel before a transfer; undefined where it is not known here. */
export type ChecklistFacts = {
  readonly cues: number
  readonly unlooked: readonly CueId[] | undefined
  readonly asksAgreement: boolean
  /** Cues that are open or of which changes are asked, and those changed since they were agreed. */
  readonly notAgreed: readonly CueId[]
  readonly changedSince: readonly CueId[]
  /** Cues not measured, and those measured outside; undefined where nothing is measured here. */
  readonly unmeasured: readonly CueId[] | undefined
  readonly outside: readonly CueId[]
  readonly tolerance: string
  readonly doubtful: readonly CueId[]
  /** Checksums of the scan as the job has it and as it is now. */
  readonly recorded: string | null
  readonly taken: string | undefined
  /** Bytes there is room for where the transfer goes, and what it will need at most. */
  readonly room: number | undefined
  readonly needed: number
  readonly lineUps: number
  readonly overrides: readonly Override[]
}

/** 'not known' stands in the way as much as 'wrong' does, until it is known or overridden. */
export type ChecklistStanding = 'right' | 'wrong' | 'not known'

export type ChecklistItem = {
  readonly check: ChecklistName
  readonly standing: ChecklistStanding
  /** What was found, in a sentence. */
  readonly says: string
  /** The same in marks, as a reason keeps it: such as each cue that is outside. */
  readonly about: readonly string[]
  /** The written reason that holds for all of this. */
  readonly override: Override | undefined
}

type Found = Omit<ChecklistItem, 'override' | 'check'>

const right = (says: string): Found => ({ standing: 'right', says, about: [] })
const wrong = (says: string, about: readonly string[] = [says]): Found => ({
  standing: 'wrong',
  says,
  about,
})
const notKnown = (says: string, about: readonly string[] = [says]): Found => ({
  standing: 'not known',
  says,
  about,
})

/** A mark a cue, of what it was found to be. */
const each = (cues: readonly CueId[], what: string): readonly string[] =>
  cues.map((id) => `${id} ${what}`)

const cuesText = (count: number): string => (count === 1 ? '1 cue' : `${count} cues`)

const isAre = (count: number, rest: string): string =>
  `${cuesText(count)} ${count === 1 ? 'is' : 'are'} ${rest}`

const gigabytes = (bytes: number): string =>
  bytes >= 1e9 ? `${(bytes / 1e9).toFixed(1)} GB` : `${(bytes / 1e6).toFixed(1)} MB`

const looked = ({ unlooked, cues }: ChecklistFacts): Found => {
  if (unlooked === undefined) return notKnown('Which cues were looked at is not known here.')
  return unlooked.length === 0
    ? right(cues === 1 ? 'The cue was looked at.' : `All ${cues} cues were looked at.`)
    : wrong(
        `${cuesText(unlooked.length)} never came under the line.`,
        each(unlooked, 'not looked at'),
      )
}

const agreed = ({ asksAgreement, notAgreed, changedSince }: ChecklistFacts): Found => {
  if (!asksAgreement) return right('This job asks for no agreement.')
  const [open, changed] = [notAgreed.length, changedSince.length]
  if (open === 0 && changed === 0) return right('Every cue is agreed as it is.')
  const parts = [
    ...(open > 0 ? [isAre(open, 'not agreed')] : []),
    ...(changed > 0 ? [`${cuesText(changed)} changed since agreed`] : []),
  ]
  const about = [...each(notAgreed, 'not agreed'), ...each(changedSince, 'changed since agreed')]
  return wrong(`${parts.join(', ')}.`, about)
}

const tolerance = ({ unmeasured, outside, tolerance: name }: ChecklistFacts): Found => {
  if (unmeasured === undefined)
    return notKnown(`Nothing was measured against ${name} here before the pass.`)
  const left = unmeasured.length
  const about = [...each(outside, `outside ${name}`), ...each(unmeasured, `not measured, ${name}`)]
  if (outside.length > 0)
    return wrong(
      `${isAre(outside.length, `outside ${name}`)}${left > 0 ? `, ${left} not measured yet` : ''}.`,
      about,
    )
  return left > 0
    ? notKnown(`${isAre(left, `not measured against ${name} yet`)}.`, about)
    : right(`Every cue is inside ${name}.`)
}

const boundaries = ({ doubtful }: ChecklistFacts): Found =>
  doubtful.length === 0
    ? right('No boundary is in doubt.')
    : wrong(
        `${cuesText(doubtful.length)} ${doubtful.length === 1 ? 'begins' : 'begin'} at a doubtful boundary.`,
        each(doubtful, 'in doubt'),
      )

const scan = ({ recorded, taken }: ChecklistFacts): Found => {
  if (recorded === null) return notKnown('The job has no checksum of the scan yet.')
  if (taken === undefined) return notKnown('The checksum of the scan was not taken again.')
  return recorded === taken
    ? right('The scan has the checksum that the job has of it.')
    : wrong(
        `The scan is not the one the job was made on: its checksum is another, ${taken.slice(0, 16)}….`,
        [`${recorded} ${taken}`],
      )
}

const space = ({ room, needed }: ChecklistFacts): Found => {
  if (room === undefined)
    return notKnown(
      `How much room there is cannot be asked; about ${gigabytes(needed)} are needed.`,
    )
  const says = `${gigabytes(needed)} at most are needed, and there is room for ${gigabytes(room)}.`
  return room >= needed ? right(says) : wrong(says)
}

const lineUp = ({ lineUps }: ChecklistFacts): Found =>
  lineUps > 0
    ? right(lineUps === 1 ? 'A line-up is logged.' : `${lineUps} line-ups are logged.`)
    : wrong('No line-up of the scanner is logged for this reel.')

const CHECKS: Readonly<Record<ChecklistName, (facts: ChecklistFacts) => Found>> = {
  looked,
  agreed,
  tolerance,
  boundaries,
  scan,
  space,
  'line-up': lineUp,
}

/** A reason holds where nothing is found that it was not given for. */
const holds = ({ about }: Override, found: Found): boolean => {
  const given = new Set(about)
  return found.standing !== 'right' && found.about.every((mark) => given.has(mark))
}

/** What stands before a transfer, worked out from what is known: every check, in this order. */
export const checklist = (facts: ChecklistFacts): readonly ChecklistItem[] =>
  (Object.keys(CHECKS) as ChecklistName[]).map((check) => {
    const found = CHECKS[check](facts)
    const override = facts.overrides.find((given) => given.check === check && holds(given, found))
    return { check, ...found, override }
  })

/** Checks that are neither right nor overridden: a transfer waits for them. */
export const standsInTheWay = (items: readonly ChecklistItem[]): readonly ChecklistItem[] =>
  items.filter(({ standing, override }) => standing !== 'right' && override === undefined)
