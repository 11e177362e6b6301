import { IDENTITY_GRADE } from '../../src/core/colour/grade.ts'
import { IDENTITY_FRAMING } from '../../src/core/picture/framing.ts'
import { createPreview } from '../../src/render/createPreview.ts'

const plane = (width: number, height: number): Uint8Array =>
  Uint8Array.from({ length: width * height }, (_, i) => 16 + ((i * 7919) % 220))

/** Draws a 1080p picture with another grade each screen frame for some seconds: pictures a second. */
export const pictureAlone = async (
  width: number,
  height: number,
  seconds: number,
): Promise<number> => {
  const canvas = document.createElement('canvas')
  canvas.width = width
  canvas.height = height
  document.body.append(canvas)
  const preview = createPreview(canvas)
  if (!preview.ok) throw new Error(preview.problems[0].says)
  preview.value.setPlanes(
    {
      width: 1920,
      height: 1080,
      layout: '420',
      depth: 8,
      samples: [plane(1920, 1080), plane(960, 540), plane(960, 540)],
    },
    { matrix: 'bt709', range: 'narrow' },
  )
  const begun = performance.now()
  let drawn = 0
  while (performance.now() - begun < seconds * 1000) {
    await new Promise(requestAnimationFrame)
    const gain = 1 + (drawn % 50) / 500
    preview.value.draw({
      grade: { ...IDENTITY_GRADE, gain: [gain, gain, gain] },
      framing: IDENTITY_FRAMING,
      compare: { kind: 'none' },
      excursions: null,
      isMoving: true,
      display: 'srgb',
    })
    drawn++
  }
  return (drawn * 1000) / (performance.now() - begun)
}
