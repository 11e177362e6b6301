import { type Problem, problem } from '../core/base/problem.ts'
import { readClf } from '../core/formats/clf/readClf.ts'
import { setReel } from '../core/job/commands/setReel.ts'
import { textOfBytes } from '../media/textOfBytes.ts'
import type { AppStore } from '../store/appStore.ts'
import { endGesture, perform } from '../store/document.ts'
import { tell, tellProblems } from '../store/notices.ts'
import { reelOf } from '../store/queries.ts'
import { sentenceOf } from '../store/state.ts'
import { pickProcessFile } from './files.ts'
import { tellError } from './tellError.ts'

/** The largest file read: a job carries no list whose text is longer. */
const LARGEST_FILE = 64 * 2 ** 20

/** The problem with its file, and its line where that is known, said first. */
const ofFile = (name: string, { says, ...rest }: Problem): Problem => {
  const line = rest.at?.line
  return { ...rest, says: `${name}${line === undefined ? '' : `, line ${line}`}: ${says}` }
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
      problems.map((each) => ofFile(name, each)),
    )
  const wanted = reelOf(store.getState())?.id
  if (wanted === undefined) return
  if (size > LARGEST_FILE) {
    refuse([problem('too-large', 'The file is larger than 64 MB; choose one with smaller tables.')])
    return
  }
  const { text, told } = textOfBytes(new Uint8Array(await file.arrayBuffer()))
  const read = readClf(text)
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
  const left = [...told, ...notTaken]
  const done = `${name} is the base list now. Undo takes it back.`
  tell(
    store,
    left.length === 0 ? done : `${done} ${sentenceOf(left.map((each) => ofFile(name, each)))}`,
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
