import { type ProcessList, sameProcessList } from '../core/process/processList.ts'
import { LIST_WIDTH, listTexels } from './listTexels.ts'

/** A process list in a texture. */
export type ListTexture = {
  /** What a program that runs it defines. */
  readonly define: string
  readonly bind: (unit: number) => void
}

/** The textures of the lists last used. */
export type ListShelf = {
  readonly of: (list: ProcessList) => ListTexture
  readonly dispose: () => void
}

/** A list and the one before it: a proposal beside what it is compared with. */
const KEPT = 2

export const createListShelf = (gl: WebGL2RenderingContext): ListShelf => {
  type Entry = ListTexture & { readonly list: ProcessList; readonly dispose: () => void }
  /** The longest unused first. */
  const entries: Entry[] = []

  const create = (list: ProcessList): Entry => {
    const { calls, texels, rows } = listTexels(list)
    const texture = gl.createTexture()
    const bind = (unit: number): void => {
      gl.activeTexture(gl.TEXTURE0 + unit)
      gl.bindTexture(gl.TEXTURE_2D, texture)
    }
    bind(0)
    gl.texImage2D(gl.TEXTURE_2D, 0, gl.RGBA32F, LIST_WIDTH, rows, 0, gl.RGBA, gl.FLOAT, texels)
    gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MIN_FILTER, gl.NEAREST)
    gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MAG_FILTER, gl.NEAREST)
    return {
      list,
      define: `LIST_STEPS ${calls}`,
      bind,
      dispose: () => gl.deleteTexture(texture),
    }
  }
  return {
    of: (list) => {
      const index = entries.findIndex((entry) => sameProcessList(entry.list, list))
      const [known] = index < 0 ? [] : entries.splice(index, 1)
      if (!known && entries.length >= KEPT) entries.shift()?.dispose()
      const entry = known ?? create(list)
      entries.push(entry)
      return entry
    },
    dispose: () => {
      for (const entry of entries) entry.dispose()
    },
  }
}
