import { median } from './median.mjs'
import { openClip } from './openClip.mjs'

/** One frame at 25 frames a second. */
const FRAME_MS = 40

/**
 * Typing a value until the graded picture is drawn, at 1080p, beyond what drawing itself takes:
 * from the key to the moment the last pass has been drawn (a pixel read back), against the same
 * draw by itself.
 */
export const typingRow = async (browser, address, clip) => {
  const page = await browser.newPage({ viewport: { width: 1920, height: 1080 } })
  try {
    await page.addInitScript(() => {
      // Drawn on the main thread, where each pass can be timed to its last pixel.
      delete HTMLCanvasElement.prototype.transferControlToOffscreen
      const { drawArrays } = WebGL2RenderingContext.prototype
      window.draws = []
      WebGL2RenderingContext.prototype.drawArrays = function (...args) {
        const begun = performance.now()
        drawArrays.apply(this, args)
        const isCanvas = this.getParameter(this.FRAMEBUFFER_BINDING) === null
        const [type, pixel] = isCanvas
          ? [this.UNSIGNED_BYTE, new Uint8Array(4)]
          : [this.FLOAT, new Float32Array(4)]
        this.readPixels(0, 0, 1, 1, this.RGBA, type, pixel)
        window.draws.push({ begun, ended: performance.now() })
      }
    })
    await openClip(page, address, clip)
    const field = page.getByRole('spinbutton', { name: 'gain all' })
    const waits = []
    const draws = []
    for (let i = 0; i < 15; i++) {
      await field.fill(`1.${10 + i}`)
      await page.waitForTimeout(150)
      const { wait, draw } = await field.evaluate(async (input) => {
        window.draws.length = 0
        const begun = performance.now()
        input.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true }))
        while (window.draws.length < 2) await new Promise((done) => setTimeout(done, 1))
        const [grading, showing] = window.draws
        const draw = grading.ended - grading.begun + (showing.ended - showing.begun)
        return { wait: showing.ended - begun - draw, draw }
      })
      waits.push(wait)
      draws.push(draw)
    }
    const wait = median(waits)
    return {
      row: 'typing a value to its graded picture, 1080p',
      reference: `drawing alone, ${median(draws).toFixed(0)} ms`,
      result: `+ ${(wait / FRAME_MS).toFixed(2)} frame intervals`,
      goal: '≤ 2 frame intervals more',
      isMet: wait <= 2 * FRAME_MS,
    }
  } finally {
    await page.close()
  }
}
