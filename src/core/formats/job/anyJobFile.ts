/** A job file as parsed JSON, of whatever version. */
export type AnyJobFile = { readonly version: number } & Readonly<Record<string, unknown>>

export type AnyRecord = Readonly<Record<string, unknown>>

export const isRecord = (value: unknown): value is AnyRecord =>
  typeof value === 'object' && value !== null

/** A list with `change` done to what of it is a record. */
export const mapRecords = (
  list: readonly unknown[],
  change: (record: AnyRecord) => unknown,
): unknown[] => list.map((each) => (isRecord(each) ? change(each) : each))

/** The same file with `change` done to each of its reels, where it has reels. */
export const withReels = (file: AnyJobFile, change: (reel: AnyRecord) => unknown): AnyJobFile =>
  Array.isArray(file.reels) ? { ...file, reels: mapRecords(file.reels, change) } : file

/** The same file with `change` done to each record of a transfer, where it has these. */
export const withPasses = (file: AnyJobFile, change: (pass: AnyRecord) => unknown): AnyJobFile =>
  Array.isArray(file.passes) ? { ...file, passes: mapRecords(file.passes, change) } : file

/** The same file with `change` done to what holds for the whole job, where it has that. */
export const withInfo = (file: AnyJobFile, change: (info: AnyRecord) => unknown): AnyJobFile =>
  typeof file.info === 'object' && file.info !== null
    ? { ...file, info: change(file.info as AnyRecord) }
    : file

/** The same file with `change` done to each of its cues, where it has cues. */
export const withCues = (file: AnyJobFile, change: (cue: AnyRecord) => unknown): AnyJobFile =>
  Array.isArray(file.cues) ? { ...file, cues: mapRecords(file.cues, change) } : file

/** The same file with `change` done to the framing of each of its cues, where they have one. */
export const withFramings = (
  file: AnyJobFile,
  change: (framing: AnyRecord) => unknown,
): AnyJobFile =>
  Array.isArray(file.cues)
    ? {
        ...file,
        cues: file.cues.map((cue: unknown) =>
          isRecord(cue) && isRecord(cue.framing) ? { ...cue, framing: change(cue.framing) } : cue,
        ),
      }
    : file
