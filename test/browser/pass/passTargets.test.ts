import { afterEach, expect, test, vi } from 'vitest'
import { askTarget, keptTarget } from '../../../src/app/passTargets.ts'
import { samplePlan } from '../../support/samplePlan.ts'
import { newFolder } from './clipPass.ts'

const SEQUENCE = samplePlan({ format: 'dpx' })
const VIDEO = samplePlan({ format: 'h264' })

afterEach(() => {
  vi.unstubAllGlobals()
})

const later = <Value>(value: Value): Promise<Value> =>
  new Promise((resolve) => setTimeout(() => resolve(value), 5))

test('a browser without folders says so, and what to do instead', async () => {
  vi.stubGlobal('showDirectoryPicker', undefined)
  const asked = await askTarget(SEQUENCE, 'harbour.dpx')
  expect(asked.ok ? '' : asked.problems[0].says).toBe(
    'This browser cannot write to a folder: choose a video format, or transfer pictures at the command line.',
  )
})

test('a browser that shows no window for files writes to its own storage', async () => {
  vi.stubGlobal('showSaveFilePicker', undefined)
  expect(await askTarget(VIDEO, 'harbour.mp4')).toEqual({
    ok: true,
    value: { kind: 'file', file: undefined },
  })
})

test('the folder a person chooses is asked for to be written; closing the window is no', async () => {
  const folder = await newFolder()
  const picker = vi.fn(() => later(folder))
  vi.stubGlobal('showDirectoryPicker', picker)
  expect(await askTarget(SEQUENCE, 'harbour.dpx')).toEqual({
    ok: true,
    value: { kind: 'folder', folder },
  })
  expect(picker).toHaveBeenCalledWith({ mode: 'readwrite' })
  vi.stubGlobal('showDirectoryPicker', async () => {
    await new Promise((resolve) => setTimeout(resolve, 200))
    throw new DOMException('closed', 'AbortError')
  })
  expect(await askTarget(SEQUENCE, 'harbour.dpx')).toEqual({ ok: true, value: undefined })
})

test('an unfinished pass writes where it did, if that is allowed again', async () => {
  const folder = await newFolder()
  expect(await keptTarget(SEQUENCE, folder, 'harbour.dpx')).toEqual({
    ok: true,
    value: { kind: 'folder', folder },
  })
  const denied = Object.create(folder, {
    requestPermission: { value: async () => 'denied' },
    name: { value: folder.name },
    kind: { value: 'directory' },
  }) as FileSystemDirectoryHandle
  const refused = await keptTarget(SEQUENCE, denied, 'harbour.dpx')
  expect(refused.ok ? '' : refused.problems[0].says).toBe(
    `The browser may not write to ${folder.name}; allow it, then go on with the pass.`,
  )
})

test('a video whose file was not kept goes on in the browser’s own storage', async () => {
  expect(await keptTarget(VIDEO, undefined, 'harbour.mp4')).toEqual({
    ok: true,
    value: { kind: 'file', file: undefined },
  })
})
