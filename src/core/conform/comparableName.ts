/** A name as names are compared: no case, no accents, no punctuation, no blanks. */
export const comparableName = (name: string): string =>
  name
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '')

/** The last part of a path or address. */
const lastPart = (path: string): string => {
  const part = path.split(/[\\/]/u).at(-1) ?? ''
  try {
    return decodeURIComponent(part)
  } catch {
    return part
  }
}

const withoutExtension = (name: string): string => name.replace(/(?<=.)\.[^.]+$/u, '')

/** The forms a file's name may take in a list: as it is, without its folders, without its ending. */
export const fileNameForms = (name: string): readonly string[] => {
  const file = lastPart(name)
  return [name, file, withoutExtension(file)]
}
