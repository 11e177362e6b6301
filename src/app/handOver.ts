import type { HandOverFormat } from '../core/formats/handOverFormats.ts'
import { HAND_OVER_FORMATS } from '../core/formats/handOverFormats.ts'
import { writeJob } from '../core/formats/job/writeJob.ts'
import { fileNameOf } from '../core/formats/listNames.ts'
import {
  FORMATS_HANDED_OVER,
  handOverStatement,
  type PreparedFormat,
} from '../core/formats/prepareFormat.ts'
import type { AppStore } from '../store/appStore.ts'
import { tell } from '../store/notices.ts'
import { jobOf, reelOf } from '../store/queries.ts'
import type { HandOverDesk } from '../ui/services.ts'
import type { HandedOver, HandOverCalls } from '../work/handOverCalls.ts'
import type { Caller } from '../work/rpc.ts'
import { saveFile } from './files.ts'
import { jobFileName } from './jobFileName.ts'
import { isAbort, tellError } from './tellError.ts'

const textBlob = (text: string, type: string): Blob => new Blob([text], { type })

const zipBlob = (bytes: Uint8Array): Blob =>
  new Blob([bytes as Uint8Array<ArrayBuffer>], { type: 'application/zip' })

/** Writes the files of the reel on screen in a worker, and saves them. */
export const createHandOverDesk = (
  store: AppStore,
  call: Caller<HandOverCalls>,
  save: typeof saveFile = saveFile,
): HandOverDesk => {
  const handedOver = (): (HandedOver & { readonly stem: string }) | undefined => {
    const state = store.getState()
    const job = jobOf(state)
    const reel = reelOf(state)
    return job && reel && { job, reelId: reel.id, stem: fileNameOf(reel) }
  }
  /** Saves a file once it is made; the person is asked where before, while the press still counts. */
  const saveMade = async (name: string, make: () => Promise<Blob>): Promise<void> => {
    try {
      if (await save(name, make)) tell(store, `Saved ${name}.`)
    } catch (error) {
      tellError(store, error)
    }
  }
  const preparedNow = async (what: HandedOver): Promise<readonly PreparedFormat[]> => {
    const parts: PreparedFormat[] = []
    await call('prepare', what, { onProgress: (part) => parts.push(part) })
    return parts
  }
  const statementOf = async (what: HandedOver): Promise<string> =>
    handOverStatement(what.job, what.reelId, await preparedNow(what))

  return {
    prepare: async (onPart, signal) => {
      const what = handedOver()
      if (!what) return
      const { job, reelId } = what
      try {
        await call('prepare', { job, reelId }, { onProgress: onPart, signal })
      } catch (error) {
        if (!isAbort(error)) tellError(store, error)
      }
    },
    saveFile: async (format: HandOverFormat, name: string) => {
      const what = handedOver()
      if (!what) return
      const { job, reelId } = what
      await saveMade(name, async () =>
        textBlob(
          await call('file', { job, reelId, format, name }),
          HAND_OVER_FORMATS[format].mediaType,
        ),
      )
    },
    saveFormat: async (format: HandOverFormat) => {
      const what = handedOver()
      if (!what) return
      const { job, reelId, stem } = what
      await saveMade(`${stem}-${format}.zip`, async () =>
        zipBlob(await call('zip', { job, reelId, formats: [format], others: [] })),
      )
    },
    saveStatement: async () => {
      const what = handedOver()
      if (!what) return
      await saveMade(`${what.stem}-losses.txt`, async () =>
        textBlob(await statementOf(what), 'text/plain'),
      )
    },
    saveWhole: async (onFormat) => {
      const what = handedOver()
      if (!what) return
      const { job, reelId, stem } = what
      await saveMade(`${stem}-hand-over.zip`, async () => {
        const parts = await preparedNow({ job, reelId })
        const formats = FORMATS_HANDED_OVER.filter((format) =>
          parts.some((part) => part.format === format && part.problems.length === 0),
        )
        const others = [
          { name: jobFileName(job), text: writeJob(job) },
          { name: `${stem}-losses.txt`, text: handOverStatement(job, reelId, parts) },
        ]
        return zipBlob(
          await call('zip', { job, reelId, formats, others }, { onProgress: onFormat }),
        )
      })
    },
  }
}
