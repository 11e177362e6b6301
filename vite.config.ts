import { chmodSync, copyFileSync, mkdirSync } from 'node:fs'
import { resolve } from 'node:path'
import react from '@vitejs/plugin-react'
import { playwright } from '@vitest/browser-playwright'
import { defineConfig } from 'vitest/config'
import { browserPath } from './src/cli/browserPath.mjs'
import { BROWSER_ARGS } from './test/support/browser.ts'

/** Cross-origin isolation, for shared memory between workers; served by `npm start` as well. */
const ISOLATION_HEADERS = {
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Embedder-Policy': 'require-corp',
  'Cross-Origin-Resource-Policy': 'same-origin',
}

const here = import.meta.dirname
const executablePath = browserPath()
const KERNEL = resolve(here, '.cache/kernel/kernel.wasm')

/** The script of review packs as one text, which app and command line put into every pack. */
const REVIEW = {
  root: here,
  build: {
    outDir: resolve(here, '.cache/review'),
    emptyOutDir: true,
    target: 'es2022',
    rollupOptions: {
      input: resolve(here, 'src/review/main.ts'),
      output: { format: 'iife' as const, entryFileNames: 'review.js' },
    },
  },
}

export default defineConfig(({ mode }) => {
  const isCli = mode === 'cli'
  if (mode === 'review') return REVIEW
  return {
    root: isCli ? here : resolve(here, 'src/app'),
    base: './',
    cacheDir: resolve(here, '.cache/vite'),
    plugins: isCli
      ? [
          {
            name: 'kernel-beside-cli',
            closeBundle: () => {
              mkdirSync(resolve(here, 'dist/cli'), { recursive: true })
              copyFileSync(KERNEL, resolve(here, 'dist/cli/kernel.wasm'))
              chmodSync(resolve(here, 'dist/cli/main.js'), 0o755)
            },
          },
        ]
      : [react()],
    worker: { format: 'es' as const },
    server: { headers: ISOLATION_HEADERS, fs: { allow: [here] } },
    build: isCli
      ? {
          ssr: resolve(here, 'src/cli/main.ts'),
          outDir: resolve(here, 'dist/cli'),
          emptyOutDir: true,
          target: 'node20',
        }
      : {
          outDir: resolve(here, 'dist/app'),
          emptyOutDir: true,
          target: 'es2023',
          assetsInlineLimit: 0,
        },
    ...(isCli ? { ssr: { noExternal: true } } : {}),
    test: {
      projects: [
        {
          test: {
            name: 'node',
            root: here,
            environment: 'node',
            include: ['test/**/*.test.ts'],
            exclude: ['test/browser/**', 'test/e2e/**', 'test/build/**', 'test/reference/**'],
            testTimeout: 60_000,
          },
        },
        {
          test: {
            name: 'build',
            root: here,
            environment: 'node',
            include: ['test/build/**/*.test.ts'],
            testTimeout: 180_000,
          },
        },
        {
          test: {
            name: 'reference',
            root: here,
            environment: 'node',
            include: ['test/reference/**/*.test.ts'],
            testTimeout: 120_000,
          },
        },
        {
          server: { headers: ISOLATION_HEADERS, fs: { allow: [here] } },
          // What is found only while tests run would have the page loaded anew under them.
          optimizeDeps: { include: ['idb', 'mediabunny'] },
          test: {
            name: 'browser',
            root: here,
            include: ['test/browser/**/*.test.ts'],
            testTimeout: 120_000,
            browser: {
              enabled: true,
              headless: true,
              screenshotFailures: false,
              provider: playwright({
                launchOptions: {
                  ...(executablePath === undefined ? {} : { executablePath }),
                  chromiumSandbox: false,
                  args: [...BROWSER_ARGS],
                },
              }),
              instances: [{ browser: 'chromium' as const }],
            },
          },
        },
      ],
    },
  }
})
