import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { setGrade } from '../../src/core/job/commands/setGrade.ts'
import type { CueId } from '../../src/core/job/recordIds.ts'
import { frame } from '../../src/core/time/frame.ts'
import { createAppStore } from '../../src/store/appStore.ts'
import { perform, showJob } from '../../src/store/document.ts'
import { setLedger } from '../../src/store/ledgerChanges.ts'
import {
  cueOfRow,
  cuePlace,
  frameAtOffset,
  type LedgerRows,
  ledgerRowsOf,
  listedBeside,
  offsetOfFrame,
  ROW_HEIGHT,
  rowAtOffset,
  rowHeight,
  rowTop,
} from '../../src/store/ledgerRows.ts'
import { type LedgerView, nextScale, STRIP_SCALES } from '../../src/store/ledgerView.ts'
import { recallLooked } from '../../src/store/looked.ts'
import { movePlayhead } from '../../src/store/session.ts'
import { cueId, sampleJob, sampleReel } from '../support/sampleJob.ts'

const FIRSTS = [0, 100, 250, 400]

const setUp = (ledger: Partial<LedgerView>, firsts: readonly number[] = FIRSTS, frames = 1000) => {
  const store = createAppStore()
  const job = sampleJob(firsts, (cue) => cue, sampleReel({ frames }))
  showJob(store, job, `shelf ${firsts.length}`)
  setLedger(store, ledger)
  const rows = (): LedgerRows => {
    const found = ledgerRowsOf(store.getState())
    if (!found) throw new Error('no rows')
    return found
  }
  return { store, rows }
}

const numbersOf = (rows: LedgerRows): readonly number[] =>
  Array.from({ length: rows.count }, (_, row) => cuePlace(rows, row) + 1)

describe('rows', () => {
  it('are all as high where the ledger is even', () => {
    const { rows } = setUp({})
    expect(rows().height).toBe(4 * ROW_HEIGHT)
    expect([0, 1, 2, 3].map((row) => rowTop(rows(), row))).toEqual([0, 78, 156, 234])
  })

  it('begin at their first frame times the scale where lengths are true', () => {
    const { rows } = setUp({ timing: 'true', pixelsPerSecond: 50 })
    expect([0, 1, 2, 3].map((row) => rowTop(rows(), row))).toEqual(FIRSTS.map((first) => first * 2))
    expect(rowHeight(rows(), 3)).toBe(1200)
    expect(rows().height).toBe(2000)
    expect(offsetOfFrame(rows(), frame(333))).toBe(666)
  })

  it('never get higher than a browser can lay out', () => {
    const { rows } = setUp({ timing: 'true', pixelsPerSecond: 1200 }, [0, 10], 500_000)
    expect(rows().height).toBe(8_000_000)
    expect(frameAtOffset(rows(), offsetOfFrame(rows(), frame(499_999)))).toBe(499_999)
  })

  it('have each frame in one place, in order, and give it back', () => {
    const reel = fc.uniqueArray(fc.integer({ min: 1, max: 2999 }), { maxLength: 120 })
    const scale = fc.constantFrom(...STRIP_SCALES)
    const timing = fc.constantFrom('even' as const, 'true' as const)
    fc.assert(
      fc.property(reel, scale, timing, fc.integer({ min: 0, max: 2999 }), (cuts, pps, how, at) => {
        const firsts = [0, ...cuts.toSorted((a, b) => a - b)]
        const { rows } = setUp({ timing: how, pixelsPerSecond: pps }, firsts, 3000)
        const y = offsetOfFrame(rows(), frame(at))
        expect(frameAtOffset(rows(), y)).toBe(at)
        if (at > 0) expect(offsetOfFrame(rows(), frame(at - 1))).toBeLessThan(y)
        const row = rowAtOffset(rows(), y + 1e-9)
        expect(cueOfRow(rows(), row)?.first).toBeLessThanOrEqual(at)
        expect(rowTop(rows(), row)).toBeLessThanOrEqual(y + 1e-9)
      }),
    )
  })

  it('are worked out once for as long as nothing they depend on changes', () => {
    const { store, rows } = setUp({ timing: 'true' })
    const before = rows()
    movePlayhead(store, 120)
    expect(rows()).toBe(before)
    perform(store, (job) => setGrade(job, [cueId(2)], (grade) => ({ ...grade, saturation: 2 })))
    expect(rows()).not.toBe(before)
  })
})

describe('a filtered list', () => {
  const notLooked = (looked: readonly CueId[], timing: LedgerView['timing'] = 'even') => {
    const made = setUp({})
    recallLooked(made.store, looked)
    setLedger(made.store, { filter: 'not-looked-at', timing, pixelsPerSecond: 25 })
    return made
  }

  it('has only what it asks for, end to end', () => {
    const { rows } = notLooked([cueId(1), cueId(3)], 'true')
    expect(numbersOf(rows())).toEqual([2, 4])
    expect([0, 1].map((row) => rowTop(rows(), row))).toEqual([0, 150])
    expect(rows().height).toBe(750)
  })

  it('has the line between rows where the cue under it is not listed', () => {
    const { rows } = notLooked([cueId(1), cueId(3)])
    expect(offsetOfFrame(rows(), frame(300))).toBe(ROW_HEIGHT)
    expect(listedBeside(rows(), frame(300), -1)?.id).toBe(cueId(2))
    expect(listedBeside(rows(), frame(300), 1)?.id).toBe(cueId(4))
    expect(listedBeside(rows(), frame(120), 1)?.id).toBe(cueId(4))
    expect(listedBeside(rows(), frame(120), -1)).toBeUndefined()
  })

  it('keeps a cue as long as the line is on it, though it is no longer asked for', () => {
    const { store, rows } = notLooked([cueId(1)])
    expect(numbersOf(rows())).toEqual([2, 3, 4])
    movePlayhead(store, 300)
    recallLooked(store, [cueId(3)])
    expect(numbersOf(rows())).toEqual([2, 3, 4])
    movePlayhead(store, 420)
    expect(numbersOf(rows())).toEqual([2, 4])
  })

  it('can be empty', () => {
    const { store, rows } = notLooked(FIRSTS.map((_, i) => cueId(i + 1)))
    expect(rows().count).toBe(0)
    expect(offsetOfFrame(rows(), store.getState().playhead)).toBe(0)
    expect(listedBeside(rows(), frame(0), 1)).toBeUndefined()
  })
})

it('scales of the strip end at both ends', () => {
  const { store } = setUp({ timing: 'true', pixelsPerSecond: STRIP_SCALES[0] ?? 0 })
  const view = () => store.getState().ledger
  expect(nextScale(view(), -1)).toBeUndefined()
  const seen: number[] = []
  for (let next = nextScale(view(), 1); next !== undefined; next = nextScale(view(), 1)) {
    seen.push(next)
    setLedger(store, { pixelsPerSecond: next })
  }
  expect(seen).toEqual(STRIP_SCALES.slice(1))
})
