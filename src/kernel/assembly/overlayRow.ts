import {
  overlayCoverage,
  overlayGround,
  overlayHeight,
  overlayInk,
  overlayLeft,
  overlayTop,
  overlayWidth,
} from './laySettings'
import { rowBytes, width } from './rasterSettings'

/**
 * The overlay over delivered row `y`, where it crosses it. Being grey it comes through saturation
 * as it is, so it may be laid before that.
 */
export function overlayRow(y: i32, row: usize): void {
  const line = y - overlayTop
  if (line < 0 || line >= overlayHeight) return
  const coverage = overlayCoverage + (line as usize) * (overlayWidth as usize)
  const end = min(overlayLeft + overlayWidth, width)
  const step = (overlayInk - overlayGround) / 255
  for (let x = max(overlayLeft, 0); x < end; x++) {
    const shown = load<u8>(coverage + ((x - overlayLeft) as usize)) as f32
    const level = overlayGround + shown * step
    const to = row + ((x as usize) << 2)
    store<f32>(to, level)
    store<f32>(to + rowBytes, level)
    store<f32>(to + (rowBytes << 1), level)
  }
}
