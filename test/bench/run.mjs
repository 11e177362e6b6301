/**
 * `npm run bench`: the timed promises, each as a ratio against a named reference in the same run.
 * Needs a build (`npm run build`), ffmpeg, and a quiet machine.
 */
import { execFileSync, spawn } from 'node:child_process'
import { existsSync, mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { chromium } from '@playwright/test'
import { browserPath } from '../../src/cli/browserPath.mjs'
import { deliverRows } from './deliverRows.mjs'
import { draggingRow } from './draggingRow.mjs'
import { edlRows } from './edlRows.mjs'
import { findingRow } from './findingRow.mjs'
import { growthRows } from './growthRows.mjs'
import { kernelRows } from './kernelRows.mjs'
import { lineUpRow } from './lineUpRow.mjs'
import { openingRow } from './openingRow.mjs'
import { transferRows } from './transferRows.mjs'
import { typingRow } from './typingRow.mjs'
import { wholeReelRow } from './wholeReelRow.mjs'
import { workersRow } from './workersRow.mjs'

const ROOT = join(import.meta.dirname, '../..')
const FOLDER = join(ROOT, '.cache/bench')
const CLIP = join(FOLDER, 'clip.mp4')
const PORT = 8796
const ADDRESS = `http://127.0.0.1:${PORT}/`

mkdirSync(FOLDER, { recursive: true })
if (!existsSync(CLIP))
  execFileSync('ffmpeg', [
    ...[
      '-v',
      'error',
      '-y',
      '-ss',
      '2',
      '-i',
      join(ROOT, 'test/media/video/bbb-opening-480p24.mp4'),
    ],
    ...['-vf', 'scale=1920:1080,noise=alls=6:allf=t', '-frames:v', '300', '-an', '-c:v', 'libx264'],
    ...['-preset', 'medium', '-crf', '20', '-g', '50', '-bf', '2', '-pix_fmt', 'yuv420p'],
    ...['-colorspace', 'bt709', '-color_primaries', 'bt709', '-color_trc', 'bt709'],
    ...['-color_range', 'tv', CLIP],
  ])
const server = spawn(process.execPath, ['dist/cli/main.js', 'serve', '--port', String(PORT)], {
  cwd: ROOT,
  stdio: ['ignore', 'pipe', 'inherit'],
})
await new Promise((resolve) => server.stdout.once('data', resolve))
const executablePath = browserPath()
const browser = await chromium.launch({
  ...(executablePath === undefined ? {} : { executablePath }),
  chromiumSandbox: false,
})
const rows = []
try {
  rows.push(...(await kernelRows(ROOT, FOLDER, CLIP)))
  rows.push(...(await deliverRows(ROOT, FOLDER, CLIP)))
  rows.push(...(await transferRows(ROOT, FOLDER, CLIP)))
  rows.push(await workersRow(ROOT, FOLDER, CLIP))
  rows.push(...(await growthRows(ROOT, FOLDER)))
  rows.push(...(await edlRows(ROOT, FOLDER)))
  rows.push(await lineUpRow(ROOT, FOLDER))
  rows.push(await findingRow(browser, ROOT))
  rows.push(await wholeReelRow(browser, ROOT))
  rows.push(await openingRow(browser, ADDRESS, FOLDER))
  rows.push(await typingRow(browser, ADDRESS, CLIP))
  rows.push(await draggingRow(browser, ROOT, ADDRESS, CLIP))
} finally {
  await browser.close()
  server.kill()
}
for (const { row, reference, result, goal, isMet } of rows)
  console.log(
    `${isMet ? 'met   ' : 'NOT met'} ${row}: ${result}; goal ${goal}; against ${reference}`,
  )
process.exitCode = rows.every(({ isMet }) => isMet) ? 0 : 1
