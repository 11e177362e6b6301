import { describe, expect, it, vi } from 'vitest'
import { createHeldDesk } from '../../src/app/heldDesk.ts'
import type { ReadStill } from '../../src/app/readStillFile.ts'
import type { Workers } from '../../src/app/workers.ts'
import { setReel } from '../../src/core/job/commands/setReel.ts'
import type { HeldId } from '../../src/core/job/recordIds.ts'
import type { Planes } from '../../src/core/picture/planes.ts'
import { type Frame, frame } from '../../src/core/time/frame.ts'
import { createAppStore } from '../../src/store/appStore.ts'
import { dropStill, heldOfReel, holdHere } from '../../src/store/comparing.ts'
import { perform, showJob } from '../../src/store/document.ts'
import { movePlayhead } from '../../src/store/session.ts'
import { REEL_ID, sampleJob } from '../support/sampleJob.ts'

const planesOf = (value: number, bytes = 4): Planes => ({
  width: bytes / 2,
  height: 2,
  layout: 'rgb',
  depth: 8,
  samples: [new Uint8Array(bytes).fill(value), new Uint8Array(4), new Uint8Array(4)],
})

const opened = (bytes = 4) => {
  const store = createAppStore()
  showJob(store, sampleJob(), 'key')
  store.setState({ media: 'ready' })
  const read = vi.fn(async (at: Frame) => planesOf(at % 256, bytes))
  const stills = ((_: string, at: Frame) => read(at)) as unknown as Workers['stills']
  const readStill = vi.fn<ReadStill>(async () => ({
    planes: planesOf(7),
    coding: { matrix: 'bt709', range: 'full' },
  }))
  const desk = createHeldDesk(store, { stills }, readStill)
  const hold = (at: number): HeldId => {
    movePlayhead(store, at)
    holdHere(store)
    const held = heldOfReel(store.getState()).find((one) => one.frame === at)
    if (!held) throw new Error('not held')
    return held.id
  }
  const fetched = async (id: HeldId) => {
    desk.request(id)
    await vi.waitFor(() => expect(desk.get(id)).toBeDefined())
    return desk.get(id)
  }
  return { store, desk, read, readStill, hold, fetched }
}

describe('the frames held as references', () => {
  it('are read once, when they are asked for, and told of', async () => {
    const { desk, read, hold, fetched } = opened()
    const id = hold(120)
    const told = vi.fn()
    desk.subscribe(told)
    expect(desk.get(id)).toBeUndefined()
    expect(read).not.toHaveBeenCalled()
    desk.request(id)
    expect((await fetched(id))?.planes.samples[0][0]).toBe(120)
    desk.request(id)
    expect(read).toHaveBeenCalledTimes(1)
    expect(told).toHaveBeenCalledTimes(1)
  })

  it('are kept up to a bound, the longest unused going first', async () => {
    const { desk, hold, fetched } = opened(100 * 2 ** 20)
    const [first, second] = [hold(10), hold(20)]
    await fetched(first)
    await fetched(second)
    expect(desk.get(first)).toBeUndefined()
    expect(desk.get(second)).toBeDefined()
  })

  it('are read anew when the scan is another, and by another coding when that changes', async () => {
    const { store, desk, read, hold, fetched } = opened()
    const id = hold(120)
    await fetched(id)
    perform(store, (job) =>
      setReel(job, REEL_ID, (reel) => ({ ...reel, media: { ...reel.media, range: 'full' } })),
    )
    expect(desk.get(id)?.coding.range).toBe('full')
    expect(read).toHaveBeenCalledTimes(1)
    desk.forget()
    expect(desk.get(id)).toBeUndefined()
    await fetched(id)
    expect(read).toHaveBeenCalledTimes(2)
  })

  it('are told of once where they cannot be read', async () => {
    const { store, desk, read, hold } = opened()
    const id = hold(5)
    read.mockRejectedValue(new Error('Frame 5 is damaged.'))
    desk.request(id)
    await vi.waitFor(() => expect(store.getState().notice?.says).toBe('Frame 5 is damaged.'))
    desk.request(id)
    expect(read).toHaveBeenCalledTimes(1)
  })

  it('are not read while the scan is missing', async () => {
    const { store, desk, read, hold, fetched } = opened()
    const id = hold(5)
    store.setState({ media: 'missing' })
    desk.request(id)
    await Promise.resolve()
    expect(read).not.toHaveBeenCalled()
    store.setState({ media: 'ready' })
    await fetched(id)
  })
})

describe('a still opened as a reference', () => {
  it('is compared with at once, lives on with another scan, and goes when it is dropped', async () => {
    const { store, desk } = opened()
    await desk.openStill(new File([], 'chart.tif'))
    const [still] = store.getState().view.stills
    if (!still) throw new Error('no still')
    expect(still.name).toBe('chart.tif')
    expect(store.getState().view).toMatchObject({
      arrangement: 'wipe',
      against: { kind: 'held', id: still.id },
    })
    desk.forget()
    expect(desk.get(still.id)).toMatchObject({ frame: frame(0), coding: { range: 'full' } })
    dropStill(store, still.id)
    expect(desk.get(still.id)).toBeUndefined()
  })

  it('that cannot be read is told of and not added', async () => {
    const { store, desk, readStill } = opened()
    readStill.mockRejectedValue(new Error('chart.tif is not a whole picture.'))
    await desk.openStill(new File([], 'chart.tif'))
    expect(store.getState().notice?.says).toContain('chart.tif')
    expect(store.getState().view.stills).toEqual([])
  })
})
