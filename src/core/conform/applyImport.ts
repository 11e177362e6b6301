import { problem } from '../base/problem.ts'
import { fail, ok, type Result } from '../base/result.ts'
import { sameGrade } from '../colour/grade.ts'
import { MOST_CUES } from '../formats/job/jobSchema.ts'
import { cueChange } from '../job/change.ts'
import { cueIndexAt, cuesOfReel } from '../job/cueList.ts'
import { foreignOf, withForeign } from '../job/foreignOf.ts'
import type { LabelledChange } from '../job/history.ts'
import type { Alternate, Cue, Foreign, Job } from '../job/job.ts'
import { CUE_FOREIGN_LIMIT } from '../job/limits.ts'
import { newCue } from '../job/newCue.ts'
import type { CueId, ReelId } from '../job/recordIds.ts'
import { sameFraming } from '../picture/framing.ts'
import { foreignWithin } from './checkDecision.ts'
import type { ImportPlan, ImportRow } from './importPlan.ts'
import { isNoteWrittenAs, isWrittenAs } from './isWrittenAs.ts'

/** What a list says of a place is decided: finding shots afterwards leaves it alone. */
const DECIDED = { kind: 'by-hand', confidence: 1 } as const

/** What was said before with what is said now; the very same where that changes nothing. */
const joinForeign = (before: Foreign, added: Foreign): Foreign =>
  added.every(({ format, text }) => foreignOf(before, format) === text)
    ? before
    : withForeign(before, added)

const sameAlternates = (a: readonly Alternate[], b: readonly Alternate[]): boolean =>
  a.length === b.length &&
  a.every((each, place) => {
    const other = b[place]
    return other && each.name === other.name && sameGrade(each.grade, other.grade)
  })

/** A cue with what a decision gives it; the very same cue where that changes nothing. */
const withDecision = (
  cue: Cue,
  { decision, first = cue.first, outcome }: ImportRow,
  { format, options: { takesPlaces, takesGrades } }: Pick<ImportPlan, 'format' | 'options'>,
): Cue => {
  const { values } = decision
  const {
    grade = cue.grade,
    gradeName = cue.gradeName,
    alternates = cue.alternates,
    framing = cue.framing,
    scene = cue.scene,
    note: said = cue.note,
  } = takesGrades ? values : {}
  const note = isNoteWrittenAs(said, cue.note, format) ? cue.note : said
  const { ramp = cue.ramp, rampShape = cue.rampShape } = takesPlaces ? values : {}
  const foreign = joinForeign(cue.foreign, foreignWithin(decision.foreign, CUE_FOREIGN_LIMIT))
  const isMoved = outcome === 'moves' && first !== cue.first
  const isSame =
    !isMoved &&
    isWrittenAs(grade, cue.grade, format) &&
    gradeName === cue.gradeName &&
    sameAlternates(alternates, cue.alternates) &&
    sameFraming(framing, cue.framing) &&
    scene === cue.scene &&
    note === cue.note &&
    ramp === cue.ramp &&
    rampShape === cue.rampShape &&
    foreign === cue.foreign
  if (isSame) return cue
  return {
    ...cue,
    ...(isMoved ? { first, boundary: DECIDED } : {}),
    ramp,
    rampShape,
    grade: isWrittenAs(grade, cue.grade, format) ? cue.grade : grade,
    gradeName,
    alternates,
    framing,
    scene,
    note,
    foreign,
  }
}

/**
 * One change that does what a plan says. A cue that begins for a decision has the values of the
 * cue whose frames it takes, then the decision's. Grades, framing, scenes and notes are taken with
 * `takesGrades`, ramps with `takesPlaces`; what the job has no field for is kept beside. Refuses a
 * plan made of another state of the job.
 */
export const applyImport = (
  job: Job,
  reelId: ReelId,
  plan: ImportPlan,
  newId: () => CueId,
): Result<LabelledChange> => {
  const reel = job.reels[reelId]
  if (!reel) return fail(problem('not-found', 'This reel is no longer in the job.'))
  const taken = plan.rows.filter(
    ({ outcome }) => outcome === 'matches' || outcome === 'moves' || outcome === 'begins',
  )
  const existing = cuesOfReel(job, reelId)
  if (taken.some(({ cue }) => cue !== undefined && job.cues[cue.id] !== cue))
    return fail(
      problem('conflict', 'The job was changed since the list was looked at; look again.'),
    )
  const edited: Cue[] = []
  const made: Cue[] = []
  for (const row of taken) {
    const { cue, first } = row
    if (cue) edited.push(withDecision(cue, row, plan))
    else if (first !== undefined) {
      const plain = newCue(newId(), reelId, first, DECIDED)
      const from = existing[cueIndexAt(existing, first)]
      const start = from ? { ...plain, grade: from.grade, framing: from.framing } : plain
      made.push(withDecision(start, row, plan))
    }
  }
  if (Object.keys(job.cues).length + made.length > MOST_CUES)
    return fail(
      problem('too-large', `A job holds at most ${MOST_CUES} cues; import fewer at a time.`),
    )
  const byId = new Map(edited.map((cue) => [cue.id, cue]))
  const firsts = [...existing.map((cue) => byId.get(cue.id) ?? cue), ...made].map(
    ({ first }) => first,
  )
  if (new Set(firsts).size < firsts.length || byId.size < edited.length)
    return fail(problem('conflict', 'Two cues would begin on one frame; look at the list again.'))
  const { cues } = cueChange(
    edited.flatMap(({ id }) => job.cues[id] ?? []),
    [...edited, ...made],
  )
  const foreign = taken.length > 0 ? joinForeign(reel.foreign, plan.foreign) : reel.foreign
  return ok({
    label: 'Import list',
    change: {
      ...(cues && { cues }),
      ...(foreign === reel.foreign
        ? {}
        : {
            reels: { added: {}, updated: { [reelId]: [reel, { ...reel, foreign }] }, removed: {} },
          }),
    },
  })
}
