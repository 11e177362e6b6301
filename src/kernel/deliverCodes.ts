import type { MatrixName } from '../core/picture/planes.ts'
import { codeSettings } from './codeSettings.ts'
import type { CodePicture, KernelInput } from './kernel.ts'
import { applySettings } from './kernelModule.ts'
import type { KernelState } from './kernelState.ts'
import { pictureStage } from './pictureStage.ts'

const codePicture = (width: number, height: number): CodePicture => ({
  width,
  height,
  y: new Uint16Array(width * height),
  cb: new Uint16Array(width * height),
  cr: new Uint16Array(width * height),
})

const fits = ({ y, cb, cr, ...size }: CodePicture, width: number, height: number): boolean =>
  size.width === width &&
  size.height === height &&
  [y, cb, cr].every((plane) => plane.length === width * height)

/** See `Kernel.deliverCodes`. */
export const deliverCodes = (
  state: KernelState,
  input: KernelInput,
  matrix: MatrixName,
  into?: CodePicture,
): CodePicture => {
  const { width, height } = input.planes
  const out = into && fits(into, width, height) ? into : codePicture(width, height)
  const { module } = state
  const space = state.memory()
  const stage = pictureStage(module, space, state, input)
  const mostRows = Math.max(0, ...stage.bands.map(({ first, end }) => end - first))
  const addresses = [out.y, out.cb, out.cr].map(() => space.take(mostRows * width * 2))
  const [yCodes, cbCodes, crCodes] = addresses
  const buffer = space.settle()
  stage.begin(buffer)
  applySettings(module, {
    ...codeSettings(input.grade.saturation, matrix),
    yCodes: yCodes ?? 0,
    cbCodes: cbCodes ?? 0,
    crCodes: crCodes ?? 0,
  })
  for (const band of stage.bands) {
    stage.load(buffer, band)
    module.deliverBand(band.first, band.end)
    const count = (band.end - band.first) * width
    for (const [i, plane] of [out.y, out.cb, out.cr].entries())
      plane.set(new Uint16Array(buffer, addresses[i] ?? 0, count), band.first * width)
  }
  return out
}
