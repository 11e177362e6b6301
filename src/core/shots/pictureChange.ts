import { type FrameSignature, GRID_WIDTH } from './frameSignature.ts'
import type { PictureArea } from './pictureArea.ts'
import { type SeenFrame, sumOver } from './seenFrame.ts'

/** Blocks of the luma grid that are followed from one picture to the other, in cells. */
const BLOCK_WIDTH = 8
const BLOCK_HEIGHT = 6

/** How far a block may have moved, in cells: a ninth of the picture to each side. */
const REACH_X = 8
const REACH_Y = 6

/** A block is found again when what is left after matching is this small a part of its contrast. */
const FOUND = 0.3

/** Contrast, as signal, below which a block has nothing to be followed by. */
const LEAST_TEXTURE = 0.008

type Block = {
  readonly x: number
  readonly y: number
  readonly energy: number
  readonly mean: number
}

const CELLS = BLOCK_WIDTH * BLOCK_HEIGHT

const blockAt = (frame: SeenFrame, x: number, y: number): Block => {
  const mean = sumOver(frame.sums, x, y, BLOCK_WIDTH, BLOCK_HEIGHT) / CELLS
  const square = sumOver(frame.squares, x, y, BLOCK_WIDTH, BLOCK_HEIGHT) / CELLS
  return { x, y, mean, energy: Math.max(0, square - mean * mean) }
}

/**
 * 1 − r² of a block against a place in the other picture, where r is their correlation: nothing
 * of a change of brightness or contrast is left in it. Over 1 where they are each other's negative.
 */
const mismatch = (
  from: Float32Array,
  block: Block,
  to: SeenFrame,
  x: number,
  y: number,
): number => {
  const mean = sumOver(to.sums, x, y, BLOCK_WIDTH, BLOCK_HEIGHT) / CELLS
  const square = sumOver(to.squares, x, y, BLOCK_WIDTH, BLOCK_HEIGHT) / CELLS
  const energy = square - mean * mean
  if (energy < block.energy / 16) return 1
  const { luma } = to
  let products = 0
  for (let row = 0; row < BLOCK_HEIGHT; row++) {
    const i = (block.y + row) * GRID_WIDTH + block.x
    const j = (y + row) * GRID_WIDTH + x
    for (let k = 0; k < BLOCK_WIDTH; k++)
      products += (luma[j + k] as number) * (from[i + k] as number)
  }
  const covariance = products / CELLS - mean * block.mean
  if (covariance <= 0) return 1
  return 1 - (covariance * covariance) / (energy * block.energy)
}

/** The least mismatch of a block within reach, looking near `guess` first. */
const followBlock = (
  from: Float32Array,
  block: Block,
  to: SeenFrame,
  area: PictureArea,
  guess: { dx: number; dy: number },
): number => {
  const least = { x: area.left - block.x, y: area.top - block.y }
  const most = {
    x: area.right - BLOCK_WIDTH - block.x,
    y: area.bottom - BLOCK_HEIGHT - block.y,
  }
  let best = 1
  let bestX = guess.dx
  let bestY = guess.dy
  const search = (cx: number, cy: number, rx: number, ry: number, step: number): void => {
    for (let dy = cy - ry; dy <= cy + ry; dy += step) {
      if (dy < least.y || dy > most.y) continue
      const odd = step > 1 && (dy - cy + ry) % (2 * step) !== 0 ? 1 : 0
      for (let dx = cx - rx + odd; dx <= cx + rx; dx += step) {
        if (dx < least.x || dx > most.x) continue
        const left = mismatch(from, block, to, block.x + dx, block.y + dy)
        if (left >= best) continue
        best = left
        bestX = dx
        bestY = dy
      }
    }
  }
  search(0, 0, 0, 0, 1)
  if (best >= FOUND / 2) search(guess.dx, guess.dy, 1, 1, 1)
  if (best >= FOUND / 2) {
    search(0, 0, REACH_X, REACH_Y, 2)
    if (best < FOUND * 2) search(bestX, bestY, 1, 1, 1)
  }
  guess.dx = bestX
  guess.dy = bestY
  return best
}

/** Part of one picture's textured blocks that are not found in the other, weighed by texture. */
const lost = (from: SeenFrame, to: SeenFrame, area: PictureArea): number | undefined => {
  const guess = { dx: 0, dy: 0 }
  let weight = 0
  let gone = 0
  const left = area.left + (((area.right - area.left) % BLOCK_WIDTH) >> 1)
  const top = area.top + (((area.bottom - area.top) % BLOCK_HEIGHT) >> 1)
  for (let y = top; y <= area.bottom - BLOCK_HEIGHT; y += BLOCK_HEIGHT)
    for (let x = left; x <= area.right - BLOCK_WIDTH; x += BLOCK_WIDTH) {
      const block = blockAt(from, x, y)
      const texture = Math.sqrt(block.energy)
      if (texture < Math.max(LEAST_TEXTURE, from.deviation / 8)) continue
      const w = Math.min(texture, from.deviation)
      weight += w
      const missing = followBlock(from.luma, block, to, area, guess)
      gone += w * Math.min(1, Math.max(0, (missing - FOUND / 3) / (FOUND * 2)))
    }
  return weight > 0 ? gone / weight : undefined
}

const meanDifference = (a: Float32Array, b: Float32Array): number => {
  let sum = 0
  for (let i = 0; i < a.length; i++) sum += Math.abs((a[i] as number) - (b[i] as number))
  return sum / a.length
}

/** With less than this lost one way, the other way is not looked at: it is one scene. */
const CALM = 0.12

/** Difference of two pictures that have nothing to follow: in level or in colour. */
const flatDifference = (a: FrameSignature, b: FrameSignature): number =>
  Math.max(meanDifference(a.luma, b.luma), meanDifference(a.cb, b.cb), meanDifference(a.cr, b.cr))

/**
 * How much of a picture is another one, 0 (the same scene) … 1 (nothing found again). Blocks are
 * followed within a ninth of the picture, brightness and contrast apart: motion, flicker and a
 * flash that leaves the scene visible change little. What is lost both ways counts more, so that a
 * caption that comes or goes over a scene changes little as well.
 */
export const pictureChange = (a: SeenFrame, b: SeenFrame, area: PictureArea): number => {
  const forwards = lost(a, b, area)
  if (forwards !== undefined && forwards < CALM) return forwards
  const backwards = lost(b, a, area)
  if (forwards === undefined && backwards === undefined)
    return Math.min(1, flatDifference(a.signature, b.signature) * 5)
  const [less, more] = [
    Math.min(forwards ?? 1, backwards ?? 1),
    Math.max(forwards ?? 1, backwards ?? 1),
  ]
  return 0.6 * less + 0.4 * more
}
