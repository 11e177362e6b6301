/** The most cells across and down a picture that is watched for flashes: a choice of this project. */
const MOST_COLUMNS = 128
const MOST_ROWS = 72

/**
 * The means of R′, G′ and B′ (signal: 0 black, 1 peak) in the cells of a delivered picture, row by
 * row. The arrays are written anew for each frame.
 */
export type CellMeans = {
  readonly columns: number
  readonly rows: number
  /** Pixels of the picture. */
  readonly width: number
  readonly height: number
  /** The pixels of each cell: what its share of the picture's area is counted in. */
  readonly pixels: Int32Array
  readonly r: Float32Array
  readonly g: Float32Array
  readonly b: Float32Array
}

/**
 * Where cells begin: `cells` of them over `count` pixels, as even as whole pixels can be, and last
 * where they end.
 */
export const cellEdges = (count: number, cells: number): Int32Array =>
  Int32Array.from({ length: cells + 1 }, (_, i) => Math.floor((i * count) / cells))

const cellPixels = (columns: number, rows: number, width: number, height: number): Int32Array => {
  const across = cellEdges(width, columns)
  const down = cellEdges(height, rows)
  const span = (edges: Int32Array, i: number) => (edges[i + 1] ?? 0) - (edges[i] ?? 0)
  return Int32Array.from(
    { length: columns * rows },
    (_, i) => span(across, i % columns) * span(down, Math.floor(i / columns)),
  )
}

/** Room for the means of a picture of width × height pixels: at most 128 × 72 cells. */
export const createCellMeans = (width: number, height: number): CellMeans => {
  const columns = Math.min(MOST_COLUMNS, width)
  const rows = Math.min(MOST_ROWS, height)
  const plane = () => new Float32Array(columns * rows)
  const pixels = cellPixels(columns, rows, width, height)
  return { columns, rows, width, height, pixels, r: plane(), g: plane(), b: plane() }
}
