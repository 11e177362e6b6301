/**
 * The buttons of a game pad with the standard layout, by their indices there: W3C Gamepad, clause
 * “Remapping”, table of the standard gamepad. Named by where they are, as it does.
 */
const BUTTONS: readonly string[] = [
  'right cluster, bottom',
  'right cluster, right',
  'right cluster, left',
  'right cluster, top',
  'left shoulder',
  'right shoulder',
  'left trigger',
  'right trigger',
  'middle, left',
  'middle, right',
  'left stick pressed',
  'right stick pressed',
  'left cluster, top',
  'left cluster, bottom',
  'left cluster, left',
  'left cluster, right',
  'middle',
]

export const STANDARD_BUTTONS = BUTTONS.length

/** What a button is called, by its index. */
export const buttonName = (index: number): string => BUTTONS[index] ?? `button ${index + 1}`

export type StickName = 'left' | 'right'

export const STICKS: readonly StickName[] = ['left', 'right']
