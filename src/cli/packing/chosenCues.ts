import { agreementOf } from '../../core/agreement/agreementOf.ts'
import { problem } from '../../core/base/problem.ts'
import { fail, ok, type Result } from '../../core/base/result.ts'
import { cuesOfReel } from '../../core/job/cueList.ts'
import type { Cue, Job, Reel } from '../../core/job/job.ts'
import { type Arguments, textOption, wrongUse } from '../arguments.ts'

/** Numbers and ranges of numbers, from 1: `1,4-9`. */
const numbersOf = (text: string, count: number): ReadonlySet<number> | undefined => {
  const wanted = new Set<number>()
  for (const part of text.split(',')) {
    const [, from, to = from] = /^(\d{1,6})(?:-(\d{1,6}))?$/u.exec(part.trim()) ?? []
    const [low, high] = [Number(from), Number(to)]
    if (from === undefined || low < 1 || high < low || high > count) return undefined
    for (let number = low; number <= high; number++) wanted.add(number)
  }
  return wanted
}

/** The cues that are meant: by number, by scene, those not agreed, or all. */
export const chosenCues = (
  job: Job,
  reel: Reel,
  args: Arguments,
  usage: string,
): Result<readonly Cue[]> => {
  const cues = cuesOfReel(job, reel.id)
  const numbers = textOption(args, 'cues')
  const scene = textOption(args, 'scene')
  const isOpen = Boolean(args.values.open)
  if ([numbers !== undefined, scene !== undefined, isOpen].filter(Boolean).length > 1)
    return wrongUse('Give one of --cues, --scene and --open.', usage)
  const wanted = numbers === undefined ? undefined : numbersOf(numbers, cues.length)
  if (numbers !== undefined && !wanted)
    return wrongUse(`Give --cues numbers from 1 to ${cues.length}, as 1,4-9.`, usage)
  const chosen = cues.filter(
    (cue, index) =>
      (wanted?.has(index + 1) ?? true) &&
      (scene === undefined || cue.scene === scene) &&
      (!isOpen || agreementOf(job, cue) !== 'agreed'),
  )
  if (chosen.length > 0) return ok(chosen)
  return fail(
    problem(
      'not-found',
      scene === undefined
        ? 'Every cue is agreed as it is: there is nothing to ask for.'
        : `No cue has the scene mark “${scene}”.`,
    ),
  )
}
