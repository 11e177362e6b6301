import { execFileSync } from 'node:child_process'
import { buildForNode } from './buildForNode.mjs'
import { median } from './median.mjs'

const MOST = 20
const MOST_GROWTH = 1.3

/** Reading edit decision lists of 100,000 events, in Node. */
export const edlRows = async (root, folder) => {
  const file = await buildForNode(root, folder, 'edlBench')
  const measured = execFileSync(process.execPath, [file], { encoding: 'utf8' })
  const { graded, bare } = JSON.parse(measured)
  const ratio = ({ reads, splits }) => median(reads) / median(splits)
  const growth = ({ reads, fewReads }) => median(reads) / median(fewReads) / 10
  return [
    {
      row: 'reading an edit decision list of 100,000 events with clip names and grades',
      reference: 'splitting it into its lines (/\\r?\\n/u)',
      result: `${ratio(graded).toFixed(1)} × (${median(graded.reads).toFixed(0)} against ${median(graded.splits).toFixed(1)} ms; of event lines alone ${ratio(bare).toFixed(1)} ×)`,
      goal: `under ${MOST} ×`,
      isMet: ratio(graded) < MOST,
    },
    {
      row: 'an event of an edit decision list of 100,000',
      reference: 'one of a list of 10,000',
      result: `${growth(graded).toFixed(2)} × (of event lines alone ${growth(bare).toFixed(2)} ×)`,
      goal: `at most ${MOST_GROWTH} ×`,
      isMet: growth(graded) <= MOST_GROWTH,
    },
  ]
}
