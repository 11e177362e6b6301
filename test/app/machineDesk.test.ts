import { expect, test } from 'vitest'
import { createMachineDesk, keepMachineLog } from '../../src/app/machineDesk.ts'
import { readMachineLog, writeMachineLog } from '../../src/core/formats/readings/machineLogFile.ts'
import { createAppStore } from '../../src/store/appStore.ts'
import { addToHistory, setMachineHistory } from '../../src/store/machineHistory.ts'
import { INITIAL_STATE, keptBetweenJobs } from '../../src/store/state.ts'
import { machineLogEntry } from '../support/machineLogOf.ts'

const storageOf = (kept = new Map<string, string>(), isFull = false) =>
  ({
    getItem: (name: string) => kept.get(name) ?? null,
    setItem: (name: string, text: string) => {
      if (isFull) throw new DOMException('full', 'QuotaExceededError')
      kept.set(name, text)
    },
  }) as unknown as Storage

test('history is there at the next visit, and stays when a job is closed', () => {
  const kept = new Map<string, string>()
  const store = createAppStore()
  keepMachineLog(store, () => storageOf(kept))
  setMachineHistory(store, { machine: 'Orlop 2' })
  addToHistory(store, machineLogEntry('2026-11-01', 50))
  store.setState((state) => ({ ...INITIAL_STATE, ...keptBetweenJobs(state) }))
  const again = createAppStore()
  keepMachineLog(again, () => storageOf(kept))
  expect(again.getState().machineHistory).toEqual({
    ...{ machine: 'Orlop 2', log: [machineLogEntry('2026-11-01', 50)] },
  })
})

test('a storage that is full is told, and what was done holds', () => {
  const store = createAppStore()
  keepMachineLog(store, () => storageOf(undefined, true))
  addToHistory(store, machineLogEntry('2026-11-01', 50))
  expect(store.getState().machineHistory.log).toHaveLength(1)
  expect(store.getState().notice?.says).toContain('save it to a file')
})

test('a history from a file is put beside the one there is, each line-up once', async () => {
  const store = createAppStore()
  addToHistory(store, machineLogEntry('2026-11-01', 50))
  const text = writeMachineLog([
    machineLogEntry('2026-10-01', 49),
    machineLogEntry('2026-11-01', 50),
  ])
  const saved: string[] = []
  const desk = createMachineDesk(
    store,
    async () => new File([text], 'a.log.json'),
    async (_, made) => void saved.push(made),
  )
  await desk.open()
  expect(store.getState().notice?.says).toBe('1 of 2 line-ups in a.log.json were new.')
  await desk.save()
  const read = readMachineLog(saved[0] ?? '')
  expect(read).toEqual(readMachineLog(text))
})
