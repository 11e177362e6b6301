import { expect, test, vi } from 'vitest'
import type { CensusDesk } from '../../src/app/censusDesk.ts'
import { createFeed } from '../../src/app/feed.ts'
import { createSolveDesk } from '../../src/app/solveDesk.ts'
import { buildCensus } from '../../src/core/census/buildCensus.ts'
import { createCensusReader } from '../../src/core/census/censusVerdict.ts'
import { seenSpans } from '../../src/core/census/seenSpans.ts'
import { createColourTally } from '../../src/core/census/tallyColours.ts'
import { gradeColour, IDENTITY_GRADE } from '../../src/core/colour/grade.ts'
import type { Triple } from '../../src/core/colour/triple.ts'
import { PRINT_BASE } from '../../src/core/film/filmBase.ts'
import { setNote } from '../../src/core/job/commands/setNote.ts'
import { setReel } from '../../src/core/job/commands/setReel.ts'
import type { HeldId } from '../../src/core/job/recordIds.ts'
import { IDENTITY_FRAMING } from '../../src/core/picture/framing.ts'
import type { Planes } from '../../src/core/picture/planes.ts'
import { windowColour } from '../../src/core/picture/windowColour.ts'
import { frame } from '../../src/core/time/frame.ts'
import { EBU_R103_V3 } from '../../src/core/tolerance/profile.ts'
import { referenceKernel } from '../../src/kernel/referenceKernel.ts'
import { createAppStore } from '../../src/store/appStore.ts'
import { perform, showJob } from '../../src/store/document.ts'
import { pickPlace } from '../../src/store/picking.ts'
import {
  keepProposal,
  leaveProposal,
  leaveWhenStale,
  togglePicking,
} from '../../src/store/proposal.ts'
import { currentCue } from '../../src/store/queries.ts'
import type { ShownFrame } from '../../src/ui/services.ts'
import { checkFrames } from '../../src/work/checkTolerance.ts'
import type { FramesCheck } from '../../src/work/reelCalls.ts'
import { solveHandlers } from '../../src/work/solveHandlers.ts'
import { MADE_LISTS } from '../support/madeLists.ts'
import { cueId, REEL_ID, sampleJob } from '../support/sampleJob.ts'
import { seeded } from '../support/seeded.ts'

const CODING = { matrix: 'bt709', range: 'narrow', base: PRINT_BASE } as const
const [WIDTH, HEIGHT] = [40, 30]

/** A ramp of greys under a cast, with `tooBright` of its pixels far over peak white. */
const castPlanes = (seed: number, cast: Triple, tooBright = 0): Planes => {
  const random = seeded(seed)
  const count = WIDTH * HEIGHT
  const samples = cast.map((factor) =>
    Uint16Array.from({ length: count }, (_, i) => {
      const level = i < tooBright * count ? 1.09 : 0.1 + (0.7 * (i % WIDTH)) / WIDTH
      return 64 + 876 * Math.min(1.09, level * factor + 0.01 * random())
    }),
  )
  return {
    width: WIDTH,
    height: HEIGHT,
    layout: 'rgb',
    depth: 10,
    samples: samples as unknown as Planes['samples'],
  }
}

const censusOf = (planes: Planes) => {
  const tally = createColourTally('narrow')
  tally.add(planes, seenSpans(IDENTITY_FRAMING, WIDTH, HEIGHT))
  const counted = tally.tally()
  if (!counted) throw new Error('no colours')
  return buildCensus(counted, CODING)
}

