import { describe, expect, it } from 'vitest'
import type { Result } from '../../../src/core/base/result.ts'
import { applyChange, invertChange } from '../../../src/core/job/change.ts'
import { addHouseProfile } from '../../../src/core/job/commands/addHouseProfile.ts'
import { removeHouseProfile } from '../../../src/core/job/commands/removeHouseProfile.ts'
import { setHouseProfile } from '../../../src/core/job/commands/setHouseProfile.ts'
import { setJobInfo } from '../../../src/core/job/commands/setJobInfo.ts'
import type { LabelledChange } from '../../../src/core/job/history.ts'
import type { Job } from '../../../src/core/job/job.ts'
import { profileById, profileByName } from '../../../src/core/tolerance/findProfile.ts'
import { EBU_R103_V3, type ToleranceProfile } from '../../../src/core/tolerance/profile.ts'
import { sampleJob } from '../../support/sampleJob.ts'

const done = (job: Job, result: Result<LabelledChange>): Job => {
  if (!result.ok) throw new Error(result.problems[0].says)
  const after = applyChange(job, result.value.change)
  expect(applyChange(after, invertChange(result.value.change))).toEqual(job)
  return after
}

const refusal = (result: Result<unknown>) =>
  result.ok ? undefined : [result.problems[0].code, result.problems[0].at?.field]

const plain = sampleJob()
const housed = done(plain, addHouseProfile(plain, EBU_R103_V3, 'house-a'))
const set = (job: Job, id: string, change: Partial<ToleranceProfile>) =>
  setHouseProfile(job, id, (profile) => ({ ...profile, ...change }))

describe('a house profile', () => {
  it('is made with the numbers of another and a name of its own, and the job is held to it', () => {
    const { profiles, tolerance } = housed.info.job
    expect(tolerance).toBe('house-a')
    expect(profiles).toEqual([
      {
        ...EBU_R103_V3,
        id: 'house-a',
        name: 'House rule 1',
        source: 'House rule of this job, made from EBU R 103 v3',
      },
    ])
    const second = done(housed, addHouseProfile(housed, EBU_R103_V3, 'house-b'))
    expect(second.info.job.profiles[1]?.name).toBe('House rule 2')
  })

  it('is found by its id, and by its name however that is spaced', () => {
    const { profiles } = housed.info.job
    expect(profileById('house-a', profiles)).toBe(profiles[0])
    expect(profileByName('HOUSE RULE-1', profiles)).toBe(profiles[0])
    expect(profileById('house-a', [])).toBeUndefined()
  })

  it('is changed, but never its id; nothing else of the job changes', () => {
    const after = done(housed, set(housed, 'house-a', { id: 'other', luma: [0, 1], area: 0 }))
    expect(after.info.job.profiles[0]).toMatchObject({ id: 'house-a', luma: [0, 1], area: 0 })
    expect(after.cues).toBe(housed.cues)
  })

  it('that is set to what it is makes no change', () => {
    const result = set(housed, 'house-a', { luma: [...EBU_R103_V3.luma] })
    expect(result.ok && result.value.change).toEqual({})
  })

  it('goes only when the job is held to another', () => {
    expect(refusal(removeHouseProfile(housed, 'house-a'))).toEqual(['conflict', undefined])
    const other = done(
      housed,
      setJobInfo(housed, (info) => ({ ...info, tolerance: 'narrow-range' })),
    )
    const after = done(other, removeHouseProfile(other, 'house-a'))
    expect(after.info.job.profiles).toEqual([])
    expect(refusal(removeHouseProfile(after, 'house-a'))).toEqual(['not-found', undefined])
    expect(refusal(set(after, 'house-a', {}))).toEqual(['not-found', undefined])
  })

  it.each<[string, Partial<ToleranceProfile>, string, string]>([
    ['limits that are crossed', { rgb: [1, 0] }, 'out-of-range', 'rgb'],
    ['limits that are one', { luma: [0.5, 0.5] }, 'out-of-range', 'luma'],
    ['a limit that is no number', { luma: [Number.NaN, 1] }, 'out-of-range', 'luma'],
    ['a limit past any signal', { composite: [-0.3, 10.1] }, 'out-of-range', 'composite'],
    ['an area past the whole', { area: 1.01 }, 'out-of-range', 'area'],
    ['an area below nothing', { area: -0.01 }, 'out-of-range', 'area'],
    ['an area that is no number', { area: Number.NaN }, 'out-of-range', 'area'],
    ['no name', { name: ' – ' }, 'missing', 'name'],
    ['the name of a published one', { name: 'EBU R103 v3' }, 'conflict', 'name'],
    ['the id of a published one for a name', { name: 'Narrow-range' }, 'conflict', 'name'],
    ['a name past its length', { name: 'n'.repeat(101) }, 'too-large', 'name'],
    ['a source past its length', { source: 'n'.repeat(1001) }, 'too-large', 'name'],
  ])('refuses %s', (_, change, code, field) => {
    expect(refusal(set(housed, 'house-a', change))).toEqual([code, `info.profiles.0.${field}`])
  })

  it('cannot have the id of another, nor one that is no id', () => {
    for (const id of ['house-a', 'ebu-r103-v3', 'composite-625'])
      expect(refusal(addHouseProfile(housed, EBU_R103_V3, id))).toEqual([
        'conflict',
        'info.profiles.1.name',
      ])
    expect(refusal(addHouseProfile(housed, EBU_R103_V3, '1 2'))?.[0]).toBe('malformed')
  })

  it('is one of at most twenty', () => {
    let job = plain
    for (let n = 1; n <= 20; n++) job = done(job, addHouseProfile(job, EBU_R103_V3, `house-${n}`))
    expect(refusal(addHouseProfile(job, EBU_R103_V3, 'house-21'))).toEqual([
      'too-large',
      'info.profiles',
    ])
  })
})

it('a job cannot be held to a tolerance that is neither published nor its own', () => {
  expect(refusal(setJobInfo(plain, (info) => ({ ...info, tolerance: 'house-a' })))).toEqual([
    'not-found',
    'info.tolerance',
  ])
})
