import type { HeldPictures } from '../ui/services.ts'

export const createHeldDesk = (): HeldPictures => ({
  get: () => undefined,
  request: () => undefined,
  subscribe: () => () => undefined,
})
