/** Lowest and highest level that are inside, as signal: 0 black, 1 peak. */
export type Limits = readonly [low: number, high: number]

/** A broadcast tolerance: what the delivered signal may do. */
export type ToleranceProfile = {
  readonly id: string
  readonly name: string
  /** Where its numbers are from, and which of them are not from a text that was seen. */
  readonly source: string
  /** Limits of R′, G′ and B′; null where only luma and composite are held to anything. */
  readonly rgb: Limits | null
  /** Limits of Y′ by the target's luma equation. */
  readonly luma: Limits
  /** Limits of the composite signal's peaks (`compositePeaks`); null where it is not looked at. */
  readonly composite: Limits | null
  /** Part of the delivered picture's area that may lie outside, 0…1. */
  readonly area: number
  /** Whether levels and area are taken after the spatial filter of EBU R 103 v3. */
  readonly filtered: boolean
}

/** Signal of a 10-bit narrow-range code: BT.709-6 §4.6. */
const code10 = (code: number): number => (code - 64) / 876

const PREFERRED = [code10(20), code10(984)] as const

/**
 * EBU R 103 v3.0 (May 2020): R′, G′, B′ and Y′ within the preferred range 20…984 of 10-bit codes
 * (the table, ±5 %), after the low-pass filter of "Video Signal Filtering", with excursions on up
 * to 1 % of the picture tolerated.
 */
export const EBU_R103_V3: ToleranceProfile = {
  id: 'ebu-r103-v3',
  name: 'EBU R 103 v3',
  source:
    'EBU R 103 v3.0 (May 2020): preferred range by table, video signal filtering, 1 % of area',
  rgb: PREFERRED,
  luma: PREFERRED,
  composite: null,
  area: 0.01,
  filtered: true,
}

/** Limits from memory: the text was not seen, nor whether it asks for a filter. */
const EBU_R103_V1_1: ToleranceProfile = {
  id: 'ebu-r103-v1-1',
  name: 'EBU R 103 v1.1',
  source:
    'EBU R 103 v1.1 (December 2000), from memory: R′G′B′ −35…735 mV, Y′ −7…721 mV, 1 % of area. Its text was not seen; whether it asks for a filter is not known, none is used',
  rgb: [-0.05, 1.05],
  luma: [-0.01, 1.03],
  composite: null,
  area: 0.01,
  filtered: false,
}

const NARROW_RANGE: ToleranceProfile = {
  id: 'narrow-range',
  name: 'Strict narrow range',
  source:
    'Black to nominal peak of BT.709-6 §4.6, 10-bit codes 64…940; that nothing may pass them is a house rule',
  rgb: [0, 1],
  luma: [0, 1],
  composite: null,
  area: 0,
  filtered: false,
}

/** 100 % bars of a 625-line signal peak at 933.9 and −233.9 mV: customarily +133 %/−33 %. */
export const COMPOSITE_625: ToleranceProfile & { readonly composite: Limits } = {
  id: 'composite-625',
  name: 'Composite 625',
  source:
    'A house rule, from memory: luma plus chroma −234…934 mV on 700 mV, the peaks of 100 % bars (+133 %/−33 %). Y′ as EBU R 103 v1.1, from memory. Common practice, no published source',
  rgb: null,
  luma: [-0.01, 1.03],
  composite: [-234 / 700, 934 / 700],
  area: 0.01,
  filtered: false,
}

/** Signal of a level on the IRE scale with a set-up of 7.5: SMPTE 170M, from memory. */
const ireWithSetUp = (ire: number): number => (ire - 7.5) / 92.5

const COMPOSITE_525: ToleranceProfile = {
  id: 'composite-525',
  name: 'Composite 525',
  source:
    'A house rule, from memory: luma plus chroma −20…120 IRE with a set-up of 7.5 IRE (houses differ: −20…−33, 100…120). Y′ black to peak. Common practice, no published source',
  rgb: null,
  luma: [0, 1],
  composite: [ireWithSetUp(-20), ireWithSetUp(120)],
  area: 0.01,
  filtered: false,
}

/** The profiles every job can be held to. */
export const PUBLISHED_PROFILES: readonly ToleranceProfile[] = [
  EBU_R103_V3,
  EBU_R103_V1_1,
  NARROW_RANGE,
  COMPOSITE_625,
  COMPOSITE_525,
]
