import { type FrameSignature, GRID_HEIGHT, GRID_WIDTH } from './frameSignature.ts'

/** Blocks of the luma grid that are followed from one picture to the other, in cells. */
const BLOCK_WIDTH = 8
const BLOCK_HEIGHT = 6

/** How far a block may have moved, in cells: a ninth of the picture to each side. */
const REACH_X = 8
const REACH_Y = 5

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

const blockEnergy = (luma: Float32Array, x: number, y: number): Block => {
  let sum = 0
  let squares = 0
  for (let row = y; row < y + BLOCK_HEIGHT; row++)
    for (let i = row * GRID_WIDTH + x, end = i + BLOCK_WIDTH; i < end; i++) {
      const value = luma[i] as number
      sum += value
      squares += value * value
    }
  const count = BLOCK_WIDTH * BLOCK_HEIGHT
  const mean = sum / count
  return { x, y, mean, energy: Math.max(0, squares / count - mean * mean) }
}

/**
 * 1 − r² of a block against a place in the other picture, where r is their correlation: nothing
 * of a change of brightness or contrast is left in it. Over 1 where they are each other's negative.
 */
const mismatch = (
  from: Float32Array,
  block: Block,
  to: Float32Array,
  x: number,
  y: number,
): number => {
  let sum = 0
  let squares = 0
  let products = 0
  for (let row = 0; row < BLOCK_HEIGHT; row++) {
    let i = (block.y + row) * GRID_WIDTH + block.x
    let j = (y + row) * GRID_WIDTH + x
    for (const end = i + BLOCK_WIDTH; i < end; i++, j++) {
      const value = to[j] as number
      sum += value
      squares += value * value
      products += value * (from[i] as number)
    }
  }
  const count = BLOCK_WIDTH * BLOCK_HEIGHT
  const mean = sum / count
  const energy = squares / count - mean * mean
  const covariance = products / count - mean * block.mean
  if (energy < block.energy / 16 || covariance <= 0) return 1
  return 1 - (covariance * covariance) / (energy * block.energy)
}

/** The least mismatch of a block within reach, looking near `guess` first. */
const followBlock = (
  from: Float32Array,
  block: Block,
  to: Float32Array,
  guess: { dx: number; dy: number },
): number => {
  let best = 1
  const visit = (dx: number, dy: number): void => {
    const x = block.x + dx
    const y = block.y + dy
    if (x < 0 || y < 0 || x > GRID_WIDTH - BLOCK_WIDTH || y > GRID_HEIGHT - BLOCK_HEIGHT) return
    const left = mismatch(from, block, to, x, y)
    if (left < best) {
      best = left
      guess.dx = dx
      guess.dy = dy
    }
  }
  const visitAround = (dx: number, dy: number): void => {
    for (let j = -1; j <= 1; j++) for (let i = -1; i <= 1; i++) visit(dx + i, dy + j)
  }
  const { dx, dy } = guess
  visit(0, 0)
  if (best < FOUND / 2) return best
  visitAround(dx, dy)
  if (best < FOUND / 2) return best
  // Cells are means: a match shows two cells away, so every other place is enough to find it.
  for (let j = -REACH_Y; j <= REACH_Y; j += 2)
    for (let i = -REACH_X; i <= REACH_X; i += 2) visit(i, j)
  visitAround(guess.dx, guess.dy)
  return best
}

/** Part of one picture's textured blocks that are not found in the other, weighed by texture. */
const lost = (from: FrameSignature, to: FrameSignature): number | undefined => {
  const guess = { dx: 0, dy: 0 }
  let weight = 0
  let gone = 0
  for (let y = 0; y <= GRID_HEIGHT - BLOCK_HEIGHT; y += BLOCK_HEIGHT)
    for (let x = 0; x <= GRID_WIDTH - BLOCK_WIDTH; x += BLOCK_WIDTH) {
      const block = blockEnergy(from.luma, x, y)
      const texture = Math.sqrt(block.energy)
      if (texture < Math.max(LEAST_TEXTURE, from.deviation / 8)) continue
      const w = Math.min(texture, from.deviation)
      weight += w
      const left = followBlock(from.luma, block, to.luma, guess)
      gone += w * Math.min(1, Math.max(0, (left - FOUND / 3) / (FOUND * 2)))
    }
  return weight > 0 ? gone / weight : undefined
}

const meanDifference = (a: Float32Array, b: Float32Array): number => {
  let sum = 0
  for (let i = 0; i < a.length; i++) sum += Math.abs((a[i] as number) - (b[i] as number))
  return sum / a.length
}

/**
 * How much of a picture is another one, 0 (the same scene) … 1 (nothing found again). Blocks are
 * followed within a ninth of the picture, brightness and contrast apart: motion, flicker and a
 * flash that leaves the scene visible change little. What is lost both ways counts more, so that a
 * caption that comes or goes over a scene changes little as well.
 */
export const pictureChange = (a: FrameSignature, b: FrameSignature): number => {
  const forwards = lost(a, b)
  if (forwards === 0) return 0
  const backwards = lost(b, a)
  if (forwards === undefined && backwards === undefined)
    return Math.min(1, meanDifference(a.luma, b.luma) * 5)
  const [less, more] = [
    Math.min(forwards ?? 1, backwards ?? 1),
    Math.max(forwards ?? 1, backwards ?? 1),
  ]
  return 0.6 * less + 0.4 * more
}
