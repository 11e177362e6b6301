import { type Problem, problem } from '../base/problem.ts'
import {
  LARGEST_LEVEL,
  MOST_HOUSE_PROFILES,
  NAME_LIMIT,
  PROFILE_NAME_LIMIT,
} from '../job/limits.ts'
import { plainName } from './findProfile.ts'
import { type Limits, PUBLISHED_PROFILES, type ToleranceProfile } from './profile.ts'

/** The form of the ids of a job's records. */
const IDENTIFIER = /^[A-Za-z][A-Za-z0-9_-]{0,63}$/

const LEVEL = `${LARGEST_LEVEL * 100} %`

const areFine = ([low, high]: Limits): boolean =>
  low < high && low >= -LARGEST_LEVEL && high <= LARGEST_LEVEL

/** What is wrong with the house profiles of a job, by field; they would not be measured by. */
export const checkHouseProfiles = (profiles: readonly ToleranceProfile[]): readonly Problem[] => {
  const problems: Problem[] = []
  const tell = (code: Problem['code'], says: string, field: string) =>
    problems.push(problem(code, says, { field: `info.profiles${field}` }))
  if (profiles.length > MOST_HOUSE_PROFILES)
    tell(
      'too-large',
      `A job holds at most ${MOST_HOUSE_PROFILES} house profiles; take some out.`,
      '',
    )
  const taken = new Set(PUBLISHED_PROFILES.flatMap(({ id, name }) => [id, name].map(plainName)))
  for (const [index, profile] of profiles.entries()) {
    const { id, name, source, area } = profile
    if (!IDENTIFIER.test(id))
      tell(
        'malformed',
        `“${id}” cannot be an id; use a letter, then letters and digits.`,
        `.${index}.id`,
      )
    if (name.length > PROFILE_NAME_LIMIT || source.length > NAME_LIMIT)
      tell(
        'too-large',
        `A tolerance's name holds at most ${PROFILE_NAME_LIMIT} characters and its source ${NAME_LIMIT}; shorten it.`,
        `.${index}.name`,
      )
    if (plainName(name) === '')
      tell('missing', 'A tolerance needs a name with a letter or a digit.', `.${index}.name`)
    const names = new Set([plainName(id), plainName(name)])
    for (const each of names)
      if (taken.has(each))
        tell('conflict', `Another tolerance is called “${name}”; choose a name.`, `.${index}.name`)
    for (const each of names) taken.add(each)
    for (const figure of ['rgb', 'luma', 'composite'] as const)
      if (profile[figure] && !areFine(profile[figure]))
        tell(
          'out-of-range',
          `The lower limit must be below the upper, both within ±${LEVEL}.`,
          `.${index}.${figure}`,
        )
    if (!(area >= 0 && area <= 1))
      tell('out-of-range', 'The area that may be out is from 0 to 100 %.', `.${index}.area`)
  }
  return problems
}
