import { type SurfaceNumberId, surfaceNumber } from './surfaceNumber.ts'

/** Cb and Cr of one tint are one thing that is moved. */
const nameOf = (id: SurfaceNumberId): string => surfaceNumber(id).label.replace(/ C[br]$/u, '')

/** What the history calls a movement of these numbers. */
export const moveLabel = (ids: Iterable<SurfaceNumberId>): string => {
  const names = [...new Set(Array.from(ids, nameOf))]
  return names.length > 2 ? 'balance' : names.join(' and ')
}
