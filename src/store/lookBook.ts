import type { CueLook } from '../core/census/cueLook.ts'

/** What cues look like, by what their colours depend on (`censusKeyOf`). */
export type LookBook = ReadonlyMap<string, CueLook>

export const NO_LOOKS: LookBook = new Map()
