import type { PackRecord } from '../../agreement/answer.ts'
import { type Problem, problem } from '../../base/problem.ts'
import type { Grade } from '../../colour/grade.ts'
import { checkParticulars } from '../../film/checkParticulars.ts'
import type { Cue, HeldFrame, JobInfo, Reel } from '../../job/job.ts'
import { checkProcessList } from '../../process/checkProcessList.ts'
import { checkHouseProfiles } from '../../tolerance/checkHouseProfiles.ts'
import { profileById, unknownTolerance } from '../../tolerance/findProfile.ts'
import type { PassRecord } from '../../transfer/passRecord.ts'

/** A problem for each channel whose gain is below its lift. */
const negativeGrade = ({ lift, gain }: Grade, where: string): readonly Problem[] =>
  ([0, 1, 2] as const).flatMap((c) =>
    gain[c] < lift[c]
      ? [
          problem('out-of-range', 'Gain is below lift, which ASC CDL cannot carry; raise it.', {
            field: `${where}.gain.${c}`,
          }),
        ]
      : [],
  )

/** What a schema cannot say: how the records of a job hang together. Every problem, by field. */
export const checkJob = (
  info: JobInfo,
  reels: readonly Reel[],
  cues: readonly Cue[],
  held: readonly HeldFrame[],
  passes: readonly PassRecord[],
  packs: readonly PackRecord[],
): readonly Problem[] => {
  const problems: Problem[] = [...checkHouseProfiles(info.profiles)]
  if (!profileById(info.tolerance, info.profiles))
    problems.push(unknownTolerance(info.tolerance, info.profiles))
  const byId = new Map<string, Reel>()
  const firsts = new Set<string>()
  const ids = new Set<string>()
  for (const [index, reel] of reels.entries()) {
    if (byId.has(reel.id))
      problems.push(
        problem('conflict', `Two reels have the id “${reel.id}”; give each its own.`, {
          field: `reels.${index}.id`,
        }),
      )
    byId.set(reel.id, reel)
    if (new Set(reel.overrides.map(({ check }) => check)).size < reel.overrides.length)
      problems.push(
        problem('conflict', 'A check has two reasons; keep one of them.', {
          field: `reels.${index}.overrides`,
        }),
      )
    for (const each of checkParticulars(reel.particulars, reel.frames))
      problems.push({ ...each, at: { field: `reels.${index}.${each.at?.field ?? ''}` } })
    if (reel.base.list)
      for (const each of checkProcessList(reel.base.list))
        problems.push({ ...each, at: { field: `reels.${index}.base.list` } })
  }
  for (const [index, cue] of cues.entries()) {
    const field = (name: string) => ({ field: `cues.${index}.${name}` })
    const reel = byId.get(cue.reel)
    if (ids.has(cue.id))
      problems.push(
        problem('conflict', `Two cues have the id “${cue.id}”; give each its own.`, field('id')),
      )
    ids.add(cue.id)
    if (!reel)
      problems.push(
        problem(
          'not-found',
          `The cue names a reel “${cue.reel}” that is not in the job; name one that is.`,
          field('reel'),
        ),
      )
    else if (cue.first >= reel.frames)
      problems.push(
        problem(
          'out-of-range',
          `The cue begins at frame ${cue.first}, past the reel's ${reel.frames} frames; move or take it out.`,
          field('first'),
        ),
      )
    if (new Set(cue.foreign.map(({ format }) => format)).size < cue.foreign.length)
      problems.push(
        problem('conflict', 'A format is there twice; keep one of them.', field('foreign')),
      )
    const place = `${cue.reel} ${cue.first}`
    if (firsts.has(place))
      problems.push(
        problem(
          'conflict',
          `Two cues begin on frame ${cue.first} of a reel; move or take out one.`,
          field('first'),
        ),
      )
    firsts.add(place)
    problems.push(...negativeGrade(cue.grade, `cues.${index}.grade`))
    for (const [place, { grade }] of cue.alternates.entries())
      problems.push(...negativeGrade(grade, `cues.${index}.alternates.${place}.grade`))
    for (const [place, { look, marks, frame: on }] of cue.answers.entries()) {
      problems.push(...negativeGrade(look.grade, `cues.${index}.answers.${place}.look.grade`))
      if (marks.length > 0 && on === null)
        problems.push(
          problem(
            'missing',
            'Lines were drawn on a frame that is not named; name it in “frame”.',
            field(`answers.${place}.frame`),
          ),
        )
    }
  }
  for (const [index, { id, reel, frame, grade }] of held.entries()) {
    const field = (name: string) => ({ field: `held.${index}.${name}` })
    const frames = byId.get(reel)?.frames ?? 0
    if (held.findIndex((other) => other.id === id) < index)
      problems.push(
        problem('conflict', `Two held frames have the id “${id}”; give each its own.`, field('id')),
      )
    if (frame >= frames)
      problems.push(
        problem(
          'not-found',
          `The held frame ${frame} is not on a reel of the job; take it out.`,
          field('frame'),
        ),
      )
    problems.push(...negativeGrade(grade, `held.${index}.grade`))
  }
  const passIds = new Set<string>()
  for (const [index, { id, reel }] of passes.entries()) {
    if (passIds.has(id))
      problems.push(
        problem('conflict', `Two passes have the id “${id}”; give each its own.`, {
          field: `passes.${index}.id`,
        }),
      )
    passIds.add(id)
    if (!byId.has(reel))
      problems.push(
        problem(
          'not-found',
          `The pass is of a reel “${reel}” that is not in the job; take it out.`,
          {
            field: `passes.${index}.reel`,
          },
        ),
      )
  }
  if (new Set(packs.map(({ id }) => id)).size < packs.length)
    problems.push(
      problem('conflict', 'Two packs have the same id; give each its own.', { field: 'packs' }),
    )
  for (const reel of byId.values())
    if (!firsts.has(`${reel.id} 0`))
      problems.push(
        problem('missing', `Reel “${reel.name}” has no cue on its first frame (0); add one.`, {
          field: 'cues',
        }),
      )
  return problems
}
