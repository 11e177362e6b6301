import { ALL_FORMATS, AudioSampleSink, BlobSource, Input, type InputAudioTrack } from 'mediabunny'
import { problem } from '../../core/base/problem.ts'
import { fail, ok, type Result } from '../../core/base/result.ts'
import { createSoundMeter, type SoundFacts } from '../../core/sound/measureSound.ts'

/** More channels than a broadcaster delivers are measured as none. */
const MOST_CHANNELS = 6

type OnSeconds = (done: number, total: number) => void

const measureTrack = async (
  track: InputAudioTrack,
  onSeconds: OnSeconds,
  signal: AbortSignal,
): Promise<SoundFacts> => {
  const channels = await track.getNumberOfChannels()
  const meter = createSoundMeter(await track.getSampleRate(), channels)
  const total = await track.computeDuration()
  for await (const sample of new AudioSampleSink(track).samples()) {
    try {
      signal.throwIfAborted()
      const planes = Array.from({ length: channels }, (_, planeIndex) => {
        const plane = new Float32Array(sample.numberOfFrames)
        sample.copyTo(plane, { planeIndex, format: 'f32-planar' })
        return plane
      })
      meter.push(planes)
      onSeconds(sample.timestamp + sample.duration, total)
    } finally {
      sample.close()
    }
  }
  return meter.finish()
}

/** The first sound of a file, measured by what this browser decodes. */
export const measureSound = async (
  file: File,
  onSeconds: OnSeconds,
  signal: AbortSignal,
): Promise<Result<SoundFacts>> => {
  const refuse = (says: string): Result<never> =>
    fail(problem('cannot-decode', `${file.name} ${says}`, { file: file.name }))
  const input = new Input({ formats: ALL_FORMATS, source: new BlobSource(file) })
  try {
    if (!(await input.canRead())) return refuse('is no sound that is read here; give a WAV file.')
    const [track] = await input.getAudioTracks()
    if (!track) return refuse('has no sound; give another file.')
    const channels = await track.getNumberOfChannels()
    if (channels > MOST_CHANNELS)
      return refuse(`has ${channels} channels; up to ${MOST_CHANNELS} can be measured.`)
    if (!(await track.canDecode()))
      return refuse('is coded in a way that this browser does not decode; give a WAV file.')
    return ok(await measureTrack(track, onSeconds, signal))
  } catch (error) {
    if (signal.aborted) throw error
    const why = error instanceof Error ? error.message.replace(/\.$/u, '') : String(error)
    return refuse(`cannot be read to its end (${why}).`)
  } finally {
    input.dispose()
  }
}
