import { at } from '../core/base/assert.ts'
import type { ProcessList } from '../core/process/processList.ts'
import { type ProcessOperation, processOperations } from '../core/process/processOperations.ts'

/** Texels across the texture of a list: with them, the most a job may hold is 2,150 rows. */
export const LIST_WIDTH = 4096

/** A list as the shaders run it. */
export type ListTexels = {
  /** The calls of its operations, one after another: only how the list is built, no number of it. */
  readonly calls: string
  /** RGBA, `LIST_WIDTH` texels a row. */
  readonly texels: Float32Array
  readonly rows: number
}

type Part = {
  readonly call: (at: number) => string
  readonly texels: readonly (readonly number[])[]
}

const groups = (values: readonly number[], size: 1 | 3): readonly (readonly number[])[] =>
  Array.from({ length: values.length / size }, (_, i) => {
    const [r, g, b] = [0, 1, 2].map((c) => at(values, i * size + (size === 1 ? 0 : c)))
    return [r ?? 0, g ?? 0, b ?? 0, 0]
  })

const partOf = (operation: ProcessOperation): Part => {
  switch (operation.kind) {
    case 'lines': {
      const { rows, offset, least, most } = operation
      const texels = rows.map((row, c) => [...row, at(offset, c)])
      return {
        call: (at) => `x = lineStep(x, ${at});`,
        texels: [...texels, [least, most, 0, 0]],
      }
    }
    case 'power':
      return {
        call: (at) => `x = powerStep(x, ${at});`,
        texels: [[...operation.power, 0]],
      }
    case 'curve': {
      const { points, channels, values } = operation
      return {
        call: (at) => `x = curveStep(x, ${at}, ${points - 1});`,
        texels: groups(values, channels),
      }
    }
    case 'cube': {
      const { points, interpolation, values } = operation
      const name = interpolation === 'tetrahedral' ? 'tetrahedralStep' : 'trilinearStep'
      return {
        call: (at) => `x = ${name}(x, ${at}, ${points});`,
        texels: groups(values, 3),
      }
    }
  }
}

export const listTexels = (list: ProcessList): ListTexels => {
  const parts = processOperations(list).map(partOf)
  const starts: number[] = []
  let count = 0
  for (const { texels } of parts) {
    starts.push(count)
    count += texels.length
  }
  const rows = Math.ceil(count / LIST_WIDTH)
  const texels = new Float32Array(rows * LIST_WIDTH * 4)
  for (const [i, part] of parts.entries())
    for (const [n, texel] of part.texels.entries()) texels.set(texel, 4 * (at(starts, i) + n))
  return { calls: parts.map(({ call }, i) => call(at(starts, i))).join(' '), texels, rows }
}
