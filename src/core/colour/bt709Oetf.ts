/** Scene light at which the straight part ends. */
const KNEE = 0.018

/**
 * Scene light (0…1) → non-linear signal, by the opto-electronic transfer function of BT.709-6
 * (item 1.2; the same in BT.601-7): 4.5·L below 0.018, then 1.099·L^0.45 − 0.099. With these
 * three-digit constants the two parts do not quite meet: the signal steps up by 0.00025 there.
 * Light below 0 goes on along the straight part.
 */
export const linearToBt709 = (light: number): number =>
  light < KNEE ? 4.5 * light : 1.099 * light ** 0.45 - 0.099

/** Non-linear signal → scene light: the inverse of `linearToBt709`, parted at 4.5 · 0.018. */
export const bt709ToLinear = (signal: number): number =>
  signal < 4.5 * KNEE ? signal / 4.5 : ((signal + 0.099) / 1.099) ** (1 / 0.45)
