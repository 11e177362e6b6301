import { type Delivered, deliveredBytes } from '../core/transfer/deliveredForm.ts'
import type { DeliverOptions, KernelInput } from './kernel.ts'
import { applySettings } from './kernelModule.ts'
import type { KernelState } from './kernelState.ts'
import { laidPlanes } from './laidPlanes.ts'
import { laySettings } from './laySettings.ts'
import { limitSettings } from './limitSettings.ts'
import { pictureStage } from './pictureStage.ts'
import { saturationSettings } from './saturationSettings.ts'

/** Four lanes each of pixels clipped and pixels limited. */
const COUNTS = 8

/** See `Kernel.deliver`. */
export const deliver = (
  state: KernelState,
  input: KernelInput,
  { form, limiter, overlay }: DeliverOptions,
  into?: Uint8Array<ArrayBuffer>,
): Delivered => {
  const { module } = state
  const { width, height } = input.planes
  const size = deliveredBytes(form, width, height)
  const bytes = into?.length === size ? into : new Uint8Array(size)
  const space = state.memory()
  const stage = pictureStage(module, space, state, input)
  const mostRows = Math.max(0, ...stage.bands.map(({ first, end }) => end - first))
  const planes = laidPlanes(form, width, height).map((plane) => ({
    ...plane,
    address: space.take((mostRows + 1) * plane.lineBytes),
  }))
  const differenceRow = stage.takeRows(1)
  const heldRow = stage.takeRows(1)
  const laidCounts = space.take(COUNTS * 4)
  const overlayCoverage = space.take(overlay?.coverage.length ?? 0)
  const buffer = space.settle()
  stage.begin(buffer)
  applySettings(module, {
    ...saturationSettings(input.grade.saturation, input.coding.matrix),
    ...laySettings(form),
    ...limitSettings(limiter, input),
    firstLaid: planes[0]?.address ?? 0,
    secondLaid: planes[1]?.address ?? 0,
    thirdLaid: planes[2]?.address ?? 0,
    differenceRow,
    heldRow,
    laidCounts,
    overlayHeight: 0,
    ...(overlay && {
      overlayLeft: overlay.left,
      overlayTop: overlay.top,
      overlayWidth: overlay.width,
      overlayHeight: overlay.height,
      overlayInk: overlay.ink,
      overlayGround: overlay.ground,
      overlayCoverage,
    }),
  })
  if (overlay) new Uint8Array(buffer, overlayCoverage).set(overlay.coverage)
  const counts = new Int32Array(buffer, laidCounts, COUNTS).fill(0)
  for (const band of stage.bands) {
    stage.load(buffer, band)
    module.layBand(band.first, band.end)
    for (const { address, lineBytes, from, linesOf } of planes) {
      const { first, end } = linesOf(band, height)
      const done = new Uint8Array(buffer, address, (end - first) * lineBytes)
      bytes.set(done, from + first * lineBytes)
    }
  }
  const countOf = (i: number): number =>
    counts.subarray(4 * i, 4 * i + 4).reduce((total, lane) => total + lane, 0)
  return { bytes, clipped: countOf(0), limited: countOf(1) }
}
