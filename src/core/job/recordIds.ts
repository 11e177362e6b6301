import type { Branded } from '../base/brand.ts'

export type ReelId = Branded<string, 'ReelId'>
export type CueId = Branded<string, 'CueId'>
export type HeldId = Branded<string, 'HeldId'>
export type PackId = Branded<string, 'PackId'>
export type PassId = Branded<string, 'PassId'>

const random = (): string => crypto.randomUUID().replaceAll('-', '').slice(0, 12)

export const newReelId = (): ReelId => `reel-${random()}` as ReelId
export const newCueId = (): CueId => `cue-${random()}` as CueId
export const newPassId = (): PassId => `pass-${random()}` as PassId
export const newPackId = (): PackId => `pack-${random()}` as PackId
export const newHeldId = (): HeldId => `held-${random()}` as HeldId
export const newProfileId = (): string => `house-${random()}`
