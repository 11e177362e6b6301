import { readFileSync, writeFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { expect, it } from 'vitest'
import type { Hand } from '../../src/store/preferences.ts'
import { KEY_LAYOUTS } from '../../src/ui/commands/keyLayouts.ts'
import { keyLabel } from '../../src/ui/commands/keys.ts'
import { COMMANDS } from '../../src/ui/commands/registry.ts'

const PAGE = resolve(import.meta.dirname, '../../docs/reach.md')
const BEGIN = '<!-- every command: written by test/ui/reach.test.ts -->\n'

const keysFor = (id: string, hand: Hand): string =>
  (KEY_LAYOUTS[hand][id] ?? []).map((key) => keyLabel(key, false)).join(', ')

/** The text without what only lines the columns of a table up: the formatter does that. */
const plain = (text: string): string => text.replaceAll(/ +/gu, ' ').replaceAll(/-{3,}/gu, '---')

const table = (): string =>
  [
    '| group | command | left hand on the keys | right hand on the keys |',
    '| --- | --- | --- | --- |',
    ...COMMANDS.map(
      ({ id, label, group }) =>
        `| ${group} | ${label} | ${keysFor(id, 'left')} | ${keysFor(id, 'right')} |`,
    ),
  ].join('\n')

it('the page that says how everything is reached has every command with its keys', () => {
  const [before = ''] = readFileSync(PAGE, 'utf8').split(BEGIN)
  const made = `${before}${BEGIN}\n${table()}\n`
  if (process.env.WRITE_REACH === '1') writeFileSync(PAGE, made)
  expect(plain(readFileSync(PAGE, 'utf8'))).toBe(plain(made))
})
