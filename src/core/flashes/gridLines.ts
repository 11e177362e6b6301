/** The ways in which bars may follow one another: across, down, and both diagonals. */
export const WAYS = [
  [1, 0],
  [0, 1],
  [1, 1],
  [1, -1],
] as const

const linesOf = (columns: number, rows: number): readonly (readonly Int32Array[])[] =>
  WAYS.map(([dx, dy]) => {
    const lines: Int32Array[] = []
    const isInside = (x: number, y: number) => x >= 0 && x < columns && y >= 0 && y < rows
    for (let cell = 0; cell < columns * rows; cell++) {
      const [x, y] = [cell % columns, Math.floor(cell / columns)]
      if (isInside(x - dx, y - dy)) continue
      const line: number[] = []
      for (let i = 0; isInside(x + i * dx, y + i * dy); i++)
        line.push((y + i * dy) * columns + x + i * dx)
      lines.push(Int32Array.from(line))
    }
    return lines
  })

let held = { columns: 0, rows: 0, lines: linesOf(0, 0) }

/** The lines of cells of a grid by each way; those of the last grid are kept, for there is mostly one. */
export const gridLines = (columns: number, rows: number): readonly (readonly Int32Array[])[] => {
  if (held.columns !== columns || held.rows !== rows)
    held = { columns, rows, lines: linesOf(columns, rows) }
  return held.lines
}
