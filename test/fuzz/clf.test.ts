import { readdirSync, readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { expect, test } from 'vitest'
import { readClf } from '../../src/core/formats/clf/readClf.ts'
import { checkProcessList } from '../../src/core/process/checkProcessList.ts'
import { type Chance, fuzzReader, textInput } from '../support/fuzzReader.ts'

const MEDIA = resolve(import.meta.dirname, '../media/interchange/clf')

const seeds = readdirSync(MEDIA)
  .filter((name) => name.endsWith('.clf'))
  .map((name) => readFileSync(`${MEDIA}/${name}`, 'utf8'))

const pick = <T>(chance: Chance, items: readonly [T, ...T[]]): T =>
  items[chance(items.length)] ?? items[0]

const number = (chance: Chance): string =>
  pick(chance, ['0', '1', '.5', '-0.25', '+1e-1', '1023', '4e3', '1e7', '-', 'x', '0,5'])

const DEPTHS = ['8i', '10i', '12i', '16i', '16f', '32f', '32f', '32f', '9i'] as const

const depth = (chance: Chance): string => (chance(30) ? '32f' : pick(chance, DEPTHS))

/** An operator that is often right, with its numbers often as many as they must be. */
const operator = (chance: Chance): string => {
  const numbers = (count: number): string => {
    const odd = chance(25) === 0 ? chance(3) - 1 : 0
    return Array.from({ length: count + odd }, () =>
      chance(80) === 0 ? number(chance) : `${chance(2000) / 1000}`,
    ).join(pick(chance, [' ', '\n', '\t']))
  }
  const depths = `inBitDepth="${depth(chance)}" outBitDepth="${depth(chance)}"`
  const array = (dim: string, count: number) => `<Array dim="${dim}">${numbers(count)}</Array>`
  const value = (name: string) =>
    chance(12) ? `<${name}>${chance(9) + (name.startsWith('max') ? 9 : 0)}</${name}>` : ''
  switch (chance(20)) {
    case 0:
    case 1:
    case 2:
      return `<Matrix ${depths}>${chance(2) ? array('3 3', 9) : array('3 4', 12)}</Matrix>`
    case 3:
    case 4:
    case 5:
      return `<Range ${depths} style="${pick(chance, ['Clamp', 'noClamp'])}">${value('minInValue')}${value('minOutValue')}${value('maxInValue')}${value('maxOutValue')}</Range>`
    case 6:
    case 7:
    case 8: {
      const points = chance(12) ? 2 + chance(6) : chance(2)
      const channels = pick(chance, [1, 3, 1, 3, 1, 3, 2])
      return `<LUT1D ${depths}>${array(`${points} ${channels}`, points * channels)}</LUT1D>`
    }
    case 9:
    case 10:
    case 11: {
      const points = pick(chance, [2, 2, 2, 2, 2, 3, 66])
      const count = points === 66 ? 3 : 3 * points ** 3
      return `<LUT3D ${depths} interpolation="${pick(chance, ['tetrahedral', 'trilinear'])}">${array(`${points} ${points} ${points} 3`, count)}</LUT3D>`
    }
    case 18:
      return pick(chance, ['<Description>a</Description>', '<Info><a/></Info>', '<Id>x</Id>'])
    case 19:
      return pick(chance, [`<Log ${depths}/>`, `<Exponent ${depths}/>`, '<x/>', 'text', '<!-- -->'])
    default:
      return `<ASC_CDL ${depths} style="${pick(chance, ['Fwd', 'Rev', 'FwdNoClamp', 'RevNoClamp'])}"><SOPNode><Slope>${numbers(3)}</Slope><Offset>${numbers(3)}</Offset><Power>${numbers(3)}</Power></SOPNode><SatNode><Saturation>${numbers(1)}</Saturation></SatNode></ASC_CDL>`
  }
}

const NAMESPACES = [
  'xmlns="http://www.smpte-ra.org/ns/2136-1/2024"',
  'xmlns="urn:AMPAS:CLF:v3.0"',
  '',
] as const

const makeUp = (chance: Chance): Uint8Array => {
  const operators = Array.from({ length: 1 + chance(4) }, () => operator(chance)).join('\n')
  const id = chance(30) ? 'id="a"' : pick(chance, ['', 'id=""'])
  const version = chance(30) ? 'compCLFversion="3.0"' : ''
  const text = `<ProcessList ${pick(chance, NAMESPACES)} ${id} ${version}>\n${operators}\n</ProcessList>`
  return new TextEncoder().encode(text)
}

test('process lists, damaged and made up, are read whole or refused with a line', async () => {
  const { read, refused } = await fuzzReader({
    seeds: textInput.seedsOf(seeds),
    makeUp,
    toInput: textInput.toInput,
    read: (text) => {
      const result = readClf(text)
      if (result.ok) {
        expect(checkProcessList(result.value.list)).toEqual([])
        for (const { at } of result.value.notTaken) expect(at?.line).toBeGreaterThan(0)
      }
      return result
    },
  })
  expect(read).toBeGreaterThan(1000)
  expect(refused).toBeGreaterThan(2000)
})
