/**
 * Where the fields of a DPX header lie, in bytes from the beginning of the file: SMPTE ST 268-1,
 * order and sizes checked against a second reader's own (facts film.md §11). Those of the first
 * picture element are from the beginning of the file too.
 */
export const DPX_FIELD = {
  magic: 0,
  dataOffset: 4,
  version: 8,
  fileSize: 16,
  ditto: 20,
  genericSize: 24,
  industrySize: 28,
  userSize: 32,
  name: 36,
  creator: 160,
  encryption: 660,
  orientation: 768,
  elements: 770,
  width: 772,
  height: 776,
  sign: 780,
  lowCode: 784,
  highCode: 792,
  descriptor: 800,
  transfer: 801,
  colorimetric: 802,
  bits: 803,
  packing: 804,
  encoding: 806,
  elementOffset: 808,
  linePadding: 812,
  pixelAspect: 1628,
  filmRate: 1724,
  timecode: 1920,
  videoRate: 1940,
  blackCode: 1952,
  whiteCode: 1964,
} as const

/** Bytes from one picture element's fields to the next one's, of which there are eight at most. */
export const DPX_ELEMENT_BYTES = 72
export const MOST_DPX_ELEMENTS = 8

/** Bytes of the parts every file has, and of those of film and television after them. */
export const DPX_GENERIC_BYTES = 1664
export const DPX_INDUSTRY_BYTES = 384
export const DPX_HEADER_BYTES = DPX_GENERIC_BYTES + DPX_INDUSTRY_BYTES

/** The magic number as it reads in the byte order of the file, and in the other one. */
export const DPX_MAGIC = 0x53445058
export const DPX_MAGIC_SWAPPED = 0x58504453

/** A whole number field that is not filled in. */
export const DPX_UNDEFINED = 0xffffffff

/** Descriptors of what an element holds that are used here. */
export const DPX_DESCRIPTOR = { alpha: 4, luma: 6, rgb: 50, rgba: 51, abgr: 52 } as const

/** How samples lie in words of 32 bits: run on without gaps, or filled up after or before them. */
export const DPX_PACKING = { packed: 0, filledA: 1, filledB: 2 } as const

/** Transfer characteristics that mean something here. */
export const DPX_TRANSFER = {
  userDefined: 0,
  printingDensity: 1,
  logarithmic: 3,
  bt709: 6,
  bt601Of625: 7,
  bt601Of525: 8,
} as const
