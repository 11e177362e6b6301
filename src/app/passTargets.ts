import { problem } from '../core/base/problem.ts'
import { fail, ok, type Result } from '../core/base/result.ts'
import type { PassPlan } from '../core/transfer/passPlan.ts'
import { isSequence } from '../core/transfer/transferSettings.ts'
import type { PassTarget } from '../work/passCalls.ts'
import { fromPicker } from './files.ts'

type PickerWindow = {
  readonly showSaveFilePicker?: (options: {
    suggestedName: string
  }) => Promise<FileSystemFileHandle>
  readonly showDirectoryPicker?: (options: {
    mode: 'readwrite'
  }) => Promise<FileSystemDirectoryHandle>
}

type Asking = {
  readonly requestPermission?: (options: { mode: 'readwrite' }) => Promise<PermissionState>
}

const noFolders = () =>
  fail(
    problem(
      'wrong-use',
      'This browser cannot write to a folder: choose a video format, or transfer pictures at the command line.',
      { field: 'transfer.format' },
    ),
  )

/** Asks where a pass is to write; undefined where the person does not want to after all. */
export const askTarget = async (
  { settings }: PassPlan,
  fileName: string,
): Promise<Result<PassTarget | undefined>> => {
  const { showSaveFilePicker, showDirectoryPicker } = window as PickerWindow
  if (isSequence(settings.format)) {
    const folder = await fromPicker(
      showDirectoryPicker && (() => showDirectoryPicker.call(window, { mode: 'readwrite' })),
    )
    if (folder === 'absent') return noFolders()
    return ok(folder === 'cancelled' ? undefined : { kind: 'folder', folder })
  }
  const file = await fromPicker(
    showSaveFilePicker && (() => showSaveFilePicker.call(window, { suggestedName: fileName })),
  )
  if (file === 'cancelled') return ok(undefined)
  return ok({ kind: 'file', file: file === 'absent' ? undefined : file })
}

/** Asks again for what a pass wrote to before; whether it may be written. */
const mayWrite = async (handle: FileSystemHandle): Promise<boolean> => {
  const { requestPermission } = handle as Asking
  if (!requestPermission) return true
  return (await requestPermission.call(handle, { mode: 'readwrite' })) === 'granted'
}

/** Where an unfinished pass goes on writing: where it did, if that was kept, else asked anew. */
export const keptTarget = async (
  plan: PassPlan,
  kept: FileSystemHandle | undefined,
  fileName: string,
): Promise<Result<PassTarget | undefined>> => {
  const wantsFolder = isSequence(plan.settings.format)
  if (!kept || (kept.kind === 'directory') !== wantsFolder)
    return wantsFolder
      ? askTarget(plan, fileName)
      : ok<PassTarget>({ kind: 'file', file: undefined })
  if (!(await mayWrite(kept)))
    return fail(
      problem(
        'cannot-read',
        `The browser may not write to ${kept.name}; allow it, then go on with the pass.`,
        { file: kept.name },
      ),
    )
  return ok(
    wantsFolder
      ? { kind: 'folder', folder: kept as FileSystemDirectoryHandle }
      : { kind: 'file', file: kept as FileSystemFileHandle },
  )
}
