import { expect, test } from '@playwright/test'
import { isClean } from '../support/benchPage.ts'
import { beepOf, wavOf } from '../support/wavOf.ts'

/** Seconds of the track at which its beep begins, and the frame of the reel it belongs to. */
const BEEP = 12.3
const MARK = 200
const RATE = 25

test('a guide track is measured, lined up by its beep, and runs with the picture', async ({
  page,
}) => {
  // The app's own player is not in the page; its clock is what the test has to see.
  await page.addInitScript(() => {
    const Original = window.Audio
    window.Audio = class extends Original {
      constructor() {
        super()
        Object.assign(window, { guide: this })
      }
    }
  })
  await page.goto('./')
  await page
    .getByRole('button', { name: /sample/iu })
    .first()
    .click()
  const steps = page.getByRole('navigation', { name: 'Steps' })
  await expect(steps).toBeVisible()
  await steps.getByRole('button', { name: 'Prepare' }).click()
  const part = page.getByRole('region', { name: 'Guide track' })
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    part.getByRole('button', { name: 'Open a sound file…' }).click(),
  ])
  const beep = beepOf(60, BEEP, 0.04, 10 ** (-18 / 20))
  const buffer = Buffer.from(wavOf([beep, beep], 48_000))
  await chooser.setFiles({ name: 'orlop-track.wav', mimeType: 'audio/wav', buffer })
  await expect(part).toContainText('Integrated loudness')
  await expect(part).toContainText('−18.0 dBFS')
  await part.getByRole('button', { name: 'Find the beep' }).click()
  await expect(part.getByLabel('Sync mark in the sound, seconds')).toHaveValue(String(BEEP))
  await part.getByLabel('Sync mark on the picture').fill(String(MARK))
  await page.keyboard.press('Enter')
  await part.getByLabel('Listen to').selectOption('5000')
  await isClean(page)

  await steps.getByRole('button', { name: 'Rehearse' }).click()
  await page.keyboard.press('Home')
  await page.locator('.transport .play').click()
  const off = () =>
    page.evaluate(
      ([rate, mark, beepAt]) => {
        const [, h, m, s, f] =
          /(\d\d):(\d\d):(\d\d)[:;](\d\d)/u.exec(
            document.querySelector('.timecode')?.textContent ?? '',
          ) ?? []
        const frame = ((Number(h) - 10) * 3600 + Number(m) * 60 + Number(s)) * rate + Number(f)
        const audio = (window as unknown as { guide: HTMLAudioElement }).guide
        return { frame, off: audio.currentTime - (beepAt + (frame - mark) / rate) }
      },
      [RATE, MARK, BEEP] as const,
    )
  await expect.poll(async () => (await off()).frame, { timeout: 20_000 }).toBeGreaterThan(60)
  // A frame and what it takes to look.
  await expect.poll(async () => Math.abs((await off()).off), { timeout: 10_000 }).toBeLessThan(0.1)
  await page.locator('.transport .play').click()
  const isPaused = () =>
    page.evaluate(() => (window as unknown as { guide: HTMLAudioElement }).guide.paused)
  await expect.poll(isPaused).toBe(true)
})
