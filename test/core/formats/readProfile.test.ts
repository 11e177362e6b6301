import { expect, it } from 'vitest'
import { readProfile } from '../../../src/core/formats/profile/readProfile.ts'

it('reads a level, or three channels, with names or without, by any separator', () => {
  const one = readProfile('0,700\n0.5,10\n1,0\n')
  expect(one.ok && one.value).toEqual([
    { name: 'Level', unit: 'of the places', x: [0, 0.5, 1], y: [700, 10, 0] },
  ])
  const three = readProfile('µs;R;G;B\r\n0;1;2;3\r\n1;4;5;6\r\n')
  expect(three.ok && three.value.map(({ name, unit, y }) => [name, unit, y])).toEqual([
    ['Red', 'µs', [1, 4]],
    ['Green', 'µs', [2, 5]],
    ['Blue', 'µs', [3, 6]],
  ])
})

it.each([
  ['1,2,3\n', 'two columns'],
  ['0,1\n1,x\n', 'Line 2'],
  ['0,1\n1\n', 'Line 2'],
  ['', 'two columns'],
  ['0,1\n1,Infinity\n', 'Line 2'],
])('refuses %j with what is wrong', (text, says) => {
  const read = readProfile(text)
  expect(!read.ok && read.problems[0].says).toContain(says)
})
