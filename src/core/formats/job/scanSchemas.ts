import * as v from 'valibot'
import {
  LARGEST_DENSITY,
  LARGEST_LEVEL,
  NAME_LIMIT,
  PROFILE_NAME_LIMIT,
  SMALLEST_FILM_GAMMA,
} from '../../job/limits.ts'
import { finite, identifier, processListSchema, sha256, text, wholeFrom } from './schemaParts.ts'

const statedBy = v.picklist(['file', 'person'])

/** What of a scan decides a picture. */
const scanEntries = {
  width: v.pipe(wholeFrom(1), v.maxValue(65_536)),
  height: v.pipe(wholeFrom(1), v.maxValue(65_536)),
  displayAspect: v.pipe(finite, v.gtValue(0)),
  depth: v.pipe(wholeFrom(8), v.maxValue(16)),
  layout: v.picklist(['420', '422', '444', 'rgb']),
  matrix: v.picklist(['bt601', 'bt709', 'bt2020']),
  range: v.picklist(['narrow', 'full']),
  bytes: wholeFrom(0),
  checksum: v.pipe(v.nullable(sha256), v.description('SHA-256 of the scan; null: not taken.')),
}

export const lookScanSchema = v.strictObject(scanEntries)

export const mediaSchema = v.strictObject({
  name: text(NAME_LIMIT),
  container: text(100),
  codec: text(100),
  ...scanEntries,
  matrixBy: statedBy,
  rangeBy: statedBy,
  rateBy: statedBy,
})

/** Densities and their sums: past any film, and far from where a number overflows. */
const density = v.pipe(v.number(), v.minValue(-LARGEST_DENSITY), v.maxValue(LARGEST_DENSITY))
const filmGamma = v.pipe(v.number(), v.minValue(SMALLEST_FILM_GAMMA), v.maxValue(LARGEST_DENSITY))
const densities = v.strictTuple([density, density, density])

/** A base but for its list. */
const baseEntries = {
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
}

export const baseSchema = v.strictObject({
  ...baseEntries,
  list: v.pipe(
    v.nullable(processListSchema),
    v.description('Steps on the signal, after all that.'),
  ),
})

export const lookBaseSchema = v.strictObject({
  ...baseEntries,
  list: v.pipe(v.nullable(sha256), v.description('SHA-256 of the base’s process list.')),
})

const level = v.pipe(v.number(), v.minValue(-LARGEST_LEVEL), v.maxValue(LARGEST_LEVEL))
const limits = v.strictTuple([level, level])

/** What a profile holds a picture to. */
const limitsEntries = {
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
}

export const profileSchema = v.strictObject({
  id: identifier,
  name: v.pipe(text(PROFILE_NAME_LIMIT), v.minLength(1)),
  source: text(NAME_LIMIT),
  ...limitsEntries,
})

export const lookToleranceSchema = v.strictObject(limitsEntries)
