import { join, resolve } from 'node:path'
import { describe, expect, test } from 'vitest'
import { frame } from '../../src/core/time/frame.ts'
import type { FrameSource } from '../../src/media/frameSource.ts'
import { openMediaNode } from '../../src/media/node/openMediaNode.ts'
import { NUMBERED_CLIPS, numberIn, seededFrames, shapeFaults } from './support/numberedClips.ts'
import { orThrow } from './support/orThrow.ts'

const CLIPS = resolve(import.meta.dirname, '../media/numbered')

const open = async (path: string): Promise<FrameSource> => orThrow(await openMediaNode(path))

describe.each(NUMBERED_CLIPS)('$file', ({ file, facts, firstNumber = 0 }) => {
  test('is described by what it states, and gives every frame once and in order', async () => {
    const source = await open(join(CLIPS, file))
    expect(source.facts).toMatchObject(facts)
    const { frames } = source.facts
    const read: string[] = []
    const faults: string[] = []
    for await (const step of source.readRange(frame(0), frame(frames))) {
      read.push(`${step.frame}: ${numberIn(step.planes)}`)
      faults.push(...shapeFaults(step.planes, source.facts))
    }
    source.close()
    expect(read).toEqual(Array.from({ length: frames }, (_, n) => `${n}: ${n + firstNumber}`))
    expect(faults).toEqual([])
  })
  test('gives the frame asked for, wherever it lies', async () => {
    const source = await open(join(CLIPS, file))
    const asked = seededFrames(10, source.facts.frames)
    const read: number[] = []
    for (const n of asked) read.push(numberIn(await source.read(frame(n))))
    source.close()
    expect(read).toEqual(asked.map((n) => n + firstNumber))
  })
})

test('stretches put together by an edit list are shown one after another', async () => {
  const source = await open(join(CLIPS, 'h264-two-stretches.mp4'))
  const read: number[] = []
  for await (const { planes } of source.readRange(frame(0), frame(source.facts.frames)))
    read.push(numberIn(planes))
  source.close()
  const run = (length: number, from: number) => Array.from({ length }, (_, n) => n + from)
  expect(read).toEqual([...run(12, 0), ...run(24, 30)])
})
