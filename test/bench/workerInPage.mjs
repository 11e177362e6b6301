import { join } from 'node:path'
import { createServer } from 'vite'

const page = (worker, clip) => `<!doctype html><script type="module">
  const worker = new Worker('${worker}', { type: 'module' })
  window.answer = new Promise((resolve) => {
    worker.addEventListener('message', ({ data }) => resolve(data))
    worker.addEventListener('error', ({ message }) => resolve('the worker did not start: ' + message))
  })
  worker.postMessage('${clip}')
</script>`

/** What a worker answers to the address of a clip, both given by their paths; a text is an error. */
export const workerInPage = async (browser, root, port, worker, clip) => {
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
            response.end(page(worker, clip))
          })
        },
      },
    ],
  })
  await server.listen()
  const tab = await browser.newPage()
  try {
    await tab.goto(`http://127.0.0.1:${port}/bench`)
    const answer = await tab.evaluate(() => window.answer)
    if (typeof answer === 'string') throw new Error(answer)
    return answer
  } finally {
    await tab.close()
    await server.close()
  }
}
