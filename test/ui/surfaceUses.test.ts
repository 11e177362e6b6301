import { expect, it } from 'vitest'
import { FIRST_PAD_MAPPING } from '../../src/core/surface/padMapping.ts'
import {
  BUTTON_OPTIONS,
  keyOfUse,
  MIDI_OPTIONS,
  STICK_OPTIONS,
} from '../../src/ui/settings/surfaceUses.ts'

const keys = (options: readonly { readonly use: unknown }[]) =>
  options.map(({ use }) => keyOfUse(use))

const twice = (words: readonly string[]) => words.filter((word, i) => words.indexOf(word) !== i)

it.each([
  ['buttons', BUTTON_OPTIONS],
  ['sticks', STICK_OPTIONS],
  ['MIDI controls', MIDI_OPTIONS],
] as const)('no two uses of %s are taken for one, nor called alike', (_, options) => {
  expect(twice(keys(options))).toEqual([])
  expect(twice(options.map(({ label }) => label))).toEqual([])
})

it('everything a pad does at first is in the lists', () => {
  const { sticks, buttons } = FIRST_PAD_MAPPING
  const known = new Set([...keys(BUTTON_OPTIONS), ...keys(STICK_OPTIONS)])
  for (const { first, second } of [...Object.values(sticks), ...Object.values(buttons)])
    for (const use of [first, second]) if (use !== undefined) expect(known).toContain(keyOfUse(use))
})

it('a use is the same whatever the order of its parts', () => {
  expect(keyOfUse({ kind: 'number', id: 'zoom', direction: 1 })).toBe(
    keyOfUse({ direction: 1, id: 'zoom', kind: 'number' }),
  )
})
