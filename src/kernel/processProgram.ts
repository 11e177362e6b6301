import { at } from '../core/base/assert.ts'
import { type CurveStep, type ProcessList, sameProcessList } from '../core/process/processList.ts'
import { type ProcessOperation, processOperations } from '../core/process/processOperations.ts'
import { fillPowerTable, POWER_TABLE_LENGTH } from './powerTable.ts'

/** The kinds of operation, as `assembly/processRow.ts` knows them; 0 ends the program. */
const LINES = 1
const POWER = 2
const CURVE = 3
const TRILINEAR = 4
const TETRAHEDRAL = 5

/** Bytes of an operation: four words of its own, then twelve numbers. */
const OPERATION_BYTES = 64

/** Every channel's value at each place of a curve and its rise to the next: pairs of f32. */
const curveTable = ({ channels, points, values }: CurveStep, channel: number): Float32Array => {
  const table = new Float32Array(2 * (points - 1))
  const valueAt = (place: number) => at(values, place * channels + channel)
  for (let i = 0; i < points - 1; i++) {
    table[2 * i] = valueAt(i)
    table[2 * i + 1] = valueAt(i + 1) - valueAt(i)
  }
  return table
}

/** R′G′B′ of each place of a cube and an unused number: a vector each. */
const cubeTable = (values: readonly number[]): Float32Array => {
  const count = values.length / 3
  const table = new Float32Array(4 * count)
  for (let i = 0; i < count; i++)
    for (let c = 0; c < 3; c++) table[4 * i + c] = at(values, 3 * i + c)
  return table
}

const powerTable = (power: number): Float32Array => {
  const table = new Float32Array(POWER_TABLE_LENGTH)
  fillPowerTable(table, power)
  return table
}

/** The tables of an operation: one, or one each for R′, G′, B′, which may be the same. */
const tablesOf = (operation: ProcessOperation): readonly Float32Array[] => {
  switch (operation.kind) {
    case 'lines':
      return []
    case 'power': {
      const made = new Map<number, Float32Array>()
      return operation.power.map((power) => {
        const table = made.get(power) ?? powerTable(power)
        made.set(power, table)
        return table
      })
    }
    case 'curve': {
      const first = curveTable(operation, 0)
      const others = [1, 2].map((c) =>
        operation.channels === 1 ? first : curveTable(operation, c),
      )
      return [first, ...others]
    }
    case 'cube':
      return [cubeTable(operation.values)]
  }
}

const kindOf = (operation: ProcessOperation): number => {
  if (operation.kind === 'cube')
    return operation.interpolation === 'tetrahedral' ? TETRAHEDRAL : TRILINEAR
  return { lines: LINES, power: POWER, curve: CURVE }[operation.kind]
}

/**
 * A list as `assembly/processRow.ts` runs it: operations one after another, an end, then their
 * tables, which operations name by bytes from the start.
 */
export const processProgram = (list: ProcessList): Uint8Array => {
  const operations = processOperations(list)
  const tables = operations.map(tablesOf)
  const places = new Map<Float32Array, number>()
  let size = (operations.length + 1) * OPERATION_BYTES
  for (const table of tables.flat()) {
    if (places.has(table)) continue
    places.set(table, size)
    size += Math.ceil(table.byteLength / 16) * 16
  }
  const bytes = new Uint8Array(size)
  const view = new DataView(bytes.buffer)
  for (const [i, operation] of operations.entries()) {
    const start = i * OPERATION_BYTES
    const [first = 0, second = 0, third = 0] = (tables[i] ?? []).map((t) => places.get(t) ?? 0)
    view.setInt32(start, kindOf(operation), true)
    for (const [word, value] of [first, second, third].entries())
      view.setInt32(start + 4 + 4 * word, value, true)
    const numbers =
      operation.kind === 'lines'
        ? [...operation.rows.flat(), ...operation.offset, operation.least, operation.most]
        : operation.kind === 'power'
          ? []
          : [operation.points]
    // The two limits of lines stand in words that have no table there.
    for (const [word, value] of numbers.entries())
      view.setFloat32(start + (word < 12 ? 16 + 4 * word : 4 + 4 * (word - 12)), value, true)
  }
  for (const [table, place] of places)
    bytes.set(new Uint8Array(table.buffer, 0, table.byteLength), place)
  return bytes
}

/** The program of the last list, made anew when the list changes. */
export type ProcessPrograms = {
  readonly of: (list: ProcessList) => Uint8Array
}

export const processPrograms = (): ProcessPrograms => {
  let held: { readonly list: ProcessList; readonly program: Uint8Array } | undefined
  return {
    of: (list) => {
      if (!held || !sameProcessList(held.list, list)) held = { list, program: processProgram(list) }
      return held.program
    },
  }
}
