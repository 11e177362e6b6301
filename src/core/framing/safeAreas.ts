/** How the line of an area is drawn: told apart by its shape. */
export type LineShape = 'solid' | 'dashes' | 'dash-dot' | 'dots'

/** A part of the delivered picture, in the middle of it, that something must stay inside. */
export type SafeArea = {
  readonly name: string
  /** Parts of the delivered width and height. */
  readonly width: number
  readonly height: number
  readonly line: LineShape
  /** Where the numbers come from, short; and in a sentence. */
  readonly source: string
  readonly says: string
}

const HD = 16 / 9
const SD = 4 / 3
const COMMON = 'common practice'

/** Shapes this near count as 16 : 9 or 4 : 3, such as 720×576 with its edges. */
const isShape = (aspect: number, shape: number): boolean => Math.abs(aspect / shape - 1) < 0.03

const centred = (ratio: number, aspect: number) => ({
  width: Math.min(1, ratio / aspect),
  height: Math.min(1, aspect / ratio),
})

/** Action 93 % and graphics 90 % of width and height; `isOther` where the picture is not 16 : 9. */
const r95 = (isOther: boolean): readonly SafeArea[] => {
  const source = isOther ? COMMON : 'EBU R 95'
  const whence = isOther
    ? 'EBU R 95 is for 16 : 9; its margins on another shape are common practice.'
    : 'EBU R 95 for 16 : 9; the figure as the BKSTS dictionary (appendix B) has it.'
  return [
    {
      name: 'action safe',
      width: 0.93,
      height: 0.93,
      line: 'solid',
      source,
      says: `Action safe: 3.5 % in from each edge. ${whence}`,
    },
    {
      name: 'graphics safe',
      width: 0.9,
      height: 0.9,
      line: 'dashes',
      source,
      says: `Graphics safe: 5 % in from each edge. ${whence}`,
    },
  ]
}

const OF_16_9: readonly SafeArea[] = [
  ...r95(false),
  {
    name: '14 : 9',
    ...centred(14 / 9, HD),
    line: 'dash-dot',
    source: COMMON,
    says: 'The middle of the picture that a 14 : 9 showing keeps: common practice; EBU R 95 of 2008 guides on it, its numbers were not seen.',
  },
  {
    name: '4 : 3',
    ...centred(SD, HD),
    line: 'dots',
    source: COMMON,
    says: 'The middle of the picture that a 4 : 3 showing keeps: common practice; EBU R 95 had it up to its edition of 2000.',
  },
]

const OF_4_3: readonly SafeArea[] = [
  {
    name: 'action safe',
    width: 0.9,
    height: 0.9,
    line: 'solid',
    source: COMMON,
    says: 'Action safe: 90 % of a 4 : 3 picture, as the BKSTS dictionary (appendix B) has it.',
  },
  {
    name: 'title safe',
    width: 0.8,
    height: 0.8,
    line: 'dashes',
    source: COMMON,
    says: 'Title safe: 80 % of a 4 : 3 picture, as the BKSTS dictionary (appendix B) has it.',
  },
  {
    name: '14 : 9',
    ...centred(14 / 9, SD),
    line: 'dash-dot',
    source: COMMON,
    says: 'The middle of a 4 : 3 picture that a 14 : 9 showing keeps: common practice.',
  },
]

/**
 * The safe areas of a delivered picture of shape `aspect` (width over height). For 16 : 9 those of
 * EBU R 95 (facts/levels.md §5: values from a secondary publication) and the middle 14 : 9 and
 * 4 : 3 protected with it (common practice); for 4 : 3 the older 90 % and 80 %.
 */
export const safeAreas = (aspect: number): readonly SafeArea[] =>
  isShape(aspect, HD) ? OF_16_9 : isShape(aspect, SD) ? OF_4_3 : r95(true)
