import { defineConfig } from '@playwright/test'
import { browserPath } from '../../src/cli/browserPath.mjs'
import { BROWSER_ARGS } from '../support/browser.ts'

const PORT = 8799
const executablePath = browserPath()

export default defineConfig({
  testDir: '.',
  outputDir: '../../.cache/e2e',
  workers: 1,
  timeout: 180_000,
  forbidOnly: true,
  reporter: [['list']],
  use: {
    baseURL: `http://127.0.0.1:${PORT}/`,
    viewport: { width: 1440, height: 900 },
    trace: 'retain-on-failure',
    launchOptions: {
      ...(executablePath === undefined ? {} : { executablePath }),
      chromiumSandbox: false,
      args: [...BROWSER_ARGS],
    },
  },
  webServer: {
    command: `node dist/cli/main.js serve --port ${PORT}`,
    cwd: '../..',
    url: `http://127.0.0.1:${PORT}/`,
    reuseExistingServer: false,
  },
})
