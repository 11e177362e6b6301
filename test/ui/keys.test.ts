import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  giveKey,
  hasOwnKeys,
  type Keymap,
  refusalOfKey,
  resetKeys,
  takeKey,
} from '../../src/ui/commands/keyEdits.ts'
import { KEY_LAYOUTS } from '../../src/ui/commands/keyLayouts.ts'
import { commandWithKey, keyConflicts, keyName, keysOf } from '../../src/ui/commands/keys.ts'
import { COMMANDS } from '../../src/ui/commands/registry.ts'

const LEFT: Keymap = { hand: 'left', keys: {} }

const press = (key: string, code: string, held: Partial<Record<string, boolean>> = {}) => ({
  key,
  code,
  ctrlKey: false,
  metaKey: false,
  shiftKey: false,
  altKey: false,
  ...held,
})

describe('the name of a key', () => {
  it.each([
    [press('s', 'KeyS'), 'S'],
    [press('S', 'KeyS', { shiftKey: true }), 'Shift+S'],
    [press('!', 'Digit1', { shiftKey: true }), 'Shift+1'],
    [press('"', 'Digit2', { shiftKey: true }), 'Shift+2'],
    [press('ы', 'KeyS'), 'S'],
    [press(' ', 'Space'), 'Space'],
    [press('/', 'Slash'), '/'],
    [press('?', 'Slash', { shiftKey: true }), '?'],
    [press('ArrowLeft', 'ArrowLeft', { altKey: true }), 'Alt+ArrowLeft'],
    [press('z', 'KeyZ', { metaKey: true }), 'Mod+Z'],
    [press('Z', 'KeyZ', { ctrlKey: true, shiftKey: true }), 'Mod+Shift+Z'],
  ])('%o is %s', (pressed, name) => {
    expect(keyName(pressed)).toBe(name)
  })

  it('goes by place for a letter alone, by what is written on it with Ctrl', () => {
    expect(keyName(press('q', 'KeyA'))).toBe('A')
    expect(keyName(press('q', 'KeyA', { ctrlKey: true }))).toBe('Mod+Q')
  })
})

it('no two commands have one id or one label', () => {
  for (const names of [COMMANDS.map(({ id }) => id), COMMANDS.map(({ label }) => label)])
    expect(names.filter((name, i) => names.indexOf(name) !== i)).toEqual([])
})

describe('the two layouts', () => {
  it.each(['left', 'right'] as const)('of the %s hand give no key twice', (hand) => {
    expect(keyConflicts(COMMANDS, { hand, keys: {} })).toEqual([])
  })

  it('have keys for the same commands, and only for ones that exist', () => {
    const ids = (hand: 'left' | 'right') => Object.keys(KEY_LAYOUTS[hand]).sort()
    expect(ids('right')).toEqual(ids('left'))
    const known = COMMANDS.map(({ id }) => id)
    expect(ids('left').filter((id) => !known.includes(id))).toEqual([])
  })

  it('have no key that cannot be given by hand', () => {
    for (const layout of Object.values(KEY_LAYOUTS))
      for (const key of Object.values(layout).flat()) expect(refusalOfKey(key), key).toBeUndefined()
  })

  it.each([
    ['left', /^(Shift\+)?[QWERTASDFGZXCVB1-6]$/u],
    ['right', /^(Shift\+)?[YUIOPHJKLNM5-90]$/u],
  ] as const)('keep letters and digits under the %s hand', (hand, under) => {
    const singles = Object.values(KEY_LAYOUTS[hand])
      .flat()
      .filter((key) => /^(Shift\+)?[A-Z0-9]$/u.test(key))
    expect(singles.length).toBeGreaterThan(15)
    expect(singles.filter((key) => !under.test(key))).toEqual([])
  })
})

describe('keys given by hand', () => {
  it('are taken from the command that had them, and come back with a reset', () => {
    const given: Keymap = { ...LEFT, keys: giveKey(LEFT, 'wipe', 'S') }
    expect(keysOf('wipe', given)).toEqual(['W', 'S'])
    expect(keysOf('split', given)).toEqual([])
    expect(commandWithKey(COMMANDS, 'S', given)?.id).toBe('wipe')
    expect(hasOwnKeys(given, 'split')).toBe(true)
    const back: Keymap = { ...LEFT, keys: resetKeys(given, 'split') }
    expect(keysOf('split', back)).toEqual(['S'])
    expect(keysOf('wipe', back)).toEqual(['W'])
    expect(back.keys).toEqual({})
  })

  it('stay where they are when the other hand is chosen, without a conflict', () => {
    const keys = giveKey(LEFT, 'tick', 'L')
    const right: Keymap = { hand: 'right', keys }
    expect(keysOf('tick', right)).toContain('L')
    expect(keysOf('split', right)).toEqual([])
    expect(keyConflicts(COMMANDS, right)).toEqual([])
  })

  it('can be taken away, down to none', () => {
    const none: Keymap = { ...LEFT, keys: takeKey(LEFT, 'split', 'S') }
    expect(keysOf('split', none)).toEqual([])
    expect(commandWithKey(COMMANDS, 'S', none)).toBeUndefined()
  })

  it('never end in a conflict, whatever is given, taken and reset', () => {
    const id = fc.constantFrom(...COMMANDS.map((command) => command.id))
    const key = fc.constantFrom('S', 'W', 'V', 'L', 'M', 'Shift+S', 'F2', 'Mod+Z', 'Space')
    const edit = fc.oneof(
      fc.record({ kind: fc.constantFrom('give', 'take'), id, key }),
      fc.record({ kind: fc.constantFrom('reset', 'hand'), id, key }),
    )
    fc.assert(
      fc.property(fc.array(edit, { maxLength: 30 }), (edits) => {
        let map = LEFT
        for (const each of edits) {
          if (each.kind === 'hand') map = { ...map, hand: map.hand === 'left' ? 'right' : 'left' }
          if (each.kind === 'give') map = { ...map, keys: giveKey(map, each.id, each.key) }
          if (each.kind === 'take') map = { ...map, keys: takeKey(map, each.id, each.key) }
          if (each.kind === 'reset') map = { ...map, keys: resetKeys(map, each.id) }
          expect(keyConflicts(COMMANDS, map)).toEqual([])
          if (each.kind === 'give') expect(keysOf(each.id, map)).toContain(each.key)
          if (each.kind === 'take') expect(keysOf(each.id, map)).not.toContain(each.key)
          if (each.kind === 'reset') expect(hasOwnKeys(map, each.id)).toBe(false)
        }
      }),
      { seed: 4, numRuns: 200 },
    )
  })

  it.each([
    ['Mod+W', /browser/u],
    ['Mod+Shift+T', /browser/u],
    ['Enter', /confirms/u],
    ['Escape', /closes/u],
  ])('cannot be %s, and it says why', (key, why) => {
    expect(refusalOfKey(key)).toMatch(why)
  })
})
