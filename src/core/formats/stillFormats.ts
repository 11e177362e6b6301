/** Kinds of file a single frame is saved as. */
export const STILL_FORMATS = {
  png: { title: 'PNG, 16 bit', extension: 'png', mediaType: 'image/png' },
  tiff: { title: 'TIFF, 16 bit', extension: 'tif', mediaType: 'image/tiff' },
  dpx: { title: 'DPX, 10 bit', extension: 'dpx', mediaType: 'image/x-dpx' },
} as const

export type StillFormat = keyof typeof STILL_FORMATS

/** The kind that a file name's extension stands for, if any. */
export const stillFormatOf = (name: string): StillFormat | undefined => {
  const extension = /\.(\w+)$/u.exec(name)?.[1]?.toLowerCase()
  if (extension === 'png' || extension === 'dpx') return extension
  return extension === 'tif' || extension === 'tiff' ? 'tiff' : undefined
}
