import { cameraAt } from './camera.mjs'

const BLUR_TAPS = 7

/** The grade maths of docs/job-format.md: lift, gain, gamma, then saturation. */
export const applyFault = (r, g, b, fault, out, at) => {
  const channel = (x, c) => {
    const v = fault.lift[c] + (fault.gain[c] - fault.lift[c]) * x
    return v > 0 ? v ** (1 / fault.gamma[c]) : v
  }
  const [y0, y1, y2] = [channel(r, 0), channel(g, 1), channel(b, 2)]
  const luma = 0.2126 * y0 + 0.7152 * y1 + 0.0722 * y2
  out[at] = luma + fault.saturation * (y0 - luma)
  out[at + 1] = luma + fault.saturation * (y1 - luma)
  out[at + 2] = luma + fault.saturation * (y2 - luma)
}

/** Tables of what each grey of a tinted photograph becomes under its fault. */
const tintTable = ({ tint, fault }) => {
  const table = new Float32Array(1024 * 3)
  for (let i = 0; i < 1024; i++) {
    const grey = (i / 1023) * 1.25 - 0.125
    const tone = (c) => tint.shadow[c] + (tint.light[c] - tint.shadow[c]) * grey
    applyFault(tone(0), tone(1), tone(2), fault, table, i * 3)
  }
  return table
}

/** Grey of a photograph between its pixels, by linear interpolation. */
const sample = (plane, width, height, x, y) => {
  const cx = Math.min(width - 1.001, Math.max(0, x))
  const cy = Math.min(height - 1.001, Math.max(0, y))
  const x0 = cx | 0
  const y0 = cy | 0
  const fx = cx - x0
  const fy = cy - y0
  const i = y0 * width + x0
  const top = plane[i] + (plane[i + 1] - plane[i]) * fx
  const bottom = plane[i + width] + (plane[i + width + 1] - plane[i + width]) * fx
  return top + (bottom - top) * fy
}

/** A shot's pictures: R′G′B′ floats, with the grain of the print but not its damage. */
export const createShotRenderer = (shot, photo, width, height, grain) => {
  const table = shot.tint ? tintTable(shot) : undefined
  const pixel = new Float32Array(3)
  return (n, weave, light, out) => {
    const camera = cameraAt(shot, n, photo)
    const scale = camera.width / width
    const left = camera.x - camera.width / 2 + weave.x * scale
    const top = camera.y - (camera.width * height) / width / 2 + weave.y * scale
    const taps = Math.abs(camera.smear) > 2 ? BLUR_TAPS : 1
    const read = (plane, x, y) => {
      if (taps === 1) return sample(plane, photo.width, photo.height, x, y)
      let sum = 0
      for (let k = 0; k < taps; k++) {
        const shift = (k / (taps - 1) - 0.5) * camera.smear
        sum += sample(plane, photo.width, photo.height, x + shift, y)
      }
      return sum / taps
    }
    const grainOffset = (n * 7919) % grain.length
    for (let y = 0; y < height; y++) {
      const sy = top + y * scale
      for (let x = 0; x < width; x++) {
        const sx = left + x * scale
        const i = y * width + x
        let seed = i + grainOffset
        if (seed >= grain.length) seed -= grain.length
        const to = i * 3
        if (table) {
          const grey = read(photo.grey, sx, sy) * light
          const speck = grain[seed] * (0.4 + 2.4 * grey * (1.15 - grey))
          const index = ((grey + speck + 0.125) / 1.25) * 1023
          const entry = Math.min(1023, Math.max(0, index | 0)) * 3
          out[to] = table[entry]
          out[to + 1] = table[entry + 1]
          out[to + 2] = table[entry + 2]
        } else {
          const r = read(photo.r, sx, sy) * light
          const g = read(photo.g, sx, sy) * light
          const b = read(photo.b, sx, sy) * light
          const speck = grain[seed] * (0.4 + 2.4 * g * (1.15 - g))
          applyFault(r + speck, g + speck, b + speck, shot.fault, pixel, 0)
          out[to] = pixel[0]
          out[to + 1] = pixel[1]
          out[to + 2] = pixel[2]
        }
      }
    }
  }
}
