import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { hasFiles, killedHalfWay } from './interrupted.ts'
import { type Outcome, reelwright } from './reelwright.ts'
import { frameSums, videoScan } from './transferScan.ts'

let folder = ''
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'reelwright-parts-'))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const placeFor = (name: string): string => {
  const place = join(folder, name)
  mkdirSync(place)
  return place
}

const wentWell = ({ status, error }: Outcome): void => expect([status, error]).toEqual([0, error])

const partOf = (out: string, part: number): string => `${out}.part-000${part}-of-0008`

const EIGHT = [1, 2, 3, 4, 5, 6, 7, 8]

/**
 * Eight parts made in an order of their own, parts 3 and 6 killed half-way and made again, part 5
 * made twice on another disk too; returns all folders there are, as they come.
 */
const madeInEight = async (job: string, out: string, more: readonly string[]) => {
  const make = (part: number, to = out) => [
    'transfer',
    job,
    '--out',
    to,
    '--part',
    `${part}/8`,
    ...more,
  ]
  for (const part of [3, 6]) {
    const name = `part-000${part}-of-0008.unfinished`
    await killedHalfWay(make(part), () => hasFiles(join(out, '..'), name, 1), partOf(out, part))
    expect(existsSync(partOf(out, part))).toBe(false)
  }
  const early = await reelwright([
    'join',
    ...EIGHT.map((each) => partOf(out, each)),
    '--out',
    `${out}-early`,
  ])
  expect(early.status).toBe(3)
  for (const part of [7, 2, 5, 8, 1, 4, 6, 3]) wentWell(await reelwright(make(part)))
  const again = await reelwright(make(5))
  expect(again.out).toMatch(/was there already/u)
  const elsewhere = `${out}-elsewhere`
  cpSync(partOf(out, 5), partOf(elsewhere, 5), { recursive: true })
  return [partOf(elsewhere, 5), ...[...EIGHT].reverse().map((part) => partOf(out, part))]
}

describe('eight parts, two killed half-way, one delivered twice', () => {
  it.each([['h264', 'mp4', []]])(
    'of %s are a single pass, frame for frame',
    async (format, ending, more) => {
      const place = placeFor(format)
      const job = videoScan(place, 230, { head: { bars: 1, slate: 0, leader: 0 } })
      const wish = ['--format', format, ...more]
      const single = join(place, `single.${ending}`)
      const joined = join(place, `joined.${ending}`)
      const parts = await madeInEight(job, join(place, `apart.${ending}`), wish)
      wentWell(await reelwright(['join', ...parts, '--out', joined]))
      const whole = await reelwright(['transfer', job, '--out', single, ...wish, '--json'])
      wentWell(whole)
      expect(JSON.parse(whole.out).pass.findings).toContainEqual(
        expect.objectContaining({ check: 'tags', standing: 'right' }),
      )
      const sums = frameSums(joined)
      expect(sums.match(/^0,/gmu)).toHaveLength(240)
      expect(sums).toBe(frameSums(single))
      expect(
        readdirSync(place).filter(
          (name) => /unfinished/u.test(name) && !/part-000[36]/u.test(name),
        ),
      ).toEqual([])
    },
  )
})
