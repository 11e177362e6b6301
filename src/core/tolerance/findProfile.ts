import { type Problem, problem } from '../base/problem.ts'
import { EBU_R103_V3, PUBLISHED_PROFILES, type ToleranceProfile } from './profile.ts'

/** What can be chosen in a job with these house profiles. */
export const profilesWith = (house: readonly ToleranceProfile[]): readonly ToleranceProfile[] => [
  ...PUBLISHED_PROFILES,
  ...house,
]

export const profileById = (
  id: string,
  house: readonly ToleranceProfile[],
): ToleranceProfile | undefined => profilesWith(house).find((profile) => profile.id === id)

/** The tolerance a job is held to; that it is known was checked when the job was read. */
export const toleranceOf = ({
  tolerance,
  profiles,
}: {
  readonly tolerance: string
  readonly profiles: readonly ToleranceProfile[]
}): ToleranceProfile => profileById(tolerance, profiles) ?? EBU_R103_V3

/** Names are told apart by their letters and digits alone: `EBU R103 v3` is `ebu-r103-v3`. */
export const plainName = (text: string): string => text.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '')

/** A profile by its id or its name, however they are spaced and spelt. */
export const profileByName = (
  text: string,
  house: readonly ToleranceProfile[],
): ToleranceProfile | undefined =>
  profilesWith(house).find(({ id, name }) =>
    [id, name].some((each) => plainName(each) === plainName(text)),
  )

/** A tolerance this program does not know; a job is never measured by another in its place. */
export const unknownTolerance = (id: string, house: readonly ToleranceProfile[]): Problem =>
  problem(
    'not-found',
    `The tolerance “${id}” is neither published nor in the job; name one of ${profilesWith(house)
      .map((each) => each.id)
      .join(', ')}.`,
    { field: 'info.tolerance' },
  )
