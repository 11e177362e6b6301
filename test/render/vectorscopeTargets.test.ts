import { describe, expect, it } from 'vitest'
import { vectorscopeTargets } from '../../src/render/vectorscopeTargets.ts'
import vectors from '../vectors/vectorscope.json' with { type: 'json' }

const NAMES: Readonly<Record<string, string>> = {
  red: 'R',
  magenta: 'Mg',
  blue: 'B',
  cyan: 'Cy',
  green: 'G',
  yellow: 'Yl',
}

describe('the colours of bars on the vectorscope', () => {
  it.each(vectors.rows)('$colour lies at its published angles and amplitudes', (row) => {
    for (const matrix of ['bt601', 'bt709'] as const)
      for (const [amplitude, published] of [
        [1, row[matrix].full],
        [0.75, row[matrix].three],
      ] as const) {
        const target = vectorscopeTargets(matrix, amplitude).find(
          ({ name }) => name === NAMES[row.colour],
        )
        const { cb = 0, cr = 0 } = target ?? {}
        const angle = ((Math.atan2(cr, cb) * 180) / Math.PI + 360) % 360
        expect(Math.abs(angle - row[matrix].angle)).toBeLessThan(vectors.epsilonAngle)
        expect(Math.abs(Math.hypot(cb, cr) - published)).toBeLessThan(vectors.epsilonAmplitude)
      }
  })
})
