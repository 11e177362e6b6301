/** What every format is asked about a job; other subjects are matters of single formats. */
export const COMMON_SUBJECTS: ReadonlySet<string> = new Set([
  'Places',
  'Base',
  'Framing',
  'Ramps',
  'Alternates',
  'Scene marks',
  'Held frames',
  'Agreement',
  'Shot changes',
  'Grade names',
  'Words of other lists',
  'Particulars',
  'Decimals',
])
