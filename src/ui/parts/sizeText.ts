import { formatNumber } from './numberText.ts'

/** A number of bytes in words. */
export const sizeText = (bytes: number): string =>
  bytes >= 1e9 ? `${formatNumber(bytes / 1e9, 1)} GB` : `${formatNumber(bytes / 1e6, 1)} MB`
