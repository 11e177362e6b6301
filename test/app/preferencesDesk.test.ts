import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { keepPreferences, readPreferences } from '../../src/app/preferencesDesk.ts'
import { createAppStore } from '../../src/store/appStore.ts'
import { INITIAL_PREFERENCES } from '../../src/store/preferences.ts'
import { setPreferences } from '../../src/store/setPreferences.ts'

const memory = (kept: string | null = null) => {
  const storage = {
    kept,
    getItem: () => storage.kept,
    setItem: (_: string, text: string) => {
      storage.kept = text
    },
  }
  return storage
}

describe('preferences kept in the browser', () => {
  it('come back as they were set', () => {
    const storage = memory()
    const first = createAppStore()
    keepPreferences(first, () => storage)
    setPreferences(first, { hand: 'right', keys: { split: ['F2'] }, textSize: 150 })
    const second = createAppStore()
    keepPreferences(second, () => storage)
    expect(second.getState().preferences).toEqual({
      ...INITIAL_PREFERENCES,
      hand: 'right',
      keys: { split: ['F2'] },
      textSize: 150,
    })
  })

  it.each([
    ['nothing', null],
    ['broken text', '{"hand": "ri'],
    ['a list', '[1]'],
    ['null', 'null'],
    ['an older text with other fields', '{"hotkeys": {}, "version": 0}'],
    ['values out of their range', '{"hand":"both","keys":[],"hintsSeen":"all","textSize":1000}'],
  ])('are those of a new browser where there is %s', (_, text) => {
    expect(readPreferences(text)).toEqual(INITIAL_PREFERENCES)
  })

  it('keep what can be used beside what cannot', () => {
    const text = '{"hand":"right","keys":{"split":["F2"],"join":"F3"},"textSize":7}'
    expect(readPreferences(text)).toEqual({
      ...INITIAL_PREFERENCES,
      hand: 'right',
      keys: { split: ['F2'] },
    })
  })

  it('are whole, whatever was kept', () => {
    fc.assert(
      fc.property(fc.json(), (text) => {
        const read = readPreferences(text)
        expect(Object.keys(read).sort()).toEqual(Object.keys(INITIAL_PREFERENCES).sort())
      }),
      { seed: 5 },
    )
  })

  it('last as long as the page where there is no storage', () => {
    const store = createAppStore()
    keepPreferences(store, () => {
      throw new DOMException('closed', 'SecurityError')
    })
    setPreferences(store, { hand: 'right' })
    expect(store.getState().preferences.hand).toBe('right')
  })

  it('hold for the page where storage refuses to write', () => {
    const store = createAppStore()
    const full = {
      getItem: () => null,
      setItem: () => {
        throw new DOMException('full', 'QuotaExceededError')
      },
    }
    keepPreferences(store, () => full)
    expect(() => setPreferences(store, { hand: 'right' })).not.toThrow()
    expect(store.getState().preferences.hand).toBe('right')
  })
})
