/**
 * `npm run test:reference`: our stages against OpenColorIO and ffmpeg. Installs Debian's packages
 * of what is missing where it can; what cannot be had is named, and what needs it is not checked.
 */
import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { join } from 'node:path'

const ROOT = join(import.meta.dirname, '../..')

/** @param {string} command @param {string[]} args */
const output = (command, args) => {
  const { status, stdout } = spawnSync(command, args, { encoding: 'utf8' })
  return status === 0 ? stdout : undefined
}

const python = () =>
  ['python3', '/usr/bin/python3'].find(
    (command) => output(command, ['-c', 'import PyOpenColorIO']) !== undefined,
  )
const hasZscale = () =>
  output('ffmpeg', ['-hide_banner', '-filters'])?.includes(' zscale ') ?? false

const hasCheckLut = () => !spawnSync('ociochecklut', { stdio: 'ignore' }).error

/** @param {string[]} packages */
const install = (packages) => {
  if (process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) return
  console.log(`Installing ${packages.join(' and ')}.`)
  const options = ['-y', '-qq', '--no-install-recommends']
  spawnSync('apt-get', ['update', '-qq'], { stdio: 'ignore' })
  spawnSync('apt-get', ['install', ...options, ...packages], { stdio: 'ignore' })
}

const missing = [
  ...(python() === undefined ? ['python3-pyopencolorio'] : []),
  ...(hasCheckLut() ? [] : ['opencolorio-tools']),
  ...(hasZscale() ? [] : ['ffmpeg']),
]
if (missing.length > 0) install(missing)

const command = python()
const isFfmpegThere = hasZscale()
const checks = [
  {
    name: 'ASC CDL, its files and process lists against OpenColorIO',
    files: 'test/reference/openColorIo',
    needs: command === undefined ? 'a Python 3 with the module PyOpenColorIO' : '',
  },
  {
    name: 'Common LUT Format files by ociochecklut',
    files: 'test/reference/ociochecklut',
    needs: hasCheckLut() ? '' : 'ociochecklut, of OpenColorIO’s tools',
  },
  {
    name: 'decoding and encoding of Y′CbCr, picture files and ProRes against ffmpeg',
    files: 'test/reference/ffmpeg',
    needs: isFfmpegThere ? '' : 'ffmpeg with its filter zscale',
  },
  {
    name: 'a frame from file to delivered codes against both',
    files: 'test/reference/wholeChain',
    needs: command !== undefined && isFfmpegThere ? '' : 'both of these',
  },
]
const able = checks.filter(({ needs }) => needs === '')
let status = 0
if (able.length > 0) {
  const vitest = join(ROOT, 'node_modules/vitest/vitest.mjs')
  const args = ['run', '--project', 'reference', ...able.map(({ files }) => files)]
  const env = { ...process.env, REFERENCE_PYTHON: command ?? '' }
  const ran = spawnSync(process.execPath, [vitest, ...args], { cwd: ROOT, stdio: 'inherit', env })
  status = ran.status ?? 1
}
for (const { name, needs } of checks)
  if (needs !== '')
    console.log(`not checked: ${name}; needs ${needs}, which cannot be installed here.`)
process.exitCode = status
