import * as v from 'valibot'
import {
  CUE_FOREIGN_LIMIT,
  GRADE_NAME_LIMIT,
  MOST_ALTERNATES,
  MOST_ANSWERS,
  MOST_HELD,
  MOST_HELD_FRAMES,
  MOST_HOUSE_PROFILES,
  MOST_LINE_UPS,
  MOST_PACKS,
  MOST_PASSES,
  NAME_LIMIT,
  REEL_FOREIGN_LIMIT,
  SCENE_LIMIT,
  WORDS_LIMIT,
} from '../../job/limits.ts'
import { CHECKLIST_NAMES } from '../../transfer/override.ts'
import { PASS_CHECKS } from '../../transfer/passRecord.ts'
import { LONGEST_HEAD_PART, TRANSFER_FORMATS } from '../../transfer/transferSettings.ts'
import { answerSchema, packSchema } from './answerSchema.ts'
import { JOB_VERSION } from './migrations.ts'
import { guideSchema, particularsSchema, rateSchema } from './particularsSchema.ts'
import { baseSchema, mediaSchema, profileSchema } from './scanSchemas.ts'
import { finite, identifier, moment, sha256, text, wholeFrom } from './schemaParts.ts'
import { framingSchema, gradeSchema } from './valueSchemas.ts'

/** What other lists said, at most once a format (which checkJob sees to). */
const foreignSchema = (limit: number) =>
  v.pipe(
    v.array(v.strictObject({ format: v.picklist(['cdl', 'edl', 'otio']), text: text(limit) })),
    v.maxLength(3),
    v.description('What lists made elsewhere said that has no field here, as JSON text.'),
  )

/** The most cues a job file may hold. */
export const MOST_CUES = 200_000

const answersSchema = v.pipe(
  v.array(answerSchema),
  v.maxLength(MOST_ANSWERS),
  v.description('What was said of the cue, the first first; the last holds.'),
)

export const cueSchema = v.strictObject({
  id: identifier,
  reel: identifier,
  first: v.pipe(wholeFrom(0), v.description('First frame of the cue, from 0.')),
  ramp: v.pipe(wholeFrom(0), v.maxValue(10_000)),
  rampShape: v.picklist(['linear', 'eased']),
  boundary: v.strictObject({
    kind: v.picklist(['start', 'cut', 'dissolve', 'fade-out', 'fade-in', 'dip', 'by-hand']),
    confidence: v.pipe(finite, v.minValue(0), v.maxValue(1)),
  }),
  grade: gradeSchema,
  gradeName: v.pipe(text(GRADE_NAME_LIMIT), v.description('Of the grade in force.')),
  alternates: v.pipe(
    v.array(v.strictObject({ name: text(GRADE_NAME_LIMIT), grade: gradeSchema })),
    v.maxLength(MOST_ALTERNATES),
    v.description('Other grades kept on the cue.'),
  ),
  framing: framingSchema,
  scene: v.pipe(text(SCENE_LIMIT), v.description('Mark that cues of one scene share.')),
  note: text(4000),
  answers: answersSchema,
  foreign: foreignSchema(CUE_FOREIGN_LIMIT),
})

const heldSchema = v.strictObject({
  id: identifier,
  reel: identifier,
  frame: wholeFrom(0),
  name: text(NAME_LIMIT),
  grade: gradeSchema,
  framing: framingSchema,
})

const headPart = v.pipe(wholeFrom(0), v.maxValue(LONGEST_HEAD_PART))

const transferSchema = v.pipe(
  v.strictObject({
    format: v.picklist(TRANSFER_FORMATS),
    limiting: v.picklist(['none', 'soft', 'hard']),
    burnsTimecode: v.boolean(),
    head: v.strictObject({ bars: headPart, slate: headPart, leader: headPart }),
    carriesSound: v.boolean(),
    onDamage: v.picklist(['stop', 'hold']),
  }),
  v.description('How the reel is transferred.'),
)

