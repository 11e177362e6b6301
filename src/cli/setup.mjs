/**
 * Plain Node, no packages: what must run before anything is installed.
 * `node src/cli/setup.mjs start` installs what is missing, builds, and serves the app.
 * `node src/cli/setup.mjs test` installs what is missing, a browser too, and runs every gate.
 */
import { spawnSync } from 'node:child_process'
import { existsSync, readdirSync, statSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { browserPath } from './browserPath.mjs'

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..')

const [major = 0, minor = 0] = process.versions.node.split('.').map(Number)
if (major < 20 || (major === 20 && minor < 19)) {
  console.error(`Reelwright needs Node 20.19 or later; this is ${process.versions.node}.`)
  process.exit(1)
}

/** @param {string} command @param {string[]} args @param {boolean} [isQuiet] */
const run = (command, args, isQuiet = false) =>
  spawnSync(command, args, {
    cwd: root,
    stdio: isQuiet ? 'ignore' : 'inherit',
    shell: process.platform === 'win32',
  }).status ?? 1

/** @param {string} command @param {string[]} args */
const must = (command, args) => {
  const status = run(command, args)
  if (status !== 0) process.exit(status)
}

/** @param {string} path */
const timeOf = (path) => (existsSync(path) ? statSync(path).mtimeMs : 0)

/** @param {string} folder @returns {number} */
const newestIn = (folder) =>
  readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile())
    .reduce((newest, entry) => Math.max(newest, timeOf(join(entry.parentPath, entry.name))), 0)

const installPackages = () => {
  const installed = timeOf(join(root, 'node_modules', '.package-lock.json'))
  if (installed >= timeOf(join(root, 'package-lock.json'))) return
  must('npm', ['ci', '--no-audit', '--no-fund'])
}

const build = () => {
  const built = Math.min(
    timeOf(join(root, 'dist', 'app', 'index.html')),
    timeOf(join(root, 'dist', 'cli', 'main.js')),
  )
  const sources = Math.max(
    newestIn(join(root, 'src')),
    newestIn(join(root, 'samples')),
    timeOf(join(root, 'vite.config.ts')),
    timeOf(join(root, 'package-lock.json')),
  )
  if (built < sources) must('npm', ['run', '--silent', 'build'])
}

/** @param {string[]} names */
const installFromDistribution = (names) => {
  if (!existsSync('/usr/bin/apt-get')) return
  const isRoot = process.getuid?.() === 0
  const [command, prefix] = isRoot ? ['apt-get', []] : ['sudo', ['-n', 'apt-get']]
  run(command, [...prefix, 'update', '-qq'], true)
  run(command, [...prefix, 'install', '-y', '-qq', '--no-install-recommends', ...names], true)
}

const installBrowser = () => {
  if (browserPath()) return
  console.log('No Chromium or Chrome found; installing one.')
  installFromDistribution(['chromium'])
  if (browserPath()) return
  if (run('npx', ['playwright', 'install', 'chromium']) === 0) return
  console.error(
    'The tests need a browser: install Chromium or Chrome, or name one in REELWRIGHT_BROWSER.',
  )
  process.exit(1)
}

/** Programs the tests run, and the distribution's packages that bring them. */
const PROGRAMS = [
  { command: 'ffmpeg', asks: ['-version'], from: 'ffmpeg' },
  { command: 'pgrep', asks: ['--version'], from: 'procps' },
]

const installPrograms = () => {
  const missing = () => PROGRAMS.filter(({ command, asks }) => run(command, asks, true) !== 0)
  const wanted = missing().map(({ from }) => from)
  if (wanted.length === 0) return
  console.log(`Installing ${wanted.join(' and ')}.`)
  installFromDistribution(wanted)
  const still = missing().map(({ command }) => command)
  if (still.length === 0) return
  console.error(`The tests need ${still.join(' and ')}: install them and run the tests again.`)
  process.exit(1)
}

const task = process.argv[2]
installPackages()
if (task === 'start') {
  build()
  must(process.execPath, [join('dist', 'cli', 'main.js'), 'serve', ...process.argv.slice(3)])
} else if (task === 'test') {
  installBrowser()
  installPrograms()
  must('npm', ['run', '--silent', 'gates'])
}
