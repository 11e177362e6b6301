/**
 * The shortest decimal that reads back as the same double, without an exponent: what open formats
 * take, since not every reader knows exponents.
 */
export const exactDecimal = (value: number): string => {
  const shortest = String(value === 0 ? 0 : value)
  const parts = /^(-?)(\d)(?:\.(\d+))?e([+-]\d+)$/u.exec(shortest)
  if (!parts) return shortest
  const [, sign = '', whole = '', fraction = '', exponent = '0'] = parts
  const digits = whole + fraction
  const point = 1 + Number(exponent)
  if (point <= 0) return `${sign}0.${'0'.repeat(-point)}${digits}`
  return `${sign}${digits.padEnd(point, '0').slice(0, point)}${digits.length > point ? `.${digits.slice(point)}` : ''}`
}

/** A decimal of at most `places` places, without an exponent and without idle zeros. */
export const shortDecimal = (value: number, places: number): string => {
  const text = value.toFixed(places).replace(/\.?0+$/u, '')
  return text === '-0' || text === '' ? '0' : text
}
