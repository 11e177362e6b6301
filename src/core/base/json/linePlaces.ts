/** A place in a text as a person counts: both from 1. */
export type LinePlace = { readonly line: number; readonly column: number }

const LF = 10
const CR = 13

/**
 * Finds line and column of places in a text, each counted in UTF-16 units from 0. Lines end with
 * LF, CR LF or CR. The text is gone through once, when the first place is asked for.
 */
export const linePlaces = (text: string): ((at: number) => LinePlace) => {
  let starts: number[] | undefined
  const startsOfLines = (): number[] => {
    const found = [0]
    for (let at = 0; at < text.length; at++) {
      const code = text.charCodeAt(at)
      const isEnd = code === LF || (code === CR && text.charCodeAt(at + 1) !== LF)
      if (isEnd) found.push(at + 1)
    }
    return found
  }
  return (at) => {
    starts ??= startsOfLines()
    let low = 0
    let high = starts.length
    while (low < high) {
      const middle = (low + high) >> 1
      if ((starts[middle] ?? Infinity) <= at) low = middle + 1
      else high = middle
    }
    return { line: low, column: at - (starts[low - 1] ?? 0) + 1 }
  }
}
