import { at } from '../base/assert.ts'
import type { Coding } from '../picture/planes.ts'
import {
  type BoxLevel,
  BRANCH,
  type CensusData,
  type ColourTally,
  LEAF,
  outward,
} from './censusData.ts'
import { isExactShape } from './censusShape.ts'
import { keyBoxes } from './keyBoxes.ts'
import { orderByNearness } from './orderByNearness.ts'

/** Lays out the colours of a cue (all its pixels, each counted once). */
export const buildCensus = (tally: ColourTally, coding: Coding): CensusData => {
  const { shape } = tally
  const boxOf = keyBoxes(shape, coding)
  const count = tally.keys.length
  const middles = new Float32Array(count * 3)
  for (let i = 0; i < count; i++) {
    const { low, high } = boxOf(at(tally.keys, i))
    for (const c of [0, 1, 2] as const) middles[i * 3 + c] = (low[c] + high[c]) / 2
  }
  const order = orderByNearness(middles)
  const keys = Uint32Array.from(order, (i) => at(tally.keys, i))
  const counts = Uint32Array.from(order, (i) => at(tally.counts, i))
  const isExact = isExactShape(shape)
  const perKey = isExact ? 3 : 6
  const levels = new Float32Array(count * perKey)
  const boxes = new Float32Array(Math.ceil(count / LEAF) * 6)
  const pixels = new Float64Array(Math.ceil(count / LEAF))
  let all = 0
  for (let i = 0; i < count; i++) {
    const { low, high } = boxOf(at(keys, i))
    const leaf = Math.floor(i / LEAF)
    const isFirst = i % LEAF === 0
    for (const c of [0, 1, 2] as const) {
      const least = outward(low[c], 1)
      const most = outward(high[c], -1)
      levels[i * perKey + c] = isExact ? low[c] : least
      if (!isExact) levels[i * perKey + 3 + c] = most
      const place = leaf * 6 + c
      boxes[place] = isFirst ? least : Math.min(at(boxes, place), least)
      boxes[place + 3] = isFirst ? most : Math.max(at(boxes, place + 3), most)
    }
    pixels[leaf] = at(pixels, leaf) + at(counts, i)
    all += at(counts, i)
  }
  let top: BoxLevel = { boxes, pixels }
  const over: BoxLevel[] = [top]
  while (top.pixels.length > 1) {
    top = levelOver(top)
    over.push(top)
  }
  return { shape, coding, keys, counts, levels, boxes: over, pixels: all }
}

const levelOver = (below: BoxLevel): BoxLevel => {
  const count = Math.ceil(below.pixels.length / BRANCH)
  const boxes = new Float32Array(count * 6)
  const pixels = new Float64Array(count)
  for (let i = 0; i < below.pixels.length; i++) {
    const over = Math.floor(i / BRANCH)
    const isFirst = i % BRANCH === 0
    for (let c = 0; c < 3; c++) {
      const low = at(below.boxes, i * 6 + c)
      const high = at(below.boxes, i * 6 + 3 + c)
      const place = over * 6 + c
      boxes[place] = isFirst ? low : Math.min(at(boxes, place), low)
      boxes[place + 3] = isFirst ? high : Math.max(at(boxes, place + 3), high)
    }
    pixels[over] = at(pixels, over) + at(below.pixels, i)
  }
  return { boxes, pixels }
}
