import { buildForNode } from './buildForNode.mjs'

const percent = (part) => `${(100 * part).toFixed(1)} %`

/** Controls that act on each other: set all at once, beside one after another, on the same machines. */
export const lineUpRow = async (root, folder) => {
  const { compareAdjusting } = await import(await buildForNode(root, folder, 'lineUpBench'))
  const { atOnce, oneByOne } = compareAdjusting()
  const words = ({ done, readingsMore }) =>
    `${percent(done)} of machines inside, with ${readingsMore.toFixed(1)} readings more than controls`
  return {
    row: 'line-up: 1,000 made-up machines, all controls at once',
    reference: 'one control after another, round and round, at most 30 readings more than controls',
    result: `${words(atOnce)} against ${words(oneByOne)}`,
    goal: 'at least 95 % inside, with fewer readings',
    isMet: atOnce.done >= 0.95 && atOnce.readingsMore < oneByOne.readingsMore,
  }
}
