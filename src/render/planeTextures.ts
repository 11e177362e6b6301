import { chromaHeight, chromaWidth, type Planes, type Samples } from '../core/picture/planes.ts'

/** The three planes of a frame as integer textures, one texel a sample. */
export type PlaneTextures = {
  readonly upload: (planes: Planes) => void
  /** Binds the textures to units 0, 1 and 2. */
  readonly bind: () => void
  readonly dispose: () => void
}

export const createPlaneTextures = (gl: WebGL2RenderingContext): PlaneTextures => {
  const textures = [gl.createTexture(), gl.createTexture(), gl.createTexture()]
  const shapes: string[] = []

  const uploadPlane = (unit: number, samples: Samples, width: number, height: number): void => {
    const isDeep = samples instanceof Uint16Array
    const type = isDeep ? gl.UNSIGNED_SHORT : gl.UNSIGNED_BYTE
    gl.activeTexture(gl.TEXTURE0 + unit)
    gl.bindTexture(gl.TEXTURE_2D, textures[unit] ?? null)
    const shape = `${width} ${height} ${isDeep}`
    if (shapes[unit] !== shape) {
      shapes[unit] = shape
      const inside = isDeep ? gl.R16UI : gl.R8UI
      gl.texImage2D(gl.TEXTURE_2D, 0, inside, width, height, 0, gl.RED_INTEGER, type, samples)
      gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MIN_FILTER, gl.NEAREST)
      gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MAG_FILTER, gl.NEAREST)
    } else gl.texSubImage2D(gl.TEXTURE_2D, 0, 0, 0, width, height, gl.RED_INTEGER, type, samples)
  }
  return {
    upload: ({ width, height, layout, samples }) => {
      gl.pixelStorei(gl.UNPACK_ALIGNMENT, 1)
      uploadPlane(0, samples[0], width, height)
      uploadPlane(1, samples[1], chromaWidth(layout, width), chromaHeight(layout, height))
      uploadPlane(2, samples[2], chromaWidth(layout, width), chromaHeight(layout, height))
    },
    bind: () => {
      for (const [unit, texture] of textures.entries()) {
        gl.activeTexture(gl.TEXTURE0 + unit)
        gl.bindTexture(gl.TEXTURE_2D, texture)
      }
    },
    dispose: () => {
      for (const texture of textures) gl.deleteTexture(texture)
    },
  }
}

/** The textures of the frames in use, each uploaded once. */
export type PlaneShelf = {
  readonly of: (planes: Planes) => PlaneTextures
  /** Frees the textures of all other frames but one, which the next frame is uploaded to. */
  readonly keepOnly: (planes: ReadonlySet<Planes>) => void
  readonly dispose: () => void
}

export const createPlaneShelf = (gl: WebGL2RenderingContext): PlaneShelf => {
  const held = new Map<Planes, PlaneTextures>()
  let spare: PlaneTextures | undefined
  return {
    of: (planes) => {
      const known = held.get(planes)
      if (known) return known
      const textures = spare ?? createPlaneTextures(gl)
      spare = undefined
      textures.upload(planes)
      held.set(planes, textures)
      return textures
    },
    keepOnly: (wanted) => {
      for (const [planes, textures] of held) {
        if (wanted.has(planes)) continue
        held.delete(planes)
        spare?.dispose()
        spare = textures
      }
    },
    dispose: () => {
      spare?.dispose()
      for (const textures of held.values()) textures.dispose()
    },
  }
}
