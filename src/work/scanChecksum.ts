import type { ScanChecksum } from '../core/report/reportFacts.ts'
import { type FileChecksum, filesChecksum } from '../media/filesChecksum.ts'
import { sha256OfBlob } from '../media/sha256OfBlob.ts'

/**
 * The checksum of a scan: of its file or, of a sequence, of the list of its files' checksums.
 * `onBytes` is told how many bytes are done.
 */
export const scanChecksum = async (
  files: readonly File[],
  onBytes: (done: number) => void,
  signal?: AbortSignal,
): Promise<ScanChecksum> => {
  const checksums: FileChecksum[] = []
  let before = 0
  for (const file of files) {
    const sha256 = await sha256OfBlob(file, (done) => onBytes(before + done), signal)
    checksums.push({ name: file.name, sha256 })
    before += file.size
  }
  const [only] = checksums
  return checksums.length === 1 && only
    ? { sha256: only.sha256, files: 1 }
    : { sha256: filesChecksum(checksums), files: checksums.length }
}
