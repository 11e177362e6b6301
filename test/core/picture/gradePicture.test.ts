import { describe, expect, it } from 'vitest'
import { type Cdl, cdlToGrade, gradeToCdl } from '../../../src/core/colour/cdl.ts'
import { IDENTITY_GRADE } from '../../../src/core/colour/grade.ts'
import { gradePicture } from '../../../src/core/picture/gradePicture.ts'
import { rgbPicture } from '../../../src/core/picture/rgbPicture.ts'
import { seeded } from '../../support/seeded.ts'
import vectors from '../../vectors/ascCdl.json' with { type: 'json' }

const noise = () => {
  const chance = seeded(3)
  const picture = rgbPicture(11, 7)
  for (const plane of [picture.r, picture.g, picture.b])
    plane.forEach((_, i) => {
      plane[i] = chance() * 1.4 - 0.2
    })
  return picture
}

describe('grading a picture', () => {
  it('by the grade at rest changes nothing', () => {
    const picture = noise()
    const out = gradePicture(picture, IDENTITY_GRADE)
    for (const name of ['r', 'g', 'b'] as const)
      picture[name].forEach((value, i) => {
        expect(out[name][i]).toBeCloseTo(value, 14)
      })
  })

  const rows = vectors.rows.filter(
    ({ style, direction }) => style === 'noclamp' && direction === 'forward',
  )
  it.each(rows)('gives the published ASC CDL value of set $set: $input → $output', (row) => {
    const cdl = vectors.sets[row.set as keyof typeof vectors.sets] as unknown as Cdl
    const grade = cdlToGrade(cdl)
    expect(gradeToCdl(grade).saturation).toBe(cdl.saturation)
    const picture = rgbPicture(2, 1)
    const planes = [picture.r, picture.g, picture.b]
    for (const [c, plane] of planes.entries()) plane.fill(row.input[c] as number)
    const out = gradePicture(picture, grade)
    for (const [c, plane] of [out.r, out.g, out.b].entries()) {
      const expected = row.output[c] as number
      for (const value of plane)
        expect(Math.abs(value - expected) / Math.max(1, Math.abs(expected))).toBeLessThan(
          vectors.epsilon,
        )
    }
  })
})
