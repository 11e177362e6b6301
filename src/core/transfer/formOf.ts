import type { DeliveredForm } from './deliveredForm.ts'
import type { PassPlan } from './passPlan.ts'

/** How the pictures of a plan are laid out for its format. Video is 4:2:0 of 8 bits, narrow. */
export const formOf = ({ settings, coding }: PassPlan): DeliveredForm => {
  if (settings.format === 'dpx') return { kind: 'words10' }
  if (settings.format === 'tiff') return { kind: 'rgb16', isLittleEndian: true }
  if (settings.format === 'png') return { kind: 'rgb16', isLittleEndian: false }
  return { kind: 'planes', matrix: coding.matrix, depth: 8, layout: '420' }
}
