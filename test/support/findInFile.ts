import type { Boundary } from '../../src/core/shots/boundary.ts'
import { openMediaNode } from '../../src/media/node/openMediaNode.ts'
import { findShots } from '../../src/work/findShots.ts'

/** The shot changes of a file, as the command line finds them. */
export const findInFile = async (path: string): Promise<readonly Boundary[]> => {
  const opened = await openMediaNode(path)
  if (!opened.ok) throw new Error(opened.problems[0].says)
  try {
    return (await findShots(opened.value, () => undefined)).boundaries
  } finally {
    opened.value.close()
  }
}
