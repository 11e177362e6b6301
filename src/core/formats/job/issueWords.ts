import type * as v from 'valibot'
import { type Problem, problem } from '../../base/problem.ts'

type Issue = v.BaseIssue<unknown>

/** The lists of a job file, and what one of each is called. */
const MEMBERS: Readonly<Record<string, string>> = {
  cues: 'cue',
  reels: 'reel',
  held: 'held frame',
  alternates: 'alternate',
  profiles: 'house profile',
  answers: 'answer',
}

type Step = { readonly key: unknown }

const stepsOf = (issue: Issue): readonly Step[] => (issue.path ?? []) as readonly Step[]

/** Where something is as a person says it, lists counted from 1: `cue 3, grade.gamma.1`. */
const placeOf = (steps: readonly Step[]): string => {
  const parts: string[] = []
  let rest: string[] = []
  for (const { key } of steps) {
    const list = rest.at(-1)
    const member = typeof key === 'number' && list !== undefined ? MEMBERS[list] : undefined
    if (member === undefined) rest.push(String(key))
    else {
      const before = rest.slice(0, -1).join('.')
      parts.push(...(before === '' ? [] : [before]), `${member} ${Number(key) + 1}`)
      rest = []
    }
  }
  return [...parts, ...(rest.length > 0 ? [`“${rest.join('.')}”`] : [])].join(', ')
}

/** What a value is, short enough for a sentence. */
const shown = (value: unknown): string => {
  if (value === undefined) return 'nothing'
  if (Array.isArray(value)) return `a list of ${value.length}`
  if (typeof value === 'object' && value !== null) return 'a record'
  const text = JSON.stringify(value) ?? String(value)
  return text.length > 40 ? `${text.slice(0, 39)}…` : text
}

const choices = (expected: string | null): string =>
  (expected ?? '').replace(/[()]/gu, '').replaceAll('"', '').replaceAll(' | ', ', ')

const KINDS: Readonly<Record<string, string>> = {
  number: 'a number',
  string: 'text',
  boolean: 'true or false',
  array: 'a list',
  strict_tuple: 'a list',
  strict_object: 'a record',
}

/** What should be there; undefined where the schema says nothing that helps. */
const wanted = (issue: Issue & { readonly requirement?: unknown }): string | undefined => {
  const { type, requirement } = issue
  const isText = typeof issue.input === 'string'
  switch (type) {
    case 'min_value':
      return `at least ${requirement}`
    case 'max_value':
      return `at most ${requirement}`
    case 'gt_value':
      return `more than ${requirement}`
    case 'integer':
      return 'a whole number'
    case 'min_length':
      return isText ? 'not empty' : `a list of at least ${requirement}`
    case 'max_length':
      return isText ? `at most ${requirement} characters` : `a list of at most ${requirement}`
    case 'regex':
      return String(requirement).startsWith('/^[A-Za-z]')
        ? 'a letter, then letters, digits, “_” and “-”, 64 at most'
        : 'in the form that it always has'
    case 'picklist':
      return `one of ${choices(issue.expected)}`
    case 'literal':
      return choices(issue.expected)
    default:
      return KINDS[type]
  }
}

/** What is wrong with it and what to do. */
const complaint = (issue: Issue, file: string): string => {
  if (issue.expected === 'never')
    return `is not part of ${file}. Take it out, or update the program`
  if (issue.input === undefined) return 'is missing. Add it, or get the file again'
  return `must be ${wanted(issue) ?? 'another value'}, but is ${shown(issue.input)}. Mend it, or get the file again`
}

/** What a schema refused of a file, as one sentence: where, what, and what to do. */
export const problemOfIssue = (issue: Issue, file = 'a job file'): Problem => {
  const steps = stepsOf(issue)
  const field = steps.map(({ key }) => String(key)).join('.') || 'the file'
  const place = placeOf(steps) || 'the whole'
  return problem(
    'out-of-range',
    `In ${file.replace(/^an? /u, 'the ')}, ${place} ${complaint(issue, file)}.`,
    { field },
  )
}
