import { expect, test } from 'vitest'
import { clipPlan, makeHere, orderOf, wrongIn } from './clipPass.ts'

const FILE = { kind: 'file', file: undefined } as const

test.each(['h264', 'vp9', 'av1'] as const)('a whole pass to %s is right', async (format) => {
  const { plan, file } = await clipPlan('sound/tone-aac-25.mp4', {
    format,
    head: { bars: 1, slate: 1, leader: 1 },
  })
  const begun = performance.now()
  const made = await makeHere(orderOf(plan, file, FILE))
  console.log(format, made.encoding, made.file?.size, Math.round(performance.now() - begun))
  for (const { check, standing, says } of made.findings) console.log(check, standing, says)
  expect(wrongIn(made)).toEqual([])
})
