import { useMemo } from 'react'
import { type Stretch, WAVE, wavePath, waveSeconds, waveX } from './soundWave.ts'

export type SoundWaveProps = {
  readonly label: string
  readonly envelope: Float32Array
  readonly stretch: Stretch
  /** Seconds of the track at which a line stands. */
  readonly mark: number
  readonly onMark: (seconds: number) => void
}

/** How loud a track is, moment by moment; a click puts the mark there. */
export const SoundWave = ({ label, envelope, stretch, mark, onMark }: SoundWaveProps) => {
  const { from, to } = stretch
  const path = useMemo(() => wavePath(envelope, { from, to }), [envelope, from, to])
  const x = waveX(mark, stretch)
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the number beside it does the same by keyboard
    <svg
      className="sound-wave"
      viewBox={`0 0 ${WAVE.width} ${WAVE.height}`}
      preserveAspectRatio="none"
      role="img"
      aria-label={label}
      onClick={(event) => {
        const box = event.currentTarget.getBoundingClientRect()
        onMark(waveSeconds((event.clientX - box.left) / box.width, stretch))
      }}
    >
      <path className="wave" d={path} />
      <path className="mark" d={`M${x} 0V${WAVE.height}`} />
    </svg>
  )
}
