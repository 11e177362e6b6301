import { codeScale } from '../core/colour/codeValues.ts'
import { triple } from '../core/colour/triple.ts'
import { yCbCrToRgbFactors } from '../core/colour/yCbCr.ts'
import { PRINT_BASE } from '../core/film/filmBase.ts'
import { NEGATIVE_GAMMA } from '../core/film/printingDensity.ts'
import { chromaHeight, chromaWidth } from '../core/picture/planes.ts'
import type { GlProgram } from './glProgram.ts'
import type { ListTexture } from './listShelf.ts'
import type { PlaneTextures } from './planeTextures.ts'
import type { Side } from './previewView.ts'
import { SCANS } from './shaders.ts'

/**
 * Gives a grading program, which is then in use, its planes, their coding with its base and the
 * base's list, and the grade.
 */
export const readPlanes = (
  gl: WebGL2RenderingContext,
  { use, place }: GlProgram,
  textures: PlaneTextures,
  list: ListTexture | undefined,
  { planes, coding, grade }: Pick<Side, 'planes' | 'coding' | 'grade'>,
): void => {
  const { width, height, layout, depth } = planes
  const { black, peak, chromaZero, chromaHalf } = codeScale(depth, coding.range)
  const { crToR, cbToG, crToG, cbToB } = yCbCrToRgbFactors(coding.matrix)
  use()
  textures.bind()
  gl.uniform1i(place('first'), 0)
  gl.uniform1i(place('second'), 1)
  gl.uniform1i(place('third'), 2)
  list?.bind(3)
  if (list) gl.uniform1i(place('listTexels'), 3)
  gl.uniform2i(place('chromaSize'), chromaWidth(layout, width), chromaHeight(layout, height))
  const isHalfWide = layout === '420' || layout === '422'
  gl.uniform2i(place('isSubsampled'), Number(isHalfWide), Number(layout === '420'))
  gl.uniform1i(place('isRgb'), Number(layout === 'rgb'))
  gl.uniform2f(place('lumaCodes'), black, 1 / (peak - black))
  gl.uniform2f(place('chromaCodes'), chromaZero, 1 / (2 * chromaHalf))
  gl.uniform4f(place('toRgb'), crToR, cbToG, crToG, cbToB)
  const { base = PRINT_BASE } = coding
  const isNegative = base.scan === 'negative'
  gl.uniform1i(place('scan'), SCANS[base.scan])
  gl.uniform3f(place('clearDensity'), ...(isNegative ? base.clear : triple(0)))
  gl.uniform3f(place('filmGamma'), ...(isNegative ? base.gamma : triple(NEGATIVE_GAMMA)))
  gl.uniformMatrix3fv(place('dyes'), true, base.dyes.flat())
  gl.uniform3f(place('lift'), ...grade.lift)
  gl.uniform3f(place('gain'), ...grade.gain)
  const [r, g, b] = grade.gamma
  gl.uniform3f(place('power'), 1 / r, 1 / g, 1 / b)
  gl.uniform1f(place('saturation'), grade.saturation)
}
