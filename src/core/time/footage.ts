import { problem } from '../base/problem.ts'
import { fail, ok, type Result } from '../base/result.ts'

/** Film gauges, told apart where a foot holds another number of pictures. */
export type Gauge =
  | '35mm-4perf'
  | '35mm-3perf'
  | '35mm-2perf'
  | '16mm'
  | 'super16'
  | '9.5mm'
  | 'super8'
  | 'standard8'

/**
 * Pictures in a foot, as an exact fraction. 35 mm (16), 16 mm, Super 16 and 9.5 mm (40, by convention),
 * Super 8 (72) and Standard 8 (80): encyclopaedic page "film foot" (see facts F1); 3 and 2
 * perforations computed from 64 perforations a foot.
 */
export const FRAMES_PER_FOOT: Readonly<Record<Gauge, readonly [num: number, den: number]>> = {
  '35mm-4perf': [16, 1],
  '35mm-3perf': [64, 3],
  '35mm-2perf': [32, 1],
  '16mm': [40, 1],
  super16: [40, 1],
  '9.5mm': [40, 1],
  super8: [72, 1],
  standard8: [80, 1],
}

/** The first whole frame of foot `feet`. */
const firstFrameOfFoot = (feet: number, [num, den]: readonly [number, number]): number =>
  Math.ceil((feet * num) / den)

/**
 * Frames from the start of the reel as feet and frames, such as `186 ft 12 fr`. Where a foot does
 * not hold a whole number of frames (3 perforations), frames count from the first whole one in it.
 */
export const formatFootage = (frames: number, gauge: Gauge): string => {
  const perFoot = FRAMES_PER_FOOT[gauge]
  const feet = Math.floor((frames * perFoot[1]) / perFoot[0])
  const rest = frames - firstFrameOfFoot(feet, perFoot)
  return `${feet} ft ${String(rest).padStart(2, '0')} fr`
}

/** Feet and frames → frames from the start of the reel. Accepts `186 ft 12 fr`, `186+12`, `186`. */
export const parseFootage = (text: string, gauge: Gauge): Result<number> => {
  const parts = /^\s*(\d+)\s*(?:(?:ft|\+)\s*(?:(\d+)\s*(?:fr\s*)?)?)?$/u.exec(text)
  if (!parts)
    return fail(
      problem(
        'malformed',
        `“${text}” is not a footage; write feet and frames, as in 186 ft 12 fr.`,
        {
          field: 'footage',
        },
      ),
    )
  const perFoot = FRAMES_PER_FOOT[gauge]
  const feet = Number(parts[1])
  const rest = Number(parts[2] ?? 0)
  const first = firstFrameOfFoot(feet, perFoot)
  if (first + rest >= firstFrameOfFoot(feet + 1, perFoot))
    return fail(
      problem('out-of-range', `“${text}”: a foot of this gauge does not hold that many frames.`, {
        field: 'footage',
      }),
    )
  return ok(first + rest)
}
