import { readMachineLog, writeMachineLog } from '../core/formats/readings/machineLogFile.ts'
import type { AppStore } from '../store/appStore.ts'
import { joinHistory, setMachineHistory } from '../store/machineHistory.ts'
import { tell, tellProblems } from '../store/notices.ts'
import type { MachineDesk } from '../ui/services.ts'

const PLACE = 'reelwright.machine-log'
const NAME_PLACE = 'reelwright.machine'

type SaveText = (name: string, text: string, type: string) => Promise<void>

/** The history of machines as a file, opened and saved. */
export const createMachineDesk = (
  store: AppStore,
  pick: () => Promise<File | undefined>,
  save: SaveText,
): MachineDesk => ({
  open: async () => {
    const file = await pick()
    if (!file) return
    const read = readMachineLog(await file.text())
    if (!read.ok) return tellProblems(store, read.problems)
    const before = store.getState().machineHistory.log.length
    joinHistory(store, read.value)
    const added = store.getState().machineHistory.log.length - before
    tell(store, `${added} of ${read.value.length} line-ups in ${file.name} were new.`)
  },
  save: () =>
    save(
      'machines.log.json',
      writeMachineLog(store.getState().machineHistory.log),
      'application/json',
    ),
})

/** Keeps the history of machines from one visit to the next, and tells where that cannot be done. */
export const keepMachineLog = (store: AppStore, storage: () => Storage): void => {
  try {
    const kept = storage().getItem(PLACE)
    const read = kept === null ? undefined : readMachineLog(kept)
    setMachineHistory(store, {
      machine: storage().getItem(NAME_PLACE) ?? '',
      ...(read?.ok && { log: read.value }),
    })
  } catch {
    // A closed storage keeps nothing; what is done now holds for this page.
  }
  store.subscribe(({ machineHistory }, before) => {
    if (machineHistory === before.machineHistory) return
    try {
      storage().setItem(NAME_PLACE, machineHistory.machine)
      if (machineHistory.log !== before.machineHistory.log)
        storage().setItem(PLACE, writeMachineLog(machineHistory.log))
    } catch {
      tell(store, 'This browser keeps no more of the history of machines; save it to a file.')
    }
  })
}
