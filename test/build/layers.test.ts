import { execFileSync } from 'node:child_process'
import { cpSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'

const ROOT = resolve(import.meta.dirname, '../..')
const BIN = join(ROOT, 'node_modules/.bin')

let copy = ''

const run = (command: string, args: readonly string[]): { status: number; out: string } => {
  try {
    const out = execFileSync(join(BIN, command), args, {
      cwd: copy,
      encoding: 'utf8',
      stdio: 'pipe',
    })
    return { status: 0, out }
  } catch (error) {
    const { status, stdout, stderr } = error as { status: number; stdout: string; stderr: string }
    return { status, out: `${stdout}${stderr}` }
  }
}

const types = () => run('tsc', ['-b', 'src'])
const lint = (file: string) => run('biome', ['lint', '--error-on-warnings', file])

beforeAll(() => {
  copy = mkdtempSync(join(tmpdir(), 'reelwright-layers-'))
  for (const part of [
    'src',
    'samples',
    '.biome.json',
    'package.json',
    '.gitignore',
    '.cache/kernel',
    '.cache/review',
  ])
    cpSync(join(ROOT, part), join(copy, part), { recursive: true })
  symlinkSync(join(ROOT, 'node_modules'), join(copy, 'node_modules'))
  execFileSync('git', ['init', '-q'], { cwd: copy })
})

afterAll(() => rmSync(copy, { recursive: true, force: true }))

/** Plants a file, looks, and takes it away again. */
const planted = <Seen>(file: string, text: string, look: (path: string) => Seen): Seen => {
  const path = join('src', file)
  writeFileSync(join(copy, path), text)
  try {
    return look(path)
  } finally {
    rmSync(join(copy, path))
  }
}

describe('the guards of the layers bite', () => {
  it('the tree as it is passes', () => {
    expect(types()).toEqual({ status: 0, out: '' })
  })

  it.each([
    [
      'core/base/planted.ts',
      "import { createAppStore } from '../../store/appStore.ts'\nexport const x = createAppStore\n",
      'core may not use the store',
    ],
    [
      'core/base/planted.ts',
      "import type { AppStore } from '../../store/appStore.ts'\nexport type X = AppStore\n",
      'core may not use the store, not even its types',
    ],
    [
      'core/base/planted.ts',
      'export const width = (): number => window.innerWidth\n',
      'core has no window',
    ],
    [
      'core/base/planted.ts',
      'export const now = (): number => performance.now()\n',
      'core has no clock',
    ],
    [
      'store/planted.ts',
      'export const title = (): string => document.title\n',
      'the store has no document',
    ],
    [
      'store/planted.ts',
      "import type { FrameSource } from '../media/frameSource.ts'\nexport type X = FrameSource\n",
      'the store may not use media',
    ],
    [
      'review/planted.ts',
      "import type { AppStore } from '../store/appStore.ts'\nexport type X = AppStore\n",
      'the page of a pack may not use the store',
    ],
    [
      'render/planted.ts',
      "import type { Kernel } from '../kernel/kernel.ts'\nexport type X = Kernel\n",
      'render may not use the kernel',
    ],
    [
      'ui/planted.ts',
      "import { findShots } from '../work/findShots.ts'\nexport const x = findShots\n",
      'the ui may not do the work',
    ],
    [
      'media/planted.ts',
      "import type { Pace } from '../work/pace.ts'\nexport type X = Pace\n",
      'media may not use work',
    ],
    [
      'cli/planted.ts',
      "import { STRINGS } from '../ui/strings.ts'\nexport const x = STRINGS\n",
      'the command line may not use the ui',
    ],
    ['core/base/planted.ts', 'export enum Colour {\n  Red,\n}\n', 'no enums'],
  ])('types, %s: %s', (file, text) => {
    const { status, out } = planted(file, text, types)
    expect(status).not.toBe(0)
    expect(out).toContain('planted.ts')
  })

  it.each([
    ['core/base/planted.ts', "import * as React from 'react'\nexport const x = React\n"],
    ['core/base/planted.ts', "export const x = () => import('mediabunny')\n"],
    ['kernel/planted.ts', "export { parse } from 'valibot'\n"],
    ['review/planted.ts', "export { parse } from 'valibot'\n"],
    ['ui/planted.ts', "import { openDB } from 'idb'\nexport const x = openDB\n"],
    ['work/planted.ts', "import { Input } from 'mediabunny'\nexport const x = Input\n"],
    [
      'media/browser/planted.ts',
      "import { readFile } from 'node:fs/promises'\nexport const x = readFile\n",
    ],
    ['store/planted.ts', "import { useStore } from 'zustand'\nexport const x = useStore\n"],
  ])('lint, %s: a package this layer may not use: %s', (file, text) => {
    const { status, out } = planted(file, text, lint)
    expect(status).not.toBe(0)
    expect(out).toContain('noRestrictedImports')
  })

  it('lint: no import goes in a circle', () => {
    const { status, out } = planted(
      'core/base/plantedB.ts',
      "import { a } from './plantedA.ts'\nexport const b = (): unknown => a\n",
      (path) =>
        planted(
          'core/base/plantedA.ts',
          "import { b } from './plantedB.ts'\nexport const a = (): unknown => b\n",
          () => lint(path),
        ),
    )
    expect(status).not.toBe(0)
    expect(out).toContain('noImportCycles')
  })
})
