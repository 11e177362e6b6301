import { openClip } from './openClip.mjs'
import { pageAnswer } from './pageAnswer.mjs'

const PORT = 8799
const SECONDS = 6
const VIEWPORT = { width: 1920, height: 1080 }

/** How often a pointer moves, as often as a common screen shows it. */
const MOVE_EVERY_MS = 16

/** The longest that the main thread may be blocked, by the Long Tasks API (W3C): from 50 ms on. */
const BLOCKED_MS = 50

/**
 * Dragging a number at 1080p: how often picture, instruments and verdict all follow, against
 * drawing the picture alone on a canvas of the same size; and whether the main thread was blocked.
 */
export const draggingRow = async (browser, root, address, clip) => {
  const page = await browser.newPage({ viewport: VIEWPORT })
  try {
    await page.addInitScript(() => {
      window.counts = { pictures: 0, readings: 0, verdicts: 0 }
      window.blocked = []
      // Pictures are drawn in a worker, which tells when one is on its canvas.
      window.Worker = class extends Worker {
        constructor(address, options) {
          super(address, options)
          if (options?.name !== 'preview') return
          this.addEventListener('message', ({ data }) => {
            if (data.kind === 'drawn') window.counts.pictures++
          })
        }
      }
      const { clearRect } = CanvasRenderingContext2D.prototype
      CanvasRenderingContext2D.prototype.clearRect = function (...args) {
        clearRect.apply(this, args)
        if (this.canvas.getAttribute('aria-label')?.startsWith('Vectorscope'))
          window.counts.readings++
      }
      new PerformanceObserver((list) => {
        for (const { duration } of list.getEntries()) window.blocked.push(duration)
      }).observe({ type: 'longtask' })
    })
    await openClip(page, address, clip)
    await page.evaluate(() => {
      const panel = document.querySelector('[aria-label="Tolerance verdict"]').closest('section')
      new MutationObserver(() => window.counts.verdicts++).observe(panel, {
        subtree: true,
        childList: true,
        characterData: true,
      })
    })
    const field = page.getByRole('spinbutton', { name: 'gain all' })
    const box = await field.boundingBox()
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
    await page.mouse.move(x, y)
    await page.mouse.down()
    await page.mouse.move(x + 6, y)
    await page.waitForTimeout(500)
    await page.evaluate(() => {
      window.blocked.length = 0
      for (const name of Object.keys(window.counts)) window.counts[name] = 0
    })
    const begun = Date.now()
    // A hand does not wait until the screen has followed.
    const moves = []
    for (let i = 0; Date.now() - begun < SECONDS * 1000; i++) {
      moves.push(page.mouse.move(x + 10 + (i % 20), y))
      await new Promise((resolve) => setTimeout(resolve, MOVE_EVERY_MS))
    }
    await Promise.all(moves)
    const seconds = (Date.now() - begun) / 1000
    const { counts, blocked, canvas, drawn } = await page.evaluate(() => {
      // The size it is shown with: while dragged it may be drawn with fewer pixels.
      const shown = document.querySelector('.picture canvas')
      const { width, height } = shown.getBoundingClientRect()
      const canvas = { width: Math.round(width), height: Math.round(height) }
      const drawn = `${shown.width}×${shown.height}`
      return { counts: window.counts, blocked: window.blocked, canvas, drawn }
    })
    await page.mouse.up()
    await page.close()
    const alone = await pageAnswer(
      browser,
      root,
      PORT,
      `import { pictureAlone } from '/test/bench/pictureAlone.ts'
      window.answer = pictureAlone(${canvas.width}, ${canvas.height}, ${SECONDS}).catch(String)`,
      VIEWPORT,
    )
    const rates = Object.values(counts).map((count) => count / seconds)
    const part = Math.min(...rates) / alone
    const longest = Math.max(0, ...blocked)
    const words = Object.entries(counts).map(([name, n]) => `${name} ${(n / seconds).toFixed(0)}/s`)
    return {
      row: 'dragging a number, 1080p: picture, instruments and verdict',
      reference: `drawing the picture alone at ${canvas.width}×${canvas.height}, ${alone.toFixed(0)}/s`,
      result: `${part.toFixed(2)} of its rate, drawn at ${drawn} (${words.join(', ')}); main thread blocked ${longest.toFixed(0)} ms at most`,
      goal: '≥ 0.8, never over 50 ms',
      isMet: part >= 0.8 && longest <= BLOCKED_MS,
    }
  } finally {
    if (!page.isClosed()) await page.close()
  }
}
