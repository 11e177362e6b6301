import { execFileSync, spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { measureSoundNode } from '../../src/media/node/measureSoundNode.ts'

const here = mkdtempSync(join(tmpdir(), 'reelwright-loudness-'))
afterAll(() => rmSync(here, { recursive: true, force: true }))

/** Signals by ffmpeg's own sources: level goes up and down, and left and right differ. */
const SIGNALS: Readonly<Record<string, readonly [source: string, channels: string, rate: string]>> =
  {
    'pink noise that swells': [
      "anoisesrc=color=pink:seed=7:duration=60,volume='0.5+0.4*sin(t/3)':eval=frame",
      'stereo',
      '48000',
    ],
    'a sweep, mono, 44.1 kHz': [
      "aevalsrc='0.4*sin(2*PI*(50*t+40*t*t))*(0.3+0.7*lt(mod(t,7),4))':d=50",
      'mono',
      '44100',
    ],
    'noise in five and a low channel': [
      'anoisesrc=color=brown:seed=3:duration=30,volume=0.7',
      '5.1',
      '48000',
    ],
  }

/** What ffmpeg's filter ebur128 says at its end. */
const ffmpegSays = (path: string) => {
  const { stderr } = spawnSync(
    'ffmpeg',
    ['-nostats', '-i', path, '-af', 'ebur128=peak=true', '-f', 'null', '-'],
    { encoding: 'utf8' },
  )
  const summary = stderr.slice(stderr.lastIndexOf('Summary:'))
  const number = (name: string) =>
    Number(new RegExp(`${name}:\\s+(-?[\\d.]+)`, 'u').exec(summary)?.[1])
  return { integrated: number('I'), range: number('LRA'), truePeak: number('Peak') }
}

test.each(Object.entries(SIGNALS))(
  '%s: as ffmpeg measures it (ebur128), which tells a tenth',
  async (name, [source, layout, rate]) => {
    const path = join(here, `${Object.keys(SIGNALS).indexOf(name)}.wav`)
    execFileSync('ffmpeg', [
      ...['-v', 'error', '-f', 'lavfi', '-i', source, '-ar', rate],
      ...['-af', `aformat=channel_layouts=${layout}`, '-c:a', 'pcm_s24le', path],
    ])
    const theirs = ffmpegSays(path)
    const ours = await measureSoundNode(path)
    if (!ours.ok) throw new Error(ours.problems[0].says)
    expect(Math.abs(ours.value.integrated - theirs.integrated)).toBeLessThanOrEqual(0.1)
    expect(Math.abs(ours.value.range - theirs.range)).toBeLessThanOrEqual(0.2)
    expect(Math.abs(ours.value.truePeak - theirs.truePeak)).toBeLessThanOrEqual(0.3)
  },
)
