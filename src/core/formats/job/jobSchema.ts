import * as v from 'valibot'
import {
  CUE_FOREIGN_LIMIT,
  GRADE_NAME_LIMIT,
  LARGEST_DENSITY,
  LARGEST_LEVEL,
  MOST_ALTERNATES,
  MOST_HELD,
  MOST_HELD_FRAMES,
  MOST_HOUSE_PROFILES,
  MOST_LINE_UPS,
  MOST_PASSES,
  NAME_LIMIT,
  PROFILE_NAME_LIMIT,
  REEL_FOREIGN_LIMIT,
  SCENE_LIMIT,
  SMALLEST_FILM_GAMMA,
  SMALLEST_GAMMA,
  WORDS_LIMIT,
} from '../../job/limits.ts'
import { CHECKLIST_NAMES } from '../../transfer/override.ts'
import { PASS_CHECKS } from '../../transfer/passRecord.ts'
import { LONGEST_HEAD_PART, TRANSFER_FORMATS } from '../../transfer/transferSettings.ts'
import { JOB_VERSION } from './migrations.ts'
import { finite, processListSchema, text, triple, wholeFrom } from './schemaParts.ts'

const identifier = v.pipe(v.string(), v.regex(/^[A-Za-z][A-Za-z0-9_-]{0,63}$/))
const gamma = v.pipe(finite, v.minValue(SMALLEST_GAMMA))
const gammaTriple = v.strictTuple([gamma, gamma, gamma])

const gradeSchema = v.strictObject({
  lift: v.pipe(triple, v.description('Black level of R, G, B as signal: 0 black, 1 peak.')),
  gamma: v.pipe(gammaTriple, v.description('Gamma of R, G, B; above 1 brightens.')),
  gain: v.pipe(triple, v.description('Peak white of R, G, B as signal; not below lift.')),
  saturation: v.pipe(finite, v.minValue(0)),
})

const framingSchema = v.strictObject({
  zoom: v.pipe(finite, v.minValue(0.25), v.maxValue(8)),
  pan: v.pipe(finite, v.minValue(-1), v.maxValue(1)),
  tilt: v.pipe(finite, v.minValue(-1), v.maxValue(1)),
  rotation: v.pipe(
    finite,
    v.minValue(-180),
    v.maxValue(180),
    v.description('Degrees clockwise, about the middle of the view.'),
  ),
  squeeze: v.pipe(
    finite,
    v.minValue(0.25),
    v.maxValue(4),
    v.description('How many times wider than scanned the picture is shown.'),
  ),
  blanking: v.pipe(
    finite,
    v.minValue(-0.95),
    v.maxValue(0.95),
    v.description('Part of the height that is black; below 0, of the width.'),
  ),
})

/** What other lists said, at most once a format (which checkJob sees to). */
const foreignSchema = (limit: number) =>
  v.pipe(
    v.array(v.strictObject({ format: v.picklist(['cdl', 'edl', 'otio']), text: text(limit) })),
    v.maxLength(3),
    v.description('What lists made elsewhere said that has no field here, as JSON text.'),
  )

/** The most cues a job file may hold. */
export const MOST_CUES = 200_000

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
  agreement: v.picklist(['open', 'agreed', 'asked']),
  agreedLook: v.pipe(
    v.nullable(v.strictObject({ grade: gradeSchema, framing: framingSchema })),
    v.description('What was agreed; null unless agreed.'),
  ),
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

const sha256 = v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/))

/** A moment in UTC, ISO 8601. */
const moment = v.pipe(v.string(), v.regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d{1,3})?Z$/))

const statedBy = v.picklist(['file', 'person'])

const mediaSchema = v.strictObject({
  name: text(NAME_LIMIT),
  container: text(100),
  codec: text(100),
  width: v.pipe(wholeFrom(1), v.maxValue(65_536)),
  height: v.pipe(wholeFrom(1), v.maxValue(65_536)),
  displayAspect: v.pipe(finite, v.gtValue(0)),
  depth: v.pipe(wholeFrom(8), v.maxValue(16)),
  layout: v.picklist(['420', '422', '444', 'rgb']),
  matrix: v.picklist(['bt601', 'bt709', 'bt2020']),
  matrixBy: statedBy,
  range: v.picklist(['narrow', 'full']),
  rangeBy: statedBy,
  rateBy: statedBy,
  bytes: wholeFrom(0),
  checksum: v.pipe(v.nullable(sha256), v.description('SHA-256 of the scan; null: not taken.')),
})

/** Densities and their sums: past any film, and far from where a number overflows. */
const density = v.pipe(v.number(), v.minValue(-LARGEST_DENSITY), v.maxValue(LARGEST_DENSITY))
const filmGamma = v.pipe(v.number(), v.minValue(SMALLEST_FILM_GAMMA), v.maxValue(LARGEST_DENSITY))
const densities = v.strictTuple([density, density, density])

const baseSchema = v.strictObject({
  scan: v.picklist(['print', 'printing-density', 'negative']),
  clear: v.pipe(densities, v.description('Density of a negative’s clear film in R, G, B.')),
  gamma: v.pipe(
    v.strictTuple([filmGamma, filmGamma, filmGamma]),
    v.description('Gamma of a negative’s layers.'),
  ),
  dyes: v.pipe(
    v.strictTuple([densities, densities, densities]),
    v.description('Dye restoration: 3×3 by rows, on densities.'),
  ),
  list: v.pipe(
    v.nullable(processListSchema),
    v.description('Steps on the signal, after all that.'),
  ),
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
    '9.5mm',
    'super8',
    'standard8',
  ]),
  rate: v.strictObject({ num: wholeFrom(1), den: wholeFrom(1) }),
  frames: wholeFrom(1),
  startCount: wholeFrom(0),
  isDropFrame: v.boolean(),
  base: baseSchema,
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

const level = v.pipe(v.number(), v.minValue(-LARGEST_LEVEL), v.maxValue(LARGEST_LEVEL))
const limits = v.strictTuple([level, level])

const profileSchema = v.strictObject({
  id: identifier,
  name: v.pipe(text(PROFILE_NAME_LIMIT), v.minLength(1)),
  source: text(NAME_LIMIT),
  rgb: v.pipe(v.nullable(limits), v.description('Lowest and highest R′, G′, B′ as signal.')),
  luma: v.pipe(limits, v.description('Lowest and highest Y′.')),
  composite: v.pipe(
    v.nullable(limits),
    v.description('Lowest and highest peak of luma with chroma.'),
  ),
  area: v.pipe(
    v.number(),
    v.minValue(0),
    v.maxValue(1),
    v.description('Part of the picture that may be outside.'),
  ),
  filtered: v.pipe(v.boolean(), v.description('Measured after the filter of EBU R 103 v3.')),
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
})
