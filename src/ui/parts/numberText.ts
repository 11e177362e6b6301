const MINUS = '−'

/** A number as the screen writes it: fixed decimals, a true minus sign. */
export const formatNumber = (value: number, decimals: number): string => {
  const text = value.toFixed(decimals)
  const isZero = Number(text) === 0
  return isZero ? (0).toFixed(decimals) : text.replace('-', MINUS)
}

/** What a person typed as a number: comma or point, any minus sign, a unit behind is let go. */
export const parseNumber = (text: string): number | undefined => {
  const plain = text
    .trim()
    .replace(MINUS, '-')
    .replace(',', '.')
    .replace(/(?<!\s)\s*(?:%|×|fr)?$/u, '')
  return /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)$/u.test(plain) ? Number(plain) : undefined
}
