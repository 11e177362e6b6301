import { promisify } from 'node:util'
import { constants, deflate } from 'node:zlib'
import type { Deflate } from '../deflate.ts'

const deflated = promisify(deflate)

/**
 * Beside the program's own thread, by runs and frequencies alone: of filtered 16-bit pictures
 * nearly as small as by matches (0 to 6 % larger), in two fifths of the time. It looks nothing up
 * by hashes, which zlib makes by what a processor has, so that farms of unlike machines agree.
 */
export const deflateNode: Deflate = async (bytes) =>
  new Uint8Array(await deflated(bytes, { level: 1, strategy: constants.Z_RLE }))
