import type { LowPass } from '../store/guiding.ts'

/** A sound that can be played from anywhere, at any speed, its pitch going with it. */
export type GuideSound = {
  readonly open: (file: File) => void
  readonly close: () => void
  /** Plays from `seconds` on, `speed` times as fast as it was made. */
  readonly play: (seconds: number, speed: number) => void
  readonly pause: () => void
  /** Where it is, in seconds. */
  readonly position: () => number
  readonly setLowPass: (hz: LowPass) => void
}

/** Q of two second-order sections that make a Butterworth low-pass of the fourth order. */
const BUTTERWORTH_4 = [0.54119610014619, 1.30656296487638] as const

/** Above what anybody hears: the sections let all through. */
const OPEN_HZ = 22_000

/** Sound by the browser's own player, made when first wanted (browsers ask for a gesture first). */
export const createGuideSound = (): GuideSound => {
  const audio = new Audio()
  audio.preservesPitch = false
  let address: string | undefined
  let sections: readonly BiquadFilterNode[] | undefined
  let context: AudioContext | undefined
  let lowPass: LowPass = null

  const setSections = (): void => {
    for (const section of sections ?? []) section.frequency.value = lowPass ?? OPEN_HZ
  }
  const start = (): void => {
    if (!context) {
      context = new AudioContext()
      const made = BUTTERWORTH_4.map((q) => {
        // A low-pass of Web Audio takes its Q in decibels.
        const options = { type: 'lowpass', Q: 20 * Math.log10(q) } as const
        return new BiquadFilterNode(context as AudioContext, options)
      })
      let from: AudioNode = context.createMediaElementSource(audio)
      for (const section of made) from = from.connect(section)
      from.connect(context.destination)
      sections = made
      setSections()
    }
    if (context.state === 'suspended') void context.resume()
  }
  const close = (): void => {
    audio.pause()
    audio.removeAttribute('src')
    if (address !== undefined) URL.revokeObjectURL(address)
    address = undefined
  }
  return {
    open: (file) => {
      close()
      address = URL.createObjectURL(file)
      audio.src = address
    },
    close,
    play: (seconds, speed) => {
      if (address === undefined) return
      start()
      audio.playbackRate = speed
      audio.currentTime = seconds
      // Refused where it was paused again meanwhile, or the file went away: then it is not heard.
      audio.play().catch(() => undefined)
    },
    pause: () => audio.pause(),
    position: () => audio.currentTime,
    setLowPass: (hz) => {
      lowPass = hz
      setSections()
    },
  }
}
