import type { AnswerFile } from '../core/agreement/answerFile.ts'
import { applyAnswers } from '../core/agreement/applyAnswers.ts'
import { planAnswers } from '../core/agreement/planAnswers.ts'
import { signatureStands } from '../core/agreement/signatureStands.ts'
import type { Problem } from '../core/base/problem.ts'
import { readAnswerFile } from '../core/formats/answer/readAnswerFile.ts'
import { setAgreeing } from '../store/agreeing.ts'
import type { AppStore } from '../store/appStore.ts'
import { perform } from '../store/document.ts'
import { tellProblems } from '../store/notices.ts'
import { jobOf } from '../store/queries.ts'
import type { ReviewDesk } from '../ui/services.ts'
import type { pickAnswerFiles, saveFile } from './files.ts'
import { createPackDesk } from './packDesk.ts'
import type { Workers } from './workers.ts'

/** Makes review packs of the reel on screen, and takes their answers in. */
export const createReviewDesk = (
  store: AppStore,
  workers: Pick<Workers, 'stills'>,
  save: typeof saveFile,
  pick: typeof pickAnswerFiles,
): ReviewDesk => {
  const take = async (files: readonly AnswerFile[]): Promise<void> => {
    const job = jobOf(store.getState())
    if (!job || files.length === 0) return
    const plan = planAnswers(job, files)
    if (!plan.ok) return tellProblems(store, plan.problems)
    const signatures = await Promise.all(
      plan.value.rows.map(({ cue, answer }) => signatureStands(job, cue, answer)),
    )
    setAgreeing(store, { takenIn: { plan: plan.value, signatures, choices: new Map() } })
  }
  const readAll = async (texts: readonly string[]): Promise<void> => {
    const problems: Problem[] = []
    const files: AnswerFile[] = []
    for (const text of texts) {
      const read = readAnswerFile(text)
      if (read.ok) files.push(read.value)
      else problems.push(...read.problems)
    }
    const [first, ...rest] = problems
    if (first) tellProblems(store, [first, ...rest])
    else await take(files)
  }

  return {
    ...createPackDesk(store, workers, save),
    pickAnswers: async () => readAll(await Promise.all((await pick()).map((each) => each.text()))),
    readAnswer: (text) => readAll([text]),
    apply: () => {
      const { takenIn } = store.getState().agreeing
      if (!takenIn) return
      if (perform(store, (job) => applyAnswers(job, takenIn.plan, takenIn.choices)))
        setAgreeing(store, { takenIn: undefined })
    },
    leave: () => setAgreeing(store, { takenIn: undefined }),
  }
}
