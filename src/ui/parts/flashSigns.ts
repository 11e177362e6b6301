import type { FlashKind } from '../../core/flashes/flashReport.ts'

/** The shape that stands for each kind of breach, beside its word; and for a long sequence. */
export const FLASH_SIGNS: Readonly<Record<FlashKind | 'stripes' | 'long', string>> = {
  general: '◐',
  red: '◍',
  stripes: '▤',
  long: '◔',
}