/** The desk over a reel of which every frame of a cue is the same picture; 100 frames to a cue. */
const setUp = (pictures: readonly Planes[], counts = true) => {
  const store = createAppStore()
  showJob(store, sampleJob([0, 100, 200, 300]), 'shelf')
  leaveWhenStale(store)
  const kernel = referenceKernel()
  const handlers = solveHandlers(async () => kernel)
  const read = async (at: number) => pictures[Math.floor(at / 100)] as Planes
  const stills = async (name: string, args: unknown) =>
    name === 'read' ? read(args as number) : checkFrames(read, kernel, args as FramesCheck)
  const solve = async (name: keyof typeof handlers, args: never) =>
    (handlers[name] as unknown as (args: never) => unknown)(args)
  const censuses = pictures.map(censusOf)
  const get = (key: string) => (counts ? censuses[Number(JSON.parse(key)[4]) / 100] : undefined)
  const desk: CensusDesk = {
    isWanted: () => false,
    keep: () => undefined,
    keepLook: () => undefined,
    get,
    whenKept: async (key) => get(key),
  }
  const frames = createFeed<ShownFrame>()
  const show = (at: number) =>
    frames.put({
      frame: frame(at),
      planes: pictures[Math.floor(at / 100)] as Planes,
      coding: CODING,
    })
  show(0)
  const held = {
    get: (id: HeldId) =>
      id === ('held-a' as HeldId)
        ? { frame: frame(0), planes: pictures[1] as Planes, coding: CODING }
        : undefined,
    request: () => undefined,
    subscribe: () => () => undefined,
  }
  const solvers = createSolveDesk(
    store,
    { stills, solve } as never,
    desk,
    frames,
    held,
    () => undefined,
  )
  const cue = () => {
    const current = currentCue(store.getState())
    if (!current) throw new Error('no cue')
    return current
  }
  const proposal = () => store.getState().proposal
  const found = () =>
    vi.waitFor(() => {
      const now = proposal()
      if (!now || (now.change.kind === 'none' && now.change.isLooking)) throw new Error('looking')
      return now
    }, 20_000)
  return { store, solvers, censuses, cue, proposal, found }
}

const GREYS = castPlanes(1, [1, 1, 1])
const WARM = castPlanes(2, [1.1, 1, 0.8])

test('bring inside: what is offered passes by every pixel, and is kept as one step', async () => {
  const { store, solvers, censuses, cue, proposal, found } = setUp([castPlanes(3, [1, 1, 1], 0.2)])
  solvers.bringInside()
  expect(proposal()?.change).toEqual({ kind: 'none', isLooking: true })
  const { label, says, change } = await found()
  expect(label).toBe('Bring inside')
  if (change.kind !== 'grade') throw new Error(says.join(' '))
  const census = censuses[0]
  if (!census) throw new Error('no census')
  const { outsideAtMost, pixels } = createCensusReader(census)(change.grade, EBU_R103_V3)
  expect(outsideAtMost / pixels).toBeLessThanOrEqual(EBU_R103_V3.area)
  expect(says.join(' ')).toContain('20.0 % of the pixels before')
  expect(cue().grade).toEqual(IDENTITY_GRADE)
  keepProposal(store)
  expect(cue().grade).toEqual(change.grade)
  expect(store.getState().history?.past).toHaveLength(1)
}, 30_000)

test('bring inside: a cue that passes is left as it is, and that is said', async () => {
  const { solvers, found, store } = setUp([GREYS])
  solvers.bringInside()
  const { says, change } = await found()
  expect(change).toEqual({ kind: 'none', isLooking: false })
  expect(says[0]).toContain('Nothing is to be done')
  expect(keepProposal(store)).toBe(false)
})

test('what is looked for is dropped when the job changes or it is left meanwhile', async () => {
  const leavers: readonly ((store: ReturnType<typeof createAppStore>) => void)[] = [
    (store) => perform(store, (job) => setNote(job, cueId(1), 'changed')),
    leaveProposal,
  ]
  for (const leave of leavers) {
    const { store, solvers, proposal } = setUp([GREYS])
    solvers.bringInside()
    leave(store)
    expect(proposal()).toBeUndefined()
    await new Promise((resolve) => setTimeout(resolve, 100))
    expect(proposal()).toBeUndefined()
  }
})

test('neutral here: each place picked is neutral under what is proposed', async () => {
  const { store, found } = setUp([WARM])
  togglePicking(store, 'neutral')
  const places = [
    { x: 0.3, y: 0.5 },
    { x: 0.8, y: 0.5 },
  ]
  for (const [i, place] of places.entries()) {
    pickPlace(store, place)
    await vi.waitFor(() =>
      expect(store.getState().proposal?.says[1]).toContain(i === 0 ? 'The place' : '2 places'),
    )
  }
  const { change } = await found()
  if (change.kind !== 'grade') throw new Error('no grade')
  for (const { x, y } of places) {
    const colour = gradeColour(windowColour(WARM, CODING, x, y, 9), change.grade)
    expect(Math.max(...colour) - Math.min(...colour)).toBeLessThan(1e-6)
  }
})