const overridesSchema = v.pipe(
  v.array(
    v.strictObject({
      check: v.picklist(CHECKLIST_NAMES),
      found: text(WORDS_LIMIT),
      about: v.pipe(
        v.array(text(NAME_LIMIT)),
        v.maxLength(2 * MOST_CUES),
        v.description('What was found, one mark each; the reason holds for these alone.'),
      ),
      reason: v.pipe(text(WORDS_LIMIT), v.minLength(1)),
      at: moment,
    }),
  ),
  v.maxLength(CHECKLIST_NAMES.length),
  v.description('Reasons to transfer although something on the checklist was not right.'),
)

const passSchema = v.strictObject({
  id: identifier,
  reel: identifier,
  begunAt: moment,
  endedAt: moment,
  madeWith: text(NAME_LIMIT),
  settings: transferSchema,
  output: v.strictObject({
    name: text(NAME_LIMIT),
    files: wholeFrom(1),
    frames: wholeFrom(1),
    bytes: wholeFrom(0),
    sha256,
  }),
  decided: v.pipe(sha256, v.description('Of all that decided the pictures.')),
  scan: v.pipe(v.nullable(sha256), v.description('Of the scan it was made from.')),
  overrides: overridesSchema,
  findings: v.pipe(
    v.array(
      v.strictObject({
        check: v.picklist(PASS_CHECKS),
        standing: v.picklist(['right', 'wrong', 'told', 'not known']),
        says: text(WORDS_LIMIT),
      }),
    ),
    v.maxLength(20),
  ),
  heldFrames: v.pipe(v.array(wholeFrom(0)), v.maxLength(MOST_HELD_FRAMES)),
})

const reelSchema = v.strictObject({
  id: identifier,
  name: v.pipe(text(NAME_LIMIT), v.minLength(1)),
  gauge: v.picklist([
    '35mm-4perf',
    '35mm-3perf',
    '35mm-2perf',
    '16mm',
    'super16',
    '9.5mm',
    'super8',
    'standard8',
  ]),
  rate: rateSchema,
  frames: wholeFrom(1),
  startCount: wholeFrom(0),
  isDropFrame: v.boolean(),
  base: baseSchema,
  particulars: particularsSchema,
  guide: guideSchema,
  media: mediaSchema,
  lineUps: v.pipe(
    v.array(v.strictObject({ at: moment, says: text(WORDS_LIMIT) })),
    v.maxLength(MOST_LINE_UPS),
    v.description('Line-ups of the scanner logged for the reel.'),
  ),
  transfer: transferSchema,
  overrides: overridesSchema,
  foreign: foreignSchema(REEL_FOREIGN_LIMIT),
})

/** What the file looks like: the open job format (docs/job-format.md). */
export const jobFileSchema = v.strictObject({
  format: v.literal('reelwright-job'),
  version: v.literal(JOB_VERSION),
  info: v.strictObject({
    id: v.literal('job'),
    title: text(NAME_LIMIT),
    tolerance: text(100),
    profiles: v.pipe(v.array(profileSchema), v.maxLength(MOST_HOUSE_PROFILES)),
    asksAgreement: v.pipe(
      v.boolean(),
      v.description('Whether every cue is to be agreed before a transfer.'),
    ),
  }),
  reels: v.pipe(v.array(reelSchema), v.minLength(1), v.maxLength(1000)),
  cues: v.pipe(v.array(cueSchema), v.maxLength(MOST_CUES)),
  held: v.pipe(v.array(heldSchema), v.maxLength(MOST_HELD)),
  passes: v.pipe(
    v.array(passSchema),
    v.maxLength(MOST_PASSES),
    v.description('Transfers that were made.'),
  ),
  packs: v.pipe(
    v.array(packSchema),
    v.maxLength(MOST_PACKS),
    v.description('Review packs that were made.'),
  ),
})
