/** Whether the keys are a Mac's: ⌘ for Ctrl, ⌥ for Alt. */
export const IS_MAC = /Mac|iPhone|iPad/u.test(navigator.userAgent)
