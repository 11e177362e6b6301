import { describe, expect, test } from 'vitest'
import { frame } from '../../../src/core/time/frame.ts'
import { openVideoFile } from '../../../src/media/browser/openVideoFile.ts'
import type { FrameSource } from '../../../src/media/frameSource.ts'
import {
  NUMBERED_CLIPS,
  numberIn,
  seededFrames,
  shapeFaults,
} from '../../media-layer/support/numberedClips.ts'
import { fetchClip } from './fetchClip.ts'

const open = async (file: File): Promise<FrameSource> => {
  const opened = await openVideoFile(file)
  if (!opened.ok) throw new Error(opened.problems[0].says)
  return opened.value
}

describe.each(NUMBERED_CLIPS)('$file', ({ file, facts, firstNumber = 0 }) => {
  test('is described by what it states and what its first picture shows', async () => {
    const source = await open(await fetchClip(`numbered/${file}`))
    expect(source.facts).toMatchObject(facts)
    source.close()
  })
  test('gives every frame once, in order of presentation', async () => {
    const source = await open(await fetchClip(`numbered/${file}`))
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
    const source = await open(await fetchClip(`numbered/${file}`))
    const asked = seededFrames(30, source.facts.frames)
    const read: number[] = []
    for (const n of asked) read.push(numberIn(await source.read(frame(n))))
    source.close()
    expect(read).toEqual(asked.map((n) => n + firstNumber))
  })
})
