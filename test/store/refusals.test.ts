import { describe, expect, it } from 'vitest'
import { problem } from '../../src/core/base/problem.ts'
import { fail } from '../../src/core/base/result.ts'
import { setJobInfo } from '../../src/core/job/commands/setJobInfo.ts'
import { createAppStore } from '../../src/store/appStore.ts'
import { perform, showJob, undo } from '../../src/store/document.ts'
import { tellProblems } from '../../src/store/notices.ts'
import { sampleJob } from '../support/sampleJob.ts'

const PROBLEM = problem('out-of-range', 'Gain may not lie below lift; raise it.')

const withJob = () => {
  const store = createAppStore()
  showJob(store, sampleJob(), 'key')
  return store
}

const rename = (store: ReturnType<typeof withJob>, title: string): boolean =>
  perform(store, (job) => setJobInfo(job, (info) => ({ ...info, title })))

describe('why a change was refused', () => {
  it('is told until a later change is done', () => {
    const store = withJob()
    expect(perform(store, () => fail(PROBLEM))).toBe(false)
    expect(store.getState().notice?.says).toBe(PROBLEM.says)
    expect(rename(store, 'Another')).toBe(true)
    expect(store.getState().notice).toBeUndefined()
  })

  it('goes with undo as well', () => {
    const store = withJob()
    rename(store, 'Another')
    perform(store, () => fail(PROBLEM))
    undo(store)
    expect(store.getState().notice).toBeUndefined()
  })

  it('is not told anew at each move of a drag', () => {
    const store = withJob()
    perform(store, () => fail(PROBLEM), 'drag')
    const id = store.getState().notice?.id
    perform(store, () => fail(PROBLEM), 'drag')
    expect(store.getState().notice?.id).toBe(id)
  })

  it('does not take other problems with it', () => {
    const store = withJob()
    tellProblems(store, [problem('cannot-read', 'The file cannot be read.')])
    rename(store, 'Another')
    expect(store.getState().notice?.says).toBe('The file cannot be read.')
  })
})
