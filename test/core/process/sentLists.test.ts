import { expect, test } from 'vitest'
import { PRINT_BASE } from '../../../src/core/film/filmBase.ts'
import type { ProcessList } from '../../../src/core/process/processList.ts'
import { createListReceiver, createListSender } from '../../../src/core/process/sentLists.ts'

const made = (name: string): ProcessList => ({
  name,
  steps: [{ kind: 'curve', channels: 1, points: 3, values: [0, 0.4, 1] }],
})

const coding = (list: ProcessList | null) => ({
  matrix: 'bt709',
  range: 'full',
  base: { ...PRINT_BASE, list },
})

/** A channel that copies, as between threads, and what crossed last. */
const channel = () => {
  const [send, receive] = [createListSender(), createListReceiver()]
  const crossed: unknown[] = []
  const cross = <Message>(message: Message): Message => {
    const copy = structuredClone(send(message))
    crossed.push(copy)
    return receive(copy)
  }
  return { cross, crossed }
}

test('a list crosses once, and is one object at the other end from then on', () => {
  const { cross, crossed } = channel()
  const list = made('one')
  const message = { planes: new Uint8Array(4), coding: coding(list), numbers: [1, 2, 3] }
  const first = cross(message)
  const second = cross(message)
  expect(first).toEqual(message)
  expect(second).toEqual(message)
  expect(second.coding.base.list).toBe(first.coding.base.list)
  expect(JSON.stringify(crossed[0])).toContain('0.4')
  expect(JSON.stringify(crossed[1])).not.toContain('0.4')
})

test('what holds no list crosses as it is', () => {
  const send = createListSender()
  const message = { coding: coding(null), of: [{ kind: 'frame' }, 'text', 3, null, undefined] }
  expect(send(message)).toBe(message)
})

test('lists anywhere in a message cross, twice the same one as well', () => {
  const { cross } = channel()
  const [one, other] = [made('one'), made('other')]
  const message = {
    coding: coding(one),
    view: {
      compare: { others: [{ side: { coding: coding(other) } }, { side: { coding: coding(one) } }] },
    },
  }
  const whole = cross(message)
  expect(whole).toEqual(message)
  expect(whole.view.compare.others[1]?.side.coding.base.list).toBe(whole.coding.base.list)
})

test('of many lists the last few are kept, and the others cross anew', () => {
  const { cross, crossed } = channel()
  const lists = Array.from({ length: 9 }, (_, i) => made(`list ${i}`))
  for (const i of [0, 1, 2, 3, 0, 4, 0, 5, 6, 7, 8, 5, 0, 8, 1, 2, 3, 4, 0])
    expect(cross(coding(lists[i] ?? null)).base.list).toEqual(lists[i])
  const whole = crossed.filter((message) => JSON.stringify(message).includes('0.4'))
  expect(whole).toHaveLength(16)
})

test('a list that was never sent is a bug, and is said', () => {
  const receive = createListReceiver()
  expect(() => receive({ list: { sentList: 3 } })).toThrow('not sent')
})
