/** BT.709-6 §3.2–3.3 and §4.6: R′G′B′ → Y′CbCr in 8-bit narrow-range codes, not clipped to it. */
const KR = 0.2126
const KB = 0.0722
const KG = 1 - KR - KB

/** 1 and 254 are the outermost codes that are picture and not timing reference. */
const code = (value) => Math.min(254, Math.max(1, Math.round(value)))

/** A picture of interleaved floats as 4:2:0 planes; chroma sited left, between two lines. */
export const encode420 = (picture, width, height) => {
  const half = width / 2
  const out = new Uint8Array((width * height * 3) / 2)
  const cbAt = width * height
  const crAt = cbAt + (half * height) / 2
  const cb = new Float32Array(width * height)
  const cr = new Float32Array(width * height)
  for (let i = 0; i < width * height; i++) {
    const r = picture[i * 3]
    const g = picture[i * 3 + 1]
    const b = picture[i * 3 + 2]
    const y = KR * r + KG * g + KB * b
    out[i] = code(16 + 219 * y)
    cb[i] = (b - y) / (2 * (1 - KB))
    cr[i] = (r - y) / (2 * (1 - KR))
  }
  const sited = (plane, x, y) => {
    const row = y * width
    const left = Math.max(0, 2 * x - 1)
    const right = Math.min(width - 1, 2 * x + 1)
    return 0.25 * plane[row + left] + 0.5 * plane[row + 2 * x] + 0.25 * plane[row + right]
  }
  for (let y = 0; y < height / 2; y++)
    for (let x = 0; x < half; x++) {
      const at = y * half + x
      out[cbAt + at] = code(128 + 112 * (sited(cb, x, 2 * y) + sited(cb, x, 2 * y + 1)))
      out[crAt + at] = code(128 + 112 * (sited(cr, x, 2 * y) + sited(cr, x, 2 * y + 1)))
    }
  return out
}
