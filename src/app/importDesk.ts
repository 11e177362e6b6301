import { problem } from '../core/base/problem.ts'
import { readClf } from '../core/formats/clf/readClf.ts'
import { joinLists, type ListFile } from '../core/formats/joinLists.ts'
import { sniffText } from '../core/formats/sniffText.ts'
import { textOfBytes } from '../media/textOfBytes.ts'
import type { AppStore } from '../store/appStore.ts'
import { offerImport } from '../store/importing.ts'
import { tellProblems } from '../store/notices.ts'
import { offerProcess } from '../store/processOffer.ts'
import { reelOf } from '../store/queries.ts'
import { pickListFiles } from './files.ts'
import {
  LARGEST_LIST,
  readListFile,
  readListOf,
  readListText,
  resultOfFile,
} from './readListFile.ts'

export type ImportDesk = {
  /** Asks for a list and lays it over the job. */
  readonly pickList: () => Promise<void>
  /** Lays a list over the job on screen; what cannot be read is told, and nothing is changed. */
  readonly openList: (file: File) => Promise<void>
  /** The same of several files, which are one list together: a file a cue, or a list in parts. */
  readonly openLists: (files: readonly File[]) => Promise<void>
}

/** As much of a file as tells what it is. */
const HEAD = 64 * 2 ** 10

const LIST_NAME = /\.(?:edl|otio|cc|ccc|cdl|csv|clf)$/iu

const OTHER_NAME = /\.(?:xml|txt|json)$/iu

/** Whether a file is a list and no scan or job: by its name, or by what is in it where that is open. */
export const isListFile = async (file: File): Promise<boolean> => {
  if (LIST_NAME.test(file.name)) return true
  if (!OTHER_NAME.test(file.name)) return false
  const isSmall = file.size <= LARGEST_LIST
  const bytes = await (isSmall ? file : file.slice(0, HEAD)).arrayBuffer()
  const kind = sniffText(textOfBytes(new Uint8Array(bytes)).text)
  return kind !== undefined && kind !== 'job'
}

/** Reads lists made elsewhere and offers them to the person. */
export const createImportDesk = (
  store: AppStore,
  pick: () => Promise<readonly File[]> = pickListFiles,
): ImportDesk => {
  const openList = async (file: File): Promise<void> => {
    const { name } = file
    const reel = reelOf(store.getState())
    if (!reel) {
      const says = `${name} is a list for a reel; open the reel or its job first.`
      tellProblems(store, [problem('wrong-use', says)])
      return
    }
    const read = await readListText(file)
    if (!read.ok) {
      tellProblems(store, read.problems)
      return
    }
    const { text, told } = read.value
    if (sniffText(text) === 'clf') {
      const clf = resultOfFile(name, readClf(text))
      if (!clf.ok) tellProblems(store, clf.problems)
      else offerProcess(store, name, clf.value.list, [...told, ...clf.value.notTaken])
      return
    }
    const list = readListOf(name, read.value, reel)
    if (list.ok) offerImport(store, name, list.value)
    else tellProblems(store, list.problems)
  }
  const openLists = async (files: readonly File[]): Promise<void> => {
    const [first] = files
    const reel = reelOf(store.getState())
    if (files.length <= 1 || !reel) {
      if (first) await openList(first)
      return
    }
    const read = await Promise.all(files.map((file) => readListFile(file, reel)))
    const lists: ListFile[] = []
    for (const [i, { name }] of files.entries()) {
      const result = read[i]
      if (result?.ok) lists.push({ name, list: result.value })
      else {
        tellProblems(store, result?.problems ?? [])
        return
      }
    }
    const joined = joinLists(lists)
    if (joined.ok) offerImport(store, `${files.length} files`, joined.value)
    else tellProblems(store, joined.problems)
  }
  return { openList, openLists, pickList: async () => openLists(await pick()) }
}
