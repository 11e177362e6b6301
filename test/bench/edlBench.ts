import { readEdl } from '../../src/core/formats/edl/readEdl.ts'
import { rate } from '../../src/core/time/rate.ts'
import { formatTimecode } from '../../src/core/time/timecode.ts'

const EVENTS = 100_000
const FEW = EVENTS / 10
const ROUNDS = 15
const RATE = rate(25)
const LENGTH = 20

const label = (count: number): string => formatTimecode(count, RATE, false)

const decimal = (i: number): string => (0.9 + (i % 97) / 500).toFixed(4)

/** A list of cuts; with comments, as most lists with grades are: a clip, ASC_SOP and ASC_SAT. */
const listOf = (events: number, hasComments: boolean): string => {
  const lines = ['TITLE: BENCH', '']
  for (let i = 0; i < events; i++) {
    const [from, to] = [label(i * LENGTH), label((i + 1) * LENGTH)]
    const number = String(i + 1).padStart(6, '0')
    lines.push(`${number}  REEL0042 V     C        ${from} ${to} ${from} ${to}`)
    if (!hasComments) continue
    const numbers = [0, 1, 2].map((c) => decimal(i + c)).join(' ')
    lines.push(`* FROM CLIP NAME: SCENE ${number}`)
    lines.push(`* ASC_SOP (${numbers})(-0.0200 0.0100 0.0300)(1.1000 1.0000 ${decimal(i)})`)
    lines.push(`* ASC_SAT ${decimal(i)}`)
  }
  return `${lines.join('\r\n')}\r\n`
}

const timed = (work: () => unknown): number => {
  const begun = performance.now()
  work()
  return performance.now() - begun
}

const read = (text: string, events: number) => () => {
  const list = readEdl(text, undefined)
  if (!list.ok || list.value.decisions.length !== events) throw new Error('not read whole')
}

const measure = (hasComments: boolean) => {
  const [many, few] = [listOf(EVENTS, hasComments), listOf(FEW, hasComments)]
  const splits: number[] = []
  const reads: number[] = []
  const fewReads: number[] = []
  for (let round = 0; round < ROUNDS; round++) {
    splits.push(timed(() => many.split(/\r?\n/u)))
    reads.push(timed(read(many, EVENTS)))
    fewReads.push(timed(read(few, FEW)))
  }
  return { splits, reads, fewReads }
}

// For the engine to compile.
measure(true)
console.log(JSON.stringify({ graded: measure(true), bare: measure(false) }))
