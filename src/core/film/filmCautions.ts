import type { Particulars } from './particulars.ts'
import { shrinkageAdvice } from './shrinkage.ts'

/**
 * What to beware of with this film: the usual cautions of the trade, common practice, no published
 * source. Local codes, the house's rules and licensed practice come first.
 */
export const filmCautions = ({
  support,
  shrinkage,
  vinegar,
  perforations,
  mould,
}: Particulars): readonly string[] => {
  const bad = (degree: typeof vinegar) => degree === 'marked' || degree === 'severe'
  return [
    ...(support === 'nitrate'
      ? [
          'Nitrate: it burns of itself and cannot be put out. Stop here unless you are licensed to handle it; store, move and run it by local codes only, and never on a machine that was not made for it.',
        ]
      : []),
    ...(support === 'unknown'
      ? [
          'It is not known what the film is made of: take 35 mm film of before the 1950s for nitrate until it was identified by somebody licensed to.',
        ]
      : []),
    ...(shrinkage === null ? [] : [`Shrinkage. ${shrinkageAdvice(shrinkage)}`]),
    ...(vinegar !== 'none' && vinegar !== 'unknown'
      ? [
          'Vinegar: keep it apart from other film, with air, and off the skin; it shrinks and warps, and gets worse.',
        ]
      : []),
    ...(bad(perforations)
      ? ['Perforations are damaged: mend them, or run it without sprockets, before it is scanned.']
      : []),
    ...(mould !== 'none' && mould !== 'unknown'
      ? [
          'Mould: wear gloves and a mask, keep it apart, and have it cleaned by somebody who knows the solvents and their safety data.',
        ]
      : []),
  ]
}
