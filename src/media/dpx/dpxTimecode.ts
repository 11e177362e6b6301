import { DPX_UNDEFINED } from './dpxFields.ts'

/**
 * A header's timecode field → its label; undefined where it is not filled in or no timecode. Eight
 * digits of four bits, hours first (SMPTE ST 268-1, ST 12-1; the order checked by ffmpeg).
 */
export const dpxTimecodeLabel = (field: number): string | undefined => {
  if (field === DPX_UNDEFINED) return undefined
  const digits = field.toString(16).padStart(8, '0')
  return /^[0-2]\d[0-5]\d[0-5]\d[0-7]\d$/u.test(digits)
    ? digits.replace(/(..)(..)(..)(..)/u, '$1:$2:$3:$4')
    : undefined
}

/** A timecode label, with a colon or a semicolon before its frames → a header's field. */
export const dpxTimecodeField = (label: string): number => {
  const digits = label.replace(/[^\d]/gu, '')
  return /^\d{8}$/u.test(digits) ? Number.parseInt(digits, 16) : DPX_UNDEFINED
}
