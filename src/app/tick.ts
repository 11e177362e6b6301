/** Sounds a short click. */
export type Tick = () => void

/** A click by the browser's own sound, made when first wanted (browsers ask for a gesture first). */
export const createTick = (): Tick => {
  let context: AudioContext | undefined
  return () => {
    context ??= new AudioContext()
    if (context.state === 'suspended') void context.resume()
    const oscillator = context.createOscillator()
    const level = context.createGain()
    const now = context.currentTime
    oscillator.frequency.value = 1000
    level.gain.setValueAtTime(0.25, now)
    level.gain.exponentialRampToValueAtTime(0.001, now + 0.03)
    oscillator.connect(level).connect(context.destination)
    oscillator.start(now)
    oscillator.stop(now + 0.04)
  }
}
