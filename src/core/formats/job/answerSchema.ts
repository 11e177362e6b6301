import * as v from 'valibot'
import {
  GRADE_NAME_LIMIT,
  MOST_MARK_POINTS,
  MOST_MARKS,
  REVIEWER_LIMIT,
  WORDS_LIMIT,
} from '../../job/limits.ts'
import { lookBaseSchema, lookScanSchema, lookToleranceSchema } from './scanSchemas.ts'
import { finite, identifier, moment, sha256, text, wholeFrom } from './schemaParts.ts'
import { framingSchema, gradeSchema } from './valueSchemas.ts'

const lookSchema = v.strictObject({
  scan: lookScanSchema,
  base: lookBaseSchema,
  first: wholeFrom(0),
  end: v.pipe(wholeFrom(1), v.description('First frame after the cue.')),
  ramp: v.pipe(wholeFrom(0), v.maxValue(10_000)),
  rampShape: v.picklist(['linear', 'eased']),
  from: v.pipe(
    v.nullable(v.strictObject({ grade: gradeSchema, framing: framingSchema })),
    v.description('What values ramp from; null where nothing ramps.'),
  ),
  grade: gradeSchema,
  framing: framingSchema,
  tolerance: lookToleranceSchema,
})

const part = v.pipe(finite, v.minValue(0), v.maxValue(1))

/** 64 bytes: what both ways of signing give. */
const signature = v.pipe(v.string(), v.regex(/^[0-9a-f]{128}$/))

export const answerSchema = v.strictObject({
  says: v.picklist(['agreed', 'asked', 'open']),
  by: v.pipe(text(REVIEWER_LIMIT), v.description('The name as they gave it.')),
  at: v.nullable(moment),
  note: text(WORDS_LIMIT),
  marks: v.pipe(
    v.array(
      v.pipe(v.array(v.strictTuple([part, part])), v.minLength(1), v.maxLength(MOST_MARK_POINTS)),
    ),
    v.maxLength(MOST_MARKS),
    v.description('Lines drawn on the picture, in parts of its width and height.'),
  ),
  frame: v.pipe(v.nullable(wholeFrom(0)), v.description('The frame they were drawn on.')),
  alternate: v.pipe(v.nullable(text(GRADE_NAME_LIMIT)), v.description('That is preferred.')),
  look: v.pipe(lookSchema, v.description('All that decided the pictures.')),
  sha256: v.pipe(sha256, v.description('Of `look` in the canonical form of RFC 8785.')),
  pack: v.nullable(identifier),
  signature: v.nullable(signature),
})

export const packSchema = v.strictObject({
  id: identifier,
  madeAt: moment,
  madeFor: text(REVIEWER_LIMIT),
  cues: wholeFrom(1),
  key: v.nullable(
    v.strictObject({
      algorithm: v.picklist(['Ed25519', 'P-256']),
      publicKey: v.pipe(v.string(), v.regex(/^(?:[0-9a-f]{64}|04[0-9a-f]{128})$/)),
    }),
  ),
})
