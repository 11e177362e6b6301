const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/'

/** Bytes as Base64 (RFC 4648 §4), with padding. */
export const base64 = (bytes: Uint8Array): string => {
  let text = ''
  for (let i = 0; i < bytes.length; i += 3) {
    const [a = 0, b, c] = bytes.subarray(i, i + 3)
    text += LETTERS[a >> 2]
    text += LETTERS[((a & 3) << 4) | ((b ?? 0) >> 4)]
    text += b === undefined ? '=' : LETTERS[((b & 15) << 2) | ((c ?? 0) >> 6)]
    text += c === undefined ? '=' : LETTERS[c & 63]
  }
  return text
}
