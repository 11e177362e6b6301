import { existsSync } from 'node:fs'

const CANDIDATES = [
  process.env.REELWRIGHT_BROWSER,
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:/Program Files/Google/Chrome/Application/chrome.exe',
]

/** An installed Chromium or Chrome, or undefined to let the test tool use its own download. */
export const browserPath = () => CANDIDATES.find((path) => path !== undefined && existsSync(path))
