import { at } from '../base/assert.ts'
import type { RgbPicture } from '../picture/rgbPicture.ts'
import { type CellMeans, cellEdges } from './cellMeans.ts'

/** Writes into `into` the means of a delivered picture of its size: the kernel's reference. */
export const meanCells = ({ width, height, r, g, b }: RgbPicture, into: CellMeans): void => {
  const { columns, rows, pixels } = into
  const across = cellEdges(width, columns)
  const down = cellEdges(height, rows)
  for (const [plane, means] of [[r, into.r] as const, [g, into.g] as const, [b, into.b] as const])
    for (let row = 0; row < rows; row++)
      for (let column = 0; column < columns; column++) {
        let sum = 0
        for (let y = at(down, row); y < at(down, row + 1); y++)
          for (let x = at(across, column); x < at(across, column + 1); x++)
            sum += at(plane, y * width + x)
        const cell = row * columns + column
        means[cell] = sum / at(pixels, cell)
      }
}
