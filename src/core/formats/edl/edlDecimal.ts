import { shortDecimal } from '../decimal.ts'

/** At most six decimals, a point, no exponent: what readers of ASC_SOP comments take. */
export const edlDecimal = (value: number): string => {
  const text = shortDecimal(value, 6)
  return text.includes('.') ? text : `${text}.0`
}
