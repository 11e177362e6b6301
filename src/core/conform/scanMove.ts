import type { PrintArea } from './printArea.ts'
import { PRINT_CELLS, PRINT_WIDTH } from './reelPrints.ts'

/**
 * How another scan shows the same picture: moved by cells of a print to the right and down, and
 * grown about the middle.
 */
export type ScanMove = { readonly dx: number; readonly dy: number; readonly zoom: number }

export const NO_SCAN_MOVE: ScanMove = { dx: 0, dy: 0, zoom: 1 }

const TAPS = 4

/** Parts of four cells in a row that make the value `t` (0…1) of the way between the inner two. */
const cubicParts = (t: number): readonly [number, number, number, number] => [
  ((-t + 2) * t - 1) * t * 0.5,
  ((3 * t - 5) * t * t + 2) * 0.5,
  ((-3 * t + 4) * t + 1) * t * 0.5,
  (t - 1) * t * t * 0.5,
]

/** Four places along a side, those outside repeated from its ends, and their parts. */
const alongSide = (place: number, from: number, to: number) => {
  const inside = Math.min(Math.max(place, from), to - 1)
  const whole = Math.floor(inside)
  return {
    places: [-1, 0, 1, 2].map((k) => Math.min(Math.max(whole + k, from), to - 1)),
    parts: cubicParts(inside - whole),
  }
}

/**
 * Moves the cells of an area: cubic interpolation (Keys 1981, a = −½), the cells at its edges
 * repeated. `out` keeps what it has outside the area.
 */
export const cellMover = (
  { dx, dy, zoom }: ScanMove,
  area: PrintArea,
): ((cells: Float32Array, out: Float32Array) => void) => {
  const [cx, cy] = [(area.left + area.right - 1) / 2, (area.top + area.bottom - 1) / 2]
  const columns = Array.from({ length: PRINT_WIDTH }, (_, x) =>
    alongSide(cx + (x - cx - dx) / zoom, area.left, area.right),
  )
  const [width, height] = [area.right - area.left, area.bottom - area.top]
  const columnPlaces = Int32Array.from(columns.flatMap(({ places }) => places))
  const columnParts = Float32Array.from(columns.flatMap(({ parts }) => parts))
  const rows = Array.from({ length: height }, (_, k) =>
    alongSide(cy + (area.top + k - cy - dy) / zoom, area.top, area.bottom),
  )
  const rowPlaces = Int32Array.from(rows.flatMap(({ places }) => places))
  const rowParts = Float32Array.from(rows.flatMap(({ parts }) => parts))
  const across = new Float32Array(PRINT_CELLS)
  return (cells, out) => {
    for (let y = area.top; y < area.bottom; y++)
      for (let x = area.left; x < area.left + width; x++) {
        let value = 0
        for (let k = TAPS * x; k < TAPS * (x + 1); k++)
          value +=
            (columnParts[k] as number) *
            (cells[y * PRINT_WIDTH + (columnPlaces[k] as number)] as number)
        across[y * PRINT_WIDTH + x] = value
      }
    for (let row = 0; row < height; row++)
      for (let x = area.left; x < area.right; x++) {
        let value = 0
        for (let k = TAPS * row; k < TAPS * (row + 1); k++)
          value +=
            (rowParts[k] as number) * (across[(rowPlaces[k] as number) * PRINT_WIDTH + x] as number)
        out[(area.top + row) * PRINT_WIDTH + x] = value
      }
  }
}
