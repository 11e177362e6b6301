import { createRandom, normal } from './random.mjs'

/** A field of grain, smoothed a little so that it has the size of grain and not of pixels. */
export const createGrain = (width, height, strength) => {
  const random = createRandom(11)
  const raw = Float32Array.from({ length: width * height }, () => normal(random))
  return raw.map((value, i) => {
    const next = raw[(i + 1) % raw.length]
    const below = raw[(i + width) % raw.length]
    return strength * (0.6 * value + 0.3 * next + 0.3 * below)
  })
}

/** Weave and flicker of frame `n`: slow wandering and a jump each frame, as of a worn gate. */
export const unsteadiness = (n) => {
  const random = createRandom(1000 + n)
  return {
    weave: {
      x: 1.1 * Math.sin(n / 9) + 0.5 * Math.sin(n / 2.3) + 0.4 * normal(random),
      y: 0.8 * Math.sin(n / 13 + 1) + 0.5 * normal(random),
    },
    light: 1 + 0.018 * Math.sin(n * 1.7) + 0.012 * normal(random),
  }
}

/** Specks of dust, white or black, and two long scratches, put over a finished picture. */
export const addDamage = (picture, width, height, n) => {
  const random = createRandom(50_000 + n)
  const specks = random() < 0.45 ? 1 + Math.floor(random() * 3) : 0
  for (let k = 0; k < specks; k++) {
    const cx = random() * width
    const cy = random() * height
    const radius = 1 + random() * 3.2
    const level = random() < 0.6 ? 0.98 : 0.03
    const long = 1 + random() * 1.6
    for (
      let y = Math.max(0, (cy - radius * long) | 0);
      y < Math.min(height, cy + radius * long);
      y++
    )
      for (let x = Math.max(0, (cx - radius) | 0); x < Math.min(width, cx + radius); x++) {
        const d = ((x - cx) / radius) ** 2 + ((y - cy) / (radius * long)) ** 2
        if (d > 1) continue
        const i = (y * width + x) * 3
        const share = 0.85 * (1 - d * d)
        for (let c = 0; c < 3; c++) picture[i + c] += (level - picture[i + c]) * share
      }
  }
  for (const [from, to, at, drift, level] of [
    [300, 470, 0.31, 0.05, 0.85],
    [880, 1010, 0.72, -0.03, 0.05],
  ]) {
    if (n < from || n >= to || random() < 0.12) continue
    const centre = (at + drift * Math.sin(n / 40)) * width
    for (let y = 0; y < height; y++) {
      const x = Math.round(centre + 1.5 * Math.sin(y / 90 + n / 5))
      const i = (y * width + x) * 3
      for (let c = 0; c < 3; c++) picture[i + c] += (level - picture[i + c]) * 0.45
    }
  }
}

/** The rounded edge of the gate, soft and dark. */
export const createGate = (width, height) => {
  const mask = new Float32Array(width * height)
  const radius = 26
  const margin = 5
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const dx = Math.max(margin + radius - x, x - (width - 1 - margin - radius), 0)
      const dy = Math.max(margin + radius - y, y - (height - 1 - margin - radius), 0)
      const outside = Math.hypot(dx, dy) - radius
      mask[y * width + x] = Math.min(1, Math.max(0, 0.5 - outside / 3))
    }
  return mask
}
