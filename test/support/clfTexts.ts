import { readClf } from '../../src/core/formats/clf/readClf.ts'

/** Texts of process lists, and what comes of reading them. */

export const taken = (text: string) => {
  const read = readClf(text)
  if (!read.ok) throw new Error(read.problems[0].says)
  return read.value
}

export const refusals = (text: string) => {
  const read = readClf(text)
  if (read.ok) throw new Error('This was read.')
  return read.problems.map(({ says, at: place }) => [says, place?.line] as const)
}

export const SMPTE = 'xmlns="http://www.smpte-ra.org/ns/2136-1/2024"'
export const HEAD = `${SMPTE} id="a" compCLFversion="3.0"`
export const list = (inside: string, head = HEAD): string =>
  `<?xml version="1.0"?>\n<ProcessList ${head}>\n${inside}\n</ProcessList>`
export const DEPTHS = 'inBitDepth="32f" outBitDepth="32f"'
export const IDENTITY = `<Matrix ${DEPTHS}><Array dim="3 3">1 0 0 0 1 0 0 0 1</Array></Matrix>`

export const operator = (name: string, attributes: string, inside: string): string =>
  list(`<${name} ${attributes}>\n${inside}\n</${name}>`)
export const cdl = (inside: string, style = ''): string =>
  operator('ASC_CDL', `${DEPTHS} ${style}`, inside)
export const SOP =
  '<SOPNode><Slope>1 1 1</Slope><Offset>0 0 0</Offset><Power>1 1 1</Power></SOPNode>'
export const array = (dim: string, numbers: string): string =>
  `<Array dim="${dim}">${numbers}</Array>`
export const zeros = (count: number): string => '0 '.repeat(count)
