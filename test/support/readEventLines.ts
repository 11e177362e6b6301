/** What a strict reader of conventional event lines finds in a list; throws on anything odd. */
export type EventLine = {
  readonly event: number
  readonly reel: string
  readonly times: readonly [string, string, string, string]
  readonly sop: readonly number[]
  readonly sat: number
  readonly comments: readonly string[]
}

const EVENT = /^(\d{3}) {2}([A-Z0-9_]{1,8}) +V {5}C {8}((?:\d\d:\d\d:\d\d:\d\d ?){4})$/u
const DECIMAL = String.raw`-?\d+\.\d{1,6}`
const SOP = new RegExp(String.raw`^\* ASC_SOP ((?:\(${DECIMAL} ${DECIMAL} ${DECIMAL}\)){3})$`, 'u')
const SAT = new RegExp(String.raw`^\* ASC_SAT (${DECIMAL})$`, 'u')

export const readEventLines = (text: string): readonly EventLine[] => {
  if (/[^\r\n\u0020-\u007e]/u.test(text)) throw new Error('not 7-bit ASCII')
  if (!text.endsWith('\r\n')) throw new Error('the last line does not end in CR LF')
  const lines = text.slice(0, -2).split('\r\n')
  if (!/^TITLE: .{1,70}$/u.test(lines[0] ?? '')) throw new Error('no title, or too long a one')
  const events: (EventLine & { sop: number[]; sat: number; comments: string[] })[] = []
  for (const line of lines.slice(1)) {
    if (line === '' || line.startsWith('FCM: ')) continue
    const event = EVENT.exec(line)
    const last = events.at(-1)
    const sop = SOP.exec(line)
    const sat = SAT.exec(line)
    if (event) {
      const times = (event[3] ?? '').trim().split(' ') as [string, string, string, string]
      events.push({
        event: Number(event[1]),
        reel: event[2] ?? '',
        times,
        sop: [],
        sat: Number.NaN,
        comments: [],
      })
    } else if (sop && last)
      last.sop.push(...((sop[1] ?? '').match(/-?\d+\.\d+/gu)?.map(Number) ?? []))
    else if (sat && last) last.sat = Number(sat[1])
    else if (line.startsWith('* ') && last) last.comments.push(line.slice(2))
    else throw new Error(`not a line of a conventional list: ${line}`)
  }
  return events
}
