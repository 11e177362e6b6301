/** Bytes turned into characters at once: engines limit the arguments of a call. */
const PIECE = 8192

/** Bytes as a data: address (RFC 2397) of a kind of media, such as `image/png`. */
export const dataAddress = (type: string, bytes: Uint8Array): string => {
  let characters = ''
  for (let from = 0; from < bytes.length; from += PIECE)
    characters += String.fromCharCode(...bytes.subarray(from, from + PIECE))
  return `data:${type};base64,${btoa(characters)}`
}
