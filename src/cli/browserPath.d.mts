export const browserPath: () => string | undefined
