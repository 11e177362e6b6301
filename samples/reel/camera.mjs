/** Eased 0…1: a hand starts and stops a move softly. */
const ease = (t) => t * t * (3 - 2 * t)

/**
 * What the camera sees on frame `n` of a shot: centre and width in the photograph's own pixels.
 * A whip makes most of the move within a few frames and leaves a blur, told as `smear` pixels.
 */
export const cameraAt = (shot, n, photo) => {
  const [from, to] = shot.view
  const place = (at) => {
    if (!shot.whip) return ease(at / Math.max(1, shot.length - 1))
    const [begin, end] = shot.whip
    return ease(Math.min(1, Math.max(0, (at - begin) / (end - begin))))
  }
  const mix = (t, i) => from[i] + (to[i] - from[i]) * t
  const t = place(n)
  const moved = (mix(place(n + 0.5), 0) - mix(place(n - 0.5), 0)) * photo.width
  return {
    x: mix(t, 0) * photo.width,
    y: mix(t, 1) * photo.height,
    width: mix(t, 2) * photo.width,
    smear: shot.whip ? moved : 0,
  }
}
