import { join } from 'node:path'
import { createServer } from 'vite'

/**
 * What a page made of this script answers: it sets `window.answer` to a promise. Modules of the
 * project are served by their paths; an answer that is a text is an error.
 */
export const pageAnswer = async (browser, root, port, script, viewport) => {
  const server = await createServer({
    configFile: false,
    root,
    cacheDir: join(root, '.cache/vite-bench'),
    logLevel: 'error',
    server: { port, host: '127.0.0.1', strictPort: true, watch: null },
    optimizeDeps: { include: ['mediabunny'] },
    plugins: [
      {
        name: 'bench-page',
        configureServer: ({ middlewares }) => {
          middlewares.use('/bench', (_, response) => {
            response.setHeader('Content-Type', 'text/html')
            response.end(`<!doctype html><script type="module">${script}</script>`)
          })
        },
      },
    ],
  })
  await server.listen()
  const tab = await browser.newPage(viewport ? { viewport } : {})
  try {
    await tab.goto(`http://127.0.0.1:${port}/bench`)
    await tab.waitForFunction(() => window.answer !== undefined)
    const answer = await tab.evaluate(() => window.answer)
    if (typeof answer === 'string') throw new Error(answer)
    return answer
  } finally {
    await tab.close()
    await server.close()
  }
}

/** What a worker answers to the address of a clip, both given by their paths. */
export const workerAnswer = (browser, root, port, worker, clip) =>
  pageAnswer(
    browser,
    root,
    port,
    `const worker = new Worker('${worker}', { type: 'module' })
    window.answer = new Promise((resolve) => {
      worker.addEventListener('message', ({ data }) => resolve(data))
      worker.addEventListener('error', ({ message }) => resolve('the worker did not start: ' + message))
    })
    worker.postMessage('${clip}')`,
  )
