import { expect, test } from 'vitest'
import { createGate } from '../../../src/work/pass/gate.ts'

const { signal } = new AbortController()

test('an open gate lets through; a paused one once the pause is over', async () => {
  const gate = createGate()
  await gate.open(signal)
  gate.pause(true)
  let isThrough = false
  const through = gate.open(signal).then(() => {
    isThrough = true
  })
  await new Promise((resolve) => setTimeout(resolve, 5))
  expect(isThrough).toBe(false)
  gate.pause(false)
  await through
  expect(isThrough).toBe(true)
})

test('what is stopped while it is paused leaves with the reason', async () => {
  const gate = createGate()
  const stop = new AbortController()
  gate.pause(true)
  const waiting = gate.open(stop.signal)
  stop.abort(new Error('stopped'))
  await expect(waiting).rejects.toThrow('stopped')
  await expect(gate.open(stop.signal)).rejects.toThrow('stopped')
})

test('its clock stands in a pause', () => {
  let time = 100
  const gate = createGate(() => time)
  time = 150
  gate.pause(true)
  gate.pause(true)
  time = 400
  expect(gate.now()).toBe(150)
  gate.pause(false)
  gate.pause(false)
  time = 410
  expect(gate.now()).toBe(160)
})
