import { type Problem, problem } from '../base/problem.ts'
import { LARGEST_SPEED, MOST_FILM_MARKS, WORDS_LIMIT } from '../job/limits.ts'
import { framesPerSecond } from '../time/rate.ts'
import type { Particulars } from './particulars.ts'

/** The part by which film can have shrunk, and the shapes of picture there can be. */
export const MOST_SHRINKAGE = 0.2
export const ASPECTS: readonly [low: number, high: number] = [0.5, 5]

/** Frames between a picture and its sound, and splices of a reel, at most. */
export const MOST_SOUND_AHEAD = 1000
export const MOST_SPLICES = 100_000

const outside = (field: string, says: string): Problem =>
  problem('out-of-range', says, { field: `particulars.${field}` })

/** What of the particulars of a reel of so many frames cannot be, by field. */
export const checkParticulars = (
  { shrinkage, splices, soundAhead, speed, aspect, marks, ...words }: Particulars,
  frames: number,
): readonly Problem[] => {
  const problems: Problem[] = []
  const isIn = (value: number | null, low: number, high: number) =>
    value === null || (value >= low && value <= high)
  if (!isIn(shrinkage, 0, MOST_SHRINKAGE))
    problems.push(
      outside('shrinkage', `Shrinkage is from 0 to ${100 * MOST_SHRINKAGE} %; give it so.`),
    )
  if (!isIn(splices, 0, MOST_SPLICES) || !Number.isInteger(splices ?? 0))
    problems.push(outside('splices', `Splices are counted from 0 to ${MOST_SPLICES}.`))
  if (!isIn(soundAhead, -MOST_SOUND_AHEAD, MOST_SOUND_AHEAD))
    problems.push(
      outside('soundAhead', `Sound lies within ${MOST_SOUND_AHEAD} frames of its picture.`),
    )
  if (!isIn(speed && framesPerSecond(speed), 1, LARGEST_SPEED))
    problems.push(outside('speed', `Film runs at 1 to ${LARGEST_SPEED} frames a second.`))
  if (!isIn(aspect, ...ASPECTS))
    problems.push(
      outside('aspect', `A picture is ${ASPECTS[0]} to ${ASPECTS[1]} times as wide as high.`),
    )
  for (const field of ['leader', 'edgeNumbers', 'notes'] as const)
    if (words[field].length > WORDS_LIMIT)
      problems.push(
        problem('too-large', `Words hold at most ${WORDS_LIMIT} characters; shorten them.`, {
          field: `particulars.${field}`,
        }),
      )
  if (marks.length > MOST_FILM_MARKS || marks.some(({ says }) => says.length > WORDS_LIMIT))
    problems.push(
      problem(
        'too-large',
        `A reel has at most ${MOST_FILM_MARKS} marks of ${WORDS_LIMIT} characters each.`,
        { field: 'particulars.marks' },
      ),
    )
  for (const [index, { frame }] of marks.entries())
    if (!isIn(frame, 0, frames - 1))
      problems.push(
        outside(`marks.${index}.frame`, `Frame ${frame} is past the reel's ${frames} frames.`),
      )
  return problems
}
