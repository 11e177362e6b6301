/**
 * Makes the sample reel: `node samples/make-reel.mjs` (needs ffmpeg; about two minutes).
 * Everything in it is invented but the photographs (photographs/CREDITS.md). The same script
 * always makes the same pictures; truth.json says what is in them.
 */
import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { statSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { addDamage, createGate, createGrain, unsteadiness } from './reel/damage.mjs'
import { encode420 } from './reel/encode.mjs'
import { jobOf } from './reel/jobFile.mjs'
import { loadPhotograph } from './reel/photographs.mjs'
import { createShotRenderer } from './reel/renderShot.mjs'
import { fadeLevel, layOut, truthOf } from './reel/timeline.mjs'

const WIDTH = 960
const HEIGHT = 720
const GRAIN = 0.022
const TITLE = 'Slack Water at Skerrow'
const ARCHIVE = 'Skerrow and District Film Collection (invented)'
const REEL = 'slack-water-at-skerrow.mp4'

const here = dirname(fileURLToPath(import.meta.url))
const line = layOut()
const photos = new Map()
const grain = createGrain(WIDTH, HEIGHT, GRAIN)
const gate = createGate(WIDTH, HEIGHT)

const rendererOf = ({ shot }) => {
  if (!photos.has(shot.photo))
    photos.set(shot.photo, loadPhotograph(join(here, 'photographs'), shot.photo))
  return createShotRenderer(shot, photos.get(shot.photo), WIDTH, HEIGHT, grain)
}
const renderers = line.places.map(rendererOf)

/** One frame of the reel, from one shot or, in a dissolve, from two. */
const renderFrame = (n) => {
  const { weave, light } = unsteadiness(n)
  const shown = line.places.filter(({ start, end }) => n >= start && n < end)
  const pictures = shown.map((place) => {
    const picture = new Float32Array(WIDTH * HEIGHT * 3)
    renderers[place.index](n - place.start, weave, light, picture)
    const level = fadeLevel(line.places, place, n)
    if (level < 1) for (let i = 0; i < picture.length; i++) picture[i] *= level
    return picture
  })
  const [picture, second] = pictures
  if (second) {
    const { start, shot } = shown[1]
    const share = (n - start + 1) / (shot.over + 1)
    for (let i = 0; i < picture.length; i++) picture[i] += (second[i] - picture[i]) * share
  }
  const flash = shown[0].shot.flash
  if (flash !== undefined && n - shown[0].start - flash >= 0 && n - shown[0].start - flash < 2)
    for (let i = 0; i < picture.length; i++) picture[i] = picture[i] * 0.25 + 0.86
  addDamage(picture, WIDTH, HEIGHT, n)
  for (let i = 0; i < gate.length; i++) for (let c = 0; c < 3; c++) picture[i * 3 + c] *= gate[i]
  return encode420(picture, WIDTH, HEIGHT)
}

const ffmpeg = spawn(
  'ffmpeg',
  [
    ...['-v', 'error', '-y', '-f', 'rawvideo', '-pix_fmt', 'yuv420p', '-s', `${WIDTH}x${HEIGHT}`],
    ...['-r', '25', '-i', 'pipe:0', '-an', '-c:v', 'libx264', '-profile:v', 'high'],
    ...['-preset', 'slow', '-b:v', '1450k', '-maxrate', '3M', '-bufsize', '4M'],
    ...['-g', '25', '-bf', '2', '-pix_fmt', 'yuv420p'],
    ...['-colorspace', 'bt709', '-color_primaries', 'bt709', '-color_trc', 'bt709'],
    ...['-color_range', 'tv', '-movflags', '+faststart', '-map_metadata', '-1'],
    // With a rate limit, two encoder threads do not make the same bytes twice; one does.
    ...['-threads', '1'],
    join(here, REEL),
  ],
  { stdio: ['pipe', 'inherit', 'inherit'] },
)
for (let n = 0; n < line.frames; n++) {
  if (!ffmpeg.stdin.write(renderFrame(n))) await once(ffmpeg.stdin, 'drain')
  if (process.stderr.isTTY) process.stderr.write(`\rframe ${n + 1} of ${line.frames}`)
}
ffmpeg.stdin.end()
const [status] = await once(ffmpeg, 'close')
if (status !== 0) process.exit(1)

const truth = truthOf(line, TITLE, ARCHIVE)
const media = {
  name: REEL,
  container: 'MP4',
  codec: 'H.264',
  width: WIDTH,
  height: HEIGHT,
  displayAspect: WIDTH / HEIGHT,
  depth: 8,
  layout: '420',
  matrix: 'bt709',
  matrixBy: 'file',
  range: 'narrow',
  rangeBy: 'file',
  rateBy: 'file',
  bytes: statSync(join(here, REEL)).size,
}
const write = (name, value) =>
  writeFileSync(join(here, name), `${JSON.stringify(value, undefined, 2)}\n`)
write('truth.json', truth)
write('slack-water-at-skerrow.reelwright.json', jobOf(truth, media))
