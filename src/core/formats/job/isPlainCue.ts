import * as v from 'valibot'
import {
  CUE_FOREIGN_LIMIT,
  GRADE_NAME_LIMIT,
  LARGEST_NUMBER,
  MOST_ALTERNATES,
  MOST_ANSWERS,
  SCENE_LIMIT,
  SMALLEST_GAMMA,
} from '../../job/limits.ts'
import { answerSchema } from './answerSchema.ts'

/**
 * Whether a value is a cue just as `cueSchema` has it: the same answer, found some thirty times
 * faster, so that a job of thousands of cues opens at once. What fails here is looked at by the
 * schema, which can say why. A test holds the two together.
 */
export const isPlainCue = (value: unknown): boolean => {
  if (!hasJust(value, 14)) return false
  const { id, reel, first, ramp, rampShape, boundary, scene, note } = value
  const { grade, gradeName, alternates, framing, answers, foreign } = value
  return (
    isIdentifier(id) &&
    isIdentifier(reel) &&
    isWhole(first, Number.MAX_SAFE_INTEGER) &&
    isWhole(ramp, 10_000) &&
    isBoundary(boundary) &&
    (rampShape === 'linear' || rampShape === 'eased') &&
    isGrade(grade) &&
    isText(gradeName, GRADE_NAME_LIMIT) &&
    isAlternates(alternates) &&
    isFraming(framing) &&
    isText(scene, SCENE_LIMIT) &&
    isText(note, 4000) &&
    isAnswers(answers) &&
    isForeign(foreign)
  )
}

const KINDS = new Set(['start', 'cut', 'dissolve', 'fade-out', 'fade-in', 'dip', 'by-hand'])
const FOREIGN_FORMATS = new Set(['cdl', 'edl', 'otio'])
const IDENTIFIER = /^[A-Za-z][A-Za-z0-9_-]{0,63}$/

/** A record with this many keys; that each is the one meant follows from their values. */
const hasJust = (value: unknown, keys: number): value is Record<string, unknown> =>
  typeof value === 'object' &&
  value !== null &&
  !Array.isArray(value) &&
  Object.keys(value).length === keys

const isIdentifier = (value: unknown): boolean =>
  typeof value === 'string' && IDENTIFIER.test(value)

const isText = (value: unknown, limit: number): boolean =>
  typeof value === 'string' && value.length <= limit

const isBetween = (value: unknown, low: number, high: number): boolean =>
  typeof value === 'number' && value >= low && value <= high

const isWhole = (value: unknown, high: number): boolean =>
  isBetween(value, 0, high) && Number.isInteger(value)

const isTriple = (value: unknown, isFine: (each: number) => boolean): boolean =>
  Array.isArray(value) &&
  value.length === 3 &&
  [value[0], value[1], value[2]].every(
    (each) => isBetween(each, -LARGEST_NUMBER, LARGEST_NUMBER) && isFine(each),
  )

const isBoundary = (value: unknown): boolean =>
  hasJust(value, 2) &&
  typeof value.kind === 'string' &&
  KINDS.has(value.kind) &&
  isBetween(value.confidence, 0, 1)

const isGrade = (value: unknown): boolean =>
  hasJust(value, 4) &&
  isTriple(value.lift, () => true) &&
  isTriple(value.gamma, (each) => each >= SMALLEST_GAMMA) &&
  isTriple(value.gain, () => true) &&
  isBetween(value.saturation, 0, LARGEST_NUMBER)

const isFraming = (value: unknown): boolean =>
  hasJust(value, 6) &&
  isBetween(value.zoom, 0.25, 8) &&
  isBetween(value.pan, -1, 1) &&
  isBetween(value.tilt, -1, 1) &&
  isBetween(value.rotation, -180, 180) &&
  isBetween(value.squeeze, 0.25, 4) &&
  isBetween(value.blanking, -0.95, 0.95)

const isAlternates = (value: unknown): boolean =>
  Array.isArray(value) &&
  value.length <= MOST_ALTERNATES &&
  value.every(
    (each) => hasJust(each, 2) && isText(each.name, GRADE_NAME_LIMIT) && isGrade(each.grade),
  )

/** Answers are few beside cues: the schema itself looks at them. */
const isAnswers = (value: unknown): boolean =>
  Array.isArray(value) &&
  value.length <= MOST_ANSWERS &&
  value.every((each) => v.is(answerSchema, each))

const isForeign = (value: unknown): boolean =>
  Array.isArray(value) &&
  value.length <= FOREIGN_FORMATS.size &&
  value.every(
    (each) =>
      hasJust(each, 2) &&
      typeof each.format === 'string' &&
      FOREIGN_FORMATS.has(each.format) &&
      isText(each.text, CUE_FOREIGN_LIMIT),
  )
