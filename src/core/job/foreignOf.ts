import type { Foreign, ForeignFormat } from './job.ts'

/** What a list of this format said, as JSON text; undefined where none did. */
export const foreignOf = (foreign: Foreign, format: ForeignFormat): string | undefined =>
  foreign.find((each) => each.format === format)?.text

/** The same, with what lists said last in place of what others of their format said before. */
export const withForeign = (before: Foreign, added: Foreign): Foreign => [
  ...before.filter(({ format }) => foreignOf(added, format) === undefined),
  ...added,
]
