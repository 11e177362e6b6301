import type { Grade } from '../colour/grade.ts'
import type { Triple } from '../colour/triple.ts'
import { exactDecimal, shortDecimal } from '../formats/decimal.ts'
import type { Framing } from '../picture/framing.ts'
import { type CueLook, type LookPart, lookDifferences } from './cueLook.ts'

const fromTo = (name: string, was: number, now: number): readonly string[] => {
  if (was === now) return []
  const [short, other] = [shortDecimal(was, 4), shortDecimal(now, 4)]
  return short === other
    ? [`${name} from ${exactDecimal(was)} to ${exactDecimal(now)}`]
    : [`${name} from ${short} to ${other}`]
}

const CHANNELS = ['red', 'green', 'blue'] as const

/** A change of all three channels alike is one change. */
const tripleChanges = (name: string, was: Triple, now: Triple): readonly string[] => {
  const isEven = was[0] === was[1] && was[1] === was[2] && now[0] === now[1] && now[1] === now[2]
  return isEven
    ? fromTo(name, was[0], now[0])
    : CHANNELS.flatMap((channel, c) => fromTo(`${name} of ${channel}`, was[c] ?? 0, now[c] ?? 0))
}

const gradeChanges = (was: Grade, now: Grade): readonly string[] => [
  ...tripleChanges('lift', was.lift, now.lift),
  ...tripleChanges('gamma', was.gamma, now.gamma),
  ...tripleChanges('gain', was.gain, now.gain),
  ...fromTo('saturation', was.saturation, now.saturation),
]

const framingChanges = (was: Framing, now: Framing): readonly string[] =>
  (Object.keys(was) as (keyof Framing)[]).flatMap((name) => fromTo(name, was[name], now[name]))

const frames = (count: number): string => `${count} ${count === 1 ? 'frame' : 'frames'}`

const moved = (what: string, was: number, now: number): string =>
  `${what} ${frames(Math.abs(now - was))} ${now > was ? 'later' : 'earlier'}`

const rampChange = (was: CueLook, now: CueLook): string => {
  if (was.ramp !== now.ramp) return `ramp from ${was.ramp} to ${frames(now.ramp)}`
  if (was.rampShape !== now.rampShape) return `ramp from ${was.rampShape} to ${now.rampShape}`
  return 'what it ramps from: the cue before was changed'
}

const CHANGES: Readonly<Record<LookPart, (was: CueLook, now: CueLook) => readonly string[]>> = {
  scan: () => ['the scan is another, or is read otherwise'],
  base: () => ['the base of the reel'],
  beginning: (was, now) => [moved('begins', was.first, now.first)],
  end: (was, now) => [moved('ends', was.end, now.end)],
  ramp: (was, now) => [rampChange(was, now)],
  grade: (was, now) => gradeChanges(was.grade, now.grade),
  framing: (was, now) => framingChanges(was.framing, now.framing),
  tolerance: () => ['the tolerance it is held to'],
}

/** What of a look is otherwise now, each in a few words with its numbers; none where it is as it was. */
export const lookChanges = (was: CueLook, now: CueLook): readonly string[] =>
  lookDifferences(was, now).flatMap((part) => CHANGES[part](was, now))
