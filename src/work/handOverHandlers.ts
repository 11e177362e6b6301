import { ok, type Result } from '../core/base/result.ts'
import { handOverFiles, type TextFile } from '../core/formats/handOverFiles.ts'
import { FORMATS_HANDED_OVER, isFileACue, prepareFormat } from '../core/formats/prepareFormat.ts'
import { inspectionHtml } from '../core/report/inspectionHtml.ts'
import { reportHtml } from '../core/report/reportHtml.ts'
import type { HandedOver, HandOverCalls } from './handOverCalls.ts'
import { reportedLists } from './reportedLists.ts'
import { CallError, type Handlers } from './rpc.ts'

/** Lets other messages in: a page that has gone on calls what is no longer wanted off. */
const pause = (): Promise<void> => new Promise((resolve) => setTimeout(resolve))

const asFile = (page: Result<string>): Result<Blob> =>
  page.ok ? ok(new Blob([page.value], { type: 'text/html' })) : page

/** What the hand-over worker answers; `zip` makes one archive of files, in their order. */
export const handOverHandlers = (
  zip: (files: readonly TextFile[]) => Uint8Array,
): Handlers<HandOverCalls> => {
  const filesOf = (
    { job, reelId }: HandedOver,
    format: (typeof FORMATS_HANDED_OVER)[number],
  ): readonly TextFile[] => {
    const made = handOverFiles(job, reelId, format)
    if (!made.ok) throw new CallError(made.problems[0].says, made.problems[0])
    return made.value.files
  }
  return {
    prepare: async ({ job, reelId }, { progress, signal }) => {
      for (const format of FORMATS_HANDED_OVER) {
        await pause()
        signal.throwIfAborted()
        progress(prepareFormat(job, reelId, format))
      }
      return undefined
    },
    file: ({ format, name, ...handedOver }) => {
      const file = filesOf(handedOver, format).find((each) => each.name === name)
      if (!file) throw new Error(`Bug: ${format} has no file ${name}`)
      return file.text
    },
    zip: async ({ formats, others, ...handedOver }, { progress, signal, transfer }) => {
      const files = [...others]
      for (const format of formats) {
        await pause()
        signal.throwIfAborted()
        progress(format)
        const folder = isFileACue(format) ? `${format}/` : ''
        for (const { name, text } of filesOf(handedOver, format))
          files.push({ name: `${folder}${name}`, text })
      }
      const bytes = zip(files)
      transfer(bytes.buffer)
      return bytes
    },
    report: (facts) => {
      const page = reportHtml({ ...facts, lists: reportedLists(facts.job, facts.reelId) })
      return asFile(page)
    },
    inspection: ({ job, reelId, madeOn }) => asFile(inspectionHtml(job, reelId, madeOn)),
  }
}
