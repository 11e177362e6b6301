/** Conventional limit: a reel name of an event line has eight characters A–Z, 0–9 and _. */
const LONGEST = 8

/** A reel's name as an event line carries it. `BL` and `AX` mean black and auxiliary there. */
export const edlReelName = (name: string): string => {
  const plain = name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toUpperCase()
    .replace(/[^A-Z0-9]+/gu, '_')
    .replace(/^_+|_+$/gu, '')
    .slice(0, LONGEST)
    .replace(/_+$/u, '')
  if (plain === '') return 'REEL'
  return plain === 'BL' || plain === 'AX' ? `${plain}_1` : plain
}
