import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { expect, test } from 'vitest'
import { PROGRAM_VERSION } from '../../src/core/programVersion.ts'

test('the program tells the version that package.json has', () => {
  const text = readFileSync(resolve(import.meta.dirname, '../../package.json'), 'utf8')
  expect(PROGRAM_VERSION).toBe((JSON.parse(text) as { version: string }).version)
})
