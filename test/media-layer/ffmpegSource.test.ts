import { join, resolve } from 'node:path'
import { expect, test } from 'vitest'
import { frame } from '../../src/core/time/frame.ts'
import type { FrameSource } from '../../src/media/frameSource.ts'
import { openMediaNode } from '../../src/media/node/openMediaNode.ts'
import { NUMBERED_CLIPS, numberIn, seededFrames, shapeFaults } from './support/numberedClips.ts'
import { orThrow } from './support/orThrow.ts'

const CLIPS = resolve(import.meta.dirname, '../media/numbered')

const open = async (path: string): Promise<FrameSource> => orThrow(await openMediaNode(path))

test.each(NUMBERED_CLIPS)(
  '$file: facts as stated, every frame once and in order, and again where asked for',
  async ({ file, facts, firstNumber = 0 }) => {
    const source = await open(join(CLIPS, file))
    expect(source.facts).toMatchObject(facts)
    const { frames } = source.facts
    const read: string[] = []
    const faults: string[] = []
    for await (const step of source.readRange(frame(0), frame(frames))) {
      read.push(`${step.frame}: ${numberIn(step.planes)}`)
      faults.push(...shapeFaults(step.planes, source.facts))
    }
    expect(read).toEqual(Array.from({ length: frames }, (_, n) => `${n}: ${n + firstNumber}`))
    expect(faults).toEqual([])
    const asked = seededFrames(30, frames)
    const again: number[] = []
    for (const n of asked) again.push(numberIn(await source.read(frame(n))))
    source.close()
    expect(again).toEqual(asked.map((n) => n + firstNumber))
  },
)

test('stretches put together by an edit list are shown one after another', async () => {
  const source = await open(join(CLIPS, 'h264-two-stretches.mp4'))
  const read: number[] = []
  for await (const { planes } of source.readRange(frame(0), frame(source.facts.frames)))
    read.push(numberIn(planes))
  source.close()
  const run = (length: number, from: number) => Array.from({ length }, (_, n) => n + from)
  expect(read).toEqual([...run(12, 0), ...run(24, 30)])
})
