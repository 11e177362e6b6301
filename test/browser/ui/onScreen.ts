import { type ComponentType, createElement } from 'react'
import { createRoot, type Root } from 'react-dom/client'
import { vi } from 'vitest'
import { createAppStore } from '../../../src/store/appStore.ts'
import { showJob } from '../../../src/store/document.ts'
import { type App, AppContext } from '../../../src/ui/appContext.ts'
import type { Services } from '../../../src/ui/services.ts'
import '../../../src/ui/styles/app.css'
import '../../../src/ui/styles/settings.css'
import { sampleJob } from '../../support/sampleJob.ts'

let root: Root | undefined

/** Services that note what they are asked for and do nothing. */
const stubServices = (): Services => {
  const calls = new Map<string | symbol, unknown>()
  return new Proxy({} as Services, {
    get: (_, name) => {
      if (!calls.has(name)) calls.set(name, vi.fn())
      return calls.get(name)
    },
  })
}

/** An app with the sample job and its reel, and one component of it on screen. */
export const onScreen = (...components: readonly ComponentType[]): App => {
  const store = createAppStore()
  showJob(store, sampleJob(), 'key')
  store.setState({ media: 'ready' })
  const app = { store, services: stubServices() }
  const place = document.createElement('main')
  document.body.append(place)
  root = createRoot(place)
  const children = components.map((component, i) => createElement(component, { key: i }))
  root.render(createElement(AppContext, { value: app }, ...children))
  return app
}

/** Takes everything off the screen again. */
export const clearScreen = (): void => {
  root?.unmount()
  root = undefined
  document.body.replaceChildren()
}
