import { type BoxLevel, BRANCH, type CensusData, LEAF } from './censusData.ts'

/**
 * Goes through a census from its one box downwards: below a box where `isOpen` (told the boxes of
 * its level and which of them it is) says so, down to runs of keys, `first` up to `end`.
 */
export const walkBoxes = (
  { boxes: over, keys }: CensusData,
  isOpen: (level: BoxLevel, box: number) => boolean,
  visitKeys: (first: number, end: number) => void,
): void => {
  const walk = (height: number, first: number, end: number): void => {
    const level = over[height] as BoxLevel
    for (let i = first; i < end; i++) {
      if (!isOpen(level, i)) continue
      if (height === 0) visitKeys(i * LEAF, Math.min((i + 1) * LEAF, keys.length))
      else {
        const below = (over[height - 1] as BoxLevel).pixels.length
        walk(height - 1, i * BRANCH, Math.min((i + 1) * BRANCH, below))
      }
    }
  }
  const top = over.length - 1
  walk(top, 0, over[top]?.pixels.length ?? 0)
}
