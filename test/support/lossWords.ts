import type { Loss } from '../../src/core/formats/loss.ts'

/** All that losses say, a line each. */
export const says = (losses: readonly Loss[]): string =>
  losses.map((loss) => `${loss.says} ${loss.done}`).join('\n')
