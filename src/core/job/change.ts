import type { PackRecord } from '../agreement/answer.ts'
import type { PassRecord } from '../transfer/passRecord.ts'
import type { Cue, HeldFrame, Job, JobInfo, Reel } from './job.ts'

/** What happened to the records of one table, by id; `updated` holds [before, after]. */
export type TableChange<Item> = {
  readonly added: Readonly<Record<string, Item>>
  readonly updated: Readonly<Record<string, readonly [from: Item, to: Item]>>
  readonly removed: Readonly<Record<string, Item>>
}

/** A difference between two jobs, with an exact inverse. Tables without a change are left out. */
export type Change = {
  readonly info?: TableChange<JobInfo>
  readonly reels?: TableChange<Reel>
  readonly cues?: TableChange<Cue>
  readonly held?: TableChange<HeldFrame>
  readonly passes?: TableChange<PassRecord>
  readonly packs?: TableChange<PackRecord>
}

type Table<Item> = Readonly<Record<string, Item>>

const applyTable = <Item>(table: Table<Item>, change: TableChange<Item> | undefined) => {
  if (!change) return table
  const after: Record<string, Item> = { ...table, ...change.added }
  for (const [id, [, to]] of Object.entries(change.updated)) after[id] = to
  for (const id of Object.keys(change.removed)) delete after[id]
  return after
}

export const applyChange = (job: Job, change: Change): Job => ({
  info: applyTable(job.info, change.info) as Job['info'],
  reels: applyTable(job.reels, change.reels),
  cues: applyTable(job.cues, change.cues),
  held: applyTable(job.held, change.held),
  passes: applyTable(job.passes, change.passes),
  packs: applyTable(job.packs, change.packs),
})

const invertTable = <Item>(change: TableChange<Item>): TableChange<Item> => ({
  added: change.removed,
  updated: Object.fromEntries(
    Object.entries(change.updated).map(([id, [from, to]]) => [id, [to, from] as const]),
  ),
  removed: change.added,
})

export const invertChange = (change: Change): Change => ({
  ...(change.info && { info: invertTable(change.info) }),
  ...(change.reels && { reels: invertTable(change.reels) }),
  ...(change.cues && { cues: invertTable(change.cues) }),
  ...(change.held && { held: invertTable(change.held) }),
  ...(change.passes && { passes: invertTable(change.passes) }),
  ...(change.packs && { packs: invertTable(change.packs) }),
})

/** Folds a record's states before and after into the table change they amount to. */
const tableBetween = <Item>(
  ids: Iterable<string>,
  before: (id: string) => Item | undefined,
  after: (id: string) => Item | undefined,
): TableChange<Item> => {
  const added: Record<string, Item> = {}
  const updated: Record<string, readonly [Item, Item]> = {}
  const removed: Record<string, Item> = {}
  for (const id of ids) {
    const from = before(id)
    const to = after(id)
    if (from === undefined && to !== undefined) added[id] = to
    else if (from !== undefined && to === undefined) removed[id] = from
    else if (from !== undefined && to !== undefined && from !== to) updated[id] = [from, to]
  }
  return { added, updated, removed }
}

const touchedIds = <Item>(change: TableChange<Item> | undefined): string[] =>
  change
    ? [...Object.keys(change.added), ...Object.keys(change.updated), ...Object.keys(change.removed)]
    : []

const beforeOf =
  <Item>(change: TableChange<Item> | undefined) =>
  (id: string): Item | undefined =>
    change?.updated[id]?.[0] ?? change?.removed[id]

const afterOf =
  <Item>(change: TableChange<Item> | undefined) =>
  (id: string): Item | undefined =>
    change?.updated[id]?.[1] ?? change?.added[id]

const squashTable = <Item>(
  a: TableChange<Item> | undefined,
  b: TableChange<Item> | undefined,
): TableChange<Item> | undefined => {
  if (!a || !b) return a ?? b
  const inA = new Set(touchedIds(a))
  const inB = new Set(touchedIds(b))
  return tableBetween(
    new Set([...inA, ...inB]),
    (id) => (inA.has(id) ? beforeOf(a)(id) : beforeOf(b)(id)),
    (id) => (inB.has(id) ? afterOf(b)(id) : afterOf(a)(id)),
  )
}

/** One change that does what `a` followed by `b` does. */
export const squashChanges = (a: Change, b: Change): Change => {
  const info = squashTable(a.info, b.info)
  const reels = squashTable(a.reels, b.reels)
  const cues = squashTable(a.cues, b.cues)
  const held = squashTable(a.held, b.held)
  const passes = squashTable(a.passes, b.passes)
  const packs = squashTable(a.packs, b.packs)
  return {
    ...(info && { info }),
    ...(reels && { reels }),
    ...(cues && { cues }),
    ...(held && { held }),
    ...(passes && { passes }),
    ...(packs && { packs }),
  }
}

/** The change that turns some cues into others; an id on one side only is added or removed. */
export const cueChange = (before: readonly Cue[], after: readonly Cue[]): Change => {
  const from = new Map(before.map((cue) => [cue.id as string, cue]))
  const to = new Map(after.map((cue) => [cue.id as string, cue]))
  return {
    cues: tableBetween(
      new Set([...from.keys(), ...to.keys()]),
      (id) => from.get(id),
      (id) => to.get(id),
    ),
  }
}

const isTableEmpty = (change: TableChange<unknown> | undefined): boolean =>
  touchedIds(change).length === 0

/** True when a change does nothing, so that it makes no undo step. */
export const isEmptyChange = (change: Change): boolean =>
  isTableEmpty(change.info) &&
  isTableEmpty(change.reels) &&
  isTableEmpty(change.cues) &&
  isTableEmpty(change.held) &&
  isTableEmpty(change.passes) &&
  isTableEmpty(change.packs)
