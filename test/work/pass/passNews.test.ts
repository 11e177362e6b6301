import { expect, test } from 'vitest'
import { createGate } from '../../../src/work/pass/gate.ts'
import { createPassTeller } from '../../../src/work/pass/passNews.ts'
import type { PassNews } from '../../../src/work/passCalls.ts'

const telling = (total: number) => {
  let time = 0
  const news: PassNews[] = []
  const gate = createGate(() => time)
  const teller = createPassTeller(total, gate, (each) => news.push(each))
  return { gate, teller, news, wait: (ms: number) => (time += ms) }
}

test('frames done before count as done, not as speed', () => {
  const { teller, news, wait } = telling(100)
  teller.doneBefore(60, [7])
  for (let i = 0; i < 20; i++) {
    wait(100)
    teller.wrote(undefined)
  }
  expect(news.at(-1)).toMatchObject({
    phase: 'writing',
    doneBefore: 60,
    heldFrames: [7],
    pace: { done: 80, total: 100, framesPerSecond: 10, secondsLeft: 2 },
  })
})

test('news is told ten times a second at most, but a held frame, a new phase and an end at once', () => {
  const { teller, news, wait } = telling(1000)
  teller.doneBefore(0, [])
  wait(100)
  for (let i = 0; i < 50; i++) {
    wait(10)
    teller.wrote(undefined)
  }
  expect(news.length).toBeLessThanOrEqual(7)
  const before = news.length
  teller.wrote(12)
  expect(news.length).toBe(before + 1)
  expect(news.at(-1)?.heldFrames).toEqual([12])
  teller.phase('joining', 0, 4)
  expect(news.at(-1)).toMatchObject({ phase: 'joining', pace: { done: 0, total: 4 } })
  teller.phase('joining', 4, 4)
  expect(news.at(-1)).toMatchObject({ phase: 'joining', pace: { done: 4, total: 4 } })
})
