import { type Problem, problem } from '../core/base/problem.ts'
import { fail } from '../core/base/result.ts'
import { readClf } from '../core/formats/clf/readClf.ts'
import { sniffText, type TextKind } from '../core/formats/sniffText.ts'
import { setReel } from '../core/job/commands/setReel.ts'
import { textOfBytes } from '../media/textOfBytes.ts'
import type { AppStore } from '../store/appStore.ts'
import { endGesture, perform } from '../store/document.ts'
import { tellProblems, tellWith } from '../store/notices.ts'
import { reelOf } from '../store/queries.ts'
import { pickProcessFile } from './files.ts'
import { problemOfFile } from './readListFile.ts'
import { tellError } from './tellError.ts'

/** The largest file read: a job carries no list whose text is longer. */
const LARGEST_FILE = 64 * 2 ** 20

/** What a file is that is no process list. */
const OTHERS: Readonly<Record<Exclude<TextKind, 'clf'>, string>> = {
  job: 'a job',
  cdl: 'an ASC CDL file',
  edl: 'an edit decision list',
  otio: 'an OpenTimelineIO timeline',
  csv: 'a ledger as CSV',
}

/** The process list that a text is, or why it is none. */
const readProcess = (name: string, text: string): ReturnType<typeof readClf> => {
  const kind = sniffText(text)
  if (kind === 'clf' || (kind === undefined && text.trimStart().startsWith('<')))
    return readClf(text)
  const says =
    kind === undefined
      ? `${name} is not a process list (.clf): it is not XML.`
      : `${name} is ${OTHERS[kind]}, not a process list (.clf).`
  return fail(problem('wrong-use', says))
}

/**
 * Puts a process list (.clf) into the base of the reel on screen, as one step of the history. A file
 * that is refused is told with its line, and changes nothing.
 */
export const takeBaseList = async (store: AppStore, file: File): Promise<void> => {
  const { name, size } = file
  const refuse = (problems: readonly Problem[]) =>
    tellProblems(
      store,
      problems.map((each) => problemOfFile(name, each)),
    )
  const wanted = reelOf(store.getState())?.id
  if (wanted === undefined) return
  if (size > LARGEST_FILE) {
    refuse([problem('too-large', 'The file is larger than 64 MB; choose one with smaller tables.')])
    return
  }
  const { text, told } = textOfBytes(new Uint8Array(await file.arrayBuffer()))
  const read = readProcess(name, text)
  if (!read.ok) {
    refuse(read.problems)
    return
  }
  const { list, notTaken } = read.value
  const named = list.name === '' ? { ...list, name } : list
  endGesture(store)
  const isDone = perform(store, (job) =>
    setReel(job, wanted, (reel) => ({ ...reel, base: { ...reel.base, list: named } }), 'Base list'),
  )
  if (!isDone) return
  tellWith(
    store,
    `${name} is the base list now. Undo takes it back.`,
    [...told, ...notTaken].map((each) => problemOfFile(name, each)),
  )
}

/** Asks for a process list and puts it into the base of the reel on screen. */
export const pickBaseList = async (store: AppStore): Promise<void> => {
  try {
    const file = await pickProcessFile()
    if (file) await takeBaseList(store, file)
  } catch (error) {
    tellError(store, error)
  }
}
