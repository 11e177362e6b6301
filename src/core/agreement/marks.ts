import type { Mark, MarkPoint } from './answer.ts'

/** A place on a picture by its parts of width and height, kept to a thousandth and inside it. */
export const markPoint = (across: number, down: number): MarkPoint => {
  const part = (value: number): number => Math.round(Math.min(1, Math.max(0, value)) * 1000) / 1000
  return [part(across), part(down)]
}

/** A line as the points of an SVG polyline over a picture of 1000×1000; a dot is drawn as one. */
export const markPath = (mark: Mark): string =>
  (mark.length === 1 ? [...mark, ...mark] : mark)
    .map(([across, down]) => `${across * 1000},${down * 1000}`)
    .join(' ')
