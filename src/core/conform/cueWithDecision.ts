import { sameGrade } from '../colour/grade.ts'
import { cueIndexAt } from '../job/cueList.ts'
import { foreignOf, withForeign } from '../job/foreignOf.ts'
import type { Alternate, BoundaryFound, Cue, Foreign } from '../job/job.ts'
import { CUE_FOREIGN_LIMIT } from '../job/limits.ts'
import { newCue } from '../job/newCue.ts'
import type { CueId, ReelId } from '../job/recordIds.ts'
import { sameFraming } from '../picture/framing.ts'
import type { Frame } from '../time/frame.ts'
import { foreignWithin } from './checkDecision.ts'
import type { ImportedChange, ImportPlan, ImportRow } from './importPlan.ts'
import { isNoteWrittenAs, isWrittenAs } from './isWrittenAs.ts'

/** What a list says of a place is decided: finding shots afterwards leaves it alone. */
const DECIDED = { kind: 'by-hand', confidence: 1 } as const

const START = { kind: 'start', confidence: 1 } as const

/** What was said before with what is said now; the very same where that changes nothing. */
export const joinForeign = (before: Foreign, added: Foreign): Foreign =>
  added.every(({ format, text }) => foreignOf(before, format) === text)
    ? before
    : withForeign(before, added)

const sameAlternates = (a: readonly Alternate[], b: readonly Alternate[]): boolean =>
  a.length === b.length &&
  a.every((each, place) => {
    const other = b[place]
    return other && each.name === other.name && sameGrade(each.grade, other.grade)
  })

const sameBoundary = (a: BoundaryFound, b: BoundaryFound): boolean =>
  a.kind === b.kind && a.confidence === b.confidence

/** How a cue's beginning was found, once it is at `first`: the reel's first frame is its start. */
const boundaryAt = (
  first: Frame,
  stated: BoundaryFound | undefined,
  isMoved: boolean,
  own: BoundaryFound,
): BoundaryFound => {
  if (first === 0) return own
  if (stated && stated.kind !== 'start') return sameBoundary(stated, own) ? own : stated
  return isMoved ? DECIDED : own
}

type Taking = Pick<ImportPlan, 'format' | 'options'>

/** A cue with what a decision gives it; the very same cue where that changes nothing. */
export const cueWithDecision = (
  cue: Cue,
  { decision, first: placed, outcome }: Pick<ImportRow, 'decision' | 'first' | 'outcome'>,
  { format, options: { takesPlaces, takesGrades } }: Taking,
): Cue => {
  const { values } = decision
  const {
    grade = cue.grade,
    gradeName = cue.gradeName,
    alternates = cue.alternates,
    framing = cue.framing,
    scene = cue.scene,
    note = cue.note,
  } = takesGrades ? values : {}
  const { ramp = cue.ramp, rampShape = cue.rampShape, boundary } = takesPlaces ? values : {}
  const first = outcome === 'moves' && placed !== undefined ? placed : cue.first
  const taken: Cue = {
    ...cue,
    first,
    boundary: boundaryAt(first, boundary, first !== cue.first, cue.boundary),
    ramp,
    rampShape,
    grade: isWrittenAs(grade, cue.grade, format) ? cue.grade : grade,
    gradeName,
    alternates: sameAlternates(alternates, cue.alternates) ? cue.alternates : alternates,
    framing: sameFraming(framing, cue.framing) ? cue.framing : framing,
    scene,
    note: isNoteWrittenAs(note, cue.note, format) ? cue.note : note,
    foreign: joinForeign(cue.foreign, foreignWithin(decision.foreign, CUE_FOREIGN_LIMIT)),
  }
  return changesBetween(cue, taken).length === 0 ? cue : taken
}

/** What differs between a cue and the same with a decision; values that are alike are the same. */
export const changesBetween = (before: Cue, after: Cue): readonly ImportedChange[] => {
  const changed = (change: ImportedChange, isChanged: boolean): readonly ImportedChange[] =>
    isChanged ? [change] : []
  return [
    ...changed('place', before.first !== after.first),
    ...changed('grade', before.grade !== after.grade),
    ...changed('framing', before.framing !== after.framing),
    ...changed('ramp', before.ramp !== after.ramp || before.rampShape !== after.rampShape),
    ...changed('scene', before.scene !== after.scene),
    ...changed('note', before.note !== after.note),
    ...changed('alternates', before.alternates !== after.alternates),
    ...changed('name', before.gradeName !== after.gradeName),
    ...changed('shot change', before.boundary !== after.boundary),
    ...changed('kept words', before.foreign !== after.foreign),
  ]
}

/** The cue that begins for a decision, before it has its values: as the picture is there now. */
export const cueForDecision = (
  existing: readonly Cue[],
  reelId: ReelId,
  first: Frame,
  id: CueId,
): Cue => {
  const plain = newCue(id, reelId, first, first === 0 ? START : DECIDED)
  const from = existing[cueIndexAt(existing, first)]
  return from ? { ...plain, grade: from.grade, framing: from.framing } : plain
}

/** What a row of an import changes of a reel's cues; 'place' besides where a cue begins. */
export const changesOfRow = (
  row: Pick<ImportRow, 'decision' | 'cue' | 'first' | 'outcome'>,
  existing: readonly Cue[],
  reelId: ReelId,
  taking: Taking,
): readonly ImportedChange[] => {
  const { cue, first, outcome } = row
  if (outcome === 'conflicts' || outcome === 'passed-over') return []
  if (cue) return changesBetween(cue, cueWithDecision(cue, row, taking))
  if (first === undefined) return []
  const begun = cueForDecision(existing, reelId, first, 'begun' as CueId)
  return ['place', ...changesBetween(begun, cueWithDecision(begun, row, taking))]
}
