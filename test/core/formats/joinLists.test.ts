import { expect, it } from 'vitest'
import { readCdlList } from '../../../src/core/formats/cdl/readCdlList.ts'
import type { DecisionList } from '../../../src/core/formats/decisionList.ts'
import { joinLists, type ListFile } from '../../../src/core/formats/joinLists.ts'

const listOf = (text: string): DecisionList => {
  const read = readCdlList(text, undefined)
  if (!read.ok) throw new Error(read.problems[0].says)
  return read.value
}

const single = (saturation: number, id = ''): DecisionList =>
  listOf(
    `<ColorCorrection${id}><SatNode><Saturation>${saturation}</Saturation></SatNode></ColorCorrection>`,
  )

const joinedOf = (files: readonly ListFile[]): DecisionList => {
  const joined = joinLists(files)
  if (!joined.ok) throw new Error(joined.problems[0].says)
  return joined.value
}

it('files are one list in the order of their names, each called by its id or its file', () => {
  const joined = joinedOf([
    { name: 'cue-0002.cc', list: single(0.5) },
    { name: 'cue-0001.cc', list: single(0.25, ' id="harbour"') },
  ])
  expect(joined.decisions.map(({ name, values }) => [name, values.grade?.saturation])).toEqual([
    ['harbour', 0.25],
    ['cue-0002', 0.5],
  ])
  expect(joined.notTaken).toEqual([])
})

it('what a file says as a whole is told, with its name', () => {
  const list: DecisionList = { ...single(1), foreign: [{ format: 'cdl', text: '{}' }] }
  const [told] = joinedOf([{ name: 'a.ccc', list }]).notTaken
  expect(told?.says).toMatch(/^a\.ccc: /u)
})

it('numbers in names count by their value', () => {
  const names = ['part 10.cc', 'part 2.cc', 'part 1.cc', 'part.cc', 'a.cc']
  const joined = joinedOf(names.map((name) => ({ name, list: single(1) })))
  expect(joined.decisions.map(({ name }) => name)).toEqual([
    'a',
    'part 1',
    'part 2',
    'part 10',
    'part',
  ])
})

it('lists of different formats or rates are not joined', () => {
  const csv: DecisionList = { ...single(1), format: 'csv' }
  const joined = joinLists([
    { name: 'a.cc', list: single(1) },
    { name: 'b.csv', list: csv },
  ])
  expect(joined.ok === false && joined.problems[0].says).toContain('a.cc and b.csv')
  expect(joinLists([]).ok).toBe(false)
})
