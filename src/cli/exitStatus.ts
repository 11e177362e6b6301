import type { Problem } from '../core/base/problem.ts'

/** 0 fine, 1 outside tolerance, 2 wrong use, 3 cannot read. */
export const EXIT = { fine: 0, outside: 1, wrongUse: 2, cannotRead: 3 } as const

export type ExitStatus = (typeof EXIT)[keyof typeof EXIT]

/**
 * The exit status that problems call for. Outside tolerance is an answer and none of them: whoever
 * asks can tell it from a file that could not be measured.
 */
export const exitStatusOf = (problems: readonly Problem[]): ExitStatus =>
  problems.some(({ code }) => code === 'wrong-use') ? EXIT.wrongUse : EXIT.cannotRead
