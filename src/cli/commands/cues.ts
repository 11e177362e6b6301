import { ok, type Result } from '../../core/base/result.ts'
import type { Boundary } from '../../core/shots/boundary.ts'
import { rate } from '../../core/time/rate.ts'
import { formatTimecode } from '../../core/time/timecode.ts'
import { openMediaNode } from '../../media/node/openMediaNode.ts'
import { findShots } from '../../work/findShots.ts'
import { readArguments, wrongUse } from '../arguments.ts'
import { EXIT, type ExitStatus } from '../exitStatus.ts'
import type { Terminal } from '../terminal.ts'

export const CUES_USAGE = 'reelwright cues MEDIA [--json]'

/** What a sequence of pictures is counted at where it states no rate. */
const RATE_NOT_STATED = rate(25)

const round = (confidence: number): number => Number(confidence.toFixed(3))

/** Finds the shot changes of a reel. */
export const cuesCommand = async (
  argv: readonly string[],
  terminal: Terminal,
): Promise<Result<ExitStatus>> => {
  const args = readArguments(argv, { json: { type: 'boolean' } }, CUES_USAGE)
  if (!args.ok) return args
  const [path, ...more] = args.value.positionals
  if (path === undefined || more.length > 0) return wrongUse('Give one reel.', CUES_USAGE)
  const opened = await openMediaNode(path)
  if (!opened.ok) return opened
  const source = opened.value
  try {
    const { boundaries, frames } = await findShots(source, ({ pace }) =>
      terminal.pace('Finding shots', pace),
    )
    terminal.clearPace()
    const reelRate = source.facts.rate ?? RATE_NOT_STATED
    if (source.facts.rate === undefined)
      terminal.note(`${source.facts.name} states no rate; counted at 25 frames a second.`)
    const cuts = boundaries.filter(({ kind }) => kind === 'cut')
    const gradual = boundaries.filter(({ kind }) => kind !== 'cut')
    if (args.value.values.json) {
      terminal.json({
        file: path,
        frames,
        rate: [reelRate.num, reelRate.den],
        cuts: cuts.map(({ first, confidence }) => ({
          frame: first,
          confidence: round(confidence),
        })),
        gradual: gradual.map(({ first, last, kind, confidence }) => ({
          first,
          last,
          kind,
          confidence: round(confidence),
        })),
      })
      return ok(EXIT.fine)
    }
    const label = (frame: number) => formatTimecode(frame, reelRate, false)
    const line = ({ kind, first, last, confidence }: Boundary): string =>
      [
        label(first),
        kind === 'cut' ? `frame ${first}` : `frames ${first}–${last}`,
        kind,
        `${Math.round(confidence * 100)} % sure`,
      ].join('  ')
    for (const boundary of boundaries) terminal.print(line(boundary))
    const counted = (count: number, one: string, many: string) =>
      `${count} ${count === 1 ? one : many}`
    terminal.print(
      [
        counted(frames, 'frame', 'frames'),
        counted(cuts.length, 'cut', 'cuts'),
        counted(gradual.length, 'gradual change', 'gradual changes'),
      ].join(', '),
    )
    return ok(EXIT.fine)
  } finally {
    source.close()
  }
}
