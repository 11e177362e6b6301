/**
 * Makes the pictures in docs/pictures from the built app: `npm run build`, then
 * `node test/e2e/pictures.mjs`. They show the sample reel, step by step.
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
  const button = (name) => page.getByRole('button', { name, exact: true })
  const goTo = (timecode) => page.getByRole('row', { name: timecode }).click()
  /** A picture of the screen, once what was asked for is drawn. */
  const take = async (name) => {
    await page.waitForTimeout(1500)
    await page.screenshot({ path: join(PICTURES, `${name}.png`) })
  }
  await page.goto(ADDRESS)
  await take('start')
  await button('Open the sample reel').click()
  await page.getByText(/^cue 1 of 18 · \d outside/u).waitFor({ timeout: 120_000 })
  await goTo(/10:00:16:00/u)
  await button('No more hints').click()
  await button('Prepare').click()
  await take('prepare')
  await button('Line up').click()
  const say = async (name, value) => {
    await page.getByRole('textbox', { name, exact: true }).fill(String(value))
    await page.keyboard.press('Enter')
  }
  const settings = ['Beam current', 'Red gain', 'Blue gain']
  const readings = ['Green, open gate', 'Red less green', 'Blue less green']
  /** A made-up scanner, read and written down. */
  const scanner = async (set) => {
    for (const [i, name] of settings.entries()) await say(`${name} is set to`, set[i])
    const green = 4.4 * set[0]
    const read = [green, green * (0.008 * set[1] - 0.4), green * (0.009 * set[2] - 0.5)]
    for (const [i, name] of readings.entries()) await say(`${name} is read as`, read[i].toFixed(1))
    await button('Write this down').click()
  }
  await scanner([120, 45, 50])
  await scanner([145, 45, 50])
  await scanner([145, 55, 50])
  await scanner([145, 55, 60])
  await take('line-up')
  await button('Rehearse').click()
  await take('grade')
  await button('Hold this frame as a reference').click()
  await goTo(/10:00:19:09/u)
  await page.getByRole('combobox', { name: 'Compared with' }).selectOption({ index: 1 })
  await take('compare')
  await button('Show the graded picture alone').click()
  await goTo(/10:00:21:17/u)
  await button('Bring inside by the smallest change').click()
  await page.getByText('shown, not kept yet').waitFor({ timeout: 60_000 })
  await take('proposal')
  await page.keyboard.press('Escape')
  await button('Framing').click()
  await button('Blank to 1.66 : 1').click()
  await button('Show the whole scan with the delivered frame on it').click()
  await take('framing')
  await button('Show the whole scan with the delivered frame on it').click()
  await page.keyboard.press('Control+z')
  await button('Cue').click()
  await button('Strip in true shot lengths, or a row to each cue').click()
  await page.getByRole('combobox', { name: 'Instrument of levels' }).selectOption('parade')
  await take('cue')
  await button('Keys and controls…').click()
  await take('keys')
  await page.keyboard.press('Escape')
  await button('Agree').click()
  await page.getByRole('button', { name: /^Picture 6/u }).click()
  await button('Before and after').click()
  await take('agree')
  await button('Hand over').click()
  const choosing = page.waitForEvent('filechooser')
  await button('Import a list…').first().click()
  await (await choosing).setFiles(join(ROOT, 'test/media/interchange/edl/screening_example.edl'))
  await page.getByRole('dialog').waitFor()
  await take('import')
  await page.keyboard.press('Escape')
  await take('hand-over')
  await button('Transfer').click()
  await take('transfer')
} finally {
  await browser.close()
  server.kill()
}
