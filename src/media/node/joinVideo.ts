import { writeFile } from 'node:fs/promises'
import { join, resolve } from 'node:path'
import { problem } from '../../core/base/problem.ts'
import { fail, ok, type Result } from '../../core/base/result.ts'
import { framesPerSecond, type Rate } from '../../core/time/rate.ts'
import type { VideoTags } from '../../core/transfer/videoTags.ts'
import { colourArguments } from './encoderArguments.ts'
import { runProgram } from './runProgram.ts'

/** Pieces of video that follow one another, by path and frames, and the sound to go with them. */
export type VideoJoin = {
  readonly pieces: readonly { readonly path: string; readonly frames: number }[]
  readonly rate: Rate
  readonly sound: { readonly path: string; readonly startsAt: number } | undefined
  readonly container: 'mp4' | 'webm'
  /** Timecode of the first frame, for a container that has a place for it. */
  readonly timecode: string
  readonly tags: VideoTags | null
}

const quoted = (path: string): string => `'${path.replaceAll("'", "'\\''")}'`

/** Frames of the first video of a file, counted by its packets. */
const framesIn = async (path: string): Promise<number> => {
  const { out } = await runProgram('ffprobe', [
    ...['-v', 'error', '-select_streams', 'V:0', '-count_packets', '-of', 'default=nk=1:nw=1'],
    ...['-show_entries', 'stream=nb_read_packets', `file:${path}`],
  ])
  return Number(out.trim())
}

/** Joins pieces without encoding them again, to `to`; `folder` takes the list of them meanwhile. */
export const joinVideo = async (
  { pieces, rate, sound, container, timecode, tags }: VideoJoin,
  folder: string,
  to: string,
): Promise<Result<string>> => {
  const list = join(folder, 'pieces.txt')
  const seconds = (frames: number): string => (frames / framesPerSecond(rate)).toFixed(6)
  const lines = pieces.flatMap(({ path, frames }) => [
    `file ${quoted(`file:${resolve(path)}`)}`,
    `duration ${seconds(frames)}`,
  ])
  await writeFile(list, `ffconcat version 1.0\n${lines.join('\n')}\n`)
  const length = seconds(pieces.reduce((sum, { frames }) => sum + frames, 0))
  const joined = await runProgram('ffmpeg', [
    ...['-v', 'error', '-nostdin', '-y', '-f', 'concat', '-safe', '0', '-i', `file:${list}`],
    ...(sound ? ['-itsoffset', sound.startsAt.toFixed(6), '-i', `file:${sound.path}`] : []),
    ...['-map', '0:v:0', ...(sound ? ['-map', '1:a:0', '-t', length] : []), '-c', 'copy'],
    // Pieces hold it in their own streams; what is copied states it only where it is told anew.
    ...(tags ? colourArguments(tags) : []),
    ...(container === 'mp4'
      ? // FLAC in MP4 is still called experimental by the ffmpeg of today.
        ['-video_track_timescale', String(rate.num), '-movflags', '+faststart', '-strict', '-2']
      : []),
    ...(container === 'mp4' ? ['-timecode', timecode] : []),
    ...['-fflags', '+bitexact', '-f', container, `file:${to}`],
  ])
  if (joined.status === 0) {
    const wanted = pieces.reduce((sum, { frames }) => sum + frames, 0)
    const there = await framesIn(to)
    if (there === wanted) return ok(to)
    return fail(
      problem(
        'cannot-read',
        `The joined video has ${there} frames, not the ${wanted} of its parts; make the parts again.`,
        { file: to },
      ),
    )
  }
  const says = joined.error.trim().split('\n').at(-1) || 'ffmpeg is not there'
  return fail(problem('cannot-read', `The parts could not be joined: ${says}`, { file: to }))
}
