import { codeScale } from '../core/colour/codeValues.ts'
import { LUMA_WEIGHTS } from '../core/colour/lumaWeights.ts'
import type { DeliveredForm } from '../core/transfer/deliveredForm.ts'
import type { Settings } from './kernelModule.ts'

/** The form a picture is laid out in: bytes of a code, luma equation, scale and subsampling. */
export const laySettings = (form: DeliveredForm): Settings => {
  if (form.kind === 'words10') return { layForm: 0 }
  if (form.kind === 'rgb16') return { layForm: 1, isLaidLittleEndian: form.isLittleEndian }
  const { black, peak, chromaZero, chromaHalf, largest } = codeScale(form.depth, 'narrow')
  const [kr, kg, kb] = LUMA_WEIGHTS[form.matrix]
  return {
    layForm: 2,
    layBytes: form.depth > 8 ? 2 : 1,
    layLargest: largest,
    hasHalfColumns: form.layout !== '444',
    hasHalfRows: form.layout === '420',
    redOfLuma: kr,
    greenOfLuma: kg,
    blueOfLuma: kb,
    lumaBlack: black,
    chromaMiddle: chromaZero,
    codesPerLevel: peak - black,
    cbPerDifference: chromaHalf / (1 - kb),
    crPerDifference: chromaHalf / (1 - kr),
  }
}
