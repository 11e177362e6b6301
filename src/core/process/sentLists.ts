import type { ProcessList } from './processList.ts'

/**
 * Process lists that cross to a worker: a list may hold a million numbers, too many to copy with
 * every picture that is drawn. Each crosses once and is named by a number from then on, so that the
 * worker has one object for it. Both ends keep the last few, by the same rule.
 */
const KEPT = 4

/** What stands in a message for a list: its number, and the list itself the first time. */
type SentList = { readonly sentList: number; readonly whole?: ProcessList }

const isPlain = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' &&
  value !== null &&
  (Object.getPrototypeOf(value) === Object.prototype || Object.getPrototypeOf(value) === null)

const isList = (value: Readonly<Record<string, unknown>>): value is ProcessList & typeof value =>
  Array.isArray(value.steps) && typeof value.name === 'string'

const isSent = (value: Readonly<Record<string, unknown>>): value is SentList & typeof value =>
  typeof value.sentList === 'number'

/**
 * The same message with what `swap` gives for each record in it that it knows. Whatever holds none
 * is the same object; arrays of numbers are not looked through.
 */
const swapped = (
  value: unknown,
  swap: (record: Readonly<Record<string, unknown>>) => unknown,
): unknown => {
  if (Array.isArray(value)) {
    if (typeof value[0] === 'number') return value
    const items = value.map((item) => swapped(item, swap))
    return items.some((item, i) => item !== value[i]) ? items : value
  }
  if (!isPlain(value)) return value
  const other = swap(value)
  if (other !== undefined) return other
  const entries = Object.entries(value).map(([name, item]) => [name, swapped(item, swap)] as const)
  return entries.some(([name, item]) => item !== value[name]) ? Object.fromEntries(entries) : value
}

/** Makes messages ready to be sent, all over one channel. */
export const createListSender = (): (<Message>(message: Message) => Message) => {
  const numbers = new Map<ProcessList, number>()
  let next = 0
  const send = (list: ProcessList): SentList => {
    const known = numbers.get(list)
    if (known !== undefined) return { sentList: known }
    const [oldest] = numbers.keys()
    if (numbers.size >= KEPT && oldest) numbers.delete(oldest)
    numbers.set(list, next)
    return { sentList: next++, whole: list }
  }
  return <Message>(message: Message) =>
    swapped(message, (record) => (isList(record) ? send(record) : undefined)) as Message
}

/** Makes the messages of such a sender whole again, in the order in which they were sent. */
export const createListReceiver = (): (<Message>(message: Message) => Message) => {
  const lists = new Map<number, ProcessList>()
  const receive = ({ sentList, whole }: SentList): ProcessList => {
    if (whole) {
      lists.set(sentList, whole)
      lists.delete(sentList - KEPT)
    }
    const list = lists.get(sentList)
    if (!list) throw new Error('Bug: a process list is named that was not sent')
    return list
  }
  return <Message>(message: Message) =>
    swapped(message, (record) => (isSent(record) ? receive(record) : undefined)) as Message
}
