import { join } from 'node:path'
import { createServer } from 'vite'
import { median } from './median.mjs'

const PAGE = `<!doctype html><script type="module">
  const worker = new Worker('/test/bench/benchWorker.ts', { type: 'module' })
  window.rounds = new Promise((resolve) => worker.addEventListener('message', ({ data }) => resolve(data)))
  worker.postMessage('/.cache/bench/clip.mp4')
</script>`

/** Finding shots in a 1080p H.264 clip in the browser, against decoding alone. */
export const findingRow = async (browser, root) => {
  const server = await createServer({
    configFile: false,
    root,
    cacheDir: join(root, '.cache/vite-bench'),
    logLevel: 'error',
    server: { port: 8797, host: '127.0.0.1', strictPort: true, watch: null },
    optimizeDeps: { include: ['mediabunny'] },
    plugins: [
      {
        name: 'bench-page',
        configureServer: ({ middlewares }) => {
          middlewares.use('/bench', (_, response) => {
            response.setHeader('Content-Type', 'text/html')
            response.end(PAGE)
          })
        },
      },
    ],
  })
  await server.listen()
  const page = await browser.newPage()
  try {
    await page.goto('http://127.0.0.1:8797/bench')
    const rounds = await page.evaluate(() => window.rounds)
    if (typeof rounds === 'string') throw new Error(rounds)
    const ratio = median(rounds.map(({ decoding, finding }) => finding / decoding))
    return {
      row: 'finding shots, 1080p H.264 in the browser',
      reference: `decoding alone, ${median(rounds.map(({ decoding }) => decoding)).toFixed(0)} frames/s`,
      result: `${ratio.toFixed(2)} of its rate`,
      goal: '≥ 0.85',
      isMet: ratio >= 0.85,
    }
  } finally {
    await page.close()
    await server.close()
  }
}
