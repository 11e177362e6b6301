import type { Problem } from '../core/base/problem.ts'

/** 0 fine, 1 outside tolerance or problems found, 2 wrong use, 3 cannot read. */
export const EXIT = { fine: 0, found: 1, wrongUse: 2, cannotRead: 3 } as const

export type ExitStatus = (typeof EXIT)[keyof typeof EXIT]

/** The exit status a list of problems calls for. */
export const exitStatusOf = (problems: readonly Problem[]): ExitStatus => {
  const codes = new Set(problems.map(({ code }) => code))
  if (codes.has('wrong-use')) return EXIT.wrongUse
  const unreadable = ['cannot-read', 'unknown-format', 'cannot-decode', 'newer-version'] as const
  if (unreadable.some((code) => codes.has(code))) return EXIT.cannotRead
  return EXIT.found
}
