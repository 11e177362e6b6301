/**
 * Makes the pictures in docs/pictures from the built app: `npm run build`, then
 * `node test/e2e/pictures.mjs`. They show the sample reel.
 */
import { spawn } from 'node:child_process'
import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { chromium } from '@playwright/test'
import { browserPath } from '../../src/cli/browserPath.mjs'

const ROOT = join(import.meta.dirname, '../..')
const PICTURES = join(ROOT, 'docs/pictures')
const PORT = 8798
const ADDRESS = `http://127.0.0.1:${PORT}/`

const executablePath = browserPath()
mkdirSync(PICTURES, { recursive: true })
const server = spawn(process.execPath, ['dist/cli/main.js', 'serve', '--port', String(PORT)], {
  cwd: ROOT,
  stdio: ['ignore', 'pipe', 'inherit'],
})
await new Promise((resolve) => server.stdout.once('data', resolve))
const browser = await chromium.launch({
  ...(executablePath === undefined ? {} : { executablePath }),
  chromiumSandbox: false,
})
try {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } })
  const take = (name) => page.screenshot({ path: join(PICTURES, `${name}.png`) })
  await page.goto(ADDRESS)
  await take('start')
  await page.getByRole('button', { name: 'Open the sample reel' }).click()
  await page.getByText(/^cue 1 of 18 · \d outside/u).waitFor({ timeout: 120_000 })
  await page.getByRole('row', { name: /10:00:16:00/u }).click()
  await page.keyboard.press('w')
  await page.waitForTimeout(2000)
  await take('rehearse')
  await page.getByRole('button', { name: 'Hand over', exact: true }).click()
  await take('hand-over')
} finally {
  await browser.close()
  server.kill()
}
