import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { median } from './median.mjs'

/** A job of this many cues, as the open format writes it. */
const jobOf = (cues) => ({
  format: 'reelwright-job',
  version: 1,
  info: { id: 'job', title: `${cues} cues`, tolerance: 'ebu-r103-v3' },
  reels: [
    {
      id: 'reel-1',
      name: 'bench',
      gauge: '16mm',
      rate: { num: 25, den: 1 },
      frames: 500_000,
      startCount: 0,
      isDropFrame: false,
      media: {
        name: 'bench.mp4',
        container: 'MP4',
        codec: 'H.264',
        width: 1920,
        height: 1080,
        displayAspect: 16 / 9,
        depth: 8,
        layout: '420',
        matrix: 'bt709',
        matrixBy: 'file',
        range: 'narrow',
        rangeBy: 'file',
        rateBy: 'file',
        bytes: 1,
      },
    },
  ],
  cues: Array.from({ length: cues }, (_, i) => ({
    id: `cue-${i}`,
    reel: 'reel-1',
    first: i * 50,
    ramp: 0,
    boundary: { kind: i === 0 ? 'start' : 'cut', confidence: 1 },
    grade: { lift: [0, 0, 0], gamma: [1, 1, 1], gain: [1, 1 + i / 1e5, 1], saturation: 1 },
    framing: { zoom: 1, pan: 0, tilt: 0 },
    note: '',
    agreement: 'open',
  })),
})

/** Time from choosing a job file to a ledger that answers to a key. */
const openingTime = async (browser, address, path) => {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } })
  try {
    await page.goto(address)
    const [chooser] = await Promise.all([
      page.waitForEvent('filechooser'),
      page.getByRole('button', { name: 'Open a job…' }).click(),
    ])
    const begun = performance.now()
    await chooser.setFiles(path)
    await page.getByRole('row', { name: /00:00:00:00/u }).waitFor()
    await page.getByRole('grid').press('End')
    return performance.now() - begun
  } finally {
    await page.close()
  }
}

/** Opening a job of 10,000 cues, against an empty job. */
export const openingRow = async (browser, address, folder) => {
  const paths = [1, 10_000].map((cues) => {
    const path = join(folder, `${cues}.reelwright.json`)
    writeFileSync(path, JSON.stringify(jobOf(cues)))
    return path
  })
  const times = [[], []]
  for (let i = 0; i < 5; i++)
    for (const [k, path] of paths.entries())
      times[k].push(await openingTime(browser, address, path))
  const [empty, full] = times.map(median)
  const allowed = 1.5 * empty + 300
  return {
    row: 'opening a job of 10,000 cues',
    reference: `a job of one cue, ${empty.toFixed(0)} ms`,
    result: `${(full / empty).toFixed(2)} × (${full.toFixed(0)} ms)`,
    goal: `≤ 1.5 × + 300 ms (${allowed.toFixed(0)} ms)`,
    isMet: full <= allowed,
  }
}
