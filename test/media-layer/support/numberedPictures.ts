/** Folders of `test/media/numbered/` with the pictures reel_0086 to reel_0090. */
export const PICTURE_FOLDERS = [
  {
    folder: 'png8',
    extension: 'png',
    facts: { codec: 'PNG', container: 'PNG sequence', depth: 8 },
  },
  { folder: 'png16', extension: 'png', facts: { codec: 'PNG', depth: 16 } },
  { folder: 'tiff8', extension: 'tif', facts: { codec: 'TIFF', depth: 8 } },
  {
    folder: 'tiff16',
    extension: 'tif',
    facts: { codec: 'TIFF', container: 'TIFF sequence', depth: 16 },
  },
] as const

export const PICTURE_NUMBERS = [86, 87, 88, 89, 90] as const

export const PICTURE_FACTS = {
  width: 64,
  height: 48,
  layout: 'rgb',
  frames: 5,
  rate: undefined,
  range: undefined,
  matrix: 'bt709',
} as const
