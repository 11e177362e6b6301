import { createHash } from 'node:crypto'
import { createReadStream } from 'node:fs'

/** The SHA-256 of a file of any size, read piece by piece; `onBytes` is told how many are done. */
export const sha256OfFile = async (
  path: string,
  onBytes: (done: number) => void = () => {},
): Promise<string> => {
  const hash = createHash('sha256')
  let done = 0
  for await (const piece of createReadStream(path, { highWaterMark: 2 ** 20 })) {
    hash.update(piece)
    done += piece.length
    onBytes(done)
  }
  return hash.digest('hex')
}
