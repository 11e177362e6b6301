import { zipSync } from 'fflate'

/** The first time a .zip can state: local time, as .zip files have no zone. */
const FIXED_TIME = new Date(1980, 0, 1)

export type ZipEntry = { readonly name: string; readonly bytes: Uint8Array }

/** One .zip of files in their order; what is compressed already is only put in. */
export const zipOf = (entries: readonly ZipEntry[]): Uint8Array<ArrayBuffer> => {
  const files = entries.map(({ name, bytes }) => {
    const level = /\.(?:jpe?g|png|mp4|webm)$/u.test(name) ? 0 : 6
    return [name, [bytes, { mtime: FIXED_TIME, level }]] as const
  })
  const made = zipSync(Object.fromEntries(files) as Parameters<typeof zipSync>[0])
  return made as Uint8Array<ArrayBuffer>
}
