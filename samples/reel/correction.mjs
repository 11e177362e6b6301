/**
 * The grade that undoes a fault exactly, or nothing where the grade form holds none. The form is
 * linear first and power second, so a channel can be turned round only where one of the two is
 * idle: with gamma 1 everywhere, with lift 0 for signal at or above black. A changed saturation
 * comes after both and cannot be taken out before them.
 */
export const correctionOf = ({ lift, gamma, gain, saturation }) => {
  const canInvert = lift.every((black, c) => black === 0 || gamma[c] === 1)
  if (saturation !== 1 || !canInvert) return undefined
  const channels = lift.map((black, c) => {
    const scale = gain[c] - black
    if (gamma[c] === 1) return { lift: -black / scale + 0, gamma: 1, gain: (1 - black) / scale }
    return { lift: 0, gamma: 1 / gamma[c], gain: gain[c] ** (-1 / gamma[c]) }
  })
  return {
    lift: channels.map((channel) => channel.lift),
    gamma: channels.map((channel) => channel.gamma),
    gain: channels.map((channel) => channel.gain),
    saturation: 1,
  }
}
