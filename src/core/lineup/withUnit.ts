import { shortDecimal } from '../formats/decimal.ts'

/** A number with as many decimals as its size wants, and its unit. */
export const withUnit = (value: number, unit: string): string => {
  const places = Math.max(0, Math.min(6, 3 - Math.floor(Math.log10(Math.abs(value) || 1))))
  return `${shortDecimal(value, places).replace('-', '−')}${unit === '' ? '' : ` ${unit}`}`
}
