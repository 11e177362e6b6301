import { describe, expect, it } from 'vitest'
import { createAppStore } from '../../src/store/appStore.ts'
import { INITIAL_POINTING } from '../../src/store/pointing.ts'
import { dropPick, moveReading, pointOver, readAt } from '../../src/store/pointingChanges.ts'

describe('pointing at the picture', () => {
  it('tells of a place only when it is another', () => {
    const store = createAppStore()
    let told = 0
    store.subscribe(() => told++)
    pointOver(store, { x: 0.1, y: 0.2 })
    pointOver(store, { x: 0.1, y: 0.2 })
    pointOver(store, undefined)
    pointOver(store, undefined)
    expect(told).toBe(2)
  })

  it('moves the place that is read, up to the edges of the scan', () => {
    const store = createAppStore()
    moveReading(store, 0.1, 0)
    expect(store.getState().pointing.reading).toBeUndefined()
    readAt(store, { x: 0.95, y: 0.5 })
    moveReading(store, 0.1, -0.25)
    expect(store.getState().pointing.reading).toEqual({ x: 1, y: 0.25 })
    readAt(store, undefined)
    expect(store.getState().pointing.reading).toBeUndefined()
  })

  it('takes one picked place away, the others keeping their order', () => {
    const store = createAppStore()
    const picks = [0.1, 0.2, 0.3].map((x) => ({ x, y: 0.5 }))
    store.setState({ pointing: { ...INITIAL_POINTING, mode: 'neutral', picks } })
    dropPick(store, 1)
    expect(store.getState().pointing.picks.map(({ x }) => x)).toEqual([0.1, 0.3])
  })
})
