import type { Branded } from '../base/brand.ts'

/** A picture of a reel, counted from 0 in order of presentation. */
export type Frame = Branded<number, 'Frame'>

export const frame = (n: number): Frame => n as Frame
