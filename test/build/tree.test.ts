import { execFileSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { INITIAL_PREFERENCES } from '../../src/store/preferences.ts'
import { keyConflicts } from '../../src/ui/commands/keys.ts'
import { COMMANDS } from '../../src/ui/commands/registry.ts'

const ROOT = resolve(import.meta.dirname, '../..')
const files = execFileSync('git', ['ls-files', '--cached', '--others', '--exclude-standard'], {
  cwd: ROOT,
  encoding: 'utf8',
})
  .trim()
  .split('\n')
const read = (path: string): string => readFileSync(`${ROOT}/${path}`, 'utf8')
/** The kernel's own sources are another language, with one entry that re-exports. */
const sources = files.filter((file) => /^src\/(?!kernel\/assembly).*\.(ts|tsx)$/u.test(file))

describe('the tree', () => {
  it('has no source file over 400 lines', () => {
    const long = sources.filter((file) => read(file).split('\n').length > 401)
    expect(long).toEqual([])
  })

  it('has a lock file without registry addresses', () => {
    expect(read('package-lock.json')).not.toContain('"resolved"')
  })

  it('has only the known things at its top', () => {
    const top = new Set(files.map((file) => file.split('/')[0] ?? ''))
    const known =
      /^(\..*|package(-lock)?\.json|vite\.config\.ts|README\.md|DEVELOPERS\.md|LICENSE|NOTICE|src|test|samples|docs)$/u
    expect([...top].filter((name) => !known.test(name))).toEqual([])
  })

  it('pins every dependency to one version', () => {
    const { dependencies, devDependencies } = JSON.parse(read('package.json'))
    for (const version of Object.values({ ...dependencies, ...devDependencies }))
      expect(version).toMatch(/^\d+\.\d+\.\d+$/u)
  })

  it('has no re-export files and no default exports in src', () => {
    for (const file of sources) {
      expect(read(file), file).not.toMatch(/^export default/mu)
      expect(read(file), file).not.toMatch(/^export (\*|\{[^}]*\}) from/mu)
    }
  })

  it('gives no key to two commands, for either hand', () => {
    for (const hand of ['left', 'right'] as const)
      expect(keyConflicts(COMMANDS, { ...INITIAL_PREFERENCES, hand })).toEqual([])
  })

  it('names every runtime package in the third-party notices', () => {
    const { dependencies } = JSON.parse(read('package.json'))
    for (const name of Object.keys(dependencies)) expect(read('NOTICE')).toContain(name)
  })
})
