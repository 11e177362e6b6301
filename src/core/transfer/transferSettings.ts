/** What a transfer is written as: a folder of numbered pictures, or one video file. */
export type TransferFormat = 'dpx' | 'tiff' | 'png' | 'h264' | 'vp9' | 'av1'

export const TRANSFER_FORMATS: readonly TransferFormat[] = [
  'dpx',
  'tiff',
  'png',
  'h264',
  'vp9',
  'av1',
]

/** How what lies past the tolerance's limits is brought to them in a transfer. */
export type Limiting = 'none' | 'soft' | 'hard'

/** What is done with a frame of the scan that cannot be decoded. */
export type OnDamage = 'stop' | 'hold'

/** How a reel is transferred: kept with it, so that whoever repeats it does the same. */
export type TransferSettings = {
  readonly format: TransferFormat
  readonly limiting: Limiting
  /** Whether each frame of the reel carries its timecode in the picture. */
  readonly burnsTimecode: boolean
  /** Whole seconds of each before the reel, in this order; 0 = none. */
  readonly head: { readonly bars: number; readonly slate: number; readonly leader: number }
  /** Whether the scan's own sound goes along where the file can hold it. */
  readonly carriesSound: boolean
  readonly onDamage: OnDamage
}

/** Seconds of bars, slate or leader, at most. */
export const LONGEST_HEAD_PART = 60

export const INITIAL_TRANSFER: TransferSettings = {
  format: 'dpx',
  limiting: 'none',
  burnsTimecode: false,
  head: { bars: 0, slate: 0, leader: 0 },
  carriesSound: true,
  onDamage: 'stop',
}

/** What is told of each format. `extension` has no dot; `isSequence` where a frame is a file. */
export type FormatFacts = {
  readonly title: string
  readonly extension: string
  readonly isSequence: boolean
}

export const TRANSFER_FORMAT_FACTS: Readonly<Record<TransferFormat, FormatFacts>> = {
  dpx: { title: 'DPX, 10 bits', extension: 'dpx', isSequence: true },
  tiff: { title: 'TIFF, 16 bits', extension: 'tif', isSequence: true },
  png: { title: 'PNG, 16 bits', extension: 'png', isSequence: true },
  h264: { title: 'MP4, H.264', extension: 'mp4', isSequence: false },
  vp9: { title: 'WebM, VP9', extension: 'webm', isSequence: false },
  av1: { title: 'WebM, AV1', extension: 'webm', isSequence: false },
}

export const isSequence = (format: TransferFormat): boolean =>
  TRANSFER_FORMAT_FACTS[format].isSequence
