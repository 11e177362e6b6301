import { describe, expect, test } from 'vitest'
import type { Planes } from '../../src/core/picture/planes.ts'
import { frame } from '../../src/core/time/frame.ts'
import type { OnDamage } from '../../src/core/transfer/transferSettings.ts'
import { MediaError } from '../../src/media/mediaError.ts'
import type { MediaFacts } from '../../src/media/mediaFacts.ts'
import { readDamaged } from '../../src/work/readDamaged.ts'
import { madeSource } from '../support/madeSource.ts'

const FACTS: MediaFacts = {
  ...{ name: 'orlop.mov', container: 'MOV', codec: 'H.264', width: 1, height: 1 },
  ...{ displayAspect: 1, depth: 8, frames: 12, bytes: 1 },
  layout: 'rgb',
  rate: undefined,
  matrix: 'bt709',
  range: 'full',
}

/** A picture of one pixel that shows its number. */
const numbered = (at: number): Planes => ({
  ...{ width: 1, height: 1, layout: 'rgb', depth: 8 },
  samples: [Uint8Array.of(at), Uint8Array.of(0), Uint8Array.of(0)],
})

const read = async (from: number, end: number, onDamage: OnDamage, damaged: readonly number[]) => {
  const source = madeSource(FACTS, numbered, new Set(damaged))
  const shown: [frame: number, shows: number | undefined, damage: number | undefined][] = []
  const range = { from: frame(from), end: frame(end), onDamage }
  for await (const each of readDamaged(source, range))
    shown.push([each.frame, each.planes.samples[0][0], each.damage?.at?.frame])
  return shown
}

describe('frames that cannot be decoded', () => {
  test('stop the reading by name', async () => {
    const failure: unknown = await read(0, 12, 'stop', [5]).catch((error: unknown) => error)
    expect(failure).toBeInstanceOf(MediaError)
    expect((failure as MediaError).problem).toMatchObject({ at: { frame: 5 } })
  })

  test('show the last whole one before them, each told', async () => {
    expect((await read(3, 9, 'hold', [5, 6])).slice(1)).toEqual([
      [4, 4, undefined],
      [5, 4, 5],
      [6, 4, 6],
      [7, 7, undefined],
      [8, 8, undefined],
    ])
  })

  test('show the same whichever frame the reading begins with', async () => {
    const damaged = [0, 1, 5, 6, 7, 11]
    const whole = await read(0, 12, 'hold', damaged)
    expect(whole.map(([, shows]) => shows)).toEqual([2, 2, 2, 3, 4, 4, 4, 4, 8, 9, 10, 10])
    for (let from = 0; from < 12; from++)
      expect(await read(from, 12, 'hold', damaged)).toEqual(whole.slice(from))
  })

  test('are an error where no frame at all can be decoded, and past the end', async () => {
    const all = Array.from({ length: 12 }, (_, i) => i)
    await expect(read(0, 12, 'hold', all)).rejects.toBeInstanceOf(MediaError)
    await expect(read(0, 13, 'stop', [])).rejects.toMatchObject({
      problem: { says: expect.stringContaining('ends before frame 12') },
    })
  })
})
