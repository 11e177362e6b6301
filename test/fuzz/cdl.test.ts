import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { expect, test } from 'vitest'
import { readCdlList } from '../../src/core/formats/cdl/readCdlList.ts'
import { checkGrade } from '../../src/core/job/checkGrade.ts'
import { rate } from '../../src/core/time/rate.ts'
import { type Chance, fuzzReader, textInput } from '../support/fuzzReader.ts'

const MEDIA = resolve(import.meta.dirname, '../media/interchange/cdl')

const seeds = ['cdl_test1.cc', 'cdl_test2.cc', 'cdl_test1.ccc', 'cdl_test1.cdl'].map((name) =>
  readFileSync(`${MEDIA}/${name}`, 'utf8'),
)

const pick = <T>(chance: Chance, items: readonly [T, ...T[]]): T =>
  items[chance(items.length)] ?? items[0]

const ODD = ['1e999', '-1', '2e6', '1e-9', 'x', '1,0', ''] as const

const numbers = (chance: Chance, count: number): string =>
  Array.from({ length: chance(30) === 0 ? chance(5) : count }, () =>
    chance(60) === 0 ? pick(chance, ODD) : `${chance(3000) / 1000}`,
  ).join(' ')

const words = (chance: Chance): string =>
  chance(3)
    ? ''
    : pick(chance, [
        '<Description>Cue 1, in at 10:00:00:00</Description>',
        '<Description> a &amp; b </Description>',
        '<InputDescription>c</InputDescription>',
        '<ViewingDescription/>',
        '<Unknown><Description>d</Description></Unknown>',
      ])

const correction = (chance: Chance): string => {
  const said = () => words(chance)
  const sop = `<SOPNode>${said()}<Slope>${numbers(chance, 3)}</Slope><Offset>${numbers(chance, 3)}</Offset><Power>${numbers(chance, 3)}</Power></SOPNode>`
  const sat = `<SatNode>${said()}<Saturation>${numbers(chance, 1)}</Saturation></SatNode>`
  const id = pick(chance, ['', 'id=""', 'id="a"', 'id="b"', `id="c${chance(1000)}"`])
  return `<ColorCorrection ${id}>${said()}${chance(5) ? sop : ''}${chance(5) ? sat : ''}${said()}</ColorCorrection>`
}

const decision = (chance: Chance): string => {
  const inside = chance(6)
    ? correction(chance)
    : `<ColorCorrectionRef ref="${pick(chance, ['a', 'b', 'z'])}"/>`
  return `<ColorDecision>${words(chance)}${chance(2) ? '<MediaRef ref="x"/>' : ''}${inside}</ColorDecision>`
}

const makeUp = (chance: Chance): Uint8Array => {
  const several = (make: (chance: Chance) => string): string =>
    Array.from({ length: chance(4) }, () => make(chance)).join('\n')
  const text = pick(chance, [
    correction(chance),
    `<ColorCorrectionCollection xmlns="urn:ASC:CDL:v1.2">${words(chance)}\n${several(correction)}</ColorCorrectionCollection>`,
    `<ColorDecisionList xmlns="urn:ASC:CDL:v1.01">${words(chance)}\n${several(decision)}</ColorDecisionList>`,
  ])
  return new TextEncoder().encode(text)
}

const TIMING = { rate: rate(25), isDropFrame: false }

test('ASC CDL files, damaged and made up, are read whole or refused with a line', async () => {
  const { read, refused } = await fuzzReader({
    seeds: textInput.seedsOf(seeds),
    makeUp,
    toInput: textInput.toInput,
    read: (text) => {
      const result = readCdlList(text, TIMING)
      if (!result.ok) return result
      expect(result.value.decisions.length).toBeGreaterThan(0)
      for (const { values, line } of result.value.decisions) {
        expect(line).toBeGreaterThan(0)
        expect(values.grade && checkGrade(values.grade).ok).toBe(true)
      }
      for (const { at } of result.value.notTaken) expect(at?.line).toBeGreaterThan(0)
      return result
    },
  })
  expect(read).toBeGreaterThan(2000)
  expect(refused).toBeGreaterThan(2000)
})