test('neutral here: the last place taken back leaves the proposal', async () => {
  const { store, found, proposal } = setUp([WARM])
  togglePicking(store, 'neutral')
  pickPlace(store, { x: 0.5, y: 0.5 })
  await found()
  store.setState(({ pointing }) => ({ pointing: { ...pointing, picks: [] } }))
  expect(proposal()).toBeUndefined()
})

test.each(['by all their colours', 'by a frame of each'])(
  'match to another cue, %s',
  async (by) => {
    const { solvers, found } = setUp([GREYS, WARM], by === 'by all their colours')
    solvers.matchTo({ kind: 'cue', id: cueId(2) })
    const { label, says, change } = await found()
    expect(label).toBe('Match to cue 2')
    if (change.kind !== 'grade') throw new Error(says.join(' '))
    const [r, g, b] = gradeColour([0.5, 0.5, 0.5], change.grade)
    expect(r / g).toBeCloseTo(1.1, 1)
    expect(b / g).toBeCloseTo(0.8, 1)
    expect(says.some((each) => each.startsWith('Judged by one frame'))).toBe(
      by === 'by a frame of each',
    )
  },
)

test('match to a held frame', async () => {
  const { solvers, found } = setUp([GREYS, WARM])
  solvers.matchTo({ kind: 'held', id: 'held-a' as HeldId, name: 'cue 2' })
  const { label, change } = await found()
  expect(label).toBe('Match to “cue 2”')
  expect(change.kind).toBe('grade')
})

test('with several cues selected, what is found is for the one under the line, and says so', async () => {
  const { store, solvers, found } = setUp([GREYS, WARM])
  store.setState({ selection: [cueId(1), cueId(2), cueId(3)] })
  solvers.matchTo({ kind: 'cue', id: cueId(2) })
  const { says, change } = await found()
  expect(says.at(-1)).toContain('not for the 2 selected with it')
  expect(change).toMatchObject({ kind: 'grade', cue: cueId(1) })
})

test('restore dye: the list of the base stays, and what is said is of the part before it', async () => {
  const faded = castPlanes(4, [1, 0.7, 0.8])
  const { store, found } = setUp(Array(10).fill(faded))
  const list = MADE_LISTS['a matrix'] ?? null
  perform(store, (job) =>
    setReel(job, REEL_ID, (reel) => ({ ...reel, base: { ...reel.base, list } })),
  )
  store.setState({ step: 'prepare' })
  togglePicking(store, 'dye')
  pickPlace(store, { x: 0.5, y: 0.5 })
  const { says, change } = await found()
  expect(change).toMatchObject({ kind: 'base', base: { list } })
  expect(says.at(-1)).toContain('before the base list')
})

test('restore dye: a base that makes the place neutral, anew with what is assumed of the best dye', async () => {
  const faded = castPlanes(4, [1, 0.7, 0.8])
  const { store, solvers, found, proposal } = setUp(Array(10).fill(faded))
  store.setState({ step: 'prepare' })
  togglePicking(store, 'dye')
  pickPlace(store, { x: 0.5, y: 0.5 })
  const first = await found()
  if (first.change.kind !== 'base') throw new Error(first.says.join(' '))
  const { base } = first.change
  const colour = windowColour(faded, { ...CODING, base }, 0.5, 0.5, 1)
  expect(Math.max(...colour) - Math.min(...colour)).toBeLessThan(0.03)
  expect(first.says[0]).toContain('94 %')
  solvers.assumeKept(0.8)
  await vi.waitFor(() => expect(proposal()?.says[0]).toContain('80 %'))
  keepProposal(store)
  expect(Object.values(store.getState().history?.job.reels ?? {})[0]?.base.dyes).not.toEqual(
    PRINT_BASE.dyes,
  )
})
