import type { CueLook, LookLevels } from '../core/census/cueLook.ts'
import { lookDistance } from '../core/census/lookDistance.ts'
import { sumOfLevels } from '../core/census/sumOfLevels.ts'
import type { Cue } from '../core/job/job.ts'
import type { AppStore } from './appStore.ts'
import { censusKeyOf } from './checkKey.ts'
import { cuesOf, currentCue } from './queries.ts'
import type { AppState } from './state.ts'

/** What a cue looks like; undefined while its colours have not been counted. */
export const lookOf = (state: AppState, cue: Cue): CueLook | undefined => {
  const key = censusKeyOf(state, cue)
  return key === undefined ? undefined : state.looks.entries.get(key)
}

/** The looks of the cues of the reel on screen, in order; undefined where not known yet. */
const looksOfReel = (state: AppState): readonly (CueLook | undefined)[] =>
  cuesOf(state).map((cue) => lookOf(state, cue))

export type ReelLevels = {
  readonly levels: LookLevels
  /** How many cues are in it, of how many of the reel. */
  readonly cues: number
  readonly of: number
}

type Kept = {
  readonly looks: readonly (CueLook | undefined)[]
  readonly levels: ReelLevels | undefined
}

let lastLevels: Kept | undefined
let lastLevelsFor: readonly unknown[] = []

const isSame = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((each, i) => each === b[i])

/**
 * The levels of all cues of the reel whose colours were counted, before their grades;
 * undefined while none is known. The same object as long as the looks are the same; while something
 * is dragged the last one stays.
 */
export const reelLevels = (state: AppState): ReelLevels | undefined => {
  const cues = cuesOf(state)
  const basis = [state.looks.entries, state.looks.version, state.reelId, cues]
  const isDragging = state.gesture !== undefined && lastLevelsFor[2] === state.reelId
  if (lastLevels && (isDragging || isSame(basis, lastLevelsFor))) return lastLevels.levels
  const looks = looksOfReel(state)
  lastLevelsFor = basis
  if (lastLevels && isSame(lastLevels.looks, looks)) return lastLevels.levels
  const known = looks.filter((look) => look !== undefined)
  const levels =
    known.length > 0
      ? { levels: sumOfLevels(known), cues: known.length, of: looks.length }
      : undefined
  lastLevels = { looks, levels }
  return levels
}

/** Another cue, and how unlike it looks. */
export type AlikeCue = { readonly cue: Cue; readonly distance: number }

export type Alike = {
  /** Cues nearer than the limit to the one under the line, itself not among them, nearest first. */
  readonly near: readonly AlikeCue[]
  /** The one nearest of all, whether within the limit or not. */
  readonly nearest: AlikeCue | undefined
  /** Whether the cue's own colours are known. */
  readonly isKnown: boolean
  /** Cues whose colours are not known yet. */
  readonly unknown: number
}

const NOTHING_ALIKE: Alike = { near: [], nearest: undefined, isKnown: false, unknown: 0 }

let lastDistances:
  | {
      readonly own: CueLook
      readonly looks: readonly (CueLook | undefined)[]
      readonly distances: readonly number[]
    }
  | undefined

/** How unlike each look is to one; worked out again only when a look is another. */
const distancesFrom = (
  own: CueLook,
  looks: readonly (CueLook | undefined)[],
): readonly number[] => {
  if (lastDistances?.own === own && isSame(lastDistances.looks, looks))
    return lastDistances.distances
  const distances = looks.map((look) => (look ? lookDistance(own, look) : Infinity))
  lastDistances = { own, looks, distances }
  return distances
}

let lastAlike: { readonly basis: readonly unknown[]; readonly alike: Alike } | undefined

/** The cues of the reel that look like the one under the line, by their colours before the grade. */
export const alikeCues = (state: AppState): Alike => {
  const cue = currentCue(state)
  if (!cue) return NOTHING_ALIKE
  const cues = cuesOf(state)
  const { entries, version, limit } = state.looks
  const basis = [cues, cue, entries, version, limit]
  if (lastAlike && isSame(basis, lastAlike.basis)) return lastAlike.alike
  const own = lookOf(state, cue)
  const looks = looksOfReel(state)
  const distances = own ? distancesFrom(own, looks) : []
  const found = cues
    .map((other, i) => ({ cue: other, distance: distances[i] ?? Infinity }))
    .filter((other) => other.cue.id !== cue.id && Number.isFinite(other.distance))
    .sort((a, b) => a.distance - b.distance)
  const alike = {
    near: found.filter(({ distance }) => distance < limit),
    nearest: found[0],
    isKnown: own !== undefined,
    unknown: looks.filter((look) => look === undefined).length,
  }
  lastAlike = { basis, alike }
  return alike
}

export const setAlikeLimit = (store: AppStore, limit: number): void =>
  store.setState(({ looks }) => ({ looks: { ...looks, limit } }))

/** Selects the cue under the line and all that look like it. Returns how many these are. */
export const selectAlike = (store: AppStore): number => {
  const state = store.getState()
  const cue = currentCue(state)
  if (!cue) return 0
  const { near } = alikeCues(state)
  store.setState({ selection: [cue.id, ...near.map((each) => each.cue.id)], anchor: cue.id })
  return near.length
}
